"""Short codes that tell one state of a layout from another, for a person who compares two sheets.

A set code stands on every sheet of a template: two plain words.  A card code stands on every stand-in: four
figures and letters that nobody mistakes.
"""

from functools import cache
from hashlib import sha256

from msgspec.structs import replace

from bayboard.model.layout import Layout
from bayboard.model.write import plain, spelled, write
from bayboard.tables.where import shipped

# without 0 O Q, 1 I L, 2 Z, 5 S, 8 B, U V and G, which a pen or a worn print mixes up
CARD_SIGNS = "34679ACDEFHJKMNPRTWXY"
_CARD_LENGTH = 4


def set_code(layout: Layout, paper: str, face: str, correction: str = "") -> str:
    """Return two words for what a template shows: layout, paper, face and printer's correction.

    What changes no hole does not change it: units, let-be findings, photos, what was printed, `x`.
    """
    bare = replace(layout, printed=None, let_be=(), photos=(), units="mm", x={})
    digest = _digest(write(bare), paper, face, correction)
    words = _words()
    first, rest = digest % len(words), digest // len(words)
    # the second word is never the first again
    second = (first + 1 + rest % (len(words) - 1)) % len(words)
    return f"{words[first]} {words[second]}"


def card_code(layout: Layout) -> str:
    """Return four signs for what stand-ins show: vehicle name, cards, gear ids; not places."""
    document = plain(layout)
    names = [[gear.id, gear.card] for gear in layout.gear]
    digest = _digest(spelled([layout.vehicle.name, document.get("cards", {}), names]))
    signs = ""
    for _ in range(_CARD_LENGTH):
        digest, which = divmod(digest, len(CARD_SIGNS))
        signs += CARD_SIGNS[which]
    return signs


def _digest(*parts: str) -> int:
    """Return a number from SHA-256 over the parts, each told from the next by a zero byte."""
    return int.from_bytes(sha256("\0".join(parts).encode("utf-8", "replace")).digest())


@cache
def _words() -> tuple[str, ...]:
    return tuple(shipped("shared", "words.txt").read_text(encoding="utf-8").split())
