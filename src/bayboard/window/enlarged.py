"""How large the Wall is drawn, and what of it is seen: whole, zoomed, pushed, beside a wide Section."""

from collections.abc import Sequence

from PySide6.QtCore import QObject, QRectF, Signal

from bayboard.model.layout import Layout
from bayboard.rules.scene import Scene
from bayboard.window.draw.scale import Scale, box_of, fitting
from bayboard.window.theme import Theme

MARGIN = 34.0  # px left free round a wall that is drawn whole
TITLE = 40.0  # px of the Wall's title line, left free above it
NEAREST, FARTHEST = 12.0, 0.06  # px a mm when zoomed all the way in and out


class Enlarged(QObject):
    """What is drawn, at a scale.  Subclasses give what is shown and where the chalk line stands."""

    zoomed = Signal()
    shown: Layout
    scene: Scene
    chalk_x: float | None

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self.theme = theme
        self.scale = Scale(0.8, 0.0, 0.0)
        self.wall_rect = QRectF(0.0, 0.0, 1192.0, 608.0)
        self.usual_rect = self.wall_rect  # what the Wall has while the Section is not pulled wide
        self.whole = True  # drawn to fit, until one zooms or pans

    def set_wall_rect(self, rect: QRectF, usual: QRectF | None = None) -> None:
        """Tell how large the Wall is drawn: what was whole stays whole, else its middle stays.

        `usual` is what it has while the Section is not pulled wide: that alone decides how large things
        are drawn.
        """
        old, self.wall_rect = self.wall_rect, rect
        before, self.usual_rect = self.usual_rect, rect if usual is None else usual
        if self.whole:
            self.fit()
            return
        if before == self.usual_rect:
            self._take_scale(self._round_line(self.scale) if rect != old else self.scale)
            return
        after = self.usual_rect
        grown = min(after.width() / max(before.width(), 1.0), after.height() / max(before.height(), 1.0))
        x, y = self.scale.mm(old.center())
        k = self.scale.px_per_mm * grown
        self.set_scale(Scale(k, rect.center().x() - x * k, rect.center().y() + y * k))

    def _round_line(self, scale: Scale) -> Scale:
        """Return the scale with the chalk line in the middle of the Wall."""
        if self.chalk_x is None:
            return scale
        return scale.moved(self.wall_rect.center().x() - scale.px(self.chalk_x, 0.0).x(), 0.0)

    def _take_scale(self, scale: Scale) -> None:
        """Draw at another scale, what is whole staying whole."""
        if scale != self.scale:
            self.scale = scale
            self.zoomed.emit()

    def keep_line_seen(self) -> None:
        """Bring the chalk line back to the middle of a narrow Wall once it is near or past its edge."""
        if self.wall_rect == self.usual_rect or self.chalk_x is None:
            return
        inset = 0.15 * self.wall_rect.width()
        line = self.scale.px(self.chalk_x, 0.0).x()
        if not self.wall_rect.left() + inset <= line <= self.wall_rect.right() - inset:
            self._take_scale(self._round_line(self.scale))

    def fit(self) -> None:
        """Draw the wall and the boards whole."""
        points = [*self.shown.bay.wall, *(p for board in self.shown.boards for p in board.outline)]
        points += [p for piece in self.scene.placed.values() for p in piece.ring.tolist()]
        box = box_of([(p[0], p[1]) for p in points]) or (-100.0, -100.0, 1200.0, 500.0)
        size = self.theme.size
        rect = self.usual_rect.adjusted(0.0, TITLE * size / 2, 0.0, 0.0)
        scale = fitting(box, rect, MARGIN * size)
        self.set_scale(scale if self.wall_rect == self.usual_rect else self._round_line(scale))
        self.whole = True

    def set_scale(self, scale: Scale) -> None:
        """Draw at another scale."""
        self.whole = False
        if scale != self.scale:
            self.scale = scale
            self.zoomed.emit()

    def zoom(self, factor: float, at: Sequence[float] | None = None) -> None:
        """Zoom at a pixel of the Wall, at its middle where none is given; both ends have a stop."""
        spot = self.wall_rect.center()
        if at is not None:
            spot.setX(at[0])
            spot.setY(at[1])
        k = self.scale.px_per_mm
        factor = min(max(k * factor, FARTHEST), NEAREST) / k
        self.set_scale(self.scale.zoomed(spot, factor))

    def show_place(self, at: tuple[float, float]) -> None:
        """Move the picture so that a place (mm) is seen, if it is not."""
        spot = self.scale.px(*at)
        inner = self.wall_rect.adjusted(60.0, 60.0, -60.0, -60.0)
        if not inner.contains(spot):
            middle = inner.center()
            self.set_scale(self.scale.moved(middle.x() - spot.x(), middle.y() - spot.y()))
