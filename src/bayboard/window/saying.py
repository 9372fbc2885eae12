"""Changes said aloud, once they have come to rest: what was moved, which findings came, went or were cured.

Nothing is said while a stand-in is in the hand: one sentence after it rests.
"""

from collections.abc import Mapping

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QWidget

from bayboard.rules.check import Verdict
from bayboard.rules.finding import Finding
from bayboard.units.angle import show_angle
from bayboard.units.length import show_length
from bayboard.window import access
from bayboard.window.findings_panel import counted
from bayboard.window.measuring import reaches, tightest
from bayboard.window.read_out import severities, wall_parts, where
from bayboard.window.workplace import Key, Workplace, key_of

LISTEN = 400  # ms of rest after which a change is said
MOST = 2  # of the findings that come or go at once are said whole; more are counted
Stance = tuple[tuple[float, float], float]  # middle, and degrees turned


def stances(place: Workplace) -> dict[str, Stance]:
    """Return how each stand-in stands."""
    return {name: (piece.at, piece.gear.turn) for name, piece in place.scene.placed.items()}


def spoken(verdict: Verdict) -> dict[Key, Finding]:
    """Return the findings that were not let be, by what stays the same about them."""
    return {key_of(f): f for f in verdict.findings if f.let_be is None}


def moved_words(place: Workplace, before: Mapping[str, Stance]) -> str:
    """Return what is said of a stand-in that stands otherwise: "A2 33 in across, gap to B1 1/8 in, must 1".

    More than one are counted; "" when none does.
    """
    now = stances(place)
    moved = [name for name, stance in now.items() if name in before and before[name] != stance]
    if len(moved) != 1:
        return f"{len(moved)} stand-ins moved" if moved else ""
    name = moved[0]
    (was, turned), (at, turn) = before[name], now[name]
    told = [words for words, a, b in zip(where(place, name), was, at, strict=True) if a != b]
    told += [f"turned {show_angle(turn)}"] if turn != turned else []
    nearest = tightest(reaches(place.scene, {name}))
    if nearest is not None:
        to = f"gap to {nearest.other}" if nearest.other else "to the board's edge"
        told.append(f"{to} {show_length(nearest.long, place.units)}")
    told += severities(place, name)[:1]
    return f"{name} {', '.join(told)}"


def findings_words(before: Mapping[Key, Finding], verdict: Verdict) -> list[str]:
    """Return what is said of findings that came or went since, and how many there are then."""
    now = spoken(verdict)
    gone = [f"Cured: {f.says}" for key, f in before.items() if key not in now]
    come = [
        f"{'Now' if key in before else 'New'} {f.severity}: {f.says}"
        for key, f in now.items()
        if key not in before or before[key].severity != f.severity
    ]
    if not gone and not come:
        return []
    told = gone if len(gone) <= MOST else [f"{len(gone)} findings cured"]
    told = told + (come if len(come) <= MOST else [f"{len(come)} new findings"])
    return [*(one.rstrip(".") for one in told), counted(verdict) or "no findings"]


class Saying(QObject):
    """Listens to the workplace and speaks for it; it lives as long as the window."""

    def __init__(self, place: Workplace, widget: QWidget) -> None:
        super().__init__(widget)
        self.place = place
        self.widget = widget
        self.line = ""  # what the strip said since the last time
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(LISTEN)
        self._rest.timeout.connect(self.speak)
        place.opened.connect(self.begin_anew)
        place.changed.connect(self._rest.start)
        place.said.connect(self.take_line)
        place.looked.connect(self.point_out)
        self._selected: tuple[str, ...] = ()
        self.begin_anew()

    def begin_anew(self) -> None:
        """Know the vehicle that is on the Wall now."""
        self._stances, self._findings = stances(self.place), spoken(self.place.verdict)

    def point_out(self) -> None:
        """Have the stand-in read out that was walked to by keys."""
        place = self.place
        walked = (
            place.by_keys
            and len(place.selected) == 1
            and place.selected[0] in place.scene.placed
            and place.selected != self._selected
        )
        self._selected = place.selected
        if walked:
            access.point_at_part(self.widget, wall_parts(place).index(place.selected[0]))

    def take_line(self, line: str) -> None:
        """Say what the strip says, too."""
        self.line = line
        self._rest.start()

    def speak(self) -> None:
        """Say what is another since the last time; wait while something is in the hand."""
        place = self.place
        if place.hand.pieces:
            self._rest.start()
            return
        told = [self.line.rstrip(".")] if self.line else []
        self.line = ""
        if not place.first_start:
            moved = moved_words(place, self._stances)
            told += [moved] if moved else []
            told += findings_words(self._findings, place.verdict)
        self.begin_anew()
        if told:
            access.announce(self.widget, f"{'. '.join(told)}.")
