"""Add a piece of gear."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.model.check import check
from bayboard.model.layout import CardKind, Gear, Layout
from bayboard.model.raw import MOST_THINGS
from bayboard.model.refused import Refused
from bayboard.model.things import things

_LETTERS: dict[CardKind, str] = {
    "amplifier": "A",
    "processor": "P",
    "fuse block": "F",
    "distribution": "D",
    "other": "G",
}


@dataclass(frozen=True, slots=True)
class AddGear:
    """Add a piece of gear of `card` to the bench under a free id (`free_gear_id` gives one)."""

    card: str
    id: str

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with the gear last; raise `Refused` for a taken id or an unknown card."""
        if len(layout.gear) >= MOST_THINGS:
            raise Refused("gear", f"there are {MOST_THINGS} pieces already", "Take one out first")
        board = layout.boards[0].id if layout.boards else None
        after = replace(layout, gear=(*layout.gear, Gear(id=self.id, card=self.card, board=board, at=None)))
        check(after)
        return after

    def label(self, layout: Layout) -> str:
        """Return "Add A3, Longhorn 4"."""
        card = layout.cards.get(self.card)
        return f"Add {self.id}, {card.name if card else self.card}"


def free_gear_id(layout: Layout, card: str) -> str:
    """Return the first free id for gear of `card`: a letter for its kind and a number from 1."""
    letter = _LETTERS[layout.cards[card].kind]
    taken = {getattr(thing, "id", None) for _, thing in things(layout)}
    number = 1
    while f"{letter}{number}" in taken:
        number += 1
    return f"{letter}{number}"
