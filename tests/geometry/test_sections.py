"""Clips and seat sections against shapely's intersections, at corners and between them."""

import numpy as np
import pytest
import shapely
from shapely import Polygon
from tests.build import rectangle

from bayboard.geometry.sections import bands, least_z, padded, probed_rooms, rooms, rooms_beyond, spans

SLANTED = ((100.0, 0.0), (300.0, 0.0), (300.0, 400.0), (60.0, 400.0))
NOSE = ((120.0, 0.0), (300.0, 0.0), (300.0, 400.0), (120.0, 400.0), (85.0, 200.0))


def _star(rng, points=9, middle=(200.0, 200.0)):
    turn = np.sort(rng.uniform(0, 2 * np.pi, points))
    far = rng.uniform(30, 120, points)
    return np.column_stack((np.cos(turn) * far, np.sin(turn) * far)) + middle


def _clip(ring, low, high, across):
    slab = shapely.box(low, -1e4, high, 1e4) if across == 0 else shapely.box(-1e4, low, 1e4, high)
    return Polygon(ring).buffer(0).intersection(slab)


@pytest.mark.parametrize("across", [0, 1])
def test_spans_are_the_bounds_of_the_clipped_outline(across):
    rng = np.random.default_rng(6)
    rings = [_star(rng) for _ in range(150)]
    low = rng.uniform(50, 300, 150)
    high = low + rng.uniform(1, 150, 150)
    found = spans(padded(rings), low, high, across)
    for ring, a, b, (least, most) in zip(rings, low, high, found, strict=True):
        cut = _clip(ring, a, b, across)
        if cut.is_empty:
            assert (least, most) == (np.inf, -np.inf)
        else:
            assert (least, most) == pytest.approx(cut.bounds[1 - across :: 2], abs=1e-6)


@pytest.mark.parametrize(("x0", "x1"), [(100.0, 200.0), (-50.0, 0.0)], ids=["right of it", "left of it"])
def test_a_ring_that_only_touches_the_cut_spans_nothing(x0, x1):
    ring = padded([np.array(rectangle(0, 0, 100, 60))])
    assert spans(ring, np.array([x0]), np.array([x1])).tolist() == [[np.inf, -np.inf]]


def test_padding_changes_no_span():
    rings = [np.array(rectangle(0, 0, 100, 60)), _star(np.random.default_rng(7), 40)]
    alone = [spans(padded([ring]), np.array([20.0]), np.array([170.0]))[0] for ring in rings]
    both = spans(padded(rings), np.array([20.0, 20.0]), np.array([170.0, 170.0]))
    assert both.tolist() == [row.tolist() for row in alone]


def test_the_least_z_is_that_of_the_section_between_two_heights():
    rng = np.random.default_rng(8)
    for _ in range(150):
        section = _star(rng, 12)
        y0 = rng.uniform(60, 320)
        y1 = y0 + rng.uniform(1, 100)
        cut = _clip(section, y0, y1, across=1)
        found = least_z(section, np.array([[y0, y1]]))[0]
        assert found == (np.inf if cut.is_empty else pytest.approx(cut.bounds[0], abs=1e-6))


@pytest.mark.parametrize(
    ("section", "y0", "y1", "least"),
    [
        (SLANTED, 170, 230, 77),
        (NOSE, 170, 230, 85),
        (NOSE, 210, 230, 86.75),
        (SLANTED, 390, 500, 60),
        (SLANTED, 400, 500, np.inf),
    ],
    ids=["at an end", "at a breakpoint", "beside the breakpoint", "over its end", "only touching"],
)
def test_where_the_least_z_is(section, y0, y1, least):
    assert least_z(section, np.array([[y0, y1]], dtype=float))[0] == pytest.approx(least)


def test_the_room_is_looked_for_within_the_seats_own_width():
    rings = padded([np.array(rectangle(x, 170, x + 100, 230)) for x in (0, 350, 400)])
    assert rooms(rings, (0.0, 400.0), SLANTED).tolist() == pytest.approx([77, 77, np.inf])


def _raster(ring, x, section, probes, reach, step=2.0):
    """Return the least z by looking at points of a rectangle a step apart."""
    shape = Polygon(ring)
    x0, y0, x1, y1 = shape.bounds
    found, rest = np.inf, []
    for a in np.arange(max(x0, x[0]), min(x1, x[1]), step):
        for b in np.arange(y0, y1, step):
            away, z = min((float(np.hypot(a - px, b - py)), z) for px, py, z in probes)
            if away <= reach:
                found = min(found, z)
            else:
                rest.append(b)
    return min(found, least_z(section, np.array([[min(rest), max(rest)]]))[0]) if rest else found


def test_probes_agree_with_a_raster_of_the_outline():
    rng = np.random.default_rng(9)
    for _ in range(15):
        ring = np.array(rectangle(100, 120, 100 + rng.uniform(60, 250), 120 + rng.uniform(40, 160)))
        probes = [
            (*rng.uniform((80, 80), (360, 300)), rng.uniform(60, 110)) for _ in range(rng.integers(1, 4))
        ]
        found = probed_rooms([ring], (0.0, 320.0), SLANTED, probes, 75.0)[0]
        assert found == pytest.approx(_raster(ring, (0.0, 320.0), SLANTED, probes, 75.0), abs=0.3)


def test_where_no_probe_is_near_the_seat_alone_speaks():
    ring = np.array(rectangle(100, 170, 200, 230))
    assert probed_rooms([ring], (0.0, 400.0), SLANTED, [(900, 900, 5)], 75.0)[0] == pytest.approx(77)
    assert probed_rooms([ring], (0.0, 400.0), None, [(900, 900, 5)], 75.0)[0] == np.inf


def test_two_probes_at_one_place_both_count():
    ring = np.array(rectangle(100, 170, 140, 200))
    assert probed_rooms([ring], (0.0, 400.0), None, [(120, 180, 70), (120, 180, 50)], 75.0)[0] == 50


def test_a_probe_acts_just_as_far_as_its_reach():
    ring = np.array(rectangle(100, 170, 140, 200))
    at = [probed_rooms([ring], (0.0, 400.0), None, [(x, 180, 50)], 75.0)[0] for x in (215.0, 215.01)]
    assert at == [50, np.inf]


def test_bands_are_the_heights_where_a_section_stands_in_the_way():
    step = ((50.0, 0.0), (300.0, 0.0), (300.0, 400.0), (50.0, 400.0), (50.0, 300.0), (200.0, 300.0),
            (200.0, 100.0), (50.0, 100.0))  # fmt: skip
    assert sorted(bands(step, 60.0, 80.0)) == [(0.0, 100.0), (300.0, 400.0)]
    assert bands(step, 150.0, 210.0) == ((0.0, 400.0),)
    assert bands(step, 20.0, 50.0) == ()


@pytest.mark.parametrize(
    ("z", "least"), [(40.0, 77.0), (80.0, 80.0), (299.0, 299.0), (300.0, np.inf)],
    ids=["before the seat", "in it", "just within its back", "behind it"],
)  # fmt: skip
def test_looking_from_a_height_out_what_lies_behind_it_does_not_count(z, least):
    ring = padded([np.array(rectangle(100, 170, 200, 230))])
    assert rooms_beyond(ring, z, (0.0, 400.0), SLANTED)[0] == pytest.approx(least)
