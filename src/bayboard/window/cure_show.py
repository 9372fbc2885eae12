"""A cure before it is taken, as chalk on the Wall: where its stand-ins would lie, and the way there."""

from functools import lru_cache

from bayboard.edits.edit import Edit
from bayboard.model.layout import Gear, Layout, Point
from bayboard.model.placed import Placed
from bayboard.model.refused import Refused
from bayboard.window.draw.show import Cure
from bayboard.window.workplace import Workplace


def cures_shown(place: Workplace) -> tuple[Cure, ...]:
    """Return the cure that is looked at; () where none is, or while something is in the hand."""
    if place.cure is None or place.hand.pieces or place.shown is not place.layout:
        return ()
    return shown(place.layout, place.cure)


def shown(layout: Layout, edit: Edit) -> tuple[Cure, ...]:
    """Return an edit as chalk: the stand-ins that lie otherwise afterwards, else the boards; () for none."""
    return _shown(_Asked(layout, edit))


class _Asked:
    """A layout and an edit, known by which layout it is: none is compared member by member."""

    def __init__(self, layout: Layout, edit: Edit) -> None:
        self.layout, self.edit = layout, edit

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Asked) and self.layout is other.layout and self.edit == other.edit

    def __hash__(self) -> int:
        return hash((id(self.layout), self.edit))


@lru_cache(maxsize=4)
def _shown(asked: _Asked) -> tuple[Cure, ...]:
    layout, edit = asked.layout, asked.edit
    try:
        after, words = edit.apply(layout), edit.label(layout)
    except (Refused, KeyError):
        return ()
    moved = [(a, b) for a, b in zip(layout.gear, after.gear, strict=False) if a != b and b.at is not None]
    found = [_of_gear(a, b, layout, after, words if i == 0 else "") for i, (a, b) in enumerate(moved)]
    return tuple(found) or _of_boards(layout, after, words)


def _of_gear(before: Gear, after: Gear, layout: Layout, then: Layout, words: str) -> Cure:
    """Return a stand-in's new outline, and an arrow from the corner it leaves to where that comes."""
    ring = _ring(after, then)
    old = _ring(before, layout) if before.at is not None else ring
    corner = min(range(len(old)), key=lambda i: old[i][0] + old[i][1]) if len(old) == len(ring) else 0
    return Cure(ring, old[corner], ring[corner], words)


def _of_boards(layout: Layout, after: Layout, words: str) -> tuple[Cure, ...]:
    """Return the boards that stand otherwise afterwards, each with the words of what changes."""
    pairs = zip(layout.boards, after.boards, strict=False)
    return tuple(Cure(b.outline, b.outline[0], b.outline[0], words) for a, b in pairs if a != b and b.outline)


def _ring(gear: Gear, layout: Layout) -> tuple[Point, ...]:
    """Return a stand-in's outline in bay axes; () while it waits on the bench."""
    board = next((b for b in layout.boards if b.id == gear.board), layout.boards[0])
    placed = Placed(gear, layout.cards[gear.card], board)
    return tuple((float(x), float(y)) for x, y in placed.ring)
