"""Room for everything at every Scale: no button's words cut short, none out of its panel, F1 whole."""

import pytest
from PySide6.QtCore import QRect
from PySide6.QtWidgets import QAbstractButton
from tests.build import gear, layout

from bayboard.window import lettering
from bayboard.window.compare.stage import add_compare
from bayboard.window.controls import Button, Control, Link, Switch
from bayboard.window.help_sheet import PLAIN
from bayboard.window.print.stage import add_print
from bayboard.window.shelf.stage import add_shelf
from bayboard.window.theme import LIGHT, SCALES

STAGES = ("Arrange", "Print", "Kept", "Shelf")


@pytest.fixture
def hands(open_window):
    def made(size):
        hands = open_window(layout(units="in", gear=[gear("A", 200, 200), gear("B", 303, 200)]), size)
        add_print(hands.window)
        add_compare(hands.window)
        add_shelf(hands.window)
        return hands

    return made


def cramped(window):
    """Return the controls on screen that are narrower than their words or stick out of their parent."""
    found = []
    for kind in (Button, Link, Switch):
        for control in window.findChildren(kind):
            if not control.isVisible():
                continue
            narrow = control.width() < control.sizeHint().width() - 8
            parent = control.parentWidget()
            out = parent is not None and not parent.rect().adjusted(-6, -6, 6, 6).contains(control.geometry())
            if narrow or out:
                found.append((control.accessibleName(), control.geometry(), control.sizeHint()))
    return found


@pytest.mark.parametrize(
    ("size", "scales"), [((1280, 800), SCALES), ((1600, 1000), SCALES[-1:]), ((1024, 700), SCALES[:1])]
)
def test_no_control_is_cut_short_or_sticks_out_at_any_scale(hands, size, scales):
    shown = hands(size)
    for scale in scales:
        shown.window.dress(LIGHT.sized(scale))
        for stage in STAGES:
            shown.window.show_stage(stage)
            assert cramped(shown.window) == [], (scale, stage)
        shown.window.show_stage("Arrange")
        shown.click_mm(150, 200)
        shown.key("Return")
        shown.window.wishing.open()
        assert cramped(shown.window) == [], (scale, "settings")
        shown.window.wishing.open()


def test_every_key_is_read_whole_on_f1_at_any_scale(open_window):
    shown = open_window(layout(), (1280, 800))
    sheet = shown.window.help
    for scale in SCALES:
        shown.window.dress(LIGHT.sized(scale))
        shown.key("F1")
        pages = sheet.pages()
        found = [told for page in pages for told in page]
        assert [(told.keys, " ".join(told.says)) for told in found] == list(sheet.lines)
        for told in found:
            room = sheet.width() - told.x
            assert told.y < sheet.height()
            assert all(lettering.width(line, PLAIN.sized(scale)) < room for line in told.says)
        for _ in pages[1:]:
            shown.key("Space")
            assert sheet.isVisible()
        shown.key("Space")
        assert not sheet.isVisible()


def test_every_control_takes_a_focus_ring_and_has_a_name(hands):
    window = hands((1600, 1000)).window
    controls = [w for kind in (Control, Switch) for w in window.findChildren(kind)]
    assert len(controls) > 15
    for control in controls:
        if control.isVisible():
            assert control.accessibleName(), control
            assert control.focusPolicy().value & 1, control.accessibleName()  # Tab reaches it
            assert isinstance(control, QAbstractButton | Switch)
            assert control.rect() != QRect()
