"""What a pixel of the Wall is, as felt: the turning grip, the chalk line and its flag, a finding's mark."""

from PySide6.QtCore import QPointF, QRectF

from bayboard.window.draw.scale import Scale
from bayboard.window.draw.show import WallShow
from bayboard.window.draw.turning import turn_grip
from bayboard.window.draw.wall import wall_marks
from bayboard.window.lead_under import LeadUnder
from bayboard.window.workplace import Workplace

CHALK_FELT, FLAG_FELT = 12.0, 20.0  # px each side of the chalk line and of its flag
FLAG_HIGH = 40.0
MARK_FELT = 20.0


class Under:
    """Tells what lies under a pixel of the Wall, stand-ins apart (see `picking`)."""

    def __init__(self, place: Workplace) -> None:
        self.place = place
        self._leads = LeadUnder()
        self._marks: tuple[WallShow, Scale, dict[int, tuple[QPointF, QRectF | None]]] | None = None

    def grip(self, at: QPointF) -> bool:
        """Return whether the turning grip of what is selected is there."""
        place = self.place
        pieces = [place.scene.placed[n] for n in place.selected if n in place.scene.placed]
        grip = turn_grip(place.scale, pieces, place.theme)
        return grip is not None and grip.felt.contains(at)

    def lead(self, at: QPointF) -> str | None:
        """Return the id of the lead that is there."""
        place = self.place
        return self._leads.at(place.scene, place.scale.mm(at), place.scale.px_per_mm)

    def line(self, at: QPointF) -> bool:
        """Return whether the chalk line is there."""
        x = self.place.chalk_x
        return x is not None and abs(self.place.scale.px(x, 0.0).x() - at.x()) <= CHALK_FELT

    def flag(self, at: QPointF) -> bool:
        """Return whether the chalk line's flag is there."""
        x, size = self.place.chalk_x, self.place.theme.size
        if x is None or at.y() > FLAG_HIGH * size:
            return False
        return abs(self.place.scale.px(x, 0.0).x() - at.x()) <= FLAG_FELT * size

    def mark(self, at: QPointF, show: WallShow, rect: QRectF) -> int | None:
        """Return the number of the finding whose mark or tag is there."""
        scale, theme = self.place.scale, self.place.theme
        if self._marks is None or self._marks[0] is not show or self._marks[1] is not scale:
            self._marks = (show, scale, wall_marks(scale, self.place.scene, theme, show, rect))
        for number, (spot, tag) in sorted(self._marks[2].items()):
            if self._near(spot, at) or (tag is not None and tag.contains(at)):
                return number
        return None

    def on_spot(self, at: QPointF, number: int) -> bool:
        """Return whether the mark of a finding itself is there, not its tag."""
        return self._marks is not None and self._near(self._marks[2][number][0], at)

    def _near(self, spot: QPointF, at: QPointF) -> bool:
        by = spot - at
        return bool(by.x() ** 2 + by.y() ** 2 <= (MARK_FELT * self.place.theme.size) ** 2)
