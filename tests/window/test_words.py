"""The words of the whole window: tooltips, keys, glyphs; plain and spelled the same everywhere."""

import ast
import re
from functools import lru_cache
from pathlib import Path

import pytest
from PySide6.QtWidgets import QWidget
from tests.build import gear, layout

import bayboard
from bayboard.window import lettering
from bayboard.window.compare.stage import add_compare
from bayboard.window.drill_day.stage import add_drill_day
from bayboard.window.keys import BINDINGS, OTHERS
from bayboard.window.print.stage import add_print
from bayboard.window.shelf.stage import add_shelf

SOURCE = Path(bayboard.__file__).parent
KEY = r"(?:(?:Ctrl |Shift )*(?:[A-Z]|F\d+|Enter|Esc|Backspace|Space))"
TIP = re.compile(rf"[A-Z].*[.]( {KEY})?$")


@pytest.fixture
def window(open_window):
    window = open_window(layout(gear=[gear("A", 200, 200), gear("B", 303, 200)])).window
    add_print(window)
    add_compare(window)
    add_drill_day(window)
    add_shelf(window)
    return window


def test_a_tooltip_is_one_sentence_with_its_key_at_the_end(window):
    tips = {w.toolTip() for w in window.findChildren(QWidget) if w.toolTip()}
    tips -= {word.toolTip() for word in (window.strip.name, window.strip.kept)}  # these begin with a name
    assert len(tips) >= 10
    assert [tip for tip in tips if not TIP.match(tip)] == []


@lru_cache
def texts(room):
    """Return each text of the sources of a room with where it stands, docstrings left out."""
    return tuple(_texts(room))


def _texts(room):
    for path in sorted((SOURCE / room).rglob("*.py")):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        nodes = list(ast.walk(tree))
        docs = {id(node.value) for node in nodes if isinstance(node, ast.Expr)}
        for node in nodes:
            if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in docs:
                yield f"{path.name}:{node.lineno}", node.value


READ = ("typed.py",)  # what may be typed is not shown


def test_every_word_table_and_every_sentence_has_its_glyphs_in_the_shipped_fonts():
    rooms = ("window", "rules", "edits", "job", "mechanics", "units", "model", "store", "routing", "tables")
    found = {}
    for where, text in (told for room in rooms for told in texts(room)):
        if where.split(":")[0] not in READ:
            found |= dict.fromkeys((c for c in text if not c.isascii()), where)
    assert len(found) > 10
    assert {where: c for c, where in found.items() if lettering.missing(c)} == {}


def test_keys_are_spelled_alike_wherever_they_are_told():
    """As on F1: "Ctrl O", never "Ctrl+O", which is how the table of bindings is written."""
    plus = re.compile(r"\b(Ctrl|Shift|Alt)\+\w")
    told = [
        (where, text)
        for where, text in texts("window")
        if plus.search(text) and not where.startswith("keys.py")
    ]
    assert told == []


NEVER = re.compile(r"\b(invalid|error|sorry|oops|fail(ed|ure)?|abort\w*|null|exception|please)\b", re.I)


def test_no_sentence_apologises_or_speaks_of_errors_and_codes():
    """A sentence is a text of three words or more that begins with a capital and ends with a stop."""
    bad = [
        (where, text)
        for room in ("window", "rules", "edits", "job", "model", "store", "units")
        for where, text in texts(room)
        if re.match(r"[A-Z].* .* .*[.?]$", text) and NEVER.search(text)
    ]
    assert bad == []


def test_f1_has_a_line_for_every_key_and_no_key_has_two_acts():
    keys = [key for binding in BINDINGS for key in binding.keys]
    assert len(keys) == len(set(keys))
    shown = [binding.shown for binding in BINDINGS if binding.shown] + [keys for keys, _ in OTHERS]
    assert len(shown) == len(set(shown))
