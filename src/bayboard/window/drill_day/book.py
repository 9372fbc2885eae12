"""What is made and what comes next: every press is an edit, or half a slot noted, and is written at once."""

from collections.abc import Callable
from dataclasses import dataclass
from math import dist

from PySide6.QtCore import QObject, Signal

from bayboard.edits.drill_hole import DrillHole
from bayboard.edits.drill_metal import DrillMetal
from bayboard.edits.new_plastic import NewPlastic
from bayboard.edits.undrill_hole import UndrillHole
from bayboard.mechanics.drill_day import Drilling, datum_check, drillings
from bayboard.model.drilled import drilled_at
from bayboard.model.layout import Layout, Point
from bayboard.model.refused import Refused
from bayboard.window.drill_day.notes import NAME, Notes, Press, read_notes
from bayboard.window.workplace import Workplace


@dataclass(frozen=True, slots=True)
class Check:
    """Two datum holes that are made and whose distance is to be measured: where they are, mm apart."""

    board: str
    holes: tuple[str, str]
    ends: tuple[Point, Point]

    @property
    def apart(self) -> float:
        """Return the distance centre to centre in mm."""
        return dist(*self.ends)


class Book(QObject):
    """The drilling of a layout.  `chosen` is a press that somebody wants to make out of turn."""

    turned = Signal()  # something was made, taken back or chosen
    failed = Signal(str)  # a sentence: it could not be written

    def __init__(self, place: Workplace, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.place = place
        self.chosen: Press | None = None
        self.last: Press | None = None
        self._of: Layout | None = None
        self._all: tuple[Drilling, ...] = ()
        self._pairs: dict[str, tuple[str, str]] = {}  # the datum holes of each board
        self.notes = Notes()
        self.steps = 0  # edits made here that undo may take back
        self.undone = 0
        self.house: Callable[[], bool] = _nowhere  # makes a job file for a job without one
        self._homeless = False  # there was no making one
        place.opened.connect(self.open)
        place.changed.connect(self.turned)
        self.open()

    def open(self) -> None:
        """Take up the drilling of the job that is on the wall."""
        self.chosen, self.last, self.steps, self.undone = None, None, 0, 0
        self._homeless = False
        self.notes = read_notes(self.place.job.meta(NAME))
        self.turned.emit()

    # --- what is made ---

    @property
    def all(self) -> tuple[Drilling, ...]:
        """Return every setting of the drill in working order."""
        layout = self.place.layout
        if self._of is not layout:
            self._of, self._all = layout, drillings(layout)
            found = {board.id: datum_check(layout, board.id) for board in layout.boards}
            self._pairs = {board: pair[:2] for board, pair in found.items() if pair is not None}
        return self._all

    def made(self, one: Drilling) -> bool:
        """Return whether a drilling is made."""
        return one.drilled or self._first_of(one) is not None

    def _first_of(self, one: Drilling) -> Point | None:
        """Return where a drilling went when it is the made half of a slot."""
        at = self.notes.halves.get(one.hole.id)
        if at is None or one.of < 2 or one.drilled:
            return None
        near = min(self.parts(one.hole.id), key=lambda part: dist(part.at, at))
        return at if near.part == one.part else None

    def parts(self, hole: str) -> list[Drilling]:
        """Return the drillings of a hole."""
        return [one for one in self.all if one.hole.id == hole]

    def at(self, one: Drilling) -> Point:
        """Return where a drilling is, or where it must go now.

        The second hole of a slot goes where the first one asks for it.
        """
        there = drilled_at(self.place.layout, one.hole.id)
        if there is not None:
            return _moved(one.at, one.hole.at, there)
        half = self.notes.halves.get(one.hole.id)
        if half is None or one.of < 2:
            return one.at
        near = min(self.parts(one.hole.id), key=lambda part: dist(part.at, half))
        return _moved(one.at, near.at, half)

    def count(self) -> tuple[int, int]:
        """Return how many drillings are made, and how many there are."""
        return sum(self.made(one) for one in self.all), len(self.all)

    def waiting(self) -> list[Drilling]:
        """Return the drillings that come after the current one, in the order they come."""
        now = self.now()
        order = self.all
        start = order.index(now) + 1 if now in order else 0
        round_about = [*order[start:], *order[:start]]
        return [one for one in round_about if not self.made(one) and one is not now]

    # --- what comes next ---

    def now(self) -> Drilling | None:
        """Return the drilling that is shown: the chosen one, else the next; None when a check or all is."""
        if self.chosen is not None:
            found = next((d for d in self.all if (d.hole.id, d.part) == self.chosen), None)
            if found is not None:
                return found
        if self.check() is not None:
            return None
        return self._next()

    def _next(self) -> Drilling | None:
        order = self.all
        keys = [(one.hole.id, one.part) for one in order]
        start = keys.index(self.last) + 1 if self.last in keys else 0
        board = order[start - 1].hole.board if start else None
        left = [one for one in (*order[start:], *order[:start]) if not self.made(one)]
        return next((one for one in left if one.hole.board == board), left[0] if left else None)

    def check(self) -> Check | None:
        """Return the datum holes that are to be measured now; None while a hole is chosen, or for none."""
        if self.chosen is not None or not self.all:
            return None
        for board, pair in self._pairs.items():
            if board in self.notes.checked:
                continue
            ends = [drilled_at(self.place.layout, hole) for hole in pair]
            if ends[0] is not None and ends[1] is not None and self._waits_on(board):
                return Check(board, pair, (ends[0], ends[1]))
        return None

    def _waits_on(self, board: str) -> bool:
        """Return whether anything of a board is still to be drilled: only then a check is worth it."""
        return any(one.hole.board == board and not self.made(one) for one in self.all)

    def choose(self, press: Press | None) -> None:
        """Show this drilling, out of turn; None: the next one."""
        self.chosen = press
        self.turned.emit()

    def step(self, by: int) -> bool:
        """Choose the next or last drilling in working order; return False past either end."""
        order, now = self.all, self.now()
        if not order:
            return False
        at = order.index(now) + by if now in order else (0 if by > 0 else len(order) - 1)
        if not 0 <= at < len(order):
            return False
        self.choose((order[at].hole.id, order[at].part))
        return True

    # --- presses ---

    def drill(self, at: Point | None = None) -> bool:
        """Say that the drilling shown is made, where it must go or at a place; return whether it is kept."""
        now = self.now()
        if now is None or (self.made(now) and at is None) or not self._may_change():
            return False
        press = (now.hole.id, now.part)
        notes, edit = self._pressed(now, at)
        if edit is not None and not self._do(edit):
            return False
        self.last, self.chosen = press, None
        self._note((notes.uncheck(now.hole.board) if now.datum else notes).after(press))
        return True

    def _pressed(self, now: Drilling, at: Point | None) -> tuple[Notes, DrillHole | None]:
        """Return what is noted and what is done when a drilling is made."""
        hole, other = now.hole.id, self._other(now)
        if other is None:
            return self.notes, DrillHole(hole, at)
        there = drilled_at(self.place.layout, hole)
        half = self.notes.halves.get(hole)
        if there is None and (half is None or self.made(now)):
            return self.notes.halved(hole, at or self.at(now)), None
        first = self.at(other)
        spot = at or self.at(now)
        middle = ((first[0] + spot[0]) / 2, (first[1] + spot[1]) / 2)
        planned = dist(middle, now.hole.at) < 1e-6
        return self.notes.halved(hole, first), DrillHole(hole, None if planned else middle)

    def _other(self, one: Drilling) -> Drilling | None:
        return next((part for part in self.parts(one.hole.id) if part.part != one.part), None)

    def drill_metal(self, fixing: str, at: Point) -> bool:
        """Say where the hole of a fixing went in the sheet metal; return whether it is kept."""
        done = self._do(DrillMetal(fixing, at))
        if done:
            self._write()
            self.turned.emit()
        return done

    def confirm(self) -> None:
        """Say that the two datum holes measure what they must."""
        check = self.check()
        if check is not None and self._may_change():
            self._note(self.notes.check(check.board))

    def take_back(self) -> str:
        """Take the last press back; return what it was, "" when there is none."""
        for press in reversed(self.notes.pressed):
            found = next((d for d in self.all if (d.hole.id, d.part) == press), None)
            if found is not None and self.made(found):
                return press[0] if self.unmake(found) else ""
        found = next((one for one in reversed(self.all) if self.made(one)), None)
        return found.hole.id if found is not None and self.unmake(found) else ""

    def unmake(self, one: Drilling) -> bool:
        """Say that a drilling is not made after all, and show it; return whether it is kept."""
        if not self._may_change():
            return False
        hole, other, press = one.hole.id, self._other(one), (one.hole.id, one.part)
        notes = self.notes.without(press)
        if one.drilled:
            first = self.at(other) if other is not None else None
            if not self._do(UndrillHole(hole)):
                return False
            notes = notes.whole(hole) if first is None else notes.halved(hole, first)
        else:
            notes = notes.whole(hole)
        if one.datum:
            notes = notes.uncheck(one.hole.board)
        self.chosen = press
        self._note(notes)
        return True

    def new_plastic(self, board: str) -> bool:
        """Begin a board anew from fresh plastic; return whether it is kept."""
        if not self._do(NewPlastic(board)):
            return False
        gone = {one.hole.id for one in self.all if one.hole.board == board}
        notes = self.notes.uncheck(board)
        for hole in gone & notes.halves.keys():
            notes = notes.whole(hole)
        left = tuple(press for press in notes.pressed if press[0] not in gone)
        self.chosen, self.last = None, None
        self._note(Notes(notes.halves, left, notes.checked))
        return True

    def undo(self) -> bool:
        """Take back the last edit that was made here; return False when there is none."""
        if self.steps == 0:
            return False
        self.steps -= 1
        self.undone += 1
        self.chosen, self.last = None, None
        self.place.undo()
        self._write()
        return True

    def redo(self) -> bool:
        """Do again what was undone here; return False when there is nothing."""
        if self.undone == 0:
            return False
        self.steps += 1
        self.undone -= 1
        self.place.redo()
        self._write()
        return True

    # --- keeping ---

    def _may_change(self) -> bool:
        """Return whether the job may be written, else say that it is only looked at."""
        if self.place.job.looking:
            self.failed.emit("This job is only looked at, so nothing is ticked in it.")
        return not self.place.job.looking

    def _do(self, edit: DrillHole | DrillMetal | UndrillHole | NewPlastic) -> bool:
        before = self.place.layout
        if not self.place.do(edit):
            return False
        if self.place.layout is not before:
            self.steps, self.undone = self.steps + 1, 0
        return True

    def _note(self, notes: Notes) -> None:
        self.notes = notes
        self._write()
        self.turned.emit()

    def _write(self) -> None:
        """Write draft and notes to the job at once; what fails is said, and the work goes on."""
        job = self.place.job
        if job.file is None and not self._homeless:
            self._homeless = not self.house()
        try:
            if job.file is not None:
                job.set_meta(NAME, self.notes.to_json())
                job.flush()
            elif job.path is not None:
                job.save()  # the plain layout takes what is drilled, if not half a slot
        except Refused as refused:
            self.failed.emit(str(refused))


def _nowhere() -> bool:
    return False


def _moved(at: Point, start: Point, end: Point) -> Point:
    return at[0] + end[0] - start[0], at[1] + end[1] - start[1]
