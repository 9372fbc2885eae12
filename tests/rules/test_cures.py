"""Cures: what is offered does what it says, and nothing nearer does."""

import pickle
import random
from copy import copy

import numpy as np
import pytest
from tests.build import card, gear, layout, rectangle
from tests.plain.random_layouts import random_document
from tests.rules.nudges_by_trying import levels, nudges

from bayboard.edits.move_gear import MoveGear
from bayboard.model.read import from_document
from bayboard.rules import RULES, nudging
from bayboard.rules.check import Checker, check
from bayboard.rules.cures import Curer, cures_task, with_nudges
from bayboard.rules.levels import named
from bayboard.rules.nudge_grid import moves
from bayboard.rules.places import places_of

MEASURED = [rule for rule in RULES if hasattr(rule, "at_places")]


def _found(layout_, rule):
    return [finding for finding in check(layout_).findings if finding.rule == rule]


def _cure(layout_, rule):
    (finding,) = _found(layout_, rule)
    return Curer(layout_).cures(finding)


def _labels(layout_, rule):
    return [cure.edit.label(layout_) for cure in _cure(layout_, rule)]


def test_the_grid_is_eight_ways_by_half_millimetres_and_sixty_fourths_up_to_80_mm():
    for units, step, straight, aslant in (("mm", 0.5, 160, 113), ("in", 25.4 / 64, 201, 142)):
        by = moves(units)
        assert len(by) == 4 * straight + 4 * aslant
        assert np.allclose(by, np.round(by / step) * step, atol=1e-9)
        assert np.all((by == 0).any(axis=1) | (np.abs(by[:, 0]) == np.abs(by[:, 1])))
        length = np.hypot(*by.T)
        assert np.all(np.diff(length) > -1e-9)
        assert length.max() <= 80.0 < length.max() + step


def test_moves_of_one_length_go_right_left_up_down():
    assert moves("mm")[:8].tolist() == [
        *([0.5, 0], [-0.5, 0], [0, 0.5], [0, -0.5]),
        *([0.5, 0.5], [-0.5, 0.5], [-0.5, -0.5], [0.5, -0.5]),
    ]


def test_too_close_is_cured_by_the_first_piece_going_the_short_way():
    # 10 mm apart, 15 wanted: 5 mm; A comes first in the document
    bay = layout(gear=[gear("A", 200, 200), gear("B", 310, 200)])
    assert _labels(bay, "gap") == ["Move A left 5 mm"]


def test_inches_go_by_sixty_fourths():
    # 4.6 mm lack; 12/64 in = 4.7625 mm
    bay = layout(units="in", gear=[gear("A", 200, 200), gear("B", 310.4, 200)])
    (cure,) = _cure(bay, "gap")
    assert cure.nudge.by == (-4.7625, 0)
    assert cure.edit.label(bay) == "Move A left 3/16 in"


def test_what_is_taped_stays_and_the_other_moves():
    bay = layout(gear=[gear("A", 200, 200, taped=True), gear("B", 310, 200)])
    assert _labels(bay, "gap") == ["Move B right 5 mm"]


def test_a_move_that_brings_a_new_must_is_none():
    # A cannot go left past the stay, nor B right: up or down by far, or nothing
    stay = {"id": "S", "name": "Post", "outline": rectangle(140, 0, 149, 400), "height": 90}
    bay = layout(bay={"stays": [stay]}, gear=[gear("A", 200, 200), gear("B", 310, 200)])
    assert _labels(bay, "gap") == ["Move B right 5 mm"]


def test_what_was_drilled_does_not_move():
    made = {"at": [200, 200], "turn": 0}
    bay = layout(gear=[gear("A", 200, 200, drilled=made), gear("B", 310, 200)])
    assert _labels(bay, "gap") == ["Move B right 5 mm"]


def test_where_no_move_reaches_a_quarter_turn_is_offered():
    # 300 long across a board 200 high, between two fixed neighbours it hangs out by 50 each side
    bay = layout(
        board={"outline": rectangle(0, 0, 1000, 200)},
        cards={"long": card(60, 300)},
        gear=[gear("A", 500, 100, "long")],
    )
    assert _labels(bay, "off-board")[0] == "Turn A a quarter left"


def test_a_swap_is_offered_where_each_fits_the_other_place():
    bay = layout(
        boards=[
            {"id": "BD", "outline": rectangle(0, 0, 130, 100), "thickness": 10, "standoff": 20},
            {"id": "B2", "outline": rectangle(200, 0, 500, 200), "thickness": 10, "standoff": 20},
        ],
        cards={"square": card(150, 150), "small": card(60, 60)},
        gear=[gear("A", 65, 50, "square"), gear("B", 350, 100, "small", board="B2")],
    )
    assert "Swap A and B" in _labels(bay, "off-board")


def test_a_board_too_near_a_stay_is_cured_by_the_least_standoff_in_whole_tape_steps():
    stay = {"id": "S", "name": "Latch", "outline": rectangle(50, 50, 90, 90), "height": 24.3}
    bay = layout(bay={"stays": [stay]})
    assert _labels(bay, "on-stay") == ["Standoff 25 mm"]


def test_a_seat_that_digs_in_everywhere_is_cured_by_a_lower_standoff():
    # seat face at 85 everywhere, front of A at 30 + 50 = 80: 5 mm of room, 10 wanted, 5 lack
    up = [[85, -500], [85, 900], [300, 900], [300, -500]]
    seat = {"id": "T", "x": [-500, 1500], "up": up, "folded": None}
    bay = layout(bay={"seats": [seat]}, gear=[gear("A", 500, 200)])
    assert _labels(bay, "seat-depth")[0] == "Standoff 15 mm"


def test_a_must_that_nothing_takes_away_is_eased():
    # the seat is 15 mm into A everywhere: at a standoff of 5 it just touches; 10 off would be -5
    up = [[65, -500], [65, 900], [300, 900], [300, -500]]
    seat = {"id": "T", "x": [-500, 1500], "up": up, "folded": None}
    bay = layout(bay={"seats": [seat]}, cards={"box": card(100, 60, 50)}, gear=[gear("A", 500, 200)])
    (cure,) = _cure(bay, "seat-depth")
    assert (cure.edit.label(bay), cure.gone, cure.nudge) == ("Standoff 5 mm", False, None)


def test_what_left_its_holes_is_put_back():
    made = {"at": [300, 200], "turn": 0}
    screwed = card(screws=[{"at": [40, 20], "thread": "M5"}])
    bay = layout(cards={"box": screwed}, gear=[gear("A", 500, 200, drilled=made)])
    assert _labels(bay, "drilled") == ["Put A back where it was drilled"]


def test_the_finding_of_a_board_alone_has_no_nudge():
    bay = layout(board={"outline": rectangle(-200, 0, 800, 400)}, gear=[gear("A", 300, 200)])
    assert _cure(bay, "off-wall") == ()


@pytest.mark.parametrize("seed", [12, 18])
def test_the_nudge_is_what_trying_every_place_finds(seed, monkeypatch):
    near = moves("mm")[: 8 * 2]
    monkeypatch.setattr(nudging, "moves", lambda units: near)
    bay = from_document(random_document(seed))
    curer = Curer(bay)
    ours = {named(f): (n.gear, n.by) for f in check(bay).findings if (n := curer.nudge(f))}
    start = Checker(bay)
    assert ours == nudges(bay, near, lambda after: _step(start, after))


def _step(checker, after):
    return copy(checker).move(after)


@pytest.mark.parametrize("seed", [0, 2, 6, 7])
def test_a_rule_says_the_same_of_many_places_as_of_one(seed):
    """Every finding that stands now, and every must there, at two places of each stand-in."""
    bay, dice = from_document(random_document(seed)), random.Random(seed)
    scene, now = Checker(bay).scene, levels(bay)
    for placed in dice.sample(list(scene.placed.values()), min(len(scene.placed), 3)):
        by = [(dice.uniform(-30, 30), dice.uniform(-30, 30)) for _ in range(2)]
        at = np.round(np.array(by) + placed.at, 6)
        places = places_of(placed, at)
        there = [levels(MoveGear((placed.id,), *one).apply(bay)) for one in by]
        for rule in MEASURED:
            musts = {
                (rule.RULE, key): said.tolist() for key, said in rule.at_places(scene, places, None).items()
            }
            for n, fresh in enumerate(there):
                ours = {name for name, said in musts.items() if said[n] == 3}
                new = {name for name, level in fresh.items() if name[0] == rule.RULE and level == 3}
                assert ours <= new
                led = {lead.id for lead in bay.leads}
                assert {name for name in new - ours if now.get(name) != 3 and name[1][0] not in led} == set()


@pytest.mark.parametrize("seed", [0, 2, 6, 7])
def test_a_rule_says_the_same_of_one_finding_at_many_places_as_at_one(seed):
    bay, dice = from_document(random_document(seed)), random.Random(seed)
    checker = Checker(bay)
    nudger = Curer(bay, checker)._nudger
    by = [(dice.uniform(-30, 30), dice.uniform(-30, 30)) for _ in range(2)]
    leads = {lead.id for lead in bay.leads}
    for finding in checker.now.findings:
        rule = next(rule for rule in RULES if finding.rule == rule.RULE)
        movers = nudger.movers(named(finding))
        if rule not in MEASURED or not movers or not leads.isdisjoint(finding.subjects):
            continue
        placed = dice.choice(movers)
        places = places_of(placed, np.round(np.array(by) + placed.at, 6))
        said = rule.at_places(checker.scene, places, finding.subjects)
        for n, one in enumerate(by):
            fresh = levels(MoveGear((placed.id,), *one).apply(bay), _step_of(checker))
            ours = int(said[finding.subjects][n]) if finding.subjects in said else 0
            assert ours == fresh.get(named(finding), 0), (finding.says, placed.id, one)


def _step_of(checker):
    return lambda after: _step(checker, after)


def test_every_rule_that_where_gear_stands_can_change_measures_many_places():
    without = {rule.RULE for rule in RULES} - {rule.RULE for rule in MEASURED}
    assert without == {
        *("off-wall", "on-landing", "on-vent", "way-in", "heat-rise"),  # where gear stands changes nothing
        *("insert-landing", "no-drill"),  # of fixings
        *("beside", "crossing"),  # hang on routes: looked at one by one
    }


def test_a_lead_with_given_bends_is_met_at_the_places_where_the_check_meets_it():
    # lead C runs along y = 200 over A; with its top at 198 A cannot give way up, so B goes down
    entry = {"name": "Radio", "carries": ["remote"], "run": 1}
    ends = [entry | {"id": "E", "at": [0, 10]}, entry | {"id": "F", "at": [999, 10]}]
    lead = {"id": "C", "from": "E", "to": "F", "size": None, "od": 6, "via": [[0, 200], [999, 200]]}
    bay = layout(bay={"entries": ends}, leads=[lead], gear=[gear("A", 500, 190)])
    assert _labels(bay, "lead-path") == ["Move A down 20 mm"]
    bay = layout(bay={"entries": ends}, leads=[lead], gear=[gear("A", 500, 168), gear("B", 500, 98)])
    assert _labels(bay, "gap") == ["Move B down 5 mm"]


def test_the_checker_that_is_lent_is_not_moved():
    bay = layout(gear=[gear("A", 200, 200), gear("B", 310, 200)])
    checker = Checker(bay)
    scene, now = checker.scene, checker.now
    Curer(bay, checker).cures(now.findings[0])
    assert checker.scene is scene
    assert checker.now is now


def test_a_verdict_gets_the_nudge_of_each_finding():
    bay = layout(gear=[gear("A", 200, 200), gear("B", 310, 200), gear("C", 20, 300)])
    verdict = with_nudges(check(bay), bay)
    assert {(f.rule, f.nudge.gear, f.nudge.by) for f in verdict.findings if f.nudge} >= {
        ("gap", "A", (-5.0, 0.0)),
        ("off-board", "C", (30.0, 0.0)),
    }


def test_the_task_follows_one_layout_after_another():
    from bayboard.job.runner import InPlace

    first = layout(gear=[gear("A", 200, 200), gear("B", 310, 200)])
    second = MoveGear(("B",), 2, 0).apply(first)
    for bay, label in ((first, "Move A left 5 mm"), (second, "Move A left 3 mm")):
        told = []
        payload = pickle.loads(pickle.dumps((bay, [("gap", ("A", "B")), ("gap", ("A", "C"))])))
        InPlace().start(cures_task, payload, told.append)
        assert {name: [c.edit.label(bay) for c in cures] for name, cures in told[0].items()} == {
            ("gap", ("A", "B")): [label]
        }
        assert pickle.loads(pickle.dumps(told[0])) == told[0]


def test_a_search_can_be_called_off_between_two_blocks_of_places():
    from bayboard.job.runner import InPlace

    bay = layout(gear=[gear("A", 200, 200), gear("B", 310, 200)])
    asked = iter([False, False, True])
    told = []
    ticket = InPlace(lambda: next(asked)).start(cures_task, (bay, [("gap", ("A", "B"))]), told.append)
    assert (ticket.stopped, told) == (True, [])
