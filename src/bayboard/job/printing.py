"""What printing means for a job file: the draft is kept first, and what was printed is logged after.

The order is: keep, make the PDF of that revision, write it, log.  A print that could not be written is not
logged.  A plain layout is never written to.
"""

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Protocol

from bayboard.job.filed import FOR_PRINT
from bayboard.mechanics.printed import printed_of
from bayboard.model.layout import Layout, Printed
from bayboard.model.refused import Refused
from bayboard.paper.form import MARGIN
from bayboard.paper.options import DRAFT, Options
from bayboard.paper.set_words import set_words
from bayboard.store.records import PrintLine, Revision

if TYPE_CHECKING:  # the book loads the fonts of the paper
    from bayboard.paper.book import Book

DRILL = "drill"  # the kind of sheet that holes are drilled by
EDGE = " margin "  # between paper and white edge in the log, where the edge is not the usual one


class Printable(Protocol):
    """What printing needs of a job."""

    @property
    def layout(self) -> Layout:
        """Return the draft."""

    @property
    def keeps(self) -> bool:
        """Return whether there is a job file that may be written."""

    @property
    def looking(self) -> bool:
        """Return whether the job is only looked at."""

    def revisions(self) -> tuple[Revision, ...]:
        """Return what was kept, oldest first."""

    def revision(self, number: int) -> Layout:
        """Return a revision's layout."""

    def kept_as(self) -> int | None:
        """Return the revision that the draft equals."""

    def keep(self, note: str) -> Revision:
        """Keep the draft."""

    def log_print(self, line: PrintLine, printed: Printed | None) -> None:
        """Note a print."""


def revision_ahead(job: Printable) -> str:
    """Return the revision that a print made now would name: "4", `DRAFT`, "" for a plain layout."""
    if not (job.keeps or job.looking):
        return ""
    number = job.kept_as()
    if number is not None:
        return str(number)
    if job.looking:
        return DRAFT
    kept = job.revisions()
    return str(kept[-1].number + 1 if kept else 1)


def revision_to_print(job: Printable) -> str:
    """Return the revision that a print names; a draft that is none yet is kept now, "for printing".

    Raises `Refused` when it cannot be kept.
    """
    if job.keeps and job.kept_as() is None:
        return str(job.keep(FOR_PRINT).number)
    return revision_ahead(job)


def log_print(job: Printable, layout: Layout, options: Options, kinds: Sequence[str], pages: int) -> bool:
    """Log a print that is written, and set `printed` where drill sheets are among it; return whether it was.

    `kinds` are the kinds of sheet that came out.  Nothing is logged of a plain layout or one only looked at.
    """
    if not job.keeps:
        return False
    line = PrintLine(
        revision=options.revision,
        paper=options.paper if options.margin == MARGIN else f"{options.paper}{EDGE}{options.margin:g}",
        face=options.face,
        sheets=_sheets(options, kinds),
        words=set_words(layout, options),
        pages=pages,
    )
    job.log_print(line, printed_of(layout, options.revision) if DRILL in kinds else None)
    return True


def print_now(
    job: Printable, options: Options, write: Callable[["Book"], None], number: int | None = None
) -> "Book":
    """Print a job, or its revision of that number, and return what was printed.

    `write` writes the PDF and what goes with it.  Raises `Refused`: what cannot be printed is not kept, what
    cannot be written is not logged; where only the log fails, the sentence says that the PDF is there.
    """
    from bayboard.paper.book import book  # noqa: PLC0415  loads the fonts of the paper

    layout = job.layout if number is None else job.revision(number)
    named = options.with_revision(revision_ahead(job) if number is None else str(number))
    made = book(layout, named)
    if number is None:
        kept = options.with_revision(revision_to_print(job))
        if kept != named:
            named, made = kept, book(layout, kept)
    write(made)
    try:
        log_print(job, layout, named, made.kinds, len(made.pages))
    except Refused as refused:
        what = f"the sheets are written, but not in the print log: {refused.what}"
        raise Refused(refused.place, what, refused.do) from refused
    return made


def _sheets(options: Options, kinds: Sequence[str]) -> tuple[str, ...]:
    """Return what stands in the log: "drill" for the whole set, "drill 3" for a sheet that was swapped."""
    numbers = options.swap.numbers if options.swap else None
    drill = (DRILL,) if numbers is None else tuple(f"{DRILL} {n}" for n in numbers)
    return tuple(word for kind in kinds for word in (drill if kind == DRILL else (kind,)))
