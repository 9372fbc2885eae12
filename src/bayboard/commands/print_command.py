"""`bayboard print FILE --paper P --out OUT.pdf`: full-size sheets as a PDF, with a map if asked."""

import argparse
import json
from contextlib import closing
from pathlib import Path

from bayboard.commands.opened import layout_of, tell
from bayboard.commands.words import FILE, not_the_same
from bayboard.job.job import open_job
from bayboard.job.printing import print_now
from bayboard.model.refused import Refused
from bayboard.paper.book import PAPERS, SHEETS, Book, Options, book
from bayboard.store.files import write_all
from bayboard.store.header import is_job_file
from bayboard.store.named import Named, named
from bayboard.store.sentences import is_there, path_words


def describe(parser: argparse.ArgumentParser) -> None:
    """Add the command's words to `parser`."""
    parser.add_argument("file", metavar="FILE", help=FILE)
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
    """Write the PDF, and the map if asked; a print of a job file is logged in it.  Return 0."""
    what = named(chosen.file)
    for name, out in (("--out", chosen.out), ("--map", chosen.map)):
        if out is not None:
            not_the_same(out, what.path, name)
            _not_a_job_file(out, name)
    if chosen.map is not None:
        not_the_same(chosen.map, chosen.out, "--map", "the file of the sheets")
    options = Options(paper=chosen.paper, only=_only(chosen.only), face=chosen.face)
    if chosen.margin is not None:
        options = options.with_margin(chosen.margin)
    if what.is_job:
        _print_job(what, options, chosen)
    else:
        layout = layout_of(what)
        _write(book(layout, options.with_units(chosen.units or layout.units)), chosen)
    return 0


def _not_a_job_file(out: Path, name: str) -> None:
    """Raise `Refused` for a job file that sheets would replace, with all that is kept in it."""
    if is_there(out) and is_job_file(out):
        raise Refused(
            name, f"{path_words(out)} is a job file, and would be lost", "Name another file to write"
        )


def _print_job(what: Named, options: Options, chosen: argparse.Namespace) -> None:
    """Print a job file's draft, or a revision of it, and say as which revision."""
    with closing(open_job(what.path)) as job:
        tell(job.file)
        units = chosen.units or job.layout.units
        print_now(job, options.with_units(units), lambda made: _write(made, chosen), what.revision)
        revision = job.prints()[-1].revision
    print(f"Printed as revision {revision}.")


def _write(made: Book, chosen: argparse.Namespace) -> None:
    """Write the PDF and the map, both or none."""
    files = {chosen.out: made.pdf()}
    if chosen.map is not None:
        files[chosen.map] = (json.dumps(made.map(), ensure_ascii=False, indent=1) + "\n").encode()
    write_all(files)


def _only(text: str | None) -> tuple[str, ...] | None:
    if text is None:
        return None
    asked = tuple(word.strip() for word in text.split(","))
    for word in asked:
        if word not in SHEETS:
            raise Refused("--only", f"'{word}' is not a kind of sheet", f"Choose of {', '.join(SHEETS)}")
    return asked
