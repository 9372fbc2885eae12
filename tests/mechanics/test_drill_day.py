"""The list of a drill day."""

from collections import Counter
from math import dist

import pytest
from tests.build import card, gear, layout, rectangle
from tests.plain.random_layouts import random_document

from bayboard.mechanics.drill_day import datum_check, drillings
from bayboard.mechanics.holes import holes
from bayboard.model.read import from_document

AMP = {"amp": card(100, 60, screws=[{"at": [x, y], "thread": "M5"} for x in (-40, 40) for y in (-20, 20)])}
SLOT = {"travel": 10, "angle": 90}


def _fixing(name, x, y, **members):
    return {"id": name, "at": [x, y], "thread": "M6"} | members


def _order(one):
    return [d.hole.id for d in drillings(one)]


def test_datum_holes_first_then_bit_by_bit_always_to_the_nearest():
    fixings = [
        _fixing("H1", 980, 380),
        _fixing("H2", 20, 20),
        _fixing("H3", 900, 20),
        _fixing("H4", 100, 20),
        _fixing("X", 500, 50, thread="M7"),
    ]
    one = layout(cards=AMP, gear=[gear("A", 200, 200, "amp")], fixings=fixings)
    # H2 to H1 is 1025 mm and the farthest; H2 lies nearer the corner.  Then 4.2 mm: A#1 (160, 180) is nearest
    # to H2, then up, right, down; then 6.6 mm from H2 again; the thread of no table comes last
    assert _order(one) == ["H2", "H1", "A#1", "A#2", "A#4", "A#3", "H4", "H3", "X"]
    assert [d.datum for d in drillings(one)] == [True, True, *[False] * 7]
    assert [d.bit for d in drillings(one)] == [6.6, 6.6, 4.2, 4.2, 4.2, 4.2, 6.6, 6.6, None]


def test_ordinates_count_from_the_left_and_the_foot_of_the_boards_box():
    board = {"outline": [[110, 40], [400, 20], [400, 300], [100, 300]]}
    (one,) = drillings(layout(board=board, fixings=[_fixing("H1", 150, 80)]))
    assert (one.at, one.from_left, one.up) == ((150, 80), 50, 60)


def test_a_slot_is_drilled_twice_its_nearer_end_first():
    one = layout(fixings=[_fixing("H1", 20, 20), _fixing("H2", 300, 20), _fixing("S", 160, 50, slot=SLOT)])
    # travel 10 is more than 6.6 + 1: the two holes stand 10 apart, upright
    parts = [(d.part, d.of, d.at) for d in drillings(one) if d.hole.id == "S"]
    assert parts == [(1, 2, (160, 45)), (2, 2, (160, 55))]
    short = layout(fixings=[_fixing("S", 160, 50, slot={"travel": 3, "angle": 0})])
    near, far = (d.at[0] for d in drillings(short))
    assert (near, far) == pytest.approx((160 - 3.8, 160 + 3.8))  # 6.6 + 1 apart


def test_a_slot_of_unknown_drill_is_listed_once_at_its_centre():
    (one,) = drillings(layout(fixings=[_fixing("S", 160, 50, slot=SLOT, thread="M7")]))
    assert (one.at, one.of, one.bit) == ((160, 50), 1, None)


def test_slots_and_unknown_drills_are_no_datum():
    fixings = [_fixing("S", 10, 10, slot=SLOT), _fixing("X", 990, 390, thread="M7"), _fixing("H", 500, 200)]
    one = layout(fixings=fixings)
    assert datum_check(one, "BD") is None
    assert not any(d.datum for d in drillings(one))
    assert _order(one) == ["S", "S", "H", "X"]


def test_the_datum_check_names_both_holes_and_their_distance():
    fixings = [_fixing("H1", 330, 420), _fixing("H2", 30, 20), _fixing("H3", 200, 20)]
    assert datum_check(layout(fixings=fixings), "BD") == ("H2", "H1", 500)  # a 3-4-5 triangle
    assert datum_check(layout(fixings=fixings[:1]), "BD") is None
    assert datum_check(layout(fixings=fixings), "NO") is None
    assert datum_check(layout(fixings=[_fixing("H1", 9, 9), _fixing("H2", 9, 9)]), "BD") is None


def test_of_equal_diagonals_the_first_is_taken_whatever_floats_say():
    at = {"H1": (30.1, 30.1), "H2": (930.3, 330.2), "H3": (30.1, 330.2), "H4": (930.3, 30.1)}
    one = layout(fixings=[_fixing(name, *spot) for name, spot in at.items()])
    assert datum_check(one, "BD")[:2] == ("H1", "H2")


def test_what_was_drilled_is_told_with_both_parts_of_a_slot():
    slotted = _fixing("S", 160, 50, slot=SLOT, drilled=[161, 50])
    fixings = [_fixing("H1", 20, 20), slotted, _fixing("M", 9, 90, metal=[9, 90])]
    one = layout(cards=AMP, gear=[gear("A", 200, 200, "amp")], fixings=fixings, drilled_holes={"A#2": [5, 5]})
    assert Counter(d.hole.id for d in drillings(one) if d.drilled) == {"S": 2, "A#2": 1}


def test_the_order_does_not_change_while_drilling():
    fixings = [_fixing("H1", 20, 20), _fixing("H2", 900, 300), _fixing("H3", 500, 200)]
    done = [_fixing("H1", 20, 20), _fixing("H2", 900, 300, drilled=[9, 9]), _fixing("H3", 500, 200)]
    assert _order(layout(fixings=fixings)) == _order(layout(fixings=done))


def test_boards_come_one_after_the_other_and_an_empty_bay_has_no_list():
    board = {"outline": rectangle(0, 0, 900, 400), "thickness": 10, "standoff": 20}
    boards = [{"id": "Z"} | board, {"id": "B"} | board]
    fixings = [_fixing("H1", 20, 20, board="B"), _fixing("H2", 900, 300), _fixing("H3", 500, 200, board="B")]
    assert _order(layout(boards=boards, fixings=fixings)) == ["H2", "H1", "H3"]
    assert drillings(layout(boards=[])) == ()


@pytest.mark.parametrize("seed", range(0, 60, 4))
def test_every_hole_is_listed_once_by_bit_and_each_next_is_the_nearest(seed):
    one = from_document(random_document(seed))
    for board in one.boards:
        listed = [d for d in drillings(one) if d.hole.board == board.id]
        mine = [hole for hole in holes(one) if hole.board == board.id]
        assert Counter(d.hole.id for d in listed) == {
            hole.id: 2 if hole.slot and hole.drill else 1 for hole in mine
        }
        plain = [d for d in listed if not d.datum]
        assert [d.bit for d in plain] == sorted((d.bit for d in plain), key=lambda bit: bit or 1e9)
        assert [d.datum for d in listed] == [True] * sum(d.datum for d in listed) + [False] * len(plain)
        _walk_is_short(listed, plain, board)


def _walk_is_short(listed, plain, board):
    start = listed[0].at if listed and listed[0].datum else tuple(map(min, zip(*board.outline, strict=True)))
    for bit in {d.bit for d in plain}:
        group, here = [d for d in plain if d.bit == bit], start
        for n, one in enumerate(group):
            if one.part == 1:
                assert dist(here, one.at) <= min(dist(here, d.at) for d in group[n:]) + 1e-6
            here = one.at


def test_ten_times_the_holes_of_a_large_bay_are_listed_in_a_moment():
    import time

    fixings = [_fixing(f"H{n}", 10 + n % 25 * 37.3, 10 + n // 25 * 19.1) for n in range(500)]
    one = layout(fixings=fixings)
    begin = time.perf_counter()
    assert len(drillings(one)) == 500
    assert time.perf_counter() - begin < 1.0
