"""The Wall: what a person must see there, checked pixel by pixel, never against a stored picture."""

import pytest
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter
from tests.build import card, gear, layout, rectangle
from tests.window.draw.scenes import SCALE, VIEW, at, count, full, near, painted, scene

from bayboard.window.draw.scale import Scale
from bayboard.window.draw.show import Cure, Ghost, Mark, Measure, Snap, WallShow
from bayboard.window.draw.wall import (
    leads_of,
    measure_tags,
    paint_live,
    paint_still,
    paint_wall,
    wall_marks,
)
from bayboard.window.theme import DARK, LIGHT

THEMES = pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda t: t.name)


PLAIN = WallShow()


def wall(show=PLAIN, made=None, theme=LIGHT, **how):
    return painted(lambda p: paint_wall(p, SCALE, scene(made), theme, show, VIEW, **how))


@THEMES
def test_board_wall_and_stand_in_wear_their_colours(theme):
    picture = wall(theme=theme)
    assert near(picture, SCALE.px(330, 350), theme.board, 14)
    assert near(picture, SCALE.px(-90, 450), theme.wall, 14)
    assert near(picture, SCALE.px(140, 290), theme.buff)
    assert near(picture, QPointF(5, 5), theme.room, 14)


def test_the_wall_shows_through_a_cut_out():
    assert near(wall(), SCALE.px(630, 262), LIGHT.wall, 40)
    assert not near(wall(), SCALE.px(630, 262), LIGHT.board, 40)


def test_a_masking_strip_lies_on_what_is_taped_and_only_there():
    picture = wall()
    assert near(picture, SCALE.px(200, 313), LIGHT.hold, 40)
    assert not near(picture, SCALE.px(800, 333), LIGHT.hold, 40)


def test_a_lead_lies_over_the_board_and_under_the_stand_ins():
    picture = wall()
    assert near(picture, SCALE.px(700, 100), LIGHT.power, 30)
    over = full(gear=[gear("A1", 200, 250, "amp"), gear("A2", 450, 250, "amp"), gear("B1", 700, 100, "slab")])
    assert not near(wall(made=over), SCALE.px(700, 100), LIGHT.power, 30)


def test_the_number_stands_on_every_stand_in_in_pencil():
    picture = wall(made=full(gear=[gear("B1", 800, 300, "box")], leads=[]))
    assert count(picture, QRectF(SCALE.px(785, 315), SCALE.px(815, 285)), LIGHT.pencil, 30) > 15


def test_a_must_is_a_red_diamond_in_a_casing_of_paper_in_the_clipped_corner():
    show = WallShow(marks=(Mark(1, "must", None, None, "B1"),))
    picture = wall(show)
    ((spot, tag),) = wall_marks(SCALE, scene(), LIGHT, show, VIEW).values()
    assert tag is None
    assert near(picture, spot + QPointF(0, -9), LIGHT.must)
    assert near(picture, spot + QPointF(0, -15.5), LIGHT.paper, 30)
    assert count(picture, QRectF(spot.x() - 6, spot.y() - 6, 12, 12), LIGHT.paper, 40) > 5  # its number
    assert spot.x() < SCALE.px(800, 0).x()
    assert spot.y() < SCALE.px(0, 300).y()


def test_a_mark_leaves_the_corner_to_the_turning_arc():
    mark = (Mark(1, "must", None, None, "A1"),)
    rest = wall_marks(SCALE, scene(), LIGHT, WallShow(marks=mark), VIEW)[1][0]
    turned = wall_marks(SCALE, scene(), LIGHT, WallShow(marks=mark, selected=frozenset(["A1"])), VIEW)[1][0]
    middle = SCALE.px(200, 250).x()
    assert rest.x() < middle < turned.x()
    assert rest.y() == pytest.approx(turned.y(), abs=6)


@THEMES
def test_a_selected_piece_wears_a_blue_ring_cased_in_paper(theme):
    picture = wall(WallShow(selected=frozenset(["B1"])), theme=theme)
    edge = SCALE.px(850, 300)
    assert near(picture, edge + QPointF(6, 0), theme.blue, 40)
    assert near(picture, edge + QPointF(8, 0), theme.paper, 40)


def test_the_ring_of_the_focus_is_dashed():
    solid = wall(WallShow(selected=frozenset(["B1"])))
    dashed = wall(WallShow(focused="B1"))
    band = QRectF(SCALE.px(765, 330) + QPointF(0, -7), SCALE.px(845, 330) + QPointF(0, -5))
    assert 0.3 < count(dashed, band, LIGHT.blue, 60) / count(solid, band, LIGHT.blue, 60) < 0.9


def test_what_hangs_off_the_board_is_hatched_and_the_rest_is_not():
    picture = wall(made=full(gear=[gear("B1", 1000, 200, "slab")], leads=[]))
    off = QRectF(SCALE.px(1010, 240), SCALE.px(1090, 160))
    on = QRectF(SCALE.px(910, 240), SCALE.px(960, 190))
    assert count(picture, off, LIGHT.pencil, 70) > 60
    assert count(picture, on, LIGHT.pencil, 70) < 20


def test_the_chalk_line_runs_behind_the_stand_ins_and_ends_in_a_flag():
    picture = wall(WallShow(chalk_x=820.0))
    assert near(picture, SCALE.px(820, 380), LIGHT.blue, 30)
    assert near(picture, SCALE.px(820, 290), LIGHT.buff, 40)
    assert near(picture, QPointF(SCALE.px(820, 0).x() - 9, VIEW.top() + 3), LIGHT.blue, 20)


def test_a_measure_is_chalk_and_its_tag_lies_off_the_numbers():
    show = WallShow(measures=(Measure((300, 250), (390, 250), "3 17/32 in"),))
    (tag,) = measure_tags(SCALE, scene(), LIGHT, show, VIEW)
    assert VIEW.contains(tag)
    assert near(wall(show), tag.topLeft() + QPointF(5, 5), LIGHT.chalk, 12)
    assert not tag.contains(SCALE.px(200, 250))


def test_a_severe_measure_carries_its_number_and_no_second_mark_is_painted():
    measure = Measure((300, 250), (303, 250), "1/8 in, needs 1/4 in", "must", 1)
    show = WallShow(measures=(measure,), marks=(Mark(1, "must", (301, 250), "1/8 in"),))
    found = wall_marks(SCALE, scene(), LIGHT, show, VIEW)
    (tag,) = measure_tags(SCALE, scene(), LIGHT, show, VIEW)
    assert list(found) == [1]
    assert found[1][1] == tag
    assert count(wall(show), tag, LIGHT.must) > 100


def test_a_ghost_is_chalk_where_the_piece_was():
    ring = ((380.0, 60.0), (430.0, 60.0), (430.0, 90.0), (380.0, 90.0))
    picture = wall(WallShow(ghosts=(Ghost(ring, "A1"),)), made=full(leads=[]))
    edge = QRectF(SCALE.px(380, 90) + QPointF(-1, -1), SCALE.px(430, 90) + QPointF(1, 1))
    assert count(picture, edge, LIGHT.chalk, 110) > 8


def test_nothing_is_painted_outside_the_view():
    half = QRectF(0, 0, 450, 560)
    picture = painted(lambda p: paint_wall(p, SCALE, scene(), LIGHT, WallShow(chalk_x=800), half))
    assert at(picture, QPointF(600, 300)) == "#ff00ff"


# -- the layer under a drag ------------------------------------------------------------------------


def test_the_still_layer_leaves_out_the_skipped_piece_and_its_leads():
    picture = wall(skip={"A1"})
    assert near(picture, SCALE.px(140, 290), LIGHT.board, 14)
    assert near(picture, SCALE.px(700, 100), LIGHT.board, 14)
    assert near(picture, SCALE.px(830, 320), LIGHT.buff)


def test_the_moving_layer_paints_only_the_piece_its_leads_and_the_overlays():
    picture = wall(WallShow(chalk_x=330.0), only={"A1"})
    assert near(picture, SCALE.px(140, 290), LIGHT.buff)
    assert near(picture, SCALE.px(700, 100), LIGHT.power, 30)
    assert near(picture, SCALE.px(330, 350), LIGHT.blue, 30)
    assert at(picture, SCALE.px(830, 320)) == "#ff00ff"


def test_both_layers_together_make_the_whole_wall():
    show = WallShow(selected=frozenset(["A1"]), in_hand=frozenset(["A1"]), chalk_x=330.0)

    def layered(p: QPainter) -> None:
        paint_still(p, SCALE, scene(), LIGHT, show, VIEW, {"A1"})
        paint_live(p, SCALE, scene(), LIGHT, show, VIEW, {"A1"})

    assert painted(layered) == wall(show)


def test_the_leads_of_a_piece_are_those_that_end_at_it():
    assert leads_of(scene(), {"A1"}) == {"W1"}
    assert leads_of(scene(), {"battery"}) == frozenset()
    assert leads_of(scene(), set()) == frozenset()


# -- odd layouts -----------------------------------------------------------------------------------

EVERYTHING = WallShow(
    selected=frozenset(["A1", "W1", "H1", "gone"]),
    focused="A2",
    hovered="W2",
    in_hand=frozenset(["B1"]),
    ghosts=(Ghost(()), Ghost(((0.0, 0.0), (50.0, 0.0), (50.0, 50.0)), "A1")),
    measures=(
        Measure((0, 0), (0, 0), "0 in"),
        Measure((-9e4, 0), (9e4, 0), "far"),
        Measure((5, 5), (5, 9), "4 mm", "should", 2),
    ),
    snaps=(Snap((0, 0), (0, 0)), Snap((0, 50), (500, 50), "tops level")),
    marquee=(400, 100, 100, 300),
    marks=tuple(
        Mark(n, s, (n * 40.0, 100), "x" * n, "gone") for n, s in enumerate(("must", "should", "note"), 1)
    ),
    told=frozenset([3, 99]),
    chalk_x=250.0,
    pointer=(10, 10),
    cures=(Cure(((0.0, 0.0), (60.0, 0.0), (60.0, 60.0)), (0, 0), (0, 0), "cure: up 1/8 in"),),
    turning=12.5,
)
ODD = {
    "no wall, no boards": layout(bay={"wall": []}, boards=[]),
    "no boards but gear": layout(boards=[], gear=[{"id": "A1", "card": "box", "at": None}]),
    "no gear": layout(),
    "null heights": full(cards={"amp": card(200, 120, None), "box": card(60, 60, None)}, leads=[]),
    "a hair of a card": full(cards={"amp": card(0.1, 0.1, 5)}, leads=[]),
    "huge names": full(
        cards={"amp": card(200, 120, 45, name="Ж" * 199)},
        leads=[],
        bay={"entries": [{"id": "e", "name": "n" * 199, "at": [0, 0], "carries": ["data"], "run": None}]},
    ),
    "a wall of 100 m": layout(bay={"wall": rectangle(-1e5, -1e5, 1e5, 1e5)}, gear=[gear("A1", 9e4, 9e4)]),
    "one of everything": full(),
}


@pytest.mark.parametrize("made", ODD.values(), ids=ODD.keys())
@pytest.mark.parametrize(
    "scale", [SCALE, Scale(0.01, 0, 0), Scale(40.0, -9e3, 9e3)], ids=["plain", "far", "near"]
)
def test_no_layout_stops_the_painter(made, scale):
    for show in (WallShow(), EVERYTHING):
        known = {key: value for key, value in scene().routes.items() if made.leads}
        odd = scene(made)
        odd.routes = known  # type: ignore[misc]
        painted(lambda p, show=show, odd=odd: paint_wall(p, scale, odd, DARK, show, VIEW))


def test_a_failing_painter_leaves_the_painter_as_it_was():
    broken = scene()
    broken.boards = None  # type: ignore[misc, assignment]

    def paint(p: QPainter) -> None:
        before = (p.transform(), p.hasClipping())
        with pytest.raises(AttributeError):
            paint_wall(p, SCALE, broken, LIGHT, WallShow(), VIEW)
        assert (p.transform(), p.hasClipping()) == before

    painted(paint)


def test_the_names_of_ports_darken_when_the_pointer_is_near():
    def darkest(show: WallShow) -> int:
        picture = wall(show, made=full(gear=[gear("A1", 200, 250, "amp")], leads=[]))
        band = QRectF(SCALE.px(110, 244), SCALE.px(180, 222))
        return count(picture, band, LIGHT.pencil, 20)

    assert darkest(WallShow(hovered="A1")) > darkest(WallShow())
