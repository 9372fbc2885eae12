"""The Section: what a cut at the chalk line shows, looking left, the metal at the right.

Seen from the cut are the pieces it passes through, hatched, and those that stand farther left, dashed.
"""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from bayboard.rules.scene import Scene
from bayboard.window.draw.cut_gear import letter_beyond, paint_beyond, paint_cut, side_box
from bayboard.window.draw.linings import paint_linings
from bayboard.window.draw.profile import paint_boards, paint_cut_leads, paint_metal
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.seats import (
    paint_hinge,
    paint_probes,
    paint_seats,
    paint_swing,
    probes_near,
    seat_path,
    seats_at,
    solid_section,
)
from bayboard.window.draw.section_labels import names, said, sight_ends
from bayboard.window.draw.section_show import SectionShow
from bayboard.window.draw.section_tags import Field, paint_tags
from bayboard.window.draw.sights import (
    paint_depth,
    paint_eyes,
    paint_fan,
    paint_sight,
    paint_tube,
    tube_box,
)
from bayboard.window.draw.strokes import kept
from bayboard.window.theme import Theme, brush, mixed

MOST, MOST_WIDE, ROOMY = 5, 9, 500.0  # tags in a view, in one wider than that many px


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
        words = said(scale, show, theme, rect)
        most = MOST if rect.width() < ROOMY * theme.size else MOST_WIDE
        told = [*words[:most], *names(scale, scene, theme, show, rect, leads)]
        signs = [field.sign(word) for word in words[most:]]
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
    field.matter += paint_probes(p, scale, probes_near(seats, x), theme)
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
        field.draw_line(*sight_ends(scale, sight))
    for depth in show.depths:
        paint_depth(p, scale, depth, theme)
        a, b = scale.px(-depth.front[0], depth.front[1]), scale.px(-depth.seat[0], depth.seat[1])
        field.matter.append(QRectF(a, b).normalized().adjusted(-30.0, -16.0, 30.0, 16.0))
