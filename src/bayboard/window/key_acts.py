"""The acts that the keys and menus name, done to the window."""

from collections.abc import Callable
from typing import Protocol

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget

from bayboard.rules.finding import heads
from bayboard.window.acts import Acts
from bayboard.window.bench_panel import BenchPanel
from bayboard.window.card_panel import CardPanel
from bayboard.window.files import Files
from bayboard.window.findings_panel import FindingsPanel
from bayboard.window.floor_plan import FloorPlan
from bayboard.window.help_sheet import HelpSheet
from bayboard.window.keeping.naming import Naming
from bayboard.window.menu import finding_to_leave
from bayboard.window.narrow import Narrow
from bayboard.window.pull import Pull
from bayboard.window.strip import KEPT, SHELF, Strip
from bayboard.window.wishing import Wishing
from bayboard.window.workplace import Workplace

ZOOM = 1.2  # of one press of + or -


class Parts(Protocol):
    """What the acts need of the window."""

    place: Workplace
    acts: Acts
    bench: BenchPanel
    card: CardPanel
    findings: FindingsPanel
    section: QWidget
    strip: Strip
    files: Files
    help: HelpSheet
    naming: Naming
    wishing: Wishing
    narrow: Narrow
    pull: Pull

    def to_wall(self) -> None:
        """Give the keys to the Wall."""

    def call_off(self) -> bool:
        """End a gesture without effect; return whether there was one."""

    def close_lines(self) -> bool:
        """Close the line that asks for words; return whether there was one."""

    def plan(self) -> FloorPlan:
        """Return where the parts lie."""

    def show_stage(self, name: str) -> None:
        """Bring a stage's widgets to their places."""

    def window(self) -> QWidget:
        """Return the top-level window."""


class KeyActs:
    """One method or line for each act."""

    def __init__(self, parts: Parts) -> None:
        self.parts = parts
        acts, place, files = parts.acts, parts.place, parts.files
        self._simple: dict[str, Callable[[], object]] = {
            "tape": acts.tape,
            "to_bench": self._to_bench,
            "put_back": acts.put_back_drilled,
            "new_holes": acts.plan_new_holes,
            "chalk": acts.chalk_here,
            "chalk_pointer": acts.chalk_here,
            "lever": acts.flip_lever,
            "measure": acts.measure,
            "follow": acts.follow,
            "units": acts.other_units,
            "undo": self._undo,
            "redo": self._redo,
            "whole": place.fit,
            "open": files.open,
            "save": lambda: self._asked(files.save),
            "keep": lambda: self._asked(files.keep),
            "name": lambda: self._asked(parts.naming.ask),
            "kept": lambda: parts.show_stage(KEPT),
            "shelf": self._shelf,
            "drill_day": lambda: parts.show_stage("Drill day"),
            "save_as": files.save_copy,
            "new": files.new,
            "enter": self._enter,
            "hang": self._enter,
            "escape": self._escape,
            "print": self._print,
            "help": self._help,
            "settings": parts.wishing.open,
            "slide": parts.narrow.slide_section,
            "wide": parts.pull.toggle,
            "colours": parts.wishing.other_colours,
            "let_be": self._let_be,
        }
        self._with: dict[str, tuple[Callable[..., object], tuple[object, ...]]] = {
            "left": (acts.nudge, (-1, 0)),
            "right": (acts.nudge, (1, 0)),
            "up": (acts.nudge, (0, 1)),
            "down": (acts.nudge, (0, -1)),
            "far_left": (acts.nudge, (-1, 0, True)),
            "far_right": (acts.nudge, (1, 0, True)),
            "far_up": (acts.nudge, (0, 1, True)),
            "far_down": (acts.nudge, (0, -1, True)),
            "turn": (acts.turn, (90.0,)),
            "turn_back": (acts.turn, (-90.0,)),
            "next_finding": (self._next_finding, (1,)),
            "last_finding": (self._next_finding, (-1,)),
            "zoom_in": (place.zoom, (ZOOM,)),
            "zoom_out": (place.zoom, (1 / ZOOM,)),
            "scale_up": (parts.wishing.larger, (1,)),
            "scale_down": (parts.wishing.larger, (-1,)),
            "pane": (self._pane, (1,)),
            "last_pane": (self._pane, (-1,)),
        }

    def do(self, name: str) -> None:
        """Do an act by its name; nothing is changed while something is in the hand but by Escape."""
        if name == "close":
            self.parts.window().close()
        elif name in self._simple:
            self._simple[name]()
        elif name in self._with:
            act, words = self._with[name]
            act(*words)

    def _asked(self, ask: Callable[[], object]) -> None:
        """Ask for words in place of what is asked for now."""
        self.parts.close_lines()
        ask()

    def figure(self, figure: str) -> None:
        """Take a typed figure: an exact place for what is selected, else a number on the bench."""
        bench, card = self.parts.bench, self.parts.card
        if bench.number == "" and card.pieces():
            self.parts.narrow.open_card()
            card.type_in(figure)
            return
        if figure == "0" and not bench.number:
            self.parts.place.fit()
            return
        bench.number = (bench.number + figure)[:3]
        bench.update()

    def _enter(self) -> None:
        parts, number = self.parts, self.parts.bench.number
        if number:
            self._clear_number()
            parts.acts.hang_number(int(number))
            parts.to_wall()
        elif self._speaks_of_selected() and parts.findings.list.cure_now():
            return
        elif self._speaks_of_selected() and parts.findings.still_looking():
            parts.place.said.emit("Still looking for a move. Press Enter again in a moment.")
        elif parts.card.pieces():
            parts.narrow.open_card()
            parts.card.across.setFocus(Qt.FocusReason.ShortcutFocusReason)
        elif parts.card.waiting():
            parts.acts.hang(parts.card.waiting() or "")

    def _speaks_of_selected(self) -> bool:
        """Return whether the finding spoken of is about what is selected: Enter is for it."""
        place = self.parts.place
        spoken = place.spoken_of()
        return spoken is not None and not set(place.selected).isdisjoint(heads(spoken))

    def _escape(self) -> None:
        if self.parts.call_off():
            return
        if self.parts.close_lines():
            return
        if self.parts.bench.number:
            self._clear_number()
            return
        if self.parts.narrow.close_card():
            return
        self.parts.acts.put_down()
        self.parts.to_wall()

    def _clear_number(self) -> None:
        self.parts.bench.number = ""
        self.parts.bench.update()

    def _to_bench(self) -> None:
        bench = self.parts.bench
        if bench.number:
            bench.number = bench.number[:-1]
            bench.update()
        else:
            self.parts.acts.to_bench()

    def _undo(self) -> None:
        if not self.parts.call_off():
            self.parts.place.undo()

    def _redo(self) -> None:
        if not self.parts.call_off():
            self.parts.place.redo()

    def _shelf(self) -> None:
        """Show the shelf; a window without one asks for a file."""
        if self.parts.strip.offers(SHELF):
            self.parts.show_stage(SHELF)
        else:
            self.parts.files.open()

    def _print(self) -> None:
        self.parts.show_stage("Print")

    def _help(self) -> None:
        plan = self.parts.plan()
        self.parts.help.show_in(plan.wall, plan.wall.united(plan.card).united(plan.bench))

    def _let_be(self) -> None:
        found = finding_to_leave(self.parts.place)
        if found is not None:
            self.parts.findings.list.ask(found[1])

    def _next_finding(self, by: int) -> None:
        """Speak of the next finding; the bench gives the keys away, for Enter is the cure's then."""
        self.parts.acts.next_finding(by)
        if self.parts.bench.hasFocus():
            self.parts.to_wall()

    def _pane(self, by: int) -> None:
        """Give the keys to the next part of the window, round about."""
        card = self.parts.card
        first = next((w for w in (*card.fields, card.hang, *card.begin) if w.isVisibleTo(card)), None)
        parts = self.parts
        stops = [parts.bench.wall, parts.section, parts.bench, parts.findings.list, first, parts.strip]
        there = [w for w in stops if w is not None and w.isVisible()]
        now = QApplication.focusWidget()
        here = next((i for i, w in enumerate(there) if w is now or w.isAncestorOf(now)), -1)
        there[(here + by) % len(there)].setFocus(Qt.FocusReason.ShortcutFocusReason)
