"""The tapes: what stands where on them, in both units, at every zoom."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QPointF, QRectF
from tests.build import layout, rectangle
from tests.window.draw.scenes import count, near, painted

from bayboard.window.draw.scale import Scale
from bayboard.window.draw.tapes import (
    APART_WIDE,
    INCH,
    chalk_tag,
    lying_ticks,
    paint_foot_tape,
    paint_hanging_tape,
    tape_zero,
    ticks,
)
from bayboard.window.theme import DARK, LIGHT

FEW = settings(derandomize=True, max_examples=60, deadline=None)


def inches(high_in: float, k: float, every: float = 2, apart: float = 22.0):
    return list(ticks(0.0, high_in * INCH, k, "in", every * INCH, apart))


def test_the_hanging_tape_numbers_every_second_inch_and_reddens_the_feet():
    numbered = [t for t in inches(26, 0.8) if t.figure]
    assert [t.figure for t in numbered] == [str(n) for n in range(2, 27, 2)]
    assert [t.figure for t in numbered if t.red] == ["12", "24"]
    assert all(t.at == pytest.approx(int(t.figure) * INCH) for t in numbered)


def test_the_foot_tape_numbers_every_fourth_inch():
    assert [t.figure for t in inches(21, 0.8, 4, 46.0) if t.figure] == ["4", "8", "12", "16", "20"]


def test_metric_tapes_number_every_50_mm_and_redden_the_metre():
    numbered = [t for t in ticks(0.0, 1100.0, 0.9, "mm", 50.0, 22.0) if t.figure]
    assert [t.figure for t in numbered] == [str(n) for n in range(50, 1101, 50)]
    assert [t.figure for t in numbered if t.red] == ["1000"]


@pytest.mark.parametrize(("k", "per_inch"), [(1.0, 8), (0.46, 8), (0.44, 4), (0.26, 4), (0.24, 2)])
def test_eighths_and_quarters_thin_out_as_the_wall_gets_small(k, per_inch):
    assert len(inches(10, k)) == 10 * per_inch + 1


@FEW
@given(st.floats(0.005, 30), st.sampled_from(["in", "mm"]), st.floats(-3_000, 3_000), st.floats(1, 3_000))
def test_ticks_and_figures_never_crowd(k, units, low, span):
    found = list(ticks(low, low + span, k, units, 2 * INCH if units == "in" else 50.0, 22.0))
    least = 1.39 if units == "in" else 3.19
    assert all((b.at - a.at) * k >= least for a, b in pairwise(found))
    numbered = [t for t in found if t.figure]
    assert all((b.at - a.at) * k >= 21.99 for a, b in pairwise(numbered))
    assert all(low - 1e-6 <= t.at <= low + span + 1e-6 for t in found)


@FEW
@given(st.floats(0.3, 3))
def test_whole_inches_have_the_longest_ticks(k):
    for tick in inches(5, k):
        assert (tick.share == 1.0) == (abs(tick.at / INCH - round(tick.at / INCH)) < 1e-9)


def test_both_tapes_start_at_the_walls_lower_left():
    assert tape_zero(layout()) == (-100.0, -100.0)
    assert tape_zero(layout(bay={"wall": []})) == (0.0, 0.0)
    shifted = layout(bay={"wall": []}, board={"outline": rectangle(7, 9, 500, 300)})
    assert tape_zero(shifted) == (7.0, 9.0)
    assert tape_zero(layout(bay={"wall": []}, boards=[])) == (0.0, 0.0)


SCALE = Scale(1.0, 0.0, 600.0)
HANGING = QRectF(0, 0, 36, 600)


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda t: t.name)
def test_ticks_face_both_views_and_stand_at_the_height_they_say(theme):
    picture = painted(lambda p: paint_hanging_tape(p, HANGING, SCALE, theme, "in"), HANGING)
    y = SCALE.px(0, 3 * INCH).y()
    for x in (2, 26):
        tick, beside = QRectF(x, y - 1, 8, 2), QRectF(x, y - 5, 8, 1)
        assert count(picture, tick, theme.tapeink, 110) >= 6
        assert count(picture, beside, theme.tapeink, 110) == 0


def test_the_foot_is_red():
    picture = painted(lambda p: paint_hanging_tape(p, HANGING, SCALE, LIGHT, "in"), HANGING)
    box = QRectF(8, SCALE.px(0, 12 * INCH).y() - 8, 20, 16)
    assert count(picture, box, LIGHT.footred, 40) > 10
    assert count(picture, box.translated(0, -2 * INCH), LIGHT.footred, 40) < 4


def test_the_pointers_height_is_a_bar_across_the_tape():
    picture = painted(lambda p: paint_hanging_tape(p, HANGING, SCALE, LIGHT, "mm", pointer=333.0), HANGING)
    y = SCALE.px(0, 333).y()
    assert all(near(picture, QPointF(x, y), LIGHT.footred, 30) for x in range(2, 34))


def test_a_tape_that_starts_elsewhere_counts_from_there():
    box = QRectF(8, SCALE.px(0, 100 + 12 * INCH).y() - 8, 20, 16)
    picture = painted(lambda p: paint_hanging_tape(p, HANGING, SCALE, LIGHT, "in", zero=100.0), HANGING)
    assert count(picture, box, LIGHT.footred, 60) > 10


FOOT = QRectF(0, 0, 900, 28)
FOOT_SCALE = Scale(0.8, 40.0, 0.0)


def test_the_chalk_lines_tag_stands_under_its_line_in_blue():
    tag = chalk_tag(FOOT, FOOT_SCALE, LIGHT, "in", 0.0, 300.0)
    assert tag is not None
    assert tag.center().x() == pytest.approx(FOOT_SCALE.px(300, 0).x())
    picture = painted(lambda p: paint_foot_tape(p, FOOT, FOOT_SCALE, LIGHT, "in", chalk=300.0), FOOT)
    assert count(picture, tag, LIGHT.blue) > 200


@pytest.mark.parametrize("x", [-500.0, 5_000.0, None])
def test_a_chalk_line_out_of_view_has_no_tag(x):
    assert chalk_tag(FOOT, FOOT_SCALE, LIGHT, "in", 0.0, x) is None


@pytest.mark.parametrize("x", [-45.0, 1_070.0])
def test_a_tag_near_the_end_is_pushed_back_into_view(x):
    tag = chalk_tag(FOOT, FOOT_SCALE, LIGHT, "in", 0.0, x)
    assert tag is not None
    assert FOOT.contains(tag)


@pytest.mark.parametrize("units", ["in", "mm"])
@pytest.mark.parametrize("k", [1e-3, 0.3, 50.0])
def test_tapes_can_be_painted_at_any_zoom(units, k):
    scale = Scale(k, 0.0, 500.0)
    painted(lambda p: paint_hanging_tape(p, HANGING, scale, LIGHT, units, pointer=1e5), HANGING)
    painted(lambda p: paint_foot_tape(p, FOOT, scale, DARK, units, chalk=0.0, pointer=-1e5), FOOT)


def test_figures_of_larger_type_stand_further_apart():
    for size in (1.0, 1.3, 1.5):
        at = [t.at for t in lying_ticks(0.0, 1600.0, 0.5, "mm", size) if t.figure]
        assert min(b - a for a, b in pairwise(at)) * 0.5 >= APART_WIDE * size
