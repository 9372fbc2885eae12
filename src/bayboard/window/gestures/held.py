"""What gestures on stand-ins share: why one of them stays, and the chalk where they were."""

from collections.abc import Sequence

from bayboard.model.placed import Placed
from bayboard.window.draw.show import Ghost
from bayboard.window.made import why_not
from bayboard.window.workplace import Workplace


def held_back(place: Workplace, ids: Sequence[str], verb: str) -> str:
    """Return why the stand-ins cannot be moved by hand, "" when they can: one is taped down or drilled."""
    taped = [name for name in ids if place.scene.placed[name].gear.taped]
    if taped:
        return f"{taped[0]} is taped down. Press T to lift the tape, then {verb} it."
    return why_not(place.layout, ids)


def ghosts_of(pieces: Sequence[Placed]) -> tuple[Ghost, ...]:
    """Return the stand-ins' places in chalk, lettered with their numbers."""
    return tuple(Ghost(tuple((float(x), float(y)) for x, y in piece.ring), piece.id) for piece in pieces)
