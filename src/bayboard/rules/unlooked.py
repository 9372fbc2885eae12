"""What several rules could not look at: heights nobody measured, members that were guessed."""

from collections.abc import Iterable, Iterator

from bayboard.model.placed import Placed
from bayboard.rules.finding import Unchecked
from bayboard.rules.scene import Scene


def no_height(rule: str, thing: str) -> Unchecked:
    """Return the line for a stand-in or stay whose height is not known."""
    return Unchecked(rule=rule, subjects=(thing,), says=f"Nobody measured the height of {thing}.")


def no_section(rule: str, seat: str, which: str) -> Unchecked:
    """Return the line for a seat whose `up` or `folded` section is not known."""
    return Unchecked(rule=rule, subjects=(seat,), says=f"Nobody measured seat {seat} {which}.")


def guessed(rule: str, placed: Placed, reads: Iterable[str]) -> Iterator[Unchecked]:
    """Yield a line when the stand-in's card has a guess among the members that the rule reads."""
    guesses = [member for member in reads if member in placed.card.guessed]
    if guesses:
        what = " and ".join(guesses)
        many = len(guesses) > 1 or what.endswith("s")
        says = f"The {what} of {placed.id} {'are guesses' if many else 'is a guess'}."
        yield Unchecked(rule=rule, subjects=(placed.id,), says=says)


def doubtful(rule: str, placed: Placed, reads: Iterable[str]) -> Iterator[Unchecked]:
    """Yield a line where a stand-in's body is not known, and where the rule reads a guess of its card."""
    if not placed.bodies:
        yield no_height(rule, placed.id)
    yield from guessed(rule, placed, reads)


def unknown_bodies(rule: str, scene: Scene, about: frozenset[str] | None = None) -> Iterator[Unchecked]:
    """Yield a line for each stand-in and stay whose body is not known; `about` as in `Rule.look`."""
    for id_, placed in scene.placed.items():
        if not placed.bodies and (about is None or id_ in about):
            yield no_height(rule, id_)
    for id_, (_, body) in scene.stays.items():
        if body is None and about is None:
            yield no_height(rule, id_)
