"""Opening a job file: nothing in it is believed before it was looked at."""

import os
from dataclasses import dataclass, field
from pathlib import Path

from bayboard.model.layout import Layout
from bayboard.model.read import read
from bayboard.model.refused import Refused
from bayboard.store import drafts, holder, newer, revisions, schema, states, upgrade
from bayboard.store.base import Base, connected
from bayboard.store.header import Header, has_journal, log_of, read_header
from bayboard.store.open_here import Identity, closes, identity_of, opens
from bayboard.store.records import Draft, Mark
from bayboard.store.sealed import hash_of, now
from bayboard.store.sentences import path_words
from bayboard.store.troubles import CutShort, Damaged
from bayboard.store.writing import rolled_back

_TRIED = 30  # steps, in the place of a damaged draft
CUT_SHORT = "The last change was cut short, so it was taken back; everything before it is here."


@dataclass
class Opened:
    """A job file that was looked at: its draft, and what is to be said."""

    base: Base
    identity: Identity
    draft: Draft
    stands_in: bool = False  # the draft is made of something else, for it is damaged
    said: list[str] = field(default_factory=list)
    token: str = ""
    writes: int = 0
    checked: str | None = None


def opened(path: Path, look: bool, take: bool) -> Opened:
    """Return the file at `path`, held unless only looked at; raise `Refused` when it cannot be."""
    header = read_header(path)
    target = Path(os.path.realpath(path))
    journal = has_journal(target)
    _refuse_log(path, target, header, look)
    if header.form > schema.FORM:
        raise newer.refused(path, target)
    said = _brought_up_to_date(path, header.form, look, take)
    identity = identity_of(target)
    crashed = journal and not look and is_cut_short(path)
    base = connected(path, look)
    opens(identity)
    try:
        said += _settled(base, target, header, crashed)
        return _looked_into(base, identity, said, look, take, crashed)
    except BaseException:
        base.close()
        closes(identity)
        raise


def _looked_into(
    base: Base, identity: Identity, said: list[str], look: bool, take: bool, crashed: bool
) -> Opened:
    draft, trouble, stands_in = found_draft(base)
    said += trouble
    said += _newest_is_whole(base)
    if identity_of(base.path) != identity:
        raise _at_work(base.path)
    file = Opened(base, identity, draft, stands_in, said)
    if look:
        file.checked = _facts(base)[1]
    else:
        _hold(file, take, crashed or bool(said))
    return file


def _brought_up_to_date(path: Path, form: int, look: bool, take: bool) -> list[str]:
    """Upgrade a file of an older form and return what is to be said of it."""
    if form == schema.FORM:
        return []
    if look:
        raise Refused(path_words(path), "this was made by an older Bayboard", "Open it to work on it once")
    return [upgrade.upgraded(path, form, take=take)]


def _refuse_log(path: Path, target: Path, header: Header, look: bool) -> None:
    """Raise `Refused` for what another program's write-ahead log would bring."""
    log = log_of(target)
    if log.exists() and not header.logged:
        raise Refused(path_words(log), "this was not made by Bayboard", "Move it away from the job file")
    if header.logged and look:
        raise Refused(
            path_words(path), "another program left this file in a form of its own", "Open it to set it right"
        )


def is_cut_short(path: Path) -> bool:
    """Return whether the journal beside a file is to be played back, and not that of a program at work."""
    try:
        base = connected(path, look=True)
    except CutShort:
        return True
    try:
        base.one("SELECT count(*) FROM sqlite_master")
    except CutShort:
        return True
    except Refused:
        return False
    finally:
        base.close()
    return False


def _settled(base: Base, target: Path, header: Header, crashed: bool) -> list[str]:
    """Bring a file to rest and check its tables; return what is to be said."""
    said = []
    if header.logged:
        base.do("PRAGMA journal_mode = DELETE")
        said.append("Another program had left this file in a form of its own; it is set right.")
    if schema.entries(base) != schema.expected():
        raise base.damaged("this job file holds something that Bayboard does not write")
    mode = base.one("PRAGMA journal_mode")
    if mode != ("delete",):
        base.do("PRAGMA journal_mode = DELETE")
    if crashed:
        said.append(CUT_SHORT)
    pages, page = base.one("PRAGMA page_count"), base.one("PRAGMA page_size")
    if pages and page and target.stat().st_size < pages[0] * page[0]:
        raise base.damaged("this job file is cut short")
    return said


def found_draft(base: Base) -> tuple[Draft, list[str], bool]:
    """Return the draft, or what stands nearest to it; sentences; and whether it is not the draft itself."""
    try:
        row = drafts.read_row(base)
        layout = read(row.text)
        steps, at, trouble = _steps(base, row.at)
        return Draft(layout, row.parent, row.changed, row.sha256, steps, at), trouble, False
    except Damaged:
        pass
    except Refused as refused:
        if _passes(refused, base):
            raise
    return *_stand_in(base), True


def _steps(base: Base, at: int) -> tuple[tuple[Mark, ...], int, list[str]]:
    """Return the undo steps, where the draft stands among them, and a sentence when they are lost."""
    try:
        return *states.around(base, at), []
    except Damaged:
        return (), 0, ["The undo steps are damaged, so that nothing before this can be undone."]


def _passes(refused: Refused, base: Base) -> bool:
    """Return whether a refusal is about the file's use, and not about what is in it."""
    return refused.place == path_words(base.path)


def _stand_in(base: Base) -> tuple[Draft, list[str]]:
    """Return the draft's bare text, or the last step or revision that is whole; raise `Damaged` for none."""
    bare = _bare(base)
    if bare is not None:
        return bare, ["What the draft came of is damaged; the draft itself is whole."]
    for number in _candidates(base):
        try:
            text = states.text_of(base, number)
            layout = read(text)
        except Refused:
            continue
        said = "The draft is damaged; this is the last step before it that is whole."
        return Draft(layout, _parent(base), now(), hash_of(text), states.marks(base), number), [said]
    for number in range(_newest(base), 0, -1):
        try:
            layout, sha = _revision(base, number)
        except Refused:
            continue
        return Draft(layout, number, now(), sha, (), 0), [
            f"The draft is damaged; this is revision {number}, the newest that is whole."
        ]
    raise base.damaged("nothing in this job file can be read")


def _bare(base: Base) -> Draft | None:
    """Return a draft that has its hash, though what is told beside it is damaged; else None."""
    try:
        row = drafts.bare(base)
        if row is None:
            return None
        layout = read(row.text)
        steps, at, _ = _steps(base, states.last_of(base, row.sha256))
    except Refused:
        return None
    return Draft(layout, _parent(base), row.changed, row.sha256, steps, at)


def _candidates(base: Base) -> list[int]:
    """Return the numbers of the steps to try: the one that the draft stands at, then from the newest."""
    try:
        known = drafts.facts(base)
        numbers = [mark.number for mark in reversed(states.marks(base))]
    except Refused:
        return []
    at = known[1] if known else None
    return sorted(numbers, key=lambda number: (number != at, -number))[:_TRIED]


def _parent(base: Base) -> int | None:
    try:
        known = drafts.facts(base)
    except Refused:
        known = None
    return known[0] if known else (_newest(base) or None)


def _newest(base: Base) -> int:
    try:
        return min(revisions.newest(base) or 0, 100_000)
    except Refused:
        return 0


def _revision(base: Base, number: int) -> tuple[Layout, str]:
    text = revisions.text_of(base, number)
    return read(text), hash_of(text)


def _newest_is_whole(base: Base) -> list[str]:
    try:
        number = revisions.newest(base)
        if number is not None:
            revisions.text_of(base, number)
    except Damaged:
        return ["The newest revision is damaged; what is whole can be rescued into a new file."]
    return []


def _at_work(path: Path) -> Refused:
    return Refused(
        path_words(path), "another program is writing this file", "Wait a moment and open it again"
    )


def _facts(base: Base) -> tuple[int, str | None]:
    row = base.one("SELECT writes, checked FROM holder WHERE one = 1")
    if row is None or not isinstance(row[0], int):
        raise base.damaged("this job file has lost count of its changes")
    return row[0], row[1] if isinstance(row[1], str) else None


def _hold(file: Opened, take: bool, crashed: bool) -> None:
    """Write into the file that this program holds it; raise `Held` when another does."""
    base, own = file.base, holder.own_hold()
    base.do("BEGIN IMMEDIATE")
    try:
        other = holder.held_by(base)
        if not take:
            holder.refuse_held(base)
        if drafts.read_sha(base) != file.draft.sha256 and not file.stands_in:
            raise _at_work(base.path)
        if other is not None or crashed:
            base.do("UPDATE holder SET checked = NULL WHERE one = 1")
        holder.take(base, own)
        base.do("UPDATE holder SET writes = writes + 1 WHERE one = 1")
        file.writes, file.checked = _facts(base)
        base.do("COMMIT")
    except BaseException:
        rolled_back(base)
        holder.forget(own.token)
        raise
    file.token = own.token
