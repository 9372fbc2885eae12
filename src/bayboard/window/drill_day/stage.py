"""Drill day as a mode beside the stages: it covers the window, and Escape goes back to where one was."""

from pathlib import Path
from typing import Protocol

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtWidgets import QWidget

from bayboard.window.drill_day.book import Book
from bayboard.window.drill_day.view import DayView
from bayboard.window.stages import Panes, Stage
from bayboard.window.strip import Strip
from bayboard.window.workplace import Workplace

DRILL_DAY = Stage("Drill day", 0)
# what leads elsewhere or changes nothing unseen; every other act of the window sleeps here
AWAKE = frozenset(("help", "units", "keep", "save", "save_as", "kept", "shelf", "open", "print", "close"))
KEYS = (
    ("Space", "drilled: on to the next hole"),
    ("Arrows, Tab", "take another hole"),
    ("N", "not here: say where it went"),
    ("Backspace", "take the last one back"),
    ("Ctrl Z, Ctrl Shift Z", "undo, redo what was done here"),
    ("U", "inches or mm"),
    ("K", "keep a revision"),
    ("Esc", "stop for now; the list stays"),
)


class Housing(Protocol):
    """The way to a job file."""

    def house(self) -> Path | None:
        """Make a job file for a job without one and return its path; None when that failed and was told."""


class Window(Protocol):
    """What drill day needs of the window."""

    place: Workplace
    strip: Strip
    hanging: QWidget
    foot: QWidget
    section: QWidget
    bench: QWidget
    findings: QWidget
    card: QWidget
    files: Housing

    def add_stage(self, panes: Panes, before: str | None = None, lath: bool = True) -> None:
        """Show one stage more."""

    def leave_mode(self) -> None:
        """Go back to the stage before."""


class DrillDay(Panes):
    """The mode's widget, and what of the window sleeps while it is there."""

    def __init__(self, window: Window) -> None:
        parent = window if isinstance(window, QWidget) else None
        self.window = window
        self.book = Book(window.place, parent)
        self.view = DayView(window.place, self.book, parent)
        super().__init__(DRILL_DAY, self.view)
        self.book.house = self._house
        self.view.trouble = self._trouble
        self.view.left.connect(window.leave_mode)
        self.view.dress()
        self._cover = _Cover(self.view)
        if parent is not None:
            parent.installEventFilter(self._cover)

    def shown(self) -> None:
        """Cover the window; what lies below takes no keys and is not read aloud."""
        self.view.cover()
        self.view.raise_()
        self.view.setFocus(Qt.FocusReason.OtherFocusReason)
        window = self.window
        for part in (window.section, window.bench, window.findings, window.card, *self._frame()):
            part.hide()
        self.view.follow()

    def left(self) -> None:
        """Give the window's frame back."""
        for part in self._frame():
            part.show()

    def _house(self) -> bool:
        """Make a job file for a job without one: a plain layout cannot hold half a slot."""
        path = self.window.files.house()
        if path is None:
            self.view.say("No job file could be made; what is half drilled is not kept.")
            return False
        self.view.say(f"What is drilled is kept in {path.name}.")
        return True

    def _trouble(self) -> str:
        """Return why what is ticked is not written: the strip, which would tell, is hidden here."""
        stands = self.window.strip.standing()
        return stands.words if stands.harmed else ""

    def _frame(self) -> tuple[QWidget, ...]:
        return self.window.strip, self.window.hanging, self.window.foot

    def dress(self) -> None:
        """Wear the workplace's colours."""
        self.view.dress()

    def act(self, name: str) -> bool:
        """Do what a key means on drill day; whatever would change the plan unseen sleeps."""
        if name == "undo":
            if not self.book.undo():
                self.view.say("Nothing was drilled here since it was opened.")
        elif name == "redo":
            if not self.book.redo():
                self.view.say("Nothing to do again.")
        elif name == "escape":
            if not self.view.put_down():
                self.window.leave_mode()
        else:
            return name not in AWAKE
        return True

    def keys(self) -> tuple[tuple[str, str], ...]:
        """Return the lines of F1."""
        return KEYS


class _Cover(QObject):
    """Keeps the view as large as the window."""

    def __init__(self, view: DayView) -> None:
        super().__init__(view)
        self.view = view

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Cover the window anew after each change of its size."""
        if event.type() == QEvent.Type.LayoutRequest or event.type() == QEvent.Type.Resize:
            self.view.cover()
        return False


def add_drill_day(window: Window) -> DrillDay:
    """Bring drill day into a window."""
    day = DrillDay(window)
    window.add_stage(day, lath=False)
    return day
