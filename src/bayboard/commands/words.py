"""Reading the words of a command line; a mistake in them is one sentence, like any bad input."""

import argparse
import os
from datetime import UTC, datetime
from pathlib import Path
from typing import NoReturn

from bayboard.model.refused import Refused
from bayboard.store.sentences import is_there, path_words

FILE = "a .json layout, a .bay job file (its draft), or JOB.bay@3 (revision 3)"


class Words(argparse.ArgumentParser):
    """An argument parser that refuses in one sentence instead of printing its usage."""

    def error(self, message: str) -> NoReturn:
        """Raise `Refused` with the parser's complaint and the way to the help."""
        raise Refused("", " ".join(message.split()), f"`{self.prog} --help` shows how it is written")


def not_the_same(out: Path, read: Path, name: str, which: str = "the file that is read") -> None:
    """Raise `Refused` when `out` is the file `read`, however it is spelled; `which` says what that is."""
    same = is_there(out) and is_there(read) and out.samefile(read)
    if same or os.path.realpath(out) == os.path.realpath(read):
        raise Refused(name, f"{path_words(out)} is {which}", "Name another file to write")


def local_time(stored: str) -> str:
    """Return a stored time (UTC) as people read it here: "2026-11-25 15:43"; as it is where it is none."""
    try:
        moment = datetime.strptime(stored, "%Y-%m-%dT%H:%M:%SZ").replace(tzinfo=UTC)
        return moment.astimezone().strftime("%Y-%m-%d %H:%M")
    except (ValueError, OverflowError, OSError):
        return stored
