"""A file made by a newer Bayboard: its notes and pictures as cards on the Wall, to look at and no more."""

from collections.abc import Sequence
from pathlib import Path
from typing import Protocol

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QMouseEvent, QPainter, QPixmap, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QWidget

from bayboard.store.troubles import Kept
from bayboard.window import lettering
from bayboard.window.access import announce
from bayboard.window.canvas import Canvas
from bayboard.window.draw.job_card import HIGH, WIDE, JobCard, lean_of, paint_card
from bayboard.window.finger_push import PUSH
from bayboard.window.lettering import BODY
from bayboard.window.listed import Listed
from bayboard.window.note import quoted
from bayboard.window.stages import Panes, Stage
from bayboard.window.standing import now
from bayboard.window.theme import Theme, brush
from bayboard.window.title_line import paint_title
from bayboard.window.when import day_words, moment_words
from bayboard.window.workplace import Workplace

NOTES = Stage("Notes and pictures", 0)
TOP, SIDE, GAP = 66.0, 26.0, 24.0  # px above the first row, beside it, and between cards
BAND = 86.0  # px at the foot for the whole note of the chosen one
WALKS = {"left": -1, "right": 1, "far_left": -5, "far_right": 5, "last_finding": -1, "next_finding": 1}
LINES = {"up": -1, "down": 1, "far_up": -1, "far_down": 1}
KEYS = (
    ("Arrows", "walk the cards"),
    ("Wheel", "push the cards up and down"),
    ("Esc", "back to work"),
)


class KeptOnly(Canvas, Listed):
    """The cards.  Always true: `current` is one of them, or -1 where there are none."""

    layered = False
    reads_as = "Notes and pictures of a file made by a newer Bayboard"

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.place = place
        self.path = Path()
        self.kept: tuple[Kept, ...] = ()
        self.current = -1
        self.scrolled = 0.0
        self._pictures: dict[int, QPixmap | None] = {}
        self._pressed: QPointF | None = None
        self._by, self._pushed = 0.0, False  # how far it was pushed when pressed; whether it is no click
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(self.reads_as)

    @property
    def theme(self) -> Theme:
        """Return the workplace's colours."""
        return self.place.theme

    def hold(self, path: Path, kept: Sequence[Kept]) -> None:
        """Show what a file keeps, oldest first."""
        self.path, self.kept = path, tuple(sorted(kept, key=lambda one: one.number))
        self.current, self.scrolled = len(self.kept) - 1, 0.0
        self._pictures.clear()
        self._show_current()

    # --- where the cards hang ---

    def in_row(self) -> int:
        """Return how many cards hang beside each other."""
        size = self.theme.size
        return max(int((self.width() - 2 * SIDE * size + GAP * size) / ((WIDE + GAP) * size)), 1)

    def part_rect(self, index: int) -> QRectF:
        """Return where a card hangs."""
        size, row = self.theme.size, self.in_row()
        x = (SIDE + index % row * (WIDE + GAP)) * size
        y = (TOP + index // row * (HIGH + GAP)) * size - self.scrolled
        return QRectF(x, y, WIDE * size, HIGH * size)

    def _show_current(self) -> None:
        """Push the cards so that the chosen one is seen."""
        size = self.theme.size
        rect = self.part_rect(self.current)
        floor = self.height() - (BAND + 10.0) * size
        if rect.bottom() > floor:
            self._push(rect.bottom() - floor)
        elif rect.top() < TOP * size:
            self._push(rect.top() - TOP * size)
        self.update()

    def _push(self, by: float) -> None:
        size = self.theme.size
        last = self.part_rect(max(len(self.kept) - 1, 0)).bottom() + self.scrolled
        most = max(last - self.height() + (BAND + 10.0) * size, 0.0)
        self.scrolled = min(max(self.scrolled + by, 0.0), most)
        self.update()

    def walk(self, by: int) -> None:
        """Choose the card so many places on, as far as there are any."""
        if self.kept:
            self.current = min(max(self.current + by, 0), len(self.kept) - 1)
            self._show_current()
            announce(self, self.sentence(self.current))

    # --- words ---

    def parts_said(self) -> Sequence[str]:
        """Return what a screen reader is told of each card."""
        return tuple(self.sentence(i) for i in range(len(self.kept)))

    def part_held(self, index: int) -> bool:
        """Return whether a card is chosen."""
        return index == self.current

    def sentence(self, index: int) -> str:
        """Return a revision in words: number, time, note."""
        one = self.kept[index]
        when = moment_words(one.kept)
        note = quoted(one.note) if one.note else "No note."
        return f"Revision {one.number}{f', {when}' if when else ''}: {note}"

    # --- painting and hands ---

    def paint_live(self, p: QPainter) -> None:
        """Paint the cards, the note of the chosen one, the title line."""
        theme, size, wide = self.theme, self.theme.size, float(self.width())
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        p.fillRect(QRectF(self.rect()), brush(theme.room))
        for i, one in enumerate(self.kept):
            rect = self.part_rect(i)
            if rect.intersects(QRectF(self.rect())):
                card = JobCard(
                    f"rev {one.number}", day_words(one.kept, now()), one.note, lean=lean_of(one.number)
                )
                paint_card(p, rect, card, self._picture(i), theme, chosen=i == self.current)
        p.fillRect(QRectF(0.0, 0.0, wide, (TOP - 22.0) * size), brush(theme.room))
        count = f"{len(self.kept)} {'revision' if len(self.kept) == 1 else 'revisions'}"
        phrase = f"{self.path.name}, made by a newer Bayboard: {count}, notes and pictures only"
        phrases = (f"{phrase} · Esc goes back to work", phrase, self.path.name)
        paint_title(p, wide, theme, "Wall", phrases, theme.blue, theme.room, veiled=False)
        self._paint_note(p)

    def _paint_note(self, p: QPainter) -> None:
        theme, size = self.theme, self.theme.size
        band = QRectF(0.0, self.height() - BAND * size, float(self.width()), BAND * size)
        p.fillRect(band, brush(theme.paper))
        if self.current < 0:
            return
        style = BODY.sized(size)
        lines = lettering.wrapped(self.sentence(self.current), style, band.width() - 2 * SIDE * size)
        shown = (*lines[:2], f"{lines[2]} …") if len(lines) > 3 else lines
        for i, line in enumerate(shown):
            lettering.draw(
                p, QPointF(SIDE * size, band.top() + (26.0 + 23.0 * i) * size), line, style, theme.ink
            )

    def _picture(self, index: int) -> QPixmap | None:
        if index not in self._pictures:
            made, data = QPixmap(), self.kept[index].picture
            fine = data is not None and made.loadFromData(data, "PNG") and not made.isNull()
            self._pictures[index] = made if fine else None
        return self._pictures[index]

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Hang the cards anew, the chosen one in view."""
        super().resizeEvent(event)
        self._push(0.0)
        self._show_current()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin a click or a push of the cards."""
        self._pressed, self._by, self._pushed = event.position(), self.scrolled, False

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Push the cards, with a finger too."""
        if self._pressed is not None:
            far = self._pressed.y() - event.position().y()
            self._pushed = self._pushed or abs(far) > PUSH
            if self._pushed:
                self._push(self._by + far - self.scrolled)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Choose the card that was pressed, unless the cards were pushed."""
        pressed, self._pressed = self._pressed, None
        if pressed is None or self._pushed:
            return
        for i in range(len(self.kept)):
            if self.part_rect(i).contains(pressed):
                self.walk(i - self.current)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Push the cards."""
        self._push(-event.angleDelta().y() * 0.5)


class Window(Protocol):
    """What the mode needs of the window."""

    place: Workplace

    def show_stage(self, name: str) -> None:
        """Bring a stage's widgets to their places."""

    def leave_mode(self) -> None:
        """Go back to the stage before."""


class KeptOnlyStage(Panes):
    """The mode: cards on the Wall, arrows walk them, Escape leaves."""

    def __init__(self, window: Window) -> None:
        self.window = window
        self.view = KeptOnly(window.place, window if isinstance(window, QWidget) else None)
        super().__init__(NOTES, self.view)

    def open(self, path: Path, kept: Sequence[Kept]) -> None:
        """Show what a file keeps."""
        self.view.hold(path, kept)
        self.window.show_stage(NOTES.name)

    def act(self, name: str) -> bool:
        """Walk or leave; nothing of the work behind is changed unseen."""
        if name in WALKS:
            self.view.walk(WALKS[name])
        elif name in LINES:
            self.view.walk(LINES[name] * self.view.in_row())
        elif name == "escape":
            self.window.leave_mode()
        else:
            return name not in AWAKE
        return True

    def state(self) -> str:
        """Return what the strip says meanwhile."""
        return f"{self.view.path.name}: notes and pictures only · Esc goes back to work"

    def keys(self) -> tuple[tuple[str, str], ...]:
        """Return the lines of F1."""
        return KEYS

    def dress(self) -> None:
        """Wear the workplace's colours."""
        self.view.update()


AWAKE = frozenset(
    ("help", "kept", "shelf", "open", "new", "print", "drill_day", "close", "pane", "last_pane", "lever")
)
