"""The shelf of vehicles without a window: where it is, what a new vehicle's file is called, what is on it."""

import os
from pathlib import Path

import platformdirs

from bayboard.job.picture import picture
from bayboard.store.shelf import Shelf

FOLDER = "Bayboard"  # in the user's documents
VARIABLE = "BAYBOARD_SHELF"  # of the environment: another folder
INDEX = "shelf.sqlite3"
ENDING = ".bay"
LONGEST = 60  # letters of a file's name
MOST_BYTES = 180  # of a file's name; what lies beside a file needs some more
NAMELESS = "vehicle"
# names that mean a device on Windows, whatever their ending
_DEVICES = {"con", "prn", "aux", "nul", *(f"{kind}{n}" for kind in ("com", "lpt") for n in range(10))}


def shelf_folder() -> Path:
    """Return the folder that new vehicles are put in; it is made when the first one is."""
    named = os.environ.get(VARIABLE, "")
    return Path(named) if named else Path(platformdirs.user_documents_dir()) / FOLDER


def fresh_path(folder: Path, vehicle_name: str) -> Path:
    """Return a path in `folder`, which is made, for a new job file named after the vehicle.

    Nothing is there yet.  Raises `OSError` when the folder cannot be made.
    """
    folder.mkdir(parents=True, exist_ok=True)
    name = plain_name(vehicle_name)
    number, path = 1, folder / f"{name}{ENDING}"
    while os.path.lexists(path):
        number += 1
        path = folder / f"{name}-{number}{ENDING}"
    return path


def plain_name(vehicle_name: str) -> str:
    """Return a vehicle's name as a file may be called on every system: letters, figures and hyphens."""
    kept = "".join(letter if letter.isalnum() or letter in "-_" else " " for letter in vehicle_name)
    name = "-".join(kept.split())[:LONGEST]
    while len(name.encode("utf-8")) > MOST_BYTES:
        name = name[:-1]
    name = name.strip("-_")
    if not name:
        return NAMELESS
    return f"{name}-{NAMELESS}" if name.lower() in _DEVICES else name


def open_shelf(data_folder: Path) -> Shelf:
    """Return the shelf whose index lies in `data_folder`; it is used by one thread."""
    return Shelf(data_folder / INDEX, picture)
