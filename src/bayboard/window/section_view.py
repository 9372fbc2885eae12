"""The Section: the side view at the chalk line, on the Wall's own height axis and scale."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QMouseEvent, QPainter, QWheelEvent
from PySide6.QtWidgets import QWidget

from bayboard.units.length import show_length
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.section import paint_section, section_ground
from bayboard.window.draw.show import SectionShow
from bayboard.window.draw.tapes import tape_zero
from bayboard.window.nearer import ZOOM
from bayboard.window.place_view import PlaceView
from bayboard.window.showing import section_show
from bayboard.window.title_line import paint_title
from bayboard.window.workplace import Workplace

METAL = 62.0  # px from the right edge to z = 0


class SectionView(PlaceView[SectionShow]):
    """What a cut at the chalk line shows, looking left."""

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(place, "Section", section_show, parent)

    def layer_scale(self) -> Scale:
        """Return the Wall's scale with z = 0 near the right edge."""
        return self.place.scale.beside(self.width() - METAL * self.theme.size)

    def still_key(self) -> object:
        """Return what the whole view is painted from."""
        return self.place.shown, self.show_now()

    def paint_still(self, p: QPainter) -> None:
        """Paint the cut."""
        paint_section(
            p, self.layer_scale(), self.place.scene, self.theme, self.show_now(), QRectF(self.rect())
        )

    def paint_live(self, p: QPainter) -> None:
        """Paint the title line."""
        theme = self.theme
        ground = section_ground(theme)
        paint_title(p, self.width(), theme, "Section", self.phrases(), theme.blue, ground, veiled=True)

    def phrases(self) -> tuple[str, ...]:
        """Return where the cut is, in words of falling length."""
        if self.place.chalk_x is None:
            return ("nothing to cut yet",)
        zero = tape_zero(self.place.shown)[0]
        at = f"at {show_length(self.place.chalk_x - zero, self.place.units)}"
        return f"{at} from the left, looking left", f"{at}, looking left", at

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

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom Wall and Section together, this height staying where it is."""
        middle = self.place.wall_rect.center().x()
        self.place.zoom(ZOOM ** event.angleDelta().y(), (middle, event.position().y()))
        event.accept()
