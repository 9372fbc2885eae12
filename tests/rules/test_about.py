"""A rule asked about what moved says just what it would say of the whole, as far as that is concerned."""

import pytest
from msgspec.structs import replace
from tests.plain.random_layouts import random_document

from bayboard.model.read import from_document
from bayboard.rules import RULES
from bayboard.rules.check import changed_leads
from bayboard.rules.finding import heads
from bayboard.rules.scene import Scene

SEEDS = range(40)
STEPS = ((0.01, 0.0), (-35.0, 20.0), (400.0, -60.0))


def _moves(seed):
    """Yield (scene, ids that changed place) after each of some moves of a random layout."""
    layout = from_document(random_document(seed))
    before = Scene(layout)
    for n, (dx, dy) in enumerate(STEPS):
        placed = [i for i, gear in enumerate(layout.gear) if gear.at is not None]
        if not placed:
            return
        i = placed[(seed + n) % len(placed)]
        gear = layout.gear[i]
        moved = replace(gear, at=(gear.at[0] + dx, gear.at[1] + dy), turn=gear.turn + 90 * n)
        layout = replace(layout, gear=(*layout.gear[:i], moved, *layout.gear[i + 1 :]))
        scene = Scene(layout, before)
        yield scene, frozenset((gear.id,)) | changed_leads(before.routes, scene.routes)
        before = scene


@pytest.mark.parametrize("rule", [rule for rule in RULES if not rule.WIDE], ids=lambda rule: rule.RULE)
def test_a_look_about_what_moved_is_part_of_a_look_at_all(rule):
    told = 0
    for seed in SEEDS:
        for scene, about in _moves(seed):
            of_it = {s for s in rule.look(Scene(scene.layout)) if not about.isdisjoint(heads(s))}
            told += len(of_it)
            assert set(rule.look(scene, about)) == of_it, (seed, about)
    fixed = {"off-wall", "on-landing", "on-vent", "way-in", "insert-landing", "no-drill"}  # of no stand-in
    assert told > 0 or rule.RULE in fixed


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.RULE)
def test_a_look_at_all_tells_each_thing_once(rule):
    for seed in SEEDS:
        said = [s for s in rule.look(Scene(from_document(random_document(seed)))) if hasattr(s, "severity")]
        keys = [(s.severity, s.subjects) for s in said]
        assert len(keys) == len(set(keys)), seed
