"""Layouts to drill and hands to drill them with."""

from tests.build import card, gear, layout
from tests.window.hands import Hands

from bayboard.job.job import Job
from bayboard.window.drill_day.book import Book
from bayboard.window.drill_day.stage import add_drill_day
from bayboard.window.theme import LIGHT
from bayboard.window.workplace import Workplace

SCREWED = card(100, 60, screws=[{"at": [x, y], "thread": "M5"} for x in (-40, 40) for y in (-20, 20)])
SLOT = {"id": "H3", "at": [500, 380], "thread": "M6", "slot": {"travel": 9, "angle": 90}}


def board_day(**members):
    """Return one board: A1 with four screws, round fixings H1 and H2, the slot H3: eight drillings."""
    plain = {
        "cards": {"amp": SCREWED},
        "gear": [gear("A1", 300, 200, "amp")],
        "fixings": [
            {"id": "H1", "at": [20, 20], "thread": "M6"},
            {"id": "H2", "at": [980, 380], "thread": "M6"},
            SLOT,
        ],
    }
    return layout(**(plain | members))


def two_boards():
    """Return two boards with one fixing each, nothing else to drill."""
    doc = {"outline": [[0, 0], [400, 0], [400, 300], [0, 300]], "thickness": 10, "standoff": 20}
    far = doc | {"outline": [[500, 0], [900, 0], [900, 300], [500, 300]]}
    return layout(
        boards=[{"id": "LEFT"} | doc, {"id": "RIGHT"} | far],
        fixings=[
            {"id": "H1", "at": [50, 50], "thread": "M6", "board": "LEFT"},
            {"id": "H2", "at": [850, 50], "thread": "M6", "board": "RIGHT"},
        ],
    )


def book_on(made, path=None):
    """Return the book of a layout; with a path it has a job file there."""
    job = Job(made)
    if path is not None:
        job.house(path)
    return Book(Workplace(job, LIGHT))


def drill_all(book, count=99):
    """Drill what comes, measuring the datum holes where that is asked; return the holes in that order."""
    made = []
    while len(made) < count and (book.now() or book.check()):
        now = book.now()
        if now is None:
            book.confirm()
        else:
            assert book.drill()
            made.append((now.hole.id, now.part))
    return made


class DayHands(Hands):
    """A window at drill day; its clock makes every press a press of its own."""

    def __init__(self, made=None, size=(1600, 1000), path=None):
        super().__init__(made or board_day(), size)
        if path is not None:
            self.place.job.house(path)
        self.day = add_drill_day(self.window)
        self.seconds = 0.0
        self.day.view.clock = self._tick
        self.window.show_stage("Drill day")
        self.app.processEvents()

    def _tick(self):
        self.seconds += 1.0
        return self.seconds

    @property
    def view(self):
        return self.day.view

    @property
    def book(self):
        return self.day.book

    @property
    def shown(self):
        return self.view.show_now()

    def at_hole(self, hole, part=1):
        """Return the pixel of the window where a hole is painted."""
        from bayboard.window.drill_day.paint_board import scale_of

        board = self.view.board
        dot = next(d for d in board.board.dots if (d.hole, d.part) == (hole, part))
        at = scale_of(board.board, board.rect_of(), board.unit).px(*dot.at)
        return board.mapTo(self.window, at)

    def middle(self, widget):
        """Return the pixel of the window in the middle of a part."""
        return widget.mapTo(self.window, widget.rect().center().toPointF())
