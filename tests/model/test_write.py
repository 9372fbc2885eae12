"""The normal form: one text for one layout."""

import json
import re

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.build import document, gear, layout
from tests.model.rich import rich

from bayboard.model.layout import Layout, Value
from bayboard.model.read import from_document, read
from bayboard.model.things import things
from bayboard.model.write import number, write


def test_the_rich_document_sets_every_member_to_something_else_than_its_default():
    unset = set()
    changed = set()
    for _, thing in things(from_document(rich())):
        for field in msgspec.structs.fields(type(thing)):
            where = changed if getattr(thing, field.name) != field.default else unset
            where.add((type(thing).__name__, field.encode_name))
    assert unset - changed == {("Layout", "bayboard")}


def test_the_rich_document_uses_every_kind_of_thing():
    used = {type(thing) for _, thing in things(from_document(rich()))}
    assert used == {kind for kind in _kinds(Value) if kind.__module__ == Value.__module__} - {Value}


def _kinds(kind):
    yield kind
    for below in kind.__subclasses__():
        yield from _kinds(below)


def test_what_is_written_reads_back_the_same():
    whole = from_document(rich())
    assert read(write(whole)) == whole


def test_writing_twice_gives_the_same_text():
    once = write(from_document(rich()))
    assert write(read(once)) == once


def test_the_normal_form_is_indented_json_with_plain_lists_on_one_line():
    # independent route: the standard library's own indenter, its plain lists folded back
    text = write(from_document(rich()))
    indented = json.dumps(json.loads(text), indent=1, ensure_ascii=False)
    folded = re.sub(r"\[[^][{}]*\]", lambda found: "[" + ", ".join(_parts(found[0])) + "]", indented)
    assert text == folded + "\n"


def _parts(bracketed):
    return [line.strip().rstrip(",") for line in bracketed[1:-1].split("\n") if line.strip()]


def test_members_come_in_the_contracts_order_however_they_were_given():
    doc = rich()
    mixed = {name: doc[name] for name in sorted(doc, reverse=True)}
    mixed["gear"] = [dict(reversed(g.items())) for g in mixed["gear"]]
    assert write(from_document(mixed)) == write(from_document(doc))


def test_members_equal_to_their_default_are_left_out():
    said = document(
        units="mm",
        gear=[gear("A1", 10, 20, board="BD", turn=0, lift=0.0, taped=False, drilled=None)],
        bay={"tape": 3.0, "eye": {}, "supply": {"volts": 13.8, "air": [-20, 70], "fit": 20}, "landings": []},
        board={"stock": [10.0], "cutouts": [], "corner_radius": 0, "material": "hdpe"},
        x={},
    )
    plain = document(gear=[gear("A1", 10, 20)])
    assert write(from_document(said)) == write(from_document(plain))
    assert json.loads(write(from_document(said))) == plain


def test_the_version_and_required_nulls_are_always_written():
    written = json.loads(write(layout(gear=[{"id": "A1", "card": "box", "at": None}])))
    assert written["bayboard"] == 1
    assert written["gear"] == [{"id": "A1", "card": "box", "at": None}]
    assert written["cards"]["box"]["heat"] is None


def test_the_second_board_of_a_piece_is_written_and_the_first_is_not():
    written = json.loads(write(from_document(rich())))
    assert [g.get("board") for g in written["gear"]] == [None, "B2", None]
    assert [f.get("board") for f in written["fixings"]] == ["B2", None]


def test_the_text_ends_with_one_line_feed_and_has_no_other_line_ends():
    text = write(from_document(rich()))
    assert text.endswith("}\n")
    assert "\r" not in text


@pytest.mark.parametrize(
    ("value", "spelled"),
    [
        (0.0, "0"),
        (-0.0, "0"),
        (12.0, "12"),
        (-12.5, "-12.5"),
        (0.1, "0.1"),
        (314.325, "314.325"),
        (1e-6, "0.000001"),
        (2.5e-7, "0.00000025"),
        (100_000.0, "100000"),
        (1e8, "100000000"),
        (1e15, "1000000000000000"),
        (1e300, "1e+300"),
        (1e-300, "1e-300"),
    ],
)
def test_a_number_is_the_shortest_decimal(value, spelled):
    assert number(value) == spelled


@settings(derandomize=True, max_examples=200)
@given(st.floats(-1e5, 1e5) | st.integers(-6_400_000, 6_400_000).map(lambda n: n * 0.396875))
def test_a_number_reads_back_exactly(value):
    assert float(number(value)) == value
    assert not number(value).startswith("-0") or "." in number(value)


def test_numbers_of_a_numeric_library_are_written_as_numbers():
    from numpy import float64

    moved = msgspec.structs.replace(layout(gear=[gear("A1", 1, 2)]).gear[0], at=(float64(1.5), float64(2.0)))
    text = write(msgspec.structs.replace(layout(), gear=(moved,)))
    assert '"at": [1.5, 2]' in text


json_values = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-(10**20), 10**20)
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(st.characters(codec="utf-8"), max_size=5),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(st.text(st.characters(codec="utf-8"), max_size=4), inner, max_size=3)
    ),
    max_leaves=8,
)


@settings(derandomize=True, max_examples=100, deadline=None)
@given(st.dictionaries(st.text(st.characters(codec="utf-8"), max_size=4), json_values, max_size=3))
def test_what_others_keep_in_x_comes_back(kept):
    whole = layout(x=kept)
    text = write(whole)
    assert json.loads(text).get("x", {}) == kept
    assert read(text) == whole
    assert write(read(text)) == text


def test_a_layout_without_boards_is_written_and_read():
    half = from_document(document(bay={"wall": []}, boards=[], gear=[gear("A1", 1, 2)]))
    assert half.gear[0].board is None
    assert read(write(half)) == half


def test_defaults_of_the_form_are_those_of_the_contract():
    # the contract's `?` members with their defaults, spelled again here
    plain = layout(gear=[gear("A1", 0, 0)])
    assert (plain.units, plain.bay.tape, plain.bay.lined, plain.bay.lean) == ("mm", 3, 0, 0)
    assert (plain.bay.supply.volts, plain.bay.supply.air, plain.bay.supply.fit) == (13.8, (-20, 70), 20)
    assert (plain.boards[0].material, plain.boards[0].corner_radius) == ("hdpe", 0)
    assert isinstance(plain, Layout)
