"""What a screen reader is told: each stand-in and each finding by its sentence, and changes said aloud.

Qt asks the factory for an interface the first time somebody reads the window; the interfaces are kept here,
because Qt keeps no hold on what Python made.
"""

from collections.abc import Callable, Sequence

from PySide6.QtCore import QObject, QRect
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QAccessibleInterface,
)
from PySide6.QtWidgets import QAccessibleWidget, QWidget

from bayboard.model.drilled import is_drilled
from bayboard.rules.finding import Finding, heads
from bayboard.units.length import show_length
from bayboard.window.bench_panel import BenchPanel
from bayboard.window.findings_list import FindingsList
from bayboard.window.findings_rows import WORDS
from bayboard.window.listed import Listed
from bayboard.window.made import drilled_words
from bayboard.window.marking import open_findings
from bayboard.window.picking import reading_order
from bayboard.window.steps import foot_of
from bayboard.window.wall_view import WallView
from bayboard.window.workplace import Workplace, key_of

Parts = Callable[[], Sequence[str]]


def piece_name(place: Workplace, name: str) -> str:
    """Return a stand-in's sentence: "A2 Deepwell, 33 in across, 6 11/16 in up, must 1"."""
    piece = place.scene.placed[name]
    foot, units = foot_of(piece.board), place.units
    across = show_length(piece.at[0] - foot[0], units)
    up = show_length(piece.at[1] - foot[1], units)
    told = [f"{name} {piece.card.name}", f"{across} across", f"{up} up"]
    if piece.gear.taped:
        told.append("taped down")
    if is_drilled(place.layout, name):
        told.append(drilled_words(place.layout, name))
    told += [f"{f.severity} {number}" for number, f in open_findings(place.verdict) if name in heads(f)]
    return ", ".join(told)


def finding_name(place: Workplace, finding: Finding) -> str:
    """Return a finding's sentence with its number and severity."""
    start = "Let be" if finding.let_be is not None else WORDS[finding.severity]
    return f"{start} {place.verdict.number(finding)}: {finding.says}"


class _Part(QAccessibleInterface):
    """One thing in a painted view."""

    def __init__(self, view: "_View", index: int) -> None:
        super().__init__()
        self.view = view
        self.index = index

    def isValid(self) -> bool:
        """Return whether the part is still there."""
        return self.index < len(self.view.names())

    def object(self) -> QObject | None:
        """Return None: a part is no widget."""
        return None

    def parent(self) -> QAccessibleInterface:
        """Return the view."""
        return self.view

    def child(self, index: int) -> QAccessibleInterface | None:
        """Return None: a part has no parts."""
        return None

    def childAt(self, x: int, y: int) -> QAccessibleInterface | None:
        """Return None: a part has no parts."""
        return None

    def childCount(self) -> int:
        """Return 0: a part has no parts."""
        return 0

    def indexOfChild(self, child: QAccessibleInterface) -> int:
        """Return -1: a part has no parts."""
        return -1

    def role(self) -> QAccessible.Role:
        """Return that it is an item of a list."""
        return QAccessible.Role.ListItem

    def rect(self) -> QRect:
        """Return its rectangle on the screen."""
        return self.view.rect_of(self.index) if self.isValid() else QRect()

    def text(self, what: QAccessible.Text) -> str:
        """Return its sentence."""
        named = what in (QAccessible.Text.Name, QAccessible.Text.Description) and self.isValid()
        return self.view.names()[self.index] if named else ""

    def setText(self, what: QAccessible.Text, text: str) -> None:
        """Leave it: a sentence is not written to."""

    def state(self) -> QAccessible.State:
        """Return whether it is selected."""
        state = QAccessible.State()
        state.selectable = True
        state.focusable = True
        if self.isValid() and self.view.holds(self.index):
            state.selected = True
            state.focused = True
        return state


class _View(QAccessibleWidget):
    """A painted view as a list of its parts."""

    def __init__(self, widget: QWidget, title: str) -> None:
        super().__init__(widget, QAccessible.Role.List, title)
        self.widget_seen = widget
        self.parts: list[_Part] = []

    def names(self) -> Sequence[str]:
        """Return the sentences of the parts, in order."""
        return ()

    def rect_of(self, index: int) -> QRect:
        """Return the rectangle of a part on the screen."""
        return QRect()

    def holds(self, index: int) -> bool:
        """Return whether a part is selected."""
        return False

    def childCount(self) -> int:
        """Return how many parts there are."""
        return len(self.names())

    def child(self, index: int) -> QAccessibleInterface | None:
        """Return a part, None past the last."""
        while len(self.parts) <= index < self.childCount():
            self.parts.append(_Part(self, len(self.parts)))
        return self.parts[index] if 0 <= index < self.childCount() else None

    def childAt(self, x: int, y: int) -> QAccessibleInterface | None:
        """Return the part at a place of the screen."""
        hit = (i for i in reversed(range(self.childCount())) if self.rect_of(i).contains(x, y))
        return self.child(next(hit, -1))

    def indexOfChild(self, child: QAccessibleInterface) -> int:
        """Return which part it is, -1 for none."""
        return self.parts.index(child) if child in self.parts else -1

    def _on_screen(self, rect: QRect) -> QRect:
        return QRect(self.widget_seen.mapToGlobal(rect.topLeft()), rect.size())


class _WallAccess(_View):
    """The Wall's stand-ins in reading order."""

    def __init__(self, wall: WallView) -> None:
        super().__init__(wall, "Wall")
        self.wall = wall

    def names(self) -> Sequence[str]:
        """Return the sentences of the parts, in order."""
        return [piece_name(self.wall.place, name) for name in reading_order(self.wall.place.scene)]

    def rect_of(self, index: int) -> QRect:
        """Return the rectangle of a part on the screen."""
        place = self.wall.place
        piece = place.scene.placed[reading_order(place.scene)[index]]
        return self._on_screen(place.scale.box(piece.box).toAlignedRect())

    def holds(self, index: int) -> bool:
        """Return whether a part is selected."""
        return reading_order(self.wall.place.scene)[index] in self.wall.place.selected


class _FindingsAccess(_View):
    """The rows of the Findings."""

    def __init__(self, rows: FindingsList) -> None:
        super().__init__(rows, "Findings")
        self.rows = rows

    def names(self) -> Sequence[str]:
        """Return the sentences of the parts, in order."""
        return [finding_name(self.rows.place, row.finding) for row in self.rows.rows() if not row.cured]

    def rect_of(self, index: int) -> QRect:
        """Return the rectangle of a part on the screen."""
        found = [spot for spot in self.rows.spots() if not spot.row.cured]
        return self._on_screen(found[index].rect.toAlignedRect())

    def holds(self, index: int) -> bool:
        """Return whether a part is selected."""
        found = [row.finding for row in self.rows.rows() if not row.cured]
        return key_of(found[index]) == self.rows.place.finding


class _BenchAccess(_View):
    """What waits on the ledge."""

    def __init__(self, bench: BenchPanel) -> None:
        super().__init__(bench, "Bench")
        self.bench = bench

    def names(self) -> Sequence[str]:
        """Return the sentences of the parts, in order."""
        layout = self.bench.layout_now()
        gear = {piece.id: layout.cards[piece.card].name for piece in layout.gear}
        spots = enumerate(self.bench.places(), start=1)
        return [f"{spot.gear} {gear[spot.gear]}, waiting, number {number}" for number, spot in spots]

    def rect_of(self, index: int) -> QRect:
        """Return the rectangle of a part on the screen."""
        return self._on_screen(self.bench.places()[index].rect.toAlignedRect())

    def holds(self, index: int) -> bool:
        """Return whether a part is selected."""
        return self.bench.places()[index].gear in self.bench.place.selected


class _ListedAccess(_View):
    """A view that says itself what it holds."""

    def __init__(self, view: QWidget, listed: Listed) -> None:
        super().__init__(view, listed.reads_as)
        self.listed = listed

    def names(self) -> Sequence[str]:
        """Return the sentences of the parts, in order."""
        return self.listed.parts_said()

    def rect_of(self, index: int) -> QRect:
        """Return the rectangle of a part on the screen."""
        return self._on_screen(self.listed.part_rect(index).toAlignedRect())

    def holds(self, index: int) -> bool:
        """Return whether a part is selected."""
        return self.listed.part_held(index)


_KEPT: dict[int, _View] = {}


def interface_for(_class_name: str, thing: QObject) -> QAccessibleInterface | None:
    """Return the interface of a view that paints what it holds; anything else has Qt's own."""
    made: _View | None = None
    if isinstance(thing, WallView):
        made = _WallAccess(thing)
    elif isinstance(thing, FindingsList):
        made = _FindingsAccess(thing)
    elif isinstance(thing, BenchPanel):
        made = _BenchAccess(thing)
    elif isinstance(thing, Listed) and isinstance(thing, QWidget):
        made = _ListedAccess(thing, thing)
    if made is not None:
        _KEPT[id(thing)] = made
    return made


def announce(widget: QWidget, words: str) -> None:
    """Say a change aloud where somebody listens."""
    if QAccessible.isActive():
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(widget, words))
