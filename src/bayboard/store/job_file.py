"""The job file: one vehicle's draft, undo steps, revisions, photos and prints, safe at every moment.

One connection, to be used by one thread.  Every method raises `Refused` with one sentence when the file
does not do what is asked; nothing is then written, and the same object can be asked again later.
"""

from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import replace
from pathlib import Path
from types import EllipsisType, TracebackType
from typing import Any, Self

from bayboard.model.layout import Layout
from bayboard.model.read import read
from bayboard.model.refused import Refused
from bayboard.model.write import write
from bayboard.store import checking, drafts, holder, making, metas, opening, photos, prints, revisions, states
from bayboard.store.base import connected
from bayboard.store.drafts import DraftRow
from bayboard.store.header import is_job_file
from bayboard.store.open_here import closes
from bayboard.store.opening import Opened
from bayboard.store.records import Draft, Mark, PrintLine, Revision
from bayboard.store.rescue import rescue
from bayboard.store.sealed import hash_of, now
from bayboard.store.sentences import path_words
from bayboard.store.troubles import Changed, Damaged, Held, Holder, Kept, Newer
from bayboard.store.writing import Writer

__all__ = [
    "Changed",
    "Damaged",
    "Draft",
    "Held",
    "Holder",
    "JobFile",
    "Kept",
    "Mark",
    "Newer",
    "PrintLine",
    "Revision",
    "copy_job_file",
    "examine",
    "is_job_file",
    "make_job_file",
    "open_job_file",
    "rescue",
]


class JobFile:
    """An open job file.

    `path`: as it was named.  `looking`: nothing is written.  `said`: sentences of this opening, for a
    person.  Always true: what a method wrote is on the disk when it returns.
    """

    def __init__(self, found: Opened, looking: bool) -> None:
        self.path = found.base.path
        self.looking = looking
        self.said: tuple[str, ...] = tuple(found.said)
        self._base = found.base
        self._base.at_work = not looking
        self._writer = Writer(
            found.base, Path(self.path).absolute(), found.token, found.identity, found.writes
        )
        self._refusal: Refused | None = None
        self._checked = found.checked
        self._known = found.draft
        self._stands_in = found.stands_in
        self._has_steps = bool(found.draft.at)
        self._open = True

    def __enter__(self) -> Self:
        """Return the file itself."""
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        """Close the file."""
        self.close()

    def draft(self) -> Draft:
        """Return the draft as it is in the file; what stands in for it when it was damaged at opening."""
        if self._stands_in:
            return self._known
        row = drafts.read_row(self._base)
        layout = self._known.layout if row.sha256 == self._known.sha256 else read(row.text)
        steps, at = states.around(self._base, row.at) if self._has_steps else ((), 0)
        self._known = Draft(layout, row.parent, row.changed, row.sha256, steps, at)
        return self._known

    def state(self, number: int) -> Layout:
        """Return the layout of an undo step."""
        return read(states.text_of(self._base, number))

    def write(
        self,
        layout: Layout,
        *,
        upto: int,
        add: Sequence[tuple[str, Layout]],
        at: int,
        parent: int | EllipsisType | None = ...,
        picture: bytes | None = None,
    ) -> None:
        """Make `layout` the draft, standing at step `at`.

        Steps after `upto` go, those of `add` follow it; the oldest go where they are too many.  Without
        a `parent` or a `picture` the draft keeps its own.
        """
        text = _text(layout)
        with self._writing():
            states.drop_after(self._base, upto)
            for number, (label, state) in enumerate(add, upto + 1):
                states.put(self._base, number, label, text if state is layout else _text(state))
            if not states.is_there(self._base, at):
                raise ValueError(f"there is no step {at} for the draft to stand at")
            states.trim(self._base, at)
            self._becomes(layout, text, at=at, parent=parent, picture=picture)
        self._stands_in, self._has_steps = False, True

    def keep(self, note: str, picture: bytes | None = None) -> Revision:
        """Keep the draft in the file as the next revision; without a `picture` it takes the draft's."""
        with self._writing():
            kept = self._keep(note, picture)
        self._stands_in = False
        return kept

    def restore(
        self,
        number: int,
        becomes: Layout,
        label: str,
        *,
        keep_first: str | None,
        upto: int,
        picture: bytes | None = None,
    ) -> Revision | None:
        """Make `becomes`, which comes of revision `number`, the draft, as one undo step after `upto`.

        `keep_first`: the note under which the present draft is kept before, None when it need not be.
        Returns what was kept.
        """
        text, kept = _text(becomes), None
        with self._writing():
            revisions.facts(self._base, number)
            if keep_first is not None:
                kept = self._keep(keep_first, None)
            states.drop_after(self._base, upto)
            states.put(self._base, upto + 1, label, text)
            states.trim(self._base, upto + 1)
            self._becomes(becomes, text, at=upto + 1, parent=number, picture=picture)
        self._stands_in, self._has_steps = False, True
        return kept

    def revisions(self) -> tuple[Revision, ...]:
        """Return what was kept, oldest first."""
        return revisions.listed(self._base)

    def revision(self, number: int) -> Layout:
        """Return the layout of a revision."""
        return read(revisions.text_of(self._base, number))

    def revision_text(self, number: int) -> str:
        """Return a revision in normal form, byte for byte as it was kept."""
        return revisions.text_of(self._base, number).decode("utf-8")

    def picture(self, number: int) -> bytes | None:
        """Return the picture of a revision, None when it has none."""
        return revisions.picture_of(self._base, number)

    def photos(self) -> tuple[str, ...]:
        """Return the names of the photos, `<sha256>.jpg` or `.png`."""
        return photos.names(self._base)

    def photo(self, name: str) -> bytes:
        """Return a photo."""
        return photos.data_of(self._base, name)

    def add_photo(self, data: bytes) -> str:
        """Take a photo in, once, and return its name."""
        name = photos.named(data)
        if name not in photos.names(self._base):
            with self._writing():
                photos.put(self._base, data)
        return name

    def log_print(self, line: PrintLine, becomes: Layout) -> None:
        """Add a line to the log of prints, and make `becomes`, which knows of it, the draft."""
        text = _text(becomes)
        with self._writing():
            prints.log(self._base, line)
            self._becomes(becomes, text, at=self._row().at)
        self._stands_in = False

    def prints(self) -> tuple[PrintLine, ...]:
        """Return what was printed, oldest first."""
        return prints.listed(self._base)

    def meta(self, name: str) -> Any:
        """Return a value stored under a name, None when there is none."""
        return metas.read_value(self._base, name)

    def set_meta(self, name: str, value: Any) -> None:
        """Store a JSON value under a name."""
        if metas.read_value(self._base, name) != value:
            with self._writing():
                metas.put(self._base, name, value)

    @property
    def check_due(self) -> bool:
        """Return whether the file is to be checked whole: not done today, or a crash was seen."""
        return self._checked != now()[:10]

    def check_whole(self) -> tuple[str, ...]:
        """Return what is not as it was written, as sentences; () when the file is whole."""
        found = checking.sentences(self._base)
        if not found and not self.looking and self.check_due:
            with suppress(Refused):
                self.was_checked()
        return found

    def was_checked(self) -> None:
        """Store that the file was found whole today, by `check_whole` or `examine`."""
        with self._writing(checked=True):
            self._base.do("UPDATE holder SET checked = ? WHERE one = 1", now()[:10])

    def copy(self, out: Path) -> None:
        """Copy this file with every revision, also when its path leads elsewhere by now; `out` replaced."""
        making.copy(self.path, Path(out), self._base)

    def close(self) -> None:
        """Let the file go; nothing is left beside it.  Never raises, also when the file is gone."""
        if not self._open:
            return
        self._open = False
        if not self.looking:
            with suppress(Refused), self._writer.writing(lambda: None):
                holder.release(self._base, self._writer.token)
            holder.forget(self._writer.token)
        self._base.close()
        closes(self._writer.identity)

    @contextmanager
    def _writing(self, checked: bool = False) -> Iterator[None]:
        """Run one transaction, after a whole check when the last program to write did not end well."""
        if self.looking:
            raise Refused(path_words(self.path), "this file is only looked at", "Open it to work on it")
        with self._writer.writing(lambda: None if checked else self._check_after_crash()):
            yield
        if checked or self._checked is None:
            self._checked = now()[:10]

    def _check_after_crash(self) -> None:
        if self._checked is not None:
            return
        if self._refusal is not None:
            raise self._refusal
        for kind, trouble in checking.all_troubles(self._base):
            # a damaged draft is healed by the write, a damaged step can be spared
            if kind not in ("draft", "state", "meta"):
                self._refusal = trouble
                raise trouble
        self._base.do("UPDATE holder SET checked = ? WHERE one = 1", now()[:10])

    def _keep(self, note: str, picture: bytes | None) -> Revision:
        row = self._row()
        revision = revisions.following(self._base, row.parent, note, row.text)
        revisions.add(self._base, revision, row.text, picture if picture is not None else row.picture)
        drafts.put(self._base, replace(row, parent=revision.number))
        return revision

    def _becomes(
        self,
        layout: Layout,
        text: bytes,
        *,
        at: int,
        parent: int | EllipsisType | None = ...,
        picture: bytes | None = None,
    ) -> None:
        if isinstance(parent, EllipsisType) or picture is None:
            row = self._row()
            parent = row.parent if isinstance(parent, EllipsisType) else parent
            picture = row.picture if picture is None else picture
        drafts.put(self._base, drafts.changed_now(parent, at, text, picture))
        if not self._stands_in:
            # should the transaction fail, the hash tells that the file holds another
            self._known = replace(self._known, layout=layout, sha256=hash_of(text))
        if metas.read_value(self._base, metas.VEHICLE) != layout.vehicle.name:
            metas.put(self._base, metas.VEHICLE, layout.vehicle.name)

    def _row(self) -> DraftRow:
        if self._stands_in:
            known = self._known
            return DraftRow(known.parent, known.changed, known.at, _text(known.layout), None)
        return drafts.read_row(self._base)


def make_job_file(
    path: Path, layout: Layout, *, picture: bytes | None = None, photos: Iterable[bytes] = ()
) -> JobFile:
    """Make a new job file and return it open, with `layout` as its draft and nothing kept yet.

    Whole or not at all; raises `Refused` when there is something at `path`.
    """
    making.make(Path(path), layout, picture, photos)
    return open_job_file(path)


def open_job_file(path: Path, *, look: bool = False, take: bool = False) -> JobFile:
    """Return an open job file, to work on or to `look` at; `take` it over from who holds it.

    Raises `Held`, `Newer` or `Damaged`, which tell more, or a plain `Refused`.
    """
    return JobFile(opening.opened(Path(path), look, take), look)


def copy_job_file(path: Path, out: Path) -> None:
    """Copy a job file with every revision; a file at `out` is replaced whole or not at all."""
    making.copy(Path(path), Path(out))


def examine(path: Path) -> tuple[str, ...]:
    """Return what `JobFile.check_whole` would, through a connection of its own, for any thread."""
    try:
        base = connected(Path(path), look=True)
    except Refused as refused:
        return (str(refused),)
    try:
        return checking.sentences(base)
    finally:
        base.close()


def _text(layout: Layout) -> bytes:
    return write(layout).encode("utf-8", "replace")
