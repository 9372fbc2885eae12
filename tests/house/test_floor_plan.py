"""The checkout holds what was asked for, and nothing speaks of what it must not."""

import ast
import subprocess
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
TOP = {
    "README.md",
    "DEVELOPERS.md",
    "pyproject.toml",
    "src",
    "tests",
    "assets",
    "demo_layouts",
    "shared",
    ".ci",
    ".gitignore",
    "LICENSE",
    "CHANGELOG.md",
}
MOST_LINES = 400
MOST_FUNCTION = 60


def _tracked(pattern=""):
    listed = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard", pattern or "."],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    ).stdout.split("\n")
    return [ROOT / name for name in listed if name and (ROOT / name).exists()]


def test_the_top_level_is_the_agreed_one():
    assert {path.relative_to(ROOT).parts[0] for path in _tracked()} <= TOP


def test_no_file_is_longer_than_a_sitting():
    long = {
        str(p): n for p in _tracked("src/*.py") if (n := len(p.read_text("utf-8").splitlines())) > MOST_LINES
    }
    assert long == {}


def test_no_function_is_longer_than_a_page():
    long = [
        f"{path.relative_to(ROOT)}:{node.lineno} {node.name}"
        for path in _tracked("src/*.py")
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.FunctionDef) and (node.end_lineno or 0) - node.lineno >= MOST_FUNCTION
    ]
    assert long == []


def test_every_public_name_says_what_it_does():
    silent = [
        f"{path.relative_to(ROOT)}:{node.lineno} {node.name}"
        for path in _tracked("src/*.py")
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.FunctionDef | ast.ClassDef)
        and not node.name.startswith("_")
        and not ast.get_docstring(node)
        and not _overrides_qt(node)
    ]
    assert silent == []


def _overrides_qt(node):
    return isinstance(node, ast.FunctionDef) and node.name != node.name.lower()
