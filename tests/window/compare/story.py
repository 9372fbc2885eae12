"""A vehicle with a past: the crew pickup, kept six times by real edits, printed once and drilled a little."""

import tempfile
from datetime import UTC, datetime, timedelta
from functools import cache
from pathlib import Path
from unittest import mock

from bayboard.edits.drill_hole import DrillHole
from bayboard.edits.move_gear import MoveGear
from bayboard.edits.place_gear import PlaceGear
from bayboard.job.job import Job, open_job
from bayboard.model.read import read
from bayboard.store import sealed
from bayboard.store.job_file import PrintLine

PICKUP = Path(__file__).resolve().parents[3] / "demo_layouts" / "crew-pickup-rear-wall.json"
INCH = 25.4
LINE = PrintLine(
    revision="4", paper="letter", face="front", sheets=("drill", "cards"), words="walnut harbour", pages=21
)


def pickup(path):
    """Return the pickup's job in a job file at `path`: six revisions and a draft that goes on from them."""
    path.write_bytes(_kept())
    return open_job(path)


@cache
def _kept():
    """Return the job file, let go of; lived through once, copied for each test."""
    job = Job(read(PICKUP.read_bytes()))
    _Clock.at = datetime.now(UTC) - timedelta(days=23)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "pickup.bay"
        with mock.patch.object(sealed, "datetime", _Clock):
            job.house(path)
            _past(job)
            job.close()
        return path.read_bytes()


class _Clock(datetime):
    """A clock of the store that is put on by days: cards then show days, not the time of this morning."""

    at = None

    @classmethod
    def now(cls, tz=None):
        return cls.at

    @classmethod
    def later(cls, days):
        cls.at += timedelta(days=days)


def _past(job):
    for days, note, edits in _CHAPTERS:
        _Clock.later(days)
        for edit in edits:
            job.do(edit)
        if job.keep(note).number == 4:
            job.log_print(LINE, None)
    _Clock.later(1)
    for edit in _DRAFT:
        job.do(edit)
    job.flush()


_CHAPTERS = (
    (
        0,
        "as measured",
        (
            MoveGear(("A2",), -1.0 * INCH, -2.0 * INCH),
            MoveGear(("D1",), -2.0 * INCH, -0.5 * INCH),
            MoveGear(("P1",), -0.5 * INCH, 0.5 * INCH),
        ),
    ),
    (1, "first mock-up with card", (MoveGear(("P1",), 0.5 * INCH, 0.25 * INCH),)),
    (1, "first mock-up", (MoveGear(("A4",), 0.25 * INCH, 0.0),)),
    (
        2,
        "Shown to owner. Wants the processor lights in view with the seat down.",
        (MoveGear(("P1",), 0.0, -0.75 * INCH), MoveGear(("A4",), -0.25 * INCH, 0.0)),
    ),
    (5, "wake-up added", (PlaceGear("W1", (48.6 * INCH, 9.0 * INCH)),)),
    (2, "wired", (DrillHole("H7"), DrillHole("H8"))),
)
_DRAFT = (
    MoveGear(("A2",), 1.0 * INCH, 2.0 * INCH),
    MoveGear(("B1",), 0.6875 * INCH, -0.8125 * INCH),
    MoveGear(("D1",), 2.0 * INCH, 0.5 * INCH),
)
