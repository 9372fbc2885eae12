"""The Section: the side view at the chalk line, on the Wall's own height axis and scale."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QMouseEvent, QPainter
from PySide6.QtWidgets import QWidget

from bayboard.window.draw.section import paint_section
from bayboard.window.draw.section_show import SectionShow
from bayboard.window.place_view import PlaceView
from bayboard.window.section_showing import section_show
from bayboard.window.side_view import SideView
from bayboard.window.workplace import Workplace


class SectionView(SideView, PlaceView[SectionShow]):
    """What a cut at the chalk line shows, looking left."""

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(place, "Section", section_show, parent)

    def still_key(self) -> object:
        """Return what the whole view is painted from."""
        return self.place.shown, self.show_now()

    def paint_still(self, p: QPainter) -> None:
        """Paint the cut."""
        paint_section(
            p, self.layer_scale(), self.place.scene, self.theme, self.show_now(), QRectF(self.rect())
        )

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Select the piece that is cut here."""
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        name = self.piece_at(event.position())
        if event.button() == Qt.MouseButton.LeftButton and name is not None:
            self.place.select((name,))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show which piece the pointer is over."""
        self.place.hover(self.piece_at(event.position()))

    def piece_at(self, at: QPointF) -> str | None:
        """Return the piece cut by the chalk line that lies under a pixel."""
        x = self.place.chalk_x
        minus_z, y = self.layer_scale().mm(at)
        for piece in reversed(self.place.scene.placed.values()):
            x0, y0, x1, y1 = piece.box
            cut = x is not None and x0 <= x <= x1 and y0 <= y <= y1
            if cut and piece.top is not None and piece.under <= -minus_z <= piece.top:
                return piece.id
        return None
