"""Severity marks, tags, the stage strip, titles, shadows: small signs that must not be mistaken."""

from itertools import pairwise

import pytest
from PySide6.QtCore import QPointF, QRectF
from tests.window.draw.scenes import SCALE, VIEW, at, count, full, near, painted, scene

from bayboard.window import lettering
from bayboard.window.draw.fixings import fixing_radius, paint_fixings
from bayboard.window.draw.marks import MARK, mark_shape, paint_mark, paint_tick, paint_unchecked
from bayboard.window.draw.names import names
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.shadow import AT_REST, HOVERED, IN_HAND, paint_shadow
from bayboard.window.draw.show import WallShow
from bayboard.window.draw.signs import service_sign
from bayboard.window.draw.strip import Lath, lath_rects, paint_strip
from bayboard.window.draw.strokes import hatched, kept, ring_path
from bayboard.window.draw.tags import free_spot, paint_tag, pushed_in, tag_rect
from bayboard.window.lettering import FIGURE
from bayboard.window.theme import DARK, LIGHT

BOX = QRectF(0, 0, 80, 80)
MIDDLE = QPointF(40, 40)
BOTH = pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda t: t.name)


def mark(severity, number=7, theme=LIGHT, ground="#FF00FF", **how):
    return painted(
        lambda p: (p.fillRect(BOX, ground), paint_mark(p, MIDDLE, severity, number, theme, **how)), BOX
    )


@BOTH
def test_must_is_solid_should_is_filled_note_is_open(theme):
    assert near(mark("must", None, theme), MIDDLE, theme.must)
    assert near(mark("should", None, theme), MIDDLE, theme.shouldfill)
    assert near(mark("note", None, theme), MIDDLE, theme.paper)


def test_severities_differ_in_shape_without_any_colour():
    corner = QPointF(0.33 * MARK, -0.33 * MARK)
    inside = {s: mark_shape(s, MARK).contains(corner) for s in ("must", "should", "note")}
    assert inside == {"must": False, "should": False, "note": False}
    low = QPointF(0.4 * MARK, 0.36 * MARK)
    assert mark_shape("should", MARK).contains(low)
    assert not mark_shape("must", MARK).contains(low)
    assert mark_shape("note", MARK).contains(QPointF(0.28 * MARK, -0.28 * MARK))
    assert not mark_shape("must", MARK).contains(QPointF(0.28 * MARK, -0.28 * MARK))


@BOTH
@pytest.mark.parametrize("severity", ["must", "should", "note"])
def test_a_mark_on_the_scene_is_cased_and_one_in_a_panel_is_not(severity, theme):
    cased, bare = mark(severity, 7, theme), mark(severity, 7, theme, cased=False)

    def papers(picture):
        return count(picture, BOX, theme.paper, 20)

    assert papers(cased) > papers(bare) + 60


@pytest.mark.parametrize("severity", ["must", "should", "note"])
@pytest.mark.parametrize("number", [1, 9, 14, 120])
def test_the_number_stays_inside_its_sign(severity, number):
    blank, numbered = mark(severity, None, cased=False), mark(severity, number, cased=False)
    changed = [
        (x, y)
        for x in range(80)
        for y in range(80)
        if at(blank, QPointF(x, y)) != at(numbered, QPointF(x, y))
    ]
    assert changed
    shape = mark_shape(severity, MARK)
    outside = [c for c in changed if not shape.contains(QPointF(c[0] - 40, c[1] - 40))]
    assert len(outside) <= (0 if number < 100 else 40)


def test_the_tick_is_green_and_the_unchecked_square_is_open():
    tick = painted(lambda p: paint_tick(p, MIDDLE, LIGHT), BOX)
    assert count(tick, BOX, LIGHT.ok, 60) > 15
    square = painted(lambda p: paint_unchecked(p, MIDDLE, 8, LIGHT), BOX)
    assert near(square, MIDDLE + QPointF(-11, 0), LIGHT.ink2, 60)
    assert at(square, MIDDLE + QPointF(-7, -7)) == "#ff00ff"


# -- tags ------------------------------------------------------------------------------------------


@pytest.mark.parametrize("size", [1.0, 1.15, 1.5])
def test_a_tag_grows_with_the_scale_setting_and_holds_its_text(size):
    theme = LIGHT.sized(size)
    rect = tag_rect(MIDDLE, "12 3/8 in", theme)
    assert rect.height() == pytest.approx(24 * size)
    assert rect.width() > lettering.width("12 3/8 in", FIGURE.sized(size))
    assert tag_rect(MIDDLE, "12 3/8 in", theme, marked=True).width() > rect.width()


def test_a_plain_tag_is_chalk_and_a_severe_one_paper_with_an_edge():
    rect = QRectF(4, 20, 150, 24)
    view = QRectF(0, 0, 170, 60)
    plain = painted(lambda p: paint_tag(p, rect, "5 1/4 in", LIGHT), view)
    severe = painted(lambda p: paint_tag(p, rect, "1/8 in", LIGHT, "must", 1), view)
    assert near(plain, QPointF(10, 40), LIGHT.chalk, 4)
    assert near(severe, QPointF(100, 20), LIGHT.must, 60)
    assert count(severe, QRectF(8, 20, 30, 24), LIGHT.must) > 100


def test_the_first_free_spot_in_view_is_taken():
    spots = [QRectF(-5, 0, 20, 20), QRectF(10, 0, 20, 20), QRectF(50, 0, 20, 20)]
    assert free_spot(spots, [QRectF(12, 5, 4, 4)], BOX) == spots[2]
    assert free_spot(spots[:2], [QRectF(12, 5, 4, 4)], BOX) is None


@pytest.mark.parametrize("rect", [QRectF(-30, 5, 20, 20), QRectF(5, 900, 20, 20), QRectF(70, -5, 20, 20)])
def test_pushed_in_is_in_view_and_keeps_its_size(rect):
    moved = pushed_in(rect, BOX)
    assert BOX.contains(moved)
    assert moved.size() == rect.size()


# -- the strip -------------------------------------------------------------------------------------

STRIP = QRectF(0, 0, 760, 58)


def strip(*laths, theme=LIGHT):
    return painted(lambda p: (p.fillRect(STRIP, theme.paper), paint_strip(p, STRIP, laths, theme)), STRIP)


@BOTH
def test_the_lath_in_use_is_tape_yellow_and_the_others_wood(theme):
    picture = strip(Lath("Arrange", current=True), Lath("Fix"), theme=theme)
    one, two = lath_rects(STRIP, 2, theme)
    assert near(picture, one.topLeft() + QPointF(80, 4), theme.tape, 10)
    assert near(picture, two.topLeft() + QPointF(80, 4), theme.lath, 10)


def test_a_stage_ticks_only_when_nothing_in_it_is_unchecked():
    (place,) = lath_rects(STRIP, 1, LIGHT)

    def greens(lath):
        return count(strip(lath), place.adjusted(90, 0, 0, -8), LIGHT.ok, 30)

    assert greens(Lath("Arrange")) > 15
    assert greens(Lath("Arrange", unchecked=8)) == 0
    assert greens(Lath("Arrange", worst=("note", 1))) == 0
    assert greens(Lath("Arrange", looked=False)) == 0


def test_the_worst_finding_goes_before_what_is_unchecked():
    (place,) = lath_rects(STRIP, 1, LIGHT)
    both = strip(Lath("Arrange", worst=("must", 1), unchecked=8))
    assert count(both, place, LIGHT.must) > 100


@pytest.mark.parametrize("size", [1.0, 1.5])
def test_laths_overlap_by_their_rivet_and_are_large_enough_to_press(size):
    theme = LIGHT.sized(size)
    places = lath_rects(QRectF(0, 0, 1600, 58 * size), 5, theme)
    assert all(a.right() > b.left() > a.left() for a, b in pairwise(places))
    assert all(p.height() >= 40 for p in places)


# -- shadows, hatching, paths ----------------------------------------------------------------------

SQUARE = (((-20.0, -20.0), (20.0, -20.0), (20.0, 20.0), (-20.0, 20.0)),)


BELOW = QPointF(40, 66)


def darkness(shadow, shape=SQUARE, spot=BELOW):
    picture = painted(lambda p: (p.fillRect(BOX, "#FFFFFF"), paint_shadow(p, MIDDLE, shape, shadow)), BOX)
    return 255 - picture.pixelColor(int(spot.x()), int(spot.y())).lightness()


def test_a_shadow_falls_below_and_grows_when_hovered_and_in_hand():
    assert 0 < darkness(AT_REST) < darkness(HOVERED) < darkness(IN_HAND)
    assert darkness(AT_REST, spot=QPointF(40, 8)) == 0


def test_a_shadow_leaves_holes_open():
    hole = ((-12.0, -12.0), (12.0, -12.0), (12.0, 12.0), (-12.0, 12.0))
    spot = QPointF(42, 44)
    assert darkness(AT_REST, spot=spot) > darkness(AT_REST, (*SQUARE, hole), spot)


def test_a_shape_far_larger_than_the_screen_keeps_no_image():
    huge = tuple(tuple((x * 500, y * 500) for x, y in ring) for ring in SQUARE)
    assert darkness(AT_REST, huge) >= 0


def test_hatching_stays_inside_and_crosses_when_asked():
    path = ring_path([(0, 0), (60, 0), (60, 60), (0, 60)], Scale(1.0, 10.0, 70.0))
    inside = QRectF(11, 11, 57, 57)
    once, twice = (painted(lambda p, b=b: hatched(p, path, 8, "#000000", both=b), BOX) for b in (False, True))
    assert 0 < count(once, inside, "#000000", 90) < count(twice, inside, "#000000", 90)
    assert count(twice, QRectF(72, 0, 7, 79), "#000000", 90) == 0


def test_the_painter_gets_its_state_back_after_a_failure():
    def paint(p):
        before = p.transform()
        with pytest.raises(ZeroDivisionError), kept(p):
            p.translate(50, 50)
            1 / 0  # noqa: B018
        assert p.transform() == before

    painted(paint, BOX)


@pytest.mark.parametrize("kind", ["dial", "fuse", "cover", "plug", "light"])
def test_signs_are_about_16_pixels_and_all_different(kind):
    box = service_sign(kind, 1.0).boundingRect()
    assert 9 <= max(box.width(), box.height()) <= 18
    others = [service_sign(k, 1.0) for k in ("dial", "fuse", "cover", "plug", "light") if k != kind]
    assert service_sign(kind, 1.0) not in others


# -- fixings and names -----------------------------------------------------------------------------


def test_a_fixing_is_as_large_as_its_washer_but_never_lost():
    h1 = full().fixings[0]
    assert fixing_radius(Scale(0.01, 0, 0), h1) == 6.0
    assert fixing_radius(Scale(10.0, 0, 0), h1) == pytest.approx(60.0, rel=0.05)  # M6 washer 12 mm, ISO 7089


def test_a_drilled_fixing_is_a_disc_of_chalk_and_one_to_come_is_not():
    picture = painted(
        lambda p: (p.fillRect(VIEW, LIGHT.board), paint_fixings(p, SCALE, scene(), LIGHT, WallShow()))
    )
    assert near(picture, SCALE.px(40, 40), LIGHT.chalk, 20)
    assert not near(picture, SCALE.px(40, 360), LIGHT.chalk, 20)


def test_names_keep_off_stand_ins_marks_and_each_other():
    made = scene()
    free = names(SCALE, made, LIGHT, VIEW, [])
    assert {"battery", "doors"} <= {n.text for n in free}
    held = [SCALE.box(p.box) for p in made.placed.values()]
    spots = [n.spot for n in free]
    for i, spot in enumerate(spots):
        assert VIEW.contains(spot)
        assert not any(spot.intersects(other) for other in [*held, *spots[:i]])


def test_a_name_gives_way_to_a_tag_and_is_left_off_when_nothing_is_free():
    doors = next(n.spot for n in names(SCALE, scene(), LIGHT, VIEW, []) if n.text == "doors")
    moved = next(n.spot for n in names(SCALE, scene(), LIGHT, VIEW, [doors]) if n.text == "doors")
    assert not moved.intersects(doors)
    assert names(SCALE, scene(), LIGHT, VIEW, [VIEW]) == []
