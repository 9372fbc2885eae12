"""Where the marks of the findings stand: each on its spot, or beside it where another stands there."""

from collections.abc import Mapping

from PySide6.QtCore import QPointF, QRectF

from bayboard.rules.scene import Scene
from bayboard.window.draw.gear import face_of
from bayboard.window.draw.marks import MARK
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.show import Mark, WallShow
from bayboard.window.theme import Theme

Spotted = tuple[Mark, QPointF]  # a finding and the middle of its mark
Step = tuple[float, float]  # how far a mark stands aside, in marks
_STEPS: list[Step] = sorted(
    ((i / 2, j / 2) for i in range(-10, 11) for j in range(-10, 11)),
    key=lambda s: (s[0] ** 2 + 1.5 * s[1] ** 2, -s[0], s[1]),
)
"""Where a mark may stand aside, in marks: the nearest first, right before left, above before below."""


def mark_spot(scale: Scale, scene: Scene, theme: Theme, show: WallShow, mark: Mark) -> QPointF | None:
    """Return where a finding's sign stands, None when it has no place on this wall.

    One about a whole stand-in sits in its clipped corner, or in the opposite upper corner while
    the turning arc is there.
    """
    piece = scene.placed.get(mark.subject or "")
    if piece is not None and (mark.corner or mark.at is None):
        made, at = face_of(scale, piece, theme), scale.px(*piece.at)
        arc = mark.subject in show.selected
        x, y = made.other if arc else made.corner
        return QPointF(at.x() + x, at.y() + y)
    return None if mark.at is None else scale.px(*mark.at)


def mark_rect(at: QPointF, theme: Theme) -> QRectF:
    """Return the rectangle of a mark round its middle, its casing with it."""
    half = 0.5 * MARK * theme.size + 3.0
    return QRectF(at.x() - half, at.y() - half, 2 * half, 2 * half)


def spotted(
    scale: Scale,
    scene: Scene,
    theme: Theme,
    show: WallShow,
    rect: QRectF,
    last: Mapping[tuple[str, ...], Step],
) -> tuple[list[Spotted], dict[tuple[str, ...], Step]]:
    """Return the marks that are seen with their places, worst first, none on another; and who stands aside.

    `last`: how far findings stood aside before; one keeps to that side while it has to stand aside.
    """
    told = {m.number for m in show.measures}
    seen = rect.adjusted(-20, -20, 20, 20)
    found: list[Spotted] = []
    asides: dict[tuple[str, ...], Step] = {}
    aside = _Aside(0.8 * MARK * theme.size, MARK * theme.size)
    for mark in sorted(show.marks, key=lambda m: m.number):
        spot = None if mark.number in told else mark_spot(scale, scene, theme, show, mark)
        if spot is not None and seen.contains(spot):
            at, step = aside.placed(spot, last.get(mark.of) if mark.of else None)
            found.append((mark, at))
            if step != (0.0, 0.0):
                asides[mark.of] = step
    return found, asides


class _Aside:
    """Places marks so that none lies on another, nearer than `least` px across and down."""

    def __init__(self, least: float, step: float) -> None:
        self.least, self.step = least, step
        self.held: dict[tuple[int, int], list[tuple[float, float]]] = {}

    def placed(self, spot: QPointF, last: Step | None) -> tuple[QPointF, Step]:
        """Return the spot, or where it stood aside last, or the nearest free place beside it; and the step.

        It is the spot itself where all round it is full.
        """
        x, y = spot.x(), spot.y()
        step = next((s for s in self._tried(last) if not self._taken(x, y, s)), (0.0, 0.0))
        x, y = x + step[0] * self.step, y + step[1] * self.step
        self.held.setdefault((int(x // self.least), int(y // self.least)), []).append((x, y))
        return QPointF(x, y), step

    def _tried(self, last: Step | None) -> list[Step]:
        return _STEPS if last is None else [_STEPS[0], last, *_STEPS]

    def _taken(self, x: float, y: float, step: Step) -> bool:
        x, y = x + step[0] * self.step, y + step[1] * self.step
        col, row, least, held = int(x // self.least), int(y // self.least), self.least, self.held
        for i in (col - 1, col, col + 1):
            for j in (row - 1, row, row + 1):
                for a, b in held.get((i, j), ()):
                    if abs(x - a) < least and abs(y - b) < least:
                        return True
        return False
