"""The scale: mm to pixels and back, and what stays put while it changes."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QPointF, QRectF

from bayboard.window.draw.scale import Scale, box_of, fitting

SMALL = settings(derandomize=True, max_examples=60, deadline=None)
mm = st.floats(-5_000, 5_000)
pixel = st.floats(-4_000, 4_000)
scales = st.builds(Scale, st.floats(0.02, 20), pixel, pixel)


@SMALL
@given(scales, mm, mm)
def test_a_point_comes_back_from_the_pixels(scale, x, y):
    assert scale.mm(scale.px(x, y)) == pytest.approx((x, y), abs=1e-6)


@SMALL
@given(scales, mm, mm)
def test_up_in_the_bay_is_up_on_the_screen(scale, x, y):
    assert scale.px(x, y + 100).y() < scale.px(x, y).y()


@SMALL
@given(scales, pixel, pixel, st.floats(0.2, 5))
def test_what_lies_under_the_pointer_stays_there_while_zooming(scale, px, py, factor):
    at = QPointF(px, py)
    zoomed = scale.zoomed(at, factor)
    assert zoomed.mm(at) == pytest.approx(scale.mm(at), abs=1e-6)
    assert zoomed.px_per_mm == pytest.approx(scale.px_per_mm * factor)


@SMALL
@given(scales, pixel, pixel, mm, mm)
def test_panning_moves_every_point_by_the_same_pixels(scale, dx, dy, x, y):
    moved = scale.moved(dx, dy).px(x, y) - scale.px(x, y)
    assert (moved.x(), moved.y()) == pytest.approx((dx, dy), abs=1e-6)


@SMALL
@given(scales, mm, pixel)
def test_the_section_reads_heights_off_the_same_axis(scale, y, column):
    section = scale.beside(column)
    assert section.px(-40.0, y).y() == scale.px(300.0, y).y()
    assert section.px_per_mm == scale.px_per_mm
    assert section.px(0.0, y).x() == column


@SMALL
@given(mm, mm, st.floats(1, 3_000), st.floats(1, 3_000))
def test_a_fitted_box_touches_the_margin_on_one_axis_and_is_centred(x0, y0, wide, high):
    rect = QRectF(30, 40, 900, 500)
    box = fitting((x0, y0, x0 + wide, y0 + high), rect, 20).box((x0, y0, x0 + wide, y0 + high))
    assert rect.adjusted(19.99, 19.99, -19.99, -19.99).contains(box)
    assert box.center().x() == pytest.approx(rect.center().x(), abs=1e-3)
    assert box.center().y() == pytest.approx(rect.center().y(), abs=1e-3)
    assert min(rect.width() - box.width(), rect.height() - box.height()) == pytest.approx(40, abs=1e-3)


@pytest.mark.parametrize("box", [(5.0, 5.0, 5.0, 5.0), (0.0, 0.0, 1e-12, 900.0)])
@pytest.mark.parametrize("rect", [QRectF(0, 0, 900, 500), QRectF(0, 0, 10, 10), QRectF()])
def test_a_box_or_view_without_extent_still_gives_a_scale(box, rect):
    scale = fitting(box, rect, 20)
    assert 0 < scale.px_per_mm <= 1e3


def test_seen_is_the_box_of_the_view():
    scale = Scale(2.0, 100.0, 400.0)
    assert scale.seen(QRectF(100, 200, 400, 200)) == (0.0, 0.0, 200.0, 100.0)


def test_no_points_have_no_box():
    assert box_of([]) is None
    assert box_of([(3.0, 1.0), (-2.0, 5.0)]) == (-2.0, 1.0, 3.0, 5.0)
