"""The printing desk: what is to be printed, the sheets that come of it, which one is in hand."""

from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Literal

from PySide6.QtCore import QObject, QTimer, Signal

from bayboard.job.job import Job
from bayboard.job.printing import log_print, revision_ahead, revision_to_print
from bayboard.job.runner import Runner
from bayboard.model.layout import Units
from bayboard.model.refused import Refused
from bayboard.paper.options import DRAFT, Options
from bayboard.store.files import write_whole
from bayboard.window.last import remember_paper
from bayboard.window.print import words
from bayboard.window.print.choices import Choices, first_choices
from bayboard.window.print.laid import LaidBoard, LaidSheet, sheets_of
from bayboard.window.print.making import (
    Asked,
    NotMade,
    Pressed,
    Sheets,
    Weighed,
    Weighing,
    lay_out,
    not_made,
    press,
    weigh,
)
from bayboard.window.print.older import Older
from bayboard.window.workplace import Workplace

IDLE = 150  # ms without a further change after which the sheets are laid anew
Side = Literal["left", "right", "above", "below"]
BROKEN = "The sheets cannot be drawn. What went wrong is in the log; your layout is as it was."


class PrintDesk(QObject):
    """Follows the layout while the stage is on screen; results for an older layout are dropped."""

    changed = Signal()  # choices, sheets or what is said of them are others
    looked = Signal()  # another sheet is in hand

    def __init__(self, place: Workplace, runner: Runner, choices: Choices | None = None) -> None:
        super().__init__(place)
        self.place = place
        self.runner = runner
        self.choices = choices or first_choices(place.units)
        self.on_screen = False
        self.older = Older(place)
        self.all_sheets: Sheets | None = None  # the last ones that could be made
        self.refused: NotMade | None = None
        self.chosen = 0  # which page is in hand
        self.saved: Path | None = None
        self.saved_words = ""
        self.log_words = ""  # why a print that was saved is not in the log
        self.pressing = False
        self.paper = ""  # of the sheets that are shown
        self.laid = 0  # how many times sheets came: two equal counts mean the same sheets
        self._made_of: Asked | None = None
        self._laying: Asked | None = None
        self._weighing: Weighing | None = None
        self._revision: tuple[object, ...] = ()
        self._idle = QTimer(self)
        self._idle.setSingleShot(True)
        self._idle.setInterval(IDLE)
        self._idle.timeout.connect(self.lay_now)
        place.changed.connect(self.follow)
        place.opened.connect(self._forget)
        self._take_paper_of_bench()

    # --- what is asked for ---

    def kinds(self) -> tuple[str, ...]:
        """Return the kinds of sheet that the layout has something for."""
        layout = self.place.layout
        has = {"drill": bool(layout.boards), "cards": bool(layout.gear)}
        return tuple(kind for kind in words.KINDS if has[kind])

    def wanted(self) -> tuple[str, ...]:
        """Return the kinds of sheet that are switched on and have something to show."""
        return tuple(kind for kind in self.kinds() if kind not in self.choices.off)

    @property
    def units(self) -> Units:
        """Return the units of the sheets."""
        return self.choices.units or self.place.layout.units

    def asked(self) -> Asked:
        """Return the whole print as it is chosen now."""
        chosen = self.choices
        options = Options(chosen.paper, self.wanted(), chosen.margin, chosen.face, self.units)
        return self.place.layout, options.with_revision(self._ahead())

    def _ahead(self) -> str:
        """Return the revision that a print made now would name."""
        job = self.place.job
        key = (job, job.layout, job.revisions(), job.parent)
        if not self._revision or any(a is not b for a, b in zip(key, self._revision[1:], strict=True)):
            try:
                self._revision = (revision_ahead(job), *key)
            except Refused:  # a revision cannot be read; what stops the print is said when it is made
                self._revision = (DRAFT, *key)
        return str(self._revision[0])

    def asked_for(self) -> Asked:
        """Return what would be printed now: the whole, or just the sheets to be swapped."""
        layout, options = self.asked()
        few = self.older.options((layout, options)) if self.swapping else None
        return (layout, few.with_revision(options.revision)) if few else (layout, options)

    @property
    def swapping(self) -> bool:
        """Return whether only the sheets are printed that became old."""
        return not self.choices.whole and self.older.swap() is not None and self._weighable() is not None

    def _weighable(self) -> Weighing | None:
        return self.older.weighing(self.asked())

    def swap_numbers(self) -> tuple[int, ...]:
        """Return the numbers of the sheets to be swapped, () where the whole set is printed."""
        found = self.older.swap()
        return found[1] if found and self.swapping else ()

    @property
    def sheets(self) -> Sheets | None:
        """Return the sheets to look at: of a set of which a few are swapped, all of its own."""
        found = self.older.swap()
        return found[0] if found and self.swapping else self.all_sheets

    def choose(self, **changes: object) -> None:
        """Choose paper, margin, face or units."""
        chosen = replace(self.choices, **changes)
        if chosen != self.choices:
            other = chosen.whole != self.choices.whole
            self.choices = chosen
            self._unsay()
            if other:
                self._look_at_first()
            self.changed.emit()
            self.follow()

    def switch(self, kind: str) -> None:
        """Switch a kind of sheet off or on again; one without content stays as it is."""
        if kind in self.kinds():
            self.choose(off=self.choices.off ^ {kind})

    # --- the sheets ---

    def follow(self) -> None:
        """Lay the sheets anew once nothing has changed for a moment, if they are looked at."""
        if self.on_screen and not (self.fresh and self._weighed_now()):
            self._idle.start()

    def show(self, on_screen: bool) -> None:
        """Say whether the stage is on screen; what is not looked at is not worked out."""
        self.on_screen = on_screen
        if on_screen:
            self.older.read()
            self.lay_now()
        else:
            self._idle.stop()

    @property
    def fresh(self) -> bool:
        """Return whether the sheets, or the refusal, are those of what is asked for now."""
        return _same(self._made_of, self.asked())

    @property
    def laying(self) -> bool:
        """Return whether sheets are being worked out."""
        return self._laying is not None

    def _weighed_now(self) -> bool:
        """Return whether it is known which of the sheets on the bench are old."""
        weighing = self._weighable()
        return weighing is None or self.older.knows(weighing)

    def lay_now(self) -> None:
        """Work out the sheets, unless they are there or on their way."""
        asked = self.asked()
        if self._laying is not None or self._weighing is not None or not self.on_screen:
            return
        if self.fresh:
            self._weigh()
            return
        if not asked[1].only:
            self._take(asked, NotMade("--only", self._nothing()))
            return
        self._laying = asked
        self.changed.emit()
        self.runner.start(lay_out, asked, partial(self._laid, asked))

    def _weigh(self) -> None:
        """Work out which sheets on the bench are old, once the whole set could be laid."""
        weighing = self._weighable()
        if weighing is None or self.refused is not None or self.older.knows(weighing):
            return
        self._weighing = weighing
        self.runner.start(weigh, weighing, partial(self._weighed, weighing))

    def _weighed(self, weighing: Weighing, found: Weighed | NotMade) -> None:
        self._weighing = None
        now, before = self._weighable(), self.swap_numbers()
        if now is not None and now.layout is weighing.layout and now.now is weighing.now:
            self.older.take(weighing, found)
            if self.swap_numbers() != before:
                self._look_at_first()
            self.laid += 1
            self.changed.emit()
        self.lay_now()

    def _look_at_first(self) -> None:
        """Take the first sheet that is printed in hand."""
        numbers = self.swap_numbers()
        self.chosen = numbers[0] - 1 if numbers else 0
        self.laid += 1

    def _nothing(self) -> str:
        if not self.kinds():
            return "There is no board to drill and no gear to cut yet."
        return "Nothing is switched on. Press a stack to print it."

    def _laid(self, asked: Asked, made: Sheets | NotMade) -> None:
        self._laying = None
        if _same(asked, self.asked()):
            self._take(asked, made)
        self.lay_now()  # what came may be of an older layout; else the sheets on the bench are weighed

    def _take(self, asked: Asked, made: Sheets | NotMade) -> None:
        if self._made_of is not None and self._made_of[0] is not asked[0]:
            self._unsay()  # what was saved is of an older layout
        self._made_of = asked
        self.laid += 1
        if isinstance(made, NotMade):
            self.refused = made
            if made.place == "--only":
                self.all_sheets = None
        else:
            self.all_sheets, self.refused, self.paper = made, None, asked[1].paper
            self.chosen = min(self.chosen, self.count() - 1)
        self.changed.emit()

    def broke(self) -> None:
        """Say that the work itself broke; it was reported."""
        asked, self._laying, self.pressing = self._laying or self.asked(), None, False
        if self._weighing is not None:
            self.older.take(self._weighing, NotMade("", BROKEN))
            self._weighing = None
        self._take(asked, NotMade("", BROKEN))

    def _forget(self) -> None:
        """Begin anew with another vehicle; choices of the printer stay."""
        self.all_sheets, self.refused, self._made_of = None, None, None
        self.laid += 1
        self.chosen = 0
        self._unsay()
        self.older.forget()
        self.older.read()
        self.choices = replace(self.choices, off=frozenset(), units=None, whole=False)
        self._take_paper_of_bench()
        self.follow()
        self.changed.emit()

    def _take_paper_of_bench(self) -> None:
        """Begin with the paper that the sheets on the bench are of."""
        bench = self.older.bench
        if bench is not None and bench.options.paper in words.PAPERS:
            of = bench.options
            self.choices = replace(self.choices, paper=of.paper, margin=of.margin, face=of.face)

    def _unsay(self) -> None:
        self.saved, self.saved_words, self.log_words = None, "", ""

    # --- the sheet in hand ---

    def boards(self) -> tuple[LaidBoard, ...]:
        """Return the boards with their sheets, none when no template is printed."""
        return self.sheets.laid if self.sheets else ()

    def sheet(self) -> tuple[LaidBoard, LaidSheet] | None:
        """Return the template's sheet in hand with its board, None when it is one of cards."""
        number = self.chosen + 1  # template sheets come first, numbered in their order
        return next(((b, s) for b, s in sheets_of(self.boards()) if s.number == number), None)

    def count(self, kind: str | None = None) -> int:
        """Return how many sheets there are, of one kind or of all."""
        pages = self.sheets.pages if self.sheets else ()
        return sum(kind is None or page.sheet == kind for page in pages)

    def to_print(self, kind: str | None = None) -> int:
        """Return how many sheets would be printed now, of one kind or of all."""
        if self.swapping:
            return len(self.swap_numbers()) if kind in (None, "drill") else 0
        return self.count(kind)

    def take(self, index: int) -> bool:
        """Take the sheet at a place of the pile in hand; return False past either end."""
        if not 0 <= index < self.count():
            return False
        if index != self.chosen:
            self.chosen = index
            self.looked.emit()
        return True

    def step(self, side: Side) -> None:
        """Take the neighbour on a side in hand; of cards, the next or last one."""
        found = self.sheet()
        if found is None:
            self.take(self.chosen + (1 if side in ("right", "below") else -1))
            return
        neighbour: int | None = getattr(found[1], side)
        if neighbour is not None:
            self.take(neighbour - 1)

    # --- the PDF ---

    def ready(self) -> bool:
        """Return whether a PDF can be made now."""
        known = self._weighed_now() or not self.swapping
        return self.refused is None and bool(self.wanted()) and not self.pressing and known

    def make_pdf(self, path: Path) -> None:
        """Make the PDF of what is asked for now and write it; the draft of a job file is kept first.

        Nothing happens while it is not known which sheets are old.
        """
        if self.swapping and not self._weighed_now():
            return
        remember_paper(self.choices.paper, self.choices.margin)
        self._unsay()
        job = self.place.job
        layout, options = self.asked_for()
        try:
            asked = layout, options.with_revision(revision_to_print(job))
        except Refused as refused:
            self.saved_words = not_made(refused).says
            self.changed.emit()
            return
        self.pressing = True
        self.changed.emit()
        self.runner.start(press, asked, partial(self._pressed, job, asked, path))

    def _pressed(self, job: Job, asked: Asked, path: Path, made: Pressed | NotMade) -> None:
        self.pressing = False
        if isinstance(made, NotMade):
            self.refused = made
        elif self._write(path, made):
            self._log(job, asked, made)
        self.changed.emit()
        self.lay_now()

    def _write(self, path: Path, made: Pressed) -> bool:
        try:
            write_whole(path, made.pdf)
        except Refused as refused:
            self.saved_words = not_made(refused).says
            return False
        self.saved, self.saved_words = path, words.saved(made.count, path.name)
        return True

    def _log(self, job: Job, asked: Asked, made: Pressed) -> None:
        """Log a print that is written; the sheets on screen stay true, for only `printed` is another."""
        (layout, options), same = asked, self.fresh
        try:
            logged = job is self.place.job and log_print(job, layout, options, made.kinds, made.count)
        except Refused as refused:
            self.log_words = f"Not in the print log: {not_made(refused).says}"
            return
        if logged:
            if same:
                self._made_of = self.asked()
            self.older.read()
            self.laid += 1
            self.place.said.emit(words.printed_as(options.revision))
        elif job.looking:
            self.log_words = words.NOT_LOGGED


def _same(a: Asked | None, b: Asked) -> bool:
    """Return whether two prints are of the same layout, as an object, and of equal options."""
    return a is not None and a[0] is b[0] and a[1] == b[1]
