"""A job's file as the job uses it: revisions read once, kept, gone back to."""

from collections.abc import Sequence

from msgspec.structs import replace

from bayboard.job.past import Batch
from bayboard.job.picture import picture
from bayboard.model.drilled import with_facts
from bayboard.model.layout import Layout
from bayboard.model.refused import Refused
from bayboard.store.job_file import JobFile, Revision

FOR_PRINT = "for printing"


class Filed:
    """A job file with the revisions that were read from it; a revision never changes, so once is enough."""

    def __init__(self, file: JobFile, parent: int | None, pictured: Layout) -> None:
        self.file = file
        self.parent = parent
        self._parents: list[tuple[Layout, int | None]] = []  # of drafts before and after going back
        self._revisions: tuple[Revision, ...] | None = None
        self._layouts: dict[int, Layout] = {}
        self.pictured = pictured  # the draft whose picture is in the file

    def revisions(self) -> tuple[Revision, ...]:
        """Return what was kept, oldest first."""
        if self._revisions is None:
            self._revisions = self.file.revisions()
        return self._revisions

    def revision(self, number: int) -> Layout:
        """Return a revision's layout; raise `Refused` when there is none of that number."""
        if number not in self._layouts:
            self._layouts[number] = self.file.revision(number)
        return self._layouts[number]

    def kept_as(self, layout: Layout, numbers: Sequence[int | None]) -> int | None:
        """Return the newest of the revisions numbered that equals the layout, `printed` aside, or None."""
        plain = replace(layout, printed=None)
        for number in sorted({n for n in numbers if n is not None}, reverse=True):
            if replace(self.revision(number), printed=None) == plain:
                return number
        return None

    def newest(self) -> int | None:
        """Return the number of the newest revision, None before the first."""
        kept = self.revisions()
        return kept[-1].number if kept else None

    def keep(self, draft: Layout, note: str) -> Revision:
        """Keep the draft, which is in the file already, as a revision."""
        revision = self.file.keep(note, picture(draft))
        self._revisions, self.pictured, self.parent = None, draft, revision.number
        self._parents.append((draft, revision.number))
        return revision

    def write(self, draft: Layout, batch: Batch, drawn: bytes | None = None) -> None:
        """Bring the draft and the undo steps of the batch into the file."""
        self.file.write(draft, upto=batch.upto, add=batch.add, at=batch.at, parent=self.parent, picture=drawn)

    def came_to(self, draft: Layout) -> None:
        """Know the parent of a draft again that undo or redo brought back."""
        for known, parent in self._parents:
            if known is draft:
                self.parent = parent

    def becomes(self, draft: Layout, number: int) -> Layout:
        """Return what the draft becomes on going back: what is printed and drilled by now stays true."""
        return with_facts(self.revision(number), draft)

    def go_back(self, draft: Layout, becomes: Layout, number: int, label: str, upto: int) -> Revision | None:
        """Make `becomes` the draft in the file, the present one kept first where it is not kept yet."""
        kept = self.kept_as(draft, (self.newest(), self.parent))
        first = None if kept is not None else f"before going back to revision {number}"
        new = self.file.restore(number, becomes, label, keep_first=first, upto=upto, picture=picture(becomes))
        self._revisions, self.pictured, self.parent = None, becomes, number
        self._parents += [(draft, new.number if new else kept), (becomes, number)]
        return new


def only_looked_at() -> Refused:
    """Return the sentence for an act on a job that is only looked at."""
    return Refused("", "This job is only looked at, so nothing in it changes", "Save a copy to work on")


def no_job_file() -> Refused:
    """Return the sentence for an act that needs revisions where there are none."""
    return Refused("", "a plain .json layout holds no revisions", "Make a job file (.bay) of it first")
