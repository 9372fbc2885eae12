"""The stage strip: the stages that exist, whose layout this is, the seat's lever, the units."""

from collections.abc import Callable, Sequence
from itertools import pairwise

from PySide6.QtCore import QEvent, QPointF, QRect, QRectF, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from bayboard.window import lettering
from bayboard.window.controls import Link, Switch
from bayboard.window.draw.strip import Lath, lath_rects, paint_strip
from bayboard.window.lettering import HEADING, HELPER, Style
from bayboard.window.loud import is_loud, open_findings, unlooked_rules
from bayboard.window.stages import ARRANGE, Stage
from bayboard.window.standing import NOTHING_OPEN, Standing
from bayboard.window.strip_word import StripWord
from bayboard.window.theme import brush
from bayboard.window.workplace import Workplace

TOLD = 4000  # ms a line about the last act stands
UNIT_WORDS = ("in", "mm")
SETTINGS = "Settings"
SHELF, KEPT = "Shelf", "Kept"  # the modes that the vehicle's name and its revision lead to


class Strip(QWidget):
    """The top of the window.  It shows the stages it is given, and never one that is not built."""

    staged = Signal(str)  # the name of a stage or mode that was pressed
    lever_wanted = Signal(str)
    units_wanted = Signal(str)
    settings_wanted = Signal()

    def __init__(
        self, place: Workplace, stages: Sequence[Stage] = (ARRANGE,), parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.place = place
        self.stages = tuple(stages)
        self.stage = self.stages[0]
        self.modes: frozenset[str] = frozenset()
        self.standing: Callable[[], Standing] = _nothing  # how the job stands in its file
        self.line = ""
        self.of_mode: Callable[[], str] = str  # what the mode on screen says in place of the file's state
        self.hovered = -1
        self._quiet = QTimer(self)
        self._quiet.setSingleShot(True)
        self._quiet.timeout.connect(self._hush)
        self.name = StripWord(HEADING, self, "Opens the shelf of vehicles. Ctrl O")
        self.kept = StripWord(HELPER, self, "Shows what was kept, to compare and go back. Ctrl K")
        self.name.clicked.connect(self._to_shelf)
        self.kept.clicked.connect(self._to_kept)
        self.lever = Switch("Seat", ("up", "folded"), self, "Shows the seat up or folded. F")
        self.units = Switch("Units", UNIT_WORDS, self, "Shows inches or millimetres. U")
        self.settings = Link(SETTINGS, self, "Sets Scale, light or dark, motion. F7")
        self.lever.switched.connect(self.lever_wanted)
        self.units.switched.connect(self.units_wanted)
        self.settings.clicked.connect(self.settings_wanted)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAccessibleName("Stages")
        place.changed.connect(self.follow)
        place.looked.connect(self.follow)
        place.opened.connect(self._hush)  # what was said is about the vehicle that was here before
        place.opened.connect(self.follow)
        place.said.connect(self.say)
        self.dress()

    def dress(self) -> None:
        """Wear the workplace's colours."""
        for part in (self.lever, self.units, self.name, self.kept, self.settings):
            part.dress(self.place.theme)
        self._lay_out()
        self.follow()

    def follow(self) -> None:
        """Show what the workplace says."""
        self.lever.hold(self.place.lever)
        self.units.hold(self.place.units)
        self._say_words()
        self.update()

    def offer(self, mode: str) -> None:
        """Know that the window has a mode, so that words may lead to it."""
        self.modes |= {mode}
        self.follow()

    def offers(self, mode: str) -> bool:
        """Return whether the window has a mode."""
        return mode in self.modes

    def say(self, line: str) -> None:
        """Show one line for a few seconds."""
        self.line = line
        self.setAccessibleDescription(line)
        self._quiet.start(TOLD)
        self._say_words()

    def _hush(self) -> None:
        self.line = ""
        self._say_words()

    def show_stage(self, name: str) -> None:
        """Put a stage's lath on top."""
        self.stage = next(stage for stage in self.stages if stage.name == name)
        self.update()

    # --- painting ---

    def laths(self) -> tuple[Lath, ...]:
        """Return the laths, each with what the rules of its own stage say."""
        verdict, empty = self.place.told, self.place.first_start
        found = [] if empty else open_findings(verdict)
        own = [next(((f.severity, n) for n, f in found if is_loud(f, s.rooms)), None) for s in self.stages]
        return tuple(
            Lath(
                stage.name,
                current=stage is self.stage,
                worst=own[i],
                unchecked=0 if empty else len(unlooked_rules(verdict, stage.rooms)),
                looked=bool(stage.rooms) and not empty,
                hovered=i == self.hovered,
                focused=self.hasFocus() and stage is self.stage,
            )
            for i, stage in enumerate(self.stages)
        )

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the strip."""
        self._say_words()  # a mode may say something else by now
        theme, rect = self.place.theme, QRectF(self.rect())
        with QPainter(self) as p:
            p.fillRect(rect, brush(theme.paper))
            p.fillRect(QRectF(0.0, rect.bottom() - 1.0, rect.width(), 1.0), brush(theme.rule))
            paint_strip(p, rect, self.laths(), theme)
            self._paint_words(p, rect)

    def _paint_words(self, p: QPainter, rect: QRectF) -> None:
        theme = self.place.theme
        seat = Style(px=16.0).sized(theme.size)
        left = QRectF(self._seat_left(), 0.0, 60.0, rect.height())
        lettering.draw_in(p, left, "Seat", seat, theme.ink2, "left")

    def _seat_left(self) -> float:
        seat = Style(px=16.0).sized(self.place.theme.size)
        return self.lever.x() - lettering.width("Seat", seat) - 12.0

    def _say_words(self) -> None:
        """Put the vehicle's name and how it stands, or the line about the last act, to their places."""
        theme, place, stand = self.place.theme, self.place, self.standing()
        led = (self.name.leads, self.kept.leads)
        self.name.say(self.title(), theme.ink, SHELF in self.modes, "Shelf of vehicles")
        token = theme.ink if self.line else theme.must if stand.harmed else theme.ink2
        leads = KEPT in self.modes and not place.first_start and not self.line
        self.kept.say(self.line or self.state(), token, leads, "Kept revisions")
        if led != (self.name.leads, self.kept.leads):
            self._order_tabs()
        left, high, size = self.lath_places()[-1].right() + 26.0 * theme.size, self.height(), theme.size
        room, middle = self._seat_left() - left - 24.0, high / 2 + 2.0 * size
        over = bool(self.line) and self.kept.sizeHint().width() > room  # what is said needs both lines
        self.name.setVisible(not over)
        if over:
            self.kept.setGeometry(QRect(round(left - self.kept.margin()), 0, round(room), round(high - 1)))
            return
        for word, top, floor in ((self.name, 0.0, middle), (self.kept, middle, high - 1.0)):
            wide = min(word.sizeHint().width(), max(room, 0.0))
            spot = QRectF(left - word.margin(), top, wide, floor - top)
            word.setGeometry(QRect(round(spot.x()), round(top), round(wide), round(floor - top)))

    def _order_tabs(self) -> None:
        """Have Tab go from the laths over the words that lead somewhere to the switches."""
        words = [word for word in (self.name, self.kept) if word.leads]
        for one, after in pairwise((self, *words, self.lever)):
            QWidget.setTabOrder(one, after)

    def _to_shelf(self) -> None:
        self.staged.emit(SHELF)

    def _to_kept(self) -> None:
        self.staged.emit(KEPT)

    def title(self) -> str:
        """Return whose layout this is."""
        return "Bayboard" if self.place.first_start else self.place.shown.vehicle.name

    def state(self) -> str:
        """Return how the job stands in its file, or what the mode on screen says."""
        return self.of_mode() or self.standing().words

    def lath_places(self) -> tuple[QRectF, ...]:
        """Return where the laths lie."""
        return lath_rects(QRectF(self.rect()), len(self.stages), self.place.theme)

    # --- hands ---

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the switches at the right."""
        self._lay_out()
        self._say_words()

    def _lay_out(self) -> None:
        right = self.width() - 6
        for part in (self.settings, self.units, self.lever):
            hint = part.sizeHint()
            high = min(hint.height(), self.height())
            part.setGeometry(right - hint.width(), (self.height() - high) // 2, hint.width(), high)
            right -= hint.width() + 10

    def stage_at(self, at: QPointF) -> int:
        """Return which lath is there, -1 for none."""
        return next((i for i, r in enumerate(self.lath_places()) if r.contains(at)), -1)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show which lath the pointer is over."""
        self.hovered = self.stage_at(event.position())
        self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Go to the stage that is pressed."""
        at = self.stage_at(event.position())
        if at >= 0:
            self.staged.emit(self.stages[at].name)

    def leaveEvent(self, event: QEvent) -> None:
        """Forget the pointer."""
        self.hovered = -1
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk the stages with the arrows."""
        by = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}.get(Qt.Key(event.key()))
        if by is None:
            event.ignore()
            return
        at = self.stages.index(self.stage) + by
        if 0 <= at < len(self.stages):
            self.staged.emit(self.stages[at].name)


def _nothing() -> Standing:
    return Standing(NOTHING_OPEN)
