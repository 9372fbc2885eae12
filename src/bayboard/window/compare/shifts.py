"""Two layouts as what is laid on the Wall: which pieces went where, from which corner, and its tag."""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import hypot

import shapely
from shapely import LineString

from bayboard.job.row_words import Rows, moved_words
from bayboard.model.compare import Comparison
from bayboard.model.drilled import is_drilled
from bayboard.model.layout import Fixing, Layout, Outline, Point
from bayboard.model.placed import Placed
from bayboard.rules.scene import Scene
from bayboard.window.draw.changes import Bolt, ChangesShow, Kind, Ring, Shift, Told

APART = 320.0  # mm; drilled fixings nearer than this are told on one tag
_BAY_KINDS = ("landings", "stays", "linings", "vents", "no_drill")


def changes_show(old: Scene, new: Scene, found: Comparison) -> ChangesShow:
    """Return what is laid on the Wall that shows `new`."""
    rows = Rows(old.layout, new.layout, found)
    shifts = tuple(_shifts(old, new, rows))
    return ChangesShow(
        shifts=shifts,
        bolts=tuple(_bolts(old.layout, new.layout, rows)),
        told=drilled_tags(new.layout),
        outlines=(*_old_boards(old, new), *_old_bay(old.layout, new.layout)),
        ways=tuple(_gone_ways(old, frozenset(found.removed))),
        same=frozenset(new.placed) - {shift.id for shift in shifts},
    )


# --- stand-ins ---


def _shifts(old: Scene, new: Scene, rows: Rows) -> Iterator[Shift]:
    known = {gear.id for gear in new.layout.gear}
    order = [gear.id for gear in new.layout.gear]
    order += [gear.id for gear in old.layout.gear if gear.id not in known]
    for name in order:
        was, now = old.placed.get(name), new.placed.get(name)
        if was is None and now is None:
            continue
        redrawn = was is not None and now is not None and was.card.outline != now.card.outline
        if rows.gear_words(name) or redrawn:
            yield _shift(name, was, now, new, rows)


def _shift(name: str, was: Placed | None, now: Placed | None, new: Scene, rows: Rows) -> Shift:
    kind, tag = _kind(name, was, now, rows)
    there = kind == "moved" or (was is not None and now is None)
    return Shift(
        id=name,
        kind=kind,
        was=_ring(was) if was is not None and (there or _outlined_anew(was, now)) else (),
        now=_ring(now) if now is not None else (),
        arrow=arrow(was, now, new) if was is not None and now is not None and kind == "moved" else None,
        tag=tag,
    )


def _kind(name: str, was: Placed | None, now: Placed | None, rows: Rows) -> tuple[Kind, str]:
    if was is None:
        return "new", "new" if name in rows.added else f"{name}  from the bench"
    if now is None:
        return "gone", f"{name}  gone" if name in rows.removed else f"{name}  on the bench"
    moved = rows.moved.get(name)
    if moved is not None:
        return "moved", f"{name}  {moved_words(moved, rows.units)}"
    return "changed", f"{name}  changed"


def _outlined_anew(was: Placed, now: Placed | None) -> bool:
    return now is not None and was.card.outline != now.card.outline


def _ring(piece: Placed) -> Ring:
    return tuple((float(x), float(y)) for x, y in piece.ring)


def arrow(was: Placed, now: Placed, new: Scene) -> tuple[Point, Point] | None:
    """Return the way of one corner, of all four the one least hidden by what hangs there now.

    A way that is left by itself shows best from a lower corner, where the eye looks first.
    """
    starts, ends = _corners(was), _corners(now)
    shapes = [piece.polygon for piece in new.placed.values()]
    whole = shapely.union_all(shapes)
    best: tuple[float, int] | None = None
    for i, (a, b) in enumerate(zip(starts, ends, strict=True)):
        far = hypot(b[0] - a[0], b[1] - a[1])
        if far == 0.0:
            continue
        hidden = LineString((a, b)).intersection(whole).length / far
        if best is None or (round(hidden, 3), i) < best:
            best = (round(hidden, 3), i)
    return None if best is None else (starts[best[1]], ends[best[1]])


def _corners(piece: Placed) -> list[Point]:
    """Return the corners of a card's box where they stand, the lower ones of an upright card first."""
    xs, ys = zip(*piece.card.outline, strict=True)
    x0, x1, y0, y1 = min(xs), max(xs), min(ys), max(ys)
    return [piece.point(at) for at in ((x0, y0), (x1, y0), (x0, y1), (x1, y1))]


# --- fixings ---


def _bolts(old: Layout, new: Layout, rows: Rows) -> Iterator[Bolt]:
    here = {fixing.id: fixing for fixing in new.fixings}
    there = {fixing.id: fixing for fixing in old.fixings}
    for name in dict.fromkeys((*here, *there)):
        if name in rows.moved:
            words = moved_words(rows.moved[name], rows.units)
            yield Bolt(name, there[name].at, here[name].at, f"{name}  {words}")
        elif name in rows.added and name in here:
            yield Bolt(name, None, here[name].at, f"{name}  new")
        elif name in rows.removed and name in there:
            yield Bolt(name, there[name].at, None, f"{name}  gone")


def drilled_tags(layout: Layout) -> tuple[Told, ...]:
    """Return "H6, H7 drilled" for the drilled fixings of each corner of the boards."""
    groups: list[list[Fixing]] = []
    for fixing in sorted((f for f in layout.fixings if is_drilled(layout, f.id)), key=lambda f: (f.at, f.id)):
        near = (g for g in groups if _apart(g[-1].at, fixing.at) <= APART)
        group = next(near, None)
        if group is None:
            groups.append([fixing])
        else:
            group.append(fixing)
    return tuple(_told(group) for group in groups)


def _apart(a: Point, b: Point) -> float:
    return hypot(a[0] - b[0], a[1] - b[1])


def _told(group: Sequence[Fixing]) -> Told:
    names = [fixing.id for fixing in sorted(group, key=lambda f: (len(f.id), f.id))]
    text = ", ".join(names) if len(names) <= 3 else f"{len(names)} fixings"
    return Told(group[-1].drilled or group[-1].at, f"{text} drilled")


# --- boards, bay, leads ---


def _old_boards(old: Scene, new: Scene) -> Iterator[Ring]:
    """Yield the old edges of boards that are no longer so."""
    for name, shape in old.boards.items():
        now = new.boards.get(name)
        if now is None or not now.polygon.equals(shape.polygon):
            for ring in (shape.polygon.exterior, *shape.polygon.interiors):
                yield tuple((float(x), float(y)) for x, y in list(ring.coords)[:-1])


def _old_bay(old: Layout, new: Layout) -> Iterator[Outline]:
    """Yield the old outlines of the bay that are no longer so."""
    if old.bay is new.bay:
        return
    if old.bay.wall and old.bay.wall != new.bay.wall:
        yield old.bay.wall
    for kind in _BAY_KINDS:
        here = {item.id: item.outline for item in getattr(new.bay, kind)}
        for item in getattr(old.bay, kind):
            if here.get(item.id) != item.outline:
                yield item.outline


def _gone_ways(old: Scene, removed: frozenset[str]) -> Iterator[tuple[Point, ...]]:
    """Yield the paths of leads that went."""
    for lead in old.layout.leads:
        way = way_of(lead.id, old) if lead.id in removed else ()
        if way:
            yield way


def lead_ids(layout: Layout, found: Comparison) -> frozenset[str]:
    """Return the leads that came or are others: only these are drawn."""
    told = {item.id for item in found.changed} | set(found.added)
    return frozenset(lead.id for lead in layout.leads if lead.id in told)


def middle_of(ids: Sequence[str], old: Scene, new: Scene) -> Point | None:
    """Return the middle of the first thing of a row that has a place: now, else then."""
    for name in ids:
        for scene in (new, old):
            at = _place_of(name, scene)
            if at is not None:
                return at
    return None


def _place_of(name: str, scene: Scene) -> Point | None:
    piece = scene.placed.get(name)
    if piece is not None:
        x0, y0, x1, y1 = piece.box
        return (x0 + x1) / 2, (y0 + y1) / 2
    fixing = next((f for f in scene.layout.fixings if f.id == name), None)
    if fixing is not None:
        return fixing.at
    way = way_of(name, scene)
    if way:
        return _halfway(way)
    outline = outline_of(name, scene.layout)
    if not outline:
        return None
    xs, ys = zip(*outline, strict=True)
    return (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2


def way_of(name: str, scene: Scene) -> tuple[Point, ...]:
    """Return the path of a lead, () for anything else and for a lead without one."""
    route = scene.routes.get(name) if any(lead.id == name for lead in scene.layout.leads) else None
    if route is None or len(route.points) < 2:
        return ()
    return tuple((float(x), float(y)) for x, y in route.points)


def _halfway(points: Sequence[Point]) -> Point:
    half = sum(_apart(a, b) for a, b in pairwise(points)) / 2
    for a, b in pairwise(points):
        long = _apart(a, b)
        if half <= long and long:
            return a[0] + (b[0] - a[0]) * half / long, a[1] + (b[1] - a[1]) * half / long
        half -= long
    return points[-1]


def outline_of(name: str, layout: Layout) -> Outline:
    """Return the outline of a board, a cut-out or a thing of the bay, () for what has none."""
    for board in layout.boards:
        for thing in (board, *board.cutouts):
            if thing.id == name:
                return thing.outline
    for kind in _BAY_KINDS:
        for item in getattr(layout.bay, kind):
            if item.id == name:
                return tuple(item.outline)
    return ()
