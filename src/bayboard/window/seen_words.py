"""What is seen and reached, in words: for the list, the Section's tags and a screen reader."""

from bayboard.model.layout import Units
from bayboard.tables.limits import limit
from bayboard.units.length import show_length, show_two
from bayboard.window.seen import SeenPoint, stop_of, way_in
from bayboard.window.workplace import Workplace

WHO = {"fingers": "fingers", "screwdriver": "driver"}  # by tool


def point_words(point: SeenPoint) -> str:
    """Return a service point's name and where it looks: "fuses, facing down"."""
    return f"{point.name}, facing {point.facing}"


def sight_words(place: Workplace, point: SeenPoint) -> str:
    """Return how a point is seen: "clear, 14° off square"; "not looked at" where nobody can look."""
    verdict = point.verdict
    if verdict is None:
        return "nobody can look"
    if verdict == "blocked":
        found = stop_of(place.scene, point)
        return f"blocked by {found[1]}" if found is not None else "blocked"
    angle = shown_angle(point)
    return f"clear, {angle} off square" if verdict == "clear" else f"{angle} off, limit {point.most:g}°"


def shown_angle(point: SeenPoint) -> str:
    """Return the angle at which a point is seen, so that none over the limit reads like the limit."""
    angle = point.view.angle if point.view is not None else None
    if angle is None:
        return ""
    whole = f"{angle:.0f}"
    return f"{angle:.1f}°" if whole == f"{point.most:g}" and angle != point.most else f"{whole}°"


def reach_words(place: Workplace, point: SeenPoint) -> str:
    """Return how a hand gets at a point: "fingers: 2 5/8 in"."""
    if point.hand is None:
        return "only looked at" if point.service.kind == "light" else "no reach asked"
    who, units = WHO[point.service.tool], place.units
    width = _width(place, point)
    if width == 0.0:
        return f"{who}: no way in"
    if point.hand.enough:
        return f"{who}: {width_words(place, width)}"
    found, need = show_two(width, point.hand.need, units)
    return f"{who}: {found}, needs {need}"


def _width(place: Workplace, point: SeenPoint) -> float:
    found = way_in(place.scene, point)
    return 0.0 if found is None else found.width


def width_words(place: Workplace, width: float) -> str:
    """Return the width of a way in; one as wide as is ever told is wide open."""
    most = limit(place.shown, "corridor_most")
    return "wide open" if width >= most else show_length(width, place.units)


def whole(mm: float, units: Units) -> str:
    """Return a length as one says it across a room: whole inches, or mm by tens."""
    return f"{round(mm / 25.4)}" if units == "in" else f"{round(mm / 10.0) * 10}"


def sentence(place: Workplace, point: SeenPoint) -> str:
    """Return a sentence on a point: name, sight and reach, and the findings' severities and numbers."""
    said = [point_words(point), sight_words(place, point), reach_words(place, point)]
    for found in (point.sight, point.reach):
        if found is not None:
            said.append(f"{found[1].severity} {found[0]}")
    return f"{point.piece.id} {', '.join(said)}"
