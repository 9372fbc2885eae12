"""The workplace in one widget: strip, Wall, Section, tapes, Bench, Findings, Card, and the keys."""

import time
from contextlib import suppress
from itertools import pairwise
from pathlib import Path

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QKeyEvent
from PySide6.QtWidgets import QApplication, QWidget

from bayboard.edits.set_units import SetUnits
from bayboard.rules.finding import Finding
from bayboard.window.acts import Acts
from bayboard.window.bench_panel import BenchPanel
from bayboard.window.card_panel import CardPanel
from bayboard.window.files import Files
from bayboard.window.findings_panel import FindingsPanel
from bayboard.window.floor import Floor
from bayboard.window.help_sheet import HelpSheet
from bayboard.window.in_hand import InHand
from bayboard.window.joined import Joined
from bayboard.window.keeping.naming import Naming
from bayboard.window.keeping.note_line import AskedLine, NameLine, NoteLine
from bayboard.window.key_acts import KeyActs
from bayboard.window.keys import act_of, digit
from bayboard.window.last import aside_folder
from bayboard.window.menu import ContextMenu
from bayboard.window.narrow import Narrow
from bayboard.window.notice import Notice
from bayboard.window.pull import Pull
from bayboard.window.saying import Saying
from bayboard.window.section_view import SectionView
from bayboard.window.stages import ARRANGE, Panes
from bayboard.window.strip import Strip
from bayboard.window.tapes import FootTape, HangingTape
from bayboard.window.theme import Theme, palette
from bayboard.window.wall_view import WallView
from bayboard.window.wishing import Wishing
from bayboard.window.workplace import Workplace


class MainWindow(Floor):
    """Everything on screen.  It makes the parts and passes on what is pressed."""

    closing = Signal()  # nothing keeps the window any longer

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.place = place
        self.acts = Acts(place, _milliseconds)
        self.strip = Strip(place, (ARRANGE,), self)
        self.wall = WallView(place, self)
        self.wall.walk = self.acts.walk
        self.hanging, self.foot = HangingTape(place, self), FootTape(place, self)
        self.section = SectionView(place, self)
        self.bench = BenchPanel(place, self.wall, self)
        self.findings = FindingsPanel(place, self)
        self.card = CardPanel(place, self)
        self.pull = Pull(self, self)
        self.notice = Notice(place.theme, self)
        self.help = HelpSheet(place.theme, self)
        self.in_hand = InHand(self.bench, self)
        self.note_line = NoteLine(place.theme, self)
        self.name_line = NameLine(place.theme, self)
        self.lines: tuple[AskedLine, ...] = (self.note_line, self.name_line)
        self.naming = Naming(place, self.name_line)
        self.menu = ContextMenu(place, self)
        self.files = Files(place, self.notice, self.note_line, self)
        self.wishing = Wishing(self, self)
        self.narrow = Narrow(self, self)
        arrange = Panes(ARRANGE, self.wall, self.section, self.bench, self.findings, self.card)
        self.panes: dict[str, Panes] = {ARRANGE.name: arrange}
        self.stage = ARRANGE.name
        self.stage_before = ARRANGE.name  # the stage that a mode without a lath goes back to
        self.help.tell(self.stage, arrange.keys())
        self.key_acts = KeyActs(self)
        self.saying = Saying(place, self.wall)
        self._connect()
        self.joined = Joined(self)
        self.setAcceptDrops(True)
        self.setFocusProxy(self.wall)
        self._order_tabs()
        self.name_window()

    def _connect(self) -> None:
        place, card = self.place, self.card
        place.changed.connect(self.name_window)
        place.opened.connect(self._begin_anew)
        place.refused.connect(self.notice.tell)
        self.strip.lever_wanted.connect(place.set_lever)
        self.strip.units_wanted.connect(self._set_units)
        self.strip.staged.connect(self.show_stage)
        self.strip.settings_wanted.connect(self.wishing.open)
        self.wall.menu_wanted.connect(self._open_menu)
        self.wall.finding_pressed.connect(self._go_to_number)
        self.findings.list.menu_wanted.connect(self._open_finding_menu)
        self.menu.chosen.connect(self._do_line)
        self.findings.chosen.connect(self._go_to)
        self.findings.list.stage_wanted.connect(self.show_stage)
        self.bench.hang_wanted.connect(self.acts.hang)
        self.bench.menu_wanted.connect(self._open_menu)
        card.hang_wanted.connect(self.acts.hang)
        card.tape_wanted.connect(self.acts.tape)
        card.left.connect(self._leave_card)
        self.help.left.connect(self.to_wall)
        card.open_wanted.connect(self._open_vehicle)
        card.example_wanted.connect(self.files.example)
        card.new_wanted.connect(self.files.new)
        self.files.closed.connect(self.closing)
        self.files.begun.connect(self.naming.ask)
        self.notice.answered.connect(self.to_wall)

    def _order_tabs(self) -> None:
        card = self.card
        stops = (
            self.wall,
            self.pull.seen.rows,
            self.bench,
            self.findings.list,
            self.findings.foot,
            *card.fields,
            card.tape,
            card.hang,
        )
        order = (*stops, *card.begin, self.strip, self.strip.lever, self.strip.units, self.strip.settings)
        for a, b in pairwise(order):
            QWidget.setTabOrder(a, b)

    # --- looks ---

    def dress(self, theme: Theme) -> None:
        """Wear a theme, all parts alike."""
        self.place.set_theme(theme)
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.setPalette(palette(theme))
        for part in (self.strip, self.findings, self.card, *self.panes.values()):
            part.dress()
        self.notice.dress(theme)
        for line in self.lines:
            line.dress(theme)
        self.help.theme = theme
        self.wishing.dress(theme)
        self.narrow.dress(theme)
        self.pull.dress()
        self.lay_out()
        self.update()

    def name_window(self) -> None:
        """Put the vehicle's name, and whether all of it is written, over the window."""
        name = "Bayboard" if self.place.first_start else f"{self.place.shown.vehicle.name}[*] · Bayboard"
        self.window().setWindowTitle(name)
        self.window().setWindowModified(self.place.job.dirty and not self.place.first_start)

    # --- what the parts ask for ---

    def _begin_anew(self) -> None:
        self.bench.number, self.bench.scrolled, self.bench.current = "", 0.0, None
        self.to_wall()

    def _leave_card(self) -> None:
        self.narrow.close_card()
        self.to_wall()

    def _open_vehicle(self) -> None:
        """Show the shelf, where there is one; else choose a file."""
        if "Shelf" in self.panes:
            self.show_stage("Shelf")
        else:
            self.files.open()

    def _set_units(self, units: str) -> None:
        self.place.do(SetUnits("in" if units == "in" else "mm"))

    def _open_menu(self, at: QPoint) -> None:
        self.menu.open_at(at)

    def _open_finding_menu(self, at: QPoint) -> None:
        self.menu.open_with(at, self.findings.list.menu_lines())

    def _go_to(self, finding: Finding) -> None:
        if self.stage != ARRANGE.name:
            self.show_stage(ARRANGE.name)
        self.acts.go_to(finding)

    def _go_to_number(self, number: int) -> None:
        found = (f for f in self.place.verdict.findings if self.place.verdict.number(f) == number)
        finding = next(found, None)
        if finding is not None:
            self.acts.go_to(finding)

    def may_close(self) -> bool:
        """Return whether the window may go; else unsaved changes are asked about first."""
        self.call_off()
        return self.files.may_close()

    def set_aside(self) -> Path:
        """Bring the draft into its file and save it aside as well, because something broke."""
        with suppress(Exception):  # whatever broke may break here, too
            self.files.keeper.write()
        return self.place.job.set_aside(aside_folder())

    # --- keys ---

    def do_act(self, name: str) -> None:
        """Do an act by its name in `keys.BINDINGS`: the stage's own way first."""
        if not self.panes[self.stage].act(name):
            self.key_acts.do(name)

    def _do_line(self, name: str) -> None:
        """Do a line of a menu: an act, or what a finding's row offers."""
        if not self.findings.list.do_word(name):
            self.do_act(name)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Do what a key means here; fields have taken theirs before."""
        figure, act = digit(event), act_of(event)
        if figure and self.stage == ARRANGE.name:
            self.key_acts.figure(figure)
        elif act is not None:
            self.do_act(act)
        else:
            self._to_stage(event)

    def _to_stage(self, event: QKeyEvent) -> None:
        number = event.key() - Qt.Key.Key_0
        found = [stage for stage in self.strip.stages if stage.key == number]
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier and found:
            self.show_stage(found[0].name)
        else:
            event.ignore()

    # --- files dropped from outside ---

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take a file."""
        if any(url.isLocalFile() for url in event.mimeData().urls()):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Open the first file that is dropped."""
        files = [url.toLocalFile() for url in event.mimeData().urls() if url.isLocalFile()]
        if files:
            event.acceptProposedAction()
            self.files.open_path(Path(files[0]))


def _milliseconds() -> float:
    return time.monotonic() * 1000.0
