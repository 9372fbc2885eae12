"""The strip tells how a vehicle stands, and its words lead to the shelf and to what was kept."""

from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtTest import QTest
from tests.window.keeping.bench import job_file, window_on

from bayboard.model.refused import Refused
from bayboard.store.troubles import Holder
from bayboard.window.keeping.words import held_words, kept_words, stays_behind
from bayboard.window.stages import Panes, Stage
from bayboard.window.standing import Standing, standing


@dataclass
class Stood:
    """What the words ask of a job."""

    looking: bool = False
    file: object = None
    path: Path | None = None
    parent: int | None = None
    dirty: bool = False
    kept: tuple = field(default_factory=tuple)


TAKEN = Refused("van.bay", "this file was taken over by jo on SHOP-PC")
FULL = Refused("van.bay", "the disk is full", "Free some room")
IN_FILE = {"file": object(), "path": Path("van.bay")}
CASES = [
    (Stood(**IN_FILE), {}, "not kept yet"),
    (Stood(**IN_FILE, parent=6), {"kept_as": 6, "newest": 6}, "revision 6"),
    (Stood(**IN_FILE, parent=6), {"newest": 6}, "draft after revision 6"),
    (Stood(**IN_FILE, parent=4), {"newest": 6}, "draft after revision 4"),
    (Stood(**IN_FILE, dirty=True), {"newest": 6, "trouble": FULL}, "not written: the disk is full"),
    (Stood(**IN_FILE), {"newest": 6, "trouble": TAKEN}, "this file was taken over by jo on SHOP-PC"),
    (Stood(**IN_FILE, looking=True), {}, "looking only"),
    (Stood(), {}, "new; kept as you go, no saving needed"),
    (Stood(dirty=True), {"alone": True}, "draft, not in any file"),
    (Stood(path=Path("crew.json")), {}, "crew.json, saved"),
    (Stood(path=Path("crew.json"), dirty=True), {}, "crew.json, changed since it was saved"),
]


@pytest.mark.parametrize(("job", "more", "says"), CASES)
def test_how_a_job_stands(job, more, says):
    known = {"trouble": None, "holder": None, "kept_as": None, "newest": 0, "alone": False} | more
    assert standing(job, **known).words == says


def test_only_what_is_in_no_file_is_told_as_harm():
    plain = {"holder": None, "kept_as": None, "newest": 0, "alone": False}
    full = standing(Stood(**IN_FILE, dirty=True), FULL, **plain)
    assert full == Standing("not written: the disk is full", harmed=True)
    assert not standing(Stood(**IN_FILE), None, **plain).harmed


def test_who_holds_it_is_told_with_the_clock_here():
    at = datetime.now(UTC).replace(microsecond=0)
    holder = Holder("jo", "SHOP-PC", at.strftime("%Y-%m-%dT%H:%M:%SZ"))
    clock = at.astimezone().strftime("%H:%M")
    told = standing(Stood(looking=True), None, holder, None, 0, alone=False).words
    assert told == f"looking only: open on SHOP-PC since {clock}"
    assert held_words(Path("van.bay"), holder).startswith(f"van.bay is open on SHOP-PC since {clock}, by jo.")


def test_a_holder_who_does_not_say_since_when():
    assert "since" not in held_words(Path("van.bay"), Holder("jo", "SHOP-PC", ""))


@pytest.mark.parametrize(
    ("revisions", "photos", "says"),
    [(0, 0, ""), (1, 0, "1 revision"), (6, 1, "6 revisions and 1 photo"), (0, 2, "2 photos")],
)
def test_what_stays_behind_is_counted(revisions, photos, says):
    assert stays_behind(revisions, photos) == says


def test_a_kept_revision_is_told_in_a_line():
    assert kept_words(5) == "Kept as revision 5."


# --- the words in the window ---


@pytest.fixture
def hands(open_window, tmp_path):
    hands = window_on(open_window, job_file(tmp_path / "van.bay"))
    QTest.qWait(0)
    hands.window.strip._hush()
    return hands


def with_modes(hands):
    for name in ("Shelf", "Kept"):
        hands.window.add_stage(Panes(Stage(name, 0)), lath=False)
    return hands


def middle(hands, widget):
    return widget.mapTo(hands.window, QPointF(widget.rect().center()))


def test_a_mode_that_is_not_there_is_not_offered(hands):
    strip = hands.window.strip
    assert not strip.name.leads
    assert not strip.kept.leads
    assert strip.name.focusPolicy() == Qt.FocusPolicy.NoFocus
    hands.click(middle(hands, strip.name))
    assert hands.window.stage == "Arrange"


@pytest.mark.parametrize(("word", "mode"), [("name", "Shelf"), ("kept", "Kept")])
def test_a_press_on_the_words_goes_there(hands, word, mode):
    widget = getattr(with_modes(hands).window.strip, word)
    hands.click(middle(hands, widget))
    assert hands.window.stage == mode


@pytest.mark.parametrize(("word", "mode"), [("name", "Shelf"), ("kept", "Kept")])
def test_enter_on_the_words_goes_there(hands, word, mode):
    widget = getattr(with_modes(hands).window.strip, word)
    widget.setFocus(Qt.FocusReason.TabFocusReason)
    hands.key("Return")
    assert hands.window.stage == mode


def test_tab_goes_from_the_laths_over_the_words_to_the_switches(hands):
    strip = with_modes(hands).window.strip
    strip.setFocus(Qt.FocusReason.TabFocusReason)
    seen = []
    for _ in range(4):
        hands.key("Tab")
        seen.append(hands.app.focusWidget())
    assert seen == [strip.name, strip.kept, strip.lever, strip.units]


def test_the_words_name_where_they_lead_and_their_key(hands):
    strip = with_modes(hands).window.strip
    assert strip.name.accessibleName() == "Plain bay. Shelf of vehicles"
    assert strip.kept.accessibleName() == "revision 1. Kept revisions"
    assert strip.name.toolTip().endswith("Ctrl O")
    assert strip.kept.toolTip().endswith("Ctrl K")


def test_a_line_about_the_last_act_leads_nowhere_and_goes_again(hands):
    strip = with_modes(hands).window.strip
    strip.say("Undone: move A")
    assert strip.kept.text() == "Undone: move A"
    assert not strip.kept.leads
    strip._hush()
    assert strip.kept.text() == "revision 1"
    assert strip.kept.leads


@pytest.mark.parametrize("size", [(1280, 800), (1600, 1000)])
def test_the_words_stay_between_the_laths_and_the_switch(open_window, tmp_path, size):
    path = job_file(tmp_path / "van.bay", vehicle={"name": "A vehicle of a very long name " * 4})
    strip = window_on(open_window, path, size=size).window.strip
    for word in (strip.name, strip.kept):
        assert word.geometry().left() > strip.lath_places()[-1].right()
        assert word.geometry().right() < strip.lever.x()
        assert strip.rect().contains(word.geometry())
    assert not strip.name.geometry().intersects(strip.kept.geometry())


def test_control_o_asks_for_a_file_where_there_is_no_shelf(hands, monkeypatch):
    from tests.window.hands import CTRL

    from bayboard.window import files

    asked = []
    monkeypatch.setattr(files, "ask_open", lambda *_: (asked.append(1), "")[1])
    hands.key("O", CTRL)
    assert asked == [1]
    with_modes(hands)
    hands.key("O", CTRL)
    assert asked == [1]
    assert hands.window.stage == "Shelf"
