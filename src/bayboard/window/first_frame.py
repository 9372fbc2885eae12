"""The window's first frame: bare primer, tapes and panels, painted before anything else is loaded.

Whatever takes long to load (geometry, rules, paper) comes after this frame stands on the screen.
Nothing here needs more than Qt and the colours.
"""

from collections.abc import Callable

from PySide6.QtCore import QRectF, Qt, QTimer
from PySide6.QtGui import QCloseEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from bayboard.window.floor_plan import LEAST, USUAL, FloorPlan, floor_plan
from bayboard.window.theme import Theme, brush, pen


class Frame(QWidget):
    """The top-level window.  It paints an empty workplace, then asks for the furniture once."""

    def __init__(self, theme: Theme, furnish: Callable[["Frame"], QWidget] | None = None) -> None:
        super().__init__()
        self.theme = theme
        self.furniture: QWidget | None = None
        self.settled = False  # unsaved changes have been asked about
        self._furnish = furnish
        self.setWindowTitle("Bayboard")
        self.setMinimumSize(LEAST)
        self.resize(USUAL)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the empty workplace; the first time, have the furniture brought in afterwards."""
        if self.furniture is None:
            with QPainter(self) as p:
                paint_empty(p, floor_plan(self.size(), self.theme.size), self.theme)
            if self._furnish is not None:
                QTimer.singleShot(0, self.bring_in)

    def bring_in(self) -> None:
        """Put the furniture into the frame; a second call does nothing."""
        furnish, self._furnish = self._furnish, None
        if furnish is None:
            return
        self.furniture = furnish(self)
        self.furniture.setParent(self)
        self.furniture.setGeometry(self.rect())
        self.furniture.show()
        taken = self.focusWidget()
        if taken is None or not self.furniture.isAncestorOf(taken):
            self.furniture.setFocus()  # no question is asked that waits for its answer

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the furniture as large as the frame."""
        if self.furniture is not None:
            self.furniture.setGeometry(self.rect())

    def closeEvent(self, event: QCloseEvent) -> None:
        """Close unless the workplace still asks about unsaved changes."""
        may_close = getattr(self.furniture, "may_close", None)
        if self.settled or may_close is None or may_close():
            event.accept()
        else:
            event.ignore()


def paint_empty(p: QPainter, plan: FloorPlan, theme: Theme) -> None:
    """Paint the ground of every part: what one sees before there is anything to see."""
    p.fillRect(p.viewport(), brush(theme.bench))
    p.fillRect(plan.strip, brush(theme.paper))
    p.fillRect(plan.wall, brush(theme.room))
    p.fillRect(plan.section, brush(theme.paper))
    for tape in (plan.hanging, plan.foot):
        p.fillRect(tape, brush(theme.tape))
    p.setRenderHint(QPainter.RenderHint.Antialiasing)
    for panel, fill in ((plan.bench, theme.shelf), (plan.findings, theme.paper), (plan.card, theme.paper)):
        paint_panel(p, QRectF(panel), fill, theme)


def paint_panel(p: QPainter, rect: QRectF, fill: str, theme: Theme) -> None:
    """Paint a panel's ground: a sheet with round corners and a hairline round it."""
    p.setBrush(brush(fill))
    p.setPen(pen(theme.rule, 1.0))
    p.drawRoundedRect(rect.adjusted(0.5, 0.5, -0.5, -0.5), 8.0, 8.0)
