"""Documents with a few legal changes, for laws about pairs of layouts."""

from copy import deepcopy
from functools import cache
from random import Random
from typing import Any

from tests.model.rich import rich
from tests.plain.random_layouts import random_document

from bayboard.model.layout import Layout
from bayboard.model.read import from_document
from bayboard.model.refused import Refused

NUDGES = (-7.5, -1.0, -1e-7, 1e-7, 0.25, 12.7, 90.0, 360.0)


@cache
def pair(seed: int) -> tuple[Layout, Layout]:
    """Return two layouts, the second the first with up to four changes; now and then quite another one."""
    rng = Random(seed)
    doc = rich() if rng.random() < 0.7 else random_document(seed)
    if rng.random() < 0.1:
        return from_document(doc), from_document(random_document(seed + 1))
    return from_document(doc), _varied(rng, doc)


def _varied(rng: Random, doc: dict[str, Any]) -> Layout:
    new, layout = doc, from_document(doc)
    for _ in range(rng.randint(0, 4)):
        tried = deepcopy(new)
        _change(rng, tried)
        try:
            new, layout = tried, from_document(tried)
        except Refused:
            continue
    return layout


def _holders(value: Any) -> list[Any]:
    steps = value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
    return [value, *(found for item in steps for found in _holders(item))] if steps else []


def _change(rng: Random, doc: dict[str, Any]) -> None:
    """Make one change that is often legal: a figure, a word, an order, something gone or told twice."""
    here = rng.choice(_holders(doc))
    step = rng.choice(list(here) if isinstance(here, dict) else range(len(here)))
    there = here[step]
    way = rng.randrange(6)
    if isinstance(there, bool):
        here[step] = not there
    elif isinstance(there, int | float) and way < 5:
        here[step] = there + rng.choice(NUDGES)
    elif way == 0 and isinstance(here, dict):
        here[step] = None
    elif way == 1:
        del here[step]
    elif way == 2 and isinstance(here, list):
        here.reverse()
    elif way == 3 and isinstance(here, dict):
        here[step] = here.pop(step)
    elif isinstance(there, dict) and "at" in there:
        there["at"] = None if way == 4 else [rng.choice([0, 200]), 180]
    elif isinstance(there, str):
        here[step] = there + "x"
