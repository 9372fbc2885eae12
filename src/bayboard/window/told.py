"""A sheet that tells of one thing at length: a title, paragraphs under it, controls at its foot."""

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QWidget

from bayboard.window import lettering
from bayboard.window.lettering import BODY, HEADING, Style
from bayboard.window.panel_title import SMALL, paint_panel_title
from bayboard.window.scroll import Scroll
from bayboard.window.sheet import Sheet, Wrapped
from bayboard.window.workplace import Workplace

PAD = 16.0  # px beside what is told
TOP = 42.0  # px of the title
LEAST = 80.0  # px; narrower than this no line is wrapped

Paragraphs = tuple[tuple[str, bool], ...]  # each with whether it is in strong ink


class Told(Wrapped):
    """Paragraphs one under the other.  `lead` px from line to line, `gap` px more from one to the next."""

    def __init__(self, place: Workplace, lead: float, gap: float) -> None:
        super().__init__(place)
        self.lead, self.gap = lead, gap
        self.told: Paragraphs = ()

    def tell(self, told: Paragraphs) -> None:
        """Tell these paragraphs."""
        self.told = told
        self.setAccessibleName(" ".join(text for text, _ in told))
        self.follow()

    def _room(self) -> float:
        return max(self.width() - 6.0, LEAST)

    def lines(self) -> list[tuple[float, str, Style, bool]]:
        """Return each line with its baseline, style and whether it is in strong ink."""
        size, y = self.place.theme.size, 0.0
        found = []
        for text, strong in self.told:
            style = (BODY if strong else SMALL).sized(size)
            for line in lettering.wrapped(text, style, self._room()):
                y += self.lead * size
                found.append((y, line, style, strong))
            y += self.gap * size
        return found

    def follow(self) -> None:
        """Be as high as there is to tell."""
        lines = self.lines()
        self.setMinimumHeight(round(lines[-1][0] + 8.0) if lines else 0)
        self.update()

    def paint(self, p: QPainter) -> None:
        """Paint the lines; a word longer than its line is cut short."""
        theme, room = self.place.theme, self._room()
        for y, line, style, strong in self.lines():
            shown = lettering.elided(line, style, room)
            lettering.draw(p, QPointF(0.0, y), shown, style, theme.ink if strong else theme.ink2)


class ToldSheet(Sheet):
    """The sheet.  Subclasses give `title`, tell their paragraphs and put their controls in `lay_out`."""

    lead, gap = 22.0, 7.0  # px of the lines, see `Told`

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(place, parent)
        self.told = Told(place, self.lead, self.gap)
        self.scroll = Scroll(self.told, self)

    def title(self) -> tuple[str, str]:
        """Return the title, and what stands at its right."""
        return "", ""

    def lay_told(self, floor: int) -> None:
        """Give what is told the room between the title and `floor`, px from the top."""
        size = self.place.theme.size
        pad, top = round(PAD * size), round(TOP * size)
        self.scroll.setGeometry(pad, top, self.width() - pad - 6, max(floor - top, 0))

    def paint(self, p: QPainter) -> None:
        """Paint the title, cut short where it is too long for its line."""
        theme, size = self.place.theme, self.place.theme.size
        name, right = self.title()
        room = self.width() - 2 * PAD * size - lettering.width(right, SMALL.sized(size)) - 14.0 * size
        shown = lettering.elided(name, HEADING.sized(size), room)
        paint_panel_title(p, shown, "", theme, float(self.width()), right)
