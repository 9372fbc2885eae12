"""One sheet of the template: what must lie exactly, and the ground that is left for words."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from bayboard.model.layout import Point
from bayboard.paper import diagonals, edges, hole_marks
from bayboard.paper.curves import Box, rectangle
from bayboard.paper.face import Drilled
from bayboard.paper.ground import LINE, SOFT, Ground
from bayboard.paper.marks import CUT, MEASURED, Clipped, Fill, Mark, Page, Shown, Stroke
from bayboard.paper.section import Section
from bayboard.paper.stations import ARM, RING, cross
from bayboard.paper.tiles import Tile

STAND_IN_DASH = (4.0, 2.0)
KEEP_OFF = 0.6  # mm; words stay this far inside a seam


@dataclass
class Sheet:
    """A sheet on the drawing table: its ground, what is clipped to its window, what lies over that."""

    section: Section
    tile: Tile
    ground: Ground
    shape: list[Stroke | Fill | Clipped] = field(default_factory=list)
    over: list[Mark] = field(default_factory=list)
    shows: list[Shown] = field(default_factory=list)

    @property
    def live(self) -> Box:
        """Return the box of the page that may be drawn on."""
        return self.section.plan.form.live_box

    @property
    def visible(self) -> Box:
        """Return the part of the live box that is still seen when all is taped."""
        tile, (x0, y0, x1, y1) = self.tile, self.tile.carry.box(self.tile.core)
        live = self.live
        return (
            live[0] if tile.left is None else x0 + KEEP_OFF,
            live[1] if tile.below is None else y0 + KEEP_OFF,
            live[2] if tile.right is None else x1 - KEEP_OFF,
            live[3] if tile.above is None else y1 - KEEP_OFF,
        )

    def shown(self, at: Point) -> bool:
        """Return whether a point of the face lies in the window."""
        x0, y0, x1, y1 = self.tile.window
        return x0 <= at[0] <= x1 and y0 <= at[1] <= y1

    def owns(self, at: Point) -> bool:
        """Return whether a point of the face lies in this sheet's own part."""
        x0, y0, x1, y1 = self.tile.core
        return x0 <= at[0] <= x1 and y0 <= at[1] <= y1

    def page(self, strip: Sequence[Mark]) -> Page:
        """Return the finished page."""
        window = rectangle(self.tile.carry.box(self.tile.window))
        clipped = Clipped(window, tuple(self.shape))
        marks, size = (clipped, *self.over, *strip), self.section.plan.form.size
        return Page("drill", size, marks, tuple(self.shows), self.tile.number, len(strip))


def drawn(section: Section, tile: Tile) -> Sheet:
    """Return the sheet with everything on it that has one true place, and its ground taken accordingly."""
    sheet = Sheet(section, tile, Ground(section.plan.form.live_box))
    _sawn(sheet)
    _stand_ins(sheet)
    for hole in section.face.holes:
        if sheet.shown(hole.at):
            _hole(sheet, hole)
    _seams(sheet)
    _stations(sheet)
    _corners(sheet)
    return sheet


def _sawn(sheet: Sheet) -> None:
    """Draw the outline and the cut-outs."""
    face, carry = sheet.section.face, sheet.tile.carry
    covered = edges.covered_boxes(sheet.tile)
    if covered:
        sheet.shape.append(edges.hatching(covered))
    for box in covered:
        sheet.ground.take(box, SOFT)
    rings = (face.outline, *(ring for _, ring in face.cutouts))
    sheet.shape.append(Stroke(tuple(carry.trace(r) for r in rings), CUT))
    sheet.ground.take_points(carry.points(sheet.section.sawn_points), LINE)
    origin = face.carry.then(carry)
    sheet.shows.append(Shown("outline", face.board.id, origin.point((0.0, 0.0)), origin.turn))


def _stand_ins(sheet: Sheet) -> None:
    """Draw the outlines of the gear, dashed."""
    carry = sheet.tile.carry
    seen = [s for s in sheet.section.face.stand_ins if _overlap(_box(s.outline), sheet.tile.window)]
    if seen:
        sheet.shape.append(Stroke(tuple(carry.trace(s.trace) for s in seen), MEASURED, STAND_IN_DASH))
    for piece in seen:
        sheet.ground.take_points(carry.points(sheet.section.dashed_points[piece.id]), SOFT)
        sheet.shows.append(Shown("stand-in", piece.id, carry.point(piece.at), piece.turn))


def _hole(sheet: Sheet, hole: Drilled) -> None:
    carry = sheet.tile.carry
    sheet.shape += hole_marks.strokes(hole, carry)
    for box in hole_marks.solid_boxes(hole, carry):
        sheet.ground.take(box)
    if not hole.made:
        sheet.ground.take_traces(hole_marks.arm_traces(hole, carry))
    sheet.shows.append(Shown("hole", hole.id, carry.point(hole.at), hole.turn))


def _seams(sheet: Sheet) -> None:
    for stroke in edges.seam_lines(sheet.tile):
        sheet.over.append(stroke)
        sheet.ground.take_traces(stroke.traces, LINE)


def _stations(sheet: Sheet) -> None:
    number = sheet.tile.number
    for station in sheet.section.stations:
        if number in (station.seam.over, station.seam.under):
            at = sheet.tile.carry.point(station.at)
            _mark(sheet, cross(at), at, RING + 0.6, ARM, f"S{station.number}-{number}")


def _corners(sheet: Sheet) -> None:
    crosses = sheet.section.crosses
    for i, point in enumerate(crosses.points if crosses else ()):
        if sheet.shown(point):
            at = sheet.tile.carry.point(point)
            mark = (diagonals.cross(at),)
            _mark(sheet, mark, at, diagonals.EYE + 0.6, diagonals.ARM, f"C{i + 1}-{sheet.tile.number}")


def _mark(sheet: Sheet, strokes: Sequence[Stroke], at: Point, solid: float, arm: float, name: str) -> None:
    """Draw a cross, take its place and enter it in the map."""
    x, y = at
    sheet.over += strokes
    sheet.ground.take((x - solid, y - solid, x + solid, y + solid))
    for box in ((x - arm, y - 0.3, x + arm, y + 0.3), (x - 0.3, y - arm, x + 0.3, y + arm)):
        sheet.ground.take(box)
    sheet.shows.append(Shown("mark", name, at))


def _box(points: Sequence[Point]) -> Box:
    xs, ys = zip(*points, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _overlap(a: Box, b: Box) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
