"""The two steel tapes as widgets: the shared height axis, and the one at the foot for the chalk line."""

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QMouseEvent, QPainter
from PySide6.QtWidgets import QWidget

from bayboard.window import lettering
from bayboard.window.canvas import Canvas
from bayboard.window.draw.tapes import paint_foot_tape, paint_hanging_tape, paint_out_tape, tape_zero
from bayboard.window.floor_plan import FOOT
from bayboard.window.gestures.chalk import Chalk
from bayboard.window.lettering import Style
from bayboard.window.side_view import SideView
from bayboard.window.theme import Theme, brush
from bayboard.window.workplace import Workplace

BAR = 3.0  # px; the pointer's mark


class Tape(Canvas):
    """A tape that shows the scale of the Wall and, laid over it, where the pointer is."""

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.place = place
        for signal in (place.changed, place.looked, place.zoomed, place.pointed):
            signal.connect(self.update)

    @property
    def theme(self) -> Theme:
        """Return the workplace's colours."""
        return self.place.theme


class HangingTape(Tape):
    """The tape between Wall and Section; drawn to the left it pulls the Section wide over the Wall."""

    drawn = Signal(float)  # px to the right of where it was taken hold of, in the window
    let_go = Signal()

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(place, parent)
        self._held: float | None = None
        self.setCursor(Qt.CursorShape.SplitHCursor)
        self.setToolTip("Drawn to the left, it pulls the Section wide. W")

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold of the tape."""
        if event.button() == Qt.MouseButton.LeftButton:
            self._held = event.globalPosition().x()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Draw the tape aside."""
        if self._held is not None:
            self.drawn.emit(event.globalPosition().x() - self._held)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let it go."""
        if self._held is not None:
            self._held = None
            self.let_go.emit()

    def still_key(self) -> object:
        """Return what the tape is painted from."""
        return self.place.scale, self.place.units, tape_zero(self.place.shown)[1]

    def paint_live(self, p: QPainter) -> None:
        """Paint the pointer's height as a bar."""
        if self.place.pointer is not None:
            y = self.place.scale.px(0.0, self.place.pointer[1]).y()
            p.fillRect(QRectF(0.0, y - BAR / 2, self.width(), BAR), brush(self.theme.footred))

    def paint_still(self, p: QPainter) -> None:
        """Paint the tape."""
        place, rect = self.place, QRectF(self.rect())
        paint_hanging_tape(p, rect, place.scale, self.theme, place.units, tape_zero(place.shown)[1])
        high = FOOT * self.theme.size
        corner = QRectF(0.0, rect.bottom() - high, rect.width(), high)
        p.fillRect(corner.adjusted(1.0, 0.0, -1.0, 0.0), brush(self.theme.tape))
        lettering.draw_in(p, corner, place.units, Style(px=15.0).sized(self.theme.size), self.theme.tapeink)


class OutTape(Tape):
    """The tape under the Section while it is pulled wide: it counts out of the wall."""

    def __init__(self, place: Workplace, section: SideView, parent: QWidget | None = None) -> None:
        super().__init__(place, parent)
        self.section = section

    def still_key(self) -> object:
        """Return what the tape is painted from."""
        return self.section.layer_scale(), self.place.units

    def paint_still(self, p: QPainter) -> None:
        """Paint the tape."""
        scale = self.section.layer_scale()
        paint_out_tape(p, QRectF(self.rect()), scale, self.theme, self.place.units)


class FootTape(Tape):
    """The tape below the Wall; a press on it brings the chalk line there."""

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(place, parent)
        self._gesture: Chalk | None = None
        self.held = False  # the line is being drawn along
        self.chalked = True  # whether the view it lies under shows the chalk line
        self.setCursor(Qt.CursorShape.SizeHorCursor)
        self.setToolTip("Sets the section line where you press. C sets it at what is selected.")

    def still_key(self) -> object:
        """Return what the tape is painted from."""
        return self.place.scale, self.place.units, tape_zero(self.place.shown)[0], self._chalk()

    def _chalk(self) -> float | None:
        return self.place.chalk_x if self.chalked else None

    def paint_live(self, p: QPainter) -> None:
        """Paint the pointer's place as a bar."""
        if self.place.pointer is not None:
            x = self.place.scale.px(self.place.pointer[0], 0.0).x()
            p.fillRect(QRectF(x - BAR / 2, 0.0, BAR, self.height()), brush(self.theme.footred))

    def paint_still(self, p: QPainter) -> None:
        """Paint the tape with the chalk line's tag."""
        place, rect = self.place, QRectF(self.rect())
        zero = tape_zero(place.shown)[0]
        paint_foot_tape(p, rect, place.scale, self.theme, place.units, zero, chalk=self._chalk())

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Bring the chalk line here, and let it follow."""
        if event.button() == Qt.MouseButton.LeftButton and self.chalked:
            self.place.set_chalk(self.place.scale.mm(event.position())[0])
            self._gesture = Chalk(self.place, event.position(), event.modifiers())
            self.held = True

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Let the line follow."""
        if self._gesture is not None:
            self._gesture.move(QPointF(event.position()), event.modifiers())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Leave the line where it is."""
        self._gesture = None
        self.held = False
