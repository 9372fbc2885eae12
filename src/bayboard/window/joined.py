"""What joins a vehicle's file to the window: how it is looked at, when one turns away and comes back."""

from pathlib import Path
from typing import Any, Protocol

from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QApplication, QWidget

from bayboard.model.refused import Refused
from bayboard.store.job_file import Kept
from bayboard.window.files import Files
from bayboard.window.keeping.kept_only import KeptOnlyStage
from bayboard.window.keeping.note_line import AskedLine
from bayboard.window.keeping.view_state import NAME, take_view, view_of
from bayboard.window.stages import Panes
from bayboard.window.strip import Strip
from bayboard.window.workplace import Workplace


class Sharp(Protocol):
    """A view that may show its old picture for a moment."""

    def settle(self) -> None:
        """Draw sharp with the next frame."""


class Window(Protocol):
    """What is needed of the window."""

    place: Workplace
    files: Files
    strip: Strip
    lines: tuple[AskedLine, ...]
    wall: Sharp
    section: Sharp
    stage_before: str

    def name_window(self) -> None:
        """Put the vehicle's name, and whether all of it is written, over the window."""

    def to_wall(self) -> None:
        """Give the keys to the Wall."""

    def add_stage(self, panes: Panes, before: str | None = None, lath: bool = True) -> None:
        """Show one stage more."""

    def show_stage(self, name: str) -> None:
        """Bring a stage's widgets to their places."""

    def leave_mode(self) -> None:
        """Go back to the stage before."""


class Joined(QObject):
    """The window's side of keeping; it lives as long as the window."""

    def __init__(self, window: Window) -> None:
        super().__init__(window if isinstance(window, QWidget) else None)
        self.window = window
        self.kept_only: KeptOnlyStage | None = None  # made when there is something to show
        files = window.files
        window.strip.standing = files.standing
        files.keeper.view = self.view
        files.keeper.stands.connect(self._stands)
        files.arrived.connect(self.take_view)
        files.kept_shown.connect(self._show_kept)
        window.place.opened.connect(self._draw_sharp)
        for line in window.lines:
            line.left.connect(window.to_wall)
            line.kept.connect(window.to_wall)
        window.strip.follow()
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.applicationStateChanged.connect(self._turned)

    def view(self) -> dict[str, Any]:
        """Return how the vehicle is looked at."""
        return view_of(self.window.place, self.window.stage_before)

    def take_view(self) -> None:
        """Look at the vehicle on the Wall as its file says it was looked at last."""
        place, strip = self.window.place, self.window.strip
        try:
            stage = take_view(place, place.job.meta(NAME))
        except Refused:
            return  # the file does not say: all of it is shown
        self._draw_sharp()
        if any(known.name == stage for known in strip.stages):
            self.window.show_stage(stage)

    def _draw_sharp(self) -> None:
        """Let no view show for a moment the vehicle that was here before, carried to another scale."""
        for view in (self.window.wall, self.window.section):
            view.settle()

    def _stands(self) -> None:
        self.window.strip.follow()
        self.window.name_window()

    def _show_kept(self, path: Path, kept: tuple[Kept, ...]) -> None:
        """Show the notes and pictures of a file that this Bayboard cannot open."""
        if self.kept_only is None:
            self.kept_only = KeptOnlyStage(self.window)
            self.window.add_stage(self.kept_only, lath=False)
        self.kept_only.open(path, kept)

    def _turned(self, state: Qt.ApplicationState) -> None:
        """Write what is not written when another program is turned to; coming back, see that it is ours."""
        keeper = self.window.files.keeper
        if state == Qt.ApplicationState.ApplicationActive:
            keeper.look_after()
        else:
            keeper.write()
            keeper.save_view()
