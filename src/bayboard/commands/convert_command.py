"""`bayboard convert IN OUT`: write a layout in its normal form."""

import argparse
from pathlib import Path

from bayboard.commands.words import not_the_same
from bayboard.model.refused import Refused
from bayboard.store.files import open_layout, save_layout


def describe(parser: argparse.ArgumentParser) -> None:
    """Add the command's words to `parser`."""
    parser.add_argument("read", type=Path, metavar="IN", help="a .json layout")
    parser.add_argument("out", type=Path, metavar="OUT", help="the .json to write, replaced whole")


def run(chosen: argparse.Namespace) -> int:
    """Write the layout; return 0."""
    if chosen.out.suffix.lower() != ".json":
        raise Refused("OUT", f"{chosen.out} does not end in .json", "Name a .json file")
    not_the_same(chosen.out, chosen.read, "OUT")
    save_layout(chosen.out, open_layout(chosen.read))
    return 0
