"""Leads whose stand-ins are on the move: until new ways are found the plugs go along, the rest stays."""

from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from bayboard.geometry import outline as outlines
from bayboard.geometry.outline import Points
from bayboard.model.layout import Layout
from bayboard.model.placed import Placed
from bayboard.routing.route import Route

Places = Mapping[str, Placed]


def carried(layout: Layout, known: Mapping[str, Route], before: Places, now: Places) -> dict[str, Route]:
    """Return the known routes, in order, of `before`, ends at gear that stands elsewhere `now` put there.

    What has no such end is the same object.  Only to be looked at: nothing is judged by it.
    """
    moved = {n: (old, now[n]) for n, old in before.items() if n in now and now[n] is not old}
    found = dict(known)
    for lead in layout.leads:
        route = known.get(lead.id)
        first, last = (moved.get(end.partition(".")[0]) for end in (lead.from_, lead.to))
        if route is not None and (first or last):
            points = route.points.copy()
            plug = 2 if len(points) > 3 and not lead.via else 1  # the plug's own stretch goes along
            if first is not None:
                points[:plug] = _put(points[:plug], *first)
            if last is not None:
                points[-plug:] = _put(points[-plug:], *last)
            found[lead.id] = replace(route, points=points)
    return found


def _put(points: Points, was: Placed, now: Placed) -> Points:
    """Return points that belong to a stand-in where they are after it went to another place."""
    return outlines.placed(points - np.asarray(was.at), now.at, now.gear.turn - was.gear.turn)
