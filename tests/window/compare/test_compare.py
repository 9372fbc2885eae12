"""Kept with real hands: two are chosen, walked, spoken of; one goes back, takes it back, and leaves."""

import json

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QAccessible, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from tests.build import card, gear, layout
from tests.window.hands import CTRL, NONE, PLAIN, SHIFT

from bayboard.edits.move_gear import MoveGear
from bayboard.edits.to_bench import ToBench
from bayboard.job.job import Job, open_job
from bayboard.model.read import read
from bayboard.model.refused import Refused
from bayboard.window.access import interface_for
from bayboard.window.compare import then_card
from bayboard.window.compare.words import DRAFT
from bayboard.window.theme import DARK, LIGHT

RIGHT = Qt.MouseButton.RightButton
BOX = {"box": card(screws=[{"at": [40, 20], "thread": "M5"}])}


@pytest.fixture
def hands(kept, pickup):
    return kept(pickup)


@pytest.fixture
def small(tmp_path):
    """Return a function that makes a job of two boxes with so many revisions, each 10 mm further right."""

    def made(revisions):
        job = Job(layout(cards=BOX, gear=[gear("A1", 200, 150), gear("A2", 600, 150)]))
        job.house(tmp_path / "small.bay")
        for number in range(revisions):
            job.do(MoveGear(("A1",), 10.0, 0.0))
            job.keep(f"step {number + 1}")
        return job

    return made


def on_card(hands, pick):
    """Return the middle of a card as a pixel of the window."""
    line = hands.stage.line
    spot = line.rect_of(hands.desk.picks.index(pick)).center()
    return QPointF(line.mapTo(hands.window, spot.toPoint()))


def on_row(hands, label):
    """Return the middle of a row as a pixel of the window."""
    rows = hands.stage.changes.rows
    spot = next(spot for spot in rows.spots() if spot.row.label == label)
    return QPointF(rows.mapTo(hands.window, spot.rect.center().toPoint()))


def words_of(hands):
    return {row.label: row.words for row in hands.desk.rows()}


def click_widget(hands, widget):
    hands.click(QPointF(widget.mapTo(hands.window, widget.rect().center())))


# --- coming and going ---


def test_ctrl_k_shows_what_is_kept_and_escape_goes_back_to_work(kept, pickup):
    hands = kept(pickup, here=False)
    hands.key("K", CTRL)
    assert hands.window.stage == "Kept"
    assert hands.stage.sight.hasFocus()
    assert hands.stage.line.isVisible() and hands.stage.changes.isVisible() and hands.stage.then.isVisible()
    hands.key("Escape")
    assert hands.window.stage == "Arrange"
    assert hands.wall.hasFocus() and not hands.stage.sight.isVisible()


def test_at_first_the_draft_stands_beside_the_newest_that_it_differs_from(hands):
    assert (hands.desk.then, hands.desk.now) == (6, DRAFT)
    assert hands.stage.sight.phrases()[0] == "the draft; revision 6 shows as chalk"


def test_the_strip_says_which_two_and_the_usual_again_afterwards(hands):
    strip = hands.window.strip
    assert strip.state() == "The draft beside revision 6 · Esc goes back to work"
    hands.key("Left")
    assert strip.state().startswith("The draft beside revision 5")
    hands.key("Escape")
    assert "revision 5" not in strip.state()


def test_a_draft_that_is_kept_is_compared_with_the_one_before(kept, small):
    job = small(3)
    hands = kept(job)
    assert hands.desk.kept_as == 3
    assert (hands.desk.then, hands.desk.now) == (2, DRAFT)
    assert hands.stage.line.cards.card(DRAFT).foot == "as revision 3"


def test_before_the_first_is_kept_one_is_told_how(kept, small):
    hands = kept(small(0))
    assert hands.desk.then is None
    assert hands.desk.rows() == ()
    assert not hands.stage.then.back.isVisible()
    assert hands.stage.then.paragraphs() == (("Press K to keep this one.", True),)
    hands.key("Left")
    hands.key("Down")
    assert hands.desk.then is None


def test_a_plain_layout_shows_its_draft_alone(kept, tmp_path):
    hands = kept(Job(layout(cards=BOX, gear=[gear("A1", 200, 150)])))
    assert hands.desk.picks == (DRAFT,)
    assert hands.stage.changes.nothing().startswith("Nothing to compare yet")


def test_how_a_plain_layout_gets_revisions_is_read_whole_in_the_smallest_window(kept, monkeypatch):
    from bayboard.window import lettering
    from bayboard.window.compare.words import PLAIN_FILE
    from bayboard.window.floor_plan import LEAST

    line = kept(Job(layout()), LEAST.toTuple()).stage.line
    drawn = {}
    monkeypatch.setattr(lettering, "draw", lambda p, at, text, *_: drawn.update({text: at}))
    line.grab()
    last = PLAIN_FILE.split()[-1]
    assert [at.y() < line.height() for text, at in drawn.items() if text.endswith(last)] == [True]


def test_what_is_kept_meanwhile_hangs_on_the_line_at_once(kept, small):
    job = small(1)
    job.do(MoveGear(("A2",), 0.0, 20.0))
    hands = kept(job)
    assert hands.desk.picks == (1, DRAFT)
    job.keep("raised")
    assert hands.desk.picks == (1, 2, DRAFT)
    assert hands.desk.kept_as == 2
    assert (hands.desk.then, hands.desk.now) == (1, DRAFT)


# --- choosing two ---


def test_a_click_chooses_then_and_with_shift_or_the_right_button_now(hands):
    hands.click(on_card(hands, 4))
    assert (hands.desk.then, hands.desk.now) == (4, DRAFT)
    hands.click(on_card(hands, 5), SHIFT)
    assert (hands.desk.then, hands.desk.now) == (4, 5)
    hands.press(on_card(hands, 6), button=RIGHT)
    hands.release(on_card(hands, 6))
    assert (hands.desk.then, hands.desk.now) == (4, 6)


def test_a_click_on_the_other_one_changes_the_two_round(hands):
    hands.click(on_card(hands, DRAFT))
    assert (hands.desk.then, hands.desk.now) == (DRAFT, 6)
    assert hands.stage.sight.phrases()[0] == "revision 6; the draft shows as chalk"


def test_arrows_walk_then_and_shift_arrows_now_and_neither_meets_the_other(hands):
    hands.key("Left")
    hands.key("Left")
    assert (hands.desk.then, hands.desk.now) == (4, DRAFT)
    hands.key("Left", SHIFT)
    assert (hands.desk.then, hands.desk.now) == (4, 6)
    hands.key("Left", SHIFT)
    hands.key("Left", SHIFT)
    assert (hands.desk.then, hands.desk.now) == (4, 3)
    hands.key("Left")
    assert (hands.desk.then, hands.desk.now) == (2, 3)
    hands.key("Right")
    assert (hands.desk.then, hands.desk.now) == (4, 3)


def test_home_and_end_go_to_the_ends(hands):
    hands.key("Home")
    assert hands.desk.then == 1
    hands.key("End")
    assert hands.desk.then == 6  # the draft is now
    hands.key("Home", SHIFT)
    assert (hands.desk.then, hands.desk.now) == (6, 1)


def test_the_arrows_stop_at_either_end(hands):
    for _ in range(9):
        hands.key("Left")
    assert hands.desk.then == 1
    for _ in range(9):
        hands.key("Right")
    assert hands.desk.then == 6


# --- what changed ---


def test_the_rows_say_what_moved_came_and_was_drilled(hands):
    hands.click(on_card(hands, 4))
    told = words_of(hands)
    assert told["A2"] == "moved right 1, up 2 in"
    assert told["B1"] == "moved right 11/16, down 13/16 in"
    assert told["W1"] == "came up from the bench"
    assert told["Holes"] == "H7 and H8 were drilled since"


def test_units_follow_the_workplace(hands):
    hands.key("U")
    told = words_of(hands)
    assert told["A2"] == "moved right 25.4, up 50.8 mm"
    assert told["Units"] == "mm, in then"


def test_the_findings_come_a_moment_later(hands):
    hands.desk._judge.stop()
    hands.desk._verdicts.clear()
    assert words_of(hands)["Findings"] == "looking …"
    hands.desk.judge()
    counts = hands.place.job.verdict_of(hands.desk.layout(6)).counts
    assert words_of(hands)["Findings"].startswith(f"{counts['must']} must, {counts['should']} should")


def test_walking_does_not_wait_for_the_rules(hands, monkeypatch):
    asked = []
    monkeypatch.setattr(hands.place.job, "verdict_of", asked.append)
    for _ in range(4):
        hands.key("Left")
    assert hands.desk.then == 2 and asked == []


def test_a_row_is_spoken_of_on_the_wall_and_the_chalk_line_goes_to_it(hands):
    hands.click(on_row(hands, "B1"))
    assert hands.desk.spoken() == ("B1",)
    box = hands.desk.made.new.placed["B1"].box
    assert hands.place.chalk_x == pytest.approx((box[0] + box[2]) / 2)
    hands.key("Up")
    assert hands.desk.spoken() == ("A2",)
    hands.key("Down")
    hands.key("Down")
    assert hands.desk.spoken() == ("D1",)


def test_the_section_tells_the_room_under_the_seat_then_and_now(hands):
    hands.click(on_row(hands, "A2"))
    told = hands.stage.side.room_words()
    assert told[0] == "room under the seat: 13/64 then, 5/16 in now"
    assert [piece.id for piece in hands.stage.side.cut_then()] == ["A2"]
    hands.key("F")
    assert hands.stage.side.room_words() == ()


def test_a_click_in_the_section_speaks_of_the_piece_that_is_cut(hands):
    hands.place.set_chalk(hands.desk.made.new.placed["A2"].at[0])
    side, piece = hands.stage.side, hands.desk.made.new.placed["A2"]
    spot = side.layer_scale().px(-(piece.under + 5.0), piece.at[1])
    hands.click(QPointF(side.mapTo(hands.window, spot.toPoint())))
    assert hands.desk.spoken() == ("A2",)


def test_a_click_on_the_wall_speaks_of_the_piece_or_its_ghost(hands):
    new, old = hands.desk.made.new.placed["D1"], hands.desk.made.old.placed["D1"]
    sight = hands.stage.sight
    hands.click(QPointF(sight.mapTo(hands.window, hands.place.scale.px(*new.at))))
    assert hands.desk.spoken() == ("D1",)
    sight.setFocus()
    hands.desk.leave_row()
    left = (old.box[0] + 3.0, old.box[1] + 3.0)
    hands.click(QPointF(sight.mapTo(hands.window, hands.place.scale.px(*left))))
    assert hands.desk.spoken() == ("D1",)


def test_a_click_on_bare_wall_leaves_the_row(hands):
    hands.click(on_row(hands, "A2"))
    hands.click(QPointF(hands.stage.sight.mapTo(hands.window, QPoint(30, hands.stage.sight.height() - 20))))
    assert hands.desk.row == -1


def test_a_drag_pushes_the_picture_and_changes_nothing(hands):
    before, draft = hands.place.scale, hands.layout
    start = QPointF(hands.stage.sight.mapTo(hands.window, hands.place.scale.px(*_at(hands, "A1"))))
    hands.drag(start, start + QPointF(30, 12))
    assert hands.place.scale.x0 == pytest.approx(before.x0 + 30)
    assert hands.layout is draft


def test_the_keys_of_arrange_move_nothing_here(hands):
    draft = hands.layout
    hands.click(on_row(hands, "A2"))
    for key in ("R", "T", "B", "Up", "Down", "Delete"):
        hands.key(key)
    assert hands.layout is draft


def test_the_chalk_line_can_be_dragged_and_escape_calls_that_off(hands):
    x = hands.place.chalk_x
    top = QPointF(hands.stage.sight.mapTo(hands.window, QPoint(round(hands.place.scale.px(x, 0).x()), 8)))
    hands.drag(top, top + QPointF(60, 0), let_go=False)
    assert hands.place.chalk_x == pytest.approx(x + 60 / hands.place.scale.px_per_mm)
    hands.key("Escape")
    assert hands.place.chalk_x == pytest.approx(x)
    assert hands.window.stage == "Kept"
    hands.release(top)


def _at(hands, name):
    return hands.desk.made.new.placed[name].at


def test_escape_leaves_the_row_before_the_mode(hands):
    hands.click(on_row(hands, "A2"))
    hands.key("Escape")
    assert (hands.desk.row, hands.window.stage) == (-1, "Kept")
    hands.key("Escape")
    assert hands.window.stage == "Arrange"


def test_a_revision_that_cannot_be_read_is_said_and_the_others_still_compare(hands, monkeypatch):
    real = hands.place.job.revision

    def broken(number):
        if number == 3:
            raise Refused("revision 3", "its text is damaged", "Go back to another one")
        return real(number)

    monkeypatch.setattr(hands.place.job, "revision", broken)
    hands.desk._scenes.clear()
    hands.desk.choose(3)
    assert hands.desk.made is None
    assert hands.stage.changes.nothing() == "revision 3: its text is damaged. Go back to another one."
    assert not hands.stage.then.back.isVisible() and not hands.stage.then.save.isVisible()
    assert not hands.picture().isNull()
    hands.key("Left")
    assert hands.desk.then == 2 and words_of(hands)["A2"]


def test_a_file_that_is_gone_is_said_in_place(hands, monkeypatch):
    def gone():
        raise Refused("pickup.bay", "it cannot be read any more", "Put the stick back")

    monkeypatch.setattr(hands.place.job, "prints", gone)
    hands.place.changed.emit()
    assert hands.stage.changes.nothing().startswith("pickup.bay: it cannot be read any more.")
    assert not hands.picture().isNull()


# --- going back ---


def test_going_back_makes_the_old_one_the_draft_keeps_todays_and_undo_takes_it_back(hands):
    before = hands.layout
    hands.click(on_card(hands, 4))
    assert hands.stage.then.foot().startswith(
        "Going back keeps today's draft as revision 7, so nothing is lost."
    )
    hands.key("Return")
    assert hands.stage.then.back.hasFocus()
    hands.key("Space")
    assert hands.window.stage == "Arrange"
    assert hands.line() == "Back at revision 4. The draft before is kept as revision 7. Ctrl Z takes it back."
    assert hands.gear("A2").at == hands.place.job.revision(4).gear[2].at
    assert hands.place.job.parent == 4
    assert hands.place.job.revision(7).gear == before.gear
    hands.key("Z", CTRL)
    assert hands.layout.gear == before.gear


def test_what_was_drilled_stays_drilled_on_going_back(hands):
    hands.click(on_card(hands, 4))
    assert "What is drilled stays drilled." in hands.stage.then.foot()
    click_widget(hands, hands.stage.then.back)
    assert {f.id for f in hands.layout.fixings if f.drilled} == {"H7", "H8"}


def test_a_draft_that_is_kept_is_not_kept_again(kept, small):
    job = small(3)
    hands = kept(job)
    assert hands.stage.then.foot() == "The draft is kept already as revision 3, so nothing is lost."
    hands.click(on_card(hands, 1))
    click_widget(hands, hands.stage.then.back)
    assert len(job.revisions()) == 3
    assert hands.line() == "Back at revision 1. Ctrl Z takes it back."


def test_there_is_no_going_back_to_what_the_draft_is(kept, small):
    hands = kept(small(3))
    hands.desk.choose(3)
    assert not hands.stage.then.back.isVisible()
    assert hands.stage.then.foot() == "The draft is revision 3 as it was kept: go on from here."


def test_an_older_one_that_the_draft_is_again_is_told_so(kept, small):
    job = small(3)
    job.do(MoveGear(("A1",), -20.0, 0.0))
    hands = kept(job)
    hands.desk.choose(1)
    assert hands.desk.kept_as is None
    assert words_of(hands) == {"": "Nothing changed."}
    assert not hands.stage.then.back.isVisible()
    hands.desk.choose(3, now=True)
    assert hands.desk.go_back() is None
    assert hands.line() == "The draft is revision 1 already."


def test_a_job_that_is_looked_at_can_be_compared_but_not_gone_back_in(kept, small):
    path = small(2)
    path.close()
    hands = kept(open_job(path.path, look=True))
    assert hands.desk.picks == (1, 2, DRAFT)
    assert not hands.stage.then.back.isVisible()
    assert hands.stage.then.save.isVisible()
    assert hands.stage.then.foot() == "This job is only looked at, so there is no going back in it."


def test_a_revision_is_saved_as_a_file_of_its_own(hands, tmp_path, monkeypatch):
    asked = []

    def answer(_parent, start):
        asked.append(start)
        return str(tmp_path / "out")

    monkeypatch.setattr(then_card, "ask_where", answer)
    hands.click(on_card(hands, 5))
    click_widget(hands, hands.stage.then.save)
    assert asked[0].endswith("pickup-revision-5.json")
    assert read((tmp_path / "out.json").read_bytes()) == hands.place.job.revision(5)
    assert json.loads((tmp_path / "out.json").read_text(encoding="utf-8"))["bayboard"] == 1
    assert hands.line() == "Revision 5 is in out.json."


def test_a_file_that_cannot_be_written_is_said_and_stays_to_be_read(hands, tmp_path, monkeypatch):
    monkeypatch.setattr(then_card, "ask_where", lambda *_: str(tmp_path / "nowhere" / "out.json"))
    said = []
    hands.place.refused.connect(said.append)
    hands.stage.then.save_own()
    assert len(said) == 1 and said[0].endswith(".")


def test_the_card_tells_the_note_and_what_was_printed(hands):
    hands.click(on_card(hands, 4))
    told = [text for text, _ in hands.stage.then.paragraphs()]
    assert told[0] == "“Shown to owner. Wants the processor lights in view with the seat down.”"
    assert told[1].startswith("Printed ") and told[1].endswith("21 pages of letter, walnut harbour.")
    hands.click(on_card(hands, 5))
    assert hands.stage.then.paragraphs()[1][0] == "Nothing was printed from it."


# --- the line ---


def wheel(widget, notches):
    event = QWheelEvent(
        QPointF(40, 100),
        widget.mapToGlobal(QPointF(40, 100)),
        QPoint(),
        QPoint(0, 120 * notches),
        NONE,
        PLAIN,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(widget, event)


def test_the_wheel_pushes_the_line_and_stops_at_its_ends(kept, small):
    hands = kept(small(12))
    line = hands.stage.line
    assert line.scrolled == pytest.approx(line.most())
    wheel(line, 3)
    assert line.scrolled < line.most()
    wheel(line, 50)
    assert line.scrolled == 0.0
    wheel(line, -90)
    assert line.scrolled == pytest.approx(line.most())


def test_only_cards_that_are_seen_are_painted(kept, small, monkeypatch):
    hands = kept(small(40))
    line = hands.stage.line
    asked = []
    real = line.cards.picture
    monkeypatch.setattr(line.cards, "picture", lambda pick: asked.append(pick) or real(pick))
    wheel(line, 20)
    line.grab()
    assert 0 < len(set(asked)) <= line.width() / 100 + 2


def test_a_drag_pushes_the_line_and_chooses_nothing(kept, small):
    hands = kept(small(12))
    then, start = hands.desk.then, on_card(hands, 10)
    before = hands.stage.line.scrolled
    hands.drag(start, start + QPointF(120, 0))
    assert hands.stage.line.scrolled == pytest.approx(before - 120)
    assert hands.desk.then == then


def test_walking_brings_the_card_into_sight_and_the_other_is_told_at_the_edge(kept, small):
    hands = kept(small(12))
    hands.key("Home")
    line = hands.stage.line
    assert line.rect_of(0).left() >= 0
    middle, told = line.choice_at(len(hands.desk.picks) - 1, "now")
    assert told == "now →" and middle.x() < line.width()
    hands.click(QPointF(line.mapTo(hands.window, middle.toPoint())))
    assert line.rect_of(len(hands.desk.picks) - 1).right() <= line.width()
    assert (hands.desk.then, hands.desk.now) == (1, DRAFT)


def test_the_cards_say_what_was_printed_and_drilled(hands, qtbot):
    cards = hands.stage.line.cards
    qtbot.waitUntil(lambda: cards.card(6).foot != "", timeout=5000)
    assert [cards.card(n).foot for n in (4, 5, 6)] == ["printed", "", "2 drilled"]
    assert cards.card(DRAFT).foot == "not kept yet"


# --- read aloud, worn, sized ---


def test_line_rows_and_wall_read_as_lists(hands):
    line = interface_for("", hands.stage.line)
    told = [line.child(i).text(QAccessible.Text.Name) for i in range(line.childCount())]
    assert told[-1] == "the draft, now, not kept yet, now"
    assert told[5].startswith("revision 6, ") and told[5].endswith("then")
    assert [bool(line.child(i).state().selected) for i in range(7)] == [False] * 5 + [True, True]
    rows = interface_for("", hands.stage.changes.rows)
    assert rows.child(0).text(QAccessible.Text.Name) == "A2 moved right 1, up 2 in"
    wall = interface_for("", hands.stage.sight)
    assert "A2 moved right 1, up 2 in" in [
        wall.child(i).text(QAccessible.Text.Name) for i in range(wall.childCount())
    ]


def test_f6_walks_the_parts_round(hands):
    parts = [hands.stage.sight, hands.stage.side, hands.stage.line, hands.stage.changes.rows]
    for part in (*parts[1:], hands.stage.then.save, hands.window.strip, parts[0]):
        hands.key("F6")
        assert QApplication.focusWidget() is part


def test_tab_on_the_wall_walks_what_differs_and_then_leaves(hands):
    hands.desk.leave_row()
    for count in range(len(hands.desk.rows())):
        hands.key("Tab")
        assert hands.desk.row == count
    hands.key("Tab")
    assert not hands.stage.sight.hasFocus()


@pytest.mark.parametrize("theme", [LIGHT, DARK, LIGHT.sized(1.5)])
@pytest.mark.parametrize("size", [(1280, 800), (1600, 1000)])
def test_it_paints_in_every_dress_and_size(hands, theme, size):
    hands.frame.resize(*size)
    hands.window.dress(theme)
    hands.desk.speak_of(0)
    assert not hands.picture().isNull()
    side = hands.stage.then
    assert side.scroll.height() > 0
    assert side.back.geometry().bottom() < side.height()


def test_a_piece_that_went_shows_as_chalk_alone(kept, small):
    job = small(1)
    job.do(ToBench(("A2",)))
    hands = kept(job)
    shift = hands.desk.shift("A2")
    assert (shift.kind, shift.now, bool(shift.was)) == ("gone", (), True)
    assert words_of(hands)["A2"] == "back to the bench"
    hands.click(on_row(hands, "A2"))
    assert hands.place.chalk_x == pytest.approx(600.0)


def test_another_vehicle_begins_anew(hands, tmp_path):
    hands.key("Left")
    other = Job(layout(cards=BOX, gear=[gear("A1", 200, 150)]))
    hands.place.take(other)
    assert (hands.desk.picks, hands.desk.then, hands.desk.now) == ((DRAFT,), None, DRAFT)
    assert not hands.picture().isNull()


def test_leaving_by_a_mouse_that_goes_elsewhere_leaves_no_hover(hands):
    line = hands.stage.line
    hands.move(on_card(hands, 5))
    assert line.hovered == hands.desk.picks.index(5)
    QApplication.sendEvent(line, QEvent(QEvent.Type.Leave))
    assert line.hovered == -1


def test_k_keeps_the_draft_in_place_and_it_hangs_on_the_line(hands):
    hands.key("K")
    hands.type("better")
    hands.key("Return")
    assert hands.window.stage == "Kept"
    assert hands.desk.picks[-2:] == (7, DRAFT)
    assert hands.stage.line.cards.card(7).note == "better"
    assert hands.stage.line.cards.card(DRAFT).foot == "as revision 7"
    hands.key("Left")
    assert hands.desk.then == 5


def test_closing_the_window_at_kept_reads_nothing_of_a_file_let_go_of(hands):
    hands.key("Left")
    hands.frame.close()
    hands.place.job.close()
    QTest.qWait(400)  # longer than the rest before the rules are asked
    assert not hands.desk._judge.isActive()
