"""Damaged documents: each is opened, or refused with one sentence, and nothing else ever happens."""

import json
from copy import deepcopy
from random import Random

import pytest
from tests.model.rich import rich

from bayboard.model.read import read
from bayboard.model.refused import Refused
from bayboard.model.write import write

COUNT = 600
SQUARE = [[0, 0], [1, 0], [1, 1], [0, 1]]
NUMBERS = (0, -0.0, 1, -1, 0.1, 1e-300, 5e-324, 99_999.5, -1e5, 1e5 + 1, 1e8, 1e300, 10**400)
TEXTS = (
    "",
    " ",
    "A1",
    "A1.PWR",
    "A1#1",
    "out",
    "\ud800",
    "\0",
    "\ufeff",
    "é" * 30,
    "x" * 5000,
    "›",
    "#",
    "card:",
)
LISTS = (
    [],
    [[]],
    [0],
    [0, 0],
    [[0, 0]],
    SQUARE,
    SQUARE[:3],
    SQUARE[::2] + SQUARE[1::2],
    [[0, 0]] * 2001,
    [{}] * 501,
)
OBJECTS = ({}, {"id": "A1"}, {"": None}, {"x": [0, 1]})
HOSTILE = (None, True, False, float("nan"), float("inf"), *NUMBERS, *TEXTS, *LISTS, *OBJECTS)
WORDS = (b"NaN", b"-Infinity", b"1e999", b"-0", b"null", b"01", b"1.", b"/**/", b'"id":"A1",', b"9" * 400)
MARKS = (b"{", b"}", b"[", b"]", b'"', b",", b":", b"\\", b"[" * 200)
ODD_BYTES = (b"\\ud83d", b"\xff", b"\xed\xa0\x80", b"\0", b"\xef\xbb\xbf")
TOKENS = WORDS + MARKS + ODD_BYTES


def nodes(value, path=()):
    """Yield the path of every value within."""
    steps = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for step, item in steps:
        yield (*path, step)
        yield from nodes(item, (*path, step))


PATHS = list(nodes(rich()))
WHOLE = json.dumps(rich(), ensure_ascii=False).encode()


def holder(document, path):
    for step in path[:-1]:
        document = document[step]
    return document


def bend_tree(rng, document):
    """Change one value of the tree in one of several ways."""
    path = rng.choice(PATHS)
    try:
        here, step = holder(document, path), path[-1]
        there = here[step]
    except (KeyError, IndexError, TypeError):
        return  # an earlier change took it away
    if isinstance(here, str):
        return
    way = rng.randrange(7)
    if way == 0:
        del here[step]
    elif way == 1 and type(there) in (int, float) and abs(there) < 1e9:
        here[step] = rng.choice((-there, there * 1e3, there + 1e-9, there / 3, str(there), round(there)))
    elif way == 2 and isinstance(there, list) and there:
        there.insert(rng.randrange(len(there) + 1), deepcopy(rng.choice(there)))
    elif way == 3 and isinstance(there, list):
        rng.shuffle(there)
    elif way == 4:
        other = rng.choice(PATHS)
        try:
            here[step] = deepcopy(holder(document, other)[other[-1]])
        except (KeyError, IndexError, TypeError):
            here[step] = None
    elif way == 5 and isinstance(here, dict):
        here[rng.choice(("idd", "id", "x", "", "outline", "at", step.upper()))] = here.pop(step)
    else:
        here[step] = deepcopy(rng.choice(HOSTILE))


def bend_bytes(rng, text):
    """Change one stretch of the bytes in one of several ways."""
    at, end = sorted((rng.randrange(len(text)), rng.randrange(len(text))))
    way = rng.randrange(6)
    if way == 5:
        digits = [n for n, letter in enumerate(text) if chr(letter) in "0123456789"]
        at = rng.choice(digits or [0])
        return text[:at] + rng.choice(("0", "1", "7", "9", "-", ".", "e")).encode() + text[at + 1 :]
    if way == 0:
        return text[:at] + bytes([rng.randrange(256)]) + text[at + 1 :]
    if way == 1:
        return text[:at] + rng.choice(TOKENS) + text[at:]
    if way == 2:
        return text[:at] + text[min(end, at + 40) :]
    if way == 3:
        return text[:end] + text[at : min(end, at + 80)] + text[end:]
    return text[: end + 1]


def tree_mutant(rng):
    document = rich()
    for _ in range(rng.choice((1, 1, 1, 2, 4))):
        bend_tree(rng, document)
    return json.dumps(document).encode()


def text_mutant(rng):
    text = WHOLE
    for _ in range(rng.choice((1, 1, 3))):
        text = bend_bytes(rng, text)
    return text


def wrong(text):
    """Return what is wrong with how a damaged document is met, "" when nothing is, and whether it opened."""
    try:
        layout = read(text)
    except Refused as refused:
        sentence = str(refused)
        one = refused.what and sentence.endswith(".") and sentence.isprintable() and len(sentence) < 500
        return "" if one else f"not one sentence: {sentence}", False
    return "" if read(write(layout)) == layout else "what was written reads otherwise", True


# tests/long/documents.py tries a hundred thousand
@pytest.mark.parametrize(("mutant", "count"), [(tree_mutant, COUNT * 3 // 4), (text_mutant, COUNT // 4)])
def test_a_damaged_document_is_opened_or_refused_in_one_sentence(mutant, count):
    met = [wrong(mutant(Random(seed))) for seed in range(count)]
    assert [(seed, fault) for seed, (fault, _) in enumerate(met) if fault] == []
    # damage that leaves every document whole, or none, would test nothing
    assert count * 0.05 < sum(opened for _, opened in met) < count * 0.7
