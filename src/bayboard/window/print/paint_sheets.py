"""The template laid on the board: white sheets shingled in taping order, and what is printed across them."""

from collections.abc import Iterable, Sequence
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QTransform

from bayboard.model.layout import Units
from bayboard.paper.marks import Trace
from bayboard.window import lettering
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.strokes import arrow_head, cased, kept, segment
from bayboard.window.draw.tags import paint_tag, pushed_in, tag_rect
from bayboard.window.lettering import Style
from bayboard.window.print.laid import LaidBoard, LaidHole, LaidSheet
from bayboard.window.print.paint_page import paint_paper_shadow, paper_ink, paper_white, path_of
from bayboard.window.print.swap_mark import paint_swap, sign_size, swap_size
from bayboard.window.print.words import beside_hole
from bayboard.window.theme import LIGHT, Theme, brush, mixed, pen

RING, ARM = 5.0, 10.0  # px; a station's cross
LEAST_HOLE = 3.0  # px; radius a hole is drawn with at least
OVER = 5.0  # px; a hole's cross reaches this far over its edge
LEAST_NAME = 11  # px; a smaller stand-in's name is left off, the sheet itself has it
NUMBER = (54.0, 20.0)  # px; a sheet's number at most and at least
SEAM_DASH = (9.0, 3.0, 1.5, 3.0)  # pen widths


def seam_blue(theme: Theme) -> str:
    """Return the blue of seams and stations on paper: paper is light in both themes."""
    return LIGHT.blue if not theme.dark else mixed(LIGHT.blue, "#000000", 0.1)


def paint_boards(
    p: QPainter, scale: Scale, boards: Sequence[LaidBoard], theme: Theme, swap: frozenset[int] = frozenset()
) -> None:
    """Paint the sheets of all boards, lowest first, and what is printed on them; mark those to `swap`."""
    with kept(p):
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        p.setRenderHint(QPainter.RenderHint.TextAntialiasing)
        for board in boards:
            _paint_paper(p, scale, board, theme)
            _Board(p, scale, board, theme, swap).paint()


def sheet_rect(scale: Scale, sheet: LaidSheet) -> QRectF:
    """Return the pixels of a sheet's own part."""
    return scale.box(sheet.core)


def _paint_paper(p: QPainter, scale: Scale, board: LaidBoard, theme: Theme) -> None:
    by_number = {sheet.number: sheet for sheet in board.sheets}
    edge = mixed(paper_white(theme), "#000000", 0.28)
    for number in board.order:
        rect = scale.box(by_number[number].paper)
        paint_paper_shadow(p, rect, 5.0)
        p.fillRect(rect, brush(paper_white(theme)))
        p.setPen(pen(edge, 0.8))
        p.setBrush(Qt.BrushStyle.NoBrush)
        p.drawRect(rect)


class _Board:
    """What is printed on the sheets of one board; words take their place in turn and never overlap."""

    def __init__(
        self, p: QPainter, scale: Scale, board: LaidBoard, theme: Theme, swap: frozenset[int]
    ) -> None:
        self.swap = swap
        self.p = p
        self.scale = scale
        self.board = board
        self.theme = theme
        self.ink = paper_ink(theme)
        self.papers = [scale.box(sheet.paper) for sheet in board.sheets]
        self.taken: list[QRectF] = []

    def paint(self) -> None:
        """Paint everything that is printed, then the words where there is room."""
        board = self.board
        if len(board.sheets) > 1:
            for sheet in board.sheets:
                self._number(sheet)
        outlines = self._path(board.rings)
        self._stand_ins()
        self.p.strokePath(outlines, pen(self.ink, 1.8))
        self._seams()
        for hole in board.holes:
            self._hole(hole)
        for _, at in board.stations:
            self._station(self.scale.px(*at))
        self.taken += [*(b for hole in board.holes for b in self._boxes(hole)), *self._lines()]
        for sheet in board.sheets:
            if sheet.number in self.swap:
                self._swap(sheet)
        self._stand_in_names()
        self._hole_names()
        self._station_numbers()

    def _path(self, traces: Iterable[Trace]) -> QPainterPath:
        k = self.scale.px_per_mm
        return QTransform(k, 0.0, 0.0, -k, self.scale.x0, self.scale.y0).map(path_of(traces))

    # --- what lies where it lies ---

    def _number(self, sheet: LaidSheet) -> None:
        """Paint a sheet's number, large and light, in its emptiest place."""
        rect = sheet_rect(self.scale, sheet)
        px = max(min(0.4 * min(rect.width(), rect.height()), NUMBER[0] * self.theme.size), NUMBER[1])
        style = Style(px=round(px))
        at = self.scale.px(*sheet.number_at)
        wide = lettering.width(str(sheet.number), style)
        box = QRectF(at.x() - wide / 2 - 3.0, at.y() - 0.4 * px, wide + 6.0, 0.8 * px)
        self.taken.append(box)
        token = mixed(paper_white(self.theme), seam_blue(self.theme), 0.66)
        lettering.draw_in(self.p, box, str(sheet.number), style, token)

    def _stand_ins(self) -> None:
        path = self._path(trace for _, trace in self.board.stand_ins)
        self.p.strokePath(path, pen(self._faint(), 1.1, dash=(6.0, 4.0)))

    def _faint(self) -> str:
        return mixed(paper_white(self.theme), self.ink, 0.66)

    def _hole(self, hole: LaidHole) -> None:
        for disc in hole.discs:
            at, r = self.scale.px(*disc), self._radius(hole)
            if hole.made:
                made = QPainterPath()
                made.addEllipse(at, r, r)
                self.p.fillPath(made, brush(self.ink))
                continue
            arms = _cross(at, r + OVER)
            arms.addEllipse(at, r, r)
            self.p.strokePath(arms, pen(self.ink, 1.3))

    def _radius(self, hole: LaidHole) -> float:
        return max(self.scale.length(hole.radius), LEAST_HOLE)

    def _boxes(self, hole: LaidHole) -> list[QRectF]:
        """Return what each of a hole's crosses takes."""
        return [_square(self.scale.px(*disc), self._radius(hole) + OVER) for disc in hole.discs]

    def _seams(self) -> None:
        path = QPainterPath()
        for a, b in self.board.seams:
            path.addPath(segment(self.scale.px(*a), self.scale.px(*b)))
        self.p.strokePath(path, pen(paper_white(self.theme), 3.4))
        self.p.strokePath(path, pen(seam_blue(self.theme), 1.5, dash=SEAM_DASH))

    def _station(self, at: QPointF) -> None:
        cross, ring = _cross(at, ARM), QPainterPath()
        ring.addEllipse(at, RING, RING)
        self.p.strokePath(cross, pen(paper_white(self.theme), 4.0))
        self.p.fillPath(ring, brush(paper_white(self.theme)))
        cross.addPath(ring)
        self.p.strokePath(cross, pen(seam_blue(self.theme), 1.3))
        self.taken += [_square(at, RING), _square(at, ARM, 1.0), _square(at, 1.0, ARM)]

    def _lines(self) -> list[QRectF]:
        """Return thin boxes along seams and straight edges of the outline, for words to keep off."""
        ends = list(self.board.seams)
        for ring in self.board.rings:
            points = [ring.start, *((step[-2], step[-1]) for step in ring.steps)]
            ends += [(a, b) for a, b in pairwise(points) if min(abs(a[0] - b[0]), abs(a[1] - b[1])) < 1e-6]
        boxes = (QRectF(self.scale.px(*a), self.scale.px(*b)).normalized() for a, b in ends)
        return [box.adjusted(-1.0, -1.0, 1.0, 1.0) for box in boxes]

    def _swap(self, sheet: LaidSheet) -> None:
        """Mark a sheet to be swapped: two arrows and the word, in the freest place of the sheet."""
        rect, middle = sheet_rect(self.scale, sheet), self.scale.px(*sheet.number_at)
        inner = rect.adjusted(5.0, 5.0, -5.0, -5.0)
        wide, high = swap_size(self.theme)
        if wide > inner.width():
            wide, high = sign_size(self.theme)
        below = [QPointF(middle.x(), middle.y() + dy) for dy in (46.0, -46.0, 64.0, -64.0)]
        shares = [(a / 12, b / 12) for a in range(13) for b in range(13)]
        shares.sort(key=lambda s: (s[0] - 0.5) ** 2 + (s[1] - 0.5) ** 2)
        grid = [
            QPointF(inner.left() + a * inner.width(), inner.top() + b * inner.height()) for a, b in shares
        ]
        spots = (QRectF(at.x() - wide / 2, at.y() - high / 2, wide, high) for at in (*below, *grid))
        tags = [pushed_in(spot, inner) for spot in spots]
        tag = min(tags, key=lambda t: sum(t.intersects(box) for box in self.taken))  # the first of equals
        self.taken.append(tag)
        paint_swap(self.p, tag, self.theme)

    # --- words, wherever there is room ---

    def _stand_in_names(self) -> None:
        for name, trace in self.board.stand_ins:
            box = self._path((trace,)).boundingRect()
            px = round(min(24.0 * self.theme.size, 0.5 * box.height()))
            style = Style("pencil", px)
            if px >= LEAST_NAME and lettering.width(name, style) < box.width() - 6.0:
                steps = [(0.0, 0.0), *((dx, dy) for dy in (-0.3, 0.0, 0.3) for dx in (-0.25, 0.25, 0.0))]
                spots = [box.center() + QPointF(dx * box.width(), dy * box.height()) for dx, dy in steps]
                self._word(name, [_round_middle(at, name, style) for at in spots], style, self._faint())

    def _hole_names(self) -> None:
        """Name the fixings; a stand-in's screws are found by its name and are named on the sheet itself."""
        style = Style(px=14.0, weight=600).sized(self.theme.size)
        for hole in self.board.holes:
            if "#" not in hole.id:
                boxes = self._boxes(hole)
                self._word(hole.id, _round(boxes[0].united(boxes[-1]), hole.id, style), style, self.ink)

    def _station_numbers(self) -> None:
        style = Style(px=14.0, weight=500).sized(self.theme.size)
        for number, at in self.board.stations:
            spots = _round(_square(self.scale.px(*at), RING + 1.0), str(number), style)
            self._word(str(number), spots, style, seam_blue(self.theme))

    def _word(self, text: str, spots: Sequence[QRectF], style: Style, token: str) -> None:
        """Write a word in the first free spot; where none is free it is left off."""
        for spot in spots:
            on_paper = any(paper.contains(spot) for paper in self.papers)
            if on_paper and not any(spot.intersects(taken) for taken in self.taken):
                self.taken.append(spot)
                lettering.draw_in(self.p, spot, text, style, token)
                return


def _cross(at: QPointF, arm: float) -> QPainterPath:
    path = segment(at - QPointF(arm, 0.0), at + QPointF(arm, 0.0))
    path.addPath(segment(at - QPointF(0.0, arm), at + QPointF(0.0, arm)))
    return path


def _square(at: QPointF, across: float, up: float | None = None) -> QRectF:
    up = across if up is None else up
    return QRectF(at.x() - across, at.y() - up, 2 * across, 2 * up)


def _round_middle(at: QPointF, text: str, style: Style) -> QRectF:
    """Return the box of a word round its middle."""
    wide, high = lettering.width(text, style), 0.76 * style.px
    return QRectF(at.x() - wide / 2, at.y() - high / 2, wide, high)


def _round(box: QRectF, text: str, style: Style) -> list[QRectF]:
    """Return boxes for a short word round a mark: at its four corners, beside, over and under it."""
    wide, high = lettering.width(text, style), 0.76 * style.px
    right, left = box.right() + 2.0, box.left() - 2.0 - wide
    over, under = box.center().y() - 3.0 - high, box.center().y() + 3.0
    middle = box.center().x() - wide / 2
    spots = ((right, over), (right, under), (left, over), (left, under))
    spots += ((right, box.center().y() - high / 2), (left, box.center().y() - high / 2))
    spots += ((middle, box.top() - 3.0 - high), (middle, box.bottom() + 3.0))
    return [QRectF(x, y, wide, high) for x, y in spots]


def paint_in_hand(
    p: QPainter, scale: Scale, sheet: LaidSheet, theme: Theme, units: Units, rect: QRectF, focused: bool
) -> None:
    """Frame the sheet in hand and say how near its seams come to a hole."""
    on_paper = LIGHT if theme.dark else theme  # paper is light in both themes
    with kept(p):
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        frame = QPainterPath()
        frame.addRect(sheet_rect(scale, sheet))
        cased(p, frame, on_paper.blue, 3.0, on_paper)
        if focused:
            ring = QPainterPath()
            ring.addRect(sheet_rect(scale, sheet).adjusted(-7.0, -7.0, 7.0, 7.0))
            cased(p, ring, on_paper.blue, 2.0, on_paper, dash=(4.0, 2.5), casing=1.0)
        if sheet.nearest is not None:
            _paint_nearest(p, scale, sheet, theme, beside_hole(sheet.nearest, units), rect)


def _paint_nearest(
    p: QPainter, scale: Scale, sheet: LaidSheet, theme: Theme, text: str, rect: QRectF
) -> None:
    """Paint the distance from a seam to a hole, and what it means on a tag above or below the sheets."""
    nearest = sheet.nearest
    assert nearest is not None
    on_paper, size = LIGHT if theme.dark else theme, theme.size
    on, edge = scale.px(*nearest.on), scale.px(*nearest.edge)
    frame, paper = sheet_rect(scale, sheet), scale.box(sheet.paper)
    above = sheet.above is None or sheet.below is not None
    y = paper.top() - 20.0 * size if above else paper.bottom() + 20.0 * size
    tag = pushed_in(
        tag_rect(QPointF(frame.center().x(), y), text, theme), rect.adjusted(6, 46 * size, -6, -6)
    )
    end = QPointF(frame.center().x(), frame.top() if above else frame.bottom())
    stub = segment(end, QPointF(end.x(), tag.center().y()))
    token = on_paper.should if nearest.near else on_paper.blue
    p.strokePath(stub, pen(on_paper.paper, 4.0))
    p.strokePath(stub, pen(token, 1.5))
    way = (edge.x() - on.x(), edge.y() - on.y())
    cased(p, segment(edge, on), token, 2.0, on_paper)
    if way[0] ** 2 + way[1] ** 2 > 120.0:
        p.fillPath(arrow_head(edge, way, 8.0, 7.0), brush(token))
        p.fillPath(arrow_head(on, (-way[0], -way[1]), 8.0, 7.0), brush(token))
    paint_tag(p, tag, text, theme, token=theme.should if nearest.near else theme.blue)
