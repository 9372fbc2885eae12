"""Which sheets are swapped after a change, and what a swap sheet says."""

import pytest
from msgspec.structs import replace
from tests.build import layout, rectangle
from tests.paper.boards import seam_board
from tests.paper.readers import by_stream, page_text

from bayboard.edits.drill_hole import DrillHole
from bayboard.model.codes import set_code
from bayboard.model.drilled import with_facts
from bayboard.paper.book import Options, book
from bayboard.paper.grid import CLEAR
from bayboard.paper.options import DRAFT, SwapSheets
from bayboard.paper.set_words import set_words
from bayboard.paper.swap import swap
from bayboard.paper.swap_words import runs, swap_sentence

A4 = Options("a4", ("drill",))
STAY = (("walnut harbour", (1, 2, 4, 5, 6)), ("copper ladder", (7,)))


def board(*places, wide=900, high=260, **members):
    """Return a board of 900 x 260 with one M6 hole at each place."""
    fixings = [{"id": f"H{i + 1}", "at": list(at), "thread": "M6"} for i, at in enumerate(places)]
    return layout(
        bay={"wall": rectangle(-100, -100, 1300, 600)},
        board={"outline": rectangle(0, 0, wide, high)},
        fixings=fixings,
        **members,
    )


def sheet_of(made, hole):
    """Return the numbers of the pages that show a hole."""
    return {p.number for p in made.pages if any(s.what == "hole" and s.id == hole for s in p.shows)}


PLAIN = board((80, 60), (450, 130), (820, 200))
OLD = book(PLAIN, A4)


def test_the_same_layout_swaps_nothing():
    found = swap(OLD, book(PLAIN, A4))
    assert (found.sheets, found.gone, found.all_again) == ((), (), False)
    assert found.same == tuple(page.number for page in OLD.pages)


def test_revision_and_set_words_swap_nothing():
    renamed = book(PLAIN, A4.with_revision("7"))
    assert swap(OLD, renamed).sheets == ()


def test_a_screw_that_moves_far_from_seams_changes_the_one_sheet_that_shows_it():
    moved = board((80, 63), (450, 130), (820, 200))
    new = book(moved, A4)
    assert set(swap(OLD, new).sheets) == sheet_of(new, "H1")
    assert len(sheet_of(new, "H1")) == 1


def test_a_seam_that_moves_changes_its_neighbours():
    seam = OLD.laid[0].plan.seams[0]
    at = (seam.a[0], seam.a[1] / 2 + seam.b[1] / 2)
    new = book(board((80, 60), (450, 130), (820, 200), at), A4)
    assert new.laid[0].plan.seams[0] != seam
    assert {seam.over, seam.under} <= set(swap(OLD, new).sheets)


def test_seams_of_the_printed_set_stay_where_they_keep_clear():
    places = ((80, 60), (450, 130), (820, 200))
    x = OLD.laid[0].plan.seams[0].a[0]
    was, now = board(*places, (x + 5.0, 60)), board(*places, (x + 7.0, 60))
    old, afresh, kept = book(was, A4), book(now, A4), book(now, A4.with_seams_of(was))
    assert kept.laid[0].plan.seams == old.laid[0].plan.seams != afresh.laid[0].plan.seams
    assert swap(old, kept).sheets == (*sheet_of(kept, "H4"),)
    assert swap(old, afresh).all_again


@pytest.mark.parametrize("by", [-6.0, 0.0, 6.0])
def test_seams_are_not_kept_where_one_would_come_too_near_to_a_hole(by):
    seam = OLD.laid[0].plan.seams[0]
    at = (seam.a[0] + by, 40.0)
    new = book(board((80, 60), (450, 130), (820, 200), at), A4.with_seams_of(PLAIN))
    assert min(new.laid[0].clearances.least.values()) >= CLEAR - 1e-3


def test_another_outline_is_laid_out_afresh_and_printed_again_whole():
    wider = board((80, 60), (450, 130), (820, 200), wide=1200)
    new = book(wider, A4.with_seams_of(PLAIN))
    found = swap(OLD, new)
    assert len(new.pages) > len(OLD.pages)
    assert found.all_again


def test_sheets_that_went_are_told():
    found = swap(book(board(wide=1200), A4), OLD)
    assert found.gone
    assert found.all_again


def test_drilling_a_hole_where_it_was_planned_swaps_nothing():
    drilled = DrillHole("H1", None).apply(PLAIN)
    assert swap(OLD, book(drilled, A4)).sheets
    assert swap(book(with_facts(PLAIN, drilled), A4), book(drilled, A4)).sheets == ()


def test_a_swap_print_holds_just_those_sheets_under_their_own_numbers():
    few = book(PLAIN, A4.with_swap(SwapSheets((2,), STAY)))
    assert [page.number for page in few.pages] == [2]
    assert f"sheet 2 of {len(OLD.pages)}" in page_text(few.pdf())[0]


def test_a_swap_sheet_shows_what_the_same_sheet_of_the_whole_set_shows():
    whole = next(page for page in OLD.pages if page.number == 2)
    (few,) = book(PLAIN, A4.with_swap(SwapSheets((2,), STAY))).pages
    assert few.shows == whole.shows
    assert few.body[: len(whole.body)] == whole.body


def test_a_swap_sheet_says_what_it_goes_with_and_what_to_throw_away():
    (text,) = page_text(book(PLAIN, A4.with_swap(SwapSheets((3,), STAY))).pdf())
    assert "swap sheet; goes with 1, 2, 4–6 of set walnut harbour and 7 of set copper ladder" in text
    assert "SWAP SHEET 3" in text
    assert "Throw the old sheet 3 away." in text


def test_the_map_follows_a_swap_print():
    told = book(PLAIN, A4.with_swap(SwapSheets((2,), STAY))).map()
    assert [page["page"] for page in told["pages"]] == [1]


def test_what_is_not_kept_says_so_instead_of_a_revision():
    text = page_text(book(PLAIN, A4.with_revision(DRAFT)).pdf())[0]
    assert "not kept as a revision" in text


@pytest.mark.parametrize(
    ("numbers", "told"),
    [((), ""), ((3,), "3"), ((3, 4), "3, 4"), ((3, 4, 5), "3–5"), ((1, 2, 4, 5, 6, 9), "1, 2, 4–6, 9")],
)
def test_numbers_that_follow_one_another_are_told_as_a_run(numbers, told):
    assert runs(numbers) == told


def test_a_set_of_which_nothing_stays_names_no_other():
    assert swap_sentence(SwapSheets((1,), ())) == "swap sheet"


def test_swap_sheets_have_set_words_of_their_own():
    """A whole set of the same layout may have other seams: its sheet 2 is no swap sheet 2."""
    swapping = A4.with_swap(SwapSheets((2,), STAY))
    assert set_words(PLAIN, swapping) != set_words(PLAIN, A4) == set_code(PLAIN, "a4", "front")
    assert f"set {set_words(PLAIN, swapping)}" in page_text(book(PLAIN, swapping).pdf())[0]


def test_a_white_edge_that_is_not_the_usual_one_stands_in_the_strip():
    text = page_text(book(PLAIN, Options("a4", ("drill",), margin=6.0)).pdf())[0]
    assert "a4, 6 mm edge" in text


def told(subpaths, foot):
    """Return what a reader saw on a page above its strip, rounded to a hundredth of a mm."""
    drawn = [s for s in subpaths if min(y for _, y in s.knots) > foot]
    return sorted((tuple((round(x, 1), round(y, 1)) for x, y in s.knots), s.dashed, s.white) for s in drawn)


@pytest.mark.parametrize("seed", range(6))
def test_what_a_reader_of_both_pdfs_sees_is_the_same_on_the_sheets_that_stay(seed):
    """A reader that knows nothing of the comparison, on random boards with holes beside the seams."""
    was = seam_board(seed)
    moved = was.fixings[seed]
    there = (moved.at[0] + 1.5, moved.at[1] - 0.7)
    fixings = tuple(replace(f, at=there) if f is moved else f for f in was.fixings)
    now = replace(was, fixings=fixings)
    old, new = book(was, A4), book(now, A4.with_seams_of(was))
    found = swap(old, new)
    seen = {
        number: tuple(told(page, 25.0) for page in pages)
        for number, *pages in zip(
            [p.number for p in new.pages], by_stream(old.pdf()), by_stream(new.pdf()), strict=True
        )
    }
    assert all(seen[n][0] == seen[n][1] for n in found.same)
    assert all(seen[n][0] != seen[n][1] for n in sheet_of(new, moved.id))
    assert sheet_of(new, moved.id) | sheet_of(old, moved.id) <= set(found.sheets)
