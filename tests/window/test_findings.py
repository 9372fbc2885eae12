"""The findings: numbered alike everywhere, worst first, cured ones stay a moment, musts are never let be."""

import pytest
from PySide6.QtCore import QPointF
from tests.build import gear, layout
from tests.window.hands import CTRL

# A and B 3 mm apart (must), C and D 10 mm (should)
PIECES = [gear("A", 200, 200), gear("B", 303, 200), gear("C", 700, 200), gear("D", 810, 200)]


@pytest.fixture
def hands(open_window):
    return open_window(layout(gear=PIECES))


def rows(hands):
    return hands.window.findings.list.rows()


def spot_of(hands, subjects):
    return next(s for s in hands.window.findings.list.spots() if s.row.finding.subjects == subjects)


def press(hands, point):
    hands.click(hands.window.findings.list.mapTo(hands.window, QPointF(point)))


def link(hands, subjects, word):
    press(hands, dict(spot_of(hands, subjects).links)[word].center())


def test_numbers_are_the_same_in_list_on_the_wall_and_in_the_verdict(hands):
    listed = {row.number: row.finding for row in rows(hands)}
    verdict = {hands.place.verdict.number(f): f for f in hands.place.verdict.findings}
    marked = {mark.number for mark in hands.wall.show_now().marks}
    assert listed == verdict
    assert marked == set(verdict)
    assert len(hands.wall.show_now().measures) == 2  # both are gaps: their lines, without a second tag


def test_the_worst_stands_first_and_is_open(hands):
    assert [row.finding.severity for row in rows(hands)] == ["must", "should"]
    assert [row.open for row in rows(hands)] == [True, False]


def test_pressing_a_row_opens_it_and_selects_what_it_is_about(hands):
    press(hands, spot_of(hands, ("C", "D")).rect.center())
    assert set(hands.place.selected) == {"C", "D"}
    assert [row.open for row in rows(hands)] == [False, True]


def test_enter_on_a_finding_selects_what_it_is_about(hands):
    hands.window.findings.list.setFocus()
    hands.key("Down")
    hands.key("Return")
    assert set(hands.place.selected) == {"C", "D"}


def test_a_must_has_no_way_to_be_let_be(hands):
    assert "Let it be" not in dict(spot_of(hands, ("A", "B")).links)
    hands.window.findings.list.ask(spot_of(hands, ("A", "B")).row.finding)
    assert not hands.window.findings.list.reason.isVisible()


def test_a_should_is_let_be_with_its_reason(hands):
    press(hands, spot_of(hands, ("C", "D")).rect.center())
    link(hands, ("C", "D"), "Let it be")
    hands.type("both are cold")
    hands.key("Return")
    (entry,) = hands.layout.let_be
    assert (entry.rule, entry.subjects, entry.reason) == ("gap", ("C", "D"), "both are cold")
    assert hands.place.verdict.counts["should"] == 0
    assert [row.finding.let_be for row in rows(hands)][-1] == "both are cold"
    hands.key("Z", CTRL)
    assert hands.layout.let_be == ()


def test_escape_leaves_without_a_reason(hands):
    press(hands, spot_of(hands, ("C", "D")).rect.center())
    link(hands, ("C", "D"), "Let it be")
    hands.type("never mind")
    hands.key("Escape")
    assert hands.layout.let_be == ()
    assert not hands.window.findings.list.reason.isVisible()


def test_what_was_let_be_can_speak_again(hands):
    press(hands, spot_of(hands, ("C", "D")).rect.center())
    link(hands, ("C", "D"), "Let it be")
    hands.type("cold")
    hands.key("Return")
    press(hands, spot_of(hands, ("C", "D")).rect.center())
    link(hands, ("C", "D"), "Let it speak")
    assert hands.layout.let_be == ()


def test_why_tells_the_reason_for_the_rule(hands):
    link(hands, ("A", "B"), "Why?")
    page = hands.window.findings.page
    assert page.isVisible()
    from bayboard.rules.arrange import gap

    assert page.body.told.why.lower()[:40] in " ".join(gap.__doc__.split()).lower()


def test_a_cured_one_stays_struck_through_for_a_moment(hands, monkeypatch):
    from bayboard.window import findings_cured

    now = [100.0]
    monkeypatch.setattr(findings_cured.time, "monotonic", lambda: now[0])
    hands.click_mm(810, 200)
    hands.key("Right", CTRL)  # no act: only plain arrows move
    for _ in range(20):
        hands.key("Right")
    assert [(row.finding.subjects, row.cured) for row in rows(hands)] == [
        (("A", "B"), False),
        (("C", "D"), True),
    ]
    now[0] += 2.1
    hands.window.findings.list.follow()
    assert [row.finding.subjects for row in rows(hands)] == [("A", "B")]


def test_speaking_quiet_and_unlooked_rules_are_all_there_are(open_window):
    from bayboard.rules import RULES
    from bayboard.window.loud import quiet_rules

    hands = open_window(layout(gear=PIECES, cards={"box": {**_unmeasured()}}))
    verdict = hands.place.verdict
    spoke = {f.rule for f in verdict.findings} | {u.rule for u in verdict.unchecked}
    assert verdict.counts["unchecked"] > 0
    assert quiet_rules(verdict) + len(spoke) == len(RULES)


def _unmeasured():
    from tests.build import card

    return card(deep=None)


def test_what_nobody_could_look_at_unfolds_at_the_foot(open_window):
    hands = open_window(layout(gear=PIECES, cards={"box": _unmeasured()}))
    foot = hands.window.findings.foot
    hands.click(foot.mapTo(hands.window, QPointF(foot.rect().center())))
    assert foot.isChecked()
    assert hands.window.findings.below.isVisible()
    todo = [errand.words() for errand in hands.window.findings.unlooked.said()]
    assert "Measure the height of A, B, C, D" in todo


def test_the_strip_never_shows_a_tick_over_something_unchecked(open_window):
    from bayboard.window.loud import home_of

    hands = open_window(layout(gear=[gear("A", 200, 200)], cards={"box": _unmeasured()}))
    (lath,) = [lath for lath in hands.window.strip.laths() if lath.name == "Arrange"]
    assert lath.worst is None or lath.unchecked
    here = {u.rule for u in hands.place.verdict.unchecked if home_of(u.rule) in ("Measure", "Arrange")}
    assert lath.unchecked == len(here) > 0


def test_pressing_a_mark_on_the_wall_speaks_of_it(hands):
    from bayboard.window.draw.wall import wall_marks

    view = hands.wall
    found = wall_marks(hands.place.scale, hands.place.scene, hands.place.theme, view.show_now(), view._rect())
    number = next(n for n, f in ((r.number, r.finding) for r in rows(hands)) if f.subjects == ("C", "D"))
    hands.click(view.mapTo(hands.window, found[number][0]))
    assert set(hands.place.selected) == {"C", "D"}


def test_a_stand_in_is_dragged_by_the_mark_that_lies_on_it(hands):
    from bayboard.window.draw.wall import wall_marks

    view = hands.wall
    found = wall_marks(hands.place.scale, hands.place.scene, hands.place.theme, view.show_now(), view._rect())
    number = next(n for n, f in ((r.number, r.finding) for r in rows(hands)) if f.subjects == ("C", "D"))
    aside = found[number][0] + QPointF(14, 0)  # the mark's right half lies on D
    start, was = view.mapTo(hands.window, aside), {n: hands.gear(n).at for n in "CD"}
    hands.drag(start, start + QPointF(0, 60), CTRL)
    moved = [n for n in "CD" if hands.gear(n).at != was[n]]
    assert len(moved) == 1
    assert hands.place.selected == (moved[0],)


def test_a_mark_under_the_pointer_opens_its_tag(hands):
    from bayboard.window.draw.wall import wall_marks

    view = hands.wall
    assert view.show_now().told == frozenset()
    found = wall_marks(hands.place.scale, hands.place.scene, hands.place.theme, view.show_now(), view._rect())
    number, (spot, _) = sorted(found.items())[-1]
    hands.move(view.mapTo(hands.window, spot))
    assert view.show_now().told == {number}
    hands.move(hands.px(500, 380))
    assert view.show_now().told == frozenset()


def test_an_empty_board_says_what_will_come(open_window):
    hands = open_window(layout())
    assert not hands.window.findings.scroll.isVisible()
    assert hands.window.findings.nothing().startswith("Nothing yet. From the first stand-in on")
    hands = open_window(layout(gear=[gear("A", 200, 200)]))
    assert hands.window.findings.nothing() == "Nothing to put right."


@pytest.mark.parametrize("units", ["mm", "in"])
def test_tags_say_measure_and_need_in_the_units_shown(open_window, units):
    from bayboard.units.length import show_two
    from bayboard.window.short import few_words

    hands = open_window(layout(units=units, gear=PIECES))
    must, should = hands.place.verdict.findings[:2]
    much, need = show_two(must.measure, must.limit, units)
    assert few_words(must, units) == f"{much}, needs {need}"
    much, need = show_two(should.measure, should.limit, units)
    assert few_words(should, units) == f"{much}, {need} is better"


def test_what_comes_and_goes_while_in_hand_was_never_cured(hands):
    start = hands.px(200, 200)
    hands.press(start)
    for x in (150, 320, 400, 150):  # away from B, through it, and away again
        hands.move(hands.px(x, 200), CTRL)
    struck = [row.finding.rule for row in rows(hands) if row.cured]
    hands.release(hands.px(150, 200), CTRL)
    assert struck == ["gap"]


@pytest.mark.parametrize("size", [(1280, 800), (1600, 1000)])
def test_what_the_marks_mean_stands_clear_of_the_foot(open_window, monkeypatch, size):
    from bayboard.window import lettering

    drawn, panel = {}, open_window(layout(), size=size).window.findings
    monkeypatch.setattr(lettering, "draw_in", lambda p, rect, text, *_: drawn.update({text: rect}))
    panel.grab()
    for word in ("Must", "Should", "Note"):
        assert drawn[word].bottom() <= panel.foot.y()
