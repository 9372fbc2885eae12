"""From the book and the layout to what is shown: the only place that knows both."""

from collections.abc import Iterator

from bayboard.mechanics.drill_day import Drilling
from bayboard.model.layout import Layout, Point
from bayboard.rules.boards import BoardShape
from bayboard.units.length import show_length
from bayboard.window.drill_day import words
from bayboard.window.drill_day.book import Book, Check
from bayboard.window.drill_day.plan import THEN
from bayboard.window.drill_day.show import (
    Bit,
    BoardShow,
    CloseUp,
    DayShow,
    Dot,
    Now,
    Ordinates,
    StandIn,
    State,
    Then,
)
from bayboard.window.steps import foot_of
from bayboard.window.workplace import Workplace

PRESS, PRESS_SMALL = "Drilled", "space bar, or tap anywhere here"
BACK = "space bar goes back to the plan"
ROUND = 5.0  # how many times its drill the close-up of a hole shows
SLOT_ROUND = 3.5


class Seen:
    """Works out one `DayShow`."""

    def __init__(self, place: Workplace, book: Book) -> None:
        self.place, self.book = place, book
        self.layout: Layout = place.layout
        self.units = self.layout.units
        self.now, self.check = book.now(), book.check()
        self.differ = frozenset(words.differing(self.layout))

    def show(self) -> DayShow:
        """Return everything on screen."""
        made, count = self.book.count()
        now = self._now(count)
        then = self._waiting()
        return DayShow(
            vehicle=self.layout.vehicle.name,
            phrase=self._phrase(),
            count=f"{made} of {count} drilled" if count else "no holes",
            warning=self._warning(),
            board=self._board(),
            bits=self._bits(),
            now=now,
            close=self._close(),
            then=tuple(self._then(one) for one in then[:THEN]),
            says=self.says(),
        )

    def _waiting(self) -> list[Drilling]:
        """Return what comes later, a slot's two holes as one unless the first of them is at hand."""
        if self.check is None and self.now is None:
            return []
        found: dict[str, Drilling] = {}
        for one in self.book.waiting():
            found.setdefault(one.hole.id, one)
        return list(found.values())

    def says(self) -> str:
        """Return the whole of it in one sentence."""
        if self.now is not None:
            left, up = self._figures(self.now)
            said = words.sentence(self.now, left, up, self.units)
            if self.book.made(self.now):
                return f"{said}, drilled already"
            return f"{said}, not as on the sheets" if self.now.hole.id in self.differ else said
        if self.check is not None:
            a, b = self.check.holes
            return f"{words.check_words(self.check, self.units)}, {a} to {b}"
        count = self.book.count()[1]
        return f"all {count} are drilled" if count else "nothing to drill"

    # --- head ---

    def _phrase(self) -> str:
        told = [revision_words(self.place), *self._which_board(), "seen from the gear side"]
        if self.layout.printed is None and self.book.all:
            told.append("no sheets printed of it")
        return " · ".join(word for word in told if word)

    def _which_board(self) -> list[str]:
        boards = [board.id for board in self.layout.boards]
        here = self.board_id()
        if len(boards) < 2 or here is None:
            return []
        return [f"board {boards.index(here) + 1} of {len(boards)}: {here}"]

    def _warning(self) -> str:
        known = {one.hole.id for one in self.book.all}
        waiting = {one.hole.id for one in self.book.all if not self.book.made(one)}
        return words.warning(self.layout, frozenset(known - waiting), frozenset(known))

    # --- the board ---

    def board_id(self) -> str | None:
        """Return the board that is shown: of the hole or check at hand, else the last one drilled on."""
        if self.now is not None:
            return self.now.hole.board
        if self.check is not None:
            return self.check.board
        if self.book.all:
            return self.book.all[-1].hole.board
        return self.layout.boards[0].id if self.layout.boards else None

    def _shape(self) -> BoardShape | None:
        return self.place.scene.boards.get(self.board_id() or "")

    def _board(self) -> BoardShow | None:
        shape = self._shape()
        if shape is None:
            return None
        check = self.check if self.now is None else None
        return BoardShow(
            shape,
            tuple(self._stand_ins(shape.board.id)),
            tuple(self._dot(one) for one in self.book.all if one.hole.board == shape.board.id),
            frozenset(fixing.id for fixing in self.layout.fixings),
            self._ordinates(),
            check.ends if check else None,
            words.check_words(check, self.units) if check else "",
        )

    def _stand_ins(self, board: str) -> Iterator[StandIn]:
        for piece in self.place.scene.placed.values():
            if piece.board.id == board:
                yield StandIn(piece.id, tuple((float(x), float(y)) for x, y in piece.ring))

    def _dot(self, one: Drilling) -> Dot:
        made = self.book.made(one)
        state: State = "drilled" if made else "next" if one is self.now else "to come"
        differs = one.hole.id in self.differ and not made
        return Dot(one.hole.id, one.part, self.book.at(one), one.bit, state, differs, one is self.now)

    def _figures(self, one: Drilling) -> tuple[float, float]:
        """Return how far a drilling is from the left and up, where it must go or went."""
        (x, y), (px, py) = self.book.at(one), one.at
        return one.from_left + x - px, one.up + y - py

    def _ordinates(self) -> Ordinates | None:
        shape = self._shape()
        if self.now is None or shape is None:
            return None
        left, up = self._figures(self.now)
        return Ordinates(
            self.book.at(self.now),
            foot_of(shape.board),
            f"{show_length(left, self.units)} from the left",
            f"{words.plain(up, self.units)} up",
        )

    # --- bits ---

    def _bits(self) -> tuple[Bit, ...]:
        here = self.board_id()
        ones = [one for one in self.book.all if one.hole.board == here and one.bit is not None]
        sizes = sorted({one.bit for one in ones if one.bit is not None})
        return tuple(self._bit([one for one in ones if one.bit == size]) for size in sizes)

    def _bit(self, ones: list[Drilling]) -> Bit:
        size = ones[0].bit or 0.0
        now = self.now is not None and self.now.bit == size
        done = all(self.book.made(one) for one in ones)
        return Bit(size, words.bit_name(ones[0], self.units), done, now)

    # --- huge type ---

    def _now(self, count: int) -> Now:
        if self.now is not None:
            return self._hole(self.now)
        if self.check is not None:
            return self._measure(self.check)
        if not count:
            what = "No hole is planned on any board."
            return Now("Nothing to drill", "", "", what=what, press="Back", press_small=BACK)
        told, next_ = words.all_made(self.layout, count)
        return Now(
            "All drilled",
            "",
            "",
            what=told,
            more=next_,
            caption=words.METAL,
            press="Finish",
            press_small=BACK,
        )

    def _hole(self, one: Drilling) -> Now:
        shown, unit = words.figure(one, self.units)
        parts = self.book.parts(one.hole.id)
        half = any(self.book.made(part) for part in parts if part.part != one.part)
        made = self.book.made(one)
        astray = one.hole.id in self.differ and not made
        return Now(
            name=one.hole.id,
            figure=shown,
            unit=unit,
            under=words.under(one, self.layout),
            what=words.what(one, self.units),
            more=words.more(one, parts, half, self.layout),
            caption=words.not_as_printed(self.layout) if astray else words.CAUTION,
            astray=astray,
            press="" if made else PRESS,
            press_small="It is drilled. The space bar goes on to the next hole." if made else PRESS_SMALL,
            made=made,
        )

    def _measure(self, check: Check) -> Now:
        shown = words.plain(check.apart, self.units)
        a, b = check.holes
        return Now(
            name="",
            figure=shown,
            unit=self.units,
            what=f"check: {a} to {b}, centre to centre",
            more="Lay the tape across both holes. N where it reads otherwise.",
            caption=words.CAUTION,
            press="It is so",
            press_small=PRESS_SMALL,
        )

    def _close(self) -> CloseUp | None:
        shape = self._shape()
        if shape is None or self.now is None:
            return None
        parts = self.book.parts(self.now.hole.id)
        dots = tuple(self._dot(one) for one in self.book.all if one.hole.board == shape.board.id)
        ends = [self.book.at(one) for one in parts]
        across = self.now.bit or 4.0
        if len(ends) == 2:
            (ax, ay), (bx, by) = ends
            wide = max(abs(bx - ax), abs(by - ay)) + SLOT_ROUND * across
            return CloseUp(shape, dots, ((ax + bx) / 2, (ay + by) / 2), wide, (ends[0], ends[1]), across)
        return CloseUp(shape, dots, ends[0], ROUND * across)

    def _then(self, one: Drilling) -> Then:
        others = [part for part in self.book.parts(one.hole.id) if part.part != one.part]
        half = any(part is self.now or self.book.made(part) for part in others)
        return Then(one.hole.id, one.part, words.bit_name(one, self.units), words.then_what(one, half))


def revision_words(place: Workplace) -> str:
    """Return which revision lies on the bench: "revision 7", or "draft after revision 6"."""
    job = place.job
    if not job.keeps and not job.looking:
        return ""
    kept = job.kept_as()
    draft = "draft" if job.parent is None else f"draft after revision {job.parent}"
    told = draft if kept is None else f"revision {kept}"
    return f"{told}, looking only" if job.looking else told


def planned(one: Drilling, book: Book) -> Point:
    """Return where a drilling must go, from the board's left edge and foot."""
    (x, y), (px, py) = book.at(one), one.at
    return one.from_left + x - px, one.up + y - py
