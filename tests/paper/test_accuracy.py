"""Hole centres, radii and check bars in the file, against the model, by two readers that know nothing of the
drawing."""

from math import cos, dist, hypot, radians, sin

import pytest
from tests.paper import boards, readers

from bayboard.mechanics.holes import holes
from bayboard.paper.book import PAPERS, Options, book

LIMIT = 0.001  # mm


@pytest.fixture(scope="module", params=[(p, f) for p in PAPERS for f in ("front", "back")], ids="-".join)
def printed(request):
    paper, face = request.param
    made = book(boards.odd(), Options(paper=paper, face=face, only=("drill",)))
    pdf = made.pdf()
    return face, made, {"stream": readers.by_stream(pdf), "objects": readers.by_objects(pdf)}


def seen_at(face, origin, at):
    """Return where a point of the bay must lie on a page whose outline's own origin is at `origin`."""
    return (origin[0] + (at[0] if face == "front" else -at[0]), origin[1] + at[1])


def centres(hole):
    """Return the places to drill: a slot's two, max(travel, drill + 1 mm) apart along its angle."""
    if hole.slot is None:
        return [hole.at]
    half = max(hole.slot.travel, hole.drill + 1.0) / 2
    c, s = cos(radians(hole.slot.angle)), sin(radians(hole.slot.angle))
    return [(hole.at[0] + k * half * c, hole.at[1] + k * half * s) for k in (-1, 1)]


@pytest.mark.parametrize("reader", ["stream", "objects"])
def test_every_hole_lies_within_a_micrometre_of_the_model(printed, reader):
    face, made, pages = printed
    model = {h.id: h for h in holes(boards.odd())}
    met = set()
    for page, subpaths in zip(made.map()["pages"], pages[reader], strict=True):
        rings = readers.rings(subpaths)
        origin = next(s["at"] for s in page["shows"] if s["what"] == "outline")
        for shown in page["shows"]:
            if shown["what"] != "hole":
                continue
            met.add(shown["id"])
            hole = model[shown["id"]]
            assert dist(shown["at"], seen_at(face, origin, hole.at)) < LIMIT
            for at in centres(hole):
                x, y = seen_at(face, origin, at)
                ring = readers.nearest(rings, x, y, hole.drill / 2)
                assert hypot(ring.x - x, ring.y - y) < LIMIT
                assert abs(ring.r - hole.drill / 2) < LIMIT
                assert any(
                    abs(w.r - ring.r - 2.0) < LIMIT and hypot(w.x - x, w.y - y) < LIMIT for w in rings
                ), "no witness ring"
    assert met == set(model)


@pytest.mark.parametrize("reader", ["stream", "objects"])
def test_bars_of_100_mm_and_4_in_stand_both_ways_on_every_sheet(printed, reader):
    _, _, pages = printed
    for subpaths in pages[reader]:
        lines = [(a, b) for a, b, _ in readers.segments(subpaths)]
        ticks = {(round(x, 2), round(y, 2)) for line in lines if dist(*line) < 3.5 for x, y in line}
        for length in (100.0, 101.6):
            for way in (0, 1):
                bars = [
                    (a, b)
                    for a, b in lines
                    if abs(dist(a, b) - length) < LIMIT and abs(a[1 - way] - b[1 - way]) < LIMIT
                ]
                assert any(all((round(x, 2), round(y, 2)) in ticks for x, y in bar) for bar in bars), (
                    f"no bar of {length} mm with ticks at its ends, way {way}"
                )


def test_no_two_readers_disagree(printed):
    _, _, pages = printed
    for one, other in zip(pages["stream"], pages["objects"], strict=True):
        assert len(one) == len(other)
        for a, b in zip(readers.rings(one), readers.rings(other), strict=True):
            assert hypot(a.x - b.x, a.y - b.y) < LIMIT and abs(a.r - b.r) < LIMIT


MUTATIONS = {
    "a hole 0.02 mm aside": {"at": [61.95, 17.77], "thread": "M6"},
    "a hole 0.02 mm up": {"at": [61.93, 17.79], "thread": "M6"},
    "another drill": {"at": [61.93, 17.77], "thread": "M5"},
}


@pytest.mark.parametrize("changed", MUTATIONS.values(), ids=MUTATIONS)
def test_the_readers_see_what_must_not_be(changed):
    """The two checks above can fail: planted errors stand out by their own size."""
    import msgspec

    from bayboard.model.layout import Fixing

    true = boards.odd()
    fixings = (msgspec.convert({"id": "H1", "board": "BD", **changed}, Fixing), *true.fixings[1:])
    wrong = msgspec.structs.replace(true, fixings=fixings)
    made = book(wrong, Options(paper="a3", only=("drill",)))
    (h1,) = (h for h in holes(true) if h.id == "H1")
    for page, subpaths in zip(made.map()["pages"], readers.by_stream(made.pdf()), strict=True):
        if any(s["id"] == "H1" for s in page["shows"]):
            origin = next(s["at"] for s in page["shows"] if s["what"] == "outline")
            x, y = seen_at("front", origin, h1.at)
            ring = readers.nearest(readers.rings(subpaths), x, y)
            off = max(hypot(ring.x - x, ring.y - y), abs(ring.r - h1.drill / 2))
            assert off > 0.019
