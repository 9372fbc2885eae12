"""What is seen from where: worked angles, and a moved thing's sight is the sight looked at afresh."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bayboard.geometry.prism import prism, standing
from bayboard.geometry.sight import Thing, eye_grid, looked_at, ray_starts

OUT = [0.0, 0.0, 1.0]
L = ((-50, -40), (50, -40), (50, 0), (0, 0), (0, 40), (-50, 40))


def _box(x0, y0, x1, y1, z0, z1):
    return prism([(x0, y0), (x1, y0), (x1, y1), (x0, y1)], z0, z1)


def _thing(prisms=(), points=(), facings=()):
    return Thing(
        tuple(prisms), np.reshape(points, (-1, 3)).astype(float), np.reshape(facings, (-1, 3)).astype(float)
    )


def _angle(things, eyes):
    (view,) = looked_at(things, np.array(eyes, float), 0.5).views[0]
    return view.angle


def test_the_grid_has_every_step_and_both_ends():
    assert sorted(set(eye_grid((0, 0, 500), (250, 0, 600), 100)[:, 0].tolist())) == [0, 100, 200, 250]
    assert len(eye_grid((0, 0, 500), (250, 0, 600), 100)) == 4 * 1 * 2
    assert len(eye_grid((0, 0, 500), (300, 0, 600), 100)) == 4 * 1 * 2


def test_the_nearest_eye_to_the_facing_counts():
    seen = _angle([_thing(points=[0, 0, 9.5], facings=OUT)], [(100, 0, 10), (100, 0, 110), (100, 0, 60)])
    assert seen == pytest.approx(45)


def test_a_hidden_place_has_no_angle():
    wall = _thing([_box(40, -50, 60, 50, 0, 500)])
    assert _angle([_thing(points=[0, 0, 0], facings=OUT), wall], [(100, 0, 100)]) is None


def test_an_eye_inside_a_thing_sees_nothing():
    assert (
        _angle(
            [_thing(points=[0, 0, 0], facings=OUT), _thing([_box(90, -5, 110, 5, 0, 200)])], [(100, 0, 100)]
        )
        is None
    )


@pytest.mark.parametrize(
    ("point", "facing", "start"),
    [
        ((20, 0, 50), OUT, (20, 0, 80.5)),
        ((20, 0, 80), OUT, (20, 0, 80.5)),
        ((20, 0, 90), OUT, (20, 0, 90.5)),
        ((20, 0, 50), (1.0, 0.0, 0.0), (100.5, 0, 50)),
        ((20, 0, 50), (-1.0, 0.0, 0.0), (-0.5, 0, 50)),
        ((100, 0, 50), (1.0, 0.0, 0.0), (100.5, 0, 50)),
    ],
    ids=["inside, out", "on the top", "over it", "through both blocks", "the other way", "on its side"],
)
def test_a_ray_starts_half_a_millimetre_off_its_own_body(point, facing, start):
    body = [_box(0, -30, 40, 30, 30, 80), _box(60, -30, 100, 30, 30, 80)]
    assert ray_starts(_thing(body, point, facing), 0.5)[0] == pytest.approx(start, abs=1e-5)


def _crowd(places):
    things = []
    for x, y, turn in places:
        body = standing(L, (x, y), turn, 30, 80)
        points = [(x - 20, y - 10, 78), (x, y, 60), (x - 49, y, 50)]
        facings = [OUT, OUT, (-1.0, 0.0, 0.0)]
        things.append(_thing([body], points, facings))
    seat = prism([(90, -200), (300, -200), (300, 60), (90, 60)], -300, 100, "x")
    return [*things, _thing([seat]), _thing([_box(150, -20, 170, 200, -9000, 160)])]


def _angles(sight):
    return [[view.angle for view in of] for of in sight.views]


places = st.tuples(st.floats(-250, 250), st.floats(-120, 120), st.sampled_from([0, 90, 180, 33.0]))


@settings(max_examples=25, derandomize=True, deadline=None)
@given(
    st.lists(places, min_size=4, max_size=4),
    st.lists(st.tuples(st.integers(0, 3), places), min_size=1, max_size=5),
)
def test_after_any_moves_the_sight_is_as_looked_at_afresh(at, moves):
    eyes = eye_grid((-200, 0, 300), (200, 150, 500), 100)
    sight = looked_at(_crowd(at), eyes, 0.5)
    for which, place in moves:
        at = [*at[:which], place, *at[which + 1 :]]
        sight = sight.moved({which: _crowd(at)[which]})
        assert _angles(sight) == _angles(looked_at(_crowd(at), eyes, 0.5))


def test_most_eyes_are_never_tried():
    sight = looked_at(
        _crowd([(-200, 0, 0), (0, 100, 0), (150, -60, 90), (220, 60, 0)]),
        eye_grid((-200, 0, 300), (200, 150, 500), 100),
        0.5,
    )
    tried = [len(view.hidden_by) for of in sight.views for view in of]
    assert sorted(tried)[len(tried) // 2] < len(sight.eyes) / 3


def test_it_agrees_with_trying_every_eye():
    from bayboard.geometry.solids import blocked, solids

    things = _crowd([(-200, 0, 0), (0, 100, 12), (150, -60, 90), (-60, -60, 0)])
    eyes = eye_grid((-200, 0, 200), (200, 150, 500), 100)
    rows = solids([p for thing in things for p in thing.prisms])
    sight = looked_at(things, eyes, 0.5)
    hidden = 0
    for thing, views in zip(things, sight.views, strict=True):
        for view, facing in zip(views, thing.facings, strict=True):
            clear = ~blocked(np.broadcast_to(view.start, eyes.shape), eyes, rows)
            lines = eyes[clear] - view.start
            cosine = lines @ facing / np.linalg.norm(lines, axis=1)
            least = np.degrees(np.arccos(np.clip(cosine, -1, 1))).min() if clear.any() else None
            assert view.angle == (None if least is None else pytest.approx(least, abs=1e-5))
            hidden += least is None
    assert 0 < hidden < 12
