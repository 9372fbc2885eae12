"""Holes that are drilled already: drawn as made, so that nobody drills them twice; the others stay exact."""

from math import dist, hypot

import pytest
from tests.paper import boards, readers
from tests.paper.test_accuracy import centres, seen_at

from bayboard.edits.drill_hole import DrillHole
from bayboard.mechanics.holes import holes
from bayboard.paper.book import Options, book
from bayboard.paper.face import face
from bayboard.paper.hole_marks import words

LIMIT = 0.001  # mm
ASTRAY = (64.33, 17.17)  # H1, planned at 61.93, 17.77
MADE = {"A1#1": None, "A3#2": None, "H1": ASTRAY, "H2": None}


def drilled():
    """Return the odd board with four of its holes made, one of them not where it was planned."""
    layout = boards.odd()
    for hole, at in MADE.items():
        layout = DrillHole(hole, at).apply(layout)
    return layout


def truth(hole):
    return MADE.get(hole.id) or hole.at


@pytest.fixture(scope="module", params=["front", "back"])
def printed(request):
    made = book(drilled(), Options("a4", ("drill",), face=request.param))
    pdf = made.pdf()
    return request.param, made, {"stream": readers.by_stream(pdf), "objects": readers.by_objects(pdf)}


def holes_on_pages(printed, reader):
    """Yield each hole on each page: its id, what a reader saw on the page, the page's own origin."""
    _, made, pages = printed
    for page, subpaths in zip(made.map()["pages"], pages[reader], strict=True):
        origin = next(s["at"] for s in page["shows"] if s["what"] == "outline")
        for shown in page["shows"]:
            if shown["what"] == "hole":
                yield shown, subpaths, origin


@pytest.mark.parametrize("reader", ["stream", "objects"])
def test_holes_still_to_be_drilled_lie_within_a_micrometre(printed, reader):
    model = {h.id: h for h in holes(drilled()) if h.id not in MADE}
    met = set()
    for shown, subpaths, origin in holes_on_pages(printed, reader):
        if shown["id"] in MADE:
            continue
        met.add(shown["id"])
        hole = model[shown["id"]]
        for at in centres(hole):
            x, y = seen_at(printed[0], origin, at)
            ring = readers.nearest(readers.rings(subpaths), x, y, hole.drill / 2)
            assert hypot(ring.x - x, ring.y - y) < LIMIT
            assert abs(ring.r - hole.drill / 2) < LIMIT
    assert met == set(model)


def test_a_made_hole_is_a_disc_of_its_true_size_in_its_true_place(printed):
    model = {h.id: h for h in holes(drilled())}
    met = set()
    for shown, subpaths, origin in holes_on_pages(printed, "stream"):
        hole = model[shown["id"]]
        if hole.id not in MADE or hole.slot is not None:
            continue
        met.add(hole.id)
        x, y = seen_at(printed[0], origin, truth(hole))
        assert dist(shown["at"], (x, y)) < LIMIT
        filled = [s for s in subpaths if not s.stroked and s.curves >= 8 and not s.white]
        off = [max(abs(hypot(a - x, b - y) - hole.drill / 2) for a, b in s.knots) for s in filled]
        assert min(off) < LIMIT
    assert met == {"A1#1", "A3#2", "H1"}


def test_there_is_neither_ring_nor_cross_on_a_made_hole(printed):
    model = {h.id: h for h in holes(drilled())}
    for shown, subpaths, origin in holes_on_pages(printed, "stream"):
        hole = model[shown["id"]]
        if hole.id not in MADE:
            continue
        x, y = seen_at(printed[0], origin, truth(hole))
        near = [r for r in readers.rings(subpaths) if hypot(r.x - x, r.y - y) < 0.01]
        assert near == []
        arms = [
            (a, b)
            for a, b, _ in readers.segments(subpaths)
            if hypot(a[0] - x, a[1] - y) < 10.0 and (abs(a[0] - x) < 0.001) and (abs(b[0] - x) < 0.001)
        ]
        assert arms == []


def test_the_sheet_says_which_holes_are_drilled_and_where_a_plan_lies_elsewhere(printed):
    front, made, _ = printed
    text = " ".join(readers.page_text(made.pdf()))
    assert text.count("drilled") >= len(MADE)
    assert f"its plan lies 2.4 mm {'left' if front == 'front' else 'right'} and 0.6 mm up" in text


@pytest.mark.parametrize(
    ("at", "said"),
    [
        ((61.93, 17.77), ("drilled",)),
        ((62.03, 17.77), ("drilled",)),  # 0.1 mm off, as the rule allows
        ((62.04, 17.77), ("drilled", "its plan lies 0.1 mm left")),
        ((61.93, 15.0), ("drilled", "its plan lies 2.8 mm up")),
    ],
    ids=["there", "just there", "a hair off", "below"],
)
def test_a_plan_elsewhere_is_told_beyond_a_tenth_of_a_mm(at, said):
    layout = DrillHole("H1", at).apply(boards.odd())
    (hole,) = [h for h in face(layout, layout.boards[0], back=False).holes if h.id == "H1"]
    assert words(hole, "mm") == said


def test_seams_name_no_hole_that_is_made_already():
    layout = drilled()
    section = book(layout, Options("a4", ("drill",))).laid[0]
    assert not {near.hole for near in section.clearances.near} & set(MADE)


def test_words_of_made_holes_lie_apart_and_inside_the_margin(printed):
    made = printed[1]
    for page, texts in zip(made.pages, readers.texts(made.pdf()), strict=True):
        for text in texts:
            x0, y0, x1, y1 = text.box
            assert x0 > 9.5
            assert y0 > 9.5
            assert x1 < page.size[0] - 9.5
            assert y1 < page.size[1] - 9.5
