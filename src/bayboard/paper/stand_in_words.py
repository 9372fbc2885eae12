"""What is written on a stand-in, the most needed first; what finds no room is left off, its id never."""

from collections.abc import Iterator
from dataclasses import dataclass

from bayboard.geometry import outline as outlines
from bayboard.model.layout import Card, Port, Service
from bayboard.paper import place_labels, stand_in
from bayboard.paper.curves import Box, line, polyline, ring
from bayboard.paper.ground import FREE, Ground
from bayboard.paper.marks import CUT, Mark, Stroke, Trace, pt
from bayboard.paper.place_labels import Block, Labelled
from bayboard.units.length import Units, show_length

PORT_WORDS = {
    "power": "12 V",
    "ground": "ground",
    "remote": "remote",
    "signal-in": "signal in",
    "signal-out": "signal out",
    "speaker-in": "speakers in",
    "speaker-out": "speakers",
    "data": "data",
}
SIZES = (1.0, 0.8, 0.65, 0.5, 0.4, 0.3)  # tried in turn
ID, NAME, FACT, WORD = pt(30.0), pt(10.0), pt(7.5), pt(7.0)
KEEP_IN = 1.0  # mm; words stay this far inside the cut
UP = (7.0, 12.0)  # mm; the up arrow with its word
AIR_SIDES = {
    "up": "above",
    "down": "below",
    "left": "on the left",
    "right": "on the right",
    "out": "in front",
}


@dataclass(frozen=True, slots=True)
class Told:
    """What a stand-in says besides its card."""

    id: str
    code: str
    units: Units


def ground(card: Card, joins: tuple[Trace, ...]) -> Ground:
    """Return the ground of a stand-in with everything taken that is no word; no word lies across a join."""
    box = outlines.box(card.outline)
    made = Ground(box)
    for part in stand_in.outside(card):
        made.take(part)
    made.take_traces([ring(card.outline), *(t for stroke in stand_in.strokes(card) for t in stroke.traces)])
    made.take_traces(joins)
    for thing in _things(card):
        spot = stand_in.spot(thing)
        x, y = spot.at
        half = spot.core * 0.7
        made.take((x - half, y - half, x + half, y + half))
    return made


def words(card: Card, told: Told, free: Ground, cells: tuple[Box, ...]) -> tuple[Mark, ...]:
    """Return what is written on a stand-in that is cut into `cells`, in the card's frame."""
    box = outlines.box(card.outline)
    inside = (box[0] + KEEP_IN, box[1] + KEEP_IN, box[2] - KEEP_IN, box[3] - KEEP_IN)
    made: list[Mark] = []
    for which, cell in enumerate(cells):
        made += _named(told, free, cell, which, len(cells))
    made += _up(free, cells[-1])
    for thing in _things(card):
        made += _beside(thing, free, inside)
    made += _facts(card, told, free, cells)
    return tuple(made)


def _things(card: Card) -> tuple[Port | Service, ...]:
    return (*card.ports, *card.service)


def _named(told: Told, free: Ground, cell: Box, which: int, count: int) -> tuple[Mark, ...]:
    """Return the id in the middle of a part, as large as there is room, with the card code under it."""
    part = f", part {which + 1} of {count}" if count > 1 else ""
    code = f"card {told.code}{part} · FRONT"
    middle = ((cell[0] + cell[2]) / 2, (cell[1] + cell[3]) / 2)
    for by in SIZES:
        small = max(place_labels.LEAST, FACT * max(by, 0.6))
        block = Block(((told.id, "pencil", max(ID * by, place_labels.LEAST)), (code, "bold", small)))
        found = place_labels.words(block, free, cell, middle, over=FREE)
        if found:
            return found
    bare = Block(((told.id, "pencil", place_labels.LEAST),))
    return place_labels.words(bare, free, cell, middle) or bare.letters(
        (cell[0] + 0.5, cell[1], cell[2], cell[3])
    )


def _up(free: Ground, cell: Box) -> tuple[Mark, ...]:
    """Return the arrow that says which way the card's own frame is up."""
    for by in (1.0, 0.7):
        w, h = UP[0] * by, UP[1] * by
        size = (w, h + 3.0)
        box = free.nearest(size, ((cell[0] + cell[2]) / 2, cell[3]), cell)
        if box is not None:
            free.take(box)
            x, y = (box[0] + box[2]) / 2, box[1] + 3.0
            head = polyline([(x - w / 3, y + h - w / 2), (x, y + h - 0.5), (x + w / 3, y + h - w / 2)])
            stem = Stroke((line((x, y + 0.4), (x, y + h - 0.5)), head), CUT)
            word = Block((("up", "text", place_labels.LEAST),))
            wide = word.size[0]
            return (stem, *word.letters((x - wide / 2, box[1], x + wide / 2, box[1] + word.size[1])))
    return ()


def _beside(thing: Port | Service, free: Ground, inside: Box) -> tuple[Mark, ...]:
    spot = stand_in.spot(thing)
    for text in _called(thing):
        label = Labelled(Block(((text, "text", WORD),)), spot.at, spot.core, spot.arms)
        found = place_labels.close_by(label, free, inside, ())
        if found:
            return found
    return ()


def _called(thing: Port | Service) -> Iterator[str]:
    """Return what a port or a service point is called: in full, by its kind alone, by its id."""
    if isinstance(thing, Port):
        kind = PORT_WORDS[thing.kind]
        ways = f" ×{thing.ways}" if thing.ways > 1 else ""
    else:
        kind, ways = thing.kind, ""
    bare, name = kind.replace(" ", "").lower(), thing.id.replace("-", "").lower()
    same = bare.startswith(name.removesuffix("s")) or name in kind.lower().split()
    yield f"{kind}{ways}" if same else f"{kind} {thing.id}{ways}"
    yield kind
    yield thing.id


def _facts(card: Card, told: Told, free: Ground, cells: tuple[Box, ...]) -> tuple[Mark, ...]:
    """Return name, body and air as one block, shorter and smaller where there is less room."""
    facts = list(_fact_lines(card, told.units))
    for kept in range(len(facts), 0, -1):
        for by in (1.0, 0.85, 0.7):
            lines = tuple((t, f, max(place_labels.LEAST, s * by)) for t, f, s in facts[:kept])
            for cell in cells:
                middle = ((cell[0] + cell[2]) / 2, cell[1] + 0.35 * (cell[3] - cell[1]))
                found = place_labels.words(Block(lines), free, cell, middle, over=FREE)
                if found:
                    return found
    return ()


def _fact_lines(card: Card, units: Units) -> Iterator[place_labels.Line]:
    x0, y0, x1, y1 = outlines.box(card.outline)
    deep = "depth not measured" if card.height is None else f"{show_length(card.height, units)} deep"
    wide = f"{show_length(x1 - x0, units).removesuffix(' ' + units)} × {show_length(y1 - y0, units)}"
    yield card.name, "text", NAME
    yield f"{wide}, {deep}", "text", FACT
    for side, word in AIR_SIDES.items():
        mm = getattr(card.air, side)
        if mm > 0:
            yield f"{show_length(mm, units)} of air {word}", "text", WORD
    if card.guessed:
        yield f"guessed: {', '.join(card.guessed)}", "text", WORD
