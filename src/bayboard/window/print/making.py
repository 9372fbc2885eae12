"""The work of printing, as tasks that know nothing of the window: sheets to look at, and the PDF.

What loads the fonts of the paper is imported inside the tasks, so that the window opens without it.
"""

from collections.abc import Generator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from bayboard.job.on_the_bench import OnTheBench
from bayboard.model.drilled import with_facts
from bayboard.model.layout import Layout
from bayboard.model.refused import Refused
from bayboard.paper.marks import Page
from bayboard.paper.options import Options, SwapSheets
from bayboard.window.print.laid import LaidBoard, laid_board

if TYPE_CHECKING:
    from bayboard.paper.swap import Swap

Asked = tuple[Layout, Options]


@dataclass(frozen=True, slots=True)
class Sheets:
    """All pages in the order they leave the printer, and how the template's lie on the boards."""

    pages: tuple[Page, ...]
    laid: tuple[LaidBoard, ...]


@dataclass(frozen=True, slots=True)
class Pressed:
    """A finished PDF, how many sheets are in it and of which kinds."""

    pdf: bytes
    count: int
    kinds: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Weighing:
    """A layout against the sheets on the bench: `whole` they were laid out for, `now` they show."""

    layout: Layout
    bench: OnTheBench
    whole: Layout
    now: Layout
    options: Options

    def print_of(self, found: "Swap") -> Options:
        """Return the options of a print of just the sheets to be swapped."""
        sheets = SwapSheets(found.sheets, self.bench.staying(found.same))
        return self.options.with_seams_of(self.whole).with_swap(sheets)


@dataclass(frozen=True, slots=True)
class Weighed:
    """Which sheets on the bench are old, and the set as it is with their seams."""

    swap: "Swap"
    sheets: Sheets


@dataclass(frozen=True, slots=True)
class NotMade:
    """Why nothing could be made: a refusal's place, and its sentence for the screen."""

    place: str
    says: str


def lay_out(asked: Asked) -> Generator[float, None, Sheets | NotMade]:
    """Return the sheets of a layout, or why there are none."""
    from bayboard.paper.book import book  # noqa: PLC0415  loads the fonts of the paper

    yield 0.0
    try:
        made = book(*asked)
    except Refused as refused:
        return not_made(refused)
    return Sheets(made.pages, tuple(laid_board(section) for section in made.laid))


def press(asked: Asked) -> Generator[float, None, Pressed | NotMade]:
    """Return the PDF, byte for byte what `bayboard print` writes, or why there is none."""
    from bayboard.paper.book import book  # noqa: PLC0415  loads the fonts of the paper

    yield 0.0
    try:
        made = book(*asked)
    except Refused as refused:
        return not_made(refused)
    yield 0.5
    return Pressed(made.pdf(), len(made.pages), made.kinds)


def weigh(asked: Weighing) -> Generator[float, None, Weighed | NotMade]:
    """Return which of the sheets printed before are old, or why that cannot be told.

    What is drilled by now is drawn on both: a tick of the drill day makes no sheet old.
    """
    from bayboard.paper.book import book  # noqa: PLC0415  loads the fonts of the paper
    from bayboard.paper.swap import swap  # noqa: PLC0415

    yield 0.0
    like = asked.options.with_seams_of(asked.whole)
    try:
        old = book(with_facts(asked.now, asked.layout), like)
        yield 0.5
        new = book(asked.layout, like)
    except Refused as refused:
        return not_made(refused)
    found = swap(old, new)
    swapped = {page.number: page for page in book(asked.layout, asked.print_of(found)).pages}
    pages = tuple(swapped.get(page.number, page) for page in new.pages)
    return Weighed(found, Sheets(pages, tuple(laid_board(section) for section in new.laid)))


def not_made(refused: Refused) -> NotMade:
    """Return a refusal for the screen: a word of the command line is no place there."""
    what = refused.what
    if refused.place and not refused.place.startswith("--"):
        what = f"{refused.place}: {what}"
    says = f"{what[:1].upper()}{what[1:]}."
    return NotMade(refused.place, f"{says} {refused.do}." if refused.do else says)
