"""The floor of the window: which stage is on screen, and where its parts lie."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from bayboard.window.bench_panel import BenchPanel
from bayboard.window.draw.section import section_ground
from bayboard.window.files import Files
from bayboard.window.floor_plan import FloorPlan
from bayboard.window.help_sheet import HelpSheet
from bayboard.window.in_hand import InHand
from bayboard.window.keeping.note_line import AskedLine
from bayboard.window.narrow import Narrow
from bayboard.window.notice import Notice
from bayboard.window.pull import Pull
from bayboard.window.section_view import SectionView
from bayboard.window.stages import ARRANGE, Panes
from bayboard.window.strip import Strip
from bayboard.window.tapes import FootTape, HangingTape
from bayboard.window.theme import brush
from bayboard.window.wall_view import WallView
from bayboard.window.wishing import Wishing
from bayboard.window.workplace import Workplace


class Floor(QWidget):
    """Brings each stage's parts to their places.  Subclasses make the parts."""

    place: Workplace
    strip: Strip
    wall: WallView
    hanging: HangingTape
    foot: FootTape
    section: SectionView
    bench: BenchPanel
    pull: Pull
    notice: Notice
    help: HelpSheet
    in_hand: InHand
    lines: tuple[AskedLine, ...]
    files: Files
    wishing: Wishing
    narrow: Narrow
    panes: dict[str, Panes]
    stage: str
    stage_before: str  # the stage that a mode without a lath goes back to

    def add_stage(self, panes: Panes, before: str | None = None, lath: bool = True) -> None:
        """Show one stage more on the strip, after those there are or before the one named.

        Without a `lath` it is a mode beside the stages: `show_stage` brings it, `leave_mode` ends it.
        """
        stages = list(self.strip.stages)
        names = [stage.name for stage in stages]
        if lath:
            stages.insert(names.index(before) if before in names else len(stages), panes.stage)
        self.strip.stages = tuple(stages)
        self.panes[panes.stage.name] = panes
        self.strip.offer(panes.stage.name)
        self.show_stage(self.stage)

    def show_stage(self, name: str) -> None:
        """Bring a stage's widgets to their places."""
        if name not in self.panes:
            return
        self.call_off()
        before, self.stage = self.stage, name
        if name != before:
            self.close_lines()
            self.files.keeper.write()
        if any(stage.name == name for stage in self.strip.stages):
            self.stage_before = name
            self.strip.show_stage(name)
        self.place.listen_to(self.panes[name].stage.rooms or self.place.rooms)
        self.help.tell(name, self.panes[name].keys())
        self.strip.of_mode = self.panes[name].state
        shown = self._here()
        self.foot.chalked = self.section in shown
        for widget in shown:
            widget.show()
        self.lay_out()
        if name != before:
            self.panes[before].left()
            if not self.strip.hasFocus():
                self.to_wall()  # before the widget that has the keys is hidden
        for panes in self.panes.values():
            for widget in (panes.wall, panes.section, panes.bench, panes.findings, panes.card):
                if widget is not None and widget not in shown:
                    widget.hide()
        self.panes[name].shown()
        self.strip.follow()

    def leave_mode(self) -> None:
        """Go from a mode without a lath back to the stage before it."""
        self.show_stage(self.stage_before)

    def _here(self) -> tuple[QWidget, ...]:
        """Return the widgets of the five places in the stage on screen."""
        now, arrange = self.panes[self.stage], self.panes[ARRANGE.name]
        pairs = (
            (getattr(now, n), getattr(arrange, n)) for n in ("wall", "section", "bench", "findings", "card")
        )
        wall, section, bench, findings, card = (own if own is not None else usual for own, usual in pairs)
        return self.pull.instead((wall, section, bench, bench if now.wide else findings, card))

    def to_wall(self) -> None:
        """Give the keys to the Wall."""
        self._here()[0].setFocus(Qt.FocusReason.OtherFocusReason)

    def call_off(self) -> bool:
        """End a gesture without effect; return whether there was one."""
        return self.wall.call_off() or self.bench.call_off()

    # --- where the parts lie ---

    def close_lines(self) -> bool:
        """Close the line that asks for words, nothing kept; return whether there was one."""
        asked = [line for line in self.lines if line.isVisible()]
        for line in asked:
            line.close_line()
        return bool(asked)

    def plan(self) -> FloorPlan:
        """Return where the parts lie."""
        here = self.panes[self.stage].section in (None, self.section)
        return self.pull.planned(self.narrow.planned(self.panes[self.stage].panels()), here)

    def lay_out(self) -> None:
        """Put all parts in their places."""
        plan = self.plan()
        shown = wall, section, bench, findings, card = self._here()
        for widget, rect in (
            (self.strip, plan.strip),
            (wall, plan.wall),
            (self.hanging, plan.hanging),
            (self.foot, plan.foot),
            (section, plan.section),
            (findings, plan.findings),
            (bench, plan.bench.united(plan.findings) if bench is findings else plan.bench),
            (card, plan.card),
            (self.in_hand, self.rect()),
        ):
            widget.setGeometry(rect)
        if plan.slides:
            self.hanging.raise_()
            section.raise_()
        self.pull.lay_out(plan, shown)
        self.narrow.share(plan, section, findings, card)
        self.place.set_wall_rect(QRectF(QPointF(), plan.wall.size().toSizeF()), self.pull.usual)
        self.place.ledge_rect = plan.bench.translated(-plan.wall.topLeft()).toRectF()
        self.notice.lay(plan.wall)
        for line in self.lines:
            line.lay(plan.wall)
        self.wishing.lay(plan.strip)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Place the parts anew."""
        self.lay_out()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the ground between the panels."""
        with QPainter(self) as p:
            p.fillRect(event.rect(), brush(self.place.theme.bench))
            p.fillRect(self.plan().section, brush(section_ground(self.place.theme)))
