"""Opening what a command reads: what is to be said of a job file goes to stderr, beside the answer."""

import sys
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from bayboard.model.layout import Layout
from bayboard.model.refused import Refused
from bayboard.store.files import open_layout
from bayboard.store.job_file import JobFile, open_job_file
from bayboard.store.named import Named, layout_in
from bayboard.store.sentences import path_words
from bayboard.store.troubles import CutShort


@contextmanager
def looked_into(path: Path) -> Iterator[JobFile]:
    """Give a job file to read from; a change that a crash cut short is taken back first."""
    with closing(_look(path)) as file:
        tell(file)
        yield file


def layout_of(what: Named) -> Layout:
    """Return the layout that the FILE of a command names; raise `Refused` when there is none."""
    if what.is_job:
        with looked_into(what.path) as file:
            return layout_in(file, what.revision)
    if what.revision is not None:
        raise Refused(path_words(what.path), "a plain .json layout holds no revisions", "Leave the @ off")
    return open_layout(what.path)


def tell(file: JobFile | None) -> None:
    """Print what is to be said of this opening, a line for each sentence."""
    for sentence in file.said if file else ():
        print(f"bayboard: {path_words(file.path)}: {sentence}", file=sys.stderr)


def _look(path: Path) -> JobFile:
    try:
        return open_job_file(path, look=True)
    except CutShort:
        with open_job_file(path) as file:
            tell(file)
    return open_job_file(path, look=True)
