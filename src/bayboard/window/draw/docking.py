"""Where the marks and tags of the findings stand: in a clipped corner, on the spot, docked in a free band."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.rules.scene import Scene
from bayboard.window import lettering
from bayboard.window.draw.gear import face_of
from bayboard.window.draw.leaders import Leader, clear_leader
from bayboard.window.draw.marks import MARK, paint_mark
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.show import Mark, WallShow
from bayboard.window.draw.strokes import cased
from bayboard.window.draw.tags import paint_tag, tag_size
from bayboard.window.theme import Theme

TAGGED = 5  # the worst findings wear tags, the others their sign only
APART = 10.0  # px between two docked tags
TITLE = 40.0  # px at the top of the Wall that belong to its title line
FARTHEST = 240.0  # px; a tag that must lie farther from its mark stays folded
Spotted = tuple[Mark, QPointF]  # a finding and the middle of its mark


@dataclass(frozen=True, slots=True)
class Docked:
    """A finding on the Wall: its mark's middle, and its tag's rectangle where it wears one."""

    mark: Mark
    at: QPointF
    tag: QRectF | None


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


def docked(
    scale: Scale, scene: Scene, theme: Theme, show: WallShow, rect: QRectF, taken: Sequence[QRectF] = ()
) -> tuple[Docked, ...]:
    """Return every finding's mark with its place, the worst five and the told ones with docked tags.

    Findings already told by a measure are left out.  `taken`: rectangles no tag may cover.
    """
    told = {m.number for m in show.measures}
    found: list[Spotted] = []
    for mark in sorted(show.marks, key=lambda m: m.number):
        spot = None if mark.number in told else mark_spot(scale, scene, theme, show, mark)
        if spot is not None and rect.adjusted(-20, -20, 20, 20).contains(spot):
            found.append((mark, _aside(spot, [at for _, at in found], theme)))
    worded = [pair for pair in found if pair[0].short is not None]
    wearing = {m.number for m, _ in worded[:TAGGED]} | (show.told & {m.number for m, _ in worded})
    tags = _dock([pair for pair in worded if pair[0].number in wearing], scale, scene, theme, rect, taken)
    return tuple(Docked(mark, at, tags.get(mark.number)) for mark, at in found)


def leaders(found: Sequence[Docked], numbers: Sequence[QRectF]) -> list[tuple[Docked, Leader]]:
    """Return the leader of each tag that lies off its mark, clear of numbers and each other where it can."""
    made: list[tuple[Docked, Leader]] = []
    for one in found:
        if one.tag is not None and not one.tag.contains(one.at):
            made.append((one, clear_leader(one.tag, one.at, numbers, [line for _, line in made])))
    return made


def number_rects(scale: Scale, scene: Scene, theme: Theme) -> list[QRectF]:
    """Return where the numbers of the stand-ins are lettered, in pixels."""
    found = []
    for piece in scene.placed.values():
        number, at = face_of(scale, piece, theme).words[0], scale.px(*piece.at)
        line = lettering.line(number.text, number.style)
        found.append(
            QRectF(at.x() + number.x - line.width / 2, at.y() + number.y - line.rise, line.width, line.rise)
        )
    return found


def _aside(spot: QPointF, others: Sequence[QPointF], theme: Theme) -> QPointF:
    """Return the spot moved right as long as it would lie on another mark."""
    step = MARK * theme.size
    at = QPointF(spot)
    while any(abs(at.x() - o.x()) < 0.8 * step and abs(at.y() - o.y()) < 0.8 * step for o in others):
        at = QPointF(at.x() + step, at.y())
    return at


def _dock(
    wearing: Sequence[Spotted],
    scale: Scale,
    scene: Scene,
    theme: Theme,
    rect: QRectF,
    taken: Sequence[QRectF],
) -> dict[int, QRectF]:
    """Return the tags' rectangles by finding number, in the bands above and below the boards."""
    above, below, middle = _bands(scale, scene, theme, rect)
    upper, lower = _shared_out(wearing, middle, theme, rect)
    found: dict[int, QRectF] = {}
    for y, mine in ((above, upper), (below, lower)):
        for (mark, at), tag in _row(sorted(mine, key=lambda w: w[1].x()), y, theme, rect):
            near = abs(tag.center().x() - at.x()) - tag.width() / 2 <= FARTHEST
            if near and rect.contains(tag) and not any(tag.intersects(t) for t in taken):
                found[mark.number] = tag
    return found


def _shared_out(
    wearing: Sequence[Spotted], middle: float, theme: Theme, rect: QRectF
) -> tuple[list[Spotted], list[Spotted]]:
    """Return the marks for the upper and the lower band: the nearer, the other when that is full.

    One that finds both full keeps its tag folded; the worst choose first.
    """
    bands: tuple[list[Spotted], list[Spotted]] = ([], [])
    room = [rect.width() - 16.0, rect.width() - 16.0]
    for pair in sorted(wearing, key=lambda w: w[0].number):
        wide = tag_size(pair[0].short or "", theme, marked=True)[0] + APART
        nearer = 0 if pair[1].y() < middle else 1
        for band in (nearer, 1 - nearer):
            if wide <= room[band]:
                room[band] -= wide
                bands[band].append(pair)
                break
    return bands


def _bands(scale: Scale, scene: Scene, theme: Theme, rect: QRectF) -> tuple[float, float, float]:
    """Return the top of the tags above and below the boards, and the height that parts the marks."""
    high = 24.0 * theme.size
    top, bottom = rect.top() + TITLE + 4.0, rect.bottom() - high - 8.0
    boxes = [scale.box(shape.polygon.bounds) for shape in scene.boards.values()]
    if not boxes:
        return top, bottom, rect.center().y()
    over = min(box.top() for box in boxes)
    under = max(box.bottom() for box in boxes)
    above = min(max(over - high - 20.0, top), bottom)
    below = max(min(under + 52.0 * theme.size, bottom), top)
    return above, below, (over + under) / 2


def _row(marks: Sequence[Spotted], y: float, theme: Theme, rect: QRectF) -> list[tuple[Spotted, QRectF]]:
    """Return tags side by side in order of x: each over its mark, pushed right, then back from the edge."""
    lefts: list[float] = []
    sizes = [tag_size(mark.short or "", theme, marked=True) for mark, _ in marks]
    for (_, at), (wide, _) in zip(marks, sizes, strict=True):
        left = max(at.x() - wide / 2, rect.left() + 8.0)
        lefts.append(max(left, lefts[-1] + sizes[len(lefts) - 1][0] + APART) if lefts else left)
    edge = rect.right() - 8.0
    for i in range(len(lefts) - 1, -1, -1):
        lefts[i] = min(lefts[i], edge - sizes[i][0])
        edge = lefts[i] - APART
    return [(pair, QRectF(left, y, *size)) for pair, left, size in zip(marks, lefts, sizes, strict=True)]


def paint_docked(p: QPainter, found: Sequence[Docked], theme: Theme, numbers: Sequence[QRectF] = ()) -> None:
    """Paint leaders, then marks, then tags, so that none hides another's number."""
    for one, line in leaders(found, numbers):
        severity = one.mark.severity
        token = theme.shouldfill if severity == "should" else theme.severity(severity)
        path = QPainterPath(QPointF(*line[0]))
        for x, y in line[1:]:
            path.lineTo(x, y)
        cased(p, path, token, 2.2, theme)
    for one in reversed(found):
        paint_mark(p, one.at, one.mark.severity, one.mark.number, theme)
    for one in found:
        if one.tag is not None:
            paint_tag(p, one.tag, one.mark.short or "", theme, one.mark.severity, one.mark.number)
