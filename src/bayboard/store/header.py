"""The first hundred bytes of a job file and what lies beside it, read before SQLite sees either.

Offsets are those of the SQLite file format, https://www.sqlite.org/fileformat.html sections 1.3 and 3.
"""

from dataclasses import dataclass
from pathlib import Path

from bayboard.model.refused import Refused
from bayboard.store.open_here import is_open_here
from bayboard.store.schema import APPLICATION, FORM
from bayboard.store.sentences import path_words, unopened
from bayboard.store.troubles import damaged

ENDING = ".bay"
_MAGIC = b"SQLite format 3\0"
_LENGTH = 100
_JOURNAL_MAGIC = bytes.fromhex("d9d505f920a163d7")


@dataclass(frozen=True, slots=True)
class Header:
    """What a job file says of itself; `logged`: another program left it with a write-ahead log."""

    form: int
    logged: bool


def read_header(path: Path) -> Header:
    """Return the header of a job file; raise `Refused` when the file is not one."""
    if is_open_here(path):
        return Header(FORM, logged=False)
    start = _start(path)
    if len(start) < _LENGTH and start and _MAGIC.startswith(start[: len(_MAGIC)]):
        raise damaged(path, "this job file is cut short")
    if not start.startswith(_MAGIC) or _number(start, 68) != APPLICATION:
        what = "this is not a job file" if start else "this file is empty"
        raise Refused(path_words(path), what, f"A job file ends in {ENDING}; choose another")
    form = _number(start, 60)
    if form <= FORM and _number(start, 56) != 1:
        raise damaged(path, "this job file's first page is damaged")
    return Header(form, logged=start[18] == 2 or start[19] == 2)


def is_job_file(path: Path) -> bool:
    """Return whether a file is a job file by what is in it; by its ending when that tells nothing."""
    if is_open_here(Path(path)):
        return True
    named = Path(path).suffix.lower() == ENDING
    try:
        start = _start(Path(path))
    except Refused:
        return named
    if start.startswith(_MAGIC) and _number(start, 68) == APPLICATION:
        return True
    return named and not start.lstrip().startswith(b"{")


def journal_of(path: Path) -> Path:
    """Return where SQLite keeps what it needs to take the last change back."""
    return path.with_name(path.name + "-journal")


def has_journal(path: Path) -> bool:
    """Return whether a change was begun and not ended: a journal that can be played back lies beside.

    Raises `Refused` for a journal that names another file, or is no plain file itself.
    """
    journal = journal_of(path)
    if journal.is_symlink() or (journal.exists() and not journal.is_file()):
        raise _not_ours(path, journal)
    try:
        with journal.open("rb") as file:
            start = file.read(len(_JOURNAL_MAGIC))
            file.seek(max(0, file.seek(0, 2) - len(_JOURNAL_MAGIC)))
            end = file.read()
    except FileNotFoundError:
        return False
    except OSError as error:
        raise unopened(journal, error) from None
    if end == _JOURNAL_MAGIC and journal.stat().st_size > 16:
        # such an end names a file that SQLite would look for, and delete
        raise _not_ours(path, journal)
    return start == _JOURNAL_MAGIC


def _not_ours(path: Path, beside: Path) -> Refused:
    return Refused(
        path_words(path), f"{path_words(Path(beside.name))} beside it is not Bayboard's", "Move it away first"
    )


def log_of(path: Path) -> Path:
    """Return where SQLite would keep a write-ahead log, which a job file never has."""
    return path.with_name(path.name + "-wal")


def refuse_side_files(path: Path) -> None:
    """Raise `Refused` when what lies beside `path` would be taken for part of a new file there."""
    for side in (journal_of(path), log_of(path)):
        if side.exists():
            raise Refused(path_words(side), "this belongs to a job file that is gone", "Move it away first")


def _start(path: Path) -> bytes:
    try:
        if path.exists() and not path.is_file() and not path.is_dir():
            raise Refused(path_words(path), "this is not a plain file", "Name another file")
        with path.open("rb") as file:
            return file.read(_LENGTH)
    except (OSError, ValueError) as error:
        raise unopened(path, error, ENDING) from None


def _number(start: bytes, offset: int) -> int:
    return int.from_bytes(start[offset : offset + 4], "big")
