"""What is told of two layouts, by laws over random pairs and by hand."""

import json
import time

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.build import document, gear, layout, rectangle
from tests.model.rich import rich
from tests.model.varied import pair

from bayboard.model.compare import Changed, Moved, compare
from bayboard.model.read import from_document, read
from bayboard.model.write import plain, write

COUNT = 200  # pairs, shared by the laws
SEEDS = st.integers(0, COUNT - 1)
FEW = settings(derandomize=True, max_examples=80, deadline=None)


@FEW
@given(SEEDS)
def test_nothing_is_told_of_a_layout_and_its_twin(seed):
    first, _ = pair(seed)
    assert compare(first, read(write(first))).same


@FEW
@given(SEEDS)
def test_something_is_told_of_two_just_when_their_normal_forms_differ(seed):
    a, b = (msgspec.structs.replace(one, printed=None) for one in pair(seed))
    assert compare(a, b).same == (write(a) == write(b))


@FEW
@given(SEEDS)
def test_looked_at_from_the_other_end_everything_is_the_other_way_round(seed):
    a, b = pair(seed)
    there, back = compare(a, b), compare(b, a)
    assert (there.added, there.removed) == (back.removed, back.added)
    assert sorted(map(_turned_round, back.moved)) == sorted((m.id, m.by, m.turned) for m in there.moved)
    flipped = [Changed(c.id, c.member, c.after, c.before) for c in back.changed]
    assert sorted(map(repr, flipped)) == sorted(map(repr, there.changed))


def _turned_round(moved):
    dx, dy = (-figure + 0.0 for figure in moved.by)
    return moved.id, (dx, dy), 180.0 if moved.turned == 180.0 else -moved.turned + 0.0


@FEW
@given(SEEDS)
def test_what_is_told_can_be_written_as_json(seed):
    told = compare(*pair(seed))
    json.dumps([(c.id, c.member, c.before, c.after) for c in told.changed], allow_nan=False)


def test_the_pairs_differ_in_every_way_that_can_be_told():
    told = [compare(*pair(seed)) for seed in range(COUNT)]
    for member in ("moved", "added", "removed", "changed"):
        assert sum(bool(getattr(one, member)) for one in told) > COUNT / 20, member
    assert sum(one.same for one in told) > COUNT / 20


def _two(before, after):
    """Return what is told of the plain document with these members and those."""
    return compare(layout(**before), layout(**after))


@pytest.mark.parametrize(
    ("turn", "then", "told"),
    [(0, 90, 90), (90, 0, -90), (350, 10, 20), (10, 350, -20), (0, 180, 180), (180, 0, 180), (-90, 90, 180)],
)
def test_a_turn_is_told_the_short_way_round(turn, then, told):
    found = _two({"gear": [gear("A", 9, 9, turn=turn)]}, {"gear": [gear("A", 9, 9, turn=then)]})
    assert found.moved == (Moved("A", (0, 0), told),)
    assert not found.changed


def test_stand_ins_fixings_and_boards_move():
    before = document(gear=[gear("A", 100, 100)], fixings=[{"id": "H", "at": [500, 50], "thread": "M6"}])
    before["boards"][0]["cutouts"] = [{"id": "K", "outline": rectangle(700, 100, 800, 200)}]
    after = json.loads(json.dumps(before))
    board = after["boards"][0]
    for ring in (board["outline"], board["cutouts"][0]["outline"]):
        ring[:] = [[x + 25.4, y - 10] for x, y in ring]
    after["gear"][0] |= {"at": [112.7, 100], "turn": 345}
    after["fixings"][0]["at"] = [500, 49]
    found = compare(from_document(before), from_document(after))
    assert found.moved == (
        Moved("BD", (25.4, -10), 0),
        Moved("A", (12.7, 0), -15),
        Moved("H", (0, -1), 0),
    )
    assert not found.changed


def test_a_board_whose_cut_out_stays_behind_has_not_moved_but_changed():
    cutouts = [{"id": "K", "outline": rectangle(700, 100, 800, 200)}]
    shifted = {"outline": rectangle(10, 0, 1010, 400), "cutouts": cutouts}
    found = _two({"board": {"cutouts": cutouts}}, {"board": shifted})
    assert [(c.id, c.member) for c in found.changed] == [("BD", "outline")]
    assert not found.moved


def test_a_cut_out_that_goes_along_alone_is_told_by_its_id():
    found = _two(
        {"board": {"cutouts": [{"id": "K", "outline": rectangle(700, 100, 800, 200)}]}},
        {"board": {"cutouts": [{"id": "K", "outline": rectangle(710, 100, 810, 200)}]}},
    )
    assert [(c.id, c.member) for c in found.changed] == [("K", "outline")]


def test_going_to_the_bench_and_coming_from_it_is_a_change_of_place():
    bench = gear("A", 0, 0) | {"at": None}
    assert _two({"gear": [gear("A", 9, 8)]}, {"gear": [bench]}).changed == (Changed("A", "at", [9, 8], None),)
    assert _two({"gear": [bench]}, {"gear": [gear("A", 9, 8)]}).changed == (Changed("A", "at", None, [9, 8]),)


def test_a_step_smaller_than_what_is_kept_is_a_change_but_no_move():
    found = _two({"gear": [gear("A", 9, 8)]}, {"gear": [gear("A", 9 + 5e-7, 8)]})
    assert (found.moved, found.changed) == ((), (Changed("A", "at", [9, 8], [9 + 5e-7, 8]),))


def test_what_has_no_id_is_named_by_its_path():
    doc = rich()
    after = json.loads(json.dumps(doc))
    after["vehicle"]["note"] = "one row"
    after["units"] = "mm"
    after["bay"]["tape"] = 3
    after["bay"]["eye"]["x"] = [-200, 1800]
    after["bay"]["supply"]["fit"] = 20
    after["drilled_holes"] = {"A1#1": [1, 2]}
    after["limits"] = {"gap_should": 18, "gap_must": 7}
    after["let_be"] = []
    found = compare(from_document(doc), from_document(after))
    assert [(c.id, c.member, c.before, c.after) for c in found.changed] == [
        (None, "vehicle.note", "second row\nfolds", "one row"),
        (None, "units", "in", "mm"),
        (None, "bay.eye.x", [-200, 1900], [-200, 1800]),
        (None, "bay.tape", 2, 3),
        (None, "bay.supply.fit", 18, 20),
        (None, "drilled_holes.A1#1", None, [1, 2]),
        (None, "drilled_holes.A1#2", [143.25, 160], None),
        (None, "let_be", plain(from_document(doc))["let_be"], []),
        (None, "limits.gap_must", None, 7),
        (None, "limits.fuse_from_source", 180.5, None),
    ]


def test_a_card_is_told_by_its_id_and_member():
    doc = rich()
    doc["cards"]["deep"]["air"] = {"up": 30}
    doc["cards"]["deep"]["heat"] = None
    found = compare(from_document(rich()), from_document(doc))
    assert [(c.id, c.member, c.before, c.after) for c in found.changed] == [
        ("deep", "air", {"out": 20, "left": 5, "right": 5, "up": 25, "down": 1}, {"up": 30}),
        ("deep", "heat", 90, None),
    ]


def test_what_came_and_went_stands_in_document_order():
    less = rich()
    less["bay"] = {"wall": less["bay"]["wall"]}
    for member in ("gear", "leads", "fixings", "photos", "boards"):
        less[member] = []
    less |= {"cards": {}, "drilled_holes": {}}
    whole, bare = from_document(rich()), from_document(less)
    names = "L1 L2 ST1 LN1 V1 ND1 SE1 FEED RCA B1 C1 C2 B2 deep block A1 A2 D1 P1 P2 S1 F1 F2 PH1 PH2"
    assert " ".join(compare(bare, whole).added) == names
    assert " ".join(compare(whole, bare).removed) == names


def test_what_follows_from_the_rest_is_told_as_it_follows():
    before = document(gear=[gear("A", 9, 9)])
    second = {"id": "B2", "outline": rectangle(0, 0, 900, 400), "thickness": 12, "standoff": 5}
    after = document(gear=[gear("A", 9, 9, board="B2")])
    after["boards"] = [after["boards"][0] | {"stock": [5, 5]}, second]
    found = compare(from_document(before), from_document(after))
    assert [(c.id, c.member, c.before, c.after) for c in found.changed] == [
        ("BD", "stock", [10], [5, 5]),
        ("A", "board", "BD", "B2"),
    ]


def test_a_thicker_board_of_its_own_stock_differs_in_thickness_alone():
    found = _two({}, {"board": {"thickness": 12}})
    assert found.changed == (Changed("BD", "thickness", 10, 12),)


def test_another_order_of_the_same_things_is_told_as_one():
    pieces = [gear("A", 9, 9), gear("B", 300, 200), gear("C", 500, 200)]
    found = _two({"gear": pieces}, {"gear": [pieces[2], pieces[0]]})
    assert found.removed == ("B",)
    assert found.changed == (Changed(None, "gear", ["A", "C"], ["C", "A"]),)


def test_the_same_id_on_another_kind_of_thing_went_and_came():
    region = {"id": "Z", "name": "loom", "outline": rectangle(0, 0, 9, 9)}
    found = _two({"bay": {"no_drill": [region]}}, {"bay": {"stays": [region | {"height": 5}]}})
    assert (found.added, found.removed, found.changed) == (("Z",), ("Z",), ())


def test_what_was_printed_is_left_out():
    doc = rich()
    doc["printed"] = None
    assert compare(from_document(rich()), from_document(doc)).same


def test_comparing_takes_less_than_writing_both(demo="demo_layouts/crew-pickup-rear-wall.json"):
    from pathlib import Path

    text = (Path(__file__).parents[2] / demo).read_bytes()
    a, b = read(text), read(text)
    b = msgspec.structs.replace(
        b, gear=tuple(msgspec.structs.replace(g, turn=g.turn + 1) for g in b.gear), limits={"gap_must": 7}
    )
    compare(a, b)
    assert _best(lambda: compare(a, b)) < _best(lambda: (write(a), write(b)))


def _best(act):
    times = []
    for _ in range(5):
        begin = time.perf_counter()
        act()
        times.append(time.perf_counter() - begin)
    return min(times)
