"""Write a layout in its normal form: one text for one layout, made for reading and comparing.

UTF-8, LF, one-space indent, members in document order, members equal to their default left out; numbers as
the shortest decimal that reads back; every member on its own line, a list of plain numbers or texts on one.
"""

import json
from decimal import Decimal
from functools import cache
from json.encoder import encode_basestring as quoted
from typing import Any

import msgspec

from bayboard.model.layout import Board, Fixing, Gear, Layout, Value

_LONGEST_PLAIN = 25  # letters of a number before it takes an exponent
_ALWAYS = {"bayboard"}  # has a default in code, none in the document


def write(layout: Layout) -> str:
    """Return the document of a layout, normal form, ending with a line feed."""
    return spelled(plain(layout)) + "\n"


def plain(layout: Layout) -> dict[str, Any]:
    """Return the layout as plain JSON values, members equal to their default left out."""
    first = layout.boards[0].id if layout.boards else None
    return _members(layout, first)


def plain_value(item: Any) -> Any:
    """Return one member's value as plain JSON values, as it stands in the document."""
    return _plain(item, None)


@cache
def _fields(kind: type[Value]) -> tuple[msgspec.structs.FieldInfo, ...]:
    return msgspec.structs.fields(kind)


def _members(value: Value, first_board: str | None) -> dict[str, Any]:
    made = {}
    for field in _fields(type(value)):
        item = getattr(value, field.name)
        if field.encode_name in _ALWAYS or not _is_default(value, field, item, first_board):
            made[field.encode_name] = _plain(item, first_board)
    return made


def _is_default(value: Value, field: msgspec.structs.FieldInfo, item: Any, first_board: str | None) -> bool:
    """Return whether a member says nothing: no `?` in the contract means that it always does."""
    if isinstance(value, Gear | Fixing) and field.name == "board":
        return item is None or item == first_board
    if isinstance(value, Board) and field.name == "stock":
        return item is None or item == (value.thickness,)
    if field.default is not msgspec.NODEFAULT:
        return bool(item == field.default)
    return field.default_factory is not msgspec.NODEFAULT and not item


def _plain(item: Any, first_board: str | None) -> Any:
    if isinstance(item, Value):
        return _members(item, first_board)
    if isinstance(item, tuple | list):
        return [_plain(part, first_board) for part in item]
    if isinstance(item, dict):
        return {name: _plain(part, first_board) for name, part in item.items()}
    return item


def spelled(value: object) -> str:
    """Return JSON values in the layout of the normal form, without the last line feed."""
    return _spelled(value, "\n")


def _spelled(value: object, line: str) -> str:
    """Return the text of a value; `line` is a line feed and the indent that it stands at."""
    if isinstance(value, list):
        if not any(isinstance(item, dict | list) for item in value):
            return f"[{', '.join(map(_scalar, value))}]"
        inner = line + " "
        return f"[{','.join([inner + _spelled(item, inner) for item in value])}{line}]"
    if isinstance(value, dict) and value:
        inner = line + " "
        items = [f"{inner}{quoted(name)}: {_spelled(item, inner)}" for name, item in value.items()]
        return f"{{{','.join(items)}{line}}}"
    return _scalar(value)


def _scalar(value: object) -> str:
    if isinstance(value, str):
        return quoted(value)
    if isinstance(value, bool) or not isinstance(value, int | float):
        return json.dumps(value, ensure_ascii=False)
    return number(value)


def number(value: float) -> str:
    """Return the shortest decimal that reads back: whole without `.0`, -0 as 0.

    Small numbers are spelled without an exponent; larger ones than any measure keep theirs.
    """
    if value == 0:
        return "0"
    shortest = repr(float(value) if isinstance(value, float) else value)
    if "e-" in shortest:
        flat = f"{Decimal(shortest):f}"
        return flat if len(flat) <= _LONGEST_PLAIN else shortest
    return shortest.removesuffix(".0")
