"""The printing desk: what is to be printed, the sheets that come of it, which one is in hand."""

from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path
from typing import Literal

from PySide6.QtCore import QObject, QTimer, Signal

from bayboard.job.runner import Runner
from bayboard.model.layout import Units
from bayboard.model.refused import Refused
from bayboard.paper.form import LEAST_MARGIN, MARGIN
from bayboard.paper.options import Options
from bayboard.store.files import write_whole
from bayboard.window.last import last_paper, remember_paper
from bayboard.window.print import words
from bayboard.window.print.laid import LaidBoard, LaidSheet, sheets_of
from bayboard.window.print.making import Asked, NotMade, Pressed, Sheets, lay_out, not_made, press
from bayboard.window.workplace import Workplace

MOST_MARGIN = 50.0  # mm; a wider one that was remembered is a slip
IDLE = 150  # ms without a further change after which the sheets are laid anew
Side = Literal["left", "right", "above", "below"]
BROKEN = "The sheets cannot be drawn. What went wrong is in the log; your layout is as it was."


@dataclass(frozen=True, slots=True)
class Choices:
    """What a person chose on the Card and the ledge; `units` None are those of the layout."""

    paper: str
    margin: float = MARGIN
    face: Literal["front", "back"] = "front"
    units: Units | None = None
    off: frozenset[str] = frozenset()


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
        self.sheets: Sheets | None = None  # the last ones that could be made
        self.refused: NotMade | None = None
        self.chosen = 0  # which page is in hand
        self.saved: Path | None = None
        self.saved_words = ""
        self.pressing = False
        self.paper = ""  # of the sheets that are shown
        self.laid = 0  # how many times sheets came: two equal counts mean the same sheets
        self._made_of: Asked | None = None
        self._laying: Asked | None = None
        self._path: Path | None = None
        self._idle = QTimer(self)
        self._idle.setSingleShot(True)
        self._idle.setInterval(IDLE)
        self._idle.timeout.connect(self.lay_now)
        place.changed.connect(self.follow)
        place.opened.connect(self._forget)

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
        """Return what would be printed now."""
        chosen = self.choices
        options = Options(chosen.paper, self.wanted(), chosen.margin, chosen.face, self.units)
        return self.place.layout, options

    def choose(self, **changes: object) -> None:
        """Choose paper, margin, face or units."""
        chosen = replace(self.choices, **changes)
        if chosen != self.choices:
            self.choices = chosen
            self.saved, self.saved_words = None, ""
            self.changed.emit()
            self.follow()

    def switch(self, kind: str) -> None:
        """Switch a kind of sheet off or on again; one without content stays as it is."""
        if kind in self.kinds():
            self.choose(off=self.choices.off ^ {kind})

    # --- the sheets ---

    def follow(self) -> None:
        """Lay the sheets anew once nothing has changed for a moment, if they are looked at."""
        if self.on_screen and not self.fresh:
            self._idle.start()

    def show(self, on_screen: bool) -> None:
        """Say whether the stage is on screen; what is not looked at is not worked out."""
        self.on_screen = on_screen
        if on_screen:
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

    def lay_now(self) -> None:
        """Work out the sheets, unless they are there or on their way."""
        asked = self.asked()
        if self.fresh or self._laying is not None or not self.on_screen:
            return
        if not asked[1].only:
            self._take(asked, NotMade("--only", self._nothing()))
            return
        self._laying = asked
        self.changed.emit()
        self.runner.start(lay_out, asked, partial(self._laid, asked))

    def _nothing(self) -> str:
        if not self.kinds():
            return "There is no board to drill and no gear to cut yet."
        return "Nothing is switched on. Press a stack to print it."

    def _laid(self, asked: Asked, made: Sheets | NotMade) -> None:
        self._laying = None
        if _same(asked, self.asked()):
            self._take(asked, made)
        else:
            self.lay_now()  # what came is of an older layout

    def _take(self, asked: Asked, made: Sheets | NotMade) -> None:
        if self._made_of is not None and self._made_of[0] is not asked[0]:
            self.saved, self.saved_words = None, ""  # what was saved is of an older layout
        self._made_of = asked
        self.laid += 1
        if isinstance(made, NotMade):
            self.refused = made
            if made.place == "--only":
                self.sheets = None
        else:
            self.sheets, self.refused, self.paper = made, None, asked[1].paper
            self.chosen = min(self.chosen, len(made.pages) - 1)
        self.changed.emit()

    def broke(self) -> None:
        """Say that the work itself broke; it was reported."""
        asked, self._laying, self.pressing = self._laying or self.asked(), None, False
        self._take(asked, NotMade("", BROKEN))

    def _forget(self) -> None:
        """Begin anew with another vehicle; choices of the printer stay."""
        self.sheets, self.refused, self._made_of = None, None, None
        self.laid += 1
        self.chosen, self.saved, self.saved_words = 0, None, ""
        self.choices = replace(self.choices, off=frozenset(), units=None)
        self.follow()
        self.changed.emit()

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
        return self.refused is None and bool(self.wanted()) and not self.pressing

    def make_pdf(self, path: Path) -> None:
        """Make the PDF of what is asked for now and write it to a file."""
        self._path, self.pressing = path, True
        remember_paper(self.choices.paper, self.choices.margin)
        self.saved, self.saved_words = None, ""
        self.changed.emit()
        self.runner.start(press, self.asked(), self._pressed)

    def _pressed(self, made: Pressed | NotMade) -> None:
        self.pressing = False
        if isinstance(made, NotMade):
            self.refused = made
        elif self._path is not None:
            self._write(self._path, made)
        self.changed.emit()

    def _write(self, path: Path, made: Pressed) -> None:
        try:
            write_whole(path, made.pdf)
        except Refused as refused:
            self.saved_words = not_made(refused).says
        else:
            self.saved, self.saved_words = path, words.saved(made.count, path.name)


def _same(a: Asked | None, b: Asked) -> bool:
    """Return whether two prints are of the same layout, as an object, and of equal options."""
    return a is not None and a[0] is b[0] and a[1] == b[1]


def first_choices(units: Units) -> Choices:
    """Return what one begins with: what was printed with last, else the paper that goes with the units."""
    last = last_paper()
    if last is None or last[0] not in words.PAPERS or not LEAST_MARGIN <= last[1] <= MOST_MARGIN:
        return Choices("letter" if units == "in" else "a4")
    return Choices(*last)
