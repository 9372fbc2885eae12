"""What is seen and reached: the figures are the rules' own, the words say them."""

import numpy as np
import pytest
from PySide6.QtCore import Qt
from tests.build import card, gear, layout, rectangle

from bayboard.job.job import Job
from bayboard.window.section_points import eyes, points_here, sights, spoken_point, tubes
from bayboard.window.seen import best_eye, points_of, stop_of, way_in
from bayboard.window.seen_words import point_words, reach_words, sentence, sight_words
from bayboard.window.theme import LIGHT
from bayboard.window.workplace import Workplace

SEAT = {
    "id": "S",
    "x": [0, 1000],
    "up": [[200, 0], [300, 0], [300, 400], [200, 400]],
    "folded": [[300, -300], [900, -300], [900, -200], [300, -200]],
}
POINTS = [
    {"id": "gain", "kind": "dial", "at": [0, 0], "z": 50, "facing": "out", "tool": "screwdriver"},
    {"id": "f", "kind": "fuse", "at": [0, -30], "z": 20, "facing": 270, "tool": "fingers"},
    {"id": "lamp", "kind": "light", "at": [0, 30], "z": 10, "facing": 90},
]


@pytest.fixture
def place(qapp):
    """Return a workplace with A above B, 14 mm apart, the seat folded and the line through both."""
    cards = {"box": card(service=POINTS)}
    made = layout(gear=[gear("A", 300, 200), gear("B", 300, 126)], cards=cards, bay={"seats": [SEAT]})
    place = Workplace(Job(made), LIGHT)
    place.set_lever("folded")
    place.select(("A",))
    return place


def _point(place, subject):
    return next(p for p in points_of(place, subject.partition(".")[0]) if p.subject == subject)


def test_a_dial_that_looks_out_is_clear_and_told_with_its_angle(place):
    gain = _point(place, "A.gain")
    x, y, z = best_eye(place.scene, gain)
    start = np.array([300.0, 200.0, 80.5])  # half a millimetre off its own front at 30 + 50
    way = np.array([x, y, z]) - start
    angle = np.degrees(np.arccos(way[2] / np.linalg.norm(way)))
    assert gain.verdict == "clear"
    assert sight_words(place, gain) == f"clear, {angle:.0f}° off square"


def test_what_stops_a_line_is_named_where_it_stops(place):
    fuse = _point(place, "A.f")
    (_, y, _), who = stop_of(place.scene, fuse)
    assert (fuse.verdict, who) == ("blocked", "A itself")
    assert y == pytest.approx(170.0, abs=0.01)  # the lower edge of A, 200 - 30: every eye is higher
    assert sight_words(place, fuse) == "blocked by A itself"


def test_what_stays_is_named_by_its_name(qapp):
    latch = {"id": "K", "name": "latch", "outline": rectangle(-100, 260, 1100, 380), "height": 400}
    made = layout(gear=[gear("A", 300, 200)], cards={"box": card(service=POINTS)}, bay={"stays": [latch]})
    place = Workplace(Job(made), LIGHT)
    (_, y, _), who = stop_of(place.scene, _point(place, "A.lamp"))
    assert (who, y) == ("the latch", pytest.approx(260.0, abs=0.01))


@pytest.mark.parametrize(
    ("subject", "words"), [("A.gain", "gain, facing out"), ("A.f", "fuse f, facing down")]
)
def test_a_point_is_called_by_its_id_and_where_it_looks(place, subject, words):
    assert point_words(_point(place, subject)) == words


def test_where_a_point_looks_turns_with_the_card(qapp):
    made = layout(gear=[gear("A", 300, 200, turn=90)], cards={"box": card(service=POINTS)})
    assert [p.facing for p in points_of(Workplace(Job(made), LIGHT), "A")] == ["out", "right", "left"]


def test_the_way_in_is_the_rules_own_measure(place):
    said = {f.subjects[0]: f for f in place.verdict.findings if f.rule == "reach"}
    for point in points_of(place, "A"):
        if point.hand is None:
            continue
        found = way_in(place.scene, point)
        assert min(found.width, point.hand.need) == pytest.approx(point.hand.width)
        if point.subject in said:
            assert found.width == pytest.approx(said[point.subject].measure)


def test_reach_is_said_by_who_reaches(place):
    gain, fuse, lamp = points_of(place, "A")
    assert reach_words(place, gain).startswith("driver: ")
    assert reach_words(place, fuse).startswith("fingers: ")
    assert reach_words(place, lamp) == "only looked at"


def test_a_sentence_has_the_findings_numbers(place):
    fuse = _point(place, "A.f")
    number, finding = fuse.sight
    assert place.verdict.number(finding) == number
    assert sentence(place, fuse).startswith("A fuse f, facing down, blocked by A itself, fingers: ")
    assert f", should {number}" in sentence(place, fuse)


def test_the_selected_piece_at_the_line_is_told_of_alone(place):
    assert {p.piece.id for p in points_here(place)} == {"A"}
    place.select(())
    assert {p.piece.id for p in points_here(place)} == {"A", "B"}
    place.set_chalk(700.0)
    assert points_here(place) == ()
    place.set_chalk(300.0)
    place.set_lever("up")
    assert points_here(place) == ()


def test_the_way_in_that_is_shown_is_of_the_chosen_point_else_of_the_worst(place):
    points = points_here(place)
    worst = min((p.reach[0], p.subject) for p in points if p.reach is not None)[1]
    assert spoken_point(place, points).subject == worst
    place.speak_of_point("A.gain", 300.0)
    assert spoken_point(place, points).subject == "A.gain"
    (tube,) = tubes(place, spoken_point(place, points))
    assert tube.start == pytest.approx((80.0, 200.0))
    assert tube.need == 12.0
    assert np.hypot(tube.end[0] - tube.start[0], tube.end[1] - tube.start[1]) <= 150.0 + 1e-6


def test_points_of_a_kind_that_are_seen_alike_share_a_tag(qapp):
    dials = [POINTS[0] | {"id": f"dial-{i}", "at": [10 * i, 0]} for i in range(3)]
    made = layout(gear=[gear("A", 300, 200)], cards={"box": card(service=dials)}, bay={"seats": [SEAT]})
    place = Workplace(Job(made), LIGHT)
    place.set_lever("folded")
    place.set_chalk(300.0)
    lines = sights(place, points_here(place), None)
    assert len(lines) == 3
    assert [bool(line.text) for line in lines] == [True, False, False]
    assert lines[0].text.startswith("3 dials: clear, ")


def test_the_eyes_are_told_across_a_room(place):
    box = eyes(place)
    # the wall's top is at 500: from 100 below to 500 above it, 500 to 900 out
    assert (box.low, box.high) == ((500.0, 400.0), (900.0, 1000.0))
    assert box.text == "eyes: 500 to 900 mm out, from 500 mm up"  # the tape begins at the wall's foot, -100


def test_over_a_floor_the_eyes_are_over_the_floor(qapp):
    made = layout(bay={"lean": 90.0})
    assert eyes(Workplace(Job(made), LIGHT)).text == "eyes: 400 to 1200 mm over the floor"


def test_keys_and_mouse_choose_a_point_and_its_card_is_shown(open_window, place):
    hands = open_window(place.layout)
    hands.click_mm(300, 200)
    hands.key("F")
    hands.key("W")
    rows, pull = hands.window.pull.seen.rows, hands.window.pull
    assert rows.isVisible()
    assert not hands.bench.isVisible()
    hands.click(rows.mapTo(hands.window, rows.part_rect(1).center()))
    assert hands.place.service == "A.f"
    assert pull.point.isVisible()
    assert not hands.card.isVisible()
    hands.key(Qt.Key.Key_Up)
    assert hands.place.service == "A.gain"
    assert hands.place.chalk_x == pytest.approx(300.0)
    assert [said.split(",")[0] for said in rows.parts_said()] == ["A gain", "A fuse f", "A lamp"]
    hands.key("Escape")
    assert hands.wall.hasFocus()
    assert hands.card.isVisible()
    assert not pull.point.isVisible()


def test_a_figure_typed_in_the_list_goes_to_the_card(open_window, place):
    hands = open_window(place.layout)
    hands.click_mm(300, 200)
    hands.key("F")
    hands.key("W")
    rows = hands.window.pull.seen.rows
    hands.click(rows.mapTo(hands.window, rows.part_rect(0).center()))
    hands.type("4")
    assert hands.card.across.hasFocus()
    assert hands.card.across.text() == "4"


def test_a_press_on_a_point_in_the_section_speaks_of_it(open_window, place):
    hands = open_window(place.layout)
    hands.click_mm(300, 200)
    hands.key("F")
    section = hands.window.section
    hands.click(section.mapTo(hands.window, section.layer_scale().px(-80.5, 200.0)))
    assert hands.place.service == "A.gain"
    hands.click_mm(300, 126)
    assert hands.place.service is None
