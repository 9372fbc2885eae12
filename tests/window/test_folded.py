"""Only the stage's own rules shout; the others fold into a line each, like what nobody could look at."""

import pytest
from PySide6.QtCore import QPointF
from tests.bays import bay

from bayboard.model.read import from_document
from bayboard.rules import RULES
from bayboard.rules.finding import Unchecked
from bayboard.window.findings_rows import Fold, first_sentence
from bayboard.window.loud import folded, heard, home_of, is_loud, quiet_rules, unlooked_rules
from bayboard.window.to_measure import errands, in_one_line

BUSY = from_document(bay(6, across=3))
ROOMS = ("measure", "arrange", "keep")


@pytest.fixture
def hands(open_window):
    return open_window(BUSY, size=(1280, 800))


def shown(hands):
    return hands.window.findings.list


def folds(hands):
    return {line.stage: line for line in shown(hands).lines() if isinstance(line, Fold)}


def press(hands, stage):
    spot = next(s for s in shown(hands).spots() if isinstance(s.row, Fold) and s.row.stage == stage)
    hands.window.findings.scroll.ensureVisible(0, round(spot.rect.center().y()))
    hands.click(shown(hands).mapTo(hands.window, QPointF(spot.rect.center())))


def test_every_rule_has_a_stage():
    assert {home_of(rule.RULE) for rule in RULES} <= {"Measure", "Arrange", "Wire", "Fix"}


def test_rows_and_folded_lines_tell_of_every_open_finding(hands):
    listed = {row.finding for row in shown(hands).rows()}
    rest = {f for fold in folded(hands.place.verdict, ROOMS) for f in fold.findings}
    assert listed | rest == {f for f in hands.place.verdict.findings if f.let_be is None}
    assert not listed & rest
    assert all(is_loud(f, ROOMS) for f in listed)


def test_a_folded_line_says_how_much_its_stage_found(hands):
    wire = [f for f in hands.place.verdict.findings if home_of(f.rule) == "Wire"]
    should = sum(f.severity == "should" for f in wire)
    assert folds(hands)["Wire"].words.startswith("Wire: ")
    assert f"{should} should" in folds(hands)["Wire"].words


def test_pressing_a_folded_line_unfolds_it_and_folds_it_again(hands):
    before = len(shown(hands).rows())
    press(hands, "Wire")
    assert folds(hands)["Wire"].unfolded
    assert len(shown(hands).rows()) > before
    press(hands, "Wire")
    assert len(shown(hands).rows()) == before


def test_the_keys_walk_onto_a_folded_line_and_enter_unfolds_it(hands):
    shown(hands).setFocus()
    for _ in range(len(shown(hands).lines())):
        hands.key("Down")
        if any(fold.current for fold in folds(hands).values()):
            break
    (stage,) = [fold.stage for fold in folds(hands).values() if fold.current]
    hands.key("Return")
    assert folds(hands)[stage].unfolded
    hands.key("Return")
    assert not folds(hands)[stage].unfolded


def test_a_finding_spoken_of_is_never_hidden_in_a_fold(hands):
    wire = next(f for f in hands.place.verdict.findings if home_of(f.rule) == "Wire")
    hands.place.take_up(wire)
    assert folds(hands)["Wire"].unfolded
    assert any(row.open and row.finding == wire for row in shown(hands).rows())


def test_n_walks_what_shouts_before_the_rest():
    from bayboard.rules.check import check

    order = [is_loud(f, ROOMS) for f in heard(check(BUSY), ROOMS)]
    assert order == sorted(order, reverse=True)


def test_another_stage_lets_other_rules_shout(hands):
    hands.place.listen_to(("wire",))
    assert {home_of(row.finding.rule) for row in shown(hands).rows()} == {"Wire"}
    assert "Wire" not in folds(hands)
    assert "Arrange" in folds(hands)


def test_the_wall_marks_only_what_shouts_or_is_spoken_of(hands):
    verdict = hands.place.verdict
    loud = {verdict.number(f) for f in verdict.findings if is_loud(f, ROOMS)}
    assert {mark.number for mark in hands.wall.show_now().marks} == loud
    wire = next(f for f in verdict.findings if home_of(f.rule) == "Wire")
    hands.place.take_up(wire)
    assert {mark.number for mark in hands.wall.show_now().marks} == loud | {verdict.number(wire)}


def test_the_strip_shows_the_worst_of_its_own_stage(hands):
    verdict = hands.place.verdict
    (lath,) = [lath for lath in hands.window.strip.laths() if lath.name == "Arrange"]
    worst = next(f for f in verdict.findings if is_loud(f, ROOMS))
    assert lath.worst == (worst.severity, verdict.number(worst))


def test_speaking_looked_and_could_not_are_all_rules(hands):
    verdict = hands.place.verdict
    unlooked = unlooked_rules(verdict)
    speaking = {f.rule for f in verdict.findings} - unlooked
    assert quiet_rules(verdict) + len(unlooked) + len(speaking) == len(RULES)


def test_what_lies_further_down_is_counted_and_a_press_away(hands):
    panel = hands.window.findings
    hidden = panel.hidden_rows()
    assert hidden > 0
    assert panel.more.text() == f"{hidden} more"
    panel.more.click()
    assert panel.hidden_rows() < hidden


@pytest.mark.parametrize("size", [(1280, 800), (1600, 1000)])
def test_closed_rows_are_one_line_of_their_room(open_window, size):
    from bayboard.window import lettering
    from bayboard.window.findings_rows import BODY, sentence_at

    hands = open_window(BUSY, size=size)
    room = shown(hands).width() - sentence_at(shown(hands).width(), hands.place.theme)
    closed = [spot for spot in shown(hands).spots() if not spot.open]
    assert closed
    assert all(len(spot.lines) == 1 and lettering.width(spot.lines[0], BODY) <= room for spot in closed)


def test_a_long_closed_row_tells_its_first_sentence():
    assert first_sentence("A2 stands 1/8 in off B1. It needs 1/4 in.") == "A2 stands 1/8 in off B1."
    assert first_sentence("A2 is hidden.") == "A2 is hidden."


def line(says, *subjects, rule="gap"):
    return Unchecked(rule=rule, subjects=subjects, says=says)


def test_things_of_a_kind_are_measured_together():
    told = [
        line("Nobody measured the height of A1.", "A1"),
        line("Nobody measured the height of A1.", "A1", rule="overlap"),
        line("Nobody measured the height of D1.", "D1"),
        line("Nobody measured seat left up.", "left"),
        line("The heat of A1 is a guess.", "A1"),
        line("Nobody said how thick lead C1 is.", "C1"),
    ]
    assert [errand.words() for errand in errands(told)] == [
        "Measure the height of A1, D1",
        "Measure seat left up",
        "Make sure of the heat of A1",
        "Say how thick lead C1 is",
    ]
    assert in_one_line(errands(told[:4])) == "Measure: the height of A1, D1 · seat left up"


def test_many_things_of_a_kind_are_counted():
    told = [line(f"Nobody measured the height of A{n}.", f"A{n}") for n in range(9)]
    (errand,) = errands(told)
    assert errand.what == "the height of A0, A1, A2, A3, A4, A5 and 3 more"


def test_a_sentence_of_another_form_is_kept_whole():
    (errand,) = errands([line("The moon stands badly.", "A1")])
    assert errand.words() == "See to it: the moon stands badly"
