"""Nothing runs what it reads, nothing speaks to a network: every import and every call is looked at."""

import ast
from pathlib import Path

import pytest

SOURCE = Path(__file__).resolve().parents[2] / "src" / "bayboard"
RUNS_WHAT_IT_READS = {
    "pickle", "cPickle", "_pickle", "dill", "joblib", "marshal", "shelve", "dbm", "code", "codeop", "runpy",
    "imp", "ctypes", "cffi", "pdb", "yaml",
}  # fmt: skip
NETWORK = {
    "socket", "socketserver", "ssl", "select", "selectors", "asyncio", "urllib", "urllib3", "http", "ftplib",
    "smtplib", "poplib", "imaplib", "xmlrpc", "wsgiref", "webbrowser", "requests", "httpx", "aiohttp",
}  # fmt: skip
QT_NETWORK = {
    "QtNetwork",
    "QtNetworkAuth",
    "QtWebSockets",
    "QtWebEngineCore",
    "QtWebEngineWidgets",
    "QtHttpServer",
}
QT_CODE = {"QtQml", "QtQuick", "QtUiTools", "QtWebChannel"}
HOMES = {
    "sqlite3": "store",
    "psutil": "store",
    "zlib": "store",
    "argparse": "commands",
    "multiprocessing": "window",
}
CALLS = {"eval", "exec", "compile", "__import__", "execfile", "breakpoint", "input"}
LATE = {"import_module": "commands/run.py"}  # its names are written in that file
TREES = {
    path.relative_to(SOURCE): ast.parse(path.read_text("utf-8")) for path in sorted(SOURCE.rglob("*.py"))
}


def imported(tree):
    """Yield (line, module's first name, all its names and what is taken from it)."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from ((node.lineno, alias.name.split(".")) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield from ((node.lineno, [*(node.module or "").split("."), alias.name]) for alias in node.names)


def called(tree):
    """Yield (line, name) of every name that is called or handed on."""
    yield from ((node.lineno, node.id) for node in ast.walk(tree) if isinstance(node, ast.Name))


def importers(wanted):
    """Return where an import is for which `wanted` holds, given its names."""
    return [
        f"{path}:{line}" for path, tree in TREES.items() for line, names in imported(tree) if wanted(names)
    ]


def test_there_is_something_to_look_at():
    assert len(TREES) > 100
    assert importers(lambda names: names[0] == "sqlite3")


def test_nothing_that_runs_what_it_reads_is_imported():
    assert importers(lambda names: names[0] in RUNS_WHAT_IT_READS or QT_CODE & set(names)) == []


def test_nothing_that_speaks_to_a_network_is_imported():
    assert importers(lambda names: names[0] in NETWORK or QT_NETWORK & set(names)) == []


def test_no_text_is_run_as_code():
    found = [
        f"{path}:{line} {name}"
        for path, tree in TREES.items()
        for line, name in called(tree)
        if name in CALLS
    ]
    assert found == []


def test_only_the_front_door_of_the_commands_imports_by_name():
    places = {
        path.as_posix()
        for path, tree in TREES.items()
        for node in ast.walk(tree)
        if isinstance(node, ast.Name | ast.Attribute)
        and (getattr(node, "id", None) in LATE or getattr(node, "attr", None) in LATE)
    }
    assert places == set(LATE.values())


@pytest.mark.parametrize(("module", "home"), HOMES.items())
def test_a_module_with_a_home_is_imported_nowhere_else(module, home):
    rooms = {Path(place).parts[0] for place in importers(lambda names: names[0] == module)}
    assert rooms <= {home}


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("import os, pickle", [["os"], ["pickle"]]),
        ("from http.client import HTTPConnection", [["http", "client", "HTTPConnection"]]),
        ("def late():\n    from PySide6 import QtNetwork", [["PySide6", "QtNetwork"]]),
    ],
)
def test_every_form_of_import_is_seen(text, names):
    assert [found for _, found in imported(ast.parse(text))] == names


def test_a_call_of_eval_is_seen_and_a_method_of_that_name_is_not():
    assert "eval" in {name for _, name in called(ast.parse("x = list(map(eval, y))"))}
    assert "exec" not in {name for _, name in called(ast.parse("app.exec()"))}
