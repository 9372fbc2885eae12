"""A template sheet: marks told by shape, words inside the margins, apart, each beside its own mark."""

import re
from itertools import combinations
from math import dist, hypot

import pytest
from tests.build import card, gear, layout, rectangle
from tests.paper import boards, readers

from bayboard.mechanics.holes import holes
from bayboard.model.codes import set_code
from bayboard.paper import lettering
from bayboard.paper.book import PAPERS, Options, book
from bayboard.paper.marks import Clipped, Letters, Stroke
from bayboard.paper.place_labels import LEAST


def drill(made, paper="letter", **members):
    return book(made, Options(paper=paper, only=("drill",), **members))


def letters(page):
    return [m for m in page.marks if isinstance(m, Letters)]


@pytest.fixture(scope="module", params=PAPERS)
def odd(request):
    made = book(boards.odd(), Options(paper=request.param, revision="12"))
    return made, made.pdf()


def test_text_stays_inside_the_margins_and_off_other_text(odd):
    made, pdf = odd
    for page, found in zip(made.pages, readers.texts(pdf), strict=True):
        w, h = page.size
        for text in found:
            x0, y0, x1, y1 = text.box
            assert x0 >= 9.99 and y0 >= 9.99 and x1 <= w - 9.99 and y1 <= h - 9.99, text
        for a, b in combinations(found, 2):
            over = [min(a.box[i + 2], b.box[i + 2]) - max(a.box[i], b.box[i]) for i in (0, 1)]
            assert min(over) < 0.1, (a, b)


def test_no_letter_is_smaller_than_6_pt(odd):
    made, _ = odd
    for page in made.pages:
        for mark in letters(page):
            assert mark.size >= LEAST - 1e-9, mark


def test_text_is_whole_not_clipped(odd):
    made, pdf = odd
    for page, says in zip(made.pages, readers.page_text(pdf), strict=True):
        for mark in letters(page):
            plain = re.sub(r"\d+/\d+", "", mark.text).split()
            assert all(word.strip("()") in says for word in plain if "/" not in word), mark
        assert not _letters_in_clips(page.marks)


def _letters_in_clips(marks):
    return [m for c in marks if isinstance(c, Clipped) for m in c.marks if isinstance(m, Letters)]


def test_every_hole_is_named_once_and_its_name_is_nearest_its_own_mark(odd):
    made, _ = odd
    named = []
    for page in made.pages:
        at = {s.id: s.at for s in page.shows if s.what == "hole"}
        for mark in letters(page):
            if page.sheet == "drill" and mark.face == "bold" and mark.text in at:
                named.append(mark.text)
                x0, y0, x1, y1 = lettering.box(mark)
                off = {n: _off((x0, y0, x1, y1), p) for n, p in at.items()}
                assert min(off, key=off.get) == mark.text
    assert sorted(named) == sorted(h.id for h in holes(boards.odd()))


def _off(box, at):
    return hypot(max(box[0] - at[0], 0, at[0] - box[2]), max(box[1] - at[1], 0, at[1] - box[3]))


def test_a_crowd_of_holes_is_still_labelled_each_at_its_own():
    """Twelve screws at 14 mm: labels shrink before they wander."""
    screws = [{"at": [14.0 * i - 35.0, 14.0 * j - 7.0], "thread": "M4"} for i in range(6) for j in range(2)]
    made = drill(
        layout(cards={"block": card(100, 40, 30, screws=screws)}, gear=[gear("B1", 300, 200, "block")])
    )
    seen = [m for p in made.pages for m in letters(p) if m.text.startswith("B1#")]
    assert len(seen) == 12
    marks = [(t, p.shows) for p in made.pages for t in letters(p) if t.text.startswith("B1#")]
    for mark, shows in marks:
        off = {s.id: _off(lettering.box(mark), s.at) for s in shows if s.what == "hole"}
        assert off[mark.text] <= min(off.values()) + 1e-9


WORDS = {
    "a tap": ({"thread": "M5"}, "mm", "tap M5, drill 4.2"),
    "a tap in inches": ({"thread": "M5"}, "in", "tap M5, drill 4.2 mm"),
    # ASME B1.1 tap drills by number and fraction, threads.csv
    "an inch tap": ({"thread": "1/4-20"}, "mm", "tap 1/4-20, drill #7 (5.11 mm)"),
    "a thread nobody knows": ({"thread": "W3/8"}, "mm", "W3/8: drill not known"),
}


@pytest.mark.parametrize(("screw", "units", "says"), WORDS.values(), ids=WORDS)
def test_a_tapped_hole_says_what_to_do(screw, units, says):
    amp = card(100, 60, 30, screws=[{"at": [0, 0], **screw}])
    made = drill(layout(cards={"a": amp}, gear=[gear("A1", 200, 150, "a")]), units=units)
    assert says in [m.text for p in made.pages for m in letters(p)]


# clearance by ISO 273 medium (6.6 for M6); the next drill in 1/64 in is 17/64 = 6.747 mm
FIXINGS = {
    "a clearance hole": ({"thread": "M6"}, "mm", ["clear 6.6 for M6 (17/64)"]),
    "in inches": ({"thread": "M6"}, "in", ["clear 17/64 in (6.6 mm) for M6"]),
    "a slot": (
        {"thread": "M6", "slot": {"travel": 4, "angle": 0}},
        "mm",
        ["two holes 6.6 for M6 (17/64),", "7.6 mm apart; saw between"],
    ),
    "a long slot": (
        {"thread": "M6", "slot": {"travel": 12, "angle": 0}},
        "mm",
        ["two holes 6.6 for M6 (17/64),", "12 mm apart; saw between"],
    ),
}


@pytest.mark.parametrize(("fixing", "units", "says"), FIXINGS.values(), ids=FIXINGS)
def test_a_fixing_says_what_to_do(fixing, units, says):
    made = drill(layout(fixings=[{"id": "H1", "at": [200, 150], **fixing}]), units=units)
    found = [m.text for p in made.pages for m in letters(p)]
    assert all(line in found for line in says)


def test_kind_is_shape_a_square_round_fixings_none_round_taps():
    amp = card(300, 200, 30, screws=[{"at": [0, 0], "thread": "M5"}])
    made = drill(
        layout(
            cards={"a": amp},
            gear=[gear("A1", 300, 200, "a")],
            fixings=[{"id": "H1", "at": [60, 60], "thread": "M6"}],
        ),
        "a3",
    )
    for page, subpaths in zip(made.pages, readers.by_stream(made.pdf()), strict=True):
        squares = [
            s for s in subpaths if s.closed and not s.curves and len(s.knots) == 4 and _square(s.knots)
        ]
        for shown in page.shows:
            if shown.what == "hole":
                framed = [s for s in squares if dist(_middle(s.knots), shown.at) < 0.001 and s.stroked]
                assert bool(framed) == (shown.id == "H1")


def _square(knots):
    sides = [dist(a, b) for a, b in zip(knots, (*knots[1:], knots[0]), strict=True)]
    return max(sides) - min(sides) < 0.001 and sides[0] < 40


def _middle(knots):
    return tuple(sum(k[i] for k in knots) / 4 for i in (0, 1))


def test_lines_are_no_thinner_than_printers_keep():
    """At 300 dpi lines of 0.10 mm and more never break (our own measure); 0.25 drilled, 0.35 cut."""
    made = drill(boards.odd())
    for page, subpaths in zip(made.pages, readers.by_stream(made.pdf()), strict=True):
        assert all(s.width >= 0.0999 for s in subpaths if s.stroked)
        rings = {(round(r.x, 2), round(r.y, 2)): r for r in readers.rings(subpaths) if not r.dashed}
        assert rings and page.shows
        drilled = [
            s
            for s in subpaths
            if s.stroked and not s.dashed and s.curves >= 8 and s.width < 0.3 and not s.white
        ]
        assert any(abs(s.width - 0.25) < 0.01 for s in drilled)
        outline = [s for s in subpaths if s.curves and len(s.knots) > 10 and abs(s.width - 0.35) < 0.01]
        assert outline


def test_the_front_face_is_said_in_words_on_every_sheet(odd):
    made, pdf = odd
    for page, says in zip(made.pages, readers.page_text(pdf), strict=True):
        if page.sheet == "drill":
            assert "FRONT FACE" in says and "gear side" in says
            assert "Print at 100 %, then lay a steel rule on both bars." in says
            assert "revision 12" in says and "Plain bay" in says


def test_sheets_carry_their_set_code_and_the_back_has_its_own():
    front, back = (drill(boards.odd(), face=f).pdf() for f in ("front", "back"))
    codes = [set_code(boards.odd(), "letter", f) for f in ("front", "back")]
    assert codes[0] != codes[1]
    for pdf, code in zip((front, back), codes, strict=True):
        assert all(f"set {code}" in says for says in readers.page_text(pdf))
    assert all("BACK FACE, MIRRORED" in says for says in readers.page_text(back))
    assert not any("MIRRORED" in says for says in readers.page_text(front))


def test_the_back_is_the_front_mirrored_but_for_its_letters():
    by_face = {}
    for face in ("front", "back"):
        made = drill(boards.odd(), "roll-610", face=face)
        (page,), (subpaths,) = made.pages, readers.by_stream(made.pdf())
        x0, x1 = 31.7, 1250.9
        origin = next(s.at for s in page.shows if s.what == "outline")
        rings = {
            (round(r.x - origin[0], 3), round(r.y - origin[1], 3), round(r.r, 3))
            for r in readers.rings(subpaths)
        }
        by_face[face] = {r for r in rings if x0 < abs(r[0]) < x1}
        assert all(m.turn in (0.0, 90.0) for m in letters(page))
    unmirrored = {(-x, y, r) for x, y, r in by_face["back"]}
    assert len(unmirrored) > 30
    for x, y, r in by_face["front"]:
        assert any(dist((x, y, r), other) < 0.003 for other in unmirrored)


# one unit of the rule: every 50 mm, or every 2 in; figures at every other one
RULES = [
    ("front", "mm", 50.0, 100.0),
    ("back", "mm", 50.0, 100.0),
    ("front", "in", 50.8, 4.0),
    ("back", "in", 50.8, 4.0),
]


@pytest.mark.parametrize(("face", "units", "step", "figure"), RULES)
def test_ticks_count_from_the_boards_left_edge_on_either_face(face, units, step, figure):
    made = drill(layout(board={"outline": rectangle(0, 0, 500, 300)}), "roll-610", face=face, units=units)
    (page,), (subpaths,) = made.pages, readers.by_stream(made.pdf())
    x0, y0 = next(s.at for s in page.shows if s.what == "outline")
    way = 1.0 if face == "front" else -1.0
    ticks = {}
    for a, b, _ in readers.segments(subpaths):
        if abs(a[1] - y0) < 0.001 and abs(a[0] - b[0]) < 0.001 and abs(dist(a, b) - 3.2) < 0.9:
            ticks[round((a[0] - x0) * way / step, 4)] = dist(a, b)
    assert sorted(ticks) == [float(n) for n in range(1, len(ticks) + 1)]
    assert len(ticks) == int(499.9 // step)
    assert all((length > 3.5) == (n % 2 == 0) for n, length in ticks.items())
    for mark in letters(page):
        if mark.text == (f"{figure:g}" if units == "mm" else "4 in") and abs(mark.at[1] - y0) < 6.0:
            assert abs((mark.at[0] - x0) - way * 2 * step) < 8.0
            break
    else:
        raise AssertionError("the first long tick carries no figure")


def test_the_diagonals_are_told_on_a_rectangle_and_not_on_an_l():
    plain = drill(layout(board={"outline": rectangle(0, 0, 500, 300)}))
    said = " ".join(readers.page_text(plain.pdf()))
    assert f"both {hypot(480, 280):.1f} mm; differ by 1 mm at most" in said
    ell = layout(board={"outline": [[0, 0], [500, 0], [500, 150], [200, 150], [200, 300], [0, 300]]})
    assert "differ by" not in " ".join(readers.page_text(drill(ell).pdf()))


def test_a_cutout_is_named_on_the_sheet_that_shows_it():
    said = readers.page_text(drill(boards.odd()).pdf())
    assert any("cut out HATCH" in text for text in said)


def test_whoever_drills_a_fixing_is_told_to_look_behind():
    made = drill(boards.odd())
    for page, says in zip(made.pages, readers.page_text(made.pdf()), strict=True):
        named = {m.text for m in letters(page) if m.face == "bold"}
        assert ("Look behind the panel before drilling" in says) == bool(named & {"H1", "H2", "H3"})


def test_a_board_without_anything_on_it_still_prints_its_outline():
    made = book(layout(board={"outline": rectangle(0, 0, 150, 100)}), Options(paper="a4"))
    assert [p.sheet for p in made.pages] == ["drill"]
    (subpaths,) = readers.by_stream(made.pdf())
    edges = sorted(round(dist(a, b), 3) for a, b, s in readers.segments(subpaths) if s.width > 0.3)
    assert edges.count(150.0) >= 1 and edges.count(100.0) >= 2


def test_marks_are_values_before_they_are_a_pdf():
    one, other = drill(boards.odd()), drill(boards.odd())
    assert one.pages == other.pages
    assert all(isinstance(m, (Stroke, Letters, Clipped)) or m.white for p in one.pages for m in p.marks[:3])


def test_a_hole_off_the_board_is_told_because_no_sheet_can_show_it():
    fixings = [{"id": "H1", "at": [200, 150], "thread": "M6"}, {"id": "H9", "at": [-60, 150], "thread": "M6"}]
    made = drill(layout(fixings=fixings))
    said = readers.page_text(made.pdf())
    assert "off the board, on no sheet: H9" in said[0]
    assert {s.id for p in made.pages for s in p.shows if s.what == "hole"} == {"H1"}


def test_where_only_names_find_room_the_sheet_lists_what_to_drill():
    """Frames 14.6 mm wide at 19 mm leave 4.4 mm between them: a name, but no line of words."""
    crowd = [
        {"id": f"H{i}{j}", "at": [60.0 + 19.0 * i, 60.0 + 19.0 * j], "thread": "M6"}
        for i in range(9)
        for j in range(9)
    ]
    made = drill(layout(board={"outline": rectangle(0, 0, 260, 260)}, fixings=crowd), "a3")
    named = [m.text for p in made.pages for m in letters(p) if m.face == "bold"]
    assert all(named.count(f["id"]) == 1 for f in crowd)
    told = " ".join(m.text for p in made.pages for m in letters(p) if m.face == "text")
    for fixing in crowd:
        beside = [i for p in made.pages for i, m in enumerate(letters(p)) if m.text == fixing["id"]]
        assert beside and "clear 6.6 for M6 (17/64)" in told
    lists = told.partition("clear 6.6 for M6 (17/64): ")[2]
    assert "H44" in lists, "the middle one has its name only"
