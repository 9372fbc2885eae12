"""Where each part of the window lies: the workplace's floor plan as rectangles of pixels."""

from dataclasses import dataclass

from PySide6.QtCore import QRect, QSize

LEAST = QSize(850, 530)  # below it panels would hide each other
USUAL = QSize(1600, 1000)
GAP = 10  # px between panels
HANGING = 36  # px; width of the hanging tape
FOOT = 28  # px; height of the tape at the foot
_SMALL, _LARGE = QSize(1280, 800), QSize(1600, 1000)


@dataclass(frozen=True, slots=True)
class FloorPlan:
    """The parts of the window, in pixels of it.  Wall and Section share their upper edge."""

    strip: QRect
    wall: QRect
    hanging: QRect
    foot: QRect
    section: QRect
    bench: QRect
    findings: QRect
    card: QRect


def floor_plan(size: QSize, scaled: float = 1.0) -> FloorPlan:
    """Return the plan for a window's size; `scaled` is the Scale setting."""
    wide, high = size.width(), size.height()
    strip = _between(high, (_SMALL.height(), 52), (_LARGE.height(), 58), scaled)
    row = _between(high, (_SMALL.height(), 246), (_LARGE.height(), 296), scaled)
    section = _between(wide, (_SMALL.width(), 300), (_LARGE.width(), 372), scaled)
    card = _between(wide, (_SMALL.width(), 372), (_LARGE.width(), 398), scaled)
    hanging, foot = round(HANGING * scaled), round(FOOT * scaled)
    room = wide - section - hanging
    floor = high - row - GAP
    findings = min(
        _between(wide, (_SMALL.width(), 452), (_LARGE.width(), 538), scaled), (wide - card) * 3 // 5
    )
    bench = wide - 4 * GAP - card - findings
    left, top = GAP + bench + GAP, floor + GAP
    return FloorPlan(
        strip=QRect(0, 0, wide, strip),
        wall=QRect(0, strip, room, floor - foot - strip),
        hanging=QRect(room, strip, hanging, floor - strip),
        foot=QRect(0, floor - foot, room, foot),
        section=QRect(room + hanging, strip, section, floor - strip),
        bench=QRect(GAP, top, bench, row - GAP),
        findings=QRect(left, top, findings, row - GAP),
        card=QRect(left + findings + GAP, top, card, row - GAP),
    )


def _between(at: int, small: tuple[int, int], large: tuple[int, int], scaled: float) -> int:
    """Return the size between the two drawn ones, held at either end."""
    share = (at - small[0]) / (large[0] - small[0])
    return round((small[1] + (large[1] - small[1]) * min(max(share, 0.0), 1.0)) * scaled)
