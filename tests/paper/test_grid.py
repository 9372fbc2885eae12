"""Parting a board: hardly more sheets than a plain cut takes, nothing of the board left off paper."""

from math import ceil

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.build import layout, rectangle
from tests.paper import boards

from bayboard.paper.book import Options
from bayboard.paper.form import OVERLAPS, RIM, forms
from bayboard.paper.section import sections


def plain_count(wide, high, name):
    """Return the fewest sheets of a plain cut from the corner, overlap 10, whichever way they lie."""
    counts = []
    for form in forms(name, 10.0):
        if form.overlap == 10.0:
            w, h = form.live
            across = 1 + max(0, ceil((wide + 2 * RIM - w) / (w - 10.0) - 1e-9))
            up = 1 + max(0, ceil((high + 2 * RIM - h) / (h - 10.0) - 1e-9))
            counts.append(across * up)
    return min(counts)


def planned(made, name):
    (section,) = sections(made, Options(paper=name, only=("drill",)))
    return section.plan


@pytest.mark.parametrize("name", ["letter", "a4", "a3", "tabloid"])
def test_dodging_holes_costs_few_sheets(name):
    took = plain = 0
    for seed in range(40):
        made = boards.seam_board(seed)
        x0, y0, x1, y1 = shapely.Polygon(made.boards[0].outline).bounds
        took += len(planned(made, name).tiles)
        plain += plain_count(x1 - x0, y1 - y0, name)
    assert took <= 1.15 * plain


SIDES = st.one_of(
    st.floats(20.0, 1500.0),
    # within a hair of what one, two or three letter sheets take
    st.builds(
        lambda n, d: n * 185.9 + 10.0 + d - 2 * RIM, st.integers(1, 5), st.sampled_from((-0.01, 0.0, 0.01))
    ),
    st.builds(
        lambda n, d: n * 237.4 + 10.0 + d - 2 * RIM, st.integers(1, 3), st.sampled_from((-0.01, 0.0, 0.01))
    ),
)


@settings(max_examples=60, derandomize=True, deadline=None)
@given(SIDES, SIDES, st.sampled_from(["letter", "a4", "a3", "tabloid", "roll-610"]))
def test_every_window_fits_its_page_and_neighbours_share_enough_to_tape(wide, high, name):
    made = layout(
        bay={"wall": rectangle(-9, -9, 2000, 2000)},
        board={"outline": rectangle(3.1, 5.2, 3.1 + wide, 5.2 + high)},
    )
    plan = planned(made, name)
    x0, y0, x1, y1 = plan.form.live_box
    tiles = {t.number: t for t in plan.tiles}
    for tile in tiles.values():
        a, b, c, d = tile.carry.box(tile.window)
        assert a >= x0 - 1e-6 and b >= y0 - 1e-6 and c <= x1 + 1e-6 and d <= y1 + 1e-6
        if tile.right:
            shared = tile.window[2] - tiles[tile.right].window[0]
            assert shared >= plan.form.overlap - 1e-6
        if tile.above:
            shared = tile.window[3] - tiles[tile.above].window[1]
            assert shared >= plan.form.overlap - 1e-6
    shown = shapely.union_all([shapely.box(*t.window) for t in tiles.values()])
    assert shown.buffer(1e-6).contains(shapely.box(3.1 - RIM, 5.2 - RIM, 3.1 + wide + RIM, 5.2 + high + RIM))


def test_of_equal_counts_the_larger_overlap_wins():
    plan = planned(layout(board={"outline": rectangle(0, 0, 150, 150)}), "a4")
    assert plan.form.overlap == max(OVERLAPS) and len(plan.tiles) == 1


def test_a_roll_too_narrow_for_a_board_takes_more_pages():
    made = layout(bay={"wall": rectangle(-9, -9, 4000, 2000)}, board={"outline": rectangle(0, 0, 1500, 1000)})
    plan = planned(made, "roll-610")
    assert len(plan.tiles) == 2 and 609.6 in plan.form.size


def test_a_seam_does_not_run_along_a_sawn_edge():
    notch = [[0, 0], [400, 0], [400, 300], [201, 300], [201, 250], [199, 250], [199, 300], [0, 300]]
    plan = planned(layout(board={"outline": notch}), "letter")
    for seam in plan.seams:
        if seam.a[0] == seam.b[0]:
            assert min(abs(seam.a[0] - 199.0), abs(seam.a[0] - 201.0)) >= 3.0 - 1e-6
