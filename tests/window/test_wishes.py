"""Scale, colours and motion: a person's own, at once in every stage, and kept."""

import json

import pytest
from PySide6.QtCore import QSize
from PySide6.QtGui import QGuiApplication
from tests.build import gear, layout
from tests.window.hands import SHIFT

from bayboard.window import wishes
from bayboard.window.settings_sheet import room_words
from bayboard.window.stillness import animates, toolkits_are_still
from bayboard.window.theme import DARK, LIGHT, SCALES
from bayboard.window.wishes import GARAGE, LARGE_SCREEN, Wishes, read_wishes, reduced_motion, wish


@pytest.fixture
def hands(open_window):
    return open_window(layout(gear=[gear("A", 200, 200), gear("B", 600, 200)]))


def test_what_is_wished_is_read_again():
    for one in (Wishes(1.5, "dark", "off"), Wishes(1.15, "light"), Wishes()):
        wish(one)
        assert read_wishes() == one


def test_the_first_time_a_large_screen_starts_larger():
    assert read_wishes(LARGE_SCREEN + 1).size == GARAGE
    assert read_wishes(LARGE_SCREEN - 1).size == 1.0
    wish(Wishes())
    assert read_wishes(LARGE_SCREEN + 1).size == 1.0


@pytest.mark.parametrize(
    "text", ["", "[1]", "{", '{"scale": 7, "colours": [], "motion": null}', '{"scale": true}', "\x00"]
)
def test_a_broken_file_is_as_good_as_none(tmp_path, text):
    wish(Wishes(1.5))
    (tmp_path / "config" / wishes.FILE).write_text(text, encoding="utf-8")
    assert read_wishes() == Wishes()


def test_what_is_wished_stands_in_the_users_folder_and_not_in_the_layout(hands, tmp_path):
    before = hands.layout
    hands.key("F8")
    told = json.loads((tmp_path / "config" / wishes.FILE).read_text(encoding="utf-8"))
    assert told["scale"] == 1.15
    assert hands.layout is before


def test_a_scale_taken_live_looks_like_one_that_was_there_from_the_start(open_window, qtbot):
    pieces = layout(gear=[gear("A", 200, 200)])
    live, fresh = open_window(pieces), open_window(pieces)
    fresh.window.dress(LIGHT.sized(1.3))
    fresh.frame.resize(1599, 1000)
    fresh.frame.resize(1600, 1000)  # everything is laid out anew
    live.key("F8")
    live.key("F8")
    live.place.opened.emit()  # the line that told of the Scale goes
    live.app.processEvents()
    assert live.place.theme == fresh.place.theme
    assert live.picture() == fresh.picture()


def test_f8_goes_up_to_the_largest_scale_and_down_again(hands):
    for size in (*SCALES[1:], SCALES[-1]):
        hands.key("F8")
        assert hands.place.theme.size == size
    for size in (*SCALES[-2::-1], SCALES[0]):
        hands.key("F8", SHIFT)
        assert hands.place.theme.size == size


def test_f9_goes_from_light_to_dark_and_back(hands):
    hands.key("F9")
    assert hands.place.theme == DARK
    hands.key("F9")
    assert hands.place.theme == LIGHT


def test_the_settings_are_worked_by_keys_alone(hands):
    hands.key("F7")
    sheet = hands.window.wishing.sheet
    assert sheet.isVisible()
    hands.key("Right")
    assert hands.place.theme.size == 1.15
    hands.key("Tab")
    hands.key("Left")
    assert hands.place.theme == DARK.sized(1.15)
    hands.key("Down")
    hands.key("Right")
    assert reduced_motion()
    hands.key("Escape")
    assert not sheet.isVisible()
    assert hands.wall.hasFocus()


def test_the_settings_are_worked_by_mouse_alone(hands):
    link = hands.window.strip.settings
    hands.click(link.mapTo(hands.window, link.rect().center()).toPointF())
    sheet = hands.window.wishing.sheet
    half = sheet.scale.halves()[3].center()
    hands.click(sheet.scale.mapTo(hands.window, half.toPoint()).toPointF())
    assert hands.place.theme.size == 1.5
    hands.click(sheet.close_it.mapTo(hands.window, sheet.close_it.rect().center()).toPointF())
    assert not sheet.isVisible()


def test_letters_do_nothing_behind_the_open_settings(hands):
    hands.click_mm(200, 200)
    before = hands.layout
    hands.key("F7")
    for key in ("R", "T", "Right", "B"):
        hands.key(key)
    assert hands.layout == before


def test_the_systems_colours_are_followed_only_where_that_is_wished(hands, monkeypatch):
    asked = {"dark": True}
    monkeypatch.setattr("bayboard.window.wishing.desktop_is_dark", lambda: asked["dark"])
    scheme = QGuiApplication.styleHints().colorSchemeChanged
    scheme.emit(QGuiApplication.styleHints().colorScheme())
    assert hands.place.theme == DARK
    wish(Wishes(colours="light"))
    scheme.emit(QGuiApplication.styleHints().colorScheme())
    assert hands.place.theme == LIGHT


def test_a_scale_that_has_no_room_says_which_has():
    assert [room_words(size, QSize(1280, 800)) for size in SCALES] == [""] * 4
    assert room_words(1.5, QSize(1024, 700)) == "150 % is too large for this window: 115 % fits it."


@pytest.mark.parametrize(
    ("name", "text", "still"),
    [
        ("kdeglobals", "[KDE]\nAnimationDurationFactor=0\n", True),
        ("kdeglobals", "[KDE]\nAnimationDurationFactor=0.5\n", False),
        ("gtk-4.0/settings.ini", "[Settings]\ngtk-enable-animations=false\n", True),
        ("gtk-3.0/settings.ini", "[Settings]\ngtk-enable-animations=1\n", False),
        ("gtk-3.0/settings.ini", "no section", False),
    ],
)
def test_a_desktop_that_asks_for_stillness_is_heard(tmp_path, name, text, still):
    (tmp_path / name).parent.mkdir(exist_ok=True)
    (tmp_path / name).write_text(text, encoding="utf-8")
    assert toolkits_are_still(tmp_path) is still


def test_windows_says_by_one_bit_whether_things_in_a_window_move():
    """0x12 with animations and 0x10 without, in the fifth byte: values from memory."""
    assert animates(bytes.fromhex("9e3e078012000000"))
    assert not animates(bytes.fromhex("9e3e078010000000"))
    assert animates(b"")
