"""The shelf worked by hands: found, walked, taken down, put away."""

from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QAccessible, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from tests.build import gear, layout
from tests.window.hands import CTRL, NONE, PLAIN

from bayboard.store.job_file import open_job_file
from bayboard.window.access import interface_for
from bayboard.window.last import remember
from bayboard.window.shelf import words
from bayboard.window.theme import DARK

PLAIN_LAYOUT = layout(gear=[gear("A1", 200, 200)])


def names(stage):
    return [vehicle.facts.name for vehicle in stage.desk.shown]


def middle(hands, stage, index):
    """Return the middle of a card, in pixels of the window."""
    return stage.line.mapTo(hands.window, stage.line.rect_of(index).center())


def opened_paths(hands, monkeypatch):
    """Return the list that what is opened goes to."""
    asked = []
    monkeypatch.setattr(hands.window.files, "open_path", lambda path, look=False: asked.append((path, look)))
    return asked


# --- what hangs there ---


def test_the_vehicle_last_worked_on_hangs_first(put, shelf):
    for name in ("Alder", "Birch", "Cedar"):
        put(name)
    _, stage = shelf(PLAIN_LAYOUT)
    assert names(stage) == ["Cedar", "Birch", "Alder"]
    assert stage.line.phrase() == "3 vehicles, last worked on first"


def test_vehicles_that_were_open_elsewhere_hang_there_too(put, shelf, tmp_path):
    put("Alder")
    away = tmp_path / "away"
    away.mkdir()
    remember(put("Birch", at=away))
    remember(tmp_path / "gone.bay")
    _, stage = shelf(PLAIN_LAYOUT)
    assert sorted(names(stage)) == ["Alder", "Birch"]


def test_a_card_shows_the_name_the_newest_note_and_how_it_stands(put, shelf):
    path = put("Alder", "first mock-up", "relay added")
    with open_job_file(path):
        _, stage = shelf(PLAIN_LAYOUT)
        card = stage.line.card(stage.desk.shown[0])
        assert (card.name, card.note) == ("Alder", "relay added")
        assert card.foot.startswith("held by ")
        assert "It can be looked at." in stage.choice.told.accessibleName()


def test_a_file_that_cannot_be_read_hangs_there_with_its_reason(folder, put, shelf):
    put("Alder")
    (folder / "broken.bay").write_text("hello", encoding="utf-8")
    _, stage = shelf(PLAIN_LAYOUT)
    cards = {card.name: card for card in map(stage.line.card, stage.desk.shown)}
    assert cards["broken"].harmed and cards["broken"].foot == "cannot be read"
    assert cards["broken"].note == "this is not a job file"
    assert not cards["Alder"].harmed


def test_the_vehicle_on_the_wall_is_told_and_chosen(put, shelf):
    put("Alder")
    path = put("Birch")
    put("Cedar")
    _, stage = shelf(PLAIN_LAYOUT, path=path)
    assert stage.desk.vehicle().path == path
    assert stage.line.card(stage.desk.vehicle()).foot == words.HERE
    assert stage.choice.take.text() == "Go on with it" and not stage.choice.look.isVisible()


def test_pictures_come_after_the_cards(put, shelf, qtbot):
    path = put("Alder")
    hands, stage = shelf(PLAIN_LAYOUT)
    hands.picture()
    qtbot.waitUntil(lambda: stage.desk.picture(str(path)) is not None, timeout=10_000)
    assert (stage.desk.picture(str(path)).width(), stage.desk.picture(str(path)).height()) == (240, 96)


def test_an_empty_shelf_says_how_it_is_filled(folder, shelf):
    hands, stage = shelf(PLAIN_LAYOUT)
    assert stage.desk.vehicle() is None and stage.line.phrase() == ""
    assert not stage.choice.take.isVisible()
    assert stage.choice.title()[0] == "Begin elsewhere"
    hands.picture()


def test_a_shelf_that_is_not_there_is_an_empty_one(folder, shelf, monkeypatch):
    monkeypatch.setenv("BAYBOARD_SHELF", str(folder / "nowhere"))
    _, stage = shelf(PLAIN_LAYOUT)
    assert stage.desk.shown == ()
    assert not (folder / "nowhere").exists()


# --- found ---


def test_typing_finds_by_name_or_note_at_once(put, shelf):
    put("Älder pickup", "first mock-up")
    put("Birch van", "relay added")
    hands, stage = shelf(PLAIN_LAYOUT)
    hands.type("alder")
    assert names(stage) == ["Älder pickup"]
    assert stage.line.phrase() == "1 of 2"
    stage.line.field.clear()
    hands.type("relay")
    assert names(stage) == ["Birch van"]
    hands.type(" nothing")
    assert names(stage) == [] and stage.line.phrase() == "none of 2"
    assert words.none_found("relay nothing") == "No vehicle has “relay nothing” in its name or notes."
    hands.picture()


def test_letters_typed_at_the_cards_go_to_the_field(put, shelf):
    put("Alder")
    put("Birch")
    hands, stage = shelf(PLAIN_LAYOUT)
    stage.line.setFocus()
    hands.type("bi")
    assert stage.line.field.text() == "bi" and stage.line.field.hasFocus()
    assert names(stage) == ["Birch"]


def test_escape_takes_what_is_typed_away_then_the_shelf(put, shelf):
    put("Alder")
    hands, stage = shelf(PLAIN_LAYOUT)
    hands.type("al")
    hands.key(Qt.Key.Key_Escape)
    assert stage.line.field.text() == "" and stage.on_screen()
    hands.key(Qt.Key.Key_Escape)
    assert not stage.on_screen() and hands.window.stage == "Arrange"
    assert hands.window.bench.isVisible() and not stage.line.isVisible()


# --- walked ---


def test_arrows_walk_the_cards_from_the_field_and_stop_at_the_ends(put, shelf):
    for name in ("Alder", "Birch", "Cedar"):
        put(name)
    hands, stage = shelf(PLAIN_LAYOUT)
    walked = []
    for key in ("Right", "Right", "Right", "Left", "Down", "Up", "Up"):
        hands.key(key)
        walked.append(stage.desk.vehicle().facts.name)
    assert walked == ["Birch", "Alder", "Alder", "Birch", "Alder", "Birch", "Cedar"]


def test_a_card_out_of_sight_is_brought_in_when_it_is_walked_to(put, shelf):
    for number in range(14):
        put(f"Van {number}")
    hands, stage = shelf(PLAIN_LAYOUT, size=(1280, 800))
    stage.line.setFocus()
    hands.key("End")
    rect = stage.line.rect_of(13)
    assert stage.desk.at() == 13 and rect.left() >= 0 and rect.right() <= stage.line.width()
    hands.key("Home")
    assert stage.desk.at() == 0 and stage.line.scrolled == 0.0


def _wheel(stage, eighths):
    at = QPointF(stage.line.rect().center())
    turn = QPoint(0, eighths)
    phase = Qt.ScrollPhase.NoScrollPhase
    event = QWheelEvent(at, stage.line.mapToGlobal(at), QPoint(), turn, NONE, PLAIN, phase, False)
    QApplication.sendEvent(stage.line, event)


def test_the_wheel_pushes_the_line_as_far_as_there_are_cards(put, shelf):
    for number in range(14):
        put(f"Van {number}")
    _, stage = shelf(PLAIN_LAYOUT, size=(1280, 800))
    _wheel(stage, -120)
    assert stage.line.scrolled > 100
    _wheel(stage, -120 * 50)
    assert stage.line.rect_of(13).right() <= stage.line.width()
    _wheel(stage, 120 * 90)
    assert stage.line.scrolled == 0.0


def test_a_drag_pushes_the_line_and_chooses_nothing(put, shelf):
    for number in range(14):
        put(f"Van {number}")
    hands, stage = shelf(PLAIN_LAYOUT, size=(1280, 800))
    chosen = stage.desk.current
    start = middle(hands, stage, 2)
    hands.drag(start, start - QPointF(200.0, 0.0))
    assert stage.line.scrolled == pytest.approx(200.0) and stage.desk.current == chosen


# --- taken down ---


def test_a_click_chooses_and_a_double_click_takes_down(put, shelf, monkeypatch):
    path = put("Alder")
    put("Birch")
    hands, stage = shelf(PLAIN_LAYOUT)
    asked = opened_paths(hands, monkeypatch)
    hands.click(middle(hands, stage, 1))
    assert stage.desk.vehicle().path == path and asked == []
    at = stage.line.rect_of(1).center().toPoint()
    QTest.mouseDClick(stage.line, Qt.MouseButton.LeftButton, PLAIN, at)
    assert asked == [(path, False)]


@pytest.mark.parametrize(("button", "look"), [("take", False), ("look", True)])
def test_the_buttons_open_what_is_chosen(put, shelf, monkeypatch, button, look):
    path = put("Alder")
    hands, stage = shelf(PLAIN_LAYOUT)
    asked = opened_paths(hands, monkeypatch)
    pressed = getattr(stage.choice, button)
    hands.click(pressed.mapTo(hands.window, QPointF(pressed.rect().center())))
    assert asked == [(path, look)]


def test_enter_opens_the_vehicle_and_puts_the_shelf_away(put, shelf):
    put("Alder")
    put("Birch")
    hands, stage = shelf(PLAIN_LAYOUT)
    hands.key("Right")
    hands.key("Return")
    assert hands.layout.vehicle.name == "Alder"
    assert not stage.on_screen() and hands.wall.hasFocus()


def test_enter_on_the_vehicle_that_is_open_goes_on_with_it(put, shelf, monkeypatch):
    path = put("Alder")
    hands, stage = shelf(PLAIN_LAYOUT, path=path)
    asked = opened_paths(hands, monkeypatch)
    hands.key("Return")
    assert asked == [] and not stage.on_screen()


def test_enter_on_an_empty_shelf_does_nothing(folder, shelf, monkeypatch):
    hands, stage = shelf(PLAIN_LAYOUT)
    asked = opened_paths(hands, monkeypatch)
    hands.key("Return")
    assert asked == [] and stage.on_screen()


def test_a_file_that_cannot_be_opened_leaves_the_shelf_open_and_is_said(folder, shelf):
    (folder / "broken.bay").write_text("hello", encoding="utf-8")
    hands, stage = shelf(PLAIN_LAYOUT)
    hands.key("Return")
    assert stage.on_screen() and "this is not a job file" in hands.window.notice.text


@pytest.mark.parametrize("filled", [True, False])
@pytest.mark.parametrize(("way", "act"), [(0, "open"), (1, "new"), (2, "example")])
def test_one_may_begin_elsewhere(put, open_window, qtbot, monkeypatch, way, act, filled):
    from bayboard.window.files import Files
    from bayboard.window.shelf.stage import add_shelf

    asked = []
    monkeypatch.setattr(Files, act, lambda self: asked.append(act))
    if filled:
        put("Alder")
    hands = open_window(PLAIN_LAYOUT)
    stage = add_shelf(hands.window)
    stage.open()
    qtbot.waitUntil(lambda: stage.desk.share == 1.0, timeout=10_000)
    pressed = (stage.choice.links if filled else stage.choice.begin)[way]
    hands.click(pressed.mapTo(hands.window, QPointF(pressed.rect().center())))
    stage.desk.end()
    assert asked == [act]


# --- put away ---


def test_a_press_on_the_wall_puts_the_shelf_away_and_means_what_it_means(put, shelf):
    put("Alder")
    hands, stage = shelf(PLAIN_LAYOUT)
    assert hands.wall.isVisible() and hands.wall.phrase() == words.WALL
    hands.click_mm(200, 200)
    assert not stage.on_screen()
    assert hands.place.selected == ("A1",)
    assert hands.wall.phrase() != words.WALL


def test_an_act_of_the_work_puts_the_shelf_away(put, shelf):
    put("Alder")
    hands, stage = shelf(PLAIN_LAYOUT)
    hands.place.select(("A1",))
    hands.window.to_wall()
    hands.key("R")
    assert not stage.on_screen() and hands.gear("A1").turn == 90.0


def test_the_key_opens_the_shelf_and_puts_it_away(put, shelf):
    put("Alder")
    hands, stage = shelf(PLAIN_LAYOUT)
    hands.key(Qt.Key.Key_Escape)
    hands.key("O", CTRL)
    assert stage.on_screen() and stage.line.field.hasFocus()
    hands.type("al")
    hands.key("O", CTRL)
    assert not stage.on_screen()


def test_acts_of_the_window_work_from_the_field(put, shelf, monkeypatch):
    put("Alder")
    hands, stage = shelf(PLAIN_LAYOUT)
    done = []
    monkeypatch.setattr(hands.window, "do_act", done.append)
    for key in ("N", "P", "K", "D", "Q"):
        hands.key(key, CTRL)
    hands.key("A", CTRL)
    assert done == ["new", "print", "kept", "drill_day", "close"]
    assert stage.line.field.text() == ""


def test_what_was_typed_is_gone_when_the_shelf_opens_again(put, shelf, qtbot):
    put("Alder")
    hands, stage = shelf(PLAIN_LAYOUT)
    hands.type("xyz")
    stage.put_away()
    stage.open()
    assert stage.line.field.text() == ""
    qtbot.waitUntil(lambda: names(stage) == ["Alder"], timeout=10_000)


def test_a_vehicle_that_came_meanwhile_hangs_there_when_it_opens_again(put, shelf, qtbot):
    put("Alder")
    _, stage = shelf(PLAIN_LAYOUT)
    stage.put_away()
    put("Birch")
    stage.open()
    qtbot.waitUntil(lambda: names(stage) == ["Birch", "Alder"], timeout=10_000)


# --- by keys and ears alone ---


def test_the_first_start_offers_the_shelf(put, shelf):
    put("Alder")
    hands, stage = shelf(None, first_start=True)
    assert names(stage) == ["Alder"] and hands.wall.phrase() == words.WALL_BARE
    stage.put_away()
    button = hands.card.begin[0]
    hands.click(button.mapTo(hands.window, QPointF(button.rect().center())))
    assert stage.on_screen()


def test_the_next_part_of_the_window_is_reached_round_about(put, shelf):
    put("Alder")
    hands, stage = shelf(PLAIN_LAYOUT)
    stops = []
    for _ in range(5):
        hands.key("F6")
        stops.append(QApplication.focusWidget())
    assert stops[:2] == [stage.line, stage.choice.take]
    assert stops[-1] is stage.line.field and len(set(stops)) == 5


def test_tab_walks_field_cards_and_buttons(put, shelf):
    put("Alder")
    hands, stage = shelf(PLAIN_LAYOUT)
    walked = []
    for _ in range(4):
        hands.key("Tab")
        walked.append(QApplication.focusWidget())
    assert walked[:3] == [stage.line, stage.choice.take, stage.choice.look]


def test_each_card_is_told_in_a_sentence(put, shelf):
    put("Alder", "relay added")
    _, stage = shelf(PLAIN_LAYOUT)
    (said,) = stage.line.parts_said()
    assert said.startswith("Alder, ") and said.endswith("relay added, 1 revision")
    assert stage.line.part_held(0)
    assert stage.line.part_rect(0).width() > 40
    for part in (stage.line, stage.line.field, stage.choice, *stage.choice.stops):
        assert part.accessibleName()


def test_a_screen_reader_walks_the_cards(put, shelf):
    put("Alder", "relay added")
    put("Birch")
    _, stage = shelf(PLAIN_LAYOUT)
    read = interface_for("", stage.line)
    assert read.childCount() == 2
    name = QAccessible.Text.Name
    assert [read.child(i).text(name).split(",")[0] for i in range(2)] == ["Birch", "Alder"]
    assert read.child(0).state().selected and not read.child(1).state().selected


# --- everywhere ---


@pytest.mark.parametrize(("size", "scale"), [((1280, 800), 1.0), ((1600, 1000), 1.0), ((1280, 800), 1.3)])
def test_nothing_lies_over_anything_else(put, shelf, size, scale):
    put("A vehicle with a rather long name, rear wall", "a note", "another note that is long" * 5)
    hands, stage = shelf(PLAIN_LAYOUT, size=size)
    hands.window.dress(DARK.sized(scale))
    hands.app.processEvents()
    line, choice = stage.line, stage.choice
    assert line.field.geometry().bottom() < line.rect_of(0).top()
    assert line.rect_of(0).bottom() <= line.height()
    _lie_apart(choice, [*choice.stops, choice.scroll])
    hands.picture()
    stage.line.field.setText("nothing of this")
    _lie_apart(choice, choice.stops)
    hands.picture()


def _lie_apart(choice, controls):
    rects = [control.geometry() for control in controls if control.isVisible()]
    for i, one in enumerate(rects):
        assert choice.rect().contains(one)
        assert not any(one.adjusted(5, 5, -5, -5).intersects(other) for other in rects[i + 1 :])
    assert len(rects) >= 3 and all(rect.height() >= 40 for rect in rects)


def test_paths_are_told_from_the_users_own_folder(monkeypatch, tmp_path):
    monkeypatch.setattr(Path, "home", lambda: tmp_path)
    assert words.shown_folder(tmp_path / "Documents") == str(Path("~") / "Documents")
    assert words.shown_folder(Path("/srv/shop")) == str(Path("/srv/shop"))
