"""Read a layout document: text to a checked, frozen value, or one sentence that says why not."""

from typing import Any

from msgspec.structs import replace

from bayboard.model.check import check
from bayboard.model.explain import convert
from bayboard.model.layout import Board, Layout
from bayboard.model.places import spoken
from bayboard.model.raw import parse, tidy
from bayboard.model.refused import Refused

VERSION = 1


def read(text: str | bytes) -> Layout:
    """Return the layout of a JSON document; raise `Refused` for anything that is not one."""
    return from_document(parse(text))


def from_document(document: object) -> Layout:
    """Return the layout of a document's plain values; raise `Refused` as `read` does.

    Every piece of gear and fixing names its board, unless there are none.
    """
    _look_at_version(document)
    layout = _settled(convert(tidy(document)))
    check(layout)
    return layout


def _look_at_version(document: object) -> None:
    if not isinstance(document, dict):
        raise Refused("", f"{spoken(document)} is not a layout", "A layout is an object; choose another file")
    version: Any = document.get("bayboard")
    number = isinstance(version, int | float) and not isinstance(version, bool)
    if number and VERSION < version < float("inf"):
        raise Refused("", "this file was made by a newer Bayboard", "Update Bayboard to open it")
    if number and version == VERSION:
        return
    if version is None:
        raise Refused("", 'this is not a layout, for it does not say "bayboard": 1', "Choose another file")
    raise Refused("bayboard", f"{spoken(version)} is not a version", f"This Bayboard reads version {VERSION}")


def _settled(layout: Layout) -> Layout:
    """Return the layout with what was left out filled in: the board of gear and fixings."""
    boards = tuple(_own_stock_left_out(board) for board in layout.boards)
    if not boards:
        return layout
    first = boards[0].id
    return replace(
        layout,
        boards=boards,
        gear=tuple(g if g.board is not None else replace(g, board=first) for g in layout.gear),
        fixings=tuple(f if f.board is not None else replace(f, board=first) for f in layout.fixings),
    )


def _own_stock_left_out(board: Board) -> Board:
    return replace(board, stock=None) if board.stock == (board.thickness,) else board
