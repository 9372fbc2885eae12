"""Plain shapes for the second opinion: one point, one edge at a time, with shapely for the areas.

Arcs are drawn with 256 chords a quarter turn, so a radius of 25 mm is never off by more than 0.0002 mm.
"""

import math

from shapely import LineString, Point, Polygon, box

QUARTER = 256
FAR = 1e6


def turned(point, at, turn):
    """Return a point of a card's frame in bay axes."""
    c, s = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    return (at[0] + c * point[0] - s * point[1], at[1] + s * point[0] + c * point[1])


def area_of(ring):
    """Return the signed area of a ring: positive when it runs counter-clockwise."""
    total = 0.0
    for (x0, y0), (x1, y1) in zip(ring, ring[1:] + ring[:1], strict=True):
        total += x0 * y1 - x1 * y0
    return total / 2


def rounded(outline, radius):
    """Return the outline with an arc of `radius` at each convex corner."""
    ring = [tuple(p) for p in outline]
    if area_of(ring) < 0:
        ring.reverse()
    if radius == 0:
        return ring
    out = []
    for i, corner in enumerate(ring):
        out += _corner(ring[i - 1], corner, ring[(i + 1) % len(ring)], radius)
    return out


def _corner(before, corner, after, radius):
    ux, uy = before[0] - corner[0], before[1] - corner[1]
    vx, vy = after[0] - corner[0], after[1] - corner[1]
    lu, lv = math.hypot(ux, uy), math.hypot(vx, vy)
    ux, uy, vx, vy = ux / lu, uy / lu, vx / lv, vy / lv
    if ux * vy - uy * vx >= -1e-12:  # a hollow corner, or none at all
        return [corner]
    half = math.acos(max(-1.0, min(1.0, ux * vx + uy * vy))) / 2
    bx, by = ux + vx, uy + vy
    reach = radius / math.sin(half) / math.hypot(bx, by)
    cx, cy = corner[0] + bx * reach, corner[1] + by * reach
    along = radius / math.tan(half)
    start = math.atan2(corner[1] + uy * along - cy, corner[0] + ux * along - cx)
    sweep = math.pi - 2 * half
    steps = max(1, math.ceil(QUARTER * sweep / (math.pi / 2)))
    angles = [start + sweep * k / steps for k in range(steps + 1)]
    return [(cx + radius * math.cos(a), cy + radius * math.sin(a)) for a in angles]


def signed_inside(point, polygon):
    """Return the distance of a point from the rim: positive inside, negative outside or in a hole."""
    here = Point(point)
    distance = polygon.boundary.distance(here)
    return distance if polygon.covers(here) else -distance


def furthest_outside(ring, polygon):
    """Return the largest distance of any point of the closed line `ring` to the polygon, 0 when it is on."""
    most = 0.0
    for a, b in zip(ring, ring[1:] + ring[:1], strict=True):
        outside = LineString([a, b]).difference(polygon)
        for piece in getattr(outside, "geoms", [outside]):
            if not piece.is_empty and piece.length > 0:
                most = max(most, _furthest_on(piece, polygon))
    return most


def _furthest_on(piece, polygon):
    """Sample each half millimetre, then search round the three best samples by thirds."""
    count = max(2, math.ceil(piece.length / 0.5))
    at = [piece.length * k / count for k in range(count + 1)]

    def apart(s):
        return polygon.distance(piece.interpolate(s))

    seen = sorted(((apart(s), k) for k, s in enumerate(at)), reverse=True)
    most = seen[0][0]
    for _, k in seen[:3]:
        low, high = at[max(0, k - 1)], at[min(count, k + 1)]
        for _ in range(50):
            one, two = low + (high - low) / 3, high - (high - low) / 3
            if apart(one) < apart(two):
                low = one
            else:
                high = two
        most = max(most, apart((low + high) / 2))
    return most


def short_side(shape):
    """Return the smaller side of the smallest rectangle round a shape.

    Of rectangles equally small (those on the three sides of a triangle) the flattest counts.
    """
    hull = shape.convex_hull
    ring = list(hull.exterior.coords)[:-1]
    found = []
    for (x0, y0), (x1, y1) in zip(ring, ring[1:] + ring[:1], strict=True):
        length = math.hypot(x1 - x0, y1 - y0)
        if length < 1e-9:
            continue
        ux, uy = (x1 - x0) / length, (y1 - y0) / length
        along = [x * ux + y * uy for x, y in ring]
        across = [y * ux - x * uy for x, y in ring]
        a, b = max(along) - min(along), max(across) - min(across)
        found.append((a * b, min(a, b)))
    least = min(area for area, _ in found)
    return min(side for area, side in found if area <= least * (1 + 1e-9))


def oblong(start, towards, length, wide):
    """Return the strip of `length` by `wide` that begins at `start` and runs `towards` (a unit vector)."""
    (x, y), (c, s), h = start, towards, wide / 2
    return Polygon(
        [
            (x + s * h, y - c * h),
            (x + length * c + s * h, y + length * s - c * h),
            (x + length * c - s * h, y + length * s + c * h),
            (x - s * h, y + c * h),
        ]
    )


def square(middle, side, turn):
    """Return a square about `middle`, its sides turned with the card."""
    h = side / 2
    return Polygon([turned(p, middle, turn) for p in ((-h, -h), (h, -h), (h, h), (-h, h))])


def between_x(shape, x0, x1):
    """Return the part of a plan shape between two x."""
    return shape.intersection(box(x0, -FAR, x1, FAR))


def inner(shape):
    """Return a shape without its rim: what runs along the rim is not inside."""
    return shape.buffer(-1e-7, join_style="mitre")


def under(measure, limit):
    """Return whether a measure is truly below a limit, beyond the rounding of a computer."""
    return measure < limit - 1e-9
