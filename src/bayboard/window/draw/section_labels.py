"""What is said in the Section: the tags of what is measured, worst first, and the names that give way."""

from collections.abc import Iterator, Sequence

from PySide6.QtCore import QPointF, QRectF

from bayboard.model.layout import Seat
from bayboard.rules.scene import Scene
from bayboard.units.length import show_length
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.seats import probes_near, seat_path, seats_at, solid_section
from bayboard.window.draw.section_show import SectionShow, Sight
from bayboard.window.draw.section_tags import Word
from bayboard.window.draw.sights import eyes_frame, seen_share, sight_token
from bayboard.window.draw.tags import tag_size
from bayboard.window.folds import folds_word
from bayboard.window.theme import Theme

NAME_LEFT, NAME_TOP = 14.0, 84.0  # px from the view's corner to a seat's name
LABEL_REACH = 110.0  # px that a name may stand off what it names


def sight_ends(scale: Scale, sight: Sight) -> tuple[QPointF, QPointF]:
    """Return the pixels of a line of sight's point and eye."""
    return scale.px(-sight.point[0], sight.point[1]), scale.px(-sight.eye[0], sight.eye[1])


def said(scale: Scale, show: SectionShow, theme: Theme, rect: QRectF) -> list[Word]:
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
            a, b = sight_ends(scale, sight)
            at = a + (b - a) * min(0.4, 0.6 * seen_share(a, b, rect))
            if sight.stopped is not None:
                at = scale.px(-sight.stopped[0], sight.stopped[1])
            texts = (sight.text, *sight.shorter)
            yield Word(texts, at, sight_token(sight, theme), sight.severity, sight.number)


def names(
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
    if show.chalk_x is not None and show.lever == "up":
        yield from _probe_names(scale, scene, theme, show.chalk_x)
    if len(leads) > 1:
        low = max(leads, key=lambda spot: spot.bottom())
        at = low.center() + QPointF(-70.0, 26.0) * theme.size
        texts = (f"{len(leads)} leads cut here", f"{len(leads)} leads")
        yield Word(texts, at, theme.ink2, name=True, reach=LABEL_REACH)


def _probe_names(scale: Scale, scene: Scene, theme: Theme, x: float) -> Iterator[Word]:
    """Yield how far out the putty lumps near the cut were pressed."""
    for z, y in probes_near(seats_at(scene, x), x):
        at = scale.px(-z, y) + QPointF(-40.0, 0.0) * theme.size
        text = show_length(z, scene.layout.units)
        yield Word((text,), at, theme.ink2, name=True, reach=LABEL_REACH / 2)


def _seat_names(
    scale: Scale, scene: Scene, theme: Theme, show: SectionShow, rect: QRectF, x: float
) -> Iterator[Word]:
    """Say how the seat at the cut stands, or that nobody measured it so."""
    seats = seats_at(scene, x)
    if not seats:
        return
    seat = seats[-1]
    many = len(scene.layout.bay.seats) > 1
    what = folds_word(scene.layout)
    texts = _seat_words(seat, what, show, scene, many)
    left = rect.left() + NAME_LEFT + tag_size(texts[0], theme)[0] / 2
    at = QPointF(left, rect.top() + NAME_TOP * theme.size)
    solid = solid_section(seat, show)
    if solid is not None:
        seen = seat_path(solid, scale).boundingRect() & rect
        lying = seen.width() > 1.6 * seen.height() > 70.0 * theme.size
        beside = seen.left() - tag_size(texts[0], theme)[0] / 2 - NAME_LEFT
        if lying and seen.width() > tag_size(texts[-1], theme)[0] + 24.0:
            at = seen.center()
        elif not seen.isEmpty() and beside > at.x():  # a wide Section: left of the seat, not far from it
            at = QPointF(beside, max(at.y(), min(seen.top() + NAME_TOP * theme.size, seen.center().y())))
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
