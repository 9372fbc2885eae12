"""What the engine asks of a rule: a module of this form."""

from collections.abc import Iterator
from typing import Protocol

from bayboard.rules.finding import Said
from bayboard.rules.scene import Scene


class Rule(Protocol):
    """A rule module: its id, how far its sayings reach, and its look at a scene.

    A rule whose findings hang on where stand-ins stand also has `at_places`, as `places.AtPlaces` tells: the
    same measure with one stand-in at many places, for whoever looks for a better one.
    """

    RULE: str
    """The id, as in the contract."""

    WIDE: bool
    """Whether a saying may change though none of its subjects changed place."""

    def look(self, scene: Scene, about: frozenset[str] | None = None, /) -> Iterator[Said]:
        """Yield what is wrong in the scene, and what nobody could look at.

        `about` None: everything.  Otherwise the ids of gear and leads that changed place: exactly
        the sayings that have one of them among their subjects' heads (see `finding.heads`).
        """
        ...
