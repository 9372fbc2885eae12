"""Where each part of the window lies: the workplace's floor plan as rectangles of pixels.

A window counts as large as it is divided by the Scale setting: the larger the type, the sooner it is narrow.
"""

from dataclasses import dataclass

from PySide6.QtCore import QRect, QSize

LEAST = QSize(850, 530)  # px at Scale 100 %; below it panels would hide each other
USUAL = QSize(1600, 1000)
GAP = 10  # px between panels
HANGING = 36  # px; width of the hanging tape
FOOT = 28  # px; height of the tape at the foot
NARROW = 1180  # px; below it the Card takes the Findings' place while something is edited
SLIM = 900  # px; below it the Section slides over the Wall
LEAST_ROW = 222  # px; the lowest bottom row, gap included
_SMALL, _LARGE = QSize(1280, 800), QSize(1600, 1000)


@dataclass(frozen=True, slots=True)
class FloorPlan:
    """The parts of the window, in pixels of it.  Wall and Section share their upper edge.

    `shared`: Card and Findings have one place and take turns.  `slides`: the Section lies over the Wall
    while it is out; while it is not, `section` is empty.
    """

    strip: QRect
    wall: QRect
    hanging: QRect
    foot: QRect
    section: QRect
    bench: QRect
    findings: QRect
    card: QRect
    shared: bool = False
    slides: bool = False


def floor_plan(size: QSize, scaled: float = 1.0, three: bool = False, out: bool = False) -> FloorPlan:
    """Return the plan for a window's size; `scaled` is the Scale setting.

    `three`: all three panels of the bottom row are wanted, however narrow; `out`: the Section is wanted
    where it slides.
    """
    wide, high = size.width(), size.height()
    strip = _between(high, (_SMALL.height(), 52), (_LARGE.height(), 58), scaled)
    row = _row(high, scaled)
    slides = wide < SLIM * scaled
    section = _between(wide, (_SMALL.width(), 300), (_LARGE.width(), 372), scaled)
    hanging, foot = round(HANGING * scaled), round(FOOT * scaled)
    shown = section if out or not slides else 0
    room = wide - hanging - (0 if slides else section)
    floor = high - row - GAP
    bench, findings, card = _panels(QRect(GAP, floor + GAP, wide - 2 * GAP, row - GAP), scaled, three)
    return FloorPlan(
        strip=QRect(0, 0, wide, strip),
        wall=QRect(0, strip, room, floor - foot - strip),
        hanging=QRect(wide - shown - hanging, strip, hanging, floor - strip),
        foot=QRect(0, floor - foot, room, foot),
        section=QRect(wide - shown, strip, shown, floor - strip),
        bench=bench,
        findings=findings,
        card=card,
        shared=findings == card,
        slides=slides,
    )


def _row(high: int, scaled: float) -> int:
    """Return how high the bottom row is with its gap: a low window leaves the Wall more of its height."""
    drawn = _between(high, (_SMALL.height(), 246), (_LARGE.height(), 296), scaled)
    spared = round(0.35 * max(_SMALL.height() * scaled - high, 0.0))
    return max(drawn - spared, round(LEAST_ROW * scaled))


def _panels(row: QRect, scaled: float, three: bool) -> tuple[QRect, ...]:
    """Return where bench, Findings and Card lie in the bottom row."""
    if row.width() + 2 * GAP >= NARROW * scaled:
        return _drawn_panels(row, scaled)
    if three:
        side = round(0.31 * row.width())
        return _side_by_side(row, (side, side, row.width() - 2 * side - 2 * GAP))
    shared = round(max(0.56 * row.width(), min(460.0 * scaled, 0.62 * row.width())))
    bench_at, shared_at = _side_by_side(row, (row.width() - shared - GAP, shared))
    return bench_at, shared_at, QRect(shared_at)


def _drawn_panels(row: QRect, scaled: float) -> tuple[QRect, ...]:
    wide = row.width() + 2 * GAP
    card = _between(wide, (_SMALL.width(), 372), (_LARGE.width(), 398), scaled)
    findings = min(
        _between(wide, (_SMALL.width(), 452), (_LARGE.width(), 538), scaled), (wide - card) * 3 // 5
    )
    return _side_by_side(row, (row.width() - card - findings - 2 * GAP, findings, card))


def _side_by_side(row: QRect, wides: tuple[int, ...]) -> tuple[QRect, ...]:
    found, x = [], row.left()
    for wide in wides:
        found.append(QRect(x, row.top(), wide, row.height()))
        x += wide + GAP
    return tuple(found)


def _between(at: int, small: tuple[int, int], large: tuple[int, int], scaled: float) -> int:
    """Return the size between the two drawn ones, held at either end."""
    share = (at / scaled - small[0]) / (large[0] - small[0])
    return round((small[1] + (large[1] - small[1]) * min(max(share, 0.0), 1.0)) * scaled)
