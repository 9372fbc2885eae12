"""Stand-ins in the hand while they are over no view: painted over the whole window."""

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from bayboard.window.bench_panel import BenchPanel
from bayboard.window.draw.face import face
from bayboard.window.draw.gear import paint_face
from bayboard.window.draw.shadow import IN_HAND, paint_shadow
from bayboard.window.spots import gear_of


class InHand(QWidget):
    """A sheet of glass over the window; it takes no press and shows what the hand holds in the air."""

    def __init__(self, bench: BenchPanel, parent: QWidget) -> None:
        super().__init__(parent)
        self.place = bench.place
        self.wall = bench.wall
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setAttribute(Qt.WidgetAttribute.WA_NoSystemBackground)
        self.place.looked.connect(self.follow)
        self.place.carried.connect(self.follow)
        self.hide()

    def follow(self) -> None:
        """Show the pieces while they are over no view."""
        shown = bool(self.place.hand.air)
        if shown != self.isVisible():
            self.setVisible(shown)
        if shown:
            self.raise_()
            self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the pieces under the pointer."""
        with QPainter(self) as p:
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            for name, x, y in self.place.hand.air:
                self._paint(p, name, QPointF(x, y))

    def _paint(self, p: QPainter, name: str, at: QPointF) -> None:
        place = self.place
        gear = gear_of(place.layout, name)
        if gear is None:
            return
        spot = QPointF(self.mapFromGlobal(self.wall.mapToGlobal(at)))
        made = face(place.layout.cards[gear.card], name, gear.turn, place.scale.px_per_mm, place.theme.size)
        paint_shadow(p, spot, made.shape, IN_HAND)
        paint_face(p, spot, made, place.theme, near=True)
