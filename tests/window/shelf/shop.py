"""A shop's shelf: invented vehicles with a past, for the pictures."""

from datetime import UTC, datetime, timedelta
from pathlib import Path
from unittest import mock

from msgspec.structs import replace
from tests.store.vehicles import age

from bayboard.job.picture import picture
from bayboard.job.shelf import fresh_path
from bayboard.model.read import read
from bayboard.store import sealed
from bayboard.store.job_file import make_job_file

DEMOS = Path(__file__).resolve().parents[3] / "demo_layouts"
# name, which demo it is like, days since it was worked on, what was noted
VEHICLES = (
    (
        "Ostrel crew pickup, rear wall",
        "crew-pickup-rear-wall",
        0,
        ("first mock-up", "shown to owner", "wired"),
    ),
    ("Tarn panel van", "bulkhead", 2, ("as measured", "second amplifier asked for, sorter goes left")),
    ("Brisk hatchback, boot floor", "floor-lid", 6, ()),
    ("Quarry flatbed", "crew-pickup-rear-wall", 13, ("wants room for a fridge",)),
    ("Överby estate", "bulkhead", 31, ("kept for the spring",)),
    ("Harbour 7-seater", "floor-lid", 58, ("two lids", "lid hinged at the back", "as printed")),
    ("Mill delivery van", "bulkhead", 97, ("first mock-up",)),
    ("Fen coupé", "floor-lid", 140, ("longer slots for the summer",)),
    ("Alder camper", "floor-lid", 410, ("under the bench seat",)),
)


class _Clock(datetime):
    """A clock of the store that is put back by days."""

    at = None

    @classmethod
    def now(cls, tz=None):
        return cls.at


def fill(folder):
    """Put the vehicles into a folder and a file that cannot be read beside them; return their paths."""
    paths = []
    with mock.patch.object(sealed, "datetime", _Clock):
        for name, demo, days, notes in VEHICLES:
            _Clock.at = datetime.now(UTC) - timedelta(days=days, minutes=40)
            paths.append(_vehicle(fresh_path(folder, name), name, demo, notes))
    harmed = folder / "Yard-trailer.bay"
    harmed.write_bytes(paths[-1].read_bytes()[:9_000])
    age(harmed, 9 * 86_400)
    return paths


def _vehicle(path, name, demo, notes):
    layout = read((DEMOS / f"{demo}.json").read_bytes())
    named = replace(layout, vehicle=replace(layout.vehicle, name=name))
    with make_job_file(path, named, picture=picture(named)) as file:
        for note in notes:
            file.keep(note)
    return path
