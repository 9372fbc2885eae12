"""The words of a template sheet, the most needed first: each takes its place on the sheet's ground."""

from math import dist, floor
from textwrap import wrap

from bayboard.model.layout import Point
from bayboard.paper import edges, hole_marks, place_labels
from bayboard.paper.bars import bars
from bayboard.paper.clearances import Near
from bayboard.paper.curves import Box
from bayboard.paper.face import Drilled
from bayboard.paper.ground import FREE
from bayboard.paper.lettering import RISE, SINK
from bayboard.paper.marks import MEASURED, Letters, Stroke, pt
from bayboard.paper.place_labels import Block, Labelled
from bayboard.paper.sheet import Sheet
from bayboard.paper.stations import ARM, RING
from bayboard.paper.swap_words import swap_lines
from bayboard.units.length import Units, show_length

INCH = 25.4
ID, DETAIL = pt(9.0), pt(6.5)
STATION = pt(7.5)
STRAYS = 5  # ids told of holes that lie off the board
FACE_PAD = 5.0  # mm; white round the words that say which face this is, where there is so much
GEAR, GEAR_LEAST = pt(22.0), pt(9.0)
_NEIGHBOURS = 24  # the marks nearest to one; no other can be nearer to its label
LIST_LETTERS = 60  # in a line of a list of holes
_STEPS = 24  # places tried along a seam
CAUTION = (
    "Look behind the panel before drilling. Follow",
    "the vehicle maker's instructions and local rules.",
)


def write(sheet: Sheet) -> None:
    """Write everything that has to be read on a sheet."""
    _hole_labels(sheet)
    _station_labels(sheet)
    _seam_words(sheet)
    sheet.over += bars(sheet.ground, sheet.live, sheet.visible)
    _rule(sheet)
    _cutouts(sheet)
    _stand_in_ids(sheet)
    _diagonals(sheet)
    _face(sheet)
    _caution(sheet)
    _strays(sheet)
    _swap(sheet)  # last, so that everything else stands as on the sheet of a whole set


def _hole_labels(sheet: Sheet) -> None:
    """Label the holes this sheet owns; what a crowd leaves no room for beside its hole is told in a list."""
    holes = [h for h in sheet.section.face.holes if sheet.shown(h.at)]
    places = [sheet.tile.carry.point(h.at) for h in holes]
    bare: dict[str, list[str]] = {}
    for hole, at in zip(holes, places, strict=True):
        if sheet.owns(hole.at):
            label = _label(sheet, hole, at)
            marks, whole = place_labels.place(label, sheet.ground, sheet.visible, _neighbours(at, places))
            sheet.over += marks
            if not whole:
                bare.setdefault(" ".join(t for t, _, _ in label.block.lines[1:]), []).append(hole.id)
    _bare_list(sheet, bare)


def _neighbours(at: Point, places: list[Point]) -> list[Point]:
    """Return the marks nearest to one, nearest first."""
    return sorted((p for p in places if p != at), key=lambda p: dist(p, at))[:_NEIGHBOURS]


def _bare_list(sheet: Sheet, bare: dict[str, list[str]]) -> None:
    """Tell in one place what to do with the holes beside which only their names found room."""
    for text, ids in bare.items():
        lines = wrap(f"{text}: {', '.join(ids)}", LIST_LETTERS)
        block = Block(tuple((line, "text", DETAIL) for line in lines))
        x0, _, x1, y1 = sheet.visible
        sheet.over += place_labels.words(block, sheet.ground, sheet.visible, ((x0 + x1) / 2, y1))


def _label(sheet: Sheet, hole: Drilled, at: Point) -> Labelled:
    units = sheet.section.words.options.units
    lines = [*hole_marks.words(hole, units), *_near_words(sheet, hole)]
    block = Block(((hole.id, "bold", ID), *((text, "text", DETAIL) for text in lines)))
    frame = hole_marks.frame_box(hole, sheet.tile.carry)
    core = hole_marks.core(hole) if frame is None else (frame[2] - frame[0]) / 2
    return Labelled(block, at, core, hole.apart / 2 + hole_marks.reach(hole))


def _near_words(sheet: Sheet, hole: Drilled) -> list[str]:
    """Return the warning beside a hole that a seam of this sheet comes near."""
    near = [n for n in sheet.section.clearances.of(sheet.tile.number) if n.hole == hole.id]
    return [f"{_seam_off(sheet, near[0])}: measure twice"] if near else []


def _seam_off(sheet: Sheet, near: Near) -> str:
    units = sheet.section.words.options.units
    return "seam cuts it" if near.mm < 0 else f"seam {at_least(near.mm, units)} off"


def at_least(mm: float, units: Units) -> str:
    """Return a length rounded down to what is shown, so that no sheet promises more than it keeps."""
    step = INCH / 64 if units == "in" else 0.1
    return show_length(floor(mm / step + 1e-6) * step, units)


def _station_labels(sheet: Sheet) -> None:
    number = sheet.tile.number
    for station in sheet.section.stations:
        if number in (station.seam.over, station.seam.under):
            block = Block(((f"station {station.number}", "bold", STATION),))
            at = sheet.tile.carry.point(station.at)
            label = Labelled(block, at, RING + 0.6, ARM)
            sheet.over += place_labels.place(label, sheet.ground, sheet.visible, ())[0]


def _seam_words(sheet: Sheet) -> None:
    """Write along each seam, as near its middle as there is room, further in if there is none."""
    for words in edges.seam_words(sheet.tile):
        for letters in _along(words):
            made = place_labels.line_of_words(letters, sheet.ground, sheet.visible)
            if made:
                sheet.over += made
                break


def _along(words: edges.EdgeWords) -> list[Letters]:
    low, high = words.span
    tries = []
    for size in (edges.WORDS, place_labels.LEAST):
        for off in (1.4, 4.5, 8.0):
            base = off if words.side > 0 else -off - RISE * size
            if words.upright:
                base = off + RISE * size if words.side > 0 else -off - SINK * size
            for k in range(_STEPS):
                along = (low + high) / 2 + (-1.0 if k % 2 else 1.0) * ((k + 1) // 2) * (high - low) / 2 / (
                    _STEPS / 2
                )
                at = (words.seam + base, along) if words.upright else (along, words.seam + base)
                tries.append(Letters(words.text, at, size, "bold", 90.0 if words.upright else 0.0, "middle"))
    return tries


def _rule(sheet: Sheet) -> None:
    """Draw the ticks along the board's edge; a figure that has no room is left out, its tick stays."""
    section = sheet.section
    ticks = list(edges.ruled_edges(section.face, sheet.tile, section.words.options.units))
    if ticks:
        sheet.shape.append(Stroke(tuple(tick for tick, _ in ticks), MEASURED))
        sheet.ground.take_traces(tick for tick, _ in ticks)
    for _, figure in ticks:
        if figure is not None:
            sheet.over += place_labels.line_of_words(figure, sheet.ground, sheet.live)


def _cutouts(sheet: Sheet) -> None:
    """Name each cut-out inside it, or beside it when it is too small."""
    for name, ring in sheet.section.face.cutouts:
        box = _in_sight(sheet, _box_of(sheet, [ring.start, *((s[-2], s[-1]) for s in ring.steps)]))
        if box is None:
            continue
        middle = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
        lines = Block((("cut out", "bold", ID), (name, "text", DETAIL)))
        sheet.over += place_labels.words(lines, sheet.ground, box, middle) or place_labels.words(
            Block(((f"cut out {name}", "bold", DETAIL),)), sheet.ground, sheet.visible, middle
        )


def _stand_in_ids(sheet: Sheet) -> None:
    """Write each piece's id in the part of it that this sheet owns, as large as there is room."""
    for piece in sheet.section.face.stand_ins:
        box = _in_sight(sheet, _box_of(sheet, piece.outline))
        if box is None:
            continue
        middle = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
        for size in (GEAR, pt(16.0), pt(12.0), GEAR_LEAST):
            made = place_labels.words(
                Block(((piece.id, "pencil", size),)), sheet.ground, box, middle, over=FREE
            )
            if made:
                sheet.over += made
                break


def _diagonals(sheet: Sheet) -> None:
    """Say at the first corner cross of the sheet how long both diagonals must be."""
    crosses = sheet.section.crosses
    mine = [p for p in crosses.points if sheet.owns(p)] if crosses else []
    if crosses is None or not mine:
        return
    length = show_length(crosses.diagonal, sheet.section.words.options.units)
    lines = ("corner cross to corner cross:", f"both {length}; differ by 1 mm at most")
    block = Block(tuple((text, "text", DETAIL) for text in lines))
    sheet.over += place_labels.words(block, sheet.ground, sheet.visible, sheet.tile.carry.point(mine[0]))


def _face(sheet: Sheet) -> None:
    back = sheet.section.face.back
    lines = (
        ("BACK FACE, MIRRORED", "vehicle side towards you")
        if back
        else ("FRONT FACE", "gear side towards you")
    )
    block = Block(((lines[0], "bold", pt(11.0)), (lines[1], "text", pt(7.0))))
    x0, y0, x1, y1 = sheet.visible
    to = (x0 + 0.5 * (x1 - x0), y0 + 0.8 * (y1 - y0))
    for pad in (FACE_PAD, place_labels.PAD):
        made = place_labels.words(block, sheet.ground, sheet.visible, to, pad=pad)
        if made:
            sheet.over += made
            break


def _caution(sheet: Sheet) -> None:
    """Warn on every sheet from which the vehicle itself will be drilled."""
    if not any(h.hole.make != "tap" and not h.made and sheet.owns(h.at) for h in sheet.section.face.holes):
        return
    block = Block(tuple((text, "text", DETAIL) for text in CAUTION))
    x0, y0, x1, _ = sheet.visible
    sheet.over += place_labels.words(block, sheet.ground, sheet.visible, ((x0 + x1) / 2, y0))


def _strays(sheet: Sheet) -> None:
    """Say on a board's first sheet which holes are on none, because they lie off the board."""
    strays = sheet.section.strays
    if not strays or sheet.tile.number != sheet.section.plan.tiles[0].number:
        return
    told = ", ".join(strays[:STRAYS]) + (f" and {len(strays) - STRAYS} more" if len(strays) > STRAYS else "")
    block = Block(((f"off the board, on no sheet: {told}", "bold", DETAIL),))
    x0, _, x1, y1 = sheet.visible
    sheet.over += place_labels.words(block, sheet.ground, sheet.visible, ((x0 + x1) / 2, y1))


def _swap(sheet: Sheet) -> None:
    """Say on a swap sheet which of the older sheets it goes with; without room, its strip alone says so."""
    swap = sheet.section.words.options.swap
    if swap is None:
        return
    first, *rest = swap_lines(swap, sheet.tile.number)
    x0, y0, x1, y1 = sheet.visible
    for by in (1.0, 0.8):
        block = Block(((first, "bold", ID * by), *((text, "text", DETAIL) for text in rest)))
        made = place_labels.words(block, sheet.ground, sheet.visible, ((x0 + x1) / 2, y0 + 0.2 * (y1 - y0)))
        if made:
            sheet.over += made
            return


def _box_of(sheet: Sheet, points: "list[Point] | tuple[Point, ...]") -> Box:
    on_page = [sheet.tile.carry.point(p) for p in points]
    xs, ys = zip(*on_page, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _in_sight(sheet: Sheet, box: Box) -> Box | None:
    """Return the part of a box in which something can be read, None when there is none."""
    x0, y0, x1, y1 = sheet.visible
    seen = max(box[0], x0), max(box[1], y0), min(box[2], x1), min(box[3], y1)
    return seen if seen[2] - seen[0] > 1.0 and seen[3] - seen[1] > 1.0 else None
