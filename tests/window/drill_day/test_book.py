"""What is made and what comes next: each press one edit, a slot in two, the datum holes measured first."""

from math import dist

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.window.drill_day.days import board_day, book_on, drill_all, two_boards

from bayboard.mechanics.drill_day import drillings
from bayboard.model.drilled import drilled_at


@pytest.fixture
def book(qapp):
    return book_on(board_day())


def hole(book, name):
    return next(f for f in book.place.layout.fixings if f.id == name)


def test_the_datum_holes_come_first_and_are_measured_before_anything_else(book):
    drill_all(book, 2)
    check = book.check()
    assert book.now() is None
    assert set(check.holes) == {one.hole.id for one in book.all if one.datum} == {"H1", "H2"}
    assert check.apart == pytest.approx(dist((20, 20), (980, 380)))
    book.confirm()
    assert book.check() is None and book.now() is not None


def test_everything_is_drilled_in_working_order(book):
    order = [(one.hole.id, one.part) for one in drillings(book.place.layout)]
    assert drill_all(book) == order
    assert book.count() == (8, 8)
    assert book.now() is None and book.check() is None


def test_the_first_of_two_holes_is_no_edit_yet(book):
    book.choose(("H3", 1))
    first = book.now().at
    book.drill()
    assert hole(book, "H3").drilled is None
    assert book.notes.halves["H3"] == first
    assert book.count() == (1, 8)


def test_the_second_of_two_holes_makes_the_slot_where_it_was_planned(book):
    book.choose(("H3", 1))
    book.drill()
    assert (book.now().hole.id, book.now().part) == ("H3", 2)
    book.drill()
    assert hole(book, "H3").drilled == (500, 380)


def test_a_first_hole_that_went_elsewhere_takes_the_second_along(book):
    book.choose(("H3", 1))
    one = book.now()
    book.drill((one.at[0] + 3.0, one.at[1] - 2.0))
    two = book.now()
    assert book.at(two) == pytest.approx((two.at[0] + 3.0, two.at[1] - 2.0))
    book.drill()
    assert hole(book, "H3").drilled == pytest.approx((503, 378))


def test_a_second_hole_that_went_elsewhere_puts_the_slot_between_the_two(book):
    book.choose(("H3", 1))
    first = book.now().at
    book.drill()
    book.drill((510.0, 390.0))
    assert hole(book, "H3").drilled == pytest.approx(((first[0] + 510) / 2, (first[1] + 390) / 2))


def test_a_place_of_its_own_becomes_the_truth(book):
    book.choose(("A1#2", 1))
    book.drill((261.0, 219.0))
    assert drilled_at(book.place.layout, "A1#2") == (261.0, 219.0)
    assert book.place.layout.gear[0].at == (300, 200)


def test_back_one_takes_back_the_press_that_was_last_not_the_hole_that_is_last(book):
    drill_all(book, 1)
    book.choose(("H3", 1))
    book.drill()
    assert book.take_back() == "H3"
    assert (book.now().hole.id, book.now().part) == ("H3", 1)
    assert book.count() == (1, 8)


def test_back_one_goes_all_the_way(book):
    untouched = book.place.layout
    made = drill_all(book)
    back = [book.take_back() for _ in made]
    assert back == [name for name, _ in reversed(made)]
    assert book.count() == (0, 8)
    assert book.take_back() == ""
    assert book.place.layout == untouched


def test_taking_back_the_second_hole_leaves_the_first(book):
    book.choose(("H3", 1))
    book.drill()
    book.drill()
    book.take_back()
    assert hole(book, "H3").drilled is None
    assert [book.made(one) for one in book.parts("H3")].count(True) == 1


def test_taking_back_a_datum_hole_asks_for_the_measure_again(book):
    drill_all(book, 3)
    assert book.notes.checked
    book.choose((next(one.hole.id for one in book.all if one.datum), 1))
    book.unmake(book.now())
    assert not book.notes.checked


def test_new_plastic_forgets_the_board_in_one_step_and_undo_brings_it_back(book):
    untouched = book.place.layout
    drill_all(book, 6)
    before = book.place.layout
    assert book.new_plastic("BD")
    assert book.place.layout == untouched
    assert book.count() == (0, 8)
    assert book.undo()
    assert book.place.layout == before


def test_undo_goes_no_further_back_than_what_was_drilled_here(book):
    from bayboard.edits.set_taped import SetTaped

    book.place.do(SetTaped(("A1",), True))
    drill_all(book, 1)
    assert book.undo()
    assert not book.undo()
    assert book.place.layout.gear[0].taped
    assert book.redo() and not book.redo()
    assert book.count()[0] == 1


def test_the_hole_in_the_metal_is_told_apart_from_the_one_in_the_board(book):
    assert book.drill_metal("H1", (22.0, 21.0))
    assert hole(book, "H1").metal == (22.0, 21.0)
    assert hole(book, "H1").drilled is None
    assert book.count()[0] == 0


def test_one_board_is_drilled_before_the_next(qapp):
    book = book_on(two_boards())
    assert [name for name, _ in drill_all(book)] == ["H1", "H2"]


def test_a_chosen_hole_is_followed_by_what_comes_after_it(book):
    order = [(one.hole.id, one.part) for one in book.all]
    book.choose(order[4])
    book.drill()
    book.notes = book.notes.check("BD")
    assert (book.now().hole.id, book.now().part) == order[5]


def test_nothing_is_drilled_where_nothing_is_to_drill(qapp):
    from tests.build import layout

    book = book_on(layout())
    assert book.now() is None and not book.drill() and book.count() == (0, 0)
    assert not book.step(1)


@settings(derandomize=True, max_examples=25, deadline=None)
@given(st.lists(st.integers(0, 12), max_size=25))
def test_what_is_counted_is_what_was_pressed(qapp, acts):
    """Walk at random: drill, take back, choose; the book agrees with a plain set of what was pressed."""
    book = book_on(board_day())
    made: list[tuple[str, int]] = []
    for act in acts:
        now = book.now()
        if act <= 7:
            book.choose((book.all[act].hole.id, book.all[act].part))
        elif act == 12:
            taken = book.take_back()
            assert taken == (made.pop()[0] if made else "")
        elif now is None:
            book.confirm()
        elif book.drill():
            made.append((now.hole.id, now.part))
        assert book.count()[0] == len(made)
        assert {(d.hole.id, d.part) for d in book.all if book.made(d)} == set(made)
