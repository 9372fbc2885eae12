"""What is different between two things shown, told by id."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from bayboard.model.layout import Bay, Layout

if TYPE_CHECKING:  # loaded when the rules are first asked
    from bayboard.routing.route import Route
    from bayboard.rules.check import Verdict
    from bayboard.rules.scene import Scene


@dataclass(frozen=True, slots=True)
class Shown:
    """A layout with what follows from it.

    Not `judged` yet: `verdict` and `routes` are those before, what moved left out of the one and carried
    along in the other.
    """

    layout: Layout
    verdict: "Verdict"
    routes: "Mapping[str, Route]"
    scene: "Scene"
    judged: bool = True


@dataclass(frozen=True, slots=True)
class Change:
    """What a callback is told.

    `ids`: gear, leads (also where only the path differs), fixings, boards, photos and bay items that came,
    went or differ.  `members`: the layout's own members that differ, "gear" for any gear.
    `verdict`: what the rules say differs.  `draft`: the document itself, its history or its file changed,
    not only what is shown of it.
    """

    ids: frozenset[str]
    members: frozenset[str]
    verdict: bool
    draft: bool


def change(before: Shown, after: Shown, draft: bool) -> Change:
    """Return what is different, told by identity: an edit keeps what it does not touch."""
    ids = set(_changed(before.routes, after.routes))
    members = frozenset(_members(before.layout, after.layout))
    for member in members & {"boards", "gear", "leads", "fixings", "photos"}:
        ids |= _changed(_by_id(getattr(before.layout, member)), _by_id(getattr(after.layout, member)))
    if "bay" in members:
        ids |= _changed(_bay_items(before.layout.bay), _bay_items(after.layout.bay))
    return Change(frozenset(ids), members, before.verdict != after.verdict, draft)


def _members(before: Layout, after: Layout) -> Iterator[str]:
    for member in Layout.__struct_fields__:
        if getattr(before, member) is not getattr(after, member):
            yield member


def _changed(before: Mapping[str, object], after: Mapping[str, object]) -> set[str]:
    return {name for name in before.keys() | after.keys() if before.get(name) is not after.get(name)}


def _by_id(things: Iterable[object]) -> dict[str, object]:
    return {getattr(thing, "id", ""): thing for thing in things}


def _bay_items(bay: Bay) -> dict[str, object]:
    kinds = (bay.landings, bay.stays, bay.linings, bay.vents, bay.no_drill, bay.seats, bay.entries)
    return {name: thing for things in kinds for name, thing in _by_id(things).items()}
