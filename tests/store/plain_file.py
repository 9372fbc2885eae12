"""A job file as plain lists and a dict, made from the interface's words alone, and acts that walk both.

The act with a number follows from the seed, the number and the plain file before it, so that two processes
know the same walk without talking.
"""

import hashlib
import struct
import zlib
from dataclasses import dataclass, field
from typing import Any

from tests.build import gear, layout

from bayboard.model.write import write

MOST_STATES = 300
LETTERS = "abcdefghijklmnopqrstuvwxyz äß›\n0123456789"


@dataclass
class Plain:
    """What a job file must hold; layouts stand as their text."""

    draft: str
    picture: bytes | None = None  # of the draft, until another one comes
    parent: int | None = None
    at: int = 1
    states: list[tuple[int, str, str]] = field(default_factory=list)  # number, label, text
    revisions: list[tuple[int, int | None, str, str, bytes | None]] = field(default_factory=list)
    photos: dict[str, bytes] = field(default_factory=dict)
    prints: list[tuple[str, str]] = field(default_factory=list)  # revision, words
    meta: dict[str, Any] = field(default_factory=dict)

    def keep(self, note, picture):
        """Keep the draft: number, parent, note, text, picture (its own, or else the draft's)."""
        drawn = self.picture if picture is None else picture
        self.revisions.append((len(self.revisions) + 1, self.parent, note, self.draft, drawn))
        self.parent = len(self.revisions)

    def push(self, upto, label, text):
        """Drop the states after `upto`, add one, go there."""
        self.states = [s for s in self.states if s[0] <= upto] + [(upto + 1, label, text)]
        self.states = self.states[-MOST_STATES:]
        self.at, self.draft = upto + 1, text

    def seen(self):
        """Return all of it as one value to compare."""
        return {
            "draft": (self.draft, self.parent, self.at),
            "states": list(self.states),
            "revisions": [(n, p, note, digest(text), text, pic) for n, p, note, text, pic in self.revisions],
            "photos": dict(self.photos),
            "prints": list(self.prints),
            "meta": dict(self.meta),
        }


NAMES = ("view", "drill_day")


def digest(text):
    """Return the hash that a revision goes by."""
    return hashlib.sha256(text.encode("utf-8")).hexdigest()


def look(file):
    """Return all that an open job file gives back, in the form of `Plain.seen`."""
    draft = file.draft()
    assert draft.sha256 == digest(write(draft.layout))
    return {
        "draft": (write(draft.layout), draft.parent, draft.at),
        "states": [(m.number, m.label, write(file.state(m.number))) for m in draft.states],
        "revisions": [
            (r.number, r.parent, r.note, r.sha256, file.revision_text(r.number), file.picture(r.number))
            for r in file.revisions()
        ],
        "photos": {name: file.photo(name) for name in file.photos()},
        "prints": [(p.revision, p.words) for p in file.prints()],
        "meta": {name: value for name in NAMES if (value := file.meta(name)) is not None},
    }


def a_layout(rng, most_note=6_000):
    """Return a random small layout; half of them fill several pages."""
    note = "".join(rng.choices(LETTERS, k=rng.choice([0, 40, rng.randrange(most_note)])))
    pieces = [
        gear(f"A{n}", rng.randrange(900), rng.randrange(300))
        for n in range(rng.choice([0, 2, rng.randrange(20)]))
    ]
    return layout(vehicle={"name": rng.choice(["Grey van", "Kleinbus › 2"]), "note": note}, gear=pieces)


def a_picture(rng, size=200):
    """Return a small PNG file, the same for the same dice; `size` bytes of it are noise."""
    rows = b"".join(b"\0" + rng.randbytes(3 * 8) for _ in range(4))
    head = struct.pack(">IIBBBBB", 8, 4, 8, 2, 0, 0, 0)
    parts = (
        (b"IHDR", head),
        (b"tEXt", b"n\0" + rng.randbytes(size).hex().encode()),
        (b"IDAT", zlib.compress(rows)),
    )
    return b"\x89PNG\r\n\x1a\n" + b"".join(_chunk(*part) for part in (*parts, (b"IEND", b"")))


def _chunk(name, data):
    return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
