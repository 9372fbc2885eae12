"""Where something moved, plugs and sides are measured again, and then tell what a fresh look finds."""

import random

import msgspec
import pytest
from tests.bays import bay

from bayboard.model.read import from_document
from bayboard.rules import ahead
from bayboard.rules.arrange import air, heat_rise, plug_room, seat_swing, warm_stack
from bayboard.rules.check import Checker, check
from bayboard.rules.finding import Finding

RULES = (plug_room, air, seat_swing, warm_stack, heat_rise)


def _breathing(pieces, across):
    """Return a crowded layout whose cards all ask for air and whose seats swing."""
    doc = bay(pieces, across=across)
    for card in doc["cards"].values():
        card["air"] = {"up": 40, "left": 25, "out": 30}
    for n, piece in enumerate(doc["gear"]):  # rows from the foot up, the lower the hotter
        name = f"{piece['card']}-{n // across}"
        doc["cards"][name] = doc["cards"][piece["card"]] | {"heat": 60 - 10 * (n // across)}
        piece["card"] = name
    for seat in doc["bay"]["seats"]:
        hinge = (160, 20)
        folded = [[hinge[0] + y - hinge[1], hinge[1] - (z - hinge[0])] for z, y in seat["up"]]
        seat |= {"hinge": list(hinge), "swing": None, "folded": folded}
    return from_document(doc)


def _with(layout, number, **members):
    piece = msgspec.structs.replace(layout.gear[number], **members)
    return msgspec.structs.replace(layout, gear=(*layout.gear[:number], piece, *layout.gear[number + 1 :]))


def _walk(layout, steps):
    dice = random.Random(2)
    for _ in range(steps):
        n = dice.randrange(len(layout.gear))
        (x, y), act = layout.gear[n].at, dice.random()
        if act < 0.6:
            layout = _with(layout, n, at=(x + dice.uniform(-60, 60), y + dice.uniform(-60, 60)))
        elif act < 0.8:
            layout = _with(layout, n, turn=dice.choice([0.0, 90.0, 180.0, 33.0]))
        elif act < 0.95:
            layout = _with(layout, n, lift=dice.choice([0.0, 8.0, 30.0]))
        yield layout


def test_a_walk_ends_each_step_with_what_a_fresh_look_finds():
    layout = _breathing(6, 3)
    checker, told = Checker(layout, RULES), set()
    for moved in _walk(layout, 15):
        assert checker.move(moved) == check(moved, RULES)
        told |= {f.rule for f in checker.now.findings}
    assert told == {rule.RULE for rule in RULES}


@pytest.mark.parametrize("rule", [air, plug_room], ids=lambda rule: rule.RULE)
def test_a_step_measures_few_of_the_pairs(rule, monkeypatch):
    """Counted, not timed: pairs of a look and a thing asked about by a whole look and by a step."""
    asked = []
    real = ahead.free_ahead
    monkeypatch.setattr(ahead, "free_ahead", lambda *row: asked.append(int(row[-1].sum())) or real(*row))
    layout = _breathing(9, 3)
    checker = Checker(layout, (rule,))
    whole = sum(asked)
    asked.clear()
    x, y = layout.gear[4].at
    checker.move(_with(layout, 4, at=(x + 1.0, y)))
    assert 0 < sum(asked) < whole / 2


def test_every_finding_of_a_side_names_what_is_asked():
    verdict = check(_breathing(6, 3), (air,))
    assert verdict.findings
    assert all(isinstance(f, Finding) and f.limit in (40, 25, 30) for f in verdict.findings)
