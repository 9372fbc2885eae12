"""What a window does that is too narrow for all parts: Card and Findings take turns, the Section slides.

The Card takes the Findings' place while something is edited; the Section comes over the Wall when asked.
"""

from typing import Protocol

from PySide6.QtCore import QObject, QRect, QSize
from PySide6.QtWidgets import QWidget

from bayboard.window.controls import Button, Link, put_away
from bayboard.window.floor_plan import FloorPlan, floor_plan
from bayboard.window.stages import Panels
from bayboard.window.theme import Theme
from bayboard.window.workplace import Workplace

CARD, FINDINGS = "Card", "Findings"
OUT, AWAY = "Section", "Put away"


class Titled(Protocol):
    """A panel that leaves px free at the right end of its title line."""

    spare: int


class Paged(Protocol):
    """A panel with a page over it that leaves px free as well."""

    def leave_free(self, spare: int) -> None:
        """Leave px free at the right end of the page's title line."""


class Window(Protocol):
    """What is needed of the window."""

    place: Workplace
    card: Titled
    findings: Paged

    def to_wall(self) -> None:
        """Give the keys to the Wall."""

    def lay_out(self) -> None:
        """Put all parts in their places."""

    def size(self) -> QSize:
        """Return the window's size."""


class Narrow(QObject):
    """Which of the parts that share a place is seen."""

    def __init__(self, window: Window, parent: QWidget) -> None:
        super().__init__(parent)
        self.window = window
        self.card_open = False
        self.section_out = False
        self.turn = Link(CARD, parent, "Shows the Card of what is selected. Enter")
        self.slide = Button(OUT, parent, tip="Brings the Section over the Wall. Shift W")
        self.turn.clicked.connect(self._turn)
        self.slide.clicked.connect(self.slide_section)
        self.turn.hide()
        self.slide.hide()
        window.place.looked.connect(self._follow)
        self.panels: Panels = "in turn"
        self.plan = floor_plan(window.size())

    def dress(self, theme: Theme) -> None:
        """Wear a theme."""
        for part in (self.turn, self.slide):
            part.dress(theme)

    def planned(self, panels: Panels) -> FloorPlan:
        """Return the plan of the window for a stage that needs these panels."""
        self.panels = panels
        size = self.window.place.theme.size
        return floor_plan(self.window.size(), size, panels == "all", self.section_out)

    def share(self, plan: FloorPlan, section: QWidget, findings: QWidget, card: QWidget) -> None:
        """Show of the parts that share a place the one whose turn it is."""
        self.plan = plan
        carded = self.card_open or self.window.place.first_start or self.panels == "card"
        for widget, seen in (
            (findings, not (plan.shared and carded)),
            (card, not plan.shared or carded),
            (section, plan.section.width() > 0),
        ):
            if seen:
                widget.show()
            elif not widget.isHidden() and put_away(widget):
                self.window.to_wall()
        self._lay_words()

    def _lay_words(self) -> None:
        place, plan, size = self.window.place, self.plan, self.window.place.theme.size
        carded = self.card_open
        turns = plan.shared and self.panels == "in turn" and not place.first_start
        self.turn.setVisible(turns and (carded or bool(place.selected)))
        self._name(self.turn, FINDINGS if carded else CARD)
        hint = self.turn.sizeHint()
        at = plan.card.topRight()
        self.turn.setGeometry(QRect(at.x() - hint.width() - 8, at.y() + 2, hint.width(), hint.height()))
        self.turn.raise_()
        self.window.card.spare = hint.width() if plan.shared and carded else 0
        self.window.findings.leave_free(0 if self.turn.isHidden() or carded else hint.width() + 8)
        self.slide.setVisible(plan.slides)
        self._name(self.slide, AWAY if self.section_out else OUT)
        hint = self.slide.sizeHint()
        left = min(plan.hanging.left(), plan.wall.right()) - hint.width() - round(4 * size)
        self.slide.setGeometry(QRect(left, plan.wall.top() + 2, hint.width(), hint.height()))
        self.slide.raise_()

    @staticmethod
    def _name(part: Button | Link, words: str) -> None:
        if part.text() != words:
            part.setText(words)
            part.setAccessibleName(words)

    # --- hands ---

    def open_card(self) -> None:
        """Give the Card its turn, where it shares a place."""
        if not self.card_open:
            self.card_open = True
            self.window.lay_out()

    def close_card(self) -> bool:
        """Give the Findings their turn; return whether the Card had it."""
        was = self.card_open and self.plan.shared
        self.card_open = False
        if was:
            self.window.lay_out()
        return was

    def slide_section(self) -> None:
        """Bring the Section over the Wall, or put it away, where there is no room for both."""
        if self.plan.slides:
            self.section_out = not self.section_out
            self.window.lay_out()

    def _turn(self) -> None:
        if not self.close_card():
            self.open_card()

    def _follow(self) -> None:
        """Let the Card go when nothing is selected any longer."""
        if self.card_open and not self.window.place.selected:
            self.close_card()
        elif self.plan.shared:
            self._lay_words()
