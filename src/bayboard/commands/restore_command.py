"""`bayboard restore FILE A`: make an old revision the draft again; the present draft is kept first."""

import argparse
from contextlib import closing

from bayboard.commands.opened import tell
from bayboard.job.job import open_job
from bayboard.model.refused import Refused
from bayboard.store.named import job_named, revision_named


def describe(parser: argparse.ArgumentParser) -> None:
    """Add the command's words to `parser`."""
    parser.add_argument("file", metavar="FILE", help="a .bay job file")
    parser.add_argument("revision", metavar="A", help="the revision's number")


def run(chosen: argparse.Namespace) -> int:
    """Go back and say what became of the draft; return 0."""
    number = revision_named(chosen.revision)
    if number is None:
        raise Refused("", "the draft is what one works on already", "Name a revision by its number")
    with closing(open_job(job_named(chosen.file))) as job:
        tell(job.file)
        before = len(job.revisions())
        job.restore(number)
        kept = job.revisions()[before:]
    if kept:
        print(f"The draft was kept as revision {kept[0].number}.")
    print(f"The draft is revision {number} again.")
    return 0
