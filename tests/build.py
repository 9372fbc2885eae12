"""Tiny builders: a plain document to start from, changed member by member.

The plain bay: wall 1200 x 600, one board `BD` 1000 x 400 with its lower left corner at (0, 0), 10 thick
at standoff 20 (front at z = 30), no corner radius.  Cards: `box` 100 x 60 x 50 and `slab` 200 x 100 x 40,
both without ports, screws or service points, both warm (heat null counts as hot).
"""

from copy import deepcopy
from typing import Any

from bayboard.model.layout import Layout
from bayboard.model.read import from_document


def rectangle(x0: float, y0: float, x1: float, y1: float) -> list[list[float]]:
    """Return the four corners, counter-clockwise."""
    return [[x0, y0], [x1, y0], [x1, y1], [x0, y1]]


def card(wide: float = 100, high: float = 60, deep: float | None = 50, **members: Any) -> dict[str, Any]:
    """Return a card of a plain box, its frame's origin in the middle."""
    plain: dict[str, Any] = {
        "name": "Plain box",
        "kind": "other",
        "outline": rectangle(-wide / 2, -high / 2, wide / 2, high / 2),
        "height": deep,
        "mass": 1.0,
        "foot": 2.0,
        "current": None,
        "fuse": None,
        "heat": None,
    }
    return plain | members


def gear(name: str, x: float, y: float, card: str = "box", **members: Any) -> dict[str, Any]:
    """Return a piece of gear at (x, y)."""
    return {"id": name, "card": card, "at": [x, y]} | members


_PLAIN: dict[str, Any] = {
    "bayboard": 1,
    "vehicle": {"name": "Plain bay"},
    "bay": {"wall": rectangle(-100, -100, 1100, 500)},
    "boards": [{"id": "BD", "outline": rectangle(0, 0, 1000, 400), "thickness": 10, "standoff": 20}],
    "cards": {"box": card(), "slab": card(200, 100, 40)},
}


def document(**members: Any) -> dict[str, Any]:
    """Return the plain document with top-level members replaced; `bay`, `cards` and `board` are merged.

    `board={...}` changes members of the one board.
    """
    doc = deepcopy(_PLAIN)
    doc["boards"][0] |= members.pop("board", {})
    for merged in ("bay", "cards", "vehicle"):
        doc[merged] |= members.pop(merged, {})
    return doc | members


def layout(**members: Any) -> Layout:
    """Return the layout of `document(**members)`."""
    return from_document(document(**members))
