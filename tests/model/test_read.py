"""The door in: what is refused, where, in which words; what is legal though half-measured."""

import json
from math import inf, nan

import pytest
from tests.build import card, document, gear, layout, rectangle
from tests.model.changed import changed, refusal, without
from tests.model.rich import rich

from bayboard.model.read import from_document, read


def test_the_rich_document_is_read():
    whole = read(json.dumps(rich()))
    assert [g.id for g in whole.gear] == ["A1", "A2", "D1"]
    assert [g.board for g in whole.gear] == ["B1", "B2", "B1"]
    assert [f.board for f in whole.fixings] == ["B2", "B1"]


def test_bytes_with_a_mark_at_the_start_are_read():
    assert read(b"\xef\xbb\xbf" + json.dumps(document()).encode()) == layout()


def test_values_read_are_kept_to_the_last_figure():
    assert layout(gear=[gear("A1", 0.1 + 0.2, 1 / 3)]).gear[0].at == (0.1 + 0.2, 1 / 3)


def test_a_stock_of_the_boards_own_thickness_is_the_same_as_none():
    assert layout(board={"stock": [10]}) == layout()


def test_whole_numbers_may_be_spelled_with_a_point():
    text = json.dumps(rich()).replace('"turned": 90', '"turned": 90.0').replace('"ways": 2', '"ways": 2.0')
    assert read(text) == from_document(rich())


LEGAL = {
    "no wall": document(bay={"wall": []}),
    "no boards": document(boards=[]),
    "no boards, but gear with a place": document(boards=[], gear=[gear("A1", 1, 2)]),
    "no cards": {"bayboard": 1, "vehicle": {"name": ""}, "bay": {"wall": []}, "boards": []},
    "gear on the bench": document(gear=[{"id": "A1", "card": "box", "at": None}]),
    "a landing nobody looked behind": document(
        bay={"landings": [{"id": "L1", "outline": rectangle(0, 0, 9, 9), "recess": None}]}
    ),
    "a clockwise outline": document(bay={"wall": rectangle(0, 0, 90, 90)[::-1]}),
    "a point along an edge": document(bay={"wall": [[0, 0], [5, 0], [9, 0], [9, 9], [0, 9]]}),
    "metal proud of the plane": document(
        bay={"landings": [{"id": "L1", "outline": rectangle(0, 0, 9, 9), "recess": -4}]}
    ),
    "a cut-out at the edge": document(board={"cutouts": [{"id": "C1", "outline": rectangle(0, 50, 9, 90)}]}),
    "a corner radius of half the edge": document(board={"corner_radius": 200}),
    "a card a hair off its middle": document(
        cards={"box": card() | {"outline": rectangle(-50, -30, 50.1, 30)}}
    ),
    "the largest number": document(gear=[gear("A1", 100_000, -100_000)]),
    "the largest area": document(
        bay={"vents": [{"id": "V1", "outline": rectangle(0, 0, 9, 9), "free_area": 1e8}]}
    ),
    "500 pieces of gear": document(gear=[gear(f"A{n}", n, 0) for n in range(500)]),
    "2000 points": document(bay={"wall": [[n, n % 2] for n in range(1999)] + [[999, 9000]]}),
    "large figures in x": document(x={"far": 1e300, "list": [0] * 3000}),
    "a port and a gear of one id": document(
        cards={
            "box": card(
                ports=[{"id": "A1", "kind": "data", "at": [0, 0], "z": 1, "towards": "out", "plug": 9}]
            )
        },
        gear=[gear("A1", 0, 0)],
    ),
    "what was let be may be gone": document(
        let_be=[{"rule": "gap", "subjects": ["GONE"], "measure": None, "reason": ""}]
    ),
    "what was printed may be gone": document(
        printed={
            "revision": "1",
            "holes": [{"id": "GONE#4", "at": [0, 0], "make": "tap", "drill": 4, "slot": None}],
        }
    ),
}


@pytest.mark.parametrize("doc", LEGAL.values(), ids=LEGAL)
def test_it_is_legal(doc):
    assert read(json.dumps(doc)) == from_document(doc)


FORM = {
    "unknown member of gear": (changed("gear", 1, "colour", to="red"), "gear A2", '"colour"'),
    "unknown member of the layout": (changed("colour", to=1), "", '"colour"'),
    "unknown member of the bay": (changed("bay", "roof", to=1), "bay", '"roof"'),
    "unknown member of a port": (
        changed("cards", "deep", "ports", 1, "hue", to=1),
        "card deep › ports SIG",
        '"hue"',
    ),
    "a misspelled member": (changed("boards", 0, "thicknes", to=1), "board B1", 'Write "thickness"'),
    "missing place": (without("gear", 1, "at"), "gear A2", '"at" is missing'),
    "missing vehicle": (without("vehicle"), "", '"vehicle" is missing'),
    "missing heat of a card": (without("cards", "deep", "heat"), "card deep", "null means not known"),
    "text for a number": (changed("gear", 1, "turn", to="90"), "gear A2 › turn", '"90" is not a number'),
    "text within a point": (changed("gear", 1, "at", to=[1, "2"]), "gear A2 › at", '"2" is not a number'),
    "true for a number": (changed("gear", 1, "turn", to=True), "gear A2 › turn", "true is not a number"),
    "one for true": (changed("gear", 1, "taped", to=1), "gear A2 › taped", "neither true nor false"),
    "true for a turn of a photo": (changed("photos", 0, "turned", to=True), "photo PH1 › turned", "true"),
    "three figures for a point": (changed("gear", 1, "at", to=[1, 2, 3]), "gear A2 › at", "[x, y]"),
    "null for a number": (changed("gear", 1, "lift", to=None), "gear A2 › lift", "null is not a number"),
    "a number for a list": (changed("bay", "stays", to=3), "bay › stays", "is not a list"),
    "a list for an object": (changed("cards", to=[]), "cards", "is not an object"),
    "a point of an outline": (
        changed("bay", "landings", 0, "outline", to=[[0, 0], [9, 0], [1]]),
        "bay › landings L1 › outline › point 3",
        "[x, y]",
    ),
    "a material nobody sells": (changed("boards", 0, "material", to="gold"), "board B1 › material", "hdpe"),
    "a way out that is neither": (
        changed("cards", "deep", "ports", 0, "towards", to="up"),
        "card deep › ports PWR › towards",
        "out",
    ),
    "a way out that is a list": (
        changed("cards", "deep", "ports", 0, "towards", to=[0]),
        "card deep › ports PWR › towards",
        "degrees",
    ),
    "half a way": (
        changed("cards", "deep", "ports", 0, "ways", to=1.5),
        "card deep › ports PWR › ways",
        "whole",
    ),
    "an entry that carries water": (
        changed("bay", "entries", 0, "carries", to=["water"]),
        "bay › entries FEED › carries",
        '"water"',
    ),
    "a screw without a number of its own": (
        changed("cards", "deep", "screws", 1, "thread", to=5),
        "card deep › screws #2 › thread",
        "not text",
    ),
}


@pytest.mark.parametrize(("doc", "place", "says"), FORM.values(), ids=FORM)
def test_what_is_not_of_the_form_is_named_with_its_place(doc, place, says):
    refused = refusal(doc)
    assert refused.place == place
    assert says in str(refused)


RAW = {
    "NaN": (changed("gear", 1, "at", to=[nan, 0]), "gear A2 › at", "NaN"),
    "infinity": (changed("gear", 1, "turn", to=inf), "gear A2 › turn", "infinite"),
    "minus infinity": (changed("bay", "tape", to=-inf), "bay › tape", "infinite"),
    "infinity in x": (changed("x", "shop", "e", to=inf), "x › shop › e", "infinite"),
    "a number too large": (changed("gear", 1, "at", to=[0, 100_000.5]), "gear A2 › at", "100000"),
    "a number too small": (changed("fixings", 0, "rated", to=-100_001), "fixing F1 › rated", "100000"),
    "an area too large": (
        changed("bay", "vents", 0, "free_area", to=2e8),
        "bay › vents V1 › free_area",
        "1000",
    ),
    "501 pieces of gear": (changed("gear", to=[gear(f"A{n}", 0, 0) for n in range(501)]), "gear", "501"),
    "501 cards": (changed("cards", to={f"c{n}": card() for n in range(501)}), "cards", "501"),
    "501 ports": (
        changed("cards", "deep", "ports", to=lambda ports: ports * 200),
        "card deep › ports",
        "600 of them",
    ),
    "2001 points": (
        changed("boards", 0, "outline", to=[[n, n * n] for n in range(2001)]),
        "board B1 › outline",
        "2001 points",
    ),
    "half a letter": (changed("vehicle", "name", to="\ud83d"), "vehicle › name", "half a character"),
    "half a letter in x": (changed("x", "shop", to=["\udc00"]), "x › shop", "half a character"),
}


@pytest.mark.parametrize(("doc", "place", "says"), RAW.values(), ids=RAW)
def test_a_value_that_no_layout_holds_is_named_with_its_place(doc, place, says):
    refused = refusal(doc)
    assert refused.place == place
    assert says in str(refused)


TEXT = {
    "not JSON": ('{"bayboard": 1,\n "x": }', "line 2, column 7", "not JSON"),
    "cut short": (json.dumps(rich())[:-40], "line 1", "not JSON"),
    "empty": ("", "line 1, column 1", "not JSON"),
    "not UTF-8": (
        json.dumps(document(vehicle={"name": "é"}), ensure_ascii=False).encode("latin-1"),
        "",
        "UTF-8",
    ),
    "UTF-16": (json.dumps(document()).encode("utf-16"), "", "UTF-8"),
    "a list": ("[1]", "", "not a layout"),
    "null": ("null", "", "not a layout"),
    "another kind of file": ('{"type": "FeatureCollection"}', "", "not a layout"),
    "a newer version": ('{"bayboard": 2, "new": {"things": 1}}', "", "made by a newer Bayboard"),
    "a newer half version": ('{"bayboard": 1.5}', "", "made by a newer Bayboard"),
    "an older version": ('{"bayboard": 0}', "bayboard", "not a version"),
    "true for a version": ('{"bayboard": true}', "bayboard", "not a version"),
    "text for a version": ('{"bayboard": "1"}', "bayboard", "not a version"),
    "a member twice": (
        json.dumps(rich()).replace('"taped": true', '"taped": true, "taped": false', 1),
        "gear A1",
        '"taped"',
    ),
    "a member twice at the top": (json.dumps(document())[:-1] + ', "boards": []}', "", '"boards"'),
    "a member twice in x": ('{"bayboard": 1, "x": {"a": [{"b": 1, "b": 1}]}}', "x › a #1", '"b"'),
    "a member twice, as bytes escape": ('{"bayboard": 1, "x": {"a": 1, "\\u0061": 1}}', "x", '"a"'),
    "1e999": ('{"bayboard": 1, "x": 1e999}', "x", "infinite"),
    "-1e999": ('{"bayboard": 1, "x": [-1e999]}', "x", "infinite"),
    "NaN spelled": ('{"bayboard": 1, "gear": [{"id": "A1", "at": [NaN, 0]}]}', "gear A1 › at", "NaN"),
    "a whole number of 5000 figures": ('{"bayboard": 1, "gear": ' + "9" * 5000 + "}", "gear", "infinite"),
    "lists 100000 deep": ('{"bayboard": 1, "x": ' + "[" * 100_000, "", "deep"),
    "lists 500 deep": ('{"bayboard": 1, "x": ' + "[" * 500 + "]" * 500 + "}", "x", "deep"),
    "objects 500 deep": ('{"bayboard": 1, "x": ' + '{"a":' * 500 + "1" + "}" * 501, "x", "deep"),
    "larger than 20 MB": (" " * 20_000_001, "", "20 MB"),
    "a zero byte": (b'{"bayboard": 1}\0', "line 1, column 16", "not JSON"),
}


@pytest.mark.parametrize(("text", "place", "says"), TEXT.values(), ids=TEXT)
def test_a_text_that_is_no_layout_is_one_sentence(text, place, says):
    refused = refusal(text)
    assert refused.place.startswith(place) if place else not refused.place
    assert says in str(refused)


def test_20_mb_is_read():
    text = json.dumps(document())
    assert read(text + " " * (20_000_000 - len(text))) == layout()


def test_a_strangers_text_is_cut_short_and_kept_on_one_line():
    refused = refusal(changed("gear", 1, "a\nb" * 2000, to=1))
    assert "\n" not in str(refused)
    assert len(str(refused)) < 200


def test_every_word_of_an_upper_limit_in_x_is_free_but_its_numbers_are_finite():
    assert from_document(document(x={"bayboard": 9, "n": -1e200})).x["n"] == -1e200
