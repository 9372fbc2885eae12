"""Names and ids: spelled as ids are, no two things with the same one, texts that can be shown."""

import re
from collections.abc import Iterable

from msgspec.structs import fields

from bayboard.model.layout import (
    Board,
    Card,
    CutOut,
    Entry,
    Fixing,
    Gear,
    Landing,
    Layout,
    Lead,
    Lining,
    NoDrill,
    Photo,
    PrintedHole,
    Seat,
    Stay,
    Value,
    Vent,
)
from bayboard.model.places import label, quoted, step_to
from bayboard.model.refused import Refused
from bayboard.model.things import Thing

LONGEST_NAME = 200  # letters
LONGEST_NOTE = 20_000  # letters
ID = re.compile(r"[A-Za-z0-9_-]{1,24}")
_HOLE = re.compile(rf"{ID.pattern}(?:#[1-9]\d{{0,5}})?")
_PICTURE = re.compile(r"[0-9a-f]{64}\.(?:jpg|png)")
_SIZE = re.compile(r"(?:[1-9]\d?|0{1,4}|[1-4]/0) AWG|(?:[1-9]\d*(?:\.\d+)?|0\.\d*[1-9]\d*) mm2", re.ASCII)
_IN_THE_BAY = (Landing, Stay, Lining, Vent, NoDrill, Seat, Entry)
_UNIQUE = (*_IN_THE_BAY, Board, CutOut, Gear, Lead, Fixing, Photo)
_NOTES = {"note", "reason"}
_OF_A_CARD = {field.encode_name for field in fields(Card)}


def check_names(layout: Layout, found: Iterable[Thing]) -> None:
    """Raise `Refused` for the first id, name or text that cannot stand."""
    known: dict[str, str] = {}
    for place, thing in found:
        if isinstance(thing, _UNIQUE):
            _own_id(place, thing.id, known)
        elif isinstance(thing, Card):
            _card(place, thing)
        elif isinstance(thing, PrintedHole) and not _HOLE.fullmatch(thing.id):
            raise Refused(place, f"{quoted(thing.id)} names no hole", "Write a fixing's id or GEAR#n")
        _texts(place, thing)
        if isinstance(thing, Photo) and not _PICTURE.fullmatch(thing.file):
            raise Refused(
                step_to(place, "file"),
                f"{quoted(thing.file)} is not a picture's name",
                "Write its SHA-256 in 64 small hexadecimal figures, then .jpg or .png",
            )
        if isinstance(thing, Lead) and thing.size is not None and not _SIZE.fullmatch(thing.size):
            raise Refused(
                step_to(place, "size"),
                f"{quoted(thing.size)} is not a cable size",
                'Write it like "4 AWG", "1/0 AWG" or "16 mm2", or null where it is not known',
            )
    for name in layout.cards:
        if not name.strip() or _control(name, "") or len(name) > LONGEST_NAME:
            raise Refused("cards", f"{quoted(name)} cannot name a card", "Give it a short plain name")


def _own_id(place: str, name: str, known: dict[str, str]) -> None:
    """Raise `Refused` when an id is misspelled or taken; note it in `known`."""
    _spelled(place, name)
    if name in known:
        raise Refused(place, f"the id {name} is taken by {known[name]}", "Give one of them another id")
    known[name] = place


def _spelled(place: str, name: str) -> None:
    if not ID.fullmatch(name):
        raise Refused(
            step_to(place, "id"),
            f"{quoted(name)} is not an id",
            "Use 1 to 24 letters, figures, _ or -, without accents or spaces",
        )


def _card(place: str, card: Card) -> None:
    known: dict[str, str] = {}
    for kind, items in (("ports", card.ports), ("service", card.service)):
        for item in items:
            _own_id(step_to(place, f"{kind} {label(item.id)}"), item.id, known)
    for guess in card.guessed:
        if re.split(r"[. ]", guess)[0] not in _OF_A_CARD:
            raise Refused(
                step_to(place, "guessed"),
                f"a card has no member {quoted(guess)}",
                "Name a member that was guessed",
            )


def _texts(place: str, thing: Value) -> None:
    for member in thing.__struct_fields__:
        text = getattr(thing, member)
        if not isinstance(text, str):
            continue
        longest, allowed = (LONGEST_NOTE, "\n\r\t") if member in _NOTES else (LONGEST_NAME, "")
        if len(text) > longest:
            raise Refused(
                step_to(place, member), f"this text has {len(text)} letters", f"Keep it under {longest}"
            )
        if not text.isprintable() and _control(text, allowed):
            raise Refused(
                step_to(place, member), f"{quoted(text)} holds a control character", "Type the text again"
            )


def _control(text: str, allowed: str) -> bool:
    return any((letter < " " or "\x7f" <= letter < "\xa0") and letter not in allowed for letter in text)
