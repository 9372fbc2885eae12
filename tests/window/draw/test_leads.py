"""Leads: the pattern alone must tell the kind, at the true width, with the real bend."""

from math import hypot, pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath
from tests.window.draw.scenes import SCALE, VIEW, at, count, full, near, painted, route, scene

from bayboard.model.layout import LEAD_KINDS
from bayboard.window.draw.jacket import bent, kept_layers, layers, paint_jacket
from bayboard.window.draw.leads import lead_path, lead_width, paint_leads
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.show import WallShow
from bayboard.window.theme import DARK, LIGHT

BOX = QRectF(0, 0, 240, 40)
LINE = QPainterPath(QPointF(10, 20))
LINE.lineTo(230, 20)


def jacket(kind: str | None, wide: float = 12.0, theme=LIGHT):
    def paint(p):
        p.fillRect(BOX, theme.board)
        paint_jacket(p, LINE, kind, wide, theme)

    return painted(paint, BOX)


def along(picture, y: float, token: str) -> list[bool]:
    return [near(picture, QPointF(x, y), token, 45) for x in range(20, 220)]


def runs(seen: list[bool]) -> int:
    """How many separate stretches there are."""
    return sum(now and not before for before, now in zip([False, *seen], seen, strict=False))


def test_12_v_is_a_solid_jacket_with_a_highlight():
    picture = jacket("power")
    assert all(along(picture, 21, LIGHT.power))
    assert not near(picture, QPointF(100, 18), LIGHT.power, 25)


def test_ground_is_hollow():
    picture = jacket("ground")
    assert all(along(picture, 15, LIGHT.ground))
    assert not any(along(picture, 20, LIGHT.ground))
    assert all(along(picture, 25, LIGHT.ground))


def test_signal_is_a_twin_line():
    picture = jacket("signal")
    assert all(along(picture, 16, LIGHT.signal))
    assert not any(along(picture, 20, LIGHT.signal))


def test_speaker_is_two_strands_that_swing():
    picture = jacket("speaker")
    high, low = along(picture, 15.5, LIGHT.speaker), along(picture, 24.5, LIGHT.speaker)
    assert runs(high) >= 4
    assert runs(low) >= 4
    assert not any(h and lo for h, lo in zip(high, low, strict=True))


def test_remote_is_dots_and_data_is_dashes():
    dots, dashes = along(jacket("remote"), 20, LIGHT.remote), along(jacket("data"), 20, LIGHT.data)
    assert runs(dots) > runs(dashes) > 4
    assert sum(dots) / runs(dots) < sum(dashes) / runs(dashes)


def test_ends_that_may_not_be_joined_are_broken_in_must():
    assert runs(along(jacket(None), 20, LIGHT.must)) > 4


@pytest.mark.parametrize("kind", [*LEAD_KINDS, None])
@pytest.mark.parametrize("wide", [1.0, 5.0, 40.0])
def test_every_kind_can_be_drawn_at_every_width_and_along_a_point(kind, wide):
    layers(LINE, kind, wide)
    layers(QPainterPath(QPointF(3, 3)), kind, wide)
    layers(QPainterPath(), kind, wide)


def test_a_jacket_is_worked_out_once():
    corners = ((0.0, 0.0), (100.0, 0.0))
    assert kept_layers(corners, 40.0, 1.0, "power", 8.0) is kept_layers(corners, 40.0, 1.0, "power", 8.0)


# -- bends -----------------------------------------------------------------------------------------


def curvature_radius(path: QPainterPath) -> float:
    """The radius of the bend of a path with one bend, from three points of it."""
    total = path.length()
    a, b, c = (path.pointAtPercent(path.percentAtLength(total / 2 + d)) for d in (-3.0, 0.0, 3.0))
    sides = [hypot(p.x() - q.x(), p.y() - q.y()) for p, q in ((a, b), (b, c), (c, a))]
    doubled = abs((b.x() - a.x()) * (c.y() - a.y()) - (c.x() - a.x()) * (b.y() - a.y()))
    return sides[0] * sides[1] * sides[2] / (2 * doubled)


@settings(derandomize=True, max_examples=30, deadline=None)
@given(st.floats(10, 80), st.sampled_from([30, 60, 90, 120]))
def test_a_bend_has_the_radius_it_was_given(radius, turn):
    from math import cos, radians, sin

    end = (500 + 500 * cos(radians(turn)), 500 * sin(radians(turn)))
    path = bent(((0.0, 0.0), (500.0, 0.0), end), radius, 1.0)
    assert curvature_radius(path) == pytest.approx(radius, rel=0.03)


@settings(derandomize=True, max_examples=30, deadline=None)
@given(st.floats(10, 200))
def test_a_right_angle_saves_what_geometry_says(radius):
    """Worked by hand: two tangents of length r give way to a quarter circle, pi r / 2."""
    path = bent(((0.0, 0.0), (500.0, 0.0), (500.0, 500.0)), radius, 1.0)
    assert path.length() == pytest.approx(1000 - 2 * radius + pi * radius / 2, rel=1e-3)


def test_a_bend_without_room_is_as_wide_as_it_can_be():
    path = bent(((0.0, 0.0), (20.0, 0.0), (20.0, 20.0)), 500.0, 1.0)
    assert path.length() == pytest.approx(40 - 2 * 10 + pi * 10 / 2, rel=1e-3)


@pytest.mark.parametrize(
    "corners",
    [(), ((1.0, 1.0),), ((1.0, 1.0), (1.0, 1.0), (5.0, 1.0)), ((0.0, 0.0), (9.0, 0.0), (0.0, 0.0))],
)
def test_odd_corners_give_a_path_all_the_same(corners):
    assert bent(corners, 10.0, 1.0).length() <= 20


# -- on the wall -----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("kind", "od", "wide"), [("power", 20, 12.0), ("signal", 2, 5.0), ("speaker", 2, 7.0)]
)
def test_a_lead_has_its_true_width_but_never_under_the_least(kind, od, wide):
    assert lead_width(route("W", kind, [(0, 0), (1, 1)], od), SCALE) == pytest.approx(wide)


def test_a_path_starts_and_ends_where_the_route_does():
    path = lead_path(route("W", "power", [(10, 20), (300, 20), (300, 200)]), SCALE, 4.0)
    assert (path.elementAt(0).x, path.elementAt(0).y) == pytest.approx(
        (SCALE.px(10, 20).x(), SCALE.px(10, 20).y())
    )
    end = path.currentPosition()
    assert (end.x(), end.y()) == pytest.approx((SCALE.px(300, 200).x(), SCALE.px(300, 200).y()))


def leads(show=WallShow(), theme=LIGHT, **how):  # noqa: B008  frozen
    return painted(lambda p: paint_leads(p, SCALE, scene(), theme, show, **how))


def test_only_the_asked_leads_are_painted():
    power, speaker = SCALE.px(700, 100), SCALE.px(500, 100)
    assert near(leads(drawn=["W1"]), power, LIGHT.power, 30)
    assert at(leads(drawn=["W2"]), power) == "#ff00ff"
    assert at(leads(skipped=frozenset(["W1"])), power) == "#ff00ff"
    assert at(leads(drawn=["W1"]), speaker + QPointF(0, 60)) == "#ff00ff"


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda t: t.name)
def test_a_selected_lead_is_cased_in_blue(theme):
    picture = leads(WallShow(selected=frozenset(["W1"])), theme)
    for off in (-5, 6):
        assert near(picture, SCALE.px(700, 100) + QPointF(0, off), theme.blue, 60)


def test_the_words_of_a_lead_keep_off_what_is_taken():
    everywhere = leads(taken=[VIEW])
    once = leads()
    pale = "#E9DFD0"
    assert count(once, QRectF(250, 340, 450, 40), pale, 25) > 100
    assert count(everywhere, QRectF(250, 340, 450, 40), pale, 25) == 0


def test_a_lead_that_has_no_route_is_not_painted():
    bare = scene(full())
    bare.routes = {}  # type: ignore[misc]
    picture = painted(lambda p: paint_leads(p, Scale(0.6, 90, 420), bare, LIGHT, WallShow()))
    assert at(picture, SCALE.px(700, 100)) == "#ff00ff"
