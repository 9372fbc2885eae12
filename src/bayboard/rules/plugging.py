"""The room straight out of every plug: what stands there first, and how far away."""

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from bayboard.model.placed import Placed, Plug
from bayboard.rules.ahead import Looks, Outward, Sideways, kept_free, nearest
from bayboard.rules.scene import Scene


class Outlet(NamedTuple):
    """A plug and how far from its port, mm, it needs to be free."""

    placed: Placed
    plug: Plug
    need: float

    @property
    def subject(self) -> str:
        """Return `GEAR.PORT`."""
        return f"{self.placed.id}.{self.plug.port.id}"


class Blocked(NamedTuple):
    """An outlet with too little room, the nearest solid and how far away it is, mm."""

    outlet: Outlet
    solid: str
    free: float


def blocked(scene: Scene, outlets: list[Outlet]) -> Iterator[Blocked]:
    """Yield the outlets that meet a solid nearer than they need, with the nearest solid."""
    for group, looks in looked(outlets):
        needs = np.array([outlet.need for outlet in group])
        for i, solid, far in nearest(kept_free(scene, "plug-room", looks), needs):
            yield Blocked(group[i], solid, far)


def looked(outlets: list[Outlet]) -> Iterator[tuple[list[Outlet], Looks]]:
    """Yield the outlets with a look straight out of each, those along the board first."""
    aside = [outlet for outlet in outlets if outlet.plug.port.towards != "out"]
    if aside:
        yield aside, _aside(aside)
    out = [outlet for outlet in outlets if outlet.plug.port.towards == "out"]
    if out:
        yield out, _out(out)


def _aside(outlets: list[Outlet]) -> Sideways:
    return Sideways(
        ids=[outlet.placed.id for outlet in outlets],
        starts=np.array([outlet.plug.at[:2] for outlet in outlets]),
        ways=np.array([outlet.plug.way[:2] for outlet in outlets]),
        wide=np.array([outlet.plug.port.plug_wide for outlet in outlets]),
        far=np.array([outlet.need for outlet in outlets]),
        z=[outlet.plug.z for outlet in outlets],
    )


def _out(outlets: list[Outlet]) -> Outward:
    return Outward(
        ids=[outlet.placed.id for outlet in outlets],
        rings=np.array([outlet.plug.ring for outlet in outlets]),
        z=np.array([outlet.plug.at[2] for outlet in outlets]),
    )
