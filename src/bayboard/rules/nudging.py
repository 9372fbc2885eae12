"""The shortest move of one stand-in that cures a finding.

Places are sifted in blocks, with the measures of the rules themselves; those that are left are looked at
one by one, and the first that the whole check agrees with is the nudge.
"""

from collections.abc import Iterator
from itertools import count

import numpy as np

from bayboard.edits.move_gear import MoveGear
from bayboard.geometry.crowd import HAIR
from bayboard.geometry.outline import Points
from bayboard.geometry.solids import Indices
from bayboard.model.placed import Placed
from bayboard.rules import RULES
from bayboard.rules.alone import Alone
from bayboard.rules.finding import Nudge
from bayboard.rules.judge import Judge, Wanted
from bayboard.rules.levels import MUST, Levels, Named, head
from bayboard.rules.nudge_grid import moves
from bayboard.rules.places import AtPlaces, Places, places_of
from bayboard.rules.seeking import Seeking, to_end
from bayboard.rules.ways import Ways
from bayboard.tables.nudge import FIRST_BLOCK, GROWTH
from bayboard.units.length import TYPED_DIGITS

UNKNOWN, FREE, SPOILT = -1, 1, 0

_WIDE = frozenset(rule.RULE for rule in RULES if rule.WIDE)
_AT_PLACES: dict[str, AtPlaces] = {r.RULE: r.at_places for r in RULES if hasattr(r, "at_places")}


class Nudger:
    """Looks for nudges in one layout; what is found out about a stand-in's places is kept."""

    def __init__(self, judge: Judge, by: Points | None = None, looks: int | None = None) -> None:
        """Take the judge of a layout, and moves by length, (n, 2) mm; the grid's where none are given.

        `looks`: how many places of a stand-in are looked at one by one for a finding, None for all; those
        that are measured in blocks do not count.
        """
        self._looks = looks
        self._judge, self._scene = judge, judge.scene
        self._by = moves(judge.layout.units) if by is None else by
        self._lengths: Points = np.hypot(self._by[:, 0], self._by[:, 1])
        self.ways = Ways(judge.layout)
        self._places: dict[str, Places] = {}
        self._free: dict[str, Levels] = {}  # by stand-in: what is known of new musts at each place

    def shortest(self, wanted: Wanted) -> Nudge | None:
        """Return the shortest move that does what is wanted, None where no place of the grid does."""
        return to_end(self.seek(wanted))

    def seek(self, wanted: Wanted) -> Seeking[Nudge | None]:
        """Return the same; yield between blocks of places, so that it can be called off."""
        best, end = None, len(self._by)
        alone = Alone(self._scene, wanted.name, self.ways)
        for placed in self.movers(wanted.name):
            looks = count(1)
            for place in self._likely(placed, alone, wanted, end):
                yield
                if place is None:
                    continue
                edit = self._move(placed.id, place)
                if self._judge.cures(edit, wanted):
                    best = Nudge(placed.id, (edit.dx, edit.dy))
                    end = int(np.searchsorted(self._lengths, self._lengths[place] - HAIR))
                    break
                if next(looks) == self._looks:
                    break
        return best

    def movers(self, name: Named) -> list[Placed]:
        """Return the stand-ins whose place may change a finding, in document order; taped ones never move."""
        rule, subjects = name
        about = frozenset(head(subject) for subject in subjects)
        anyone = rule in _WIDE or any(lead.id in about for lead in self._judge.layout.leads)
        loose = (placed for placed in self._scene.placed.values() if not placed.gear.taped)
        return [placed for placed in loose if anyone or placed.id in about]

    def _move(self, gear: str, place: int) -> MoveGear:
        dx, dy = self._by[place].tolist()
        return MoveGear((gear,), dx, dy)

    def _likely(self, placed: Placed, alone: Alone, wanted: Wanted, end: int) -> Iterator[int | None]:
        """Yield the places before `end` that seem to do what is wanted, the nearest first.

        None where some were looked at, or are about to be, and none of them seems to.
        """
        rule, key = wanted.name
        blocks = not alone.leads or (placed.id in key and alone.stays_led(placed.id))
        measure = _AT_PLACES.get(rule) if blocks else None
        places, first, size, left = self._at(placed), 0, FIRST_BLOCK, self._looks
        while first < end and left != 0:
            yield None
            block = np.arange(first, min(first + size, end))
            block = block[self._free[placed.id][block] != SPOILT]
            if measure is not None and len(block):
                said = measure(self._scene, places.some(block), key).get(key)
                block = block if said is None else block[said < wanted.below]
            elif len(block):
                block = block[alone.worth_a_look(places.some(block), wanted.below)]
            block = self._unspoilt(places, block)
            if measure is None:
                block = block[:left]
                left = None if left is None else left - len(block)
                edits = [self._move(placed.id, place) for place in block.tolist()]
                cured = alone.cured(places.some(block), edits, wanted.below)
                yield from (None if n is None else int(block[n]) for n in cured)
            else:
                yield from block.tolist()
            first, size = first + size, size * GROWTH

    def _at(self, placed: Placed) -> Places:
        if placed.id not in self._places:
            at = np.round(self._by + placed.at, TYPED_DIGITS)
            self._places[placed.id] = places_of(placed, at)
            self._free[placed.id] = np.full(len(at), UNKNOWN, dtype=np.int8)
        return self._places[placed.id]

    def _unspoilt(self, places: Places, block: Indices) -> Indices:
        """Return the places of a block at which no rule that measures blocks finds a new must."""
        free = self._free[places.id]
        left = asked = block[free[block] == UNKNOWN]
        for rule, measure in _AT_PLACES.items():
            if not len(left):
                break
            spoilt = np.zeros(len(left), dtype=np.bool_)
            for key, said in measure(self._scene, places.some(left), None).items():
                if (rule, key) not in self._judge.musts:
                    spoilt |= said == MUST
            left = left[~spoilt]
        free[asked], free[left] = SPOILT, FREE
        return np.asarray(block[free[block] == FREE])
