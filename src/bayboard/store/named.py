"""What the FILE of a command names: a plain layout, a job file's draft, or one of its revisions."""

import re
from dataclasses import dataclass
from pathlib import Path

from bayboard.model.layout import Layout
from bayboard.model.refused import Refused
from bayboard.store.header import is_job_file, read_header
from bayboard.store.job_file import JobFile
from bayboard.store.sentences import is_file, is_there, path_words

DRAFT = "draft"
_NAMED = re.compile(r"(?P<path>.+)@(?P<revision>[^@/\\]*)", re.DOTALL)


@dataclass(frozen=True, slots=True)
class Named:
    """A file, and the revision asked for; `revision` None is its draft."""

    path: Path
    revision: int | None = None

    @property
    def is_job(self) -> bool:
        """Return whether the file is a job file."""
        return is_job_file(self.path)


def named(word: str) -> Named:
    """Return what a word such as `JOB.bay@3` names; raise `Refused` when what follows @ is no revision.

    A file that is called so, @ and all, is that file.
    """
    found = _NAMED.fullmatch(word)
    if found is None or is_there(word):
        return Named(Path(word))
    path = Path(found["path"])
    if path.suffix.lower() != ".bay" and not is_there(path):
        return Named(Path(word))
    return Named(path, revision_named(found["revision"]))


def revision_named(word: str) -> int | None:
    """Return the number of a revision, None for "draft"; raise `Refused` for anything else."""
    if word == DRAFT:
        return None
    if not re.fullmatch(r"[0-9]{1,9}", word):
        raise Refused("", f"{word!r} is no revision", "Name it by its number, or 'draft'")
    return int(word)


def job_named(word: str) -> Path:
    """Return the path of the job file; raise `Refused` for one revision, JOB.bay@3, and for what is none."""
    what = named(word)
    if what.revision is not None:
        raise Refused(path_words(Path(word)), "this is one revision, not the job file", "Leave the @ off")
    if not what.is_job:
        if is_file(what.path) and what.path.suffix.lower() in (".json", ".bay"):
            raise _plain(what.path)
        read_header(what.path)  # says what is there instead
    return what.path


def _plain(path: Path) -> Refused:
    new = path.with_name(f"{path.stem}{'-job' * (path.suffix.lower() == '.bay')}.bay")
    convert = f"bayboard convert {path_words(path)} {path_words(new)}"
    what = "a plain .json layout holds no revisions"
    return Refused(path_words(path), what, f"Make a job file of it: {convert}")


def layout_in(file: JobFile, revision: int | None) -> Layout:
    """Return the draft of a job file, or a revision; raise `Refused` when there is none of that number."""
    return file.draft().layout if revision is None else file.revision(revision)
