"""The line that the revisions hang on: two of them are chosen, then and now."""

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QHideEvent, QKeyEvent, QMouseEvent, QPainter, QResizeEvent
from PySide6.QtWidgets import QWidget

from bayboard.window import lettering
from bayboard.window.access import announce
from bayboard.window.compare import words
from bayboard.window.compare.cards import Cards
from bayboard.window.compare.desk import CompareDesk
from bayboard.window.compare.words import Pick
from bayboard.window.cord import Cord, Hung
from bayboard.window.draw.job_card import HIGH, PITCH, WIDE, paint_card, paint_choice
from bayboard.window.lettering import BODY

CHOICE = 40.0  # px below the cards for "then" and "now"
PAD = 16.0
LEAST_BESIDE = 150.0  # px that words beside a card need


class KeptLine(Cord):
    """The left panel: the revisions and, newest, the draft."""

    reads_as = "Kept"
    hung = Hung(60.0, CHOICE, WIDE, HIGH, PITCH, felt=(6.0, 30.0), ring=9.0, least=112.0)

    def __init__(self, desk: CompareDesk, parent: QWidget | None = None) -> None:
        super().__init__(desk.place, parent)
        self.desk = desk
        self.cards = Cards(desk)
        self._shown: object = None
        self.setToolTip(words.CHOOSE)
        desk.changed.connect(self.follow)
        self.cards.counted.connect(self.update)

    def count(self) -> int:
        """Return how many cards hang here."""
        return len(self.desk.picks)

    def current(self) -> int:
        """Return the card that is then, -1 for none."""
        desk = self.desk
        return desk.picks.index(desk.then) if desk.then in desk.picks else -1

    def phrase(self) -> str:
        """Return what stands beside the title."""
        return words.line_phrase(len(self.desk.revisions))

    def follow(self) -> None:
        """Show what is chosen, brought into sight when it was chosen anew."""
        desk = self.desk
        shown = (desk.picks, desk.then, desk.now)
        if shown != self._shown:
            before, self._shown = self._shown, shown
            self._show_chosen(before)
        said = words.pair_words(desk.then, desk.now)
        if said != self.accessibleDescription():
            self.setAccessibleDescription(said)
            announce(
                self, words.sounds(desk.then, desk.now, [row.words for row in desk.rows()] or [desk.trouble])
            )
        self.keep_in()
        self.update()

    def _show_chosen(self, before: object) -> None:
        """Bring into sight what was chosen last, then the other; at first the newest end."""
        desk = self.desk
        if not isinstance(before, tuple) or before[0] != desk.picks:
            self.scrolled = self.most()
        moved = (
            []
            if not isinstance(before, tuple)
            else [pick for pick, was in ((desk.then, before[1]), (desk.now, before[2])) if pick != was]
        )
        for pick in moved or [desk.then]:
            if pick in desk.picks:
                self.reveal(desk.picks.index(pick))

    # --- painting ---

    def paint_cards(self, p: QPainter) -> None:
        """Paint the cards that are seen, "then" and "now" under two of them."""
        desk, picks, seen = self.desk, self.desk.picks, self.seen()
        if not desk.revisions and not self._has_room_beside():
            self._paint_empty(p, PAD * self.theme.size)
            return
        self.cards.want([item for i in seen if (item := desk.revision(picks[i])) is not None])
        for i in seen:
            pick, rect = picks[i], self.rect_of(i)
            chosen = pick in (desk.then, desk.now) and desk.then is not None
            paint_card(
                p,
                rect,
                self.cards.card(pick),
                self.cards.picture(pick),
                self.theme,
                chosen,
                i == self.hovered,
            )
        for word, pick in self._choices():
            at, shown = self.choice_at(picks.index(pick), word)
            paint_choice(p, at, shown, self.theme)
        if not desk.revisions:
            self._paint_empty(p, self._beside())

    def choice_at(self, index: int, word: str) -> tuple[QPointF, str]:
        """Return the middle of "then" or "now" and its words; one out of sight is told at the edge."""
        size, rect = self.theme.size, self.rect_of(index)
        at, edge = QPointF(rect.center().x(), rect.bottom() + 18.0 * size), 42.0 * size
        if at.x() < edge:
            return QPointF(edge, at.y()), f"← {word}"
        if at.x() > self.width() - edge:
            return QPointF(self.width() - edge, at.y()), f"{word} →"
        return at, word

    def _choices(self) -> list[tuple[str, Pick]]:
        """Return "then" and "now" with what they hang under."""
        desk = self.desk
        pairs = (("then", desk.then), ("now", desk.now))
        return [(word, pick) for word, pick in pairs if desk.then is not None and pick in desk.picks]

    def _beside(self) -> float:
        return self.rect_of(0).right() + 28.0 * self.theme.size

    def _has_room_beside(self) -> bool:
        """Return whether words beside the lonely draft can be read."""
        return self.width() - self._beside() >= LEAST_BESIDE * self.theme.size

    def _paint_empty(self, p: QPainter, left: float) -> None:
        """Say beside the lonely draft, or in its place, how a revision comes to hang here."""
        size, rect = self.theme.size, self.rect_of(0)
        style = BODY.sized(size)
        job = self.place.job
        told = [words.EMPTY] if job.keeps or job.file is not None else [words.EMPTY, words.PLAIN_FILE]
        lines = [line for text in told for line in lettering.wrapped(text, style, self.width() - left - 16.0)]
        for i, line in enumerate(lines):
            at = QPointF(left, rect.top() + (24.0 + 24.0 * i) * size)
            lettering.draw(p, at, line, style, self.theme.ink)

    # --- hands ---

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin a click or a push of the line; the right button chooses as now."""
        super().mousePressEvent(event)
        if event.button() == Qt.MouseButton.RightButton:
            self._choose_at(event.position(), now=True)

    def click(self, at: QPointF, mods: Qt.KeyboardModifier) -> None:
        """Choose the card that was clicked; with Shift as now."""
        self._choose_at(at, bool(mods & Qt.KeyboardModifier.ShiftModifier))

    def _choose_at(self, at: QPointF, now: bool) -> None:
        index, edge = self.card_at(at), self._edge_choice(at)
        if edge is not None:
            self.reveal(edge)
            self.update()
        elif index >= 0:
            self.desk.choose(self.desk.picks[index], now)

    def _edge_choice(self, at: QPointF) -> int | None:
        """Return the card out of sight whose word at the edge lies under a pixel, None for none."""
        for word, pick in self._choices():
            index = self.desk.picks.index(pick)
            middle, shown = self.choice_at(index, word)
            far = at - middle
            if (
                shown != word
                and abs(far.x()) <= 42.0 * self.theme.size
                and abs(far.y()) <= 20.0 * self.theme.size
            ):
                return index
        return None

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go to either end with Home and End; the arrows are the mode's, wherever the keys are."""
        if event.key() in (Qt.Key.Key_Home, Qt.Key.Key_End):
            now = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            self.desk.walk_to_end(event.key() == Qt.Key.Key_End, now)
        else:
            event.ignore()

    def hideEvent(self, event: QHideEvent) -> None:
        """Read nothing more of a file that may be let go of now."""
        self.cards.rest()
        self.desk.rest()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the line within its panel, what is chosen in sight."""
        self.scrolled = self.most()
        for pick in (self.desk.now, self.desk.then):
            if pick in self.desk.picks:
                self.reveal(self.desk.picks.index(pick))

    # --- read aloud ---

    def parts_said(self) -> list[str]:
        """Return a sentence for each card."""
        desk, said = self.desk, []
        chosen = {pick: word for word, pick in self._choices()}
        for pick in desk.picks:
            card = self.cards.card(pick)
            told = (card.date, card.note, card.foot)
            said.append(words.card_sentence(pick, told, chosen.get(pick, "")))
        return said

    def part_held(self, index: int) -> bool:
        """Return whether a card is one of the two."""
        return self.desk.picks[index] in (self.desk.then, self.desk.now)
