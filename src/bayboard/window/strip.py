"""The stage strip: the stages that exist, whose layout this is, the seat's lever, the units."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from bayboard.window import lettering
from bayboard.window.controls import Switch
from bayboard.window.draw.strip import Lath, lath_rects, paint_strip
from bayboard.window.lettering import HEADING, HELPER, Style
from bayboard.window.marking import open_findings
from bayboard.window.theme import brush
from bayboard.window.workplace import Workplace

TOLD = 4000  # ms a line about the last act stands
UNIT_WORDS = ("in", "mm")


@dataclass(frozen=True, slots=True)
class Stage:
    """A stage of the work: its name on the lath, and the number of its Ctrl key."""

    name: str
    key: int


ARRANGE = Stage("Arrange", 2)


class Strip(QWidget):
    """The top of the window.  It shows the stages it is given, and never one that is not built."""

    staged = Signal(str)  # the name of a stage that was pressed
    lever_wanted = Signal(str)
    units_wanted = Signal(str)

    def __init__(
        self, place: Workplace, stages: Sequence[Stage] = (ARRANGE,), parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.place = place
        self.stages = tuple(stages)
        self.stage = self.stages[0]
        self.line = ""
        self.of_mode: Callable[[], str] = str  # what the mode on screen says in place of the file's state
        self.hovered = -1
        self._quiet = QTimer(self)
        self._quiet.setSingleShot(True)
        self._quiet.timeout.connect(self._hush)
        self.lever = Switch("Seat", ("up", "folded"), self, "Shows the seat up or folded. F")
        self.units = Switch("Units", UNIT_WORDS, self, "Shows inches or millimetres. U")
        self.lever.switched.connect(self.lever_wanted)
        self.units.switched.connect(self.units_wanted)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAccessibleName("Stages")
        place.changed.connect(self.follow)
        place.looked.connect(self.follow)
        place.opened.connect(self.follow)
        place.said.connect(self.say)
        self.dress()

    def dress(self) -> None:
        """Wear the workplace's colours."""
        self.lever.dress(self.place.theme)
        self.units.dress(self.place.theme)
        self.follow()

    def follow(self) -> None:
        """Show what the workplace says."""
        self.lever.hold(self.place.lever)
        self.units.hold(self.place.units)
        self.update()

    def say(self, line: str) -> None:
        """Show one line for a few seconds."""
        self.line = line
        self.setAccessibleDescription(line)
        self._quiet.start(TOLD)
        self.update()

    def _hush(self) -> None:
        self.line = ""
        self.update()

    def show_stage(self, name: str) -> None:
        """Put a stage's lath on top."""
        self.stage = next(stage for stage in self.stages if stage.name == name)
        self.update()

    # --- painting ---

    def laths(self) -> tuple[Lath, ...]:
        """Return the laths with what the rules say of them.

        All rules are shown on the stage in use, as long as the stages they belong to are not there.
        """
        found = open_findings(self.place.verdict)
        worst = (found[0][1].severity, found[0][0]) if found else None
        unchecked = self.place.verdict.counts["unchecked"]
        empty = self.place.first_start
        return tuple(
            Lath(
                stage.name,
                current=stage is self.stage,
                worst=worst if stage.name == ARRANGE.name and not empty else None,
                unchecked=unchecked if stage.name == ARRANGE.name and not empty else 0,
                looked=stage.name == ARRANGE.name and not empty,
                hovered=i == self.hovered,
                focused=self.hasFocus() and stage is self.stage,
            )
            for i, stage in enumerate(self.stages)
        )

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the strip."""
        theme, rect = self.place.theme, QRectF(self.rect())
        with QPainter(self) as p:
            p.fillRect(rect, brush(theme.paper))
            p.fillRect(QRectF(0.0, rect.bottom() - 1.0, rect.width(), 1.0), brush(theme.rule))
            paint_strip(p, rect, self.laths(), theme)
            self._paint_words(p, rect)

    def _paint_words(self, p: QPainter, rect: QRectF) -> None:
        theme, size = self.place.theme, self.place.theme.size
        left = self.lath_places()[-1].right() + 26.0 * size
        seat = Style(px=16.0).sized(size)
        right = self.lever.x() - lettering.width("Seat", seat) - 12.0
        lettering.draw_in(p, QRectF(right, 0.0, 60.0, rect.height()), "Seat", seat, theme.ink2, "left")
        room = right - left - 24.0
        lettering.draw(
            p,
            QPointF(left, rect.center().y() - 3.0),
            lettering.elided(self.title(), HEADING.sized(size), room),
            HEADING.sized(size),
            theme.ink,
        )
        words, token = (self.line, theme.ink) if self.line else (self.state(), theme.ink2)
        below = lettering.elided(words, HELPER.sized(size), room)
        lettering.draw(p, QPointF(left, rect.center().y() + 17.0 * size), below, HELPER.sized(size), token)

    def title(self) -> str:
        """Return whose layout this is."""
        return "Bayboard" if self.place.first_start else self.place.shown.vehicle.name

    def state(self) -> str:
        """Return where the layout is kept and whether it is."""
        job = self.place.job
        if self.of_mode():
            return self.of_mode()
        if self.place.first_start:
            return "nothing open yet"
        if job.path is None:
            return "draft, not in a file yet" if job.dirty else "new, not in a file yet"
        return f"{job.path.name}, {'changed since it was saved' if job.dirty else 'saved'}"

    def lath_places(self) -> tuple[QRectF, ...]:
        """Return where the laths lie."""
        return lath_rects(QRectF(self.rect()), len(self.stages), self.place.theme)

    # --- hands ---

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the switches at the right."""
        units, lever = self.units.sizeHint(), self.lever.sizeHint()
        high = min(units.height(), self.height())
        top = (self.height() - high) // 2
        self.units.setGeometry(self.width() - units.width() - 10, top, units.width(), high)
        self.lever.setGeometry(self.units.x() - lever.width() - 10, top, lever.width(), high)

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
