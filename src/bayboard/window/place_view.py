"""A canvas that shows the workplace: it wears its colours and is told of its changes."""

from collections.abc import Callable
from typing import Generic, TypeVar

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from bayboard.window.canvas import Canvas
from bayboard.window.theme import Theme
from bayboard.window.workplace import Workplace

Show = TypeVar("Show")


class PlaceView(Canvas, Generic[Show]):
    """A view of the workplace.  `shows` works out what is shown besides the layout, kept until a change."""

    rings = True

    def __init__(
        self, place: Workplace, name: str, shows: Callable[[Workplace], Show], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.place = place
        self._shows = shows
        self._show: Show | None = None
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(name)
        place.changed.connect(self._anew)
        place.looked.connect(self._anew)
        place.carried.connect(self._anew)
        place.zoomed.connect(self.rescaled)

    @property
    def theme(self) -> Theme:
        """Return the workplace's colours."""
        return self.place.theme

    def _anew(self) -> None:
        self._show = None
        self.update()

    def show_now(self) -> Show:
        """Return what is shown besides the layout, worked out once until something changes."""
        if self._show is None:
            self._show = self._shows(self.place)
        return self._show
