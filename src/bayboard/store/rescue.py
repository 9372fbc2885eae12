"""Rescue: what still has its hash goes from a damaged job file into a new one."""

import contextlib
import os
import shutil
from collections.abc import Iterator
from dataclasses import replace
from itertools import islice
from pathlib import Path

from bayboard.model.refused import Refused
from bayboard.model.write import write
from bayboard.store import drafts, making, metas, newer, photos, prints, revisions, schema, states
from bayboard.store.base import Base, connected, unconnected
from bayboard.store.header import journal_of, read_header
from bayboard.store.leaves import Leaves
from bayboard.store.salvage import Salvage, tried
from bayboard.store.sentences import said_of, unopened
from bayboard.store.troubles import damaged

_LARGEST = 2_000_000_000  # bytes
_NAMED = 6  # of what is lost; the others are counted


def rescue(path: Path, out: Path) -> tuple[str, ...]:
    """Write what can be read of a damaged job file into a new one; return what came and what did not.

    Raises `Refused` when `out` exists, or when neither the draft nor a revision can be read.
    """
    path, out = Path(path), Path(out)
    _refuse_newer(path)
    with making.new_beside(out) as part, _copied(path, part) as (base, leaves):
        found = Salvage(base, leaves)
        with making.empty(part, out) as new:
            came = _carried_over(found, new)
    return tuple(_told(came, found.lost))


def _refuse_newer(path: Path) -> None:
    """Raise `Newer` for a file whose tables are not those of this form, and which says so, too."""
    try:
        if read_header(path).form <= schema.FORM:
            return
        base = connected(path, look=True)
    except Refused:
        return  # a damaged header is no reason
    try:
        same = tried(lambda: schema.entries(base)) == schema.expected()
    finally:
        base.close()
    if not same:
        raise newer.refused(path, path)


@contextlib.contextmanager
def _copied(path: Path, part: Path) -> Iterator[tuple[Base, Leaves]]:
    """Give a copy of the damaged file, its last change taken back if SQLite still can, and its pages."""
    source, copy = Path(os.path.realpath(path)), part.with_name(part.name + ".old")
    try:
        try:
            with source.open("rb") as file:
                large = file.seek(0, os.SEEK_END) > _LARGEST
        except (OSError, ValueError) as error:
            raise unopened(path, error, ".bay") from None
        if large:
            raise damaged(path, "this is larger than a job file ever is")
        with said_of(part):
            shutil.copyfile(source, copy)
            if journal_of(source).exists():
                shutil.copyfile(journal_of(source), journal_of(copy))
        base = tried(lambda: connected(copy, look=False)) or unconnected()
        base.path = path
        try:
            tried(lambda: schema.entries(base))
            with Leaves(copy) as leaves:
                yield base, leaves
        finally:
            base.close()
    finally:
        making.dropped(copy)


def _carried_over(found: Salvage, new: Base) -> dict[str, int]:
    """Write what is whole into the new file, one thing at a time; return how many of each came."""
    numbers = _revisions(found, new)
    draft = found.draft()
    if draft is None:
        raise damaged(found.base.path, "nothing in this job file can be read")
    text = write(draft.layout).encode("utf-8", "replace")
    at, steps = _steps(found, new, draft.at, text)
    parent = draft.parent if draft.parent in numbers else None
    drafts.put(new, drafts.DraftRow(parent, draft.changed, at, text, None))
    came = {"revision": len(numbers), "undo step": steps}
    came["photo"] = len({photos.put(new, data) for data in islice(found.photos(), photos.MOST)})
    came["line of the print log"] = 0
    for line in islice(found.prints(), prints.MOST):
        prints.put(new, line)
        came["line of the print log"] += 1
    _metas(found, new, numbers)
    return came if "the draft itself" in found.lost else {"draft": 1} | came


def _revisions(found: Salvage, new: Base) -> set[int]:
    """Write the revisions, a parent that is gone forgotten, and return their numbers."""
    numbers: set[int] = set()
    for revision, text, picture in islice(found.revisions(), revisions.MOST):
        parent = revision.parent if revision.parent in numbers else None
        revisions.add(new, replace(revision, parent=parent), text, picture)
        numbers.add(revision.number)
    return numbers


def _steps(found: Salvage, new: Base, at: int, text: bytes) -> tuple[int, int]:
    """Write the undo steps when the draft stands at one of them, else the draft as the only one.

    Return where the draft stands, and how many steps came.
    """
    numbers = set()
    for number, label, state in islice(found.steps(), states.MOST):
        states.put(new, number, label, state)
        numbers.add(number)
    if at in numbers:
        return at, len(numbers)
    states.drop_after(new, 0)
    states.put(new, 1, "", text)
    return 1, 0


def _metas(found: Salvage, new: Base, numbers: set[int]) -> None:
    values = found.metas()
    gone = [number for number in range(1, min(max(numbers, default=0), 10_000)) if number not in numbers]
    if gone:
        values[metas.LOST] = gone
    for name, value in islice(values.items(), metas.MOST):
        metas.put(new, name, value)


def _told(came: dict[str, int], lost: list[str]) -> Iterator[str]:
    things = [
        "the draft" if kind == "draft" else f"{count} {_plural(kind, count)}"
        for kind, count in came.items()
        if count
    ]
    yield f"Rescued: {_listed(things)}."
    if lost:
        more = [f"{len(lost) - _NAMED} more"] if len(lost) > _NAMED else []
        yield f"Damaged, and not rescued: {_listed(lost[:_NAMED] + more)}."


def _plural(kind: str, count: int) -> str:
    head, _, rest = kind.partition(" of ")
    return kind if count == 1 else f"{head}s of {rest}" if rest else f"{head}s"


def _listed(things: list[str]) -> str:
    *most, last = things
    return f"{', '.join(most)} and {last}" if most else last
