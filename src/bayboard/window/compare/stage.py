"""Kept: what the mode brings into the window, and its own meaning of the keys."""

from itertools import pairwise
from typing import Protocol

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget

from bayboard.window.compare import words
from bayboard.window.compare.changed_list import ChangedPanel
from bayboard.window.compare.desk import CompareDesk
from bayboard.window.compare.kept_line import KeptLine
from bayboard.window.compare.section import CompareSection
from bayboard.window.compare.then_card import ThenCard
from bayboard.window.compare.wall import CompareWall
from bayboard.window.stages import ARRANGE, Panes, Stage
from bayboard.window.workplace import Workplace

KEPT = Stage("Kept", 0)
WALKS = {"left": (-1, False), "right": (1, False), "far_left": (-1, True), "far_right": (1, True)}
STEPS = {"up": -1, "down": 1, "far_up": -1, "far_down": 1, "last_finding": -1, "next_finding": 1}
# nothing is moved or changed while two are compared, but for going back and undo
ASLEEP = frozenset(("turn", "turn_back", "tape", "to_bench", "hang", "let_be"))
KEYS = (
    ("Left, Right", "an older or newer one as then"),
    ("Shift and arrows", "an older or newer one as now"),
    ("Home, End", "the oldest, the newest; with Shift as now"),
    ("Up, Down, N", "walk what changed"),
    ("Click a card", "as then; with Shift or the right button as now"),
    ("Enter", "to the button that goes back"),
    ("K", "keep the draft as a revision"),
    ("Drag", "push the picture, the line or the chalk line"),
    ("+, −, 0", "larger, smaller, whole"),
    ("F", "seat up or folded"),
    ("U", "inches or mm"),
    ("Ctrl Z, Ctrl Shift Z", "undo, redo"),
    ("F6, Shift F6", "to the next part of the window"),
    ("Esc", "leave the row, then back to work"),
)


class Window(Protocol):
    """What the mode needs of the window."""

    place: Workplace
    wall: QWidget
    bench: QWidget
    strip: QWidget

    def add_stage(self, panes: Panes, before: str | None = None, lath: bool = True) -> None:
        """Show one stage more."""

    def show_stage(self, name: str) -> None:
        """Bring a stage's widgets to their places."""

    def leave_mode(self) -> None:
        """Go back to the stage before."""


class CompareStage(Panes):
    """The mode's widgets, joined to one desk."""

    def __init__(self, window: Window) -> None:
        parent = window if isinstance(window, QWidget) else None
        self.window = window
        self.desk = CompareDesk(window.place)
        self.sight = CompareWall(self.desk, parent)
        self.side = CompareSection(self.desk, parent)
        self.line = KeptLine(self.desk, parent)
        self.changes = ChangedPanel(self.desk, parent)
        self.then = ThenCard(self.desk, parent)
        super().__init__(KEPT, self.sight, self.side, self.line, self.changes, self.then)
        self.then.went_back.connect(self._went_back)
        self.then.said.connect(window.place.said)
        self.desk.changed.connect(window.strip.update)

    def shown(self) -> None:
        """Compare now that it is looked at."""
        self.desk.show(True)

    def left(self) -> None:
        """Rest while another stage is on screen."""
        self.desk.show(False)

    def dress(self) -> None:
        """Wear the workplace's colours."""
        self.changes.dress()
        self.then.dress()
        for view in (self.sight, self.side, self.line):
            view.update()

    def keys(self) -> tuple[tuple[str, str], ...]:
        """Return the lines of F1."""
        return KEYS

    def state(self) -> str:
        """Return what the strip says while the mode is on screen."""
        return words.capital(words.strip_words(self.desk.then, self.desk.now))

    def _went_back(self, number: int, kept: int | None) -> None:
        """Return to work with the revision as the draft, and say so."""
        self.window.show_stage(ARRANGE.name)
        self.window.place.said.emit(words.went_back(number, kept))

    # --- keys ---

    def act(self, name: str) -> bool:
        """Do what a key means while two are compared."""
        if name in ASLEEP:
            return True
        if name in WALKS:
            self.desk.walk(*WALKS[name])
        elif name in STEPS:
            self.desk.step(STEPS[name])
        elif name in ("chalk", "chalk_pointer"):
            self.desk.speak_of(self.desk.row)
        elif name == "enter":
            self._to_button()
        elif name == "escape":
            self._escape()
        elif name in ("pane", "last_pane"):
            self._pane(1 if name == "pane" else -1)
        else:
            return False
        return True

    def _escape(self) -> None:
        """Call a drag off, else leave the row that is spoken of, else the mode."""
        if not self.sight.call_off() and not self.desk.leave_row():
            self.window.leave_mode()

    def _to_button(self) -> None:
        stops = [stop for stop in reversed(self.then.stops) if stop.isVisible()]
        if stops:
            stops[0].setFocus(Qt.FocusReason.ShortcutFocusReason)

    def _pane(self, by: int) -> None:
        """Give the keys to the next part of the window, round about."""
        first = next((stop for stop in self.then.stops if stop.isVisible()), None)
        stops = [self.sight, self.side, self.line, self.changes.rows, first, self.window.strip]
        there = [stop for stop in stops if stop is not None and stop.isVisible()]
        now = QApplication.focusWidget()
        inside = [w is now or (now is not None and w.isAncestorOf(now)) for w in there]
        if now is not None and self.then.isAncestorOf(now):
            inside = [w is first for w in there]
        here = inside.index(True) if True in inside else -1
        there[(here + by) % len(there)].setFocus(Qt.FocusReason.ShortcutFocusReason)

    def order_tabs(self) -> None:
        """Stand in the window's round of Tab where the mode's panels stand on screen."""
        QWidget.setTabOrder(self.window.wall, self.sight)
        QWidget.setTabOrder(self.window.bench, self.line)
        QWidget.setTabOrder(self.line, self.changes.rows)
        stops = (self.changes.rows, *self.then.stops, self.window.strip)
        for a, b in pairwise(stops):
            QWidget.setTabOrder(a, b)


def add_compare(window: Window) -> CompareStage:
    """Bring Kept into a window."""
    stage = CompareStage(window)
    window.add_stage(stage, lath=False)
    stage.order_tabs()
    return stage
