"""Naming the vehicle on the Wall, in a line, as one undo step."""

import pytest
from tests.window.hands import CTRL
from tests.window.keeping.bench import in_file, job_file, window_on

from bayboard.window.menu import lines


@pytest.fixture
def hands(open_window, tmp_path):
    return window_on(open_window, job_file(tmp_path / "van.bay", ("first",)))


def _name(hands):
    return hands.place.layout.vehicle.name


def test_f2_asks_with_the_old_name_ready_to_be_typed_over(hands):
    old = _name(hands)
    hands.key("F2")
    line = hands.window.name_line
    assert line.isVisible() and line.field.hasFocus()
    assert line.field.selectedText() == old
    hands.type("Tarn panel van")
    hands.key("Return")
    assert _name(hands) == "Tarn panel van"
    assert hands.line() == "This is Tarn panel van from now on."
    assert not line.isVisible() and hands.wall.hasFocus()


def test_a_name_is_one_undo_step(hands):
    old = _name(hands)
    hands.key("F2")
    hands.type("Tarn panel van")
    hands.key("Return")
    hands.key("Z", CTRL)
    assert _name(hands) == old


def test_escape_leaves_the_name(hands):
    old = _name(hands)
    hands.key("F2")
    hands.type("Tarn")
    hands.key("Escape")
    assert _name(hands) == old and not hands.window.name_line.isVisible()


def test_an_empty_name_is_refused_in_one_sentence(hands):
    old = _name(hands)
    hands.key("F2")
    hands.key("Backspace")
    hands.key("Return")
    assert _name(hands) == old
    assert "a vehicle needs a name" in hands.line()


def test_one_line_asks_at_a_time(hands):
    hands.key("F2")
    hands.window.do_act("keep")
    assert hands.window.note_line.isVisible() and not hands.window.name_line.isVisible()
    hands.window.do_act("name")
    assert hands.window.name_line.isVisible() and not hands.window.note_line.isVisible()


def test_the_name_is_in_the_file_and_over_the_window(hands):
    hands.key("F2")
    hands.type("Tarn panel van")
    hands.key("Return")
    hands.window.files.keeper.write()
    assert in_file(hands.place.job.path).vehicle.name == "Tarn panel van"
    assert hands.window.window().windowTitle().startswith("Tarn panel van")


def test_the_menu_of_the_bare_wall_names_it_too(hands):
    hands.place.select(())
    told = lines(hands.place)
    assert ("name", "Name the vehicle", "F2") in told and len(told) <= 7


def test_a_new_vehicle_asks_for_its_name_and_its_file_is_called_so(hands):
    hands.key("N", CTRL)
    assert hands.window.name_line.isVisible()
    hands.type("Quarry flatbed")
    hands.key("Return")
    hands.window.files.keeper.write()
    assert _name(hands) == "Quarry flatbed"
    assert hands.place.job.path.stem == "Quarry-flatbed"
