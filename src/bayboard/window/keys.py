"""The keys of this stage: which act each one is, and how it is told on F1."""

from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent, QKeySequence


@dataclass(frozen=True, slots=True)
class Binding:
    """An act with its keys; `shown` and `says` are its line on F1, "" for none."""

    act: str
    keys: tuple[str, ...]
    shown: str = ""
    says: str = ""


BINDINGS: tuple[Binding, ...] = (
    Binding("left", ("Left",), "Arrows", "move 1 mm or 1/16 in"),
    Binding("right", ("Right",)),
    Binding("up", ("Up",)),
    Binding("down", ("Down",)),
    Binding("far_left", ("Shift+Left",), "Shift and arrows", "move 10 mm or 1/2 in"),
    Binding("far_right", ("Shift+Right",)),
    Binding("far_up", ("Shift+Up",)),
    Binding("far_down", ("Shift+Down",)),
    Binding("turn", ("R",), "R, Shift R", "turn a quarter, left or right"),
    Binding("turn_back", ("Shift+R",)),
    Binding("tape", ("T",), "T", "tape down, or lift the tape"),
    Binding("to_bench", ("B", "Del", "Backspace"), "B", "back to the bench"),
    Binding("chalk", ("C",), "C", "chalk line to what is selected"),
    Binding("follow", ("Shift+C",), "Shift C", "chalk line follows, or stays"),
    Binding("measure", ("M",), "M", "measure between two, until Esc"),
    Binding("lever", ("F",), "F", "seat up or folded"),
    Binding("units", ("U",), "U", "inches or mm"),
    Binding("next_finding", ("N",), "N, Shift N", "next or last finding"),
    Binding("last_finding", ("Shift+N",)),
    Binding("enter", ("Return", "Enter"), "Enter", "cure the finding; open the Card; hang a typed number"),
    Binding("escape", ("Esc",), "Esc", "put down, then unselect"),
    Binding("undo", ("Ctrl+Z",), "Ctrl Z", "undo"),
    Binding("redo", ("Ctrl+Shift+Z", "Ctrl+Y"), "Ctrl Shift Z", "redo"),
    Binding("zoom_in", ("+", "=", "Ctrl++"), "+, −, 0", "larger, smaller, whole"),
    Binding("zoom_out", ("-", "−", "Ctrl+-")),
    Binding("whole", ("Ctrl+0",)),
    Binding("keep", ("K",), "K", "keep a revision"),
    Binding("name", ("F2",), "F2", "name the vehicle"),
    Binding("save", ("Ctrl+S",), "Ctrl S", "keep a revision; save a plain layout"),
    Binding("save_as", ("Ctrl+Shift+S",), "Ctrl Shift S", "save a copy"),
    Binding("kept", ("Ctrl+K",), "Ctrl K", "kept revisions, compared"),
    Binding("shelf", ("Ctrl+O",), "Ctrl O", "the shelf of vehicles"),
    Binding("open", ("Ctrl+Shift+O",), "Ctrl Shift O", "open a file"),
    Binding("drill_day", ("Ctrl+D",), "Ctrl D", "drill day"),
    Binding("new", ("Ctrl+N",), "Ctrl N", "a new vehicle"),
    Binding("print", ("Ctrl+P",), "Ctrl P", "the sheets to print"),
    Binding("wide", ("W",), "W", "Section wide, or back"),
    Binding("slide", ("Shift+W",), "Shift W", "Section over a narrow Wall, or away"),
    Binding("help", ("F1",), "F1", "these keys"),
    Binding("settings", ("F7",), "F7", "settings: Scale, colours, motion"),
    Binding("scale_up", ("F8",), "F8, Shift F8", "type and targets larger, smaller"),
    Binding("scale_down", ("Shift+F8",)),
    Binding("colours", ("F9",), "F9", "light or dark"),
    Binding("pane", ("F6",), "F6", "to the next part of the window"),
    Binding("last_pane", ("Shift+F6",)),
    Binding("close", ("Ctrl+Q",), "Ctrl Q", "leave"),
)
OTHERS: tuple[tuple[str, str], ...] = (
    ("Tab, Shift Tab", "walk the stand-ins"),
    ("a figure", "its exact place; with nothing selected, a number on the bench"),
    ("Space and drag", "push the picture"),
    ("Ctrl while dragging", "free of snap"),
    ("a finger", "moves a stand-in; on the bare wall pushes the picture"),
    ("held half a second", "the menu; on the bare wall then drag a box"),
    ("two fingers", "push the picture, larger or smaller"),
)
_BY_KEY = {key: binding.act for binding in BINDINGS for key in binding.keys}


def spelled(event: QKeyEvent) -> str:
    """Return a key press as it is written in the table: "Ctrl+Shift+Z", "R", "+"."""
    mods = event.modifiers() & ~(Qt.KeyboardModifier.KeypadModifier | Qt.KeyboardModifier.GroupSwitchModifier)
    if event.text() in ("+", "=", "-", "−") and not mods & Qt.KeyboardModifier.ControlModifier:
        return event.text()
    key = QKeySequence(mods.value | event.key())
    return key.toString(QKeySequence.SequenceFormat.PortableText)


def act_of(event: QKeyEvent) -> str | None:
    """Return the act of a key press, None when it has none."""
    return _BY_KEY.get(spelled(event))


def digit(event: QKeyEvent) -> str:
    """Return the figure that was typed, "" for any other key."""
    held = event.modifiers() & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier)
    text = event.text()
    return text if len(text) == 1 and text in "0123456789" and not held else ""


def told() -> tuple[tuple[str, str], ...]:
    """Return the lines of F1: keys and what they do."""
    return (*((b.shown, b.says) for b in BINDINGS if b.shown), *OTHERS)
