"""Pairs of bodies that are close or lie into each other, for all stand-ins or for the moved ones."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from bayboard.geometry.crowd import Crowd, Flags, boxes_apart, crowd, gaps, overlaps
from bayboard.geometry.crowd import overlapping as overlapping_rows
from bayboard.geometry.outline import Points
from bayboard.model.placed import Body, Placed
from bayboard.rules.levels import Key
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene

Row = tuple[str, Body]
Measure = Callable[[Crowd, Crowd, Flags], Points]
S = TypeVar("S", np.float64, np.bool_)


@dataclass(frozen=True, slots=True)
class Meeting:
    """Two things and the measure of their bodies that decides; subjects in document order."""

    subjects: tuple[str, str]
    measure: float
    bodies: tuple[Body, Body]


def body_members(placed: Placed) -> tuple[str, ...]:
    """Return the members of the card that make its body: its solids, or that it has none."""
    return ("solids",) if placed.card.solids else ("outline", "height", "solids")


def overlapping(scene: Scene, about: frozenset[str] | None, area: float) -> list[Meeting]:
    """Return the pairs of stand-ins, and of stand-ins and stays, that share more plan area than `area`.

    Measured by the pair of bodies that lie deepest into each other.
    """
    gear = _gear(scene)
    every = gear + _stays(scene)
    return _meetings(_moved(gear, about), every, lambda a, b, where: -overlaps(a, b, where, area), 0.0)


def close(scene: Scene, about: frozenset[str] | None, within: float) -> list[Meeting]:
    """Return the pairs of stand-ins that are nearer than `within`, measured by their nearest bodies."""
    gear = _gear(scene)
    return _meetings(_moved(gear, about), gear, lambda a, b, where: gaps(a, b, where, within), within)


def lies_into(a: Placed, b: Placed, area: float) -> bool:
    """Return whether any two bodies of two stand-ins share more plan area than `area`."""
    rows = [_crowd([(p.id, body) for body in p.bodies]) for p in (a, b)]
    asked = np.ones((len(rows[0]), len(rows[1])), dtype=np.bool_)
    return bool(overlapping_rows(rows[0], rows[1], asked, area).any())


def share_at(scene: Scene, places: Places, others: Iterable[str], area: float) -> dict[Key, Flags]:
    """Return at which places a stand-in shares more plan area than `area` with others, by subjects.

    Others that are far from all places are left out, as in `apart_at`.
    """
    rows = _near(_those(scene, others), places, 0.0)
    found = _every_body(places, rows, lambda a, b, where: overlapping_rows(a, b, where, area))
    return _by_pair(scene, places, rows, np.asarray(found.any(axis=0)), np.logical_or)


def apart_at(scene: Scene, places: Places, others: Iterable[str], within: float) -> dict[Key, Points]:
    """Return how far a stand-in is at each place from others, mm, by subjects; inf beyond `within`."""
    rows = _near(_those(scene, others), places, within)
    found = _every_body(places, rows, lambda a, b, where: gaps(a, b, where, within))
    return _by_pair(scene, places, rows, found.min(axis=0, initial=np.inf), np.minimum)


def _every_body(
    places: Places, rows: list[Row], measure: Callable[[Crowd, Crowd, Flags], NDArray[S]]
) -> NDArray[S]:
    """Return the measure of each body at each place from each row, (bodies, places, rows)."""
    found = measure(places.bodies, _crowd(rows), np.ones((len(places.bodies), len(rows)), dtype=np.bool_))
    return found.reshape(len(places.model.bodies), len(places), len(rows))


def _those(scene: Scene, ids: Iterable[str]) -> list[Row]:
    asked = frozenset(ids)
    return [row for row in _gear(scene) + _stays(scene) if row[0] in asked]


def _near(rows: list[Row], places: Places, within: float) -> list[Row]:
    """Return the rows that the stand-in comes near to at any of the places."""
    if not rows or not len(places.bodies):
        return []
    near = boxes_apart(places.box, _crowd(rows).boxes) <= within
    return [row for row, is_near in zip(rows, near, strict=True) if is_near]


def _by_pair(
    scene: Scene, places: Places, rows: list[Row], columns: NDArray[S], best: np.ufunc
) -> dict[Key, NDArray[S]]:
    """Return the best column of each other thing, by subjects in document order."""
    order = list(scene.placed)
    found: dict[Key, NDArray[S]] = {}
    for (id_, _), column in zip(rows, columns.T, strict=True):
        before = id_ in scene.placed and order.index(id_) < order.index(places.id)
        key = (id_, places.id) if before else (places.id, id_)
        found[key] = best(found[key], column) if key in found else column
    return found


def _stays(scene: Scene) -> list[Row]:
    return [(id_, body) for id_, (_, body) in scene.stays.items() if body is not None]


def _gear(scene: Scene) -> list[Row]:
    return [(id_, body) for id_, placed in scene.placed.items() for body in placed.bodies]


def _moved(gear: list[Row], about: frozenset[str] | None) -> list[Row]:
    return gear if about is None else [row for row in gear if row[0] in about]


def _crowd(rows: Iterable[Row]) -> Crowd:
    bodies = [body for _, body in rows]
    return crowd([body.polygon for body in bodies], [body.z for body in bodies])


def _meetings(moved: list[Row], rest: list[Row], measure: Measure, under: float) -> list[Meeting]:
    """Return the least measure of each pair that has one under `under`; `rest` is in document order."""
    order = {id_: n for n, (id_, _) in enumerate(rest)}  # of its last body: only compared
    again = {id_ for id_, _ in moved}
    first = np.array([order[id_] for id_, _ in moved], dtype=np.intp)[:, None]
    second = np.array([order[id_] for id_, _ in rest], dtype=np.intp)[None, :]
    told_once = np.array([id_ not in again for id_, _ in rest], dtype=np.bool_)[None, :]
    found = measure(_crowd(moved), _crowd(rest), (first < second) | (told_once & (first != second)))
    best: dict[tuple[str, str], Meeting] = {}
    for i, j in np.argwhere(found < under):
        (a, body_a), (b, body_b), value = moved[i], rest[j], float(found[i, j])
        if order[a] > order[b]:
            (a, body_a), (b, body_b) = (b, body_b), (a, body_a)
        if (a, b) not in best or value < best[a, b].measure:
            best[a, b] = Meeting((a, b), value, (body_a, body_b))
    return list(best.values())
