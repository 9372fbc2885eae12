"""Why?: every rule has its page, and on it stands every limit that the rule reads."""

import sys
from copy import deepcopy

import pytest
from tests.bays import bay
from tests.build import layout

from bayboard.model.read import from_document
from bayboard.rules import RULES
from bayboard.rules.pages import LIMITS_OF, own_limits, page, source_words, status_words
from bayboard.rules.scene import Scene
from bayboard.tables import limits

RICH = bay(8, seed=3, across=4, jitter=20)
LEANING = deepcopy(RICH)
LEANING["bay"]["lean"] = 80


def _reading_along(monkeypatch):
    """Return a list that gets the name of each limit that is read from now on."""
    seen = []
    for name in ("limit", "fixed"):
        real = getattr(limits, name)

        def read(*args, real=real):
            seen.append(args[-1])
            return real(*args)

        for module in [m for n, m in sys.modules.items() if n.startswith("bayboard.") and m is not limits]:
            if vars(module).get(name) is real:
                monkeypatch.setattr(module, name, read)
    return seen


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.RULE)
def test_every_limit_that_a_rule_reads_is_on_its_page(rule, monkeypatch):
    seen = _reading_along(monkeypatch)
    for document in (RICH, LEANING):
        list(rule.look(Scene(from_document(document))))
    told = {line.name for line in page(rule.RULE, layout()).limits}
    assert set(seen) <= told


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.RULE)
def test_every_rule_has_a_page_with_its_fault_and_reason(rule):
    told = page(rule.RULE, layout())
    assert told.fault.endswith(".")
    assert told.why.endswith(".")
    assert all(line.words and line.status for line in told.limits)


def test_the_table_names_limits_and_rules_that_there_are():
    assert {rule.RULE for rule in RULES} <= LIMITS_OF.keys()
    assert {
        name for names in LIMITS_OF.values() for name in names
    } <= limits.LIMITS.keys() | limits.FIXED.keys()


def test_a_limit_of_ones_own_stands_beside_the_usual():
    own = layout(limits={"gap_must": 9})
    (line,) = own_limits("gap", own)
    assert (line.name, line.value, line.usual) == ("gap_must", 9, 6)
    assert own_limits("overlap", own) == ()
    assert own_limits("gap", layout()) == ()


def test_what_is_from_memory_says_that_it_is_a_caution():
    assert "look it up before you rely on it" in status_words(limits.LIMITS["sight_angle"])
    assert status_words(limits.LIMITS["gap_must"]) == "common practice"
    assert status_words(limits.LIMITS["beside_d"]) == "read in 2 public places"
    assert status_words(limits.LIMITS["corridor_fingers"]) == "read in 1 public place"


@pytest.mark.parametrize("known", [*limits.LIMITS.values(), *limits.FIXED.values()])
def test_a_source_names_no_file(known):
    assert ".csv" not in source_words(known)
    assert ".md" not in source_words(known)


def test_there_is_no_page_for_a_rule_that_is_not():
    assert page("nonsense", layout()) is None
