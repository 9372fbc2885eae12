"""The whole check: SQLite's own, and every hash and seal."""

from collections.abc import Callable, Iterator

from bayboard.model.places import quoted
from bayboard.model.refused import Refused
from bayboard.store import drafts, metas, photos, prints, revisions, schema, states
from bayboard.store.base import Base

Trouble = tuple[str, Refused]

_MOST = 20  # sentences of a kind; more tell nothing new


def all_troubles(base: Base) -> Iterator[Trouble]:
    """Yield what is not as it was written: the kind of thing, and its sentence."""
    if schema.entries(base) != schema.expected():
        yield "file", base.damaged("this job file holds something that Bayboard does not write")
        return
    yield from _structure(base)
    yield from _told("draft", lambda: drafts.read_row(base))
    for mark in states.marks(base):
        yield from _told("state", _reading(states.text_of, base, mark.number))
    yield from _revisions(base)
    for name in photos.names(base):
        yield from _told("photo", _reading(photos.data_of, base, name))
    whole = {line.number for line in prints.listed(base)}
    for number in prints.numbers(base):
        if number not in whole:
            yield "print", base.damaged(f"line {number} of the print log is damaged")
    for name in metas.broken(base):
        yield "meta", base.damaged(f"what was stored as {quoted(name[:20])} is damaged")


def sentences(base: Base) -> tuple[str, ...]:
    """Return every trouble as a sentence, () when the file is whole."""
    found = []
    try:
        for _, said in all_troubles(base):
            found.append(str(said))  # those before a refusal stay
    except Refused as refused:
        found.append(str(refused))
    return tuple(dict.fromkeys(found))


def _structure(base: Base) -> Iterator[Trouble]:
    try:
        found = [str(row[0]) for row in base.large(f"PRAGMA integrity_check({_MOST})")]
        loose = base.all("PRAGMA foreign_key_check")
    except Refused as refused:
        yield "file", refused
        return
    if found != ["ok"]:
        yield "file", base.damaged("this job file's pages are damaged")
    if loose:
        yield "file", base.damaged("a revision that others came of is missing")


def _revisions(base: Base) -> Iterator[Trouble]:
    lost = metas.read_value(base, metas.LOST)
    lost = lost if isinstance(lost, list) else []
    number = 0
    for revision in revisions.listed(base):
        for missing in range(number + 1, min(revision.number, number + 1 + _MOST)):
            if missing not in lost:
                yield "revision", base.damaged(f"revision {missing} is missing")
        number = revision.number
        yield from _told("revision", _reading(revisions.text_of, base, number))
        yield from _told("revision", _reading(revisions.picture_of, base, number))


def _reading(read: Callable[..., object], base: Base, which: int | str) -> Callable[[], object]:
    return lambda: read(base, which)


def _told(kind: str, act: Callable[[], object]) -> Iterator[Trouble]:
    try:
        act()
    except Refused as refused:
        yield kind, refused
