"""Chalk: measures and the section's line."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QPointF, QRectF
from shapely import LineString
from tests.build import gear
from tests.window.draw.scenes import SCALE, VIEW, count, full, near, painted, scene

from bayboard.window.draw.chalk import (
    crossings,
    cure_tag,
    measure_tag,
    open_stretches,
    paint_cure,
    paint_marquee,
    paint_measure,
    paint_snap,
)
from bayboard.window.draw.show import Cure, Measure, Snap
from bayboard.window.theme import LIGHT


def tag(measure, taken=()):
    return measure_tag(SCALE, measure, LIGHT, taken, VIEW)


def test_a_long_flat_measure_carries_its_tag_on_the_line():
    spot = tag(Measure((100, 200), (700, 200), "23 5/8 in"))
    assert spot.center().x() == pytest.approx(SCALE.px(400, 0).x())
    assert spot.center().y() == pytest.approx(SCALE.px(0, 200).y())


def test_an_upright_measure_carries_it_beside():
    spot = tag(Measure((400, 100), (400, 300), "7 7/8 in"))
    assert spot.right() < SCALE.px(400, 0).x()


def test_a_tag_steps_aside_from_what_is_taken():
    measure = Measure((400, 100), (400, 300), "7 7/8 in")
    first = tag(measure)
    second = tag(measure, [first])
    assert not first.intersects(second)


@settings(derandomize=True, max_examples=50, deadline=None)
@given(*[st.floats(-3_000, 3_000)] * 4)
def test_a_tag_is_always_in_view(ax, ay, bx, by):
    spot = tag(Measure((ax, ay), (bx, by), "1 1/8 in, needs 1/4 in", "must", 3))
    assert VIEW.contains(spot)


def paints(measure):
    return painted(lambda p: (p.fillRect(VIEW, LIGHT.board), paint_measure(p, SCALE, measure, LIGHT)))


def test_a_wide_gaps_arrows_stand_inside_and_a_narrow_ones_outside():
    wide, narrow = paints(Measure((300, 200), (500, 200), "")), paints(Measure((300, 200), (310, 200), ""))
    assert near(wide, SCALE.px(400, 200), LIGHT.chalk, 40)
    for x in (285, 325):
        assert near(narrow, SCALE.px(x, 200), LIGHT.chalk, 60)
        assert not near(wide, SCALE.px(285, 200), LIGHT.chalk, 60)


def test_a_severe_measure_is_cased_in_paper():
    picture = paints(Measure((300, 200), (500, 200), "", "must", 1))
    middle = SCALE.px(400, 200)
    assert near(picture, middle, LIGHT.must, 40)
    assert near(picture, middle + QPointF(0, 2), LIGHT.paper, 60)


def test_a_snap_is_one_thin_line():
    picture = painted(
        lambda p: (p.fillRect(VIEW, LIGHT.board), paint_snap(p, SCALE, Snap((100, 300), (600, 300)), LIGHT))
    )
    y = SCALE.px(0, 300).y()
    assert near(picture, QPointF(300, y), "#9CCBF5", 30)
    assert near(picture, QPointF(300, y - 6), LIGHT.board, 20)


@pytest.mark.parametrize("box", [(100, 100, 400, 300), (400, 300, 100, 100)])
def test_a_marquee_is_the_same_drawn_either_way(box):
    both = [painted(lambda p, b=b: paint_marquee(p, SCALE, b, LIGHT)) for b in (box, (100, 100, 400, 300))]
    assert both[0] == both[1]


PLACE = ((0.0, 350.0), (100.0, 350.0), (100.0, 400.0), (0.0, 400.0))


def test_a_cure_shows_the_place_and_says_its_words_in_view():
    cure = Cure(PLACE, (50, 300), (50, 375), "cure: up 3 in")
    picture = painted(lambda p: paint_cure(p, SCALE, cure, LIGHT, VIEW))
    tag = cure_tag(SCALE, cure, LIGHT, VIEW)
    assert VIEW.contains(tag)
    assert count(picture, tag, LIGHT.chalk, 10) > 100


def test_a_cures_words_step_aside_from_what_is_taken():
    cure = Cure(PLACE, (50, 300), (50, 375), "cure: up 3 in")
    first = cure_tag(SCALE, cure, LIGHT, VIEW)
    assert not cure_tag(SCALE, cure, LIGHT, VIEW, [first]).intersects(first)


def test_a_cure_without_words_has_no_tag():
    bare = Cure(PLACE, (50, 375), (50, 375))
    told = Cure(PLACE, (50, 375), (50, 375), "up")
    tag = cure_tag(SCALE, told, LIGHT, VIEW)
    marked = [
        count(painted(lambda p, c=c: paint_cure(p, SCALE, c, LIGHT, VIEW)), tag, LIGHT.chalk, 10)
        for c in (bare, told)
    ]
    assert marked[0] == 0 < marked[1]


# -- the line behind the stand-ins -----------------------------------------------------------------


@settings(derandomize=True, max_examples=60, deadline=None)
@given(st.floats(90, 310), st.sampled_from([0, 17, 45, 90]))
def test_crossings_agree_with_shapely(x, turn):
    piece = scene(full(gear=[gear("A1", 200, 250, "amp", turn=turn)], leads=[])).placed["A1"]
    cut = piece.polygon.intersection(LineString([(x, -1e4), (x, 1e4)]))
    length = sum(high - low for low, high in crossings(piece, x))
    assert length == pytest.approx(cut.length, abs=1e-6)


def test_the_line_is_open_but_for_stand_ins_and_names():
    piece = scene(full(gear=[gear("B1", 500, 200, "box")], leads=[])).placed["B1"]
    name = QRectF(SCALE.px(480, 0).x(), 500, 60, 24)
    stretches = open_stretches(SCALE, 500.0, VIEW, [piece], [name])
    low, high = SCALE.px(0, 170).y(), SCALE.px(0, 230).y()
    assert stretches == [
        (VIEW.top(), pytest.approx(high)),
        (pytest.approx(low), 500.0),
        (524.0, VIEW.bottom()),
    ]


def test_a_line_beside_everything_is_whole():
    assert open_stretches(SCALE, 5_000.0, VIEW, list(scene().placed.values())) == [
        (VIEW.top(), VIEW.bottom())
    ]
