"""Two layouts as they are laid on the Wall: rings, arrows, what is dimmed, old edges, where a row leads."""

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString
from tests.build import card, gear, layout, rectangle

from bayboard.edits.drill_hole import DrillHole
from bayboard.edits.move_gear import MoveGear
from bayboard.edits.to_bench import ToBench
from bayboard.edits.turn_gear import TurnGear
from bayboard.model.compare import compare
from bayboard.model.read import from_document
from bayboard.model.write import write
from bayboard.rules.scene import Scene
from bayboard.window.compare.shifts import changes_show, drilled_tags, lead_ids, middle_of

FIXINGS = [{"id": f"H{n}", "at": [100 * n, 380], "thread": "M6"} for n in range(1, 6)]
OLD = layout(
    gear=[gear("A1", 200, 150), gear("A2", 500, 150), gear("A3", 800, 150)], fixings=FIXINGS, units="in"
)


def show(new, old=OLD):
    return changes_show(Scene(old), Scene(new), compare(old, new))


def shift(new, name, old=OLD):
    return next(item for item in show(new, old).shifts if item.id == name)


def edited(change, old=OLD):
    doc = json.loads(write(old))
    change(doc)
    return from_document(doc)


def test_nothing_is_laid_where_nothing_differs():
    laid = show(OLD)
    assert (laid.shifts, laid.bolts, laid.told, laid.outlines, laid.ways) == ((), (), (), (), ())
    assert laid.same == {"A1", "A2", "A3"}


def test_what_is_the_same_is_dimmed_and_only_that():
    assert show(MoveGear(("A2",), 10.0, 0.0).apply(OLD)).same == {"A1", "A3"}


@pytest.mark.parametrize("by", [(40, 60), (-40, 60), (40, -60), (-40, -60), (70, 0), (0, -35), (130, 5)])
def test_the_arrow_runs_where_no_piece_covers_it(by):
    new = MoveGear(("A2",), *by).apply(OLD)
    moved = shift(new, "A2")
    inside = Scene(new).placed["A2"].polygon.buffer(-0.01)
    assert LineString(moved.arrow).intersection(inside).length == 0.0


@given(
    st.floats(-150, 150).map(lambda v: round(v, 3)),
    st.floats(-150, 150).map(lambda v: round(v, 3)),
    st.integers(0, 359),
)
@settings(max_examples=40, derandomize=True, deadline=None)
def test_an_arrow_always_joins_one_corner_of_the_card_then_and_now(dx, dy, turn):
    new = TurnGear(("A2",), float(turn)).apply(MoveGear(("A2",), dx, dy).apply(OLD))
    if new == OLD:
        return
    was, now = Scene(OLD).placed["A2"], Scene(new).placed["A2"]
    corners = [(x, y) for x in (-50.0, 50.0) for y in (-30.0, 30.0)]
    pairs = [(was.point(c), now.point(c)) for c in corners]
    arrow = shift(new, "A2").arrow
    assert any(arrow[0] == pytest.approx(a) and arrow[1] == pytest.approx(b) for a, b in pairs)


def test_what_went_back_to_the_bench_is_a_ghost_alone():
    gone = shift(ToBench(("A2",)).apply(OLD), "A2")
    assert (gone.kind, gone.now, gone.arrow, gone.tag) == ("gone", (), None, "A2  on the bench")
    assert len(gone.was) == 4


def test_what_left_the_layout_is_gone_and_what_came_is_new():
    new = edited(lambda doc: doc["gear"].__setitem__(1, gear("B1", 500, 150)))
    assert (shift(new, "A2").kind, shift(new, "A2").tag) == ("gone", "A2  gone")
    came = shift(new, "B1")
    assert (came.kind, came.tag, came.was) == ("new", "new", ())


def test_a_card_with_another_outline_leaves_its_old_one_in_chalk():
    new = edited(lambda doc: doc["cards"].__setitem__("box", card(120, 60)))
    laid = shift(new, "A1")
    assert laid.kind == "changed"
    assert laid.was != laid.now != ()


def test_a_tag_says_the_way():
    assert shift(MoveGear(("A2",), 25.4, 50.8).apply(OLD), "A2").tag == "A2  right 1, up 2 in"


def test_fixings_that_moved_came_or_went_are_told_apart():
    def change(doc):
        doc["fixings"][0]["at"] = [110, 380]
        doc["fixings"][1]["id"] = "H9"

    bolts = {bolt.id: bolt for bolt in show(edited(change)).bolts}
    assert (bolts["H1"].was, bolts["H1"].now) == ((100.0, 380.0), (110.0, 380.0))
    assert (bolts["H9"].was, bolts["H9"].tag) == (None, "H9  new")
    assert (bolts["H2"].now, bolts["H2"].tag) == (None, "H2  gone")


def test_drilled_neighbours_share_a_tag_and_far_ones_do_not():
    made = OLD
    for name in ("H1", "H2", "H5"):
        made = DrillHole(name).apply(made)
    near = edited(lambda doc: doc["fixings"][4].__setitem__("at", [900, 380]), OLD)
    for name in ("H1", "H2", "H5"):
        near = DrillHole(name).apply(near)
    assert [told.text for told in drilled_tags(near)] == ["H1, H2 drilled", "H5 drilled"]
    assert [told.text for told in drilled_tags(made)] == ["H1, H2, H5 drilled"]


def test_many_drilled_neighbours_are_counted():
    made = OLD
    for n in range(1, 6):
        made = DrillHole(f"H{n}").apply(made)
    assert [told.text for told in drilled_tags(made)] == ["5 fixings drilled"]


def test_old_edges_of_board_and_bay_are_kept_where_they_differ():
    def change(doc):
        doc["boards"][0]["outline"] = rectangle(0, 0, 1000, 380)
        doc["bay"]["wall"] = rectangle(-100, -100, 1100, 520)

    outlines = show(edited(change)).outlines
    assert [max(y for _, y in ring) for ring in outlines] == [400.0, 500.0]


def test_only_leads_that_came_or_differ_are_drawn_and_gone_ones_leave_their_way():
    power = {"id": "b", "kind": "power", "at": [0, -30], "z": 20, "towards": 270, "plug": 20}
    entries = [{"id": "BAT", "name": "battery", "at": [900, 300], "carries": ["power"], "run": 300}]
    leads = [
        {"id": "C1", "from": "BAT", "to": "A1.b", "size": "4 AWG"},
        {"id": "C2", "from": "BAT", "to": "A2.b", "size": "4 AWG"},
    ]
    old = layout(
        cards={"box": card(ports=[power])},
        gear=[gear("A1", 200, 150), gear("A2", 500, 150)],
        bay={"entries": entries},
        leads=leads,
    )
    new = edited(lambda doc: doc["leads"].pop(), old)
    assert lead_ids(new, compare(old, new)) == frozenset()
    assert len(show(new, old).ways) == 1
    assert lead_ids(old, compare(new, old)) == {"C2"}
    assert middle_of(("C2",), Scene(old), Scene(new)) is not None


def test_a_row_leads_to_where_its_thing_is_else_was():
    new = ToBench(("A2",)).apply(MoveGear(("A1",), 100.0, 0.0).apply(OLD))
    scenes = Scene(OLD), Scene(new)
    assert middle_of(("A1",), *scenes) == pytest.approx((300.0, 150.0))
    assert middle_of(("A2",), *scenes) == pytest.approx((500.0, 150.0))
    assert middle_of(("H3",), *scenes) == (300.0, 380.0)
    assert middle_of(("BD",), *scenes) == (500.0, 200.0)
    assert middle_of(("nobody",), *scenes) is None
