"""The holes whose drill is known, and the lines for those that nobody can judge."""

from collections.abc import Iterator

from bayboard.mechanics.holes import Hole
from bayboard.rules.finding import Unchecked
from bayboard.rules.scene import Scene
from bayboard.rules.unlooked import guessed


def known_holes(scene: Scene) -> list[Hole]:
    """Return the holes whose thread is in the tables, in document order."""
    return [hole for hole in scene.holes if hole.drill is not None]


def unlooked(rule: str, scene: Scene, about: frozenset[str] | None) -> Iterator[Unchecked]:
    """Yield a line for each hole without a drill and each stand-in whose screws are a guess."""
    for hole in scene.holes:
        if hole.drill is None and (about is None or hole.owner in about):
            says = f"No table has {hole.thread}, so nobody knows the drill of {hole.id}."
            yield Unchecked(rule=rule, subjects=(hole.id,), says=says)
    for id_, placed in scene.placed.items():
        if about is None or id_ in about:
            yield from guessed(rule, placed, ("screws",))
