"""A router written a second time, plainly: shapely says what is free, networkx what is shortest.

It shares with the program only the words of its docstring: obstacles grown with tangents of at most 45
degrees at their corners, paths inside the board but for the stretch next to an entry off it, plugs straight.
"""

from itertools import combinations
from math import atan2, ceil, cos, dist, hypot, pi, sin

import networkx
import shapely
from shapely import LineString, MultiPoint, Point, Polygon
from shapely.geometry.polygon import orient

from bayboard.model.placed import place
from bayboard.tables.reference import thread

HAIR = 2e-6


def swollen(polygon, r):
    """Return the polygon grown by r, each convex corner by tangents that turn at most 45 degrees."""
    ring = list(orient(polygon).exterior.coords)[:-1]
    parts = [polygon]
    for k, b in enumerate(ring):
        a, c = ring[k - 1], ring[(k + 1) % len(ring)]
        first, last = atan2(b[1] - a[1], b[0] - a[0]), atan2(c[1] - b[1], c[0] - b[0])
        n = (sin(last) * r, -cos(last) * r)
        parts.append(Polygon([b, c, (c[0] + n[0], c[1] + n[1]), (b[0] + n[0], b[1] + n[1])]))
        turn = (last - first + pi) % (2 * pi) - pi
        if turn <= 1e-9:
            continue
        count = ceil(turn / (pi / 4) - 1e-6)
        step = turn / count
        fan = [b, (b[0] + r * sin(first), b[1] - r * cos(first))]
        for i in range(count):
            out = first - pi / 2 + step * (i + 0.5)
            fan.append((b[0] + r / cos(step / 2) * cos(out), b[1] + r / cos(step / 2) * sin(out)))
        parts.append(MultiPoint([*fan, (b[0] + n[0], b[1] + n[1])]).convex_hull)
    return shapely.union_all(parts)


def turning(ring):
    """Return the corners of a counter-clockwise ring that point outward."""
    kept = []
    for k, b in enumerate(ring):
        a, c = ring[k - 1], ring[(k + 1) % len(ring)]
        cross = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])
        if cross > 1e-6 * dist(a, b) * dist(b, c):
            kept.append(b)
    return kept


def octagon(at, r):
    """Return the octagon round a circle."""
    out = r / cos(pi / 8)
    return Polygon([(at[0] + out * cos(pi / 8 * k), at[1] + out * sin(pi / 8 * k)) for k in range(1, 17, 2)])


class PlainRouter:
    """The shortest ways for one diameter on the first board of a layout."""

    def __init__(self, layout, od):
        self.layout = layout
        board = layout.boards[0]
        rim = Polygon(board.outline)
        if board.corner_radius:
            r = board.corner_radius
            rim = rim.buffer(-r, join_style="mitre").buffer(r, quad_segs=64).intersection(rim)
        self.rim = rim
        self.placed = {g.id: p for g in layout.gear if (p := place(layout, g)) is not None}
        self.bare = {name: Polygon(p.ring) for name, p in self.placed.items()}
        things = [swollen(shape, od / 2) for shape in self.bare.values()]
        things += [swollen(Polygon(c.outline), od / 2) for c in board.cutouts]
        self.bares = [*self.bare.values(), *(Polygon(c.outline) for c in board.cutouts)]
        for fixing in layout.fixings:
            washer = thread(fixing.thread).large_washer_od / 2
            things.append(octagon(fixing.at, washer + od / 2))
            self.bares.append(octagon(fixing.at, washer))
        self.things = things
        self.solid = shapely.union_all(things).buffer(-HAIR)
        shapely.prepare(self.solid)
        self.inside = rim.buffer(HAIR)
        shapely.prepare(self.inside)
        nodes = [xy for ring in self.rings() for xy in turning(list(orient(ring).exterior.coords)[:-1])]
        # corners of the board itself that were not rounded away are those bent inward
        nodes += [tuple(xy) for xy in board.outline if board.corner_radius and rim.distance(Point(xy)) < HAIR]
        nodes = [n for n in dict.fromkeys(nodes) if self.inside.covers(Point(n))]
        self.nodes = [n for n in nodes if not self.solid.covers(Point(n))]
        self.graph = networkx.Graph()
        self.join(self.graph, list(combinations(self.nodes, 2)), self.solid)

    def rings(self):
        return [part for thing in self.things for part in shapely.get_parts(thing)]

    def tip(self, end):
        """Return (end, where it may turn, whether the first stretch may leave the board, own gear, plug)."""
        gear, dot, port = end.partition(".")
        if not dot:
            (entry,) = [e for e in self.layout.bay.entries if e.id == end]
            return entry.at, entry.at, not self.inside.covers(Point(entry.at)), None, 0
        (port,) = [p for p in self.placed[gear].card.ports if p.id == port]
        x, y, _ = self.placed[gear].port_at(port)
        if port.towards == "out":
            return (x, y), (x, y), False, gear, port.plug
        wx, wy, _ = self.placed[gear].way(port.towards)
        return (x, y), (x + port.plug * wx, y + port.plug * wy), False, gear, 0

    def held(self, tip):
        """Return the numbers of the things nearer to a tip than half the diameter."""
        return [k for k, thing in enumerate(self.things) if thing.buffer(-HAIR).contains(Point(tip))]

    def solid_from(self, *tips):
        """Return what stretches from these tips may not enter: what holds a tip stands there not grown.

        A tip is (where, own gear, plug): within the plug's length the own stand-in does not count.
        """
        parts = []
        numbers = {name: k for k, name in enumerate(self.bare)}
        held = {k for at, _, _ in tips for k in self.held(at)}
        for k, (thing, bare) in enumerate(zip(self.things, self.bares, strict=True)):
            part = (bare if k in held else thing).buffer(-HAIR)
            for at, own, plug in tips:
                if plug and numbers[own] == k:
                    part = part.difference(Point(at).buffer(plug + 1e-5, quad_segs=2048))  # chords cut a hair
            parts.append(part)
        return shapely.union_all(parts)

    def stuck(self, at, plug):
        """Return whether a tip lies in a thing itself other than within its plug."""
        return not plug and any(bare.buffer(-HAIR).contains(Point(at)) for bare in self.bares)

    def around(self, at):
        """Return points 2 mm apart on the rims of what holds a tip, where a way may come clear of it."""
        rims = [self.things[k].buffer(HAIR).exterior for k in self.held(at)]
        points = [rim.interpolate(mm) for rim in rims for mm in range(0, int(rim.length), 2)]
        return [(p.x, p.y) for p in points if self.inside.covers(p) and not self.solid.covers(p)]

    def nowhere(self, lead):
        """Return whether an end of the lead lies where no lead can be: in a thing, or off the board."""
        for _, turns, off, _, plug in (self.tip(lead.from_), self.tip(lead.to)):
            if self.stuck(turns, plug) or not (off or self.inside.covers(Point(turns))):
                return True
        return False

    def hits(self, lead):
        """Return whether a plug of the lead runs into a thing before the lead may turn."""
        plugs = [LineString([end, turns]) for end, turns, *_ in map(self.tip, (lead.from_, lead.to))]
        return any(
            bare.buffer(-HAIR).intersects(plug) for bare in self.bares for plug in plugs if plug.length
        )

    def length(self, lead):
        """Return the length of a lead's shortest way; None where there is none, or an end is nowhere."""
        (a, s, a_off, *a_own), (b, t, b_off, *b_own) = self.tip(lead.from_), self.tip(lead.to)
        if self.nowhere(lead):
            return None
        graph = self.graph.copy()
        extra = self.around(s) + self.around(t)
        self.join(graph, [(x, n) for x in extra for n in self.nodes], self.solid)
        for name, at, off, own in (("start", s, a_off, a_own), ("stop", t, b_off, b_own)):
            pairs = [(at, n) for n in (*self.nodes, *extra)]
            graph.add_node(name)
            self.join(graph, pairs, self.solid_from((at, *own)), off, {at: name})
        solid = self.solid_from((s, *a_own), (t, *b_own))
        self.join(graph, [(s, t)], solid, a_off or b_off, {s: "start", t: "stop"})
        try:
            between = networkx.shortest_path_length(graph, "start", "stop", weight="weight")
        except networkx.NetworkXNoPath:
            return None
        return between + hypot(a[0] - s[0], a[1] - s[1]) + hypot(b[0] - t[0], b[1] - t[1])

    def join(self, graph, pairs, solid, off=False, names=None):
        """Add the pairs of points that a free straight stretch joins."""
        if not pairs:
            return
        names = names or {}
        lines = shapely.linestrings(pairs)
        shapely.prepare(solid)
        free = ~shapely.intersects(solid, lines) & (off | shapely.covers(self.inside, lines))
        for (p, q), ok in zip(pairs, free, strict=True):
            if ok:
                graph.add_edge(names.get(p, p), names.get(q, q), weight=dist(p, q))
