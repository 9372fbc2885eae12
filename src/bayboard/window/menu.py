"""The context menu of a stand-in or of the bare Wall: seven lines at most, each with its key at the right."""

from collections.abc import Sequence

from PySide6.QtCore import QPoint, QRectF, Qt, Signal
from PySide6.QtGui import QAction, QPainter, QPaintEvent
from PySide6.QtWidgets import QMenu, QWidget

from bayboard.model.drilled import is_drilled
from bayboard.rules.finding import Finding, heads
from bayboard.window import lettering
from bayboard.window.lettering import BODY
from bayboard.window.marking import open_findings
from bayboard.window.panel_title import SMALL
from bayboard.window.theme import Theme, brush, pen
from bayboard.window.workplace import Workplace

OF_THE_FILE = (
    ("undo", "Undo", "Ctrl Z"),
    ("redo", "Redo", "Ctrl Shift Z"),
    ("keep", "Keep a revision", "K"),
    ("save_as", "Save a copy", "Ctrl Shift S"),
    ("name", "Name the vehicle", "F2"),
)


def finding_to_leave(place: Workplace) -> tuple[int, Finding] | None:
    """Return the worst finding about what is selected that may be let be, with its number."""
    for number, finding in open_findings(place.verdict):
        if finding.severity != "must" and set(heads(finding)) & set(place.selected):
            return number, finding
    return None


def lines(place: Workplace) -> list[tuple[str, str, str]]:
    """Return the menu's lines: act, words, key."""
    placed = [place.scene.placed[n] for n in place.selected if n in place.scene.placed]
    if not placed:
        waiting = [("hang", "Hang it on the first free spot", "Enter")] if place.selected else []
        whole = [] if waiting else [("whole", "Show it whole", "0")]
        looks = [("chalk_pointer", "Section here", "C"), *whole]
        return [*waiting, *looks, *([] if place.first_start else OF_THE_FILE)]
    taped = all(piece.gear.taped for piece in placed)
    made = [piece.id for piece in placed if is_drilled(place.layout, piece.id)]
    if made:
        return _of_drilled(place, made, taped)
    found = [
        ("turn", "Turn a quarter", "R"),
        ("tape", "Lift the tape" if taped else "Tape down", "T"),
        ("to_bench", "Put back on the bench", "B"),
        ("chalk", "Section here", "C"),
        ("measure", _measure_words(len(placed)), "M"),
        ("enter", "Open its card" if len(placed) == 1 else "Open the card", "Enter"),
    ]
    leave = finding_to_leave(place)
    return found if leave is None else [*found, ("let_be", f"Let finding {leave[0]} be", "")]


def _measure_words(chosen: int) -> str:
    return {1: "Measure to…", 2: "Measure between the two"}.get(chosen, "Measure between two")


def _of_drilled(place: Workplace, made: list[str], taped: bool) -> list[tuple[str, str, str]]:
    """Return the lines for a drilled piece: what would move it is not among them."""
    astray = any(f.rule == "drilled" and set(heads(f)) & set(made) for f in place.verdict.findings)
    found = [
        ("tape", "Lift the tape" if taped else "Tape down", "T"),
        ("chalk", "Section here", "C"),
        ("enter", "Open its card" if len(place.selected) == 1 else "Open the card", "Enter"),
        ("drill_day", "Say where it was drilled", "Ctrl D"),
        *([("put_back", f"Put {made[0]} back where it was drilled", "")] if astray else []),
        ("new_holes", f"Plan new holes for {made[0]}", ""),
    ]
    leave = finding_to_leave(place)
    return found if leave is None else [*found, ("let_be", f"Let finding {leave[0]} be", "")]


class PaperMenu(QMenu):
    """Lines a finger high on a sheet of paper, each with its key at the right; fractions are drawn."""

    chosen = Signal(str)

    def __init__(self, theme: Theme, parent: QWidget) -> None:
        super().__init__(parent)
        self.theme = theme
        self.triggered.connect(self._choose)

    def open_lines(self, at: QPoint, told: Sequence[tuple[str, str, str]]) -> None:
        """Show lines (act, words, key) at a place of the screen; none opens nothing."""
        self.clear()
        size = self.theme.size
        self.setStyleSheet(
            f"QMenu::item {{ padding: {round(9 * size)}px {round(26 * size)}px {round(9 * size)}px"
            f" {round(14 * size)}px; }} QMenu {{ padding: 5px; border: 1px solid {self.theme.rule2}; }}"
        )
        self.setFont(lettering.font(BODY.sized(size), hinted=True))
        for act, words, key in told:
            line = self.addAction(f"{words}\t{key}" if key else words)
            line.setData(act)
        if told:
            self.popup(at)

    def _choose(self, action: QAction) -> None:
        self.chosen.emit(str(action.data()))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the sheet and its lines, the one in use on lath."""
        theme, size = self.theme, self.theme.size
        style, small = BODY.sized(size), SMALL.sized(size)
        with QPainter(self) as p:
            p.fillRect(self.rect(), brush(theme.field))
            p.setPen(pen(theme.rule2, 1.0))
            p.drawRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5))
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            for action in self.actions():
                rect = QRectF(self.actionGeometry(action))
                if action is self.activeAction():
                    p.setPen(Qt.PenStyle.NoPen)
                    p.setBrush(brush(theme.lath))
                    p.drawRoundedRect(rect, 4.0, 4.0)
                words, _, key = action.text().partition("\t")
                inner = rect.adjusted(14.0 * size, 0.0, -14.0 * size, 0.0)
                lettering.draw_in(p, inner, words, style, theme.ink, "left")
                lettering.draw_in(p, inner, key, small, theme.ink2, "right")


class ContextMenu(PaperMenu):
    """The menu of what is selected or of the bare Wall, made anew each time it opens."""

    def __init__(self, place: Workplace, parent: QWidget) -> None:
        super().__init__(place.theme, parent)
        self.place = place

    def open_at(self, at: QPoint) -> None:
        """Show the menu of what is selected at a place of the screen."""
        self.open_with(at, lines(self.place))

    def open_with(self, at: QPoint, told: Sequence[tuple[str, str, str]]) -> None:
        """Show these lines, in the workplace's colours."""
        self.theme = self.place.theme
        self.open_lines(at, told)
