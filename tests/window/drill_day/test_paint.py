"""What drill day looks like: states of holes, true bits, nothing cut off, every part in its place."""

import itertools

import pytest
from PySide6.QtCore import QPointF, QRectF, QSizeF
from tests.window.draw.scenes import at, count, near, painted
from tests.window.drill_day.days import board_day, book_on, drill_all

from bayboard.window import lettering
from bayboard.window.drill_day.paint_bits import paint_bits, seen_bits
from bayboard.window.drill_day.paint_board import LIT, RING, figure_tags, paint_day_board, scale_of
from bayboard.window.drill_day.paint_now import fitted
from bayboard.window.drill_day.plan import day_plan
from bayboard.window.drill_day.seen import Seen
from bayboard.window.drill_day.show import Bit
from bayboard.window.lettering import Style
from bayboard.window.theme import DARK, LIGHT

PANEL = QRectF(0, 0, 1280, 450)


@pytest.fixture(autouse=True)
def application(qapp):
    """Start Qt once; fonts need it."""
    return qapp


@pytest.fixture
def book():
    return book_on(board_day())


def shown(book):
    return Seen(book.place, book).show()


def board_picture(book, theme=LIGHT):
    show = shown(book).board
    made = painted(lambda p: paint_day_board(p, PANEL, show, theme, 1.0), PANEL)
    return show, scale_of(show, PANEL, 1.0), made


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=["light", "dark"])
def test_a_made_hole_is_a_disc_of_chalk_one_to_come_is_open(book, theme):
    book.choose(("A1#1", 1))
    book.drill()
    show, scale, made = board_picture(book, theme)
    spots = {dot.hole: scale.px(*dot.at) for dot in show.dots}
    assert near(made, spots["A1#1"], theme.chalk)
    assert not near(made, spots["A1#3"] + QPointF(2.2, 2.2), theme.chalk)


def test_the_next_hole_is_lit(book):
    show, scale, made = board_picture(book)
    next_ = next(dot for dot in show.dots if dot.chosen)
    spot = scale.px(*next_.at)
    ring = [spot + QPointF(RING * c, RING * s) for c, s in ((0.7071, 0.7071), (-0.7071, -0.7071))]
    assert all(near(made, point, LIT, 40) for point in ring)


def test_the_two_figures_stand_off_the_holes_and_each_other(book):
    for one in book.all:
        book.choose((one.hole.id, one.part))
        show = shown(book).board
        scale = scale_of(show, PANEL, 1.0)
        dots = [scale.px(*dot.at) for dot in show.dots]
        tags = [rect for rect, _ in figure_tags(PANEL, scale, show, LIGHT, 1.0, _around(dots))]
        assert len(tags) == 2
        assert not tags[0].intersects(tags[1])
        assert all(PANEL.contains(tag) for tag in tags)
        assert not any(tag.contains(spot) for tag in tags for spot in dots)


def _around(dots):
    return [QRectF(spot.x() - 8, spot.y() - 8, 16, 16) for spot in dots]


def test_figures_are_counted_from_the_board_s_lower_left_corner(book):
    book.choose(("H2", 1))
    show = shown(book)
    assert (show.board.next.left, show.board.next.up) == ("980 mm from the left", "380 up")


def test_the_tape_lies_between_the_datum_holes_while_they_are_measured(book):
    drill_all(book, 2)
    show, scale, made = board_picture(book)
    a, b = (scale.px(*end) for end in show.check)
    box = QRectF(a, b).normalized()
    assert show.next is None and not any(dot.chosen for dot in show.dots)
    assert count(made, box.adjusted(0, 0, -box.width() / 2, 0), LIT, 40) > 100


def test_a_slot_shows_both_its_holes_close_up(book):
    book.choose(("H3", 2))
    close = shown(book).close
    (ax, ay), (bx, by) = close.pair
    assert (ax, bx) == (500, 500)
    assert abs(by - ay) == pytest.approx(9.0)
    assert close.wide > abs(by - ay) + 6.6


# --- bits ---


def test_a_bit_is_as_wide_on_the_screen_as_it_is():
    bits = (Bit(6.6, "6.6", now=True),)
    rect, scale = QRectF(0, 0, 246, 454), 4.0
    made = painted(lambda p: paint_bits(p, rect, bits, LIGHT, 1.0, scale), rect)
    (_, x), half = seen_bits(bits, 218.0, scale)[0], 6.6 * scale / 2

    def is_paper(off):
        return near(made, QPointF(14.0 + x + off, 300.0), LIGHT.paper)

    assert is_paper(half + 3.5) and is_paper(-half - 3.5)
    assert not is_paper(half - 3.0) and not is_paper(3.0 - half)


def test_bits_stand_apart_on_the_ledge_and_the_one_in_use_is_always_there():
    bits = tuple(Bit(float(n), f"{n}", now=n == 9) for n in range(2, 14))
    found = seen_bits(bits, 218.0, 4.0)
    assert any(bit.now for bit, _ in found)
    ends = [(x - bit.across * 2, x + bit.across * 2) for bit, x in found]
    assert all(a[1] < b[0] for a, b in itertools.pairwise(ends))
    assert ends[0][0] >= 0 and ends[-1][1] <= 218.0


def test_a_bit_is_ticked_once_its_last_hole_is_made(book):
    drill_all(book, 6)  # the datum holes and the four screws
    assert [(bit.name, bit.done) for bit in shown(book).bits] == [("4.2", True), ("6.6", False)]


# --- where things lie ---


@pytest.mark.parametrize("size", [(1280, 800), (1600, 1000), (1920, 1080), (1180, 680)])
@pytest.mark.parametrize("warned", [False, True])
@pytest.mark.parametrize("scaled", [1.0, 1.15, 1.3])
def test_no_part_lies_on_another_or_outside(size, warned, scaled):
    plan = day_plan(QSizeF(*size), warned, scaled)
    window = QRectF(0, 0, *size)
    parts = [plan.header, plan.board, plan.bits, plan.type, plan.close, plan.press, *plan.cards]
    parts += [plan.plastic, *plan.buttons, *([plan.warning] if warned else [])]
    for i, one in enumerate(parts):
        assert window.contains(one) and one.height() >= 40, one
        assert not any(one.intersects(other) for other in parts[i + 1 :]), one
    assert plan.now.contains(plan.foot) and all(
        plan.now.contains(plan.asking(needs)) for needs in (200.0, 300.0)
    )


@pytest.mark.parametrize("words", ["right through, then tap M5", "23/64 in from the first, then saw between"])
@pytest.mark.parametrize("room", [180.0, 310.0, 500.0])
def test_words_are_made_to_fit_before_they_are_cut(words, room):
    style = fitted(words, Style(px=34.0, weight=500), room)
    assert lettering.width(words, style) <= room or style.px == 14.0


def test_panels_wear_the_theme(book):
    _, _, made = board_picture(book)
    assert at(made, QPointF(640, 8)) == LIGHT.wall.lower()


# --- words are all lettered ---


def test_no_word_on_drill_day_lacks_a_glyph(book):
    for one in book.all:
        book.choose((one.hole.id, one.part))
        show = shown(book)
        now = show.now
        said = [show.phrase, show.count, show.warning, now.under, now.what, now.more, now.caption, now.press]
        assert lettering.missing(" ".join((*said, now.press_small, show.says, now.figure))) == ""
