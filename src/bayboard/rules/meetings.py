"""Pairs of bodies that are close or lie into each other, for all stand-ins or for the moved ones."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

import numpy as np

from bayboard.geometry.crowd import Crowd, Flags, crowd, gaps, overlaps
from bayboard.geometry.outline import Points
from bayboard.model.placed import Body, Placed
from bayboard.rules.scene import Scene

Row = tuple[str, Body]
Measure = Callable[[Crowd, Crowd, Flags], Points]


@dataclass(frozen=True, slots=True)
class Meeting:
    """Two things and the measure of their bodies that decides; subjects in document order."""

    subjects: tuple[str, str]
    measure: float
    bodies: tuple[Body, Body]


def body_members(placed: Placed) -> tuple[str, ...]:
    """Return the members of the card that make its body: its solids where it has them."""
    return ("solids",) if placed.card.solids else ("outline", "height")


def overlapping(scene: Scene, about: frozenset[str] | None, area: float) -> list[Meeting]:
    """Return the pairs of stand-ins, and of stand-ins and stays, that share more plan area than `area`.

    Measured by the pair of bodies that lie deepest into each other.
    """
    stays = [(id_, body) for id_, (_, body) in scene.stays.items() if body is not None]
    gear = _gear(scene)
    return _meetings(_moved(gear, about), gear + stays, lambda a, b, where: -overlaps(a, b, where, area), 0.0)


def close(scene: Scene, about: frozenset[str] | None, within: float) -> list[Meeting]:
    """Return the pairs of stand-ins that are nearer than `within`, measured by their nearest bodies."""
    gear = _gear(scene)
    return _meetings(_moved(gear, about), gear, lambda a, b, where: gaps(a, b, where, within), within)


def lies_into(a: Placed, b: Placed, area: float) -> bool:
    """Return whether any two bodies of two stand-ins share more plan area than `area`."""
    rows = [_crowd([(p.id, body) for body in p.bodies]) for p in (a, b)]
    asked = np.ones((len(rows[0]), len(rows[1])), dtype=np.bool_)
    return bool(overlaps(rows[0], rows[1], asked, area).any())


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
