"""What the painters of Kept put down: chalk under matter, tags clear of each other, cards on their line."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QImage, QPainter, QPixmap
from tests.build import gear, layout

from bayboard.edits.move_gear import MoveGear
from bayboard.rules.scene import Scene
from bayboard.window import lettering
from bayboard.window.draw.change_tags import Wanted, placed_tags, tie
from bayboard.window.draw.changes import (
    ChangesShow,
    Shift,
    ghost_spot,
    paint_arrow,
    paint_dimmed,
    paint_dots,
    paint_old,
)
from bayboard.window.draw.gear import paint_gear
from bayboard.window.draw.job_card import ACT, HIGH, WIDE, JobCard, note_lines, paint_card, picture_rect
from bayboard.window.draw.leaders import meets
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.then_section import cut_at, side_boxes, side_tags
from bayboard.window.lettering import HELPER
from bayboard.window.theme import DARK, LIGHT

VIEW = QRectF(0.0, 0.0, 900.0, 560.0)
SCALE = Scale(0.6, 90.0, 420.0)


def painted(paint, fill="#1F2123"):
    image = QImage(900, 560, QImage.Format.Format_ARGB32_Premultiplied)
    image.fill(QColor(fill))
    with QPainter(image) as p:
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        paint(p)
    return image


def near(image, x, y, token, off=40):
    a, b = image.pixelColor(round(x), round(y)), QColor(token)
    return max(abs(a.red() - b.red()), abs(a.green() - b.green()), abs(a.blue() - b.blue())) <= off


# --- tags ---

boxes = st.builds(
    QRectF,
    st.floats(0, 800, width=16),
    st.floats(50, 480, width=16),
    st.floats(20, 180, width=16),
    st.floats(20, 120, width=16),
)
wanted = st.builds(
    Wanted, st.sampled_from(["A2  right 1 3/4, up 4 1/8 in", "new", "H6, H7 drilled"]), boxes, st.just(False)
)


@given(st.lists(wanted, max_size=9), st.lists(boxes, max_size=5), st.lists(boxes, max_size=8))
@settings(max_examples=60, derandomize=True, deadline=None)
def test_no_tag_covers_another_a_number_or_the_edge(wants, hard, soft):
    tags = [tag for tag in placed_tags(wants, VIEW, hard, soft, LIGHT) if tag is not None]
    for i, tag in enumerate(tags):
        assert VIEW.contains(tag.rect)
        assert not any(tag.rect.intersects(other.rect) for other in tags[i + 1 :])
        assert not any(tag.rect.intersects(number) for number in hard)
        for number in hard:
            box = (number.left(), number.top(), number.right(), number.bottom())
            assert tag.tie is None or not meets(tag.tie, box)


def test_a_loud_tag_stands_even_where_nothing_is_free():
    about = QRectF(400.0, 200.0, 60.0, 40.0)
    everywhere = [VIEW]
    quiet, loud = (
        placed_tags([Wanted("new", about, w)], VIEW, everywhere, [], LIGHT)[0] for w in (False, True)
    )
    assert quiet is None
    assert loud is not None and VIEW.contains(loud.rect)


def test_the_loud_choose_first_whatever_their_order():
    about = QRectF(400.0, 200.0, 60.0, 40.0)
    alone = placed_tags([Wanted("new", about)], VIEW, [], [], LIGHT)[0]
    pair = placed_tags([Wanted("new", about), Wanted("new", about, loud=True)], VIEW, [], [], LIGHT)
    assert pair[1].rect == alone.rect != pair[0].rect


def test_a_tag_keeps_off_stand_ins_where_there_is_room_beside_them():
    about = QRectF(400.0, 200.0, 60.0, 40.0)
    above = QRectF(300.0, 100.0, 260.0, 95.0)
    tag = placed_tags([Wanted("A2  right 1 in", about)], VIEW, [], [above], LIGHT)[0]
    assert not tag.rect.intersects(above)


def test_a_tie_is_upright_over_its_thing_and_none_where_they_touch():
    about = QRectF(100.0, 100.0, 80.0, 40.0)
    (x0, y0), (x1, y1) = tie(QRectF(90.0, 40.0, 100.0, 24.0), about)
    assert x0 == x1 and (y0, y1) == (64.0, 100.0)
    assert tie(QRectF(110.0, 110.0, 40.0, 20.0), about) is None


# --- chalk and matter ---

MOVED = Shift("A1", "moved", ((100, 100), (200, 100), (200, 160), (100, 160)), ((300, 100), (400, 100)), None)


def test_a_ghost_is_dashed_in_chalk_and_dusted_inside(qapp):
    image = painted(lambda p: paint_old(p, SCALE, ChangesShow(shifts=(MOVED,)), LIGHT))
    box = SCALE.box((100, 100, 200, 160))
    edge = [near(image, x, box.top(), LIGHT.chalk, 70) for x in range(int(box.left()), int(box.right()))]
    assert 0.4 < sum(edge) / len(edge) < 0.8
    inside = image.pixelColor(box.center().toPoint())
    assert QColor(LIGHT.board).lightness() < inside.lightness() < QColor(LIGHT.board).lightness() + 40


def test_what_is_the_same_is_darker_than_what_changed_but_still_card(qapp):
    piece = Scene(layout(gear=[gear("A1", 500, 200)])).placed["A1"]
    spot = SCALE.px(460, 222)
    plain = painted(lambda p: paint_gear(p, SCALE, piece, LIGHT)).pixelColor(spot.toPoint())

    def dim(p):
        paint_gear(p, SCALE, piece, LIGHT)
        paint_dimmed(p, SCALE, piece, LIGHT)

    dimmed = painted(dim).pixelColor(spot.toPoint())
    assert QColor(LIGHT.board).lightness() + 40 < dimmed.lightness() < plain.lightness() - 30


def test_an_arrow_starts_in_an_open_ring_and_a_short_one_is_left_off(qapp):
    a, b = QPointF(200.0, 200.0), QPointF(300.0, 120.0)
    image = painted(lambda p: paint_arrow(p, a, b, LIGHT))
    assert near(image, 200, 200, LIGHT.board)
    assert near(image, 204, 200, LIGHT.chalk)
    assert near(image, 250, 160, LIGHT.chalk)
    blank = painted(lambda p: paint_arrow(p, a, a + QPointF(8.0, 0.0), LIGHT))
    assert blank == painted(lambda p: None)


def test_dots_stand_round_what_is_new(qapp):
    ring = ((300.0, 100.0), (400.0, 100.0), (400.0, 160.0), (300.0, 160.0))
    image = painted(lambda p: paint_dots(p, SCALE, ring, DARK))
    box = SCALE.box((300, 100, 400, 160))
    above = [near(image, x, box.top() - 6, DARK.chalk, 90) for x in range(int(box.left()), int(box.right()))]
    assert 3 < sum(1 for i in range(1, len(above)) if above[i] and not above[i - 1]) < 20
    assert not near(image, box.center().x(), box.center().y(), DARK.chalk)


def test_a_ghosts_number_finds_the_part_that_nothing_covers(qapp):
    box = QRectF(100.0, 100.0, 200.0, 120.0)
    covered = QRectF(100.0, 100.0, 200.0, 80.0)
    spot = ghost_spot(box, "A2", LIGHT, [covered])
    assert box.contains(spot) and not spot.intersects(covered)
    assert ghost_spot(box, "A2", LIGHT, [box]) is None
    assert ghost_spot(QRectF(0.0, 0.0, 10.0, 10.0), "A2", LIGHT, []) is None
    assert ghost_spot(box, "A2", LIGHT, []).center() == box.center()


# --- cards ---


@pytest.mark.parametrize("theme", [LIGHT, DARK, LIGHT.sized(1.3)])
def test_a_card_shows_its_picture_and_is_ringed_when_chosen(qapp, theme):
    picture = QPixmap(240, 96)
    picture.fill(QColor("#A03020"))
    rect = QRectF(100.0, 100.0, WIDE * theme.size, HIGH * theme.size)
    card = JobCard("rev 4", "4 Nov", "shown to owner", "printed")
    image = painted(lambda p: paint_card(p, rect, card, picture, theme, chosen=True), theme.shelf)
    middle = picture_rect(rect, theme).center()
    assert near(image, middle.x(), middle.y(), "#A03020")
    assert near(image, rect.left() - 3.0, rect.center().y(), theme.blue)
    bare = painted(lambda p: paint_card(p, rect, card, None, theme), theme.shelf)
    assert not near(bare, rect.left() - 3.0, rect.center().y(), theme.blue)


def test_the_drafts_last_line_is_blue(qapp):
    rect = QRectF(100.0, 100.0, WIDE, HIGH)

    def blues(draft):
        card = JobCard("draft", "now", foot="not kept yet", draft=draft)
        image = painted(lambda p: paint_card(p, rect, card, None, LIGHT), LIGHT.shelf)
        return sum(
            near(image, x, y, ACT, 30)
            for x in range(105, 220)
            for y in range(int(rect.bottom()) - 22, int(rect.bottom()))
        )

    assert blues(True) > 20 > blues(False)


NOTES = [
    ("", 2, 0),
    ("wired", 2, 1),
    ("shown to owner and to his brother who knows it all", 2, 2),
    ("one\ntwo", 2, 1),
    ("a" * 300, 1, 1),
]


@pytest.mark.parametrize(("note", "most", "count"), NOTES)
def test_a_note_keeps_to_its_lines_and_room(qapp, note, most, count):
    lines = note_lines(note, HELPER, 106.0, most)
    assert len(lines) == count
    assert all(lettering.width(line, HELPER) <= 106.0 for line in lines)


def test_a_note_that_is_cut_short_says_so(qapp):
    assert note_lines("shown to owner and to his brother who knows it all", HELPER, 106.0, 2)[-1].endswith(
        "…"
    )


# --- the Section ---


def test_the_cut_takes_what_the_chalk_line_passes_through():
    scene = Scene(layout(gear=[gear("A1", 200, 150), gear("A2", 500, 150)]))
    assert [piece.id for piece in cut_at(scene, 500.0)] == ["A2"]
    assert cut_at(scene, 350.0) == ()


def test_then_and_now_are_told_beside_their_boxes_and_not_over_each_other(qapp):
    old = Scene(layout(gear=[gear("A1", 500, 150)]))
    new = Scene(MoveGear(("A1",), 0.0, 30.0).apply(old.layout))
    scale = SCALE.beside(700.0)
    told = [
        (word, side_boxes(scene.placed["A1"], scale, 500.0)[0])
        for word, scene in (("now", new), ("then", old))
    ]
    tags = side_tags(told, LIGHT, VIEW, [box for _, box in told])
    assert [word for word, _, _ in tags] == ["now", "then"]
    assert not tags[0][1].intersects(tags[1][1])
    assert all(tag.right() < box.left() for _, tag, box in tags)


def test_a_piece_of_unknown_height_still_has_a_box():
    from tests.build import card

    scene = Scene(layout(cards={"box": card(100, 60, None)}, gear=[gear("A1", 500, 150)]))
    assert side_boxes(scene.placed["A1"], SCALE.beside(700.0), 500.0)[0].width() > 4.0
