"""How one looked at a vehicle comes back with its file; a broken value is as good as none."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.window.keeping.bench import job_file, small, window_on

from bayboard.job.job import Job
from bayboard.store.job_file import open_job_file
from bayboard.window.keeping.view_state import NAME, take_view, view_of
from bayboard.window.stages import Panes, Stage
from bayboard.window.theme import LIGHT
from bayboard.window.workplace import Workplace


@pytest.fixture
def van(tmp_path):
    return job_file(tmp_path / "van.bay")


def fresh():
    return Workplace(Job(small()), LIGHT)


def test_zoom_middle_chalk_line_lever_and_stage_come_back(open_window, van):
    hands = window_on(open_window, van)
    hands.window.add_stage(Panes(Stage("Print", 5)))
    hands.place.zoom(2.0)
    hands.place.set_chalk(123.0)
    hands.place.set_lever("folded")
    hands.window.show_stage("Print")
    middle = hands.place.scale.mm(hands.place.wall_rect.center())
    k = hands.place.scale.px_per_mm
    hands.frame.close()
    again = open_window(first_start=True)
    again.window.add_stage(Panes(Stage("Print", 5)))
    again.window.files.open_path(van)
    assert again.place.scale.px_per_mm == pytest.approx(k, rel=1e-4)
    assert again.place.scale.mm(again.place.wall_rect.center()) == pytest.approx(middle, abs=0.01)
    assert (again.place.chalk_x, again.place.lever) == (123.0, "folded")
    assert again.window.stage == "Print"
    again.window.show_stage("Arrange")


def test_a_window_of_another_size_shows_the_same_part(open_window, van):
    hands = window_on(open_window, van)
    hands.place.zoom(3.0)
    seen = hands.place.scale.seen(hands.place.wall_rect)
    hands.frame.close()
    again = window_on(open_window, van, size=(1280, 800))
    across = again.place.scale.seen(again.place.wall_rect)
    assert across[2] - across[0] == pytest.approx(seen[2] - seen[0], rel=1e-4)
    assert (across[0] + across[2]) / 2 == pytest.approx((seen[0] + seen[2]) / 2, abs=0.01)


def test_what_was_shown_whole_is_shown_whole(open_window, van):
    hands = window_on(open_window, van)
    hands.frame.close()
    again = window_on(open_window, van, size=(1280, 800))
    assert again.place.whole


def test_a_stage_that_is_not_there_is_not_shown(open_window, van):
    with open_job_file(van) as file:
        file.set_meta(NAME, {"stage": "Wire", "lever": "folded"})
    hands = window_on(open_window, van)
    assert hands.window.stage == "Arrange"
    assert hands.place.lever == "folded"


def test_looking_on_writes_nothing(open_window, van):
    before = van.read_bytes()
    hands = open_window(first_start=True)
    hands.window.files.open_path(van, look=True)
    hands.place.zoom(2.0)
    hands.frame.close()
    assert van.read_bytes() == before


BROKEN = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=True) | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=4), inner, max_size=3),
    max_leaves=6,
)
KEYS = ("across", "middle", "chalk", "lever", "follow", "stage")


@settings(derandomize=True, max_examples=120, deadline=None)
@given(st.fixed_dictionaries({}, optional=dict.fromkeys(KEYS, BROKEN)) | BROKEN)
def test_a_broken_view_is_harmless(value):
    place = fresh()
    assert isinstance(take_view(place, value), str)
    assert place.lever in ("up", "folded")
    assert 0.05 < place.scale.px_per_mm < 13.0
    assert all(abs(mm) < 3e6 for mm in place.scale.mm(place.wall_rect.center()))
    assert place.chalk_x is None or abs(place.chalk_x) <= 1e5


def test_a_view_survives_its_own_words():
    one, other = fresh(), fresh()
    one.zoom(1.7, (300.0, 200.0))
    one.set_chalk(321.25)
    take_view(other, view_of(one, "Arrange"))
    assert view_of(other, "Arrange") == view_of(one, "Arrange")
