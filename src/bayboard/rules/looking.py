"""Where a person's eyes may be, and what they see of the stand-ins from there with all seats folded."""

from collections.abc import Iterable, Mapping

from bayboard.geometry import outline as outlines
from bayboard.geometry.outline import Points
from bayboard.geometry.prism import Prism
from bayboard.geometry.sight import Sight, Thing, eye_count, eye_grid, looked_at, thing
from bayboard.model.layout import Layout, Span
from bayboard.model.placed import Placed
from bayboard.tables.limits import limit

EyeBox = tuple[Span, Span, Span]


def eye_box(layout: Layout) -> EyeBox | None:
    """Return the x, y and z that eyes may have; None while it hangs on a wall nobody measured.

    Each member that the layout does not give has its default, which depends on the lean.
    """
    eye, over_floor = layout.bay.eye, layout.bay.lean >= limit(layout, "eye_floor_lean")
    x0, y0, x1, y1 = outlines.box([p for board in layout.boards for p in board.outline])
    aside = limit(layout, "eye_aside")
    y, z = eye.y, eye.z
    if over_floor:
        ends = limit(layout, "eye_floor_aside")
        y = y or (y0 - ends, y1 + ends)
        z = z or (limit(layout, "eye_floor_near"), limit(layout, "eye_floor_far"))
    if y is None and not layout.bay.wall:
        return None
    if y is None:
        *_, top = outlines.box(layout.bay.wall)
        y = (top - limit(layout, "eye_below_top"), top + limit(layout, "eye_over_top"))
    z = z or (limit(layout, "eye_near"), limit(layout, "eye_far"))
    return eye.x or (x0 - aside, x1 + aside), y, z


def eyes(layout: Layout) -> Points | str:
    """Return the eyes that look at the boards, (n, 3), or a sentence on why there are none."""
    box = eye_box(layout)
    if box is None:
        return "Nobody measured the wall, so nobody knows where the eyes are."
    low, high = zip(*box, strict=True)
    step = limit(layout, "eye_step")
    if eye_count(low, high, step) > limit(layout, "eyes_most"):
        return "The eye box is too large to look from every point of it."
    return eye_grid(low, high, step)


def look(
    layout: Layout,
    placed: Mapping[str, Placed],
    solid: Iterable[Prism],
    before: Sight | None,
    known: Mapping[str, Placed],
) -> Sight | str:
    """Return what is seen of the stand-ins, by their number in `placed`, or why nobody can look.

    `solid` hides and has nothing to see: stays and folded seats.  `before` is what was seen when
    the stand-ins were `known`, all else equal: what has not moved since is not looked at again.
    """
    if before is not None:
        pairs = enumerate(placed.values())
        return before.moved({n: _thing(now) for n, now in pairs if known[now.id] is not now})
    from_where = eyes(layout)
    if isinstance(from_where, str):
        return from_where
    things = [_thing(now) for now in placed.values()]
    rest = [thing((prism,)) for prism in solid]
    return looked_at([*things, *rest], from_where, limit(layout, "sight_start"))


def _thing(placed: Placed) -> Thing:
    service = placed.card.service
    return thing(
        placed.prisms,
        [placed.service_at(point) for point in service],
        [placed.way(point.facing) for point in service],
    )
