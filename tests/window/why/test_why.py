"""Why?: one page in the Findings' place, worked by keys and mouse; its figures can be set for the vehicle."""

import pytest
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QImage, QPainter
from tests.build import gear, layout
from tests.window.hands import CTRL

from bayboard.rules import RULES
from bayboard.window.theme import DARK, LIGHT
from bayboard.window.why.drawings import paint_drawing

PIECES = [gear("A", 200, 200), gear("B", 308, 200)]  # 8 mm apart: a should


@pytest.fixture
def hands(open_window):
    hands = open_window(layout(gear=PIECES))
    hands.page = hands.window.findings.page
    return hands


def ask_why(hands):
    shown = hands.window.findings.list
    spot = next(s for s in shown.spots() if s.open)
    hands.click(shown.mapTo(hands.window, QPointF(dict(spot.links)["Why?"].center())))


def first(hands):
    return hands.page.body.lines[0]


def set_first(hands, text):
    first(hands).field.setFocus()
    hands.type(text)
    hands.key("Return")


def severities(hands):
    return [f.severity for f in hands.place.verdict.findings if f.rule == "gap"]


@pytest.mark.parametrize("rule", [rule.RULE for rule in RULES])
def test_every_rule_has_a_drawing_of_its_own(rule, qapp):
    for theme in (LIGHT, DARK):
        sheet = QImage(164, 118, QImage.Format.Format_ARGB32_Premultiplied)
        sheet.fill(0)
        blank = sheet.copy()
        painter = QPainter(sheet)
        assert paint_drawing(painter, QRectF(sheet.rect()), rule, theme)
        painter.end()
        assert sheet != blank


def test_no_two_rules_share_a_drawing(qapp):
    seen = set()
    for rule in RULES:
        sheet = QImage(164, 118, QImage.Format.Format_ARGB32_Premultiplied)
        sheet.fill(0)
        painter = QPainter(sheet)
        paint_drawing(painter, QRectF(sheet.rect()), rule.RULE, LIGHT)
        painter.end()
        seen.add(bytes(sheet.constBits()))
    assert len(seen) == len(RULES)


def test_the_page_takes_the_findings_place_and_escape_gives_it_back(hands):
    ask_why(hands)
    assert hands.page.isVisible()
    assert hands.page.geometry() == hands.window.findings.rect()
    hands.key("Escape")
    assert not hands.page.isVisible()
    assert hands.window.findings.list.hasFocus()


def test_back_gives_the_findings_back(hands):
    ask_why(hands)
    assert hands.page.back.hasFocus()
    hands.key("Return")
    assert not hands.page.isVisible()


def test_a_limit_is_set_for_the_vehicle_and_judged_by_at_once(hands):
    ask_why(hands)
    assert severities(hands) == ["should"]
    set_first(hands, "9")
    assert hands.layout.limits == {"gap_must": 9.0}
    assert severities(hands) == ["must"]
    assert "Set for this vehicle; all others: 6 mm." in first(hands).notes()
    assert hands.page.isVisible()


def test_setting_a_limit_is_one_step_to_undo(hands):
    ask_why(hands)
    set_first(hands, "9")
    hands.page.back.setFocus()
    hands.key("Z", CTRL)
    assert hands.layout.limits == {}
    assert first(hands).field.value == 6.0


def test_the_usual_figure_is_one_press_away(hands):
    ask_why(hands)
    assert not first(hands).back.isVisible()
    set_first(hands, "9")
    assert first(hands).back.text() == "back to 6 mm"
    first(hands).back.click()
    assert hands.layout.limits == {}


@pytest.mark.parametrize("text", ["abc", "-4", "nan"])
def test_nonsense_is_refused_in_a_sentence_below_the_field(hands, text):
    ask_why(hands)
    set_first(hands, text)
    assert hands.layout.limits == {}
    assert first(hands).lines(400.0)[0].endswith(".") or first(hands).field.wrong
    assert first(hands).field.wrong


def test_escape_restores_what_was_typed_before_it_leaves(hands):
    ask_why(hands)
    first(hands).field.setFocus()
    hands.type("77")
    hands.key("Escape")
    assert hands.page.isVisible() and first(hands).field.value == 6.0
    hands.key("Escape")
    assert not hands.page.isVisible()


def test_an_own_limit_is_told_in_the_findings_row(hands):
    ask_why(hands)
    set_first(hands, "9")
    hands.page.left.emit()
    (row,) = [row for row in hands.window.findings.list.rows() if row.open]
    assert row.own == "Set for this vehicle: room between two pieces, at least: 9 mm."


def test_the_page_is_told_in_the_units_shown(hands):
    ask_why(hands)
    hands.page.back.setFocus()
    hands.key("U")
    assert first(hands).field.units == "in"
    assert first(hands).field.text() == "15/64"


def test_the_page_reads_as_one_text(hands):
    ask_why(hands)
    said = hands.page.body.accessibleDescription()
    assert "Two stand-ins stand too close together." in said
    assert "room between two pieces, at least: 6 mm. Common practice." in said
    assert first(hands).field.accessibleName() == "room between two pieces, at least"


def test_tab_walks_from_back_to_the_first_figure(hands):
    ask_why(hands)
    hands.key("Tab")
    assert first(hands).field.hasFocus()


@pytest.mark.parametrize("size", [(1280, 800), (1600, 1000)])
def test_no_line_is_cut_off(open_window, size):
    hands = open_window(layout(gear=PIECES), size=size)
    hands.page = hands.window.findings.page
    ask_why(hands)
    body = hands.page.body
    ends = [line.geometry().bottom() for line in body.lines]
    tops = [line.geometry().top() for line in body.lines]
    assert all(top > end for top, end in zip(tops[1:], ends, strict=False))
    assert body.minimumHeight() >= ends[-1]


def test_the_field_with_the_keys_wears_its_blue_edge(hands):
    ask_why(hands)
    field = first(hands).field
    field.setFocus()
    sheet = field.grab().toImage()
    edge = sheet.pixelColor(round(2 * sheet.devicePixelRatio()), sheet.height() // 2)
    assert edge.name() == LIGHT.blue.lower()
