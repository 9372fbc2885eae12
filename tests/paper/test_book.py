"""What is printed when, and what is refused with one sentence."""

import pytest
from tests.build import gear, layout
from tests.paper import boards

from bayboard.model.refused import Refused
from bayboard.paper.book import PAPERS, SHEETS, Options, book


def kinds(made):
    return [p.sheet for p in made.pages]


def test_left_out_means_every_kind_that_has_content():
    assert set(kinds(book(boards.odd(), Options(paper="a3")))) == set(SHEETS)
    assert set(kinds(book(layout(), Options(paper="a3")))) == {"drill"}
    bench = layout(boards=[], gear=[{"id": "A1", "card": "box", "at": None}])
    assert set(kinds(book(bench, Options(paper="a3")))) == {"cards"}


def test_only_prints_only_that_in_the_order_of_the_kinds():
    assert set(kinds(book(boards.odd(), Options(paper="a3", only=("cards",))))) == {"cards"}
    both = kinds(book(boards.odd(), Options(paper="a3", only=("cards", "drill"))))
    assert both == sorted(both, key=SHEETS.index)


REFUSALS = {
    "a template without a board": (layout(boards=[]), ("drill",), "no board"),
    "stand-ins without gear": (layout(), ("cards",), "no gear"),
    "nothing at all": (layout(boards=[]), None, "no board"),
}


@pytest.mark.parametrize(("made", "only", "says"), REFUSALS.values(), ids=REFUSALS)
def test_nothing_to_print_is_one_sentence(made, only, says):
    with pytest.raises(Refused, match=says) as told:
        book(made, Options(paper="a4", only=only))
    assert str(told.value).count("\n") == 0


def test_the_map_follows_the_pages():
    made = book(boards.odd(), Options(paper="letter"))
    told = made.map()
    assert [p["page"] for p in told["pages"]] == list(range(1, len(made.pages) + 1))
    assert [p["sheet"] for p in told["pages"]] == kinds(made)
    drill = [p for p in told["pages"] if p["sheet"] == "drill"]
    for page in drill:
        outline = [s for s in page["shows"] if s["what"] == "outline"]
        assert [s["id"] for s in outline] == ["BD"]
    holes = {s["id"] for p in drill for s in p["shows"] if s["what"] == "hole"}
    assert len(holes) == 3 * 4 + 3
    slot = next(s for p in drill for s in p["shows"] if s["id"] == "H2")
    assert slot["turn"] == pytest.approx(27.0)
    marks = [s["id"] for p in told["pages"] for s in p["shows"] if s["what"] == "mark"]
    assert marks and len(marks) == len(set(marks))


@pytest.mark.parametrize("face", ["front", "back"])
def test_a_turned_stand_in_is_told_with_its_turn_as_printed(face):
    made = book(layout(gear=[gear("A1", 300, 200, "box", turn=30)]), Options(paper="roll-610", face=face))
    shows = made.map()["pages"][0]["shows"]
    piece, outline = (next(s for s in shows if s["what"] == w) for w in ("stand-in", "outline"))
    assert piece["turn"] == pytest.approx(30.0 if face == "front" else 150.0)
    assert outline["turn"] == (0.0 if face == "front" else 180.0)
    assert piece["at"][0] - outline["at"][0] == pytest.approx(300 if face == "front" else -300)


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("wide", [18.0, 61.0, 2300.0])
def test_boards_small_and_large_print_on_every_paper(paper, wide):
    outline = [[0, 0], [wide, 0], [wide, 17.5], [0, 17.5]]
    made = book(layout(board={"outline": outline}), Options(paper=paper))
    assert made.pdf().startswith(b"%PDF")


def test_options_are_changed_by_value():
    plain = Options(paper="a4")
    assert (
        plain.with_margin(6.0).margin == 6.0 and plain.with_units("in").units == "in" and plain.margin == 10.0
    )
