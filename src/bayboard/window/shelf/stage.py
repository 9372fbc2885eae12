"""The shelf as a mode beside the stages: what it brings into the window, and its own meaning of the keys."""

from collections.abc import Callable
from itertools import pairwise
from pathlib import Path
from typing import Protocol

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtWidgets import QApplication, QWidget

from bayboard.store.shelf import Shelf
from bayboard.window.shelf import words
from bayboard.window.shelf.choice_card import ChoiceCard
from bayboard.window.shelf.desk import ShelfDesk
from bayboard.window.shelf.line import ShelfLine
from bayboard.window.stages import Panes, Stage
from bayboard.window.workplace import Workplace

SHELF = Stage("Shelf", 0)
WALKS = {"left": -1, "right": 1, "up": -1, "down": 1, "far_left": -5, "far_right": 5}
# an act of the work puts the shelf away first
WORK = frozenset(
    (
        "turn", "turn_back", "tape", "to_bench", "chalk", "chalk_pointer", "hang", "let_be", "undo", "redo",
        "next_finding", "last_finding", "far_up", "far_down",
    )
)  # fmt: skip
KEYS = (
    ("Letters", "find by words in the name or a note"),
    ("Arrows", "walk the vehicles; with Shift five at a time"),
    ("Home, End", "the first, the last, when the line has the keys"),
    ("Enter", "take the chosen one down"),
    ("Click, double click", "choose it, take it down"),
    ("Wheel, drag", "push the line"),
    ("Ctrl Shift O", "open a file"),
    ("Ctrl N", "a new vehicle"),
    ("F6, Shift F6", "to the next part of the window"),
    ("Esc", "what is typed goes; then back to work"),
)


class Sight(Protocol):
    """What the mode needs of the Wall: to say there that the shelf is open."""

    unusual: str

    def installEventFilter(self, watcher: QObject) -> None:
        """Let `watcher` see presses first."""

    def update(self) -> None:
        """Paint the Wall anew."""


class Opener(Protocol):
    """How vehicles are opened."""

    def open(self) -> None:
        """Choose a file and open it."""

    def open_path(self, path: Path, look: bool = False) -> None:
        """Open a vehicle's file."""

    def new(self) -> None:
        """Begin a new vehicle."""

    def example(self) -> None:
        """Show a finished one."""


class Window(Protocol):
    """What the mode needs of the window."""

    place: Workplace
    files: Opener
    stage: str
    wall: Sight
    section: QWidget
    bench: QWidget
    strip: QWidget

    def add_stage(self, panes: Panes, before: str | None = None, lath: bool = True) -> None:
        """Show one stage more."""

    def show_stage(self, name: str) -> None:
        """Bring a stage's widgets to their places."""

    def leave_mode(self) -> None:
        """Go back to the stage before."""


class ShelfStage(Panes):
    """The mode's widgets, joined to one desk.  The Wall goes on showing the vehicle that is open."""

    def __init__(self, window: Window, opened: Callable[[], Shelf] | None = None) -> None:
        parent = window if isinstance(window, QWidget) else None
        self.window = window
        self.desk = ShelfDesk(window.place, opened) if opened else ShelfDesk(window.place)
        self.line = ShelfLine(self.desk, parent)
        self.choice = ChoiceCard(self.desk, parent)
        super().__init__(SHELF, bench=self.line, card=self.choice, wide=True)
        self.line.dress()
        self._away = _PutAway(self)
        for part in (window.wall, window.section):
            part.installEventFilter(self._away)
        self._connect()

    def _connect(self) -> None:
        files = self.window.files
        self.line.taken.connect(self.take)
        self.line.field.left.connect(self.window.leave_mode)
        self.choice.take_wanted.connect(self.take)
        self.choice.look_wanted.connect(self.look)
        self.choice.open_wanted.connect(files.open)
        self.choice.new_wanted.connect(files.new)
        self.choice.example_wanted.connect(files.example)
        self.window.place.opened.connect(self.put_away)

    # --- on screen ---

    def open(self) -> None:
        """Show the shelf."""
        self.window.show_stage(SHELF.name)

    def on_screen(self) -> bool:
        """Return whether the shelf is open."""
        return self.window.stage == SHELF.name

    def shown(self) -> None:
        """Look the shelf over now that it is open; the field has the keys."""
        self.line.field.setText("")
        self.line.scrolled = 0.0
        self.desk.begin()
        self.line.field.setFocus(Qt.FocusReason.OtherFocusReason)
        self.window.wall.unusual = words.WALL_BARE if self.window.place.first_start else words.WALL

    def left(self) -> None:
        """Rest while a stage is on screen."""
        self.window.wall.unusual = ""
        self.window.wall.update()
        self.desk.end()

    def put_away(self) -> None:
        """Go back to work, if the shelf is open."""
        if self.on_screen():
            self.window.leave_mode()

    def dress(self) -> None:
        """Wear the workplace's colours."""
        self.line.dress()
        self.choice.dress()

    def keys(self) -> tuple[tuple[str, str], ...]:
        """Return the lines of F1."""
        return KEYS

    def state(self) -> str:
        """Return what the strip says while the shelf is open."""
        return words.STATE

    # --- what is done ---

    def take(self) -> None:
        """Open the vehicle that is chosen; the one on the Wall is gone on with."""
        self._open(look=False)

    def look(self) -> None:
        """Open the vehicle that is chosen to look at."""
        self._open(look=True)

    def _open(self, look: bool) -> None:
        vehicle = self.desk.vehicle()
        if vehicle is None:
            return
        if self.desk.is_here(vehicle):
            self.put_away()
        else:
            self.window.files.open_path(vehicle.path, look=look)

    # --- keys ---

    def act(self, name: str) -> bool:
        """Do what a key means while the shelf is open; an act of the work puts it away."""
        if name in WALKS:
            self.desk.walk(WALKS[name])
        elif name == "enter":
            self.take()
        elif name == "escape":
            self._escape()
        elif name == "shelf":
            self.put_away()
        elif name in ("pane", "last_pane"):
            self._pane(1 if name == "pane" else -1)
        else:
            if name in WORK:
                self.put_away()
            return False
        return True

    def _escape(self) -> None:
        """Let what is typed go, else leave."""
        if self.line.field.text():
            self.line.field.setText("")
            self.line.field.setFocus(Qt.FocusReason.ShortcutFocusReason)
        else:
            self.put_away()

    def _pane(self, by: int) -> None:
        """Give the keys to the next part of the window, round about."""
        stops = [self.window.wall, self.line.field, self.line, self._first_button(), self.window.strip]
        now = QApplication.focusWidget()
        inside = [stop is now for stop in stops]
        if now is not None and self.choice.isAncestorOf(now):
            inside = [stop is stops[3] for stop in stops]
        here = inside.index(True) if True in inside else -1
        stops[(here + by) % len(stops)].setFocus(Qt.FocusReason.ShortcutFocusReason)

    def _first_button(self) -> QWidget:
        return next(stop for stop in self.choice.stops if not stop.isHidden())

    def order_tabs(self) -> None:
        """Stand in the window's round of Tab where the mode's panels stand on screen."""
        stops = (self.window.bench, self.line.field, self.line, *self.choice.stops, self.window.strip)
        for a, b in pairwise(stops):
            QWidget.setTabOrder(a, b)


class _PutAway(QObject):
    """Puts the shelf away when the Wall or the Section is pressed; the press goes on to what it meant."""

    def __init__(self, stage: ShelfStage) -> None:
        super().__init__(stage.line)
        self.stage = stage

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Look for a press."""
        if event.type() in (QEvent.Type.MouseButtonPress, QEvent.Type.ContextMenu):
            self.stage.put_away()
        return False


def add_shelf(window: Window, opened: Callable[[], Shelf] | None = None) -> ShelfStage:
    """Bring the shelf into a window; `opened` gives the shelf, left out the user's own."""
    stage = ShelfStage(window, opened)
    window.add_stage(stage, lath=False)
    stage.order_tabs()
    return stage
