"""`bayboard keep FILE --note TEXT`: keep the draft of a job file as a revision."""

import argparse
from contextlib import closing

from bayboard.commands.words import job_path
from bayboard.job.job import open_job


def describe(parser: argparse.ArgumentParser) -> None:
    """Add the command's words to `parser`."""
    parser.add_argument("file", metavar="FILE", help="a .bay job file")
    parser.add_argument("--note", required=True, metavar="TEXT", help="what this revision is")


def run(chosen: argparse.Namespace) -> int:
    """Keep the draft and say its number; return 0."""
    with closing(open_job(job_path(chosen.file))) as job:
        kept = job.keep(chosen.note)
    print(f"Kept as revision {kept.number}.")
    return 0
