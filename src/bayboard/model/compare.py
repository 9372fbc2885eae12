"""What is different between two layouts, thing by thing, in the order of the document.

`printed` is a fact of the world, not of the plan, and is left out.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import Any

import msgspec

from bayboard.model.layout import Board, Fixing, Gear, Layout, Point, Value
from bayboard.model.rounding import rounded
from bayboard.model.write import plain_value, spelled
from bayboard.units.angle import short_way

SAME = 1e-6  # mm or degrees; typed and dragged values are rounded to it
_Firsts = tuple[str | None, str | None]  # the first boards, of which things are that name none
_LEFT_OUT = frozenset(("bayboard", "printed"))
_WHOLE = frozenset(("let_be", "x"))  # told as one change each


@dataclass(frozen=True, slots=True)
class Moved:
    """A stand-in, fixing or board that went: `by` mm in bay axes, `turned` degrees in (-180, 180]."""

    id: str
    by: Point
    turned: float


@dataclass(frozen=True, slots=True)
class Changed:
    """Another member that differs, with plain JSON values as the document writes them.

    `id` None: `member` is the dotted path from the top of the document, "bay.tape".  `of`: the list that the
    thing stands in, "cards": a card may have the id of a piece of gear.
    """

    id: str | None
    member: str
    before: Any
    after: Any
    of: str = field(default="", compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Comparison:
    """All that differs between two layouts; `removed` in the order of the old one, the rest of the new."""

    moved: tuple[Moved, ...]
    added: tuple[str, ...]
    removed: tuple[str, ...]
    changed: tuple[Changed, ...]

    @property
    def same(self) -> bool:
        """Return whether nothing differs: then both have one normal form, `printed` aside."""
        return not (self.moved or self.added or self.removed or self.changed)


def compare(old: Layout, new: Layout) -> Comparison:
    """Return what happened on the way from `old` to `new`.

    A thing that keeps its id and its kind is the same thing.  A board has moved when its outline and its
    cut-outs were carried by one shift.  Places that differ by no more than `SAME`, turns by whole rounds, and
    another order of the same things are told as changed.
    """
    was, now = tuple(_named(old)), tuple(_named(new))
    gone, known = frozenset(was), frozenset(now)
    told = tuple(_within(old, new, "", (_first(old), _first(new))))
    return Comparison(
        moved=tuple(item for item in told if isinstance(item, Moved)),
        added=tuple(key[-1] for key in now if key not in gone),
        removed=tuple(key[-1] for key in was if key not in known),
        changed=tuple(item for item in told if isinstance(item, Changed)),
    )


def _named(layout: Layout) -> Iterator[tuple[str, ...]]:
    """Yield a key for everything with an id, in document order; a cut-out belongs to its board."""
    bay = layout.bay
    for kind in ("landings", "stays", "linings", "vents", "no_drill", "seats", "entries"):
        yield from ((kind, item.id) for item in getattr(bay, kind))
    for board in layout.boards:
        yield "boards", board.id
        yield from (("cutouts", board.id, cutout.id) for cutout in board.cutouts)
    yield from (("cards", name) for name in layout.cards)
    for kind in ("gear", "leads", "fixings", "photos"):
        yield from ((kind, item.id) for item in getattr(layout, kind))


def _first(layout: Layout) -> str | None:
    return layout.boards[0].id if layout.boards else None


@cache
def _members(kind: type[Value]) -> tuple[tuple[str, str], ...]:
    return tuple((field.name, field.encode_name) for field in msgspec.structs.fields(kind))


def _within(old: Value, new: Value, path: str, firsts: _Firsts) -> Iterator[Moved | Changed]:
    """Yield what differs between two things without an id, named by the path to them."""
    for name, word in _members(type(new)):
        was, now = getattr(old, name), getattr(new, name)
        if was is now or word in _LEFT_OUT:
            continue
        member = path + word
        if member in _WHOLE:
            if spelled(plain_value(was)) != spelled(plain_value(now)):
                yield Changed(None, member, plain_value(was), plain_value(now))
        elif isinstance(now, Value):
            yield from _within(was, now, f"{member}.", firsts)
        elif _has_ids(was) or _has_ids(now):
            yield from _things(None, member, _by_id(was), _by_id(now), firsts)
        elif isinstance(now, dict):
            yield from _entries(member, was, now)
        elif was != now:
            yield Changed(None, member, plain_value(was), plain_value(now))


def _has_ids(item: object) -> bool:
    parts = tuple(item.values()) if isinstance(item, dict) else item
    return isinstance(parts, tuple) and bool(parts) and isinstance(parts[0], Value)


def _by_id(items: Any) -> Mapping[str, Value]:
    return items if isinstance(items, dict) else {item.id: item for item in items}


def _entries(member: str, was: dict[str, Any], now: dict[str, Any]) -> Iterator[Changed]:
    """Yield what differs between two lists by name of plain values: limits, drilled holes."""
    for name in (*now, *(name for name in was if name not in now)):
        if was.get(name) != now.get(name):
            yield Changed(None, f"{member}.{name}", plain_value(was.get(name)), plain_value(now.get(name)))
    yield from _order(None, member, was, now)


def _order(owner: str | None, member: str, was: Iterable[str], now: Iterable[str]) -> Iterator[Changed]:
    """Yield a change where what is in both stands in another order."""
    before, after = tuple(was), tuple(now)
    here, there = frozenset(before), frozenset(after)
    a, b = [name for name in before if name in there], [name for name in after if name in here]
    if a != b:
        yield Changed(owner, member, a, b)


def _things(
    owner: str | None, member: str, was: Mapping[str, Value], now: Mapping[str, Value], firsts: _Firsts
) -> Iterator[Moved | Changed]:
    for name, thing in now.items():
        before = was.get(name)
        if before is not None and before is not thing and before != thing:
            yield from _thing(member, name, before, thing, firsts)
    yield from _order(owner, member, was, now)


def _thing(of: str, name: str, old: Value, new: Value, firsts: _Firsts) -> Iterator[Moved | Changed]:
    """Yield what differs between a thing and what it was."""
    moved, told = _moved(name, old, new)
    if moved is not None:
        yield moved
    for member, word in _members(type(new)):
        was, now = getattr(old, member), getattr(new, member)
        if member in told or was == now:
            continue
        if member == "cutouts":
            yield from _things(name, word, _by_id(was), _by_id(now), firsts)
            continue
        before, after = _told(old, member, firsts[0]), _told(new, member, firsts[1])
        if before != after and not _both_left_out(old, new, member):
            yield Changed(name, word, plain_value(before), plain_value(after), of)


def _told(thing: Value, member: str, first: str | None) -> Any:
    """Return a member's value; what a document may leave out because it follows is told as it follows."""
    item = getattr(thing, member)
    if item is None and member == "board":
        return first
    if item is None and isinstance(thing, Board) and member == "stock":
        return (thing.thickness,)
    return item


def _both_left_out(old: Value, new: Value, member: str) -> bool:
    if member != "stock" or not isinstance(old, Board) or not isinstance(new, Board):
        return False
    return all(board.stock in (None, (board.thickness,)) for board in (old, new))


def _moved(name: str, old: Value, new: Value) -> tuple[Moved | None, frozenset[str]]:
    """Return how a thing went, None when it did not, and the members that this tells all of."""
    if isinstance(old, Board) and isinstance(new, Board):
        shift = _carried(old, new)
        return (None, frozenset()) if shift is None else (Moved(name, shift, 0.0), _OUTLINES)
    if not isinstance(old, Gear | Fixing) or not isinstance(new, Gear | Fixing):
        return None, frozenset()
    told = set()
    by = _from_to(old.at, new.at) if old.at is not None and new.at is not None else (0.0, 0.0)
    if not _near(by):
        told.add("at")
    turned = 0.0
    if isinstance(old, Gear) and isinstance(new, Gear):
        turned = _turned(old.turn, new.turn)
        if turned:
            told.add("turn")
    return (Moved(name, by if "at" in told else (0.0, 0.0), turned) if told else None), frozenset(told)


_OUTLINES = frozenset(("outline", "cutouts"))


def _carried(old: Board, new: Board) -> Point | None:
    """Return the shift that carried all outlines of a board, None when there is no such one."""
    if [cutout.id for cutout in old.cutouts] != [cutout.id for cutout in new.cutouts]:
        return None
    shift = _from_to(old.outline[0], new.outline[0])
    if _near(shift):
        return None
    rings = [
        (old.outline, new.outline),
        *((a.outline, b.outline) for a, b in zip(old.cutouts, new.cutouts, strict=True)),
    ]
    for was, now in rings:
        if len(was) != len(now) or any(
            not _near(_from_to(shift, _from_to(p, q))) for p, q in zip(was, now, strict=True)
        ):
            return None
    return shift


def _near(shift: Point) -> bool:
    return max(abs(shift[0]), abs(shift[1])) <= SAME


def _from_to(a: Point, b: Point) -> Point:
    return rounded(b[0] - a[0]), rounded(b[1] - a[1])


def _turned(before: float, after: float) -> float:
    """Return degrees counter-clockwise in (-180, 180], 0 where no more than `SAME`."""
    short = rounded(short_way(before, after))
    return 0.0 if abs(short) <= SAME else short
