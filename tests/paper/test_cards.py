"""Card stand-ins: every piece full size, cut where a sheet is too small, and silent about places."""

import json
import random
from itertools import combinations
from math import dist

import msgspec
import pytest
import shapely
from tests.build import card, gear, layout
from tests.paper import boards, readers

from bayboard.geometry import outline as outlines
from bayboard.model.codes import card_code
from bayboard.paper import lettering, stand_in
from bayboard.paper.book import PAPERS, Options, book
from bayboard.paper.curves import Carry
from bayboard.paper.marks import Letters
from bayboard.paper.nest import GAP, nest
from bayboard.paper.parts import parted


def cut_out(made, paper="letter", **members):
    return book(made, Options(paper=paper, only=("cards",), **members))


def letters(page):
    return [m for m in page.marks if isinstance(m, Letters)]


@pytest.fixture(scope="module", params=PAPERS)
def odd(request):
    made = cut_out(boards.odd(), request.param)
    pdf = made.pdf()
    return made, readers.by_stream(pdf), readers.page_text(pdf)


def stand_ins(made):
    return [(n, s) for n, page in enumerate(made.pages) for s in page.shows if s.what == "stand-in"]


def test_every_piece_is_there_also_the_one_on_the_bench(odd):
    made, _, _ = odd
    assert {s.id for _, s in stand_ins(made)} == {"A1", "A2", "A3", "L1"}


def test_outlines_are_full_size_where_the_map_says(odd):
    made, pages, _ = odd
    model = boards.odd()
    cards = {g.id: model.cards[g.card] for g in model.gear}
    for n, shown in stand_ins(made):
        if shown.part:
            continue
        carry = Carry.to(shown.at, shown.turn)
        wanted = [carry.point(p) for p in cards[shown.id].outline]
        closed = [s for s in pages[n] if s.closed and not s.curves and abs(s.width - 0.35) < 0.01]
        off = [max(min(dist(w, k) for k in s.knots) for w in wanted) for s in closed if len(s.knots) >= 4]
        assert min(off) < 0.001


def test_screws_are_drawn_once_in_the_cards_own_frame(odd):
    made, pages, _ = odd
    model = boards.odd()
    cards = {g.id: model.cards[g.card] for g in model.gear}
    for n, shown in stand_ins(made):
        carry = Carry.to(shown.at, shown.turn)
        rings = [r for r in readers.rings(pages[n]) if not r.dashed]
        for screw in cards[shown.id].screws:
            x, y = carry.point(screw.at)
            r = stand_in.screw_radius(screw)
            here = [k for k in rings if abs(k.r - r) < 0.001 and dist((k.x, k.y), (x, y)) < 0.001]
            assert len(here) == 1


def test_a_piece_larger_than_a_sheet_is_cut_and_its_parts_are_the_piece():
    made = cut_out(boards.odd(), "letter")
    outline = outlines.polygon(boards.odd().cards["long"].outline)
    own = []
    for n, shown in stand_ins(made):
        if shown.id == "L1":
            assert shown.part
            page = shapely.box(9.99, 21.99, made.pages[n].size[0] - 9.99, made.pages[n].size[1] - 9.99)
            part = shapely.Polygon(shown.part)
            assert page.contains(part)
            back = Carry.to((0, 0), -shown.turn)
            x, y = shown.at
            own.append(shapely.Polygon([back.point((a - x, b - y)) for a, b in shown.part]))
    assert len(own) == 2  # 430 mm on a live window of 247 mm
    assert shapely.union_all(own).symmetric_difference(outline).area < 1e-6
    assert all(a.intersection(b).area < 1e-6 for a, b in combinations(own, 2))


def test_joins_carry_one_number_on_either_side_and_keep_off_screws():
    made = cut_out(boards.odd(), "letter")
    said = [m.text for page in made.pages for m in letters(page)]
    joins = {t for t in said if t.startswith("join ")}
    assert joins and all(said.count(t) == 2 for t in joins)
    marks = [s.id for page in made.pages for s in page.shows if s.what == "mark"]
    assert len(marks) == len(set(marks)) == 2 * len(joins)
    long = boards.odd().cards["long"]
    for a, b in parted(long, (195.9, 247.4)).joins:
        line = shapely.LineString((a, b))
        assert all(
            line.distance(shapely.Point(s.at)) > stand_in.screw_radius(s) + 3.0 - 1e-6 for s in long.screws
        )


def test_a_piece_says_what_it_is(odd):
    made, _, said = odd
    code = card_code(boards.odd())
    for n, shown in stand_ins(made):
        assert f"card {code}" in said[n] and "FRONT" in said[n] and "up" in said[n]
        assert shown.id in [m.text for m in letters(made.pages[n])]
    everything = " ".join(said)
    for words in (
        "Longfellow",
        "212.3 × 141.7 mm, 52.4 mm deep",
        "speakers SPK ×4",
        "dial gain",
        "fuse main",
    ):
        assert words in everything


def test_no_word_leaves_its_piece(odd):
    made, _, _ = odd
    model = boards.odd()
    cards = {g.id: model.cards[g.card] for g in model.gear}
    for n, page in enumerate(made.pages):
        pieces = []
        for m, shown in stand_ins(made):
            if m == n:
                carry = Carry.to(shown.at, shown.turn)
                pieces.append(
                    shapely.Polygon(shown.part or [carry.point(p) for p in cards[shown.id].outline])
                )
        for mark in letters(page):
            inside = [p for p in pieces if p.intersects(shapely.box(*lettering.box(mark)))]
            if mark.text.endswith((" mm", " in")) and mark.text.split()[0] in ("100", "4", "50", "2"):
                continue  # check bars may stand over a piece
            assert all(p.buffer(0.01).contains(shapely.box(*lettering.box(mark))) for p in inside), mark


def test_pieces_lie_apart_and_inside_the_margins(odd):
    made, _, _ = odd
    model = boards.odd()
    cards = {g.id: model.cards[g.card] for g in model.gear}
    for n, page in enumerate(made.pages):
        found = []
        for m, shown in stand_ins(made):
            if m == n:
                carry = Carry.to(shown.at, shown.turn)
                found.append(shapely.Polygon(shown.part or [carry.point(p) for p in cards[shown.id].outline]))
        for a, b in combinations(found, 2):
            assert a.distance(b) >= GAP - 1e-6
        w, h = page.size
        assert all(shapely.box(10, 10, w - 10, h - 10).buffer(1e-6).contains(p) for p in found)


def test_bars_stand_on_the_pages_of_stand_ins_too(odd):
    _, pages, _ = odd
    for subpaths in pages:
        lines = [(a, b) for a, b, _ in readers.segments(subpaths)]
        for way in (0, 1):
            lengths = [dist(a, b) for a, b in lines if abs(a[1 - way] - b[1 - way]) < 1e-3]
            assert any(abs(v - 100.0) < 0.001 for v in lengths) and any(
                abs(v - 101.6) < 0.001 for v in lengths
            )


def test_moving_a_piece_does_not_make_its_stand_in_old_but_a_changed_outline_does():
    model = boards.odd()
    moved = msgspec.structs.replace(
        model, gear=(msgspec.structs.replace(model.gear[0], at=(300.0, 200.0), turn=12.0), *model.gear[1:])
    )
    assert cut_out(model).pdf() == cut_out(moved).pdf()
    wider = msgspec.structs.replace(model.cards["amp"], height=53.0)
    other = msgspec.structs.replace(model, cards={**model.cards, "amp": wider})
    assert card_code(other) != card_code(model)
    assert cut_out(model).pdf() != cut_out(other).pdf()


def test_what_was_not_measured_or_only_guessed_is_said():
    made = layout(
        cards={"a": card(150, 90, None, guessed=["height", "mass"])},
        gear=[{"id": "A1", "card": "a", "at": None}],
    )
    (said,) = readers.page_text(cut_out(made, "a4").pdf())
    assert "depth not measured" in said and "guessed: height, mass" in said


SMALL = [(30, 20), (44, 12), (18, 18), (73, 44)]


@pytest.mark.parametrize(("wide", "high"), SMALL)
def test_a_small_piece_keeps_its_id(wide, high):
    made = layout(cards={"a": card(wide, high, 20)}, gear=[gear("RELAY-7", 100, 100, "a")])
    (page,) = cut_out(made, "a4").pages
    assert "RELAY-7" in [m.text for m in letters(page)]


def test_the_upper_left_corner_is_clipped_unless_a_screw_or_the_outline_leaves_no_room():
    plain = layout(cards={"a": card(120, 80, 20)}).cards["a"]
    a, b = stand_in.clipped_corner(plain)
    assert sorted((a, b)) == [(-60.0, 30.0), (-50.0, 40.0)]
    crowded = layout(cards={"a": card(120, 80, 20, screws=[{"at": [-57, 37], "thread": "M4"}])}).cards["a"]
    assert stand_in.clipped_corner(crowded) is None
    cut = [[-60, -40], [60, -40], [60, 40], [-45, 40], [-60, 25]]
    assert stand_in.clipped_corner(layout(cards={"a": card(outline=cut)}).cards["a"]) is None


# shared/look asks for rooms' own measure: pages against the bound by area (no packing can beat it)
def test_nesting_wastes_little():
    rng = random.Random(7)
    bound = used = 0
    for _ in range(25):
        sizes = [(rng.uniform(60, 240), rng.uniform(40, 180)) for _ in range(12)]
        sheet = (195.9, 247.4)
        bound += -(-sum(w * h for w, h in sizes) // (sheet[0] * sheet[1]))
        used += len(nest(sizes, sheet))
    assert used <= 1.3 * bound


def test_nested_pieces_never_overlap():
    rng = random.Random(11)
    for _ in range(30):
        sizes = [(rng.uniform(5, 190), rng.uniform(5, 240)) for _ in range(rng.randint(1, 25))]
        pages = nest(sizes, (195.9, 247.4))
        assert sorted(s.which for page in pages for s in page) == list(range(len(sizes)))
        for page in pages:
            boxes = []
            for spot in page:
                w, h = sizes[spot.which][:: -1 if spot.turned else 1]
                assert (
                    spot.x >= 0 and spot.y >= 0 and spot.x + w <= 195.9 + 1e-6 and spot.y + h <= 247.4 + 1e-6
                )
                boxes.append(shapely.box(spot.x, spot.y, spot.x + w, spot.y + h))
            assert all(a.distance(b) >= GAP - 1e-6 for a, b in combinations(boxes, 2))


def test_a_piece_as_large_as_the_sheet_fits_and_a_hair_more_does_not():
    assert nest([(195.9, 247.4)], (195.9, 247.4))[0][0].turned is False
    assert nest([(247.4, 195.9)], (195.9, 247.4))[0][0].turned is True
    with pytest.raises(ValueError, match="does not fit"):
        nest([(196.0, 247.5)], (195.9, 247.4))


def test_the_map_is_plain_json_rounded_to_a_ten_thousandth():
    told = cut_out(boards.odd()).map()
    assert json.loads(json.dumps(told)) == told
    for page in told["pages"]:
        assert set(page) == {"page", "sheet", "size", "shows"} and page["sheet"] == "cards"
        for shown in page["shows"]:
            assert set(shown) - {"part"} == {"what", "id", "at", "turn"}
            assert all(round(v, 4) == v for v in shown["at"])
