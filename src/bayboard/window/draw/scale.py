"""From bay axes to pixels and back: y grows up in the bay and down on the screen."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from PySide6.QtCore import QPointF, QRectF

Box = tuple[float, float, float, float]  # x0, y0, x1, y1 in mm


@dataclass(frozen=True, slots=True)
class Scale:
    """How a view shows the bay.  `x0`, `y0`: where bay (0, 0) lies, in pixels of the widget.

    The Wall reads x along the bay.  The Section shares `px_per_mm` and `y0` with it, always,
    and reads x as -z: the metal to the right, the seat to the left.
    """

    px_per_mm: float
    x0: float
    y0: float

    def px(self, x: float, y: float) -> QPointF:
        """Return the pixel of a point given in mm."""
        return QPointF(self.x0 + x * self.px_per_mm, self.y0 - y * self.px_per_mm)

    def mm(self, at: QPointF) -> tuple[float, float]:
        """Return the mm of a pixel."""
        return (at.x() - self.x0) / self.px_per_mm, (self.y0 - at.y()) / self.px_per_mm

    def length(self, mm: float) -> float:
        """Return a length in pixels."""
        return mm * self.px_per_mm

    def box(self, box: Box) -> QRectF:
        """Return the pixels' rectangle of a box in mm."""
        x0, y0, x1, y1 = box
        return QRectF(self.px(x0, y1), self.px(x1, y0))

    def seen(self, rect: QRectF) -> Box:
        """Return the box in mm that a rectangle of pixels shows."""
        x0, y1 = self.mm(rect.topLeft())
        x1, y0 = self.mm(rect.bottomRight())
        return x0, y0, x1, y1

    def zoomed(self, at: QPointF, factor: float) -> "Scale":
        """Return the scale `factor` times as large, what lies under the pixel `at` staying there."""
        x, y = self.mm(at)
        k = self.px_per_mm * factor
        return Scale(k, at.x() - x * k, at.y() + y * k)

    def moved(self, dx: float, dy: float) -> "Scale":
        """Return the scale with the picture moved by pixels, right and down."""
        return Scale(self.px_per_mm, self.x0 + dx, self.y0 + dy)

    def beside(self, x0: float) -> "Scale":
        """Return the Section's scale: the same height axis, z = 0 at the pixel column `x0`."""
        return replace(self, x0=x0)


def fitting(box: Box, rect: QRectF, margin: float) -> Scale:
    """Return the largest scale that shows `box` (mm) centred in `rect`, `margin` pixels left free.

    A box or rectangle without extent still gives a usable scale.
    """
    x0, y0, x1, y1 = box
    wide, high = max(x1 - x0, 1e-6), max(y1 - y0, 1e-6)
    free_wide, free_high = rect.width() - 2 * margin, rect.height() - 2 * margin
    k = max(min(free_wide / wide, free_high / high), 1e-3)
    k = min(k, 1e3)
    middle = rect.center()
    return Scale(k, middle.x() - k * (x0 + x1) / 2, middle.y() + k * (y0 + y1) / 2)


def box_of(points: Sequence[tuple[float, float]]) -> Box | None:
    """Return the box round points, None where there are none."""
    if not points:
        return None
    xs, ys = zip(*points, strict=True)
    return min(xs), min(ys), max(xs), max(ys)
