"""The Section: what a cut at the chalk line shows, looking left, the metal at the right.

Seen from the cut are the pieces it passes through, hatched, and those that stand farther left, dashed.
"""

from collections.abc import Iterator, Sequence

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from bayboard.model.layout import Seat
from bayboard.rules.scene import Scene
from bayboard.units.length import show_length
from bayboard.window.draw.cut_gear import letter_beyond, paint_beyond, paint_cut, side_box
from bayboard.window.draw.linings import paint_linings
from bayboard.window.draw.profile import paint_boards, paint_cut_leads, paint_metal
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.seats import (
    LID_LEAN,
    paint_hinge,
    paint_probes,
    paint_seats,
    paint_swing,
    seat_path,
    seats_at,
    solid_section,
)
from bayboard.window.draw.section_show import SectionShow, Sight
from bayboard.window.draw.section_tags import Field, Word, paint_tags
from bayboard.window.draw.sights import (
    eyes_frame,
    paint_depth,
    paint_eyes,
    paint_fan,
    paint_sight,
    paint_tube,
    seen_share,
    sight_token,
    tube_box,
)
from bayboard.window.draw.strokes import kept
from bayboard.window.draw.tags import tag_size
from bayboard.window.theme import Theme, brush, mixed

NAME_LEFT, NAME_TOP = 14.0, 84.0  # px from the view's corner to a seat's name
MOST, MOST_WIDE, ROOMY = 5, 9, 500.0  # tags in a view, in one wider than that many px
LABEL_REACH = 110.0  # px that a name may stand off what it names


def section_ground(theme: Theme) -> str:
    """Return the colour behind the Section: the primer, much paler (darker in the dark)."""
    return mixed(theme.room, theme.field, 0.62)


def paint_section(
    p: QPainter, scale: Scale, scene: Scene, theme: Theme, show: SectionShow, rect: QRectF
) -> None:
    """Paint the Section into `rect`; `scale` is the Wall's `beside(pixel column of z = 0)`.

    With no chalk line there is nothing to cut, and only the ground is painted.
    """
    with kept(p):
        p.setClipRect(rect)
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        p.fillRect(rect, brush(section_ground(theme)))
        if show.chalk_x is None:
            return
        field = Field(rect, theme)
        leads = _paint_matter(p, scale, scene, theme, show, show.chalk_x, field)
        _paint_seen(p, scale, show, theme, field)
        said, names = _said(scale, show, theme, rect), _names(scale, scene, theme, show, rect, leads)
        most = MOST if rect.width() < ROOMY * theme.size else MOST_WIDE
        told = [*said[:most], *names]
        signs = [field.sign(word) for word in said[most:]]
        paint_tags(p, [*signs, *(field.put(word) for word in told)], theme)


def _paint_matter(
    p: QPainter, scale: Scale, scene: Scene, theme: Theme, show: SectionShow, x: float, field: Field
) -> list[QRectF]:
    """Paint all that is cut or seen beyond, and tell the tags of it; return where leads are cut."""
    cut = [piece for piece in scene.placed.values() if piece.box[0] < x < piece.box[2]]
    beyond = [piece for piece in scene.placed.values() if piece.box[2] <= x]
    seats = seats_at(scene, x)
    for swing in show.swings:
        paint_swing(p, scale, swing, theme)
    paint_seats(p, scale, seats, theme, show)
    field.matter += [paint_hinge(p, scale, swing, theme) for swing in show.swings]
    paint_beyond(p, scale, beyond, theme)
    paint_linings(p, scale, scene, theme, x)
    paint_metal(p, scale, scene, theme, x, section_ground(theme))
    paint_boards(p, scale, scene, theme, x)
    solid = [ring for seat in seats if (ring := solid_section(seat, show)) is not None]
    crushing = [seat_path(ring, scale) for ring in solid]
    for piece in cut:
        paint_cut(p, scale, piece, x, theme, piece.id in show.selected, crushing, field.taken)
    leads = paint_cut_leads(p, scale, scene, theme, x, show.selected)
    field.matter += [side_box(piece, scale) for piece in cut] + leads
    field.matter += paint_probes(p, scale, seats, theme, x)
    lettered = [*field.taken, *(side_box(piece, scale) for piece in cut)]
    count = len(lettered)
    letter_beyond(p, scale, beyond, theme, lettered)
    field.taken += lettered[count:]
    return leads


def _paint_seen(p: QPainter, scale: Scale, show: SectionShow, theme: Theme, field: Field) -> None:
    if show.eyes is not None:
        paint_eyes(p, scale, show.eyes, theme)
    for fan in show.fans:
        paint_fan(p, scale, fan, theme)
    for tube in show.tubes:
        paint_tube(p, scale, tube, theme)
        field.matter.append(tube_box(scale, tube))
    for sight in sorted(show.sights, key=lambda s: s.chosen):
        paint_sight(p, scale, sight, theme)
        field.draw_line(*_ends(scale, sight))
    for depth in show.depths:
        paint_depth(p, scale, depth, theme)
        a, b = scale.px(-depth.front[0], depth.front[1]), scale.px(-depth.seat[0], depth.seat[1])
        field.matter.append(QRectF(a, b).normalized().adjusted(-30.0, -16.0, 30.0, 16.0))


def _ends(scale: Scale, sight: Sight) -> tuple[QPointF, QPointF]:
    return scale.px(-sight.point[0], sight.point[1]), scale.px(-sight.eye[0], sight.eye[1])


# --- what is said ---


def _said(scale: Scale, show: SectionShow, theme: Theme, rect: QRectF) -> list[Word]:
    """Return the tags' words, what must be heard first."""
    rank = {"must": 0, "should": 1, "note": 2, None: 3}
    words = [*_of_seats(scale, show, theme), *_of_points(scale, show, theme, rect)]
    return sorted(words, key=lambda word: rank[word.severity])


def _of_seats(scale: Scale, show: SectionShow, theme: Theme) -> Iterator[Word]:
    for depth in show.depths:
        z, y = (depth.front[0] + depth.seat[0]) / 2, (depth.front[1] + depth.seat[1]) / 2
        texts, at = (depth.text, *depth.shorter), scale.px(-z, y)
        yield Word(texts, at, theme.ink, depth.severity, depth.number)
    for swing in show.swings:
        if swing.at is not None and swing.text:
            at = scale.px(-swing.at[0], swing.at[1])
            yield Word((swing.text,), at, theme.ink, swing.severity, swing.number)


def _of_points(scale: Scale, show: SectionShow, theme: Theme, rect: QRectF) -> Iterator[Word]:
    for tube in show.tubes:
        if tube.text:
            a, b = scale.px(-tube.start[0], tube.start[1]), scale.px(-tube.end[0], tube.end[1])
            texts = (tube.text, *tube.shorter)
            yield Word(texts, a + (b - a) * 0.6, theme.blue, tube.severity, tube.number)
    for sight in sorted(show.sights, key=lambda s: not s.chosen):
        if sight.text:
            a, b = _ends(scale, sight)
            at = a + (b - a) * min(0.4, 0.6 * seen_share(a, b, rect))
            if sight.stopped is not None:
                at = scale.px(-sight.stopped[0], sight.stopped[1])
            texts = (sight.text, *sight.shorter)
            yield Word(texts, at, sight_token(sight, theme), sight.severity, sight.number)


def _names(
    scale: Scale, scene: Scene, theme: Theme, show: SectionShow, rect: QRectF, leads: Sequence[QRectF]
) -> Iterator[Word]:
    """Yield the names of what is seen; they give way to the tags."""
    if show.eyes is not None and show.eyes.text:
        frame = eyes_frame(scale, show.eyes) & rect
        if frame.height() > 0.0 and frame.width() > 60.0:
            at = QPointF(frame.center().x(), max(frame.bottom() - 18.0 * theme.size, frame.top()))
            texts = (show.eyes.text, *show.eyes.shorter)
            yield Word(texts, at, theme.note, name=True, reach=LABEL_REACH)
    if show.chalk_x is not None:
        yield from _seat_names(scale, scene, theme, show, rect, show.chalk_x)
    for swing in show.swings:
        at = scale.px(-swing.hinge[0], swing.hinge[1]) + QPointF(0.0, 22.0 * theme.size)
        yield Word(("hinge",), at, theme.ink2, name=True, reach=LABEL_REACH / 2)
    if len(leads) > 1:
        low = max(leads, key=lambda spot: spot.bottom())
        at = low.center() + QPointF(-70.0, 26.0) * theme.size
        texts = (f"{len(leads)} leads cut here", f"{len(leads)} leads")
        yield Word(texts, at, theme.ink2, name=True, reach=LABEL_REACH)


def _seat_names(
    scale: Scale, scene: Scene, theme: Theme, show: SectionShow, rect: QRectF, x: float
) -> Iterator[Word]:
    """Say how the seat at the cut stands, or that nobody measured it so."""
    seats = seats_at(scene, x)
    if not seats:
        return
    seat = seats[-1]
    many = len(scene.layout.bay.seats) > 1
    what = "lid" if abs(scene.layout.bay.lean) >= LID_LEAN else "seat"
    texts = _seat_words(seat, what, show, scene, many)
    at = QPointF(
        rect.left() + NAME_LEFT + tag_size(texts[0], theme)[0] / 2, rect.top() + NAME_TOP * theme.size
    )
    solid = solid_section(seat, show)
    if solid is not None:
        seen = seat_path(solid, scale).boundingRect() & rect
        lying = seen.width() > 1.6 * seen.height() > 70.0 * theme.size
        if lying and seen.width() > tag_size(texts[-1], theme)[0] + 24.0:
            at = seen.center()
    yield Word(texts, at, theme.ink2, name=True)


def _seat_words(seat: Seat, what: str, show: SectionShow, scene: Scene, many: bool) -> tuple[str, ...]:
    """Return a seat's name and how it stands, in words of falling length."""
    name = f"{what} {seat.id}" if many else what
    if solid_section(seat, show) is None:
        return f"{name} {show.lever}: not measured", f"{what}: not measured"
    plain = f"{name}, {show.lever}", f"{what}, {show.lever}"
    if seat.give > 0.0 and show.lever == "up":
        gives = f"gives {show_length(seat.give, scene.layout.units)}"
        return f"{plain[0]}, {gives}", *plain
    return plain
