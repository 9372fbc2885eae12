"""One stand-in at many places at once: what a rule measures when a better one is looked for."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cached_property

import msgspec
import numpy as np

from bayboard.geometry.crowd import Crowd, Shapes, filled
from bayboard.geometry.outline import Points
from bayboard.geometry.solids import Indices
from bayboard.model.layout import Point
from bayboard.model.placed import Placed
from bayboard.rules.levels import Key, Levels
from bayboard.rules.scene import Scene

AtPlaces = Callable[[Scene, "Places", Key | None], dict[Key, Levels]]
"""What a rule says of one stand-in at many places: levels (places,) by subjects.

With a key: of that one.  Without: of all that is a must at any of the places; what is less
may be left out.  A key that is left out is silent, or as it is now where the stand-in cannot
touch it.
"""


@dataclass(frozen=True, eq=False)
class Places:
    """A stand-in at the places `at` (n, 2), mm in bay axes, turned alike at all of them.

    `model` is the stand-in as it would stand at (0, 0).
    """

    model: Placed
    at: Points

    @property
    def id(self) -> str:
        """Return the stand-in's id."""
        return self.model.id

    def __len__(self) -> int:
        """Return how many places there are."""
        return len(self.at)

    def some(self, which: Indices) -> "Places":
        """Return some of the places."""
        return replace(self, at=self.at[which])

    def rings(self, ring: Points) -> Points:
        """Return a ring of the model at every place, (places, points, 2)."""
        return np.asarray(ring[None, :, :] + self.at[:, None, :])

    def points(self, at: Point) -> Points:
        """Return a point of the card's frame at every place, (places, 2)."""
        return np.asarray(self.model.point(at)) + self.at

    def shapes(self, ring: Points) -> Shapes:
        """Return a ring of the model as a polygon at every place, (places,)."""
        return filled(self.rings(ring))

    @cached_property
    def bodies(self) -> Crowd:
        """Return its bodies at every place: all places of the first body, then of the next."""
        bodies = self.model.bodies
        shapes = [np.empty(0, dtype=np.object_), *(self.shapes(b.ring) for b in bodies)]
        return Crowd(
            np.concatenate(shapes),
            np.repeat(np.array([b.z for b in bodies]).reshape(-1, 2), len(self), axis=0),
        )

    @cached_property
    def box(self) -> Points:
        """Return (x0, y0, x1, y1) round its bodies at all the places."""
        points = np.concatenate([body.ring for body in self.model.bodies])
        low, high = points.min(axis=0) + self.at.min(axis=0), points.max(axis=0) + self.at.max(axis=0)
        return np.concatenate([low, high])

    def others(self, scene: Scene) -> list[str]:
        """Return the other stand-ins, in document order."""
        return [id_ for id_ in scene.placed if id_ != self.id]

    @property
    def silence(self) -> Levels:
        """Return the levels of a rule that says nothing at any place."""
        return np.zeros(len(self), dtype=np.int8)


def places_of(placed: Placed, at: Points) -> Places:
    """Return a stand-in at many places, turned as it is."""
    return Places(Placed(msgspec.structs.replace(placed.gear, at=(0.0, 0.0)), placed.card, placed.board), at)
