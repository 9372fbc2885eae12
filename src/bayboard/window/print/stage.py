"""The Print stage: what it brings into the window, and its own meaning of the keys."""

from itertools import pairwise
from typing import Protocol

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget

from bayboard.job.runner import Runner
from bayboard.window.beside import Beside
from bayboard.window.print.desk import PrintDesk
from bayboard.window.print.page_view import PageView
from bayboard.window.print.print_card import PrintCard
from bayboard.window.print.sheets_view import SheetsView
from bayboard.window.print.stacks import StacksPanel
from bayboard.window.stages import ARRANGE, Panes, Stage
from bayboard.window.workplace import Workplace

PRINT = Stage("Print", 5)
SIDES = {"left": "left", "right": "right", "up": "above", "down": "below"}
# what changes the layout unseen is no act of this stage: the pieces lie under paper
ASLEEP = frozenset(("turn", "turn_back", "tape", "to_bench", "chalk", "chalk_pointer", "hang", "let_be"))
FAR = frozenset(("far_left", "far_right", "far_up", "far_down"))
KEYS = (
    ("Arrows", "take the sheet beside, above or below in hand"),
    ("Tab, Shift Tab", "walk the sheets in taping order"),
    ("Space", "on a stack: print it, or leave it out"),
    ("Enter", "to the button, then make the PDF"),
    ("Wheel", "look closer at the wall or the sheet"),
    ("Drag", "push the picture"),
    ("+, −, 0", "larger, smaller, whole"),
    ("U", "inches or mm"),
    ("Ctrl Z, Ctrl Shift Z", "undo, redo"),
    ("K", "keep a revision"),
    ("Ctrl D", "drill day"),
    ("F6, Shift F6", "to the next part of the window"),
    ("Esc", "back to Arrange"),
)


class Window(Protocol):
    """What the stage needs of the window."""

    place: Workplace
    wall: QWidget
    bench: QWidget
    strip: QWidget

    def add_stage(self, panes: Panes, before: str | None = None) -> None:
        """Show one stage more."""

    def show_stage(self, name: str) -> None:
        """Bring a stage's widgets to their places."""


class PrintStage(Panes):
    """The stage's widgets, joined to one desk."""

    def __init__(self, window: Window, runner: Runner | None = None) -> None:
        parent = window if isinstance(window, QWidget) else None
        self.window = window
        self.runner = runner or Beside(parent)
        self.desk = PrintDesk(window.place, self.runner)
        self.sheets = SheetsView(self.desk, parent)
        self.page = PageView(self.desk, parent)
        self.stacks = StacksPanel(self.desk, parent)
        self.print_card = PrintCard(self.desk, parent)
        super().__init__(PRINT, self.sheets, self.page, self.stacks, None, self.print_card)
        self.print_card.left.connect(self.to_sheets)
        self.print_card.drill_day_wanted.connect(self._to_drill_day)
        if isinstance(self.runner, Beside):
            self.runner.broke.connect(self.desk.broke)
            app = QApplication.instance()
            if app is not None:
                app.aboutToQuit.connect(self.runner.close)

    def shown(self) -> None:
        """Lay the sheets out now that they are looked at."""
        self.desk.show(True)

    def left(self) -> None:
        """Rest while another stage is on screen."""
        self.desk.show(False)

    def dress(self) -> None:
        """Wear the workplace's colours."""
        self.print_card.dress()
        self.stacks.slip.dress()
        for view in (self.sheets, self.page, self.stacks):
            view.update()

    def to_sheets(self) -> None:
        """Give the keys to the sheets."""
        self.sheets.setFocus(Qt.FocusReason.OtherFocusReason)

    def act(self, name: str) -> bool:
        """Do what a key means while sheets are looked at."""
        if name in ASLEEP or name in FAR:
            return True
        if name in SIDES:
            self.desk.step(SIDES[name])
        elif name in ("enter", "print"):
            self._to_button()
        elif name == "escape":
            self.window.show_stage(ARRANGE.name)
        elif name in ("pane", "last_pane"):
            self._pane(1 if name == "pane" else -1)
        else:
            return False
        return True

    def keys(self) -> tuple[tuple[str, str], ...]:
        """Return the lines of F1."""
        return KEYS

    def _to_drill_day(self) -> None:
        self.window.show_stage("Drill day")

    def _to_button(self) -> None:
        self.print_card.make.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def _pane(self, by: int) -> None:
        """Give the keys to the next part of the window, round about."""
        findings = getattr(getattr(self.window, "findings", None), "list", None)
        stops = [self.sheets, self.page, self.stacks, findings, self.print_card.paper, self.window.strip]
        there = [w for w in stops if w is not None and w.isVisible()]
        now = QApplication.focusWidget()
        inside = [w is now or (now is not None and w.isAncestorOf(now)) for w in there]
        if now is not None and self.print_card.isAncestorOf(now):
            inside = [w is self.print_card.paper for w in there]
        here = inside.index(True) if True in inside else -1
        there[(here + by) % len(there)].setFocus(Qt.FocusReason.ShortcutFocusReason)

    def order_tabs(self) -> None:
        """Stand in the window's round of Tab where the stage's panels stand on screen."""
        QWidget.setTabOrder(self.window.wall, self.sheets)
        QWidget.setTabOrder(self.sheets, self.page)
        QWidget.setTabOrder(self.window.bench, self.stacks)
        QWidget.setTabOrder(self.stacks, self.stacks.slip.switch)
        stops = self.print_card.stops
        for a, b in pairwise(stops):
            QWidget.setTabOrder(a, b)
        QWidget.setTabOrder(stops[-1], self.window.strip)


def add_print(window: Window, runner: Runner | None = None) -> PrintStage:
    """Bring the Print stage into a window; `runner` left out, the work is done in a process of its own."""
    stage = PrintStage(window, runner)
    window.add_stage(stage)
    stage.order_tabs()
    return stage
