"""Job files to stand on a shelf, small and quick to make."""

import os
import time

from msgspec.structs import replace
from tests.build import layout

from bayboard.store.job_file import make_job_file

PNG = bytes.fromhex(
    "89504e470d0a1a0a0000000d494844520000000100000001080000000"
    "03a7e9b550000000a49444154789c636000000002000148afa4710000000049454e44ae426082"
)


def vehicle(folder, stem, name=None, note="", notes=(), picture=PNG, aged=True):
    """Make a job file with a revision for each note and return its path, last changed long ago."""
    path = folder / f"{stem}.bay"
    plain = layout()
    named = replace(plain, vehicle=replace(plain.vehicle, name=name or stem, note=note))
    with make_job_file(path, named, picture=picture) as file:
        for each in notes:
            file.keep(each)
    return age(path) if aged else path


def age(path, seconds=3600.0):
    """Set a file's time of change back, so that its clock has certainly ticked since."""
    then = time.time() - seconds
    os.utime(path, (then, then))
    return path


def rename_in(path, name):
    """Give the vehicle in a job file another name."""
    from bayboard.store.job_file import open_job_file

    with open_job_file(path) as file:
        draft = file.draft()
        made = replace(draft.layout, vehicle=replace(draft.layout.vehicle, name=name))
        file.write(made, upto=draft.at, add=[("Name", made)], at=draft.at + 1)


def names(found):
    """Return the vehicles' names, as listed."""
    return [each.facts.name for each in found]
