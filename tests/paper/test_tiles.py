"""Sheets: how many, in which order they are taped, and that stations alone put them together again."""

from itertools import pairwise
from math import ceil, hypot

import numpy as np
import pytest
import shapely
from tests.build import layout, rectangle
from tests.paper import boards, readers

from bayboard.mechanics.holes import holes
from bayboard.model.refused import Refused
from bayboard.paper.book import PAPERS, Options, book
from bayboard.paper.form import Form
from bayboard.paper.grid import cells
from bayboard.paper.section import sections
from bayboard.tables.reference import paper

INCH = 25.4
WIDE = (0.0, 0.0, 48 * INCH, 16 * INCH)


# shared/reference/checks.md row 42: sheets for a 48 x 16 in board, margins 10 mm, overlap 10 mm
@pytest.mark.parametrize(
    ("name", "size", "expected"),
    [
        ("letter", (8.5 * INCH, 11 * INCH), (7, 2)),
        ("letter", (11 * INCH, 8.5 * INCH), (5, 3)),
        ("a3", (420.0, 297.0), (4, 2)),
        ("a4", (210.0, 297.0), (7, 2)),
    ],
    ids=["letter portrait 14", "letter landscape 15", "A3 landscape 8", "A4 portrait 14"],
)
def test_a_48_by_16_in_board_takes_as_many_sheets_as_arithmetic_says(name, size, expected):
    assert cells(WIDE, Form(name, size, 10.0, "below", 10.0)) == expected


# checks.md row 43; ISO 216 and ASME Y14.1 by paper.csv
def test_a_letter_page_shrunk_to_a4_shows_on_the_bar():
    letter, a4 = paper("Letter"), paper("A4")
    assert min(a4[0] / letter[0], a4[1] / letter[1]) == pytest.approx(0.9727, abs=0.0001)
    assert 100.0 * a4[0] / letter[0] == pytest.approx(97.3, abs=0.05)


# checks.md row 44
def test_a_printer_0_3_percent_long_is_seen_across_the_board_and_on_the_diagonals():
    made = layout(bay={"wall": rectangle(-9, -9, 1300, 500)}, board={"outline": rectangle(*WIDE)})
    (section,) = sections(made, Options(paper="letter", only=("drill",)))
    assert 0.003 * WIDE[2] == pytest.approx(3.66, abs=0.01)
    assert section.crosses.diagonal == pytest.approx(hypot(WIDE[2] - 20, WIDE[3] - 20))  # 1259.91 mm
    assert section.crosses.diagonal == pytest.approx(1259.91, abs=0.01)


# ISO 216: A0 is one square metre, sides as 1 to the square root of 2, each size half of the one before
def iso_216(halvings):
    side = (round(1000 * 2**-0.25), round(1000 * 2**0.25))
    for _ in range(halvings):
        side = (side[1] // 2, side[0])
    return side


# ASME Y14.1: size A is 8.5 x 11 in, size B 11 x 17 in
SHEETS = {
    "a4": iso_216(4),
    "a3": iso_216(3),
    "letter": (8.5 * INCH, 11 * INCH),
    "tabloid": (11 * INCH, 17 * INCH),
}


@pytest.mark.parametrize("name", SHEETS)
def test_pages_are_the_sheets_of_iso_216_and_asme_y14_1(name):
    import pikepdf

    made = book(boards.odd(), Options(paper=name))
    with pikepdf.open(readers.BytesIO(made.pdf())) as pdf:
        for page in pdf.pages:
            x, y, w, h = (float(v) for v in page.MediaBox)
            assert (x, y) == (0.0, 0.0)
            assert sorted((w * readers.MM, h * readers.MM)) == pytest.approx(SHEETS[name], abs=0.001)
            assert "/CropBox" not in page and page.get("/Rotate", 0) == 0 and "/UserUnit" not in page
    for page in made.map()["pages"]:
        assert sorted(page["size"]) == pytest.approx(SHEETS[name], abs=0.0001)


def test_a_roll_is_one_page_of_its_width_and_as_long_as_needed():
    made = book(boards.odd(), Options(paper="roll-610", only=("drill",)))
    ((w, h),) = [page.size for page in made.pages]
    assert h == 609.6  # 24 in, trade roll width (paper.csv)
    assert w == ceil(1250.9 - 31.7 + 3.0 + 20.0)


def test_sheets_are_numbered_down_each_column_and_meet_as_they_say():
    (section,) = sections(boards.odd(), Options(paper="letter", only=("drill",)))
    tiles = {t.number: t for t in section.plan.tiles}
    assert list(tiles) == list(range(1, len(tiles) + 1))
    for a, b in pairwise(section.plan.tiles):
        assert b.core[0] > a.core[0] or (b.core[0] == a.core[0] and b.core[3] <= a.core[1] + 1e-9)
    for tile in tiles.values():
        if tile.right:
            assert tiles[tile.right].left == tile.number
        if tile.above:
            assert tiles[tile.above].below == tile.number
    said = readers.page_text(book(boards.odd(), Options(paper="letter", only=("drill",))).pdf())
    for tile in tiles.values():
        text = said[tile.number - 1]
        for met, words in (
            (tile.left, "cut here; this edge lies over"),
            (tile.below, "cut here; this edge lies over"),
            (tile.right, "lies under"),
            (tile.above, "lies under"),
        ):
            assert (f"{words} {met}" in text) == (met is not None) or met is None
        assert f"sheet {tile.number} of {len(tiles)}" in text


SHAPES = {
    "an L": [[0, 0], [900, 0], [900, 200], [300, 200], [300, 700], [0, 700]],
    "a U": [[0, 0], [900, 0], [900, 600], [700, 600], [700, 220], [200, 220], [200, 600], [0, 600]],
    "a slanted strip": [[0, 0], [120, 0], [900, 500], [900, 620], [780, 620], [0, 120]],
}


@pytest.mark.parametrize("outline", SHAPES.values(), ids=SHAPES)
def test_blank_sheets_are_left_out_and_the_rest_hang_together(outline):
    made = layout(bay={"wall": rectangle(-99, -99, 1500, 1500)}, board={"outline": outline})
    options = Options(paper="letter", only=("drill",))
    (section,) = sections(made, options)
    tiles = section.plan.tiles
    xs, ys = {t.core[0] for t in tiles}, {t.core[1] for t in tiles}
    assert len(tiles) < len(xs) * len(ys)
    board = shapely.Polygon(outline)
    shown = shapely.union_all([shapely.box(*t.window) for t in tiles])
    assert board.buffer(0.175).difference(shown).area < 1e-9
    assert all(board.intersects(shapely.box(*t.core)) for t in tiles)
    reached, todo = {1}, [1]
    while todo:
        tile = tiles[todo.pop() - 1]
        new = {n for n in (tile.left, tile.right, tile.above, tile.below) if n} - reached
        reached |= new
        todo += new
    assert reached == {t.number for t in tiles}


def offsets_from_stations(made, pages):
    """Return each sheet's place relative to sheet 1 from the printed crosses alone."""
    crosses = {}
    for page, subpaths in zip(made.map()["pages"], pages, strict=True):
        rings = [r for r in readers.rings(subpaths) if abs(r.r - 3.2) < 0.01]
        for shown in page["shows"]:
            if shown["what"] == "mark" and shown["id"].startswith("S"):
                ring = min(rings, key=lambda r, at=shown["at"]: hypot(r.x - at[0], r.y - at[1]))
                station = shown["id"].split("-")[0]
                crosses.setdefault(station, []).append((page["page"], ring.x, ring.y))
    assert all(len(pair) == 2 for pair in crosses.values())
    known = {1: (0.0, 0.0)}
    while len(known) < len(pages):
        before = len(known)
        for (p, px, py), (q, qx, qy) in crosses.values():
            if p in known and q not in known:
                known[q] = (known[p][0] + px - qx, known[p][1] + py - qy)
            if q in known and p not in known:
                known[p] = (known[q][0] + qx - px, known[q][1] + qy - py)
        assert len(known) > before, "a sheet carries no station"
    return known


@pytest.mark.parametrize("name", ["letter", "a4", "a3"])
def test_taped_by_its_stations_alone_the_template_is_the_board(name):
    model = {h.id: h for h in holes(boards.odd())}
    made = book(boards.odd(), Options(paper=name, only=("drill",)))
    pages = readers.by_stream(made.pdf())
    known = offsets_from_stations(made, pages)
    together = {}
    for page, subpaths in zip(made.map()["pages"], pages, strict=True):
        dx, dy = known[page["page"]]
        rings = readers.rings(subpaths)
        for shown in page["shows"]:
            if shown["what"] == "hole" and model[shown["id"]].slot is None:
                ring = readers.nearest(rings, *shown["at"])
                together.setdefault(shown["id"], []).append((ring.x + dx, ring.y + dy))
    ids = list(together)
    first = np.array(together[ids[0]][0])
    for name_ in ids:
        for place in together[name_]:  # a hole shown on two sheets lies on itself
            off = np.array(place) - first - (np.array(model[name_].at) - np.array(model[ids[0]].at))
            assert np.hypot(*off) < 0.001


def test_stations_keep_off_holes_and_cutouts():
    for seed in range(12):
        made = boards.seam_board(seed)
        (section,) = sections(made, Options(paper="letter", only=("drill",)))
        for station in section.stations:
            offs = [
                hypot(station.at[0] - h.at[0], station.at[1] - h.at[1]) - h.drill / 2 for h in holes(made)
            ]
            assert min(offs) >= 11.0 - 1e-6
    (section,) = sections(boards.odd(), Options(paper="letter", only=("drill",)))
    hatch = shapely.box(610.3, 120.1, 705.9, 201.7)
    assert all(hatch.distance(shapely.Point(s.at)) > 6.0 for s in section.stations)


def test_sheets_and_stations_are_numbered_through_several_boards():
    doc = boards.odd()
    two = layout(
        boards=[
            {"id": "B1", "outline": rectangle(0, 0, 400, 300), "thickness": 10, "standoff": 20},
            {"id": "B2", "outline": rectangle(500, 0, 900, 300), "thickness": 10, "standoff": 20},
        ],
        bay={"wall": rectangle(-9, -9, 1300, 500)},
    )
    made = book(two, Options(paper="a4", only=("drill",)))
    said = readers.page_text(made.pdf())
    assert [f"sheet {n} of {len(said)}" in text for n, text in enumerate(said, start=1)] == [True] * len(said)
    assert "board B1" in said[0] and "board B2" in said[-1]
    marks = [s["id"] for page in made.map()["pages"] for s in page["shows"] if s["what"] == "mark"]
    assert len(marks) == len(set(marks))
    assert doc.boards[0].id  # the odd board has one board: its sheets name none
    assert all(
        "board " not in t for t in readers.page_text(book(doc, Options(paper="a4", only=("drill",))).pdf())
    )


@pytest.mark.parametrize("name", PAPERS)
def test_margins_leave_room_or_are_refused_in_one_sentence(name):
    for margin in (-1.0, 3.9, 90.0, 1e9, float("nan"), float("inf")):
        if name == "roll-610" and margin == 90.0:
            continue
        with pytest.raises(Refused, match="margin"):
            book(boards.odd(), Options(paper=name).with_margin(margin))
    made = book(boards.odd(), Options(paper=name, only=("drill",)).with_margin(4.0))
    for page, subpaths in zip(made.pages, readers.by_stream(made.pdf()), strict=True):
        assert page.size[0] > 0
        texts = [k for s in subpaths if not s.stroked for k in s.knots]
        assert all(3.9 <= x <= page.size[0] - 3.9 for x, _ in texts)


def test_a_board_of_a_hundred_metres_is_refused():
    with pytest.raises(Refused, match="sheets of a4"):
        book(layout(board={"outline": rectangle(0, 0, 90_000, 50_000)}), Options(paper="a4", only=("drill",)))
