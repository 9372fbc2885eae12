"""The hands that have to get at the stand-ins, with all seats folded."""

from collections.abc import Iterable, Mapping

import numpy as np

from bayboard.geometry.hand import Hand, Holder, Reach, hand, reached
from bayboard.geometry.prism import Prism
from bayboard.model.layout import Layout, Service
from bayboard.model.placed import Placed
from bayboard.tables.limits import limit

CORRIDOR = {"fingers": "corridor_fingers", "screwdriver": "corridor_driver"}  # by tool


def handled(placed: Placed) -> list[Service]:
    """Return the service points that something has to reach, in card order."""
    return [service for service in placed.card.service if service.tool in CORRIDOR]


def reach(
    layout: Layout,
    placed: Mapping[str, Placed],
    solid: Iterable[Prism],
    before: Reach | None,
    known: Mapping[str, Placed],
) -> Reach:
    """Return how wide the ways to the stand-ins are, by their number in `placed`.

    `solid` stands in the way of all: stays and folded seats.  `before` is what was measured when
    the stand-ins were `known`, all else equal: only what moved since is measured again.
    """
    if before is not None:
        pairs = enumerate(placed.values())
        return before.moved({n: _holder(layout, now) for n, now in pairs if known[now.id] is not now})
    holders = [_holder(layout, now) for now in placed.values()]
    rest = [Holder((prism,), ()) for prism in solid]
    return reached([*holders, *rest], limit(layout, "corridor_length"), limit(layout, "corridor_most"))


def _holder(layout: Layout, placed: Placed) -> Holder:
    return Holder(placed.prisms, tuple(hand_of(layout, placed, service) for service in handled(placed)))


def hand_of(layout: Layout, placed: Placed, service: Service) -> Hand:
    """Return the hand; the first tilted way leans to the card's own right, sideways: out of the board."""
    first = placed.way(0.0) if service.facing == "out" else placed.way("out")
    return hand(
        np.array(placed.service_at(service)),
        np.array(placed.way(service.facing)),
        np.array(first),
        limit(layout, "corridor_length"),
        placed.board.front,
        limit(layout, CORRIDOR[service.tool]),
    )
