"""The line that the vehicles' cards hang on, with the field that finds them."""

from datetime import datetime

from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QResizeEvent
from PySide6.QtWidgets import QWidget

from bayboard.store.found import Found
from bayboard.window import lettering
from bayboard.window.access import announce
from bayboard.window.cord import EDGE, Cord, Hung
from bayboard.window.draw.job_card import lean_of
from bayboard.window.lettering import BODY
from bayboard.window.shelf import words
from bayboard.window.shelf.desk import ShelfDesk
from bayboard.window.shelf.search_field import SearchField
from bayboard.window.shelf.vehicle_card import HIGH, PITCH, WIDE, VehicleCard, paint_vehicle
from bayboard.window.when import day_words

CORD = 66.0  # px from the panel's top to the line
GAP = 10.0  # px round the field
ENDS = {Qt.Key.Key_Home: -100_000, Qt.Key.Key_End: 100_000}
WALKS = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1, Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1, **ENDS}


class ShelfLine(Cord):
    """The panel at the left and in the middle: the vehicles that are found, last worked on first."""

    reads_as = "Shelf"
    hung = Hung(CORD, 14.0, WIDE, HIGH, PITCH, felt=(12.0, 6.0), ring=8.0)
    taken = Signal()  # the chosen vehicle is wanted

    def __init__(self, desk: ShelfDesk, parent: QWidget | None = None) -> None:
        super().__init__(desk.place, parent)
        self.desk = desk
        self.field = SearchField(self)
        self._shown: tuple[object, str] = ((), "")
        self.field.textChanged.connect(desk.search)
        self.field.walked.connect(desk.walk)
        self.field.taken.connect(self.taken)
        desk.changed.connect(self.follow)

    def count(self) -> int:
        """Return how many cards hang here."""
        return len(self.desk.shown)

    def current(self) -> int:
        """Return the card that is chosen, -1 for none."""
        return self.desk.at()

    def title_wide(self) -> float:
        """Return the room for the title: up to the field."""
        return self.field.x() - 4.0

    def dress(self) -> None:
        """Wear the workplace's colours."""
        self.field.dress(self.theme)
        self._lay_out()
        self.update()

    def follow(self) -> None:
        """Show what is found and chosen; what was chosen anew is brought into sight and told."""
        desk, before = self.desk, self._shown
        self._shown = (desk.shown, desk.current)
        if before[1] != desk.current and desk.at() >= 0:
            self.reveal(desk.at())
            self._tell()
        if before[0] != desk.shown:
            self.hovered = -1
        self.keep_in()
        self._say_count()
        self.update()

    def _say_count(self) -> None:
        """Tell how many are found, once they are others."""
        if self.phrase() != self.accessibleDescription():
            self.setAccessibleDescription(self.phrase())
            if self.desk.text.strip():
                announce(self.field, self.phrase())

    def _tell(self) -> None:
        desk, vehicle = self.desk, self.desk.vehicle()
        if vehicle is not None:
            last = words.foot(vehicle, desk.is_here(vehicle), desk.holder(vehicle))
            announce(self, words.walked(vehicle, desk.at(), desk.shown, last))

    def phrase(self) -> str:
        """Return what stands beside the title."""
        desk = self.desk
        return words.phrase(len(desk.vehicles), len(desk.shown), desk.text, desk.share)

    # --- painting ---

    def card(self, vehicle: Found) -> VehicleCard:
        """Return what stands on a vehicle's card."""
        desk, facts = self.desk, vehicle.facts
        here = desk.is_here(vehicle)
        return VehicleCard(
            facts.name,
            day_words(vehicle.changed, datetime.now().astimezone()),
            facts.trouble or words.note_of(vehicle),
            words.foot(vehicle, here, desk.holder(vehicle)),
            lean_of(sum(vehicle.words[:40])) * 0.7,
            bool(facts.trouble) and not here,
            here,
        )

    def paint_cards(self, p: QPainter) -> None:
        """Paint the cards that are seen, or why there are none."""
        desk = self.desk
        for i in self.seen():
            vehicle = desk.shown[i]
            picture, chosen = desk.picture(vehicle.file), vehicle.file == desk.current
            card = self.card(vehicle)
            paint_vehicle(p, self.rect_of(i), card, picture, self.theme, chosen, i == self.hovered)
        if not desk.shown:
            self._paint_empty(p)

    def _paint_empty(self, p: QPainter) -> None:
        """Say why nothing hangs here."""
        desk, size = self.desk, self.theme.size
        told = words.EMPTY
        if desk.vehicles:
            told = (words.none_found(desk.text),)
        elif desk.share < 1.0:
            told = (words.LOOKING,)
        style = BODY.sized(size)
        for i, line in enumerate(told):
            at = QPointF(EDGE * size, (CORD + 44.0 + 26.0 * i) * size)
            words_here = lettering.elided(line, style, self.width() - 2 * EDGE * size)
            lettering.draw(p, at, words_here, style, self.theme.ink)

    # --- hands ---

    def click(self, at: QPointF, mods: Qt.KeyboardModifier) -> None:
        """Choose the card that was clicked."""
        index = self.card_at(at)
        if index >= 0:
            self.desk.choose(self.desk.shown[index].file)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Take the card down."""
        index = self.card_at(event.position())
        if event.button() == Qt.MouseButton.LeftButton and index >= 0:
            self.desk.choose(self.desk.shown[index].file)
            self.taken.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk the cards, take one down; letters go to the field."""
        key, text = Qt.Key(event.key()), event.text()
        held = event.modifiers() & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier)
        if key in WALKS and not held:
            self.desk.walk(WALKS[key])
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.taken.emit()
        elif text.isprintable() and text.strip() and not held:
            self.field.setFocus(Qt.FocusReason.ShortcutFocusReason)
            self.field.insert(text)
        else:
            event.ignore()

    def _lay_out(self) -> None:
        gap, hint = round(GAP * self.theme.size), self.field.sizeHint()
        wide = min(hint.width(), self.width() // 2)
        self.field.setGeometry(self.width() - wide - gap, gap - 4, wide, hint.height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the field at the right, and what is chosen in sight."""
        self._lay_out()
        self.keep_in()
        if self.desk.at() >= 0:
            self.reveal(self.desk.at())

    # --- read aloud ---

    def parts_said(self) -> list[str]:
        """Return a sentence for each card."""
        cards = ((vehicle, self.card(vehicle)) for vehicle in self.desk.shown)
        return [words.sentence(vehicle, card.date, card.foot) for vehicle, card in cards]

    def part_held(self, index: int) -> bool:
        """Return whether a card is the chosen one."""
        return self.desk.shown[index].file == self.desk.current
