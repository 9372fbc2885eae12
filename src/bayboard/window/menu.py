"""The context menu of a stand-in or of the bare Wall: seven lines at most, each with its key at the right."""

from PySide6.QtCore import QPoint, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu, QWidget

from bayboard.model.drilled import is_drilled
from bayboard.rules.finding import Finding, heads
from bayboard.window import lettering
from bayboard.window.lettering import BODY
from bayboard.window.marking import open_findings
from bayboard.window.theme import Theme
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


def _dress(theme: Theme) -> str:
    """Return the menu's dress: lines a finger high on a sheet of paper."""
    pad = round(9 * theme.size)
    return (
        f"QMenu {{ background: {theme.field}; color: {theme.ink};"
        f" border: 1px solid {theme.rule2}; padding: 5px; }}"
        f"QMenu::item {{ padding: {pad}px 26px {pad}px 14px; border-radius: 4px; }}"
        f"QMenu::item:selected {{ background: {theme.lath}; color: {theme.ink}; }}"
    )


class ContextMenu(QMenu):
    """The menu, made anew each time it opens."""

    chosen = Signal(str)

    def __init__(self, place: Workplace, parent: QWidget) -> None:
        super().__init__(parent)
        self.place = place
        self.triggered.connect(self._choose)

    def open_at(self, at: QPoint) -> None:
        """Show the menu at a place of the screen."""
        self.clear()
        self.setStyleSheet(_dress(self.place.theme))
        self.setFont(lettering.font(BODY.sized(self.place.theme.size), hinted=True))
        for act, words, key in lines(self.place):
            line = self.addAction(f"{words}\t{key}" if key else words)
            line.setData(act)
        self.popup(at)

    def _choose(self, action: QAction) -> None:
        self.chosen.emit(str(action.data()))
