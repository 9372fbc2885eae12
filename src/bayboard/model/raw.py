"""A document as plain JSON values: parsed, every number and text looked at, before it takes any form.

Refused here: what is not UTF-8 or JSON, a member that is there twice, nesting too deep, numbers that are
not finite or too large, too many things, text that no file can hold.
"""

import json
from collections.abc import Iterable
from math import inf, isfinite, isnan
from typing import Any

from bayboard.model.places import quoted, spell
from bayboard.model.refused import Refused

LARGEST_FILE = 20_000_000  # bytes
LARGEST_NUMBER = 100_000.0
LARGEST_AREA = 1e8  # mm2
MOST_POINTS = 2_000
MOST_THINGS = 500
DEEPEST = 64  # levels; a layout itself needs 7
LONGEST_DIGITS = 308  # more digits than any float holds
_AREAS = {"free_area"}
_UNCOUNTED = {"holes"}  # what was printed follows from things that are counted
_WHOLE = 2.0**53


class Wrong(Exception):
    """Something wrong in a document; `path` grows from the inside out while the walk unwinds."""

    def __init__(self, what: str, do: str = "") -> None:
        self.what = what
        self.do = do
        self.path: list[str | int] = []
        super().__init__(what)

    def refused(self, root: object) -> Refused:
        """Return the refusal, with the place spelled from `root`."""
        return Refused(spell(self.path[::-1], root), self.what, self.do)


class _Twice(dict[str, Any]):
    """An object that names a member twice."""

    member: str


def parse(text: str | bytes) -> object:
    """Return the JSON value of `text`; raise `Refused` when it is too large, not UTF-8 or not JSON."""
    if len(text) > LARGEST_FILE:
        raise Refused("", "this file is larger than 20 MB", "A layout is far smaller; choose another file")
    try:
        plain = text.decode("utf-8-sig") if isinstance(text, bytes) else text.removeprefix("\ufeff")
        return json.loads(plain, object_pairs_hook=_object, parse_int=_whole)
    except UnicodeDecodeError as error:
        raise Refused(
            "", f"byte {error.start + 1} is not UTF-8 text", "Save the file as UTF-8, or choose another"
        ) from None
    except json.JSONDecodeError as error:
        raise Refused(
            f"line {error.lineno}, column {error.colno}",
            f"this is not JSON ({error.msg[:1].lower()}{error.msg[1:]})",
            "Mend the text there, or choose another file",
        ) from None
    except RecursionError:
        raise Refused("", *_TOO_DEEP) from None


_TOO_DEEP = (f"lists and objects lie more than {DEEPEST} deep in each other", "Make the document flatter")


def _object(pairs: Iterable[tuple[str, Any]]) -> dict[str, Any]:
    listed = list(pairs)
    made = dict(listed)
    if len(made) == len(listed):
        return made
    twice = _Twice(made)
    seen: set[str] = set()
    for name, _ in listed:
        if name in seen:
            twice.member = name
            break
        seen.add(name)
    return twice


def _whole(digits: str) -> int | float:
    return int(digits) if len(digits) <= LONGEST_DIGITS else float(digits)


def tidy(root: object) -> object:
    """Return a copy of a document's values with whole numbers as int and -0 as 0; raise `Refused`.

    Inside the top-level `x` only finiteness, doubled members, text and depth are looked at.
    """
    try:
        return _tidied(root, LARGEST_NUMBER, 0)
    except Wrong as wrong:
        raise wrong.refused(root) from None


def _tidied(value: object, most: float, deep: int) -> object:
    """Return the tidy copy; `most` is the largest number allowed, inf inside `x`."""
    if value is None or isinstance(value, bool):
        return value
    if isinstance(value, float | int):
        return _number(value, most)
    if isinstance(value, str):
        return _text(value)
    if deep >= DEEPEST:
        raise Wrong(*_TOO_DEEP)
    if isinstance(value, dict):
        return _members(value, most, deep)
    if isinstance(value, list | tuple):
        return _items(value, most, deep)
    raise Wrong(
        f"a {type(value).__name__} is not a JSON value", "Write numbers, text, lists and objects only"
    )


def _number(value: float, most: float) -> float:
    if isinstance(value, float) and not isfinite(value):
        name = "NaN" if isnan(value) else "an infinite number"
        raise Wrong(f"{name} is not a measure", "Write the figure, or null where it is not known")
    if abs(value) > most:
        raise Wrong(f"{value:.12g} is larger than {most:.12g}", "Measures are in mm; correct the figure")
    if isinstance(value, float) and value.is_integer() and abs(value) < _WHOLE:
        return int(value)
    return value


def _text(value: str) -> str:
    if not value.isascii():
        try:
            value.encode("utf-8")
        except UnicodeEncodeError:
            raise Wrong(
                f"{quoted(ascii(value)[1:-1])} holds half a character", "Type the text again"
            ) from None
    return value


def _members(value: dict[str, Any], most: float, deep: int) -> dict[str, Any]:
    if isinstance(value, _Twice):
        raise Wrong(f"the member {quoted(_shown(value.member))} is there twice", "Keep one of them")
    free = most == inf
    made: dict[str, Any] = {}
    for name, item in value.items():
        if not isinstance(name, str):
            raise Wrong(f"{name!r} is not a member's name", "Names are text")
        _text(name)
        try:
            if not free:
                _count(name, item)
            here = inf if deep == 0 and name == "x" else LARGEST_AREA if name in _AREAS and not free else most
            made[name] = _tidied(item, here, deep + 1)
        except Wrong as wrong:
            wrong.path.append(name)
            raise
    return made


def _shown(name: str) -> str:
    return name.encode("utf-8", "replace").decode("utf-8")


def _items(value: list[Any] | tuple[Any, ...], most: float, deep: int) -> list[Any]:
    made: list[Any] = []
    for index, item in enumerate(value):
        try:
            made.append(_tidied(item, most, deep + 1))
        except Wrong as wrong:
            wrong.path.append(index)
            raise
    return made


def _count(name: str, item: object) -> None:
    if isinstance(item, dict):
        if name == "cards" and len(item) > MOST_THINGS:
            raise Wrong(f"there are {len(item)} of them; at most {MOST_THINGS} are read", "Split the layout")
    elif isinstance(item, list | tuple) and name not in _UNCOUNTED and len(item) > MOST_THINGS:
        if isinstance(item[0], dict):
            raise Wrong(f"there are {len(item)} of them; at most {MOST_THINGS} are read", "Split the layout")
        if len(item) > MOST_POINTS:
            raise Wrong(f"there are {len(item)} points; at most {MOST_POINTS} are read", "Leave points out")
