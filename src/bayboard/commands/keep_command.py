"""`bayboard keep FILE --note TEXT`: keep the draft of a job file as a revision."""

import argparse
from contextlib import closing

from bayboard.commands.opened import tell
from bayboard.job.job import open_job
from bayboard.model.refused import Refused
from bayboard.store.named import job_named
from bayboard.store.revisions import LONGEST_NOTE


def describe(parser: argparse.ArgumentParser) -> None:
    """Add the command's words to `parser`."""
    parser.add_argument("file", metavar="FILE", help="a .bay job file")
    parser.add_argument("--note", required=True, metavar="TEXT", help="what this revision is")


def run(chosen: argparse.Namespace) -> int:
    """Keep the draft and say its number; return 0."""
    if len(chosen.note) > LONGEST_NOTE:
        raise Refused("--note", f"the note is longer than {LONGEST_NOTE} letters", "Shorten it")
    with closing(open_job(job_named(chosen.file))) as job:
        tell(job.file)
        kept = job.keep(chosen.note)
    print(f"Kept as revision {kept.number}.")
    return 0
