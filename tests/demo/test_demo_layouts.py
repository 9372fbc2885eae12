"""The vehicles that ship with Bayboard: they open, stand in normal form, and show what they are for."""

import json
import re
from collections import Counter

import pytest

from bayboard.model.read import read
from bayboard.model.write import write
from bayboard.rules.check import check
from bayboard.tables.where import shipped

FOLDER = shipped("demo_layouts")
NAMES = sorted(path.stem for path in FOLDER.glob("*.json"))


def _text(name):
    return (FOLDER / f"{name}.json").read_bytes().decode("utf-8")


@pytest.mark.parametrize("name", NAMES)
def test_a_demo_stands_in_normal_form(name):
    assert write(read(_text(name))) == _text(name)


def _said(layout):
    verdict = check(layout)
    found = {(f.rule, f.severity, f.subjects, f.measure, f.limit) for f in verdict.findings}
    return found, {(u.rule, u.subjects) for u in verdict.unchecked}


def test_the_small_bulkhead_is_clean_and_everything_on_it_was_looked_at():
    verdict = check(read(_text("bulkhead")))
    assert [f.says for f in verdict.findings if f.severity != "note"] == []
    assert verdict.unchecked == ()


BAY_ITEMS = ("landings", "stays", "linings", "vents", "no_drill", "seats", "entries")
STORIES = {
    "crew-pickup-rear-wall": {
        ("gap", "must"): 1,
        ("reach", "must"): 1,
        ("sight", "should"): 1,
        ("seat-depth", "should"): 1,
        ("beside", "should"): 1,
    },
    "floor-lid": {("seat-depth", "should"): 1, ("insert-landing", "must"): 1, ("no-drill", "should"): 1},
}


@pytest.mark.parametrize("name", STORIES)
def test_a_faulty_demo_shows_the_faults_of_its_story(name):
    counts = Counter((f.rule, f.severity) for f in check(read(_text(name))).findings if f.severity != "note")
    assert counts == STORIES[name]


def test_every_demo_has_gear_leads_and_fixings_to_show():
    for name in NAMES:
        layout = read(_text(name))
        assert len(layout.gear) >= 4 and len(layout.leads) >= 9 and len(layout.fixings) >= 5
        assert all(layout.cards[gear.card].ports for gear in layout.gear)


def test_the_wide_wall_has_pieces_waiting_on_the_bench():
    layout = read(_text("crew-pickup-rear-wall"))
    assert sum(gear.at is None for gear in layout.gear) in (2, 3)


def _renamed(doc):
    """Return the document with every id another, in another alphabetical order, and old ids by new ones."""
    things = [doc["gear"], doc["leads"], doc["fixings"], doc["boards"]]
    things += [board.get("cutouts", []) for board in doc["boards"]]
    things += [doc["bay"].get(many, []) for many in BAY_ITEMS]
    every = [thing for group in things for thing in group]
    new = {thing["id"]: f"r{len(every) - n}-{n}" for n, thing in enumerate(every)}
    for thing in every:
        thing["id"] = new[thing["id"]]
        if "board" in thing:
            thing["board"] = new[thing["board"]]
        for end in ("from", "to"):
            if end in thing and "carries" not in thing:
                head, dot, port = thing[end].partition(".")
                thing[end] = new[head] + dot + port
    return {name: old for old, name in new.items()}


@pytest.mark.parametrize("name", NAMES)
def test_a_demo_whose_ids_are_all_renamed_gets_the_same_findings(name):
    doc = json.loads(_text(name))
    found, unchecked = _said(read(json.dumps(doc)))
    old = _renamed(doc)

    def back(subjects):
        return tuple(re.sub(r"^[^.#]+", lambda head: old[head[0]], subject) for subject in subjects)

    new_found, new_unchecked = _said(read(json.dumps(doc)))
    assert {(rule, word, back(s), m, limit) for rule, word, s, m, limit in new_found} == found
    assert {(rule, back(s)) for rule, s in new_unchecked} == unchecked
