"""The work of printing, as tasks that know nothing of the window: sheets to look at, and the PDF.

What loads the fonts of the paper is imported inside the tasks, so that the window opens without it.
"""

from collections.abc import Generator
from dataclasses import dataclass

from bayboard.model.layout import Layout
from bayboard.model.refused import Refused
from bayboard.paper.marks import Page
from bayboard.paper.options import Options
from bayboard.window.print.laid import LaidBoard, laid_board

Asked = tuple[Layout, Options]


@dataclass(frozen=True, slots=True)
class Sheets:
    """All pages in the order they leave the printer, and how the template's lie on the boards."""

    pages: tuple[Page, ...]
    laid: tuple[LaidBoard, ...]


@dataclass(frozen=True, slots=True)
class Pressed:
    """A finished PDF and how many sheets are in it."""

    pdf: bytes
    count: int


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
    return Pressed(made.pdf(), len(made.pages))


def not_made(refused: Refused) -> NotMade:
    """Return a refusal for the screen: a word of the command line is no place there."""
    what = refused.what
    if refused.place and not refused.place.startswith("--"):
        what = f"{refused.place}: {what}"
    says = f"{what[:1].upper()}{what[1:]}."
    return NotMade(refused.place, f"{says} {refused.do}." if refused.do else says)
