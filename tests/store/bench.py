"""A job file to work on, and ways to harm it."""

import os
import sqlite3
import subprocess
import sys
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from tests.build import gear, layout

from bayboard.edits.move_gear import MoveGear
from bayboard.model.refused import Refused
from bayboard.store.job_file import make_job_file

JPEG = b"\xff\xd8\xff\xe0" + b"a small photo " * 20
PNG = b"\x89PNG\r\n\x1a\n" + b"a small picture " * 20
PLAIN = layout(gear=[gear("A1", 100, 100)])


def moved(number):
    """Return the plain layout with its gear `number` mm further right."""
    return MoveGear(("A1",), number, 0).apply(PLAIN) if number else PLAIN


def write_moves(file, count, first=1):
    """Write `count` edits, one at a time, the first of them moving by `first` mm."""
    for number in range(first, first + count):
        file.write(moved(number), upto=number, add=[(f"Move {number}", moved(number))], at=number + 1)


def kept_job(path, revisions=3, photos=()):
    """Make a closed job file with some revisions, each of another layout."""
    path.write_bytes(_kept(revisions, tuple(photos)))
    return path


@cache
def _kept(revisions, photos):
    """Return the bytes of such a file, made once, for the disk is slow."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / "kept.bay"
        with make_job_file(path, PLAIN, photos=photos) as file:
            for number in range(1, revisions + 1):
                write_moves(file, 1, number)
                file.keep(f"note {number}", PNG + bytes([number]))
        return path.read_bytes()


def refusal(act, *words, **named):
    """Return what the act is refused with."""
    with pytest.raises(Refused) as caught:
        act(*words, **named)
    return caught.value


def by_hand(path, *statements):
    """Do something to the file as any other program could."""
    conn = sqlite3.connect(path, isolation_level=None)
    try:
        for statement in statements:
            conn.execute(statement)
    finally:
        conn.close()


def asked(path, question):
    """Return what any other program reads."""
    conn = sqlite3.connect(path)
    try:
        return conn.execute(question).fetchall()
    finally:
        conn.close()


def flipped(path, words, nth=0, bit=1):
    """Flip a bit of the first letter of the `nth` place where the file holds `words`."""
    content, at = bytearray(path.read_bytes()), -1
    for _ in range(nth + 1):
        at = content.index(words, at + 1)
    content[at] ^= bit
    path.write_bytes(content)


def child(script, *words, wait=True):
    """Run Python code in a program of its own; `wait`: until its end, else until it says something."""
    running = subprocess.Popen(
        [sys.executable, "-c", script, *map(str, words)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        cwd=Path(__file__).resolve().parents[2],
        env=os.environ | {"PYTHONDONTWRITEBYTECODE": "1"},
    )
    if wait:
        running.communicate()
    else:
        running.stdout.readline()
    return running


def killed(running):
    """Kill a child at once, so that it ends nothing properly."""
    running.kill()
    running.communicate()


def names(folder):
    """Return the names of all files in a folder."""
    return sorted(path.name for path in folder.iterdir())
