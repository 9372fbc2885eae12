"""What every Section has: the Wall's own height axis and scale, the title line, one zoom with the Wall."""

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter, QWheelEvent

from bayboard.units.length import show_length
from bayboard.window.canvas import Canvas
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.section import section_ground
from bayboard.window.draw.tapes import tape_zero
from bayboard.window.folds import LID_LEAN
from bayboard.window.nearer import ZOOM
from bayboard.window.title_line import paint_title
from bayboard.window.workplace import Workplace

METAL = 62.0  # px from the right edge to z = 0


class SideView(Canvas):
    """A side view at the chalk line, looking left."""

    place: Workplace
    pulled = False  # wide over the Wall

    def layer_scale(self) -> Scale:
        """Return the Wall's scale with z = 0 near the right edge."""
        return self.place.scale.beside(self.width() - METAL * self.theme.size)

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
        if self.pulled:
            return f"pulled wide, {at}, looking left", f"{at}, looking left", at
        lean = self.place.shown.bay.lean
        if abs(lean) >= LID_LEAN:
            side = "left" if lean > 0 else "right"
            return f"{at}, looking left; up is to the {side}", f"{at}; up is to the {side}", at
        return f"{at} from the left, looking left", f"{at}, looking left", at

    def piece_at(self, at: QPointF) -> str | None:
        """Return the piece that is cut and lies under a pixel."""
        raise TypeError("a Section says what it cuts")

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom Wall and Section together, this height staying where it is."""
        middle = self.place.wall_rect.center().x()
        self.place.zoom(ZOOM ** event.angleDelta().y(), (middle, event.position().y()))
        event.accept()
