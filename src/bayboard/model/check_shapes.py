"""Outlines: simple, a card's in the middle of its frame, corners that fit, cut-outs inside and apart."""

from collections.abc import Iterable
from math import tan

import numpy as np
import shapely
from shapely import Polygon

from bayboard.geometry import outline as outlines
from bayboard.model.layout import (
    Bay,
    Board,
    Card,
    CutOut,
    Landing,
    Lining,
    NoDrill,
    Outline,
    Seat,
    Solid,
    Stay,
    Value,
    Vent,
)
from bayboard.model.places import step_to
from bayboard.model.refused import Refused
from bayboard.model.things import Thing

OFF_MIDDLE = 0.05  # mm; the contract's allowance
HAIR = 0.001  # mm; the error of a drawn corner arc is no fault of a cut-out

_OUTLINED = (Landing, Stay, Lining, Vent, NoDrill, CutOut, Board, Card, Solid)


def check_shapes(found: Iterable[Thing]) -> None:
    """Raise `Refused` for the first outline that cannot be cut out of a sheet, or does not fit its thing."""
    boards = []
    for place, thing in found:
        for member, ring in _rings(thing):
            _simple(step_to(place, member), ring)
        if isinstance(thing, Card):
            _centred(step_to(place, "outline"), thing.outline)
        elif isinstance(thing, Board):
            boards.append((place, thing))
    for place, board in boards:
        _corners(step_to(place, "corner_radius"), board)
        _cutouts(place, board)


def _rings(thing: Value) -> list[tuple[str, Outline]]:
    if isinstance(thing, _OUTLINED):
        return [("outline", thing.outline)]
    if isinstance(thing, Bay):
        return [("wall", thing.wall)] if thing.wall else []
    if isinstance(thing, Seat):
        sections = (("up", thing.up), ("folded", thing.folded))
        return [(member, section) for member, section in sections if section is not None]
    return []


def _simple(place: str, ring: Outline) -> None:
    fault = outlines.fault(ring)
    if fault:
        raise Refused(place, f"this outline {fault}", "Correct its points")


def _centred(place: str, ring: Outline) -> None:
    x0, y0, x1, y1 = outlines.box(ring)
    x, y = -(x0 + x1) / 2, -(y0 + y1) / 2
    if max(abs(x), abs(y)) > OFF_MIDDLE + outlines.SAME:
        what = "the origin is not in the middle of the outline's box"
        raise Refused(place, what, f"Shift every point of the card by ({_shift(x)}, {_shift(y)}) mm")


def _shift(mm: float) -> str:
    return f"{round(mm, 6) + 0.0:g}" if abs(mm) < 1e5 else str(mm)


def _corners(place: str, board: Board) -> None:
    radius = board.corner_radius
    half = outlines.shortest_edge(board.outline) / 2
    if radius > half:
        what = f"a radius of {radius:g} is larger than half the shortest edge ({half:g})"
        raise Refused(place, what, "Make it smaller")
    if radius > 0:
        _arcs_fit(place, board)


def _arcs_fit(place: str, board: Board) -> None:
    """Raise `Refused` where the arcs of two corners, one of them sharp, overlap on the edge between them."""
    corners = outlines.corners(board.outline, board.corner_radius)
    taken = [corner.radius * tan(np.radians(abs(corner.sweep)) / 2) for corner in corners]
    xy = np.asarray(board.outline)
    edges = np.hypot(*(np.roll(xy, -1, axis=0) - xy).T)
    for i, edge in enumerate(edges):
        if taken[i] + taken[(i + 1) % len(taken)] > edge + outlines.SAME / 10:
            x, y = board.outline[i]
            what = f"the rounded corners do not fit on the edge that starts at ({x:g}, {y:g})"
            raise Refused(place, what, "Make the radius smaller")


def _cutouts(place: str, board: Board) -> None:
    if not board.cutouts:
        return
    shape = Polygon(outlines.rounded(board.outline, board.corner_radius))
    cuts = [outlines.polygon(cut.outline) for cut in board.cutouts]
    room = shape.buffer(HAIR)
    for cut, polygon in zip(board.cutouts, cuts, strict=True):
        if not room.covers(polygon):
            what = "this cut-out reaches over the edge of its board"
            raise Refused(
                f"{place} › cutouts {cut.id}", what, "Keep it inside, or change the board's outline"
            )
    _apart(place, board, cuts)
    try:
        outlines.with_holes(
            outlines.rounded(board.outline, board.corner_radius), [c.outline for c in board.cutouts]
        )
    except ValueError:
        raise Refused(
            f"{place} › cutouts", "the cut-outs do not leave one piece of the board", "Leave one piece"
        ) from None


def _apart(place: str, board: Board, cuts: list[Polygon]) -> None:
    tree = shapely.STRtree(cuts)
    for i, j in tree.query(cuts, predicate="intersects").T:
        if i < j and cuts[i].intersection(cuts[j]).area > outlines.SPECK:
            a, b = board.cutouts[i].id, board.cutouts[j].id
            raise Refused(
                f"{place} › cutouts {b}", f"this cut-out overlaps {a}", "Keep them apart or join them"
            )
