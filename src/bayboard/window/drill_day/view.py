"""Drill day over the whole window: it shows what the book says, and passes presses on to it."""

import time
from collections.abc import Callable

from PySide6.QtCore import QRectF, QSizeF, Qt, QTimer, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from bayboard.geometry import outline as outlines
from bayboard.mechanics.drill_day import Drilling
from bayboard.window.access import announce
from bayboard.window.drill_day.ask_line import AskLine
from bayboard.window.drill_day.board_field import BoardField
from bayboard.window.drill_day.book import Book
from bayboard.window.drill_day.paint_frame import Told, paint_frame
from bayboard.window.drill_day.plan import DayPlan, day_plan
from bayboard.window.drill_day.pressed import DayButton, PressField, ThenCard
from bayboard.window.drill_day.seen import Seen, planned
from bayboard.window.drill_day.show import DayShow
from bayboard.window.drill_day.where import Asked, WherePanel
from bayboard.window.steps import foot_of
from bayboard.window.trouble import TROUBLE
from bayboard.window.workplace import Workplace

SETTLE = 0.25  # s; a second press within it is the first one trembling, never a second hole
TOLD = 5000  # ms a line about the last act stands
WALKS = {Qt.Key.Key_Right: 1, Qt.Key.Key_Down: 1, Qt.Key.Key_Left: -1, Qt.Key.Key_Up: -1}


class DayView(QWidget):
    """The view.  `left` says that the day is over, or stopped for now."""

    left = Signal()

    def __init__(self, place: Workplace, book: Book, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.place, self.book = place, book
        self.clock: Callable[[], float] = time.monotonic
        self.line = ""
        self.trouble: Callable[[], str] = str  # why what is ticked is not written, "" where it is
        self._show: DayShow | None = None
        self._pressed_at = float("-inf")
        self._told = ""
        self._make_parts()
        self._quiet = QTimer(self)
        self._quiet.setSingleShot(True)
        self._quiet.setInterval(TOLD)
        self._quiet.timeout.connect(self._hush)
        book.turned.connect(self.follow)
        book.failed.connect(self.say)
        place.said.connect(self.say)
        self.setFocusProxy(self.board)
        self.setAccessibleName("Drill day")
        self.hide()

    def _make_parts(self) -> None:
        self.board = BoardField(self)
        self.board.walk = self.book.step
        self.press = PressField(self)
        self.cards = tuple(ThenCard(self) for _ in range(4))
        self.plastic = DayButton("New plastic", self, tip="The board is spoiled: begin it anew.")
        self.not_here = DayButton("Not here", self, tip="Says where it went. N")
        self.back = DayButton("Back one", self, tip="Takes the last one back. Backspace")
        self.stop = DayButton("Stop for now", self, tip="Goes back to the plan; the list stays. Esc")
        self.where = WherePanel(self)
        self.ask = AskLine(self)
        self.board.taken.connect(self._take)
        self.press.clicked.connect(self.pressed)
        for card in self.cards:
            card.clicked.connect(self._take_card)
        self.plastic.clicked.connect(self.ask_plastic)
        self.not_here.clicked.connect(self.ask_where)
        self.back.clicked.connect(self.take_back)
        self.stop.clicked.connect(self.left)
        self.where.answered.connect(self._went)
        self.where.not_made.connect(self._not_made)
        self.where.left.connect(self.put_down)
        self.ask.yes.connect(self._new_plastic)
        self.ask.left.connect(self.put_down)

    @property
    def controls(self) -> tuple[DayButton, ...]:
        """Return the buttons of the foot."""
        return self.plastic, self.not_here, self.back, self.stop

    def dress(self) -> None:
        """Wear the workplace's colours."""
        for part in (self.press, *self.cards, *self.controls, self.where, self.ask):
            part.dress(self.place.theme)
        self.follow()

    # --- what is shown ---

    def show_now(self) -> DayShow:
        """Return what is shown, worked out once until something changes."""
        if self._show is None:
            self._show = Seen(self.place, self.book).show()
        return self._show

    def plan(self) -> DayPlan:
        """Return where the parts lie."""
        size = QSizeF(self.size())
        return day_plan(size, bool(self.show_now().warning), self.place.theme.size)

    def follow(self) -> None:
        """Show what is true now."""
        self._show = None
        if not self.isVisible():
            return
        show, plan, theme = self.show_now(), self.plan(), self.place.theme
        self.board.tell(show.board, show.says, theme, plan.unit)
        self.press.tell(show.now, plan.unit)
        for i, card in enumerate(self.cards):
            card.tell(show.then[i] if i < len(show.then) else None, plan.unit)
        self._lay_out(plan)
        if show.says != self._told:
            self._told = show.says
            announce(self, show.says)
        self.update()

    def say(self, line: str) -> None:
        """Show one line for a few seconds, and say it aloud."""
        if not self.isVisible():
            return
        self.line = line
        self._quiet.start()
        announce(self, line)
        self.update()

    def _hush(self) -> None:
        self.line = ""
        self.update()

    # --- presses ---

    def pressed(self) -> None:
        """Do what the big field says; a press that follows too soon is the last one trembling."""
        now = self.clock()
        if now - self._pressed_at < SETTLE:
            return
        self._pressed_at = now
        self._hush()  # what was said of the press before may be true no longer
        one = self.book.now()
        if one is not None and self.book.made(one):
            self.book.choose(None)
        elif one is not None:
            self._say_board(one, self.book.drill())
        elif self.book.check() is not None:
            self.book.confirm()
        elif self.show_now().now.press:
            self.left.emit()
        self.board.setFocus(Qt.FocusReason.OtherFocusReason)

    def _say_board(self, one: Drilling, kept: bool) -> None:
        """Say that a board is done and the next one comes."""
        next_ = self.book.now()
        if kept and next_ is not None and next_.hole.board != one.hole.board:
            self.say(f"{one.hole.board} is drilled. Now take {next_.hole.board}.")

    def take_back(self) -> None:
        """Take the last press back."""
        taken = self.book.take_back()
        self.say(f"{taken} is not drilled yet." if taken else "Nothing is drilled yet.")

    def _take(self, hole: str, part: int) -> None:
        self.board.setFocus(Qt.FocusReason.MouseFocusReason)
        self.book.choose((hole, part))

    def _take_card(self) -> None:
        card = self.sender()
        if isinstance(card, ThenCard) and card.then is not None:
            self.book.choose((card.then.hole, card.then.part))

    # --- questions ---

    def ask_where(self) -> None:
        """Ask where the hole that is shown went; while the datum holes are measured, the second of them."""
        check = self.book.check()
        if self.book.now() is None and check is not None:
            part = self.book.parts(check.holes[1])[0].part
            self.book.choose((check.holes[1], part))
        one = self.book.now()
        if one is None:
            self.say("Take a hole first, then say where it went.")
            return
        self.where.ask(self._asked(one), self.place.units, self._span(one))

    def _asked(self, one: Drilling) -> Asked:
        left, up = planned(one, self.book)
        fixing = next((f for f in self.place.layout.fixings if f.id == one.hole.id), None)
        metal = None
        if fixing is not None:
            there, (px, py) = fixing.metal or fixing.at, one.at
            metal = (one.from_left + there[0] - px, one.up + there[1] - py)
        made = self.book.made(one)
        return Asked(one.hole.id, (left, up), metal, made)

    def _span(self, one: Drilling) -> float:
        board = next(b for b in self.place.layout.boards if b.id == one.hole.board)
        x0, y0, x1, y1 = outlines.box(board.outline)
        return max(x1 - x0, y1 - y0)

    def _went(self, metal: bool, left: float, up: float) -> None:
        one = self.book.now()
        self.put_down()
        if one is None:
            return
        board = next(b for b in self.place.layout.boards if b.id == one.hole.board)
        x, y = foot_of(board)
        at = (x + left, y + up)
        if metal:
            if self.book.drill_metal(one.hole.id, at):
                self.say(f"The metal behind {one.hole.id} is drilled there.")
        elif self.book.drill(at):
            self.say(f"{one.hole.id} is drilled where you said.")

    def _not_made(self) -> None:
        one = self.book.now()
        self.put_down()
        if one is not None and self.book.unmake(one):
            self.say(f"{one.hole.id} is not drilled yet.")

    def ask_plastic(self) -> None:
        """Ask whether the board is really to be begun anew."""
        board = self.show_now().board
        name = "" if board is None else board.shape.board.id
        count = sum(self.book.made(one) for one in self.book.all if one.hole.board == name)
        if not count:
            self.say("Nothing is drilled in it yet.")
            return
        holes = "the 1 hole" if count == 1 else f"the {count} holes"
        self.ask.setGeometry(self.plan().foot.toRect().adjusted(-4, 6, 4, 0))
        self.ask.ask(
            f"Is {name} spoiled? On new plastic {holes} drilled in it must be drilled again.",
            "Yes, on new plastic",
        )

    def _new_plastic(self) -> None:
        board = self.show_now().board
        self.put_down()
        if board is not None and self.book.new_plastic(board.shape.board.id):
            self.say(f"{board.shape.board.id} begins anew. Ctrl Z brings its holes back.")

    def put_down(self) -> bool:
        """Leave the question that stands; return whether there was one."""
        asked = not (self.where.isHidden() and self.ask.isHidden())
        self.board.setFocus(Qt.FocusReason.OtherFocusReason)  # before the widget that has the keys is hidden
        self.where.hide()
        self.ask.hide()
        return asked

    # --- keys ---

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Space drills, N asks where, Backspace takes back, arrows walk, Escape stops for now."""
        key = Qt.Key(event.key())
        plain = not event.modifiers() & (
            Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier
        )
        if key == Qt.Key.Key_Space:
            if not event.isAutoRepeat():
                self.pressed()
        elif key in WALKS:
            self.book.step(WALKS[key])
        elif key == Qt.Key.Key_Backspace and not event.isAutoRepeat():
            self.take_back()
        elif key == Qt.Key.Key_N and plain:
            self.ask_where()
        elif key == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            event.ignore()

    # --- looks ---

    def cover(self) -> None:
        """Lie over the whole window."""
        parent = self.parentWidget()
        if parent is not None and self.geometry() != parent.rect():
            self.setGeometry(parent.rect())

    def _lay_out(self, plan: DayPlan) -> None:
        self.board.setGeometry(plan.board.toRect())
        self.press.setGeometry(plan.press.toRect().adjusted(-6, -6, 6, 6))
        for card, rect in zip(self.cards, plan.cards, strict=True):
            card.setGeometry(rect.toRect().adjusted(-4, -4, 4, 4))
        rects = (plan.plastic, *plan.buttons)
        for button, rect in zip(self.controls, rects, strict=True):
            button.setGeometry(rect.toRect().adjusted(-4, -4, 4, 4))
        self.where.setGeometry(plan.asking(self.where.needs()).toAlignedRect().adjusted(-2, -2, 2, 2))
        self.ask.setGeometry(plan.foot.toRect().adjusted(-4, 6, 4, 0))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the whole window covered and the parts in their places."""
        self.cover()
        self.follow()

    def hideEvent(self, event: QHideEvent) -> None:
        """Leave every question."""
        self.where.hide()
        self.ask.hide()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint all that is not a part of its own; a broken painting is reported."""
        with QPainter(self) as p:
            try:
                p.setRenderHint(QPainter.RenderHint.Antialiasing)
                paint_frame(
                    p,
                    QRectF(self.rect()),
                    self.plan(),
                    self.show_now(),
                    self.place.theme,
                    Told(self.line, self.trouble()),
                    self._px_per_mm(),
                )
            except Exception as error:
                TROUBLE.report(error)

    def _px_per_mm(self) -> float:
        """Return the screen's own scale; a screen that tells none is taken for one of 96 dots an inch."""
        screen = self.screen()
        dots = screen.physicalDotsPerInch() if screen is not None else 0.0
        return (dots if 50.0 <= dots <= 400.0 else 96.0) / 25.4
