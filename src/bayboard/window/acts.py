"""What keys and menus do: each act once, whatever calls it."""

from collections.abc import Callable

from bayboard.edits.move_gear import MoveGear
from bayboard.edits.plan_new_hole import PlanNewHole
from bayboard.edits.put_back import PutBack
from bayboard.edits.set_taped import SetTaped
from bayboard.edits.set_units import SetUnits
from bayboard.edits.to_bench import ToBench
from bayboard.edits.turn_gear import TurnGear
from bayboard.model.drilled import is_drilled
from bayboard.rules.finding import Finding, heads
from bayboard.window.draw.bench import waiting
from bayboard.window.gestures.held import held_back
from bayboard.window.loud import heard
from bayboard.window.picking import reading_order
from bayboard.window.spots import boards_after, first_free, gear_of
from bayboard.window.steps import step
from bayboard.window.workplace import Workplace

FOLD = 600  # ms; arrow presses closer together than this are one undo step


class Acts:
    """What can be done to the workplace without a mouse.  `clock` gives milliseconds."""

    def __init__(self, place: Workplace, clock: Callable[[], float]) -> None:
        self.place = place
        self._clock = clock
        self._nudged_at = float("-inf")
        self._nudged: tuple[str, ...] = ()

    # --- the selected stand-ins ---

    def nudge(self, right: int, up: int, coarse: bool = False) -> None:
        """Move what is selected by one step; presses in quick succession are taken back together."""
        ids = self._loose("move")
        if not ids:
            return
        far, now = step(self.place.units, coarse), self._clock()
        folds = now - self._nudged_at <= FOLD and ids == self._nudged
        self._nudged_at, self._nudged = now, ids
        dx, dy = right * far, up * far
        self.place.do(MoveGear(ids, dx, dy, boards_after(self.place.scene, ids, dx, dy)), folds, at_once=True)
        self.place.measure()

    def turn(self, by: float) -> None:
        """Turn what is selected, each about its own middle."""
        ids = self._loose("turn")
        if ids:
            self.place.do(TurnGear(ids, by))

    def _loose(self, verb: str) -> tuple[str, ...]:
        """Return the selected stand-ins when all of them may be moved, else say why not."""
        place = self.place
        ids = tuple(name for name in place.selected if name in place.scene.placed)
        held = held_back(place, ids, verb)
        if held:
            place.said.emit(held)
        return () if held else ids

    def tape(self) -> None:
        """Tape what is selected down; lift the tape where all of it is taped."""
        place = self.place
        ids = tuple(n for n in place.selected if n in place.scene.placed)
        if ids:
            place.do(SetTaped(ids, not all(place.scene.placed[n].gear.taped for n in ids)))

    def to_bench(self) -> None:
        """Put what is selected back on the bench."""
        ids = self._loose("put back")
        if ids:
            self.place.do(ToBench(ids))
            self.place.select(())

    def put_back_drilled(self) -> None:
        """Put the first selected piece that is drilled back where it was drilled."""
        self._of_drilled(PutBack)

    def plan_new_holes(self) -> None:
        """Leave the holes of the first selected piece that is drilled; it gets new ones."""
        self._of_drilled(PlanNewHole)

    def _of_drilled(self, edit: type[PutBack] | type[PlanNewHole]) -> None:
        place = self.place
        name = next((n for n in place.selected if is_drilled(place.layout, n)), None)
        if name is not None:
            place.do(edit(name))

    def hang(self, name: str) -> None:
        """Hang a waiting piece on the first free spot where nothing must change."""
        place = self.place
        gear = gear_of(place.layout, name)
        if gear is None or name in place.scene.placed:
            return
        edit = first_free(place.layout, name)
        if edit is None:
            place.said.emit(f"No free spot for {name} without a must. Drag it up and make room.")
            return
        place.do(edit)
        place.select((name,), by_keys=True)

    def hang_number(self, number: int) -> None:
        """Hang the piece that stands at a place on the ledge, counted from 1 at the left."""
        waiting = self.waiting()
        if 1 <= number <= len(waiting):
            self.hang(waiting[number - 1])
        else:
            self.place.said.emit(f"There is no number {number} on the bench.")

    def waiting(self) -> tuple[str, ...]:
        """Return the ids of what is on the bench, in the order it stands there."""
        return tuple(gear.id for gear in waiting(self.place.layout))

    # --- walking ---

    def walk(self, by: int) -> bool:
        """Select the next or last stand-in in reading order; return False past either end."""
        order, place = reading_order(self.place.scene), self.place
        here = next((order.index(n) for n in place.selected if n in order), None)
        at = (0 if by > 0 else len(order) - 1) if here is None else here + by
        if not 0 <= at < len(order):
            return False
        place.select((order[at],), by_keys=True)
        return True

    def next_finding(self, by: int) -> Finding | None:
        """Speak of the next or last open finding, round about: first those of the stage, then the others."""
        place = self.place
        found = heard(place.verdict, place.rooms)
        if not found:
            place.said.emit("No findings.")
            return None
        spoken = place.spoken_of()
        here = found.index(spoken) if spoken in found else (-1 if by > 0 else 0)
        finding = found[(here + by) % len(found)]
        self.go_to(finding)
        return finding

    def go_to(self, finding: Finding) -> None:
        """Speak of a finding: select what it is about and show where it is."""
        place = self.place
        about = [name for name in heads(finding) if name in place.scene.placed]
        if about:
            place.select(about[:2] if finding.rule in ("gap", "overlap") else about[:1], by_keys=True)
        place.take_up(finding)
        where = finding.at or (place.scene.placed[about[0]].at if about else None)
        if where is not None:
            place.show_place(where)

    # --- looking ---

    def flip_lever(self) -> None:
        """Fold the seat, or put it up."""
        self.place.set_lever("folded" if self.place.lever == "up" else "up")

    def other_units(self) -> None:
        """Show inches instead of mm, or mm instead of inches."""
        self.place.do(SetUnits("mm" if self.place.units == "in" else "in"))

    def chalk_here(self) -> None:
        """Draw the chalk line through the middle of what is selected, else where the pointer is."""
        place = self.place
        boxes = [place.scene.placed[n].box for n in place.selected if n in place.scene.placed]
        if boxes:
            place.set_chalk((min(b[0] for b in boxes) + max(b[2] for b in boxes)) / 2)
        elif place.pointer is not None:
            place.set_chalk(place.pointer[0])

    def follow(self) -> None:
        """Let the chalk line follow what is selected, or stay where it is drawn."""
        place = self.place
        place.follow = not place.follow
        place.said.emit(
            "The chalk line follows what is selected."
            if place.follow
            else "The chalk line stays where it is."
        )

    def measure(self) -> None:
        """Measure between the two selected, or from the one selected, or between any two; again ends it."""
        spans = self.place.spans
        if not (spans.asking and spans.put_away()):
            spans.begin(name for name in self.place.selected if name in self.place.scene.placed)
            told = spans.sentence(self.place.scene)
            if told:
                self.place.said.emit(told)

    def put_down(self) -> None:
        """Leave what is being looked at: first the measures, then the selection, then the finding."""
        place = self.place
        if place.spans.put_away():
            return
        if place.selected:
            place.select(())
        elif place.finding is not None:
            place.take_up(None)
