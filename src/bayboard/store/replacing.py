"""A job file written in place of what is there: whole or not at all, and no revision is lost by it."""

import contextlib
import os
import secrets
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path

from bayboard.model.layout import Layout
from bayboard.model.refused import Refused
from bayboard.store.files import may_be_replaced
from bayboard.store.header import refuse_side_files
from bayboard.store.job_file import Held, is_job_file, make_job_file, open_job_file
from bayboard.store.sentences import path_words, said_of


@dataclass
class Beside:
    """Where to write the new file, and what is to be said once it is in place."""

    path: Path
    said: list[str] = field(default_factory=list)


@contextlib.contextmanager
def in_place_of(out: Path) -> Iterator[Beside]:
    """Give a new name beside `out`; what was written there takes its place when all went well.

    A link is followed, its file replaced.  A job file that is there with revisions in it is not lost but
    renamed, and that is said.  Raises `Refused` when somebody works in it, or it cannot be replaced.
    """
    with said_of(out):
        target = Path(os.path.realpath(out))
        may_be_replaced(target, out)
    beside = Beside(target.with_name(f".{target.name[:40]}.{secrets.token_hex(4)}.part"))
    try:
        try:
            yield beside
        except Refused as refused:
            if refused.place != path_words(beside.path):
                raise
            raise Refused(path_words(out), refused.what, refused.do) from None
        with said_of(out):
            beside.said += _make_way(out, target)
            beside.path.replace(target)
    finally:
        with contextlib.suppress(OSError):
            beside.path.unlink(missing_ok=True)


def make_in_place(out: Path, layout: Layout, picture: bytes | None, photos: Iterable[bytes]) -> list[str]:
    """Write a new job file with nothing kept yet in place of `out`; return what is to be said."""
    with in_place_of(out) as beside:
        make_job_file(beside.path, layout, picture=picture, photos=photos).close()
    return beside.said


def _make_way(out: Path, target: Path) -> list[str]:
    """Rename a job file with revisions in it; return the sentence about it."""
    kept = _revisions(out) if target.exists() else 0
    refuse_side_files(target)  # a journal left there would be played back into the new file
    if kept == 0:
        return []
    aside = _aside(target)
    target.rename(aside)
    with_them = f", with its {kept} revision{'s' * (kept != 1)}," if kept is not None else ""
    return [f"The old {out.name}{with_them} is now {aside.name}."]


def _revisions(out: Path) -> int | None:
    """Return how many revisions a file holds, None where nobody can tell; raise `Held` where it is open."""
    if not out.stat().st_size or not is_job_file(out):
        return 0
    try:
        with open_job_file(out) as file:
            return len(file.revisions())
    except Held:
        raise
    except Refused:
        return None


def _aside(out: Path) -> Path:
    start = f"{out.stem}-until-{datetime.now().strftime('%Y%m%d-%H%M%S')}"
    number, path = 1, out.with_name(f"{start}{out.suffix}")
    while path.exists():
        number += 1
        path = out.with_name(f"{start}-{number}{out.suffix}")
    return path
