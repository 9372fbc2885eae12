"""Rescue: what still has its hash goes from a damaged job file into a new one."""

import contextlib
import os
import shutil
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path
from typing import TypeVar

from bayboard.model.refused import Refused
from bayboard.model.write import write
from bayboard.store import drafts, making, metas, newer, opening, photos, prints, revisions, schema, states
from bayboard.store.base import Base, connected
from bayboard.store.header import journal_of, read_header
from bayboard.store.records import Draft, PrintLine, Revision
from bayboard.store.sentences import said_of, unopened
from bayboard.store.troubles import damaged

_FAR = 10_000  # numbers that are tried where the file does not tell its last

R = TypeVar("R")


@dataclass
class Saved:
    """What was found whole, and the names of what was not."""

    draft: Draft | None = None
    states: dict[int, tuple[str, bytes]] = field(default_factory=dict)
    revisions: dict[int, tuple[Revision, bytes, bytes | None]] = field(default_factory=dict)
    photos: list[bytes] = field(default_factory=list)
    prints: list[PrintLine] = field(default_factory=list)
    metas: dict[str, object] = field(default_factory=dict)
    lost: list[str] = field(default_factory=list)


def rescue(path: Path, out: Path) -> tuple[str, ...]:
    """Write what can be read of a damaged job file into a new one; return what came and what did not.

    Raises `Refused` when `out` exists, or when neither the draft nor a revision can be read.
    """
    path, out = Path(path), Path(out)
    _refuse_newer(path)
    with making.new_beside(out) as part:
        with _copied(path, part) as base:
            saved = collected(base)
        if saved.draft is None:
            raise damaged(path, "nothing in this job file can be read")
        with making.empty(part, out) as base:
            _put(base, saved)
    return tuple(_told(saved))


def _refuse_newer(path: Path) -> None:
    """Raise `Newer` for a file whose tables are not those of this form, and which says so, too."""
    try:
        if read_header(path).form <= schema.FORM:
            return
        base = connected(path, look=True)
    except Refused:
        return  # a damaged header is no reason
    try:
        same = _try(lambda: schema.entries(base)) == schema.expected()
    finally:
        base.close()
    if not same:
        raise newer.refused(path, path)


@contextlib.contextmanager
def _copied(path: Path, part: Path) -> Iterator[Base]:
    """Give a copy of the damaged file, its last change taken back if SQLite still can."""
    source, copy = Path(os.path.realpath(path)), part.with_name(part.name + ".old")
    try:
        try:
            source.open("rb").close()
        except (OSError, ValueError) as error:
            raise unopened(path, error, ".bay") from None
        with said_of(part):
            shutil.copyfile(source, copy)
            if journal_of(source).exists():
                shutil.copyfile(journal_of(source), journal_of(copy))
        base = connected(copy, look=False)
        base.path = path
        try:
            yield base
        finally:
            base.close()
    finally:
        making.dropped(copy)


def collected(base: Base) -> Saved:
    """Return what is whole, asked for row by row, so that one bad page costs no more than its rows."""
    saved = Saved()
    for number in _numbers(base, "revision"):
        found = _try(partial(_revision, base, number))
        if found is not None:
            saved.revisions[number] = found
        else:
            saved.lost.append(f"revision {number}")
    for number in _numbers(base, "state"):
        step = _try(partial(_step, base, number))
        if step is not None:
            saved.states[number] = step
    draft = _try(lambda: opening.found_draft(base))
    if draft is not None:
        saved.draft = draft[0]
        saved.lost += ["the draft itself"] if draft[2] else []
    _collect_others(base, saved)
    return saved


def _collect_others(base: Base, saved: Saved) -> None:
    for number in _numbers(base, "photo", "rowid"):
        data = _try(partial(photos.numbered, base, number))
        if data is None:
            saved.lost.append(f"photo {number}")
        else:
            saved.photos.append(data)
    for number in _numbers(base, "print"):
        line = _try(partial(prints.line_of, base, number))
        if line is None:
            saved.lost.append(f"line {number} of the print log")
        else:
            saved.prints.append(line)
    for row in _try(lambda: base.all("SELECT name FROM meta")) or ():
        value = _try(partial(metas.read_value, base, row[0]))
        if isinstance(row[0], str) and value is not None:
            saved.metas[row[0]] = value


def _numbers(base: Base, table: str, column: str = "number") -> list[int]:
    """Return the numbers of a table's rows; where a page of it is gone, those that may be there."""
    whole = _try(lambda: base.all(f"SELECT {column} FROM {table} ORDER BY {column}"))
    if whole is not None:
        return [row[0] for row in whole if isinstance(row[0], int)]
    last = _try(lambda: base.one(f"SELECT max({column}) FROM {table}"))
    most = last[0] if last and isinstance(last[0], int) else _FAR
    return [n for n in range(1, min(most, _FAR) + 1) if _may_be_there(base, table, column, n)]


def _may_be_there(base: Base, table: str, column: str, number: int) -> bool:
    """Return whether a row is there, or cannot be told to be missing."""
    try:
        return base.one(f"SELECT 1 FROM {table} WHERE {column} = ?", number) is not None
    except Refused:
        return True


def _revision(base: Base, number: int) -> tuple[Revision, bytes, bytes | None]:
    text = revisions.text_of(base, number)
    return revisions.facts(base, number), text, _try(lambda: revisions.picture_of(base, number))


def _step(base: Base, number: int) -> tuple[str, bytes]:
    text = states.text_of(base, number)
    row = base.one("SELECT label FROM state WHERE number = ?", number)
    return (row[0] if row else ""), text


def _put(base: Base, saved: Saved) -> None:
    """Write what was saved; a parent that is gone is forgotten."""
    for _, (revision, text, picture) in sorted(saved.revisions.items()):
        parent = revision.parent if revision.parent in saved.revisions else None
        revisions.add(base, replace(revision, parent=parent), text, picture)
    draft = saved.draft
    if draft is None:
        raise base.damaged("nothing in this job file can be read")
    text = write(draft.layout).encode("utf-8", "replace")
    at = _put_states(base, saved, draft.at, text)
    parent = draft.parent if draft.parent in saved.revisions else None
    drafts.put(base, drafts.DraftRow(parent, draft.changed, at, text, None))
    for data in saved.photos:
        photos.put(base, data)
    for line in saved.prints:
        prints.put(base, line)
    _put_metas(base, saved)


def _put_states(base: Base, saved: Saved, at: int, text: bytes) -> int:
    """Write the steps when the draft stands at one of them, else the draft alone; return where it stands."""
    steps = saved.states if at in saved.states else {1: ("", text)}
    for number, (label, state) in sorted(steps.items()):
        states.put(base, number, label, state)
    return at if at in saved.states else 1


def _put_metas(base: Base, saved: Saved) -> None:
    there = set(saved.revisions)
    gone = [number for number in range(1, min(max(there, default=0), _FAR)) if number not in there]
    if gone:
        saved.metas[metas.LOST] = gone
    for name, value in saved.metas.items():
        metas.put(base, name, value)


def _told(saved: Saved) -> Iterator[str]:
    kinds = (
        ("revision", len(saved.revisions)),
        ("undo step", len(saved.states)),
        ("photo", len(saved.photos)),
        ("line of the print log", len(saved.prints)),
    )
    came = ["the draft"] if saved.draft is not None and "the draft itself" not in saved.lost else []
    came += [f"{count} {_plural(kind, count)}" for kind, count in kinds if count]
    yield f"Rescued: {_listed(came)}."
    if saved.lost:
        yield f"Damaged, and not rescued: {_listed(saved.lost)}."


def _plural(kind: str, count: int) -> str:
    head, _, rest = kind.partition(" of ")
    return kind if count == 1 else f"{head}s of {rest}" if rest else f"{head}s"


def _listed(things: Sequence[str]) -> str:
    *most, last = things
    return f"{', '.join(most)} and {last}" if most else last


def _try(act: Callable[[], R]) -> R | None:
    try:
        return act()
    except Refused:
        return None
