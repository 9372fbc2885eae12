"""How sheets lie on the board: nothing is left bare, over and under agree, the back is seen through."""

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, box
from tests.window.print.bench import wide

from bayboard.paper.book import Options, book
from bayboard.window.print import words
from bayboard.window.print.laid import laid_board, sheet_at, sheets_of
from bayboard.window.print.making import lay_out


def laid(layout=None, **options):
    made = book(layout or wide(), Options(**{"paper": "a4", "only": ("drill",)} | options))
    return tuple(laid_board(section) for section in made.laid)


@pytest.fixture(scope="module")
def board():
    return laid()[0]


@pytest.mark.parametrize("face", ["front", "back"])
@pytest.mark.parametrize("paper", ["a4", "tabloid", "roll-610"])
def test_the_sheets_own_parts_cover_the_board_once(paper, face):
    (board,) = laid(paper=paper, face=face)
    cores = [box(*sheet.core) for sheet in board.sheets]
    union = shapely.union_all(cores)
    assert union.covers(Polygon(wide().boards[0].outline))
    assert sum(core.area for core in cores) == pytest.approx(union.area)
    assert all(box(*sheet.paper).covers(box(*sheet.core)) for sheet in board.sheets)


@settings(derandomize=True, max_examples=40, deadline=None)
@given(st.floats(0, 1), st.floats(0, 1))
def test_the_sheet_on_top_at_a_place_is_the_one_whose_own_part_it_is(board, u, v):
    at = 900 * u, 400 * v
    on_a_seam = any(min(abs(a[0] - at[0]), abs(a[1] - at[1])) < 1e-6 for a, _ in board.seams)
    sheet = next(s for s in board.sheets if s.number == sheet_at((board,), at))
    x0, y0, x1, y1 = sheet.core
    assert on_a_seam or (x0 <= at[0] <= x1 and y0 <= at[1] <= y1)


@pytest.mark.parametrize("face", ["front", "back"])
def test_who_lies_over_whom_agrees_from_both_sides(face):
    (board,) = laid(face=face)
    by_number = {sheet.number: sheet for sheet in board.sheets}
    for sheet in board.sheets:
        for other in sheet.over:
            assert sheet.number in by_number[other].under
            assert board.order.index(sheet.number) > board.order.index(other)
        for here, there in (("left", "right"), ("above", "below")):
            neighbour = getattr(sheet, here)
            assert neighbour is None or getattr(by_number[neighbour], there) == sheet.number


def test_numbers_run_down_each_column(board):
    by_number = {sheet.number: sheet for sheet in board.sheets}
    assert [n for column in board.columns for n in column] == sorted(by_number)
    for column in board.columns:
        heights = [by_number[number].core[3] for number in column]
        assert heights == sorted(heights, reverse=True)


def test_the_back_shows_every_hole_where_it_is_in_the_bay(board):
    (back,) = laid(face="back")
    front_at = {hole.id: hole.at for hole in board.holes}
    assert {hole.id: pytest.approx(hole.at) for hole in back.holes} == front_at
    first = back.sheets[0]  # sheet 1 is at the upper left from behind: at the right from the cabin
    assert back.back and first.right is None


def test_the_nearest_hole_is_the_one_that_plain_arithmetic_finds(board):
    for sheet in board.sheets:
        x0, y0, x1, y1 = sheet.core
        rims = ((sheet.left, (x0, y0, x0, y1)), (sheet.right, (x1, y0, x1, y1)))
        rims += ((sheet.above, (x0, y1, x1, y1)), (sheet.below, (x0, y0, x1, y0)))
        seams = [shapely.LineString([r[:2], r[2:]]) for neighbour, r in rims if neighbour is not None]
        least = min(
            seam.distance(shapely.Point(d)) - hole.radius
            for seam in seams
            for hole in board.holes
            for d in hole.discs
        )
        assert sheet.nearest.mm == pytest.approx(least, abs=1e-6)
        on, edge = shapely.Point(sheet.nearest.on), shapely.Point(sheet.nearest.edge)
        assert on.distance(edge) == pytest.approx(max(least, 0.0), abs=1e-6)


def test_what_is_said_of_a_seam_never_promises_more_than_it_keeps(board):
    near = board.sheets[0].nearest
    assert words.beside_hole(near, "mm").startswith("its seams keep ")
    said = float(words.beside_hole(near, "mm").split()[3])
    assert near.mm - 0.1 < said <= near.mm


def test_a_sheets_number_stands_in_its_own_part(board):
    for sheet in board.sheets:
        assert box(*sheet.core).contains(shapely.Point(sheet.number_at))


def test_two_boards_are_numbered_through(board):
    second = {
        "id": "B2",
        "outline": [[0, 500], [300, 500], [300, 800], [0, 800]],
        "thickness": 10,
        "standoff": 20,
    }
    from tests.build import document

    from bayboard.model.read import from_document

    doc = document(gear=[])
    doc["boards"].append(second)
    boards = laid(from_document(doc))
    numbers = [sheet.number for _, sheet in sheets_of(boards)]
    assert numbers == list(range(1, len(numbers) + 1))
    assert sheet_at(boards, (150, 650)) in {s.number for s in boards[1].sheets}


def test_the_task_gives_as_many_pages_as_sheets_and_numbers_them_alike():
    work = lay_out((wide(), Options("a4")))
    with pytest.raises(StopIteration) as end:
        while True:
            next(work)
    sheets = end.value.value
    drill = [page for page in sheets.pages if page.sheet == "drill"]
    assert len(drill) == sum(len(board.sheets) for board in sheets.laid)
    for number, page in enumerate(drill, start=1):
        stations = [s.id for s in page.shows if s.id.startswith("S")]
        assert stations and all(name.endswith(f"-{number}") for name in stations)


@pytest.mark.parametrize(
    ("columns", "said"),
    [
        (((1, 2), (3, 4), (5, 6)), "tape each column first: 1 to 2, 3 to 4 …"),
        (((1, 2), (3, 4)), "tape each column first: 1 to 2, 3 to 4"),
        (((1,), (2,), (3,)), "tape from left to right, 1 to 3"),
        (((1, 2, 3),), "tape down the column, 1 to 3"),
        (((1,),), ""),
    ],
)
def test_how_sheets_are_taped_is_said_for_every_form_of_a_grid(board, columns, said):
    from dataclasses import replace

    sheets = tuple(replace(board.sheets[0], number=n) for column in columns for n in column)
    assert words.taping(replace(board, sheets=sheets, columns=columns)) == said
