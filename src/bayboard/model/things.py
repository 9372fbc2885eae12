"""Every thing of a layout with its place in words, in document order."""

from collections.abc import Iterator
from functools import cache

from msgspec.structs import fields

from bayboard.model.layout import Layout, Value
from bayboard.model.places import heading, label, step_to

Thing = tuple[str, Value]


def things(layout: Layout) -> Iterator[Thing]:
    """Yield (place, thing) for the layout and all within it; the layout's own place is empty."""
    yield "", layout
    for name, member in _members(Layout):
        yield from _inside("", heading(member), getattr(layout, name))


@cache
def _members(kind: type[Value]) -> tuple[tuple[str, str], ...]:
    return tuple((field.name, field.encode_name) for field in fields(kind))


def _inside(place: str, word: str, item: object) -> Iterator[Thing]:
    if isinstance(item, Value):
        yield from _thing(step_to(place, word), item)
    elif isinstance(item, tuple) and item and isinstance(item[0], Value):
        for number, part in enumerate(item, start=1):
            name = label(getattr(part, "id", "")) if getattr(part, "id", "") else f"#{number}"
            yield from _thing(step_to(place, f"{word} {name}"), part)
    elif isinstance(item, dict):
        for name, part in item.items():
            if isinstance(part, Value):
                yield from _thing(step_to(place, f"{word} {label(name)}"), part)


def _thing(place: str, thing: Value) -> Iterator[Thing]:
    yield place, thing
    for name, member in _members(type(thing)):
        item = getattr(thing, name)
        if isinstance(item, Value | tuple):
            yield from _inside(place, member, item)
