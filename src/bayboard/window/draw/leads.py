"""The leads over the board at their true width, and the words they wear."""

from collections.abc import Iterable, Sequence
from itertools import pairwise
from math import atan2, cos, degrees, hypot, radians, sin

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.model.layout import Lead
from bayboard.routing.route import Route
from bayboard.rules.scene import Scene
from bayboard.tables.limits import limit
from bayboard.window import lettering
from bayboard.window.draw.jacket import Corners, bent, kept_layers, paint_layers
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.show import WallShow
from bayboard.window.draw.strokes import kept
from bayboard.window.lettering import Style
from bayboard.window.theme import Theme, brush, mixed, pen

THINNEST = 5.0  # px; a lead is never drawn thinner
TWISTED = 7.0  # px; nor a twisted pair, whose strands need room to show
LETTERED = 10.5  # px; from here on the jacket itself carries the lettering, thinner ones wear a sleeve
SLEEVE_FROM = 90.0  # px of straight lead that a sleeve or a line of lettering asks for
TRIES = 4  # places that are tried for a lead's words; a crowded board does without
WORD_HIGH = 18.0  # px kept free round a word
WORDS = {
    "power": "12 V",
    "ground": "ground",
    "signal": "signal",
    "speaker": "speaker",
    "remote": "remote",
    "data": "data",
}
SIGNS = {"power": "+", "ground": "−"}
# broad leads first, so that a thin one is never lost under them
_DEPTH = {"ground": 0, "power": 1, "speaker": 2, "data": 3, "remote": 4, "signal": 5}
Edges = tuple[float, float, float, float]  # left, top, right, bottom in pixels


def paint_leads(
    p: QPainter,
    scale: Scale,
    scene: Scene,
    theme: Theme,
    show: WallShow,
    drawn: Iterable[str] | None = None,
    skipped: frozenset[str] = frozenset(),
    taken: Sequence[QRectF] = (),
) -> None:
    """Paint the leads that have a route: all, or those in `drawn`, never those in `skipped`.

    `taken`: rectangles that their words keep off, besides the stand-ins.
    """
    wanted = None if drawn is None else frozenset(drawn)
    chosen = [
        (lead, scene.carried[lead.id])
        for lead in scene.layout.leads
        if lead.id in scene.carried and lead.id not in skipped and (wanted is None or lead.id in wanted)
    ]
    bend = limit(scene.layout, "bend_od")
    with kept(p):
        p.translate(scale.px(0.0, 0.0))
        for lead, route in sorted(chosen, key=lambda c: _DEPTH.get(c[1].kind or "", 9)):
            _paint_lead(p, lead, route, scale, bend, theme, show)
    held = [_edges(box) for box in taken]
    held += [_edges(scale.box(piece.box)) for piece in scene.placed.values()]
    _letter(p, scale, chosen, theme, held)


def _paint_lead(
    p: QPainter, lead: Lead, route: Route, scale: Scale, bend: float, theme: Theme, show: WallShow
) -> None:
    """Paint one lead with the painter's origin at bay (0, 0)."""
    wide = lead_width(route, scale) + (1.0 if show.hovered == lead.id else 0.0)
    corners = _corners(route)
    if lead.id in show.selected or show.focused == lead.id:
        path = bent(corners, bend * route.od, scale.px_per_mm)
        p.strokePath(path, pen(theme.paper, wide + 12.0, round_ends=True))
        p.strokePath(path, pen(theme.blue, wide + 8.0, round_ends=True))
    made = kept_layers(corners, bend * route.od, scale.px_per_mm, route.kind, wide)
    paint_layers(p, made, route.kind, theme)


def _corners(route: Route) -> Corners:
    return tuple((x, y) for x, y in route.points.tolist())


def lead_width(route: Route, scale: Scale) -> float:
    """Return how wide a lead is drawn: its true diameter, never under 5 px, a twisted pair 7."""
    return max(scale.length(route.od), TWISTED if route.kind == "speaker" else THINNEST)


def lead_path(route: Route, scale: Scale, bend_od: float) -> QPainterPath:
    """Return a lead's centre line in pixels, its bends at `bend_od` times its diameter where they fit."""
    path = bent(_corners(route), bend_od * route.od, scale.px_per_mm)
    return path.translated(scale.px(0.0, 0.0))


def _letter(
    p: QPainter, scale: Scale, leads: Sequence[tuple[Lead, Route]], theme: Theme, taken: list[Edges]
) -> None:
    """Letter each lead once where a straight stretch is free: on its jacket, or on a sleeve."""
    for lead, route in leads:
        wide = lead_width(route, scale)
        text = _jacket_text(lead, route)
        lettered = wide >= LETTERED and route.kind in SIGNS
        style = Style("pencil", round(min(0.82 * wide, 13.0))) if lettered else Style("pencil", 13.0)
        long = lettering.width(text, style) + 10.0
        for x, y, angle in _stretches(route, scale, long):
            spot = _word_edges(x, y, angle, long)
            if not _meets(spot, taken):
                taken.append(spot)
                _paint_word(p, QPointF(x, y), angle, text, style, route, theme, lettered)
                break


def _word_edges(x: float, y: float, angle: float, long: float) -> Edges:
    """Return the box of a word along a lead that runs at `angle`."""
    c, s = abs(cos(radians(angle))), abs(sin(radians(angle)))
    wide, high = (long * c + WORD_HIGH * s) / 2, (long * s + WORD_HIGH * c) / 2
    return x - wide, y - high, x + wide, y + high


def _edges(box: QRectF) -> Edges:
    return box.left(), box.top(), box.right(), box.bottom()


def _meets(spot: Edges, taken: Sequence[Edges]) -> bool:
    left, top, right, bottom = spot
    return any(a < right and left < c and b < bottom and top < d for a, b, c, d in taken)


def _jacket_text(lead: Lead, route: Route) -> str:
    word = WORDS.get(route.kind or "", "no pair")
    sign = SIGNS.get(route.kind or "", "")
    if not sign:
        return word
    size = (lead.size or "").replace("mm2", "mm²")
    return f"{word}   {size}   {sign}" if size else f"{word}   {sign}"


def _stretches(route: Route, scale: Scale, long: float) -> list[tuple[float, float, float]]:
    """Return places (x, y, angle) along the straight stretches long enough, the longest stretch first."""
    spots = []
    k, x0, y0 = scale.px_per_mm, scale.x0, scale.y0
    points = route.points.tolist()
    for (ax, ay), (bx, by) in pairwise(points):
        far = hypot(bx - ax, by - ay) * k
        if far < max(long + 24.0, SLEEVE_FROM):
            continue
        angle = degrees(atan2(ay - by, bx - ax))
        angle = angle - 180.0 if angle > 90.0 else angle + 180.0 if angle <= -90.0 else angle
        for share in (0.5, 0.3, 0.7):
            x, y = ax + (bx - ax) * share, ay + (by - ay) * share
            spots.append((far, x0 + x * k, y0 - y * k, angle))
    spots.sort(key=lambda s: -s[0])
    return [(x, y, angle) for _, x, y, angle in spots[:TRIES]]


def _paint_word(
    p: QPainter,
    at: QPointF,
    angle: float,
    text: str,
    style: Style,
    route: Route,
    theme: Theme,
    lettered: bool,
) -> None:
    with kept(p):
        p.translate(at)
        p.rotate(angle)
        line = lettering.line(text, style)
        ink = theme.chalk
        if not lettered:
            paler = mixed(theme.lead(route.kind), theme.chalk, 0.78)
            sleeve = QRectF(-line.width / 2 - 5.0, -8.0, line.width + 10.0, 16.0)
            p.fillRect(sleeve.translated(0.6, 1.4), brush("#000000", 0.35))
            p.fillRect(sleeve, brush(paler))
            p.setPen(Qt.PenStyle.NoPen)
            ink = theme.pencil
        lettering.draw(p, QPointF(0.0, line.rise / 2), text, style, ink, "centre")
