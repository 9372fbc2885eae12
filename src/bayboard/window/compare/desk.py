"""Which two are compared: what hangs on the line, then and now, and what differs between them."""

from collections.abc import Callable
from dataclasses import dataclass

from msgspec.structs import replace
from PySide6.QtCore import QObject, QTimer, Signal

from bayboard.job.row_words import FINDINGS, Row, Rows, findings_words
from bayboard.model.compare import Comparison, compare
from bayboard.model.layout import Layout
from bayboard.model.refused import Refused
from bayboard.rules.check import Verdict
from bayboard.rules.scene import Scene
from bayboard.store.records import PrintLine, Revision
from bayboard.window.compare.shifts import changes_show, lead_ids, middle_of
from bayboard.window.compare.words import DRAFT, Pick
from bayboard.window.draw.changes import ChangesShow, Shift
from bayboard.window.workplace import Workplace

REST = 250  # ms without another choice after which the rules are asked about both
SCENES = 8  # layouts whose scenes are kept ready, so that walking back is quick


@dataclass(frozen=True, slots=True)
class Compared:
    """Two layouts side by side: what is laid on the Wall, and the rows of What changed but the findings."""

    old: Scene
    new: Scene
    found: Comparison
    show: ChangesShow
    rows: tuple[Row, ...]
    leads: frozenset[str]


class CompareDesk(QObject):
    """Follows the job while the mode is on screen.

    Always true: `then` and `now` are two different things that hang on the line; `then` is None while nothing
    is kept besides what `now` is.
    """

    changed = Signal()  # what hangs, which two, or what differs
    judged = Signal()  # the rules have spoken of both
    looked = Signal()  # another row is spoken of

    def __init__(self, place: Workplace) -> None:
        super().__init__(place)
        self.place = place
        self.on_screen = False
        self.revisions: tuple[Revision, ...] = ()
        self.kept_as: int | None = None
        self.prints: tuple[PrintLine, ...] = ()
        self.then: Pick | None = None
        self.now: Pick = DRAFT
        self.trouble = ""  # why one of the two cannot be read
        self.made: Compared | None = None
        self.row = -1  # the row that is spoken of
        self._chosen = False  # whether a person chose, so that what is newly kept does not choose anew
        self._scenes: dict[int, Scene] = {}
        self._verdicts: dict[int, Verdict] = {}
        self._seen: tuple[Layout, Layout | None] | None = None
        self._judge = QTimer(self)
        self._judge.setSingleShot(True)
        self._judge.setInterval(REST)
        self._judge.timeout.connect(self.judge)
        place.changed.connect(self.follow)
        place.opened.connect(self._forget)

    # --- what hangs ---

    @property
    def picks(self) -> tuple[Pick, ...]:
        """Return what hangs on the line, oldest left, the draft at the right."""
        return (*(revision.number for revision in self.revisions), DRAFT)

    def revision(self, pick: Pick | None) -> Revision | None:
        """Return a revision's record, None for the draft."""
        return next((item for item in self.revisions if item.number == pick), None)

    def layout(self, pick: Pick) -> Layout:
        """Return the layout of what hangs there; raise `Refused` when it cannot be read."""
        return self.place.layout if pick == DRAFT else self.place.job.revision(pick)

    def scene(self, pick: Pick) -> Scene:
        """Return its places and shapes; raise `Refused` when it cannot be read."""
        if pick == DRAFT:
            return self.place.scene
        if pick not in self._scenes:
            while len(self._scenes) >= SCENES:
                self._scenes.pop(next(iter(self._scenes)))
            self._scenes[pick] = Scene(self.layout(pick))
        return self._scenes[pick]

    def show(self, on_screen: bool) -> None:
        """Say whether the mode is on screen; what is not looked at is not worked out."""
        self.on_screen = on_screen
        if on_screen:
            self._chosen = False
            self.follow()
        else:
            self.rest()

    def rest(self) -> None:
        """Ask the rules nothing more until something is chosen again."""
        self._judge.stop()

    def _forget(self) -> None:
        """Begin anew with another vehicle."""
        self._scenes, self._verdicts, self._seen = {}, {}, None
        self.then, self.now, self._chosen, self.row = None, DRAFT, False, -1
        self.follow()

    def follow(self) -> None:
        """Show what is kept now and what differs from it."""
        if not self.on_screen:
            return
        try:
            self._read()
        except Refused as refused:
            self._cannot(refused)
            self.changed.emit()
            return
        numbers = self.picks
        if not self._chosen or self.now not in numbers or self.then not in numbers:
            self._choose_usual()
        self._compare()

    def _read(self) -> None:
        """Read what is kept; raise `Refused` when the file cannot be read any more."""
        job = self.place.job
        self.revisions = job.revisions()
        self.kept_as = job.kept_as() if self.revisions else None
        self.prints = job.prints() if self.revisions else ()

    def _cannot(self, refused: Refused) -> None:
        self.made, self._seen, self.row = None, None, -1
        self.trouble = str(refused)

    def _choose_usual(self) -> None:
        """Choose the draft and the newest revision that it differs from."""
        self._chosen = False
        self.now = DRAFT
        self.then = next(
            (n.number for n in reversed(self.revisions) if self._differs(n.number)), self._newest()
        )

    def _newest(self) -> int | None:
        return self.revisions[-1].number if self.revisions else None

    def _differs(self, number: int) -> bool:
        if number == self.kept_as:
            return False
        try:
            return replace(self.layout(number), printed=None) != replace(self.place.layout, printed=None)
        except Refused:
            return False

    # --- choosing ---

    def choose(self, pick: Pick, now: bool = False) -> None:
        """Make something *then*, or *now*; what is the other one already changes places with it."""
        if pick not in self.picks or pick == (self.now if now else self.then) or self.then is None:
            return
        if pick == (self.then if now else self.now):
            self.then, self.now = self.now, self.then
        elif now:
            self.now = pick
        else:
            self.then = pick
        self._chosen = True
        self.row = -1
        self._compare()

    def walk(self, by: int, now: bool = False) -> None:
        """Go to the next card on the line, stepping over the other one that is chosen."""
        here, other = (self.now, self.then) if now else (self.then, self.now)
        if here is None or here not in self.picks:
            return
        at = self.picks.index(here) + by
        if 0 <= at < len(self.picks) and self.picks[at] == other:
            at += by
        if 0 <= at < len(self.picks):
            self.choose(self.picks[at], now)

    def walk_to_end(self, last: bool, now: bool = False) -> None:
        """Go to the oldest or the newest card that is not the other one."""
        order = tuple(reversed(self.picks)) if last else self.picks
        other = self.then if now else self.now
        self.choose(next((pick for pick in order if pick != other), DRAFT), now)

    # --- what differs ---

    def _compare(self) -> None:
        self.trouble = ""
        try:
            self._compare_anew()
        except Refused as refused:
            self._cannot(refused)
        if self.made is not None and self.row >= len(self.rows()):
            self.row = -1
        self.changed.emit()
        if self.verdicts() == (None, None) or None in self.verdicts():
            self._judge.start()

    def _compare_anew(self) -> None:
        new = self.scene(self.now)
        old = None if self.then is None else self.scene(self.then)
        seen = (new.layout, None if old is None else old.layout)
        if self._seen is not None and self._seen[0] is seen[0] and self._seen[1] is seen[1]:
            return
        self._seen = seen
        if old is None:
            self.made, self.row = None, -1
            return
        found = compare(old.layout, new.layout)
        self.made = Compared(
            old,
            new,
            found,
            changes_show(old, new, found),
            Rows(old.layout, new.layout, found).all(),
            lead_ids(new.layout, found),
        )

    def rows(self) -> tuple[Row, ...]:
        """Return the rows of What changed, the findings' last."""
        if self.made is None:
            return ()
        if self.made.found.same:
            return self.made.rows
        words = findings_words(*self.verdicts())
        return (*self.made.rows, Row(FINDINGS, words, pencil=False))

    # --- what the rules say ---

    def verdicts(self) -> tuple[Verdict | None, Verdict | None]:
        """Return what the rules say of then and now, None for what they have not been asked yet."""
        return self._verdict(self.then), self._verdict(self.now)

    def _verdict(self, pick: Pick | None) -> Verdict | None:
        if pick is None:
            return None
        return self.place.verdict if pick == DRAFT else self._verdicts.get(pick)

    def judge(self) -> None:
        """Ask the rules about what is chosen, one layout at a time so that no press waits long."""
        for pick in (self.then, self.now):
            if isinstance(pick, int) and pick not in self._verdicts and not self.trouble:
                self._verdicts[pick] = self.place.job.verdict_of(self.layout(pick))
                break
        self.judged.emit()
        if self.on_screen and any(
            isinstance(p, int) and p not in self._verdicts for p in (self.then, self.now)
        ):
            self._judge.start(0)

    # --- the row that is spoken of ---

    def speak_of(self, row: int) -> None:
        """Speak of a row: its thing is ringed on the Wall and the chalk line goes to it."""
        rows = self.rows()
        if not 0 <= row < len(rows) or self.made is None:
            return
        self.row = row
        at = middle_of(rows[row].ids, self.made.old, self.made.new)
        if at is not None:
            self.place.set_chalk(at[0])
            self.place.show_place(at)
        self.looked.emit()

    def step(self, by: int) -> bool:
        """Speak of the next or last row; return False past either end."""
        at = (0 if by > 0 else len(self.rows()) - 1) if self.row < 0 else self.row + by
        if not 0 <= at < len(self.rows()):
            return False
        self.speak_of(at)
        return True

    def leave_row(self) -> bool:
        """Speak of no row; return whether there was one."""
        had, self.row = self.row >= 0, -1
        if had:
            self.looked.emit()
        return had

    def spoken(self) -> tuple[str, ...]:
        """Return the ids of the row that is spoken of."""
        rows = self.rows()
        return rows[self.row].ids if 0 <= self.row < len(rows) else ()

    def row_of(self, name: str) -> int:
        """Return which row is about a thing, -1 for none."""
        return next((i for i, row in enumerate(self.rows()) if name in row.ids), -1)

    def shift(self, name: str) -> Shift | None:
        """Return how a stand-in differs, None for one that does not."""
        shifts = self.made.show.shifts if self.made is not None else ()
        return next((shift for shift in shifts if shift.id == name), None)

    # --- going back ---

    def subject(self) -> Revision | None:
        """Return the revision that the card at the right is about: then, else now."""
        return self.revision(self.then) or self.revision(self.now)

    def is_draft(self, number: int) -> bool:
        """Return whether a revision is known to be the draft as it is."""
        pair = {self.then, self.now} == {number, DRAFT}
        return self.kept_as == number or (pair and self.made is not None and self.made.found.same)

    def go_back(self) -> tuple[int, int | None] | None:
        """Make the revision spoken of the draft; return its number and the one the draft was kept as.

        None when it cannot be, or changes nothing: that is said.
        """
        revision, draft = self.subject(), self.place.layout
        if revision is None:
            return None
        before = self._newest()
        try:
            label = self.place.job.restore(revision.number)
        except Refused as refused:
            self.place.refused.emit(str(refused))
            return None
        if self.place.layout is draft:
            self.place.said.emit(f"{label}.")
            return None
        after = self.place.job.revisions()
        newest = after[-1].number if after else None
        return revision.number, newest if newest != before else None

    def save_own(self, save: Callable[[Layout], None]) -> str:
        """Hand the revision's layout to `save`; return the sentence when it cannot be had or saved."""
        revision = self.subject()
        if revision is None:
            return ""
        try:
            save(self.layout(revision.number))
        except Refused as refused:
            return str(refused)
        return ""
