"""Everything that is printed of a layout: `book(layout, options)`, then `.pdf()` and `.map()`."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from bayboard.model.layout import Layout
from bayboard.model.refused import Refused
from bayboard.paper import cards, template
from bayboard.paper.form import PAPERS as _PAPERS
from bayboard.paper.map import page_map
from bayboard.paper.marks import Page
from bayboard.paper.options import Options
from bayboard.paper.press import press
from bayboard.paper.section import Section, sections

__all__ = ["PAPERS", "SHEETS", "Book", "Options", "book"]

PAPERS: tuple[str, ...] = tuple(_PAPERS)

# a kind of sheet: whether a layout has anything for it, and what is missing when it has not
_KINDS: dict[str, tuple[Callable[[Layout], bool], str]] = {
    template.SHEET: (lambda layout: bool(layout.boards), "there is no board to drill"),
    cards.SHEET: (lambda layout: bool(layout.gear), "there is no gear to cut stand-ins for"),
}
SHEETS: tuple[str, ...] = tuple(_KINDS)


@dataclass(frozen=True)
class Book:
    """The pages of one print, in the order they leave the printer.

    `laid`: how the template's sheets lie on each board, empty when no template is printed.
    """

    title: str
    pages: tuple[Page, ...]
    laid: tuple[Section, ...] = field(default=(), repr=False, compare=False)

    @property
    def kinds(self) -> tuple[str, ...]:
        """Return the kinds of sheet among the pages, in their order."""
        return tuple(dict.fromkeys(page.sheet for page in self.pages))

    def pdf(self) -> bytes:
        """Return the PDF; equal pages give equal bytes."""
        return press(self.pages, self.title)

    def map(self) -> dict[str, Any]:
        """Return where each thing lies on its page, as `print --map` writes it."""
        return page_map(self.pages)


def book(layout: Layout, options: Options) -> Book:
    """Return the pages of a print; raise `Refused` when there is nothing to print or no room to print it."""
    wanted = options.only if options.only is not None else tuple(k for k in SHEETS if _KINDS[k][0](layout))
    if not wanted:
        raise Refused("boards", "there is no board to drill and no gear to cut", "Draw a board first")
    for kind in (kind for kind in SHEETS if kind in wanted):
        has_content, empty = _KINDS[kind]
        if not has_content(layout):
            raise Refused("--only", f"'{kind}' has nothing to show: {empty}", "Add one, or leave it out")
    laid = tuple(sections(layout, options)) if template.SHEET in wanted else ()
    stand_ins = cards.cards(layout, options) if cards.SHEET in wanted else ()
    return Book(layout.vehicle.name, (*template.pages_of(laid), *stand_ins), laid)
