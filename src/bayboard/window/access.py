"""What a screen reader is told: each stand-in and each finding by its sentence, and changes said aloud.

Qt asks the factory for an interface the first time somebody reads the window; the interfaces are kept here,
because Qt keeps no hold on what Python made.
"""

from collections.abc import Sequence

from PySide6.QtCore import QObject, QRect
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QAccessibleEvent,
    QAccessibleInterface,
)
from PySide6.QtWidgets import QAccessibleWidget, QWidget

from bayboard.window.bench_panel import BenchPanel
from bayboard.window.controls import Switch
from bayboard.window.findings_list import FindingsList
from bayboard.window.findings_rows import Fold, Row
from bayboard.window.listed import Listed
from bayboard.window.read_out import box_on_wall, line_name, wall_names, wall_parts
from bayboard.window.wall_view import WallView
from bayboard.window.workplace import key_of


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
        """Return what it is in its view: an item of a list, a word of a switch."""
        return self.view.of_parts

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
        if not self.isValid() or not self.view.selects(self.index):
            return state
        state.selectable = True
        state.focusable = True
        state.checkable = self.view.of_parts == QAccessible.Role.RadioButton
        if self.view.holds(self.index):
            state.selected = True
            state.focused = self.view.widget_seen.hasFocus()
            state.checked = state.checkable
        return state


class _View(QAccessibleWidget):
    """A painted view as a list of its parts."""

    of_parts = QAccessible.Role.ListItem

    def __init__(self, widget: QWidget, title: str, role: QAccessible.Role = QAccessible.Role.List) -> None:
        super().__init__(widget, role, title)
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

    def selects(self, index: int) -> bool:
        """Return whether a part can be selected."""
        return True

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
    """The Wall's stand-ins in reading order, then its leads and its fixings."""

    def __init__(self, wall: WallView) -> None:
        super().__init__(wall, "Wall")
        self.wall = wall

    def names(self) -> Sequence[str]:
        """Return the sentences of the parts, in order."""
        return wall_names(self.wall.place)

    def rect_of(self, index: int) -> QRect:
        """Return the rectangle of a part on the screen."""
        place = self.wall.place
        box = box_on_wall(place, wall_parts(place)[index])
        return self._on_screen(place.scale.box(box).toAlignedRect())

    def holds(self, index: int) -> bool:
        """Return whether a part is selected."""
        return wall_parts(self.wall.place)[index] in self.wall.place.selected

    def selects(self, index: int) -> bool:
        """Return whether a part can be selected: a stand-in."""
        return wall_parts(self.wall.place)[index] in self.wall.place.scene.placed


class _FindingsAccess(_View):
    """The lines of the Findings: what shouts, the folded stages, what was let be."""

    def __init__(self, rows: FindingsList) -> None:
        super().__init__(rows, "Findings")
        self.rows = rows

    def _lines(self) -> list[Row | Fold]:
        return [line for line in self.rows.lines() if isinstance(line, Fold) or not line.cured]

    def names(self) -> Sequence[str]:
        """Return the sentences of the parts, in order."""
        return [line_name(self.rows.place, line) for line in self._lines()]

    def rect_of(self, index: int) -> QRect:
        """Return the rectangle of a part on the screen."""
        found = [s for s in self.rows.spots() if isinstance(s.row, Fold) or not s.row.cured]
        return self._on_screen(found[index].rect.toAlignedRect())

    def holds(self, index: int) -> bool:
        """Return whether a part is selected."""
        line = self._lines()[index]
        return isinstance(line, Row) and key_of(line.finding) == self.rows.place.finding


class _SwitchAccess(_View):
    """A switch: its words, of which one holds."""

    of_parts = QAccessible.Role.RadioButton

    def __init__(self, switch: Switch) -> None:
        super().__init__(switch, switch.accessibleName(), QAccessible.Role.Grouping)
        self.switch = switch

    def names(self) -> Sequence[str]:
        """Return the words."""
        return self.switch.words

    def rect_of(self, index: int) -> QRect:
        """Return the rectangle of a word on the screen."""
        return self._on_screen(self.switch.halves()[index].toAlignedRect())

    def holds(self, index: int) -> bool:
        """Return whether a word holds."""
        return self.switch.words[index] == self.switch.held


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
    elif isinstance(thing, Switch):
        made = _SwitchAccess(thing)
    elif isinstance(thing, Listed) and isinstance(thing, QWidget):
        made = _ListedAccess(thing, thing)
    if made is not None:
        _KEPT[id(thing)] = made
    return made


def announce(widget: QWidget, words: str) -> None:
    """Say a change aloud where somebody listens."""
    if QAccessible.isActive():
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(widget, words))


def point_at_part(widget: QWidget, index: int) -> None:
    """Tell where the keys are within a painted view."""
    if QAccessible.isActive():
        event = QAccessibleEvent(widget, QAccessible.Event.Focus)
        event.setChild(index)
        QAccessible.updateAccessibility(event)
