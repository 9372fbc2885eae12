"""Reading the words of a command line; a mistake in them is one sentence, like any bad input."""

import argparse
from pathlib import Path
from typing import NoReturn

from bayboard.model.refused import Refused


class Words(argparse.ArgumentParser):
    """An argument parser that refuses in one sentence instead of printing its usage."""

    def error(self, message: str) -> NoReturn:
        """Raise `Refused` with the parser's complaint and the way to the help."""
        raise Refused("", message, f"`{self.prog} --help` shows how it is written")


def not_the_same(out: Path, read: Path, name: str, which: str = "the file that is read") -> None:
    """Raise `Refused` when `out` is the file `read`, however it is spelled; `which` says what that is."""
    same = out.exists() and read.exists() and out.samefile(read)
    if same or out.absolute() == read.absolute():
        raise Refused(name, f"{out} is {which}", "Name another file to write")
