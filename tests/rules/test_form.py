"""Every rule has the same form: named for its fault, explained, its numbers elsewhere."""

import ast
from pathlib import Path

import pytest

import bayboard.rules
from bayboard.rules import RULES
from bayboard.tables.limits import LIMITS

ROOM = Path(bayboard.rules.__file__).parent
FILES = sorted(ROOM.rglob("*.py"))
PLAIN = {-1, 0, 1, 2, 0.5}  # counts, halves and places in a list, not thresholds
STAGES = {"measure", "arrange", "wire", "fix", "keep"}


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.RULE)
def test_every_rule_explains_itself(rule):
    first, *rest = rule.__doc__.split("\n\n")
    assert first.endswith(".")
    assert "\n" not in first
    assert all(
        any(line.startswith(word) for part in rest for line in part.splitlines())
        for word in ("Why:", "Quiet:", "Speaks:")
    )


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.RULE)
def test_a_rule_lives_in_a_file_of_its_name_under_its_stage(rule):
    path = Path(rule.__file__)
    assert path.stem == rule.RULE.replace("-", "_")
    assert path.parent.name in STAGES


def test_every_rule_file_is_listed():
    listed = {Path(rule.__file__) for rule in RULES}
    there = {path for path in FILES if "\nRULE = " in path.read_text(encoding="utf-8")}
    assert there == listed
    assert len({rule.RULE for rule in RULES}) == len(RULES)


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.RULE)
def test_a_rule_file_is_short(rule):
    assert len(Path(rule.__file__).read_text(encoding="utf-8").splitlines()) < 120


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.relative_to(ROOM).as_posix())
def test_no_threshold_stands_bare_in_the_rules(path):
    tree = ast.parse(path.read_text(encoding="utf-8"))
    bare = [
        f"line {node.lineno}: {node.value}"
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and type(node.value) in (int, float) and node.value not in PLAIN
    ]
    allowed = {"0.0001"} if path.name == "let_be.py" else set()  # the contract's own slack of figures
    assert [line for line in bare if line.rpartition(" ")[2] not in allowed] == []


def test_every_limit_asked_for_is_in_the_table():
    asked = {
        node.args[1].value
        for path in FILES
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "limit"
        if isinstance(node.args[1], ast.Constant)
    }
    assert len(asked) > 15
    assert asked <= LIMITS.keys()
