"""The seam solver: never worse than trying every half millimetre, and the sheets say where it could not keep
clear."""

from math import hypot

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString, Point
from tests.paper import boards, readers

from bayboard.mechanics.holes import holes
from bayboard.paper import seams
from bayboard.paper.book import Options, book
from bayboard.paper.grid import CLEAR
from bayboard.paper.seams import Axis
from bayboard.paper.section import sections

STEP = 0.5  # mm of the plain search


def plainly_best(axis, count):
    """Return the widest clearance of `count` seams on a grid of STEP (dynamic programme)."""
    places = np.arange(axis.start + seams.NARROWEST, axis.end - seams.NARROWEST + 1e-9, STEP)
    worth = np.array([min(seams.clearance((p,), axis.holes), seams.WIDEST) for p in places])
    best = np.where(places <= axis.start + axis.first + 1e-9, worth, -np.inf)
    for _ in range(count - 1):
        reach = [(places >= p - axis.pitch - 1e-9) & (places <= p - seams.NARROWEST + 1e-9) for p in places]
        best = np.array([min(w, best[r].max(initial=-np.inf)) for w, r in zip(worth, reach, strict=True)])
    ends = best[places >= axis.end - axis.last - 1e-9]
    return ends.max(initial=-np.inf)


def near(step, count, far):
    """Anywhere, but half the time within a hair of where a plain cut would fall."""
    cut = st.builds(
        lambda k, d: min(max(k * step + d, 0.0), far),
        st.integers(1, count),
        st.sampled_from((-8.5, -0.5, 0.0, 0.5, 8.5)),
    )
    return st.one_of(cut, st.floats(0.0, far))


@st.composite
def axes(draw):
    pitch = draw(st.sampled_from((80.0, 120.0)))
    end = draw(st.floats(pitch * 1.3, pitch * 3.5))
    middles = draw(st.lists(near(pitch, 3, end), max_size=12))
    holes = tuple((m - 3.0, m + 3.0) for m in middles)
    return Axis(0.0, end, pitch + 5.0, pitch, pitch + 8.0, holes)


@settings(max_examples=60, derandomize=True, deadline=None)
@given(axes(), st.integers(0, 1))
def test_no_grid_search_finds_wider_seams(axis, more):
    count = seams.fewest(axis) + more
    if not count:
        return
    found = seams.best(axis, count)
    plain = max(plainly_best(axis, n) for n in range(1, count + 1))
    if found is None:
        assert plain == -np.inf
        return
    clear, places = found
    assert clear >= plain - 1e-4
    assert seams.clearance(places, axis.holes) >= clear - 1e-6
    lengths = np.diff([axis.start, *places, axis.end])
    assert lengths[0] <= axis.first + 1e-6 and lengths[-1] <= axis.last + 1e-6
    assert all(lengths[1:-1] <= axis.pitch + 1e-6) and all(lengths >= seams.NARROWEST - 1e-6)


def test_seams_are_even_where_nothing_is_in_the_way():
    axis = Axis(0.0, 300.0, 120.0, 120.0, 120.0)
    assert seams.best(axis, 2)[1] == pytest.approx((100.0, 200.0))


def test_a_seam_that_must_cut_a_hole_says_so():
    axis = Axis(0.0, 100.0, 60.0, 50.0, 60.0, holes=((20.0, 80.0),))
    clear, (at,) = seams.best(axis, 1)
    assert clear == pytest.approx(-20.0, abs=0.001)
    assert at in (pytest.approx(40.0, abs=0.001), pytest.approx(60.0, abs=0.001))


def test_a_seam_through_a_place_keeps_clear_or_is_refused():
    axis = Axis(0.0, 300.0, 120.0, 120.0, 120.0, holes=((140.0, 150.0),))
    assert seams.through(axis, 145.0, CLEAR) is None
    found = seams.through(axis, 160.0, CLEAR)
    assert 160.0 in found and seams.clearance(found, axis.holes) >= CLEAR


SEEDS = range(40)


def seam_lines(section):
    """Return every seam as a line, from the plan of the sheets."""
    return [(s, LineString((s.a, s.b))) for s in section.plan.seams]


@pytest.mark.parametrize("paper", ["letter", "a4", "a3", "tabloid"])
def test_no_seam_of_40_boards_comes_near_a_hole_unless_its_sheets_name_it(paper):
    named = 0
    for seed in SEEDS:
        layout = boards.seam_board(seed)
        (section,) = sections(layout, Options(paper=paper, only=("drill",)))
        near = {}
        for hole in holes(layout):
            for seam, line in seam_lines(section):
                off = line.distance(Point(hole.at)) - hole.drill / 2
                if off < CLEAR - 1e-4:
                    near.setdefault(seam, []).append(hole.id)
        if near:
            named += 1
            said = readers.page_text(book(layout, Options(paper=paper, only=("drill",))).pdf())
            for seam, ids in near.items():
                for number in (seam.over, seam.under):
                    assert all(f"{name}'s edge" in said[number - 1] for name in ids)
                    assert "measure" in said[number - 1] and "twice" in said[number - 1]
    assert named <= len(SEEDS) // 4, "the solver hardly dodges anything"


def test_a_board_too_full_for_any_seam_names_the_holes_beside_them():
    crowd = [
        {"id": f"H{i}-{j}", "at": [12.0 + 18.0 * i, 12.0 + 18.0 * j], "thread": "M6"}
        for i in range(20)
        for j in range(10)
    ]
    layout = boards.layout(board={"outline": boards.rectangle(0, 0, 370, 190)}, fixings=crowd)
    options = Options(paper="a4", only=("drill",))
    (section,) = sections(layout, options)
    near = section.clearances.near
    assert near and min(c.mm for c in near) == pytest.approx((18.0 - 6.6) / 2, abs=0.01)
    said = readers.page_text(book(layout, options).pdf())
    assert all("measure" in said[c.seam.over - 1] for c in near)


def test_the_seams_drawn_are_the_seams_planned():
    layout = boards.odd()
    options = Options(paper="letter", only=("drill",))
    (section,) = sections(layout, options)
    pages = readers.by_stream(book(layout, options).pdf())
    for tile, subpaths in zip(section.plan.tiles, pages, strict=True):
        x0, y0, x1, y1 = tile.carry.box(tile.core)
        lines = [
            (a, b, s.dashed)
            for a, b, s in readers.segments(subpaths)
            if abs(s.width - 0.35) < 0.01 and len(s.knots) == 2
        ]
        for met, way, at, dashed in (
            (tile.left, 0, x0, True),
            (tile.below, 1, y0, True),
            (tile.right, 0, x1, False),
            (tile.above, 1, y1, False),
        ):
            drawn = [
                1
                for a, b, d in lines
                if d == dashed and abs(a[way] - at) < 0.001 and abs(b[way] - at) < 0.001
            ]
            assert bool(drawn) == (met is not None)
            assert all(hypot(a[0] - b[0], a[1] - b[1]) > 50 for a, b, _ in lines)
