"""Card stand-ins: every piece of gear full size, to cut out and tape to the wall.

They say nothing of places, so that moving a piece does not make its stand-in old.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from bayboard.model.codes import card_code
from bayboard.model.layout import Layout, Point
from bayboard.paper import lettering
from bayboard.paper.bars import bars
from bayboard.paper.curves import Carry
from bayboard.paper.form import Form, forms
from bayboard.paper.ground import SOFT, Ground
from bayboard.paper.marks import Clipped, Fill, Letters, Mark, Page, Shown, Stroke
from bayboard.paper.nest import Spot, nest
from bayboard.paper.options import Options
from bayboard.paper.parts import Parts, parted
from bayboard.paper.pieces import Piece, pieces
from bayboard.paper.stand_in_words import Told
from bayboard.paper.strip import PROVE, Strip, carried, strip

SHEET = "cards"
ROLL_SHEET = 1200.0  # mm; how much of a roll one page of stand-ins may take


@dataclass(frozen=True)
class _Laid:
    """Pieces nested on the pages of one form."""

    form: Form
    parts: tuple[Parts, ...]  # of each piece of gear
    pages: tuple[tuple[Spot, ...], ...]


def cards(layout: Layout, options: Options) -> tuple[Page, ...]:
    """Return the pages of all stand-ins, those of gear on the bench too."""
    tries = {(f.size, f.strip): f for f in forms(options.paper, options.margin)}.values()
    laid = min((_laid(layout, form) for form in tries), key=lambda found: len(found.pages))
    code = card_code(layout)
    cut = tuple(_pieces(layout, options, laid.parts, code))
    pages = []
    for number, spots in enumerate(laid.pages, start=1):
        says = _says(layout.vehicle.name, options, code, number, len(laid.pages))
        pages.append(_page(laid.form, [(cut[s.which], s) for s in spots], says))
    return tuple(pages)


def _laid(layout: Layout, form: Form) -> _Laid:
    sheet = (min(form.live[0], ROLL_SHEET), min(form.live[1], ROLL_SHEET))
    needed = {g.card: parted(layout.cards[g.card], sheet) for g in layout.gear}
    parts = tuple(needed[g.card] for g in layout.gear)
    spots = nest([size for p in parts for size in p.sizes], sheet)
    return _Laid(form, parts, tuple(tuple(s) for s in spots))


def _says(vehicle: str, options: Options, code: str, number: int, count: int) -> Strip:
    revision = [f"revision {options.revision}"] if options.revision else []
    return Strip(
        number,
        [vehicle, *revision, f"card sheet {number} of {count}", options.paper],
        f"{PROVE} Cut on the solid lines, tape up with FRONT towards you.",
        f"card {code}",
        "every stand-in of a set carries the same four signs",
    )


def _pieces(layout: Layout, options: Options, parts: Sequence[Parts], code: str) -> Iterator[Piece]:
    join = 1
    for gear, own in zip(layout.gear, parts, strict=True):
        yield from pieces(layout.cards[gear.card], Told(gear.id, code, options.units), own, join)
        join += len(own.joins)


def _page(longest: Form, laid: Sequence[tuple[Piece, Spot]], says: Strip) -> Page:
    form = _cut_to(longest, laid)
    ground = Ground(form.live_box)
    marks: list[Mark] = []
    shows: list[Shown] = []
    for piece, spot in laid:
        carry = _carry(piece, spot, form.live_at)
        on_page = [carried(m, carry) for m in (*piece.shape, *piece.words)]
        marks += on_page
        ground.take(carry.box(piece.box), SOFT)
        _take(ground, on_page)
        shows += _shown(piece, carry)
    marks += bars(ground, form.live_box, form.live_box)
    return Page(SHEET, form.size, (*marks, *strip(form, says)), tuple(shows))


def _cut_to(form: Form, laid: Sequence[tuple[Piece, Spot]]) -> Form:
    """Return the form; that of a roll cut to what the pieces take."""
    sizes = [(s, p.box[2] - p.box[0], p.box[3] - p.box[1]) for p, s in laid]
    wide = max(s.x + (h if s.turned else w) for s, w, h in sizes)
    high = max(s.y + (w if s.turned else h) for s, w, h in sizes)
    return form.cut_to(wide, high)


def _carry(piece: Piece, spot: Spot, live_at: Point) -> Carry:
    """Return the carry from the card's frame to the page."""
    x, y = live_at[0] + spot.x, live_at[1] + spot.y
    if spot.turned:  # counter-clockwise: the card's upper side comes to the left
        return Carry.to((x + piece.box[3], y - piece.box[0]), 90.0)
    return Carry.to((x - piece.box[0], y - piece.box[1]))


def _take(ground: Ground, marks: Sequence[Mark]) -> None:
    """Take the place of a piece's marks, so that check bars keep off them."""
    for mark in marks:
        match mark:
            case Letters():
                ground.take(lettering.box(mark))
            case Stroke():
                ground.take_traces(mark.traces)
            case Clipped():
                _take(ground, mark.marks)
            case Fill():
                pass


def _shown(piece: Piece, carry: Carry) -> Iterator[Shown]:
    part = tuple(carry.point(p) for p in piece.part)
    yield Shown("stand-in", piece.id, carry.point((0.0, 0.0)), carry.turn, part)
    for join in piece.joins:
        at = carry.point(join.middle)
        x, y = (
            piece.box[0] + piece.box[2] - 2 * join.middle[0],
            piece.box[1] + piece.box[3] - 2 * join.middle[1],
        )
        upright = join.a[0] == join.b[0]
        side = 1 if (x if upright else y) < 0 else 2
        yield Shown("mark", f"J{join.number}-{side}", at, carry.turn)
