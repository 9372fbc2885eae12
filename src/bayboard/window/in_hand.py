"""A stand-in in the hand while it is over no view: painted over the whole window."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from bayboard.window.bench_panel import BenchPanel
from bayboard.window.draw.face import face
from bayboard.window.draw.gear import paint_face
from bayboard.window.draw.shadow import IN_HAND, paint_shadow
from bayboard.window.spots import gear_of


class InHand(QWidget):
    """A sheet of glass over the window; it takes no press and shows what the Bench's gesture holds."""

    def __init__(self, bench: BenchPanel, parent: QWidget) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setAttribute(Qt.WidgetAttribute.WA_NoSystemBackground)
        bench.hand_moved.connect(self.follow)
        self.hide()

    def follow(self) -> None:
        """Show the piece while it is over no view."""
        gesture = self.bench.gesture
        shown = gesture is not None and gesture.over is not None
        self.setVisible(shown)
        if shown:
            self.raise_()
            self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the piece under the pointer."""
        gesture, place = self.bench.gesture, self.bench.place
        if gesture is None or gesture.over is None:
            return
        gear = gear_of(place.layout, gesture.piece)
        if gear is None:
            return
        at = self.mapFromGlobal(self.bench.wall.mapToGlobal(gesture.over))
        k = place.scale.px_per_mm
        at.setX(at.x() - gesture.grip[0] * k)
        at.setY(at.y() + gesture.grip[1] * k)
        made = face(place.layout.cards[gear.card], gear.id, gear.turn, k, place.theme.size)
        with QPainter(self) as p:
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            paint_shadow(p, at, made.shape, IN_HAND)
            paint_face(p, at, made, place.theme)
