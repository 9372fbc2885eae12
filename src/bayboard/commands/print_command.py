"""`bayboard print FILE --paper P --out OUT.pdf`: full-size sheets as a PDF, with a map if asked."""

import argparse
import json
from pathlib import Path

from bayboard.commands.words import not_the_same
from bayboard.model.refused import Refused
from bayboard.paper.book import PAPERS, SHEETS, Options, book
from bayboard.store.files import open_layout, write_all


def describe(parser: argparse.ArgumentParser) -> None:
    """Add the command's words to `parser`."""
    parser.add_argument("file", type=Path, metavar="FILE", help="a .json layout")
    parser.add_argument("--paper", required=True, choices=PAPERS)
    parser.add_argument("--out", required=True, type=Path, metavar="OUT.pdf", help="replaced whole")
    parser.add_argument("--only", metavar="LIST", help=f"of {','.join(SHEETS)}; left out: all with content")
    parser.add_argument(
        "--face", choices=("front", "back"), default="front", help="back: for drilling from behind"
    )
    parser.add_argument("--margin", type=float, metavar="MM", help="white edge that the printer leaves")
    parser.add_argument("--units", choices=("mm", "in"), help="left out: those of the layout")
    parser.add_argument(
        "--map", type=Path, metavar="MAP.json", help="write where each thing lies on its page"
    )


def run(chosen: argparse.Namespace) -> int:
    """Write the PDF, and the map if asked; return 0."""
    for name, out in (("--out", chosen.out), ("--map", chosen.map)):
        if out is not None:
            not_the_same(out, chosen.file, name)
    if chosen.map is not None:
        not_the_same(chosen.map, chosen.out, "--map", "the file of the sheets")
    layout = open_layout(chosen.file)
    options = Options(paper=chosen.paper, only=_only(chosen.only), face=chosen.face)
    if chosen.margin is not None:
        options = options.with_margin(chosen.margin)
    made = book(layout, options.with_units(chosen.units or layout.units))
    files = {chosen.out: made.pdf()}
    if chosen.map is not None:
        files[chosen.map] = (json.dumps(made.map(), ensure_ascii=False, indent=1) + "\n").encode()
    write_all(files)
    return 0


def _only(text: str | None) -> tuple[str, ...] | None:
    if text is None:
        return None
    asked = tuple(word.strip() for word in text.split(","))
    for word in asked:
        if word not in SHEETS:
            raise Refused("--only", f"'{word}' is not a kind of sheet", f"Choose of {', '.join(SHEETS)}")
    return asked
