"""Printing with real hands: sheets taken up, stacks switched, paper changed, the PDF made and found."""

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QDesktopServices
from tests.build import gear, layout
from tests.window.hands import CTRL, SHIFT
from tests.window.print.bench import Printing, wide

from bayboard.__main__ import main
from bayboard.model.write import write
from bayboard.window import lettering
from bayboard.window.print import print_card, words
from bayboard.window.theme import DARK

NEAR = [gear("A1", 200, 200, "amp"), gear("A2", 441, 200, "amp")]  # 1 mm apart, 6 needed


@pytest.fixture
def hands(printing) -> Printing:
    return printing()


@pytest.fixture
def asked_for(monkeypatch, tmp_path):
    """Answer the one dialog with a path."""

    def answer(name="out.pdf"):
        path = tmp_path / name
        monkeypatch.setattr(print_card, "ask_pdf", lambda parent, start: str(path))
        return path

    return answer


def middle_of(hands, number):
    """Return the middle of a sheet's own part, as a pixel of the window."""
    _, sheet = next((b, s) for b in hands.desk.boards() for s in b.sheets if s.number == number)
    x0, y0, x1, y1 = sheet.core
    spot = hands.place.scale.px((x0 + x1) / 2, (y0 + y1) / 2)
    return QPointF(hands.stage.sheets.mapTo(hands.window, spot.toPoint()))


def test_ctrl_p_goes_to_the_stage_and_escape_back(hands):
    hands.key("Escape")
    assert hands.window.stage == "Arrange"
    assert hands.wall.isVisible() and hands.wall.hasFocus()
    assert not hands.stage.sheets.isVisible()
    hands.key("P", CTRL)
    assert hands.window.stage == "Print"
    assert hands.stage.sheets.isVisible() and hands.stage.sheets.hasFocus()
    assert not hands.wall.isVisible()


def test_the_number_of_the_stage_is_the_one_of_the_strip(hands):
    hands.key("2", CTRL)
    assert hands.window.stage == "Arrange"
    hands.key("5", CTRL)
    assert hands.window.stage == "Print"


def test_a_click_takes_a_sheet_in_hand(hands):
    assert hands.desk.count("drill") >= 4
    hands.click(middle_of(hands, 3))
    assert hands.desk.chosen == 2
    assert hands.desk.sheet()[1].number == 3
    assert hands.stage.page.title()[0] == "Sheet 3"


def test_a_push_moves_the_picture_and_takes_no_sheet(hands):
    before = hands.place.scale
    start = middle_of(hands, 3)
    hands.drag(start, start + QPointF(40, 10))
    assert hands.desk.chosen == 0
    assert hands.place.scale.x0 == pytest.approx(before.x0 + 40)


def test_arrows_go_to_the_sheet_beside_and_stop_at_the_rim(hands):
    first = hands.desk.sheet()[1]
    assert first.left is None and first.above is None
    hands.key("Right")
    assert hands.desk.sheet()[1].number == first.right
    hands.key("Left")
    hands.key("Left")
    hands.key("Up")
    assert hands.desk.sheet()[1].number == 1


def test_tab_walks_the_sheets_in_taping_order_and_then_leaves(hands):
    count = hands.desk.count("drill")
    for number in range(1, count + 1):
        assert hands.desk.sheet()[1].number == number
        hands.key("Tab")
    assert not hands.stage.sheets.hasFocus()
    hands.key("Tab", SHIFT)
    assert hands.stage.sheets.hasFocus()


def test_the_pages_of_cards_are_turned_to_from_the_sheet_in_hand(hands):
    hands.stage.page.setFocus()
    for _ in range(hands.desk.count("drill")):
        hands.key("PageDown")
    assert hands.stage.page.title()[0] == "Card sheet 1"
    assert hands.desk.sheet() is None
    assert "A1" in hands.stage.page.lines()[0]


def test_a_press_on_the_stack_of_cards_leaves_them_out(hands):
    both = hands.desk.count()
    cards = hands.stage.stacks.stacks()[1]
    hands.click_on(hands.stage.stacks, cards.sheet.center())
    hands.rest()
    assert hands.desk.wanted() == ("drill",)
    assert 0 < hands.desk.count() < both
    assert hands.stage.stacks.state("cards") == "left out"
    hands.key("Space")
    hands.rest()
    assert hands.desk.count() == both


def test_with_both_stacks_off_the_reason_stands_where_the_button_was(hands):
    hands.stage.stacks.setFocus()
    hands.key("Space")
    hands.key("Right")
    hands.key("Space")
    hands.rest()
    assert not hands.stage.print_card.make.isVisible()
    assert hands.stage.print_card.lines()[0] == ("must", "Nothing is switched on. Press a stack to print it.")


def test_another_paper_lays_other_sheets(hands):
    many = hands.desk.count("drill")
    card = hands.stage.print_card
    card.paper.setFocus()
    hands.key("Right")  # from A4 to A3
    assert hands.desk.choices.paper == "a3"
    hands.rest()
    assert 0 < hands.desk.count("drill") < many
    assert card.make.text() == f"Make the PDF of {words.counted(hands.desk.count())}"


def test_every_paper_is_on_the_card_and_can_be_pressed(hands):
    card = hands.stage.print_card
    for half, paper in reversed(list(zip(card.paper.halves(), words.PAPERS, strict=True))):
        hands.click_on(card.paper, half.center())
        assert hands.desk.choices.paper == paper


def test_a_margin_that_leaves_no_room_is_refused_in_place_and_nothing_is_lost(hands):
    card, before = hands.stage.print_card, hands.desk.sheets
    card.margin.setFocus()
    hands.type("60")
    hands.key("Return")
    hands.rest()
    assert card.margin.wrong.startswith("A margin of 60 mm leaves no room")
    assert card.lines()[0] == ("must", card.margin.wrong)
    assert hands.desk.sheets is before  # the last ones stay on the wall
    assert not hands.desk.ready()
    card.margin.setFocus()
    hands.type("12")
    hands.key("Return")
    hands.rest()
    assert card.margin.wrong == "" and hands.desk.ready()


def test_what_is_no_length_is_said_and_the_margin_stays(hands):
    card = hands.stage.print_card
    card.margin.setFocus()
    hands.type("wide")
    hands.key("Return")
    assert card.lines()[0][0] == "must"
    assert hands.desk.choices.margin == 10.0


@pytest.mark.parametrize(
    ("paper", "face", "units", "off", "words_for_it"),
    [
        ("a4", "front", "mm", frozenset(), []),
        ("tabloid", "back", "in", {"cards"}, ["--face", "back", "--units", "in", "--only", "drill"]),
        ("roll-610", "front", "mm", {"drill"}, ["--only", "cards"]),
    ],
)
def test_the_pdf_is_byte_for_byte_what_the_command_writes(
    hands, asked_for, tmp_path, paper, face, units, off, words_for_it
):
    hands.desk.choose(paper=paper, face=face, units=units, off=frozenset(off))
    hands.rest()
    mine = asked_for()
    hands.stage.print_card.make.setFocus()
    hands.key("Return")
    file, theirs = tmp_path / "bay.json", tmp_path / "command.pdf"
    file.write_text(write(hands.layout), encoding="utf-8")
    assert main(["print", str(file), "--paper", paper, "--out", str(theirs), *words_for_it]) == 0
    assert mine.read_bytes() == theirs.read_bytes()
    assert hands.desk.saved_words == words.saved(hands.desk.count(), "out.pdf")


def test_enter_on_the_wall_leads_to_the_button_and_enter_makes_the_pdf(hands, asked_for):
    path = asked_for()
    hands.key("Return")
    assert hands.stage.print_card.make.hasFocus() and not path.exists()
    hands.key("Return")
    assert path.read_bytes().startswith(b"%PDF-1.7")


def test_show_it_opens_the_file_that_was_saved(hands, asked_for, monkeypatch):
    opened = []
    monkeypatch.setattr(QDesktopServices, "openUrl", lambda url: opened.append(url.toLocalFile()))
    path = asked_for("at the bench.pdf")
    hands.click_on(hands.stage.print_card.make)
    assert hands.stage.print_card.show_it.isVisible()
    hands.click_on(hands.stage.print_card.show_it)
    assert opened == [str(path)]


def test_a_file_that_cannot_be_written_is_said_and_the_choices_stay(hands, asked_for):
    asked_for("no such folder/out.pdf")
    hands.click_on(hands.stage.print_card.make)
    assert "no such folder to save in" in hands.desk.saved_words
    assert hands.desk.saved is None and not hands.stage.print_card.show_it.isVisible()
    assert hands.desk.ready()


def test_a_name_without_an_ending_gets_one_and_never_replaces_a_file_unasked(hands, asked_for, tmp_path):
    (tmp_path / "plain.pdf").write_bytes(b"kept")
    asked_for("plain")
    hands.click_on(hands.stage.print_card.make)
    assert (tmp_path / "plain.pdf").read_bytes() == b"kept"
    assert "is there already" in hands.stage.print_card.lines()[0][1]
    asked_for("other")
    hands.click_on(hands.stage.print_card.make)
    assert (tmp_path / "other.pdf").exists()


def test_nothing_happens_when_the_dialog_is_left(hands, monkeypatch):
    monkeypatch.setattr(print_card, "ask_pdf", lambda parent, start: "")
    hands.click_on(hands.stage.print_card.make)
    assert hands.desk.saved_words == "" and not hands.desk.pressing


def test_open_musts_are_said_plainly_and_do_not_stop_the_print(printing):
    hands = printing(wide(gear=NEAR))
    count = hands.place.verdict.counts["must"]
    assert count > 0
    start = "1 must is" if count == 1 else f"{count} musts are"
    assert ("must", f"{start} open; holes print where they stand.") in hands.stage.print_card.lines()
    assert hands.desk.ready() and hands.stage.print_card.make.isVisible()


@pytest.mark.parametrize("size", [(1280, 800), (1600, 1000)])
def test_the_open_musts_are_read_also_below_what_was_saved(printing, monkeypatch, tmp_path, size):
    hands = printing(wide(gear=NEAR), size=size)
    monkeypatch.setattr(print_card, "ask_pdf", lambda parent, start: str(tmp_path / "out.pdf"))
    card = hands.stage.print_card
    hands.click_on(card.make)
    assert [sign for sign, _ in card.lines()] == ["done", "must"]
    drawn = {}
    monkeypatch.setattr(lettering, "draw_in", lambda p, rect, text, *_: drawn.update({text: rect}))
    card.grab()
    for _, text in card.lines():
        assert drawn[text].bottom() <= card.make.geometry().top() + 4  # the button is drawn 4 px inside


def test_no_key_changes_the_layout_under_the_paper(hands):
    hands.place.select(("A1",))
    before = hands.layout
    for key in ("T", "R", "B", "Delete", "Right", "Left"):
        hands.key(key)
    hands.key("Right", SHIFT)
    assert hands.layout is before


def test_undo_is_followed_by_other_sheets(hands):
    from bayboard.edits.to_bench import ToBench

    hands.place.do(ToBench(("A2",)))
    hands.rest()
    without = {h.id for board in hands.desk.boards() for h in board.holes}
    hands.key("Z", CTRL)
    hands.rest()
    back = {h.id for board in hands.desk.boards() for h in board.holes}
    assert {name.partition("#")[0] for name in back - without} == {"A2"}


def test_a_finding_is_shown_where_it_is_not_under_the_paper(printing):
    hands = printing(wide(gear=NEAR))
    hands.window.findings.list.setFocus()
    hands.window.findings.chosen.emit(hands.place.verdict.findings[0])
    assert hands.window.stage == "Arrange"


def test_the_wheel_looks_closer_at_the_sheet_and_another_sheet_is_whole_again(hands):
    page = hands.stage.page
    page.look(4.0, QPointF(page.width() / 2, 200.0))
    assert page.closer == 4.0
    hands.click(middle_of(hands, 2))
    assert page.closer == 1.0


def test_f6_walks_the_parts_and_comes_round(printing):
    hands, seen = printing(wide(gear=NEAR)), []
    for _ in range(6):
        seen.append(hands.window.focusWidget())
        hands.key("F6")
    assert len({id(w) for w in seen}) == 6
    assert hands.window.focusWidget() is seen[0]


def test_f1_tells_the_keys_of_this_stage(hands):
    hands.key("F1")
    assert hands.window.help.stage == "Print"
    assert ("Esc", "back to Arrange") in hands.window.help.lines


@pytest.mark.parametrize("size", [(1600, 1000), (1280, 800)])
def test_nothing_on_the_card_lies_over_anything_else(printing, size):
    hands = printing(size=size)
    card = hands.stage.print_card
    shown = [w for w in card.stops if w.isVisible()]
    for i, one in enumerate(shown):
        assert card.rect().contains(one.geometry())
        for other in shown[i + 1 :]:
            # a control keeps 4 px inside its rectangle for the ring
            assert (
                not one.geometry().adjusted(3, 3, -3, -3).intersects(other.geometry().adjusted(3, 3, -3, -3))
            )


def test_in_the_dark_the_paper_is_still_light(hands):
    hands.window.dress(DARK)
    hands.app.processEvents()
    picture = hands.picture()
    spot = middle_of(hands, 1).toPoint()
    light = sum(picture.pixelColor(spot.x() + dx, spot.y()).lightness() > 190 for dx in range(-20, 20))
    assert light > 25


def test_the_layout_without_a_board_or_gear_says_so(printing):
    hands = printing(layout(boards=[]))
    assert hands.stage.print_card.lines()[0][1] == "There is no board to drill and no gear to cut yet."
    assert hands.stage.sheets.phrase().startswith("no template")
    assert hands.picture().width() == 1600  # and it can be painted


def test_keys_stay_where_they_are_when_the_strip_is_walked(hands):
    hands.window.strip.setFocus(Qt.FocusReason.TabFocusReason)
    hands.key("Left")
    assert hands.window.stage == "Arrange" and hands.window.strip.hasFocus()
