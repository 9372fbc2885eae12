"""The service points as the Section shows them with the seat folded: lines of sight, fans, the way in."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from bayboard.rules.looking import eye_box
from bayboard.tables.limits import limit
from bayboard.units.length import show_two
from bayboard.window.draw.section_show import Eyes, Fan, Sight, Tube
from bayboard.window.draw.tapes import tape_zero
from bayboard.window.seen import SeenPoint, best_eye, points_of, stop_of, way_in
from bayboard.window.seen_words import shown_angle, sight_words, whole, width_words
from bayboard.window.workplace import Workplace


def cut_names(place: Workplace) -> list[str]:
    """Return the stand-ins that the chalk line passes through."""
    x = place.chalk_x
    return [p.id for p in place.scene.placed.values() if x is not None and p.box[0] <= x <= p.box[2]]


def points_here(place: Workplace) -> tuple[SeenPoint, ...]:
    """Return the service points at the chalk line: of the selected pieces it cuts, else of all it cuts."""
    if place.lever != "folded":
        return ()
    here = cut_names(place)
    names = [name for name in here if name in place.selected] or here
    return tuple(point for name in names for point in points_of(place, name))


def spoken_point(place: Workplace, points: Sequence[SeenPoint]) -> SeenPoint | None:
    """Return the point whose way in is shown: the chosen one, that of the finding spoken of, the worst."""
    finding = place.spoken_of()
    about = finding.subjects[0] if finding is not None and finding.rule in ("sight", "reach") else None
    for wanted in (place.service, about):
        for point in points:
            if point.subject == wanted:
                return point
    for said in ([p.reach for p in points], [p.sight for p in points]):
        found = [one for one in said if one is not None]
        if found:
            worst = min(found, key=lambda one: one[0])[1].subjects[0]
            return next(p for p in points if p.subject == worst)
    fuses = [p for p in points if p.service.kind == "fuse" and p.hand is not None]
    return next(iter(fuses or [p for p in points if p.hand is not None]), None)


# --- lines of sight ---


def sights(place: Workplace, points: Sequence[SeenPoint], spoken: SeenPoint | None) -> tuple[Sight, ...]:
    """Return a line of sight for each point; points of a kind that are seen alike share one tag."""
    made: list[Sight] = []
    tagged: dict[object, int] = {}
    alike: dict[object, list[SeenPoint]] = {}
    for point in points:
        line = _line(place, point, point is spoken)
        if line is None:
            continue
        key = (point.piece.id, point.service.kind, point.facing, point.verdict)
        if point.sight is not None or (point is spoken and place.service == point.subject):
            made.append(line)
            continue
        alike.setdefault(key, []).append(point)
        if key in tagged:
            made.append(replace(line, text="", shorter=()))
        else:
            tagged[key] = len(made)
            made.append(line)
    for key, few in alike.items():
        if len(few) > 1:
            text, shorter = _of_many(few)
            made[tagged[key]] = replace(made[tagged[key]], text=text, shorter=shorter)
    return tuple(made)


def _line(place: Workplace, point: SeenPoint, spoken: bool) -> Sight | None:
    eye, verdict = best_eye(place.scene, point), point.verdict
    if eye is None or verdict is None or point.view is None:
        return None
    _, y, z = point.view.start.tolist()
    stop = stop_of(place.scene, point)
    number, finding = point.sight or (None, None)
    texts = _line_words(place, point)
    return Sight(
        point=(z, y),
        eye=(eye[2], eye[1]),
        verdict=verdict,
        text=texts[0],
        severity=None if finding is None else finding.severity,
        number=number,
        stopped=None if stop is None else (stop[0][2], stop[0][1]),
        shorter=texts[1:],
        chosen=spoken,
    )


def _line_words(place: Workplace, point: SeenPoint) -> tuple[str, ...]:
    words = sight_words(place, point)
    if point.verdict != "steep":
        verdict = words.split(",")[0].split(" by ")[0]
        bare = () if point.sight is None else (verdict,)  # its number says which
        return f"{point.name}: {words}", f"{point.name}: {verdict}", *bare
    off, looks = f"{shown_angle(point)} off", "" if point.facing == "out" else f" looks {point.facing}"
    return f"{point.name}{looks}: {off}, too steep", f"{point.name}: {words}", f"{off}, too steep"


def _of_many(points: Sequence[SeenPoint]) -> tuple[str, tuple[str, ...]]:
    """Return the words of points of a kind that are seen alike."""
    first, name = points[0], f"{len(points)} {points[0].service.kind}s"
    if first.verdict == "blocked":
        return f"{name}: blocked", ()
    worst = max(points, key=lambda p: (p.view.angle or 0.0) if p.view is not None else 0.0)
    alike = len({shown_angle(p) for p in points}) == 1
    angle = shown_angle(worst) if alike else f"at most {shown_angle(worst)}"
    ends = "" if first.verdict == "clear" else ", too steep"
    word = "clear, " if first.verdict == "clear" else ""
    return f"{name}: {word}{angle} off square{ends}", (f"{name}: {word}{angle} off{ends}",)


def fans(points: Sequence[SeenPoint]) -> tuple[Fan, ...]:
    """Return within what angle each dial can be read, one fan for those in one place of the Section."""
    found: dict[Fan, None] = {}
    for point in points:
        if point.service.kind == "dial" and point.view is not None and point.verdict is not None:
            _, y, z = point.view.start.tolist()
            _, fy, fz = point.view.facing.tolist()
            if abs(fy) + abs(fz) > 0.5:  # one that looks along the cut has no fan in it
                angle = 0.0 if abs(fy) < 0.5 else 90.0 if fy > 0 else -90.0
                found[Fan((round(z, 1), round(y, 1)), angle, point.most)] = None
    return tuple(found)


def eyes(place: Workplace) -> Eyes | None:
    """Return the box the eyes look from, None while nobody knows where they are."""
    box = eye_box(place.shown) if place.shown.boards else None
    if box is None:
        return None
    _, (y0, y1), (z0, z1) = box
    units, lean = place.units, place.shown.bay.lean
    far = f"eyes: {whole(z0, units)} to {whole(z1, units)} {units}"
    if abs(lean) >= limit(place.shown, "eye_floor_lean"):
        over = "over the floor" if lean > 0 else "under the roof"
        return Eyes((z0, y0), (z1, y1), f"{far} {over}", (far, "eyes"))
    up = y0 - tape_zero(place.shown)[1]
    where = f"from {whole(abs(up), units)} {units} {'up' if up >= 0 else 'below the foot'}"
    return Eyes((z0, y0), (z1, y1), f"{far} out, {where}", (f"{far} out", "eyes"))


# --- the way in ---


def tubes(place: Workplace, point: SeenPoint | None) -> tuple[Tube, ...]:
    """Return the widest way in to a point; () where nothing has to reach it."""
    if point is None or point.hand is None:
        return ()
    found, length = way_in(place.scene, point), limit(place.shown, "corridor_length")
    _, y, z = point.at
    way = (0.0, 0.0, 0.0) if found is None else tuple(found.way.tolist())
    width = 0.0 if found is None else found.width
    number, finding = point.reach or (None, None)
    texts = tuple(_way_words(place, point, width, length))
    end = (z + length * way[2], y + length * way[1])
    return (
        Tube(
            (z, y),
            end if width else (z, y),
            width,
            point.hand.need,
            texts[0],
            None if finding is None else finding.severity,
            number,
            texts[1:],
        ),
    )


def _way_words(place: Workplace, point: SeenPoint, width: float, length: float) -> Iterator[str]:
    to = f"way in to {point.name}"
    if width == 0.0 or point.hand is None:
        yield from (f"no {to}: every one meets something", f"no {to}", "no way in")
        return
    if not point.hand.enough:
        found, need = show_two(width, point.hand.need, place.units)
        yield from (f"{to}: {found} wide, needs {need}", f"way in {found}, needs {need}")
        return
    wide, long = width_words(place, width), f"{whole(length, place.units)} {place.units}"
    if wide == "wide open":
        yield from (f"{to}: wide open, {long} long", f"{to}: wide open", "way in: wide open")
    else:
        yield from (f"{to}: {wide} wide, {long} long", f"{to}: {wide} wide", f"way in: {wide}")
