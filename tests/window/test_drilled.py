"""What is drilled stays where it is: no hand moves it, and every way that is tried says why in a line."""

import pytest
from PySide6.QtCore import QPointF
from tests.build import card, gear, layout
from tests.window.hands import CTRL, SHIFT

from bayboard.edits.drill_hole import DrillHole
from bayboard.edits.move_gear import MoveGear
from bayboard.model.drilled import is_drilled
from bayboard.window.made import drilled_words, why_not
from bayboard.window.menu import lines

SCREWED = card(100, 60, screws=[{"at": [x, y], "thread": "M5"} for x in (-40, 40) for y in (-20, 20)])
WHY = "A is drilled: 3 of its 4 holes are made. Say where they went in Drill day, or plan new holes."


def drilled_day(count=3, **members):
    """Return A with some of its four holes made beside B that has none."""
    made = layout(
        cards={"amp": SCREWED}, gear=[gear("A", 300, 200, "amp", **members), gear("B", 700, 200, "amp")]
    )
    for number in range(1, count + 1):
        made = DrillHole(f"A#{number}").apply(made)
    return made


@pytest.fixture
def hands(open_window):
    return open_window(drilled_day())


def stays(hands):
    """Return whether A still stands where it was, the strip saying why."""
    piece = hands.gear("A")
    return (piece.at, piece.turn) == ((300, 200), 0) and hands.line() == WHY


def test_it_cannot_be_dragged(hands):
    hands.drag_mm((300, 200), (420, 260))
    assert stays(hands)


def test_it_cannot_be_dragged_along_with_others(hands):
    hands.click_mm(700, 200)
    hands.click_mm(300, 200, SHIFT)
    hands.drag_mm((700, 200), (720, 220), CTRL)
    assert stays(hands) and hands.gear("B").at == (700, 200)


@pytest.mark.parametrize("key", ["Left", "Up", "R", "B", "Delete"])
def test_no_key_moves_it(hands, key):
    hands.click_mm(300, 200)
    hands.key(key)
    assert stays(hands)


def test_its_corner_does_not_turn_it(hands):
    from bayboard.window.draw.turning import turn_grip

    hands.click_mm(300, 200)
    piece = hands.place.scene.placed["A"]
    grip = turn_grip(hands.place.scale, [piece], hands.place.theme).felt.center()
    grip = hands.wall.mapTo(hands.window, grip)
    hands.drag(grip, grip + QPointF(0, 120))
    assert stays(hands)


def test_it_is_not_put_back_on_the_bench_by_hand(hands):
    hands.drag(hands.px(300, 200), QPointF(hands.bench.geometry().center()))
    assert stays(hands)


def test_a_typed_place_is_taken_and_the_rule_speaks(hands):
    hands.click_mm(300, 200)
    hands.type("310")
    hands.key("Return")
    assert hands.gear("A").at == (310, 200)
    assert [f.rule for f in hands.place.verdict.findings] == ["drilled"]


def test_one_that_is_not_drilled_moves_as_ever(hands):
    hands.drag_mm((700, 200), (720, 220), CTRL)
    assert hands.gear("B").at == pytest.approx((720, 220), abs=1e-6)


@pytest.mark.parametrize(
    "count, words, why",
    [
        (0, "", ""),
        (1, "drilled, 1 of 4 holes", "1 of its 4 holes is made"),
        (3, "drilled, 3 of 4 holes", "3 of its 4 holes are made"),
        (4, "drilled, 4 of 4 holes", "all its holes are made"),
    ],
)
def test_it_is_told_how_far_the_drilling_is(count, words, why):
    made = drilled_day(count)
    assert drilled_words(made, "A") == words
    assert why in why_not(made, ("B", "A"))
    assert why_not(made, ("B",)) == ""


def test_a_fixing_is_told_in_its_own_words():
    made = layout(fixings=[{"id": "H1", "at": [20, 20], "thread": "M6", "metal": [20, 20]}])
    assert why_not(made, ("H1",)) == "H1 is drilled. Say where it went in Drill day, or plan a new hole."
    assert drilled_words(made, "H1") == "drilled"


def test_the_card_says_it(hands):
    from bayboard.window.card_words import about

    said = about(hands.place.scene, hands.place.scene.placed["A"])
    assert said[0] == ("Drilled, 3 of 4 holes.", True)
    assert about(hands.place.scene, hands.place.scene.placed["B"])[0][0].startswith("Stands")


def test_a_screen_reader_says_it(hands):
    from bayboard.window.read_out import piece_name

    assert ", drilled, 3 of 4 holes" in piece_name(hands.place, "A")
    assert "drilled" not in piece_name(hands.place, "B")


# --- the two ways out, in the Findings and in the menu ---


@pytest.fixture
def astray(open_window):
    """Open a window on A, drilled and then typed 30 mm further."""
    return open_window(MoveGear(("A",), 30.0, 0.0).apply(drilled_day()))


def press_act(hands, words):
    rows = hands.window.findings.list
    spot = rows.open_spot()
    felt = dict(spot.acts)[words]
    assert felt.height() >= 40 and rows.rect().contains(felt.toRect())
    hands.click(rows.mapTo(hands.window, felt.center()))


def test_the_open_row_offers_both_ways(astray):
    spot = astray.window.findings.list.open_spot()
    assert spot.row.finding.rule == "drilled"
    assert [word for word, _ in spot.acts] == ["Put A back", "Plan new holes"]
    assert [word for word, _ in spot.links] == ["Why?"]


def test_put_back_is_one_step(astray):
    before = astray.layout
    press_act(astray, "Put A back")
    assert astray.gear("A").at == (300, 200)
    assert astray.place.verdict.findings == ()
    astray.key("Z", CTRL)
    assert astray.layout == before


def test_new_holes_are_one_step_and_it_moves_again(astray):
    before = astray.layout
    press_act(astray, "Plan new holes")
    assert astray.gear("A").at == (330, 200) and not is_drilled(astray.layout, "A")
    astray.drag_mm((330, 200), (350, 210), CTRL)
    assert astray.gear("A").at == pytest.approx((350, 210), abs=1e-6)
    astray.key("Z", CTRL)
    astray.key("Z", CTRL)
    assert astray.layout == before


def test_enter_takes_the_first_and_tab_chooses_the_other(astray):
    rows = astray.window.findings.list
    rows.setFocus()
    astray.key("Return")
    assert astray.gear("A").at == (300, 200)
    astray.key("Z", CTRL)
    rows.setFocus()
    astray.key("Tab")
    astray.key("Tab")
    astray.key("Return")
    assert not is_drilled(astray.layout, "A")


def test_a_fixing_gets_a_new_hole(open_window):
    fixing = {"id": "H1", "at": [50, 50], "thread": "M6", "drilled": [40, 50]}
    hands = open_window(layout(fixings=[fixing]))
    spot = hands.window.findings.list.open_spot()
    assert [word for word, _ in spot.acts] == ["Put H1 back", "Plan a new hole"]
    press_act(hands, "Put H1 back")
    assert hands.layout.fixings[0].at == (40, 50)


def test_what_cannot_be_put_back_any_better_offers_new_holes_alone(open_window):
    hands = open_window(DrillHole("A#4", at=(341.5, 220)).apply(drilled_day()))
    press_act(hands, "Put A back")
    spot = hands.window.findings.list.open_spot()
    assert "is back on its holes as well as it fits them" in spot.row.finding.says
    assert [word for word, _ in spot.acts] == ["Plan new holes"]
    press_act(hands, "Plan new holes")
    assert not is_drilled(hands.layout, "A")


def test_a_fixing_whose_two_holes_differ_is_put_back_but_once(open_window):
    fixing = {"id": "H1", "at": [50, 50], "thread": "M6", "drilled": [40, 50], "metal": [40, 53]}
    hands = open_window(layout(fixings=[fixing]))
    press_act(hands, "Put H1 back")
    spot = hands.window.findings.list.open_spot()
    assert (
        spot.row.finding.says == "H1 is back on its hole, 3 mm from its hole in the metal. Plan a new hole."
    )
    assert [word for word, _ in spot.acts] == ["Plan a new hole"]


def test_reprint_leads_to_print(open_window):
    from msgspec.structs import replace

    from bayboard.job.runner import InPlace
    from bayboard.mechanics.printed import printed_of
    from bayboard.window.print.stage import add_print

    made = drilled_day(0)
    moved = MoveGear(("A",), 30.0, 0.0).apply(replace(made, printed=printed_of(made, "1")))
    hands = open_window(moved)
    add_print(hands.window, InPlace())
    assert hands.window.findings.list.open_spot().row.finding.rule == "reprint"
    press_act(hands, "Go to Print")
    assert hands.window.stage == "Print"


def test_the_menu_of_a_drilled_piece_offers_nothing_that_moves_it(astray):
    astray.click_mm(330, 200)
    found = lines(astray.place)
    assert [act for act, _, _ in found] == ["tape", "chalk", "enter", "drill_day", "put_back", "new_holes"]
    assert len(found) <= 7
    astray.window.menu.chosen.emit("put_back")
    assert astray.gear("A").at == (300, 200)


# --- on the Wall ---


def test_made_holes_are_chalk_where_they_really_are(astray):
    from PySide6.QtTest import QTest
    from tests.window.draw.scenes import near

    from bayboard.model.drilled import drilled_at

    astray.app.processEvents()
    QTest.qWait(120)
    picture = astray.picture()
    for number in (1, 2, 3):
        assert near(picture, astray.px(*drilled_at(astray.layout, f"A#{number}")), astray.place.theme.chalk)


@pytest.mark.parametrize("slot", [None, {"travel": 40, "angle": 0}], ids=["round", "slot"])
def test_a_fixing_s_hole_is_chalk_where_it_really_is(slot):
    from tests.window.draw.scenes import SCALE, VIEW, near, painted

    from bayboard.rules.scene import Scene
    from bayboard.window.draw.fixings import paint_fixings
    from bayboard.window.draw.show import WallShow
    from bayboard.window.theme import LIGHT

    fixing = {"id": "H1", "at": [500, 100], "thread": "M6", "drilled": [600, 100], "slot": slot}
    scene = Scene(layout(fixings=[fixing]))
    made = painted(lambda p: paint_fixings(p, SCALE, scene, LIGHT, WallShow()), VIEW)
    places = [(600, 100)] if slot is None else [(580, 100), (600, 100), (620, 100)]
    assert all(near(made, SCALE.px(*at), LIGHT.chalk) for at in places)
    assert not near(made, SCALE.px(500, 100), LIGHT.chalk)


def test_a_hole_in_the_metal_alone_is_a_ring():
    from tests.window.draw.scenes import SCALE, VIEW, near, painted

    from bayboard.rules.scene import Scene
    from bayboard.window.draw.fixings import fixing_radius, paint_fixings
    from bayboard.window.draw.show import WallShow
    from bayboard.window.theme import LIGHT

    fixing = {"id": "H1", "at": [500, 100], "thread": "M6", "metal": [560, 100]}
    scene = Scene(layout(fixings=[fixing]))
    made = painted(lambda p: paint_fixings(p, SCALE, scene, LIGHT, WallShow()), VIEW)
    spot, r = SCALE.px(560, 100), 0.8 * fixing_radius(SCALE, scene.layout.fixings[0])
    assert near(made, spot + QPointF(0, -r), LIGHT.chalk, 60)
    assert not near(made, spot, LIGHT.chalk)
