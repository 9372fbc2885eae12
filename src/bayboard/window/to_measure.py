"""What nobody could look at, as things to do: "Measure: behind L3, L5", not as names of rules."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from bayboard.rules.finding import Unchecked

MOST = 6  # things of one kind that are named
_STARTS = (
    ("Nobody measured ", "Measure"),
    ("Nobody looked ", "Look"),
    ("Nobody said ", "Say"),
    ("Nobody knows ", "Find out"),
)
_GUESS = re.compile(r"The (.+) of (\S+) (?:is a guess|are guesses)\.")
_NO_TABLE = re.compile(r"No table has (.+), so nobody knows (.+)\.")
_THING = "{}"


@dataclass(frozen=True, slots=True)
class Errand:
    """One kind of thing to do: its verb, and what it is done to, things of a kind together."""

    verb: str
    what: str

    def words(self) -> str:
        """Return the errand as a line: "Measure behind L3, L5"."""
        return f"{self.verb} {self.what}"


def errands(unchecked: Iterable[Unchecked]) -> tuple[Errand, ...]:
    """Return what is to be done, each once, in the order it was first missed; nothing is left out."""
    things: dict[tuple[str, str], list[str]] = {}
    for line in unchecked:
        verb, what = _verb_and_what(line.says)
        form, thing = _parted(what, line)
        held = things.setdefault((verb, form), [])
        if thing not in held:
            held.append(thing)
    return tuple(Errand(verb, form.replace(_THING, _named(held))) for (verb, form), held in things.items())


def in_one_line(found: Iterable[Errand]) -> str:
    """Return the errands one after the other: "Measure: behind L3, L5 · the height of A1"."""
    told, verb = "", ""
    for errand in found:
        told += (
            f" · {errand.what}"
            if errand.verb == verb
            else f"{'. ' if told else ''}{errand.verb.removesuffix(':')}: {errand.what}"
        )
        verb = errand.verb
    return told


def _verb_and_what(says: str) -> tuple[str, str]:
    guess, table = _GUESS.fullmatch(says), _NO_TABLE.fullmatch(says)
    if guess is not None:
        return "Make sure of", f"the {guess[1]} of {guess[2]}"
    if table is not None:
        return "Find out", f"{table[2]}: no table has {table[1]}"
    for start, verb in _STARTS:
        if says.startswith(start):
            return verb, re.split(r", (?:so|which) ", says.removeprefix(start))[0].removesuffix(".")
    return "See to it:", f"{says[:1].lower()}{says[1:].removesuffix('.')}"


def _parted(what: str, line: Unchecked) -> tuple[str, str]:
    """Return the words with a gap where the thing's name stood, and the name; the words whole for none."""
    for subject in line.subjects:
        for name in (subject, *re.split(r"[.#]", subject)):
            found = re.search(rf"(?<![\w.#]){re.escape(name)}(?![\w#])", what)
            if found is not None:
                return f"{what[: found.start()]}{_THING}{what[found.end() :]}", name
    return what, ""


def _named(things: list[str]) -> str:
    shown = ", ".join(things[:MOST])
    return shown if len(things) <= MOST else f"{shown} and {len(things) - MOST} more"
