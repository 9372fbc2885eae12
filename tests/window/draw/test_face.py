"""A stand-in's face: the number is never left off, no two words lie on each other."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec import convert
from PySide6.QtCore import QRectF
from tests.build import card
from tests.window.draw.scenes import AMP, port

from bayboard.model.layout import Card
from bayboard.window import lettering
from bayboard.window.draw.face import face

FEW = settings(derandomize=True, max_examples=40, deadline=None)


def made_card(**members) -> Card:
    return convert(AMP | members, Card)


def boxes(made) -> list[QRectF]:
    """The letters of each word: capitals over the baseline."""
    found = []
    for word in made.words:
        line = lettering.line(word.text, word.style)
        found.append(QRectF(word.x - line.width / 2, word.y - line.rise, line.width, line.rise))
    return found


@FEW
@given(st.floats(0.1, 6), st.sampled_from([0, 90, 180, 270, 30, 211.5]), st.sampled_from([1.0, 1.3, 1.5]))
def test_the_number_is_always_there_and_no_two_words_overlap(zoom, turn, size):
    made = face(made_card(), "A1", turn, zoom, size)
    assert made.words[0].text == "A1"
    spots = boxes(made)
    for i, one in enumerate(spots):
        assert not any(one.intersects(other) for other in spots[:i])


@FEW
@given(st.floats(0.4, 4), st.sampled_from([0, 90, 180, 270]))
def test_every_word_but_the_number_lies_on_the_card(zoom, turn):
    made = face(made_card(), "A1", turn, zoom)
    assert all(made.box.adjusted(-1, -1, 1, 1).contains(spot) for spot in boxes(made)[1:])


@FEW
@given(st.integers(10, 60), st.integers(10, 60), st.text("ABWM0123456789", min_size=1, max_size=24))
def test_a_long_number_shrinks_rather_than_leave_the_card(wide, high, name):
    made = face(convert(card(wide, high, 10), Card), name, 0, 1.0)
    number = made.words[0]
    assert number.text == name
    assert lettering.width(name, number.style) <= wide or number.style.px <= 8


def test_a_name_that_does_not_fit_is_left_off():
    assert "Fourfold" in {w.text for w in face(made_card(), "A1", 0, 1.0).words}
    assert "N" * 60 not in {w.text for w in face(made_card(name="N" * 60), "A1", 0, 1.0).words}
    assert [w.text for w in face(convert(card(40, 20, 10, name="Plain box"), Card), "A1", 0, 1.0).words] == [
        "A1"
    ]


@pytest.mark.parametrize("turn", [0, 90, 180, 270, 45])
def test_moving_needs_no_new_face_but_turning_does(turn):
    one = face(made_card(), "A1", turn, 1.0)
    assert face(made_card(), "A1", turn, 1.0) is one
    assert face(made_card(), "A1", turn + 1, 1.0) is not one


@pytest.mark.parametrize(("turn", "below"), [(0, True), (180, False)])
def test_ports_move_with_the_card_and_their_words_stay_upright(turn, below):
    made = face(made_card(), "A1", turn, 1.0)
    number = made.words[0]
    ground = next(w for w in made.words if w.text == "ground")
    assert (ground.y > number.y) == below
    assert ground.x * (1 if turn == 0 else -1) < 0


def test_the_clipped_corner_is_the_cards_upper_left_and_turns_with_it():
    assert face(made_card(), "A1", 0, 1.0).tip == pytest.approx((-100, -60))
    assert face(made_card(), "A1", 90, 1.0).tip == pytest.approx((-60, 100))
    assert face(made_card(), "A1", 180, 1.0).tip == pytest.approx((100, 60))


def test_a_mark_in_the_corner_keeps_off_the_number_even_on_a_small_card():
    made = face(convert(card(60, 40, 10), Card), "B1", 0, 1.0)
    for x, y in (made.corner, made.other):
        assert not QRectF(x - 13, y - 13, 26, 26).intersects(boxes(made)[0])


def test_inputs_point_into_the_card_and_outputs_out_of_it():
    def tip(kind: str) -> float:
        only = made_card(ports=[port("p", kind, 0, -60, 270)])
        heads = face(only, "A1", 0, 1.0).heads
        ys = [heads.elementAt(i).y for i in range(heads.elementCount())]
        return max(ys, key=ys.count)  # the tip closes the head, so it comes twice

    assert tip("signal-out") == pytest.approx(60)
    assert tip("power") < 50


def test_a_fuse_block_is_fed_by_its_first_stud_and_feeds_by_the_others():
    block = made_card(
        kind="fuse block", ports=[port("in", "power", 0, -60, 270), port("o1", "power", 60, -60, 270)]
    )
    heads = face(block, "F1", 0, 1.0).heads
    points = [(heads.elementAt(i).x, heads.elementAt(i).y) for i in range(heads.elementCount())]
    assert max(y for x, y in points if x < 30) < 58
    assert max(y for x, y in points if x > 30) == pytest.approx(60)


def test_ports_of_one_kind_side_by_side_share_one_word():
    inputs = [port(f"i{n}", "signal-in", n * 30 - 45, -60, 270) for n in range(4)]
    assert [w.text for w in face(made_card(ports=inputs), "A1", 0, 1.0).words if "signal" in w.text] == [
        "signal 1–4"
    ]


def test_a_processors_inputs_and_outputs_say_in_and_out():
    both = [port("i", "signal-in", -40, 60, 90), port("o", "signal-out", 40, -60, 270)]
    assert {"in", "out"} <= {w.text for w in face(made_card(ports=both), "P1", 0, 1.0).words}


@pytest.mark.parametrize("kind", ["dial", "fuse", "cover", "plug", "light"])
def test_each_service_point_has_its_own_sign(kind):
    bare = made_card(service=[], ports=[], screws=[])
    point = {"id": "x", "kind": kind, "at": [60, 30], "z": 40, "facing": "out"}
    one = made_card(service=[point], ports=[], screws=[])
    signed, plain = face(one, "A1", 0, 1.0).pencil, face(bare, "A1", 0, 1.0).pencil
    assert plain.isEmpty()
    assert signed.boundingRect().center().x() == pytest.approx(60, abs=3)
    assert signed.boundingRect().center().y() == pytest.approx(-30, abs=4)
