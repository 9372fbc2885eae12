"""Where the parts of drill day lie, as rectangles of pixels; everything grows with the window."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSizeF

WIDE, HIGH = 1600.0, 1000.0  # px the picture was drawn at
FINGER = 60.0  # px; the least anything to press is high, for a gloved hand
LABEL = 120.0  # px that the longest words of a button need
THEN = 4  # holes shown that come after this one


@dataclass(frozen=True, slots=True)
class DayPlan:
    """The parts; `unit` is how large one pixel of the drawn picture is."""

    unit: float
    header: QRectF
    warning: QRectF
    board: QRectF
    bits: QRectF
    now: QRectF
    type: QRectF  # id and drill in huge type
    close: QRectF
    press: QRectF
    foot: QRectF
    plastic: QRectF
    cards: tuple[QRectF, ...]
    buttons: tuple[QRectF, QRectF, QRectF]

    @property
    def type_alone(self) -> QRectF:
        """Return the room of the huge type where no close-up stands beside it."""
        return QRectF(self.type.topLeft(), QPointF(self.press.left() - 28.0 * self.unit, self.type.bottom()))

    def asking(self, needs: float) -> QRectF:
        """Return where a question takes the place of close-up and blue field, of the foot too if it must."""
        bottom = self.press.bottom() + 40.0 * self.unit
        if bottom - self.close.top() < needs:
            bottom = self.now.bottom() - 8.0
        return QRectF(self.close.topLeft(), QPointF(self.press.right(), bottom))


def day_plan(size: QSizeF, warned: bool, scaled: float = 1.0) -> DayPlan:
    """Return the plan for a window's size; `warned` leaves a band for what must not be drilled."""
    wide, high = size.width(), size.height()
    u = min(wide / WIDE, high / HIGH)
    pad = 24.0 * u
    header = QRectF(0.0, 0.0, wide, max(63.0 * u, 52.0))
    band = max(52.0 * u, 46.0) * scaled if warned else 0.0
    warning = QRectF(pad, header.bottom() + 10.0 * u, wide - 2 * pad, band)
    top = (warning.bottom() + 10.0 * u) if warned else header.bottom() + 13.0 * u
    now = QRectF(pad, high - pad - 432.0 * u, wide - 2 * pad, 432.0 * u)
    bits = QRectF(wide - pad - 246.0 * u, top, 246.0 * u, now.top() - 14.0 * u - top)
    board = QRectF(pad, top, bits.left() - 19.0 * u - pad, bits.height())
    y, right = now.top() + 28.0 * u, now.right() - 32.0 * u
    press = QRectF(right - 368.0 * u, y, 368.0 * u, 200.0 * u)
    close = QRectF(press.left() - 320.0 * u, y, 288.0 * u, 200.0 * u)
    left = now.left() + 34.0 * u
    huge = QRectF(left, y, close.left() - 28.0 * u - left, 234.0 * u)
    foot = QRectF(now.left() + 32.0 * u, now.top() + 282.0 * u, now.width() - 64.0 * u, 140.0 * u)
    return DayPlan(u, header, warning, board, bits, now, huge, close, press, foot, *_foot(foot, u, scaled))


def _foot(
    foot: QRectF, u: float, scaled: float
) -> tuple[QRectF, tuple[QRectF, ...], tuple[QRectF, QRectF, QRectF]]:
    """Return where the foot holds new plastic, the holes that come, and the three buttons."""
    finger = max(FINGER * u, FINGER)
    top = foot.top() + 14.0 * u
    wide = max(152.0 * u * min(scaled, 1.15), LABEL * scaled)
    last = QRectF(foot.right() - wide, top, wide, finger)
    buttons = (last.translated(-2 * (wide + 10.0 * u), 0.0), last.translated(-(wide + 10.0 * u), 0.0), last)
    plastic = QRectF(foot.left(), foot.top() + 52.0 * u, max(128.0 * u, LABEL * scaled), finger)
    start, gap = plastic.right() + 14.0 * u, 12.0 * u
    room = (buttons[0].left() - 26.0 * u - start - (THEN - 1) * gap) / THEN
    cards = tuple(
        QRectF(start + i * (room + gap), top, room, max(112.0 * u, FINGER + 24.0)) for i in range(THEN)
    )
    return plastic, cards, buttons
