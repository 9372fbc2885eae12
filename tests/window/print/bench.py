"""A printing bench for the tests: a layout with holes, a window with the stage in it, a runner that waits."""

from tests.build import card, gear, layout
from tests.window.hands import Hands

from bayboard.job.runner import InPlace, Ticket, finished
from bayboard.window.print.stage import add_print

AMP = card(240, 160, 60) | {
    "screws": [{"at": [x, y], "thread": "M5"} for x in (-110, 110) for y in (-70, 70)],
    "name": "Plain amp",
}


def wide(**members):
    """Return a layout that takes several sheets of A4: 900 x 400, two amps up and one on the bench."""
    board = {"outline": [[0, 0], [900, 0], [900, 400], [0, 400]], "corner_radius": 20}
    up = [gear("A1", 200, 200, "amp"), gear("A2", 600, 200, "amp")]
    waiting = {"id": "A3", "card": "amp", "at": None}
    return layout(**{"board": board, "cards": {"amp": AMP}, "gear": [*up, waiting]} | members)


class Printing(Hands):
    """A window at the Print stage; sheets are laid in place unless another runner is given."""

    def __init__(self, made=None, runner=None, size=(1600, 1000)):
        super().__init__(made or wide(), size)
        self.stage = add_print(self.window, runner or InPlace())
        self.desk = self.stage.desk
        self.window.show_stage("Print")
        self.app.processEvents()

    def rest(self):
        """Let the moment pass after which the sheets are laid anew."""
        self.desk._idle.stop()
        self.desk.lay_now()
        self.app.processEvents()

    def click_on(self, widget, at=None):
        """Press and let go over a widget, in its middle or at a point of it."""
        inside = widget.rect().center() if at is None else at.toPoint()
        spot = widget.mapTo(self.window, inside)
        self.click(spot.toPointF())


class Later:
    """A runner that keeps tasks until they are asked for, as a process under load would."""

    def __init__(self):
        self.waiting = []

    def start(self, task, payload, done, progress=None):
        ticket = Ticket()
        self.waiting.append((task, payload, done, ticket))
        return ticket

    def finish_one(self):
        task, payload, done, ticket = self.waiting.pop(0)
        done(finished(task(payload), ticket, lambda: False)[0])
