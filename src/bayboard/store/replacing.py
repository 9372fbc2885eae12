"""A job file written in place of what is there: whole or not at all, and no revision is lost by it."""

import contextlib
import secrets
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path

from bayboard.model.layout import Layout
from bayboard.model.refused import Refused
from bayboard.store.job_file import Held, is_job_file, make_job_file, open_job_file


@dataclass
class Beside:
    """Where to write the new file, and what is to be said once it is in place."""

    path: Path
    said: list[str] = field(default_factory=list)


@contextlib.contextmanager
def in_place_of(out: Path) -> Iterator[Beside]:
    """Give a new name beside `out`; what was written there takes its place when all went well.

    A job file that is there with revisions in it is not lost but renamed, and that is said.  Raises `Refused`
    when somebody works in it, or the folder cannot be written.
    """
    beside = Beside(out.with_name(f".{out.name[:40]}.{secrets.token_hex(4)}.part"))
    try:
        yield beside
        try:
            beside.said += _make_way(out)
            beside.path.replace(out)
        except OSError as error:
            reason = error.strerror or type(error).__name__
            raise Refused(str(out), f"this file cannot be replaced ({reason})", "Name another file") from None
    finally:
        with contextlib.suppress(OSError):
            beside.path.unlink(missing_ok=True)


def make_in_place(out: Path, layout: Layout, picture: bytes | None, photos: Iterable[bytes]) -> list[str]:
    """Write a new job file with nothing kept yet in place of `out`; return what is to be said."""
    with in_place_of(out) as beside:
        make_job_file(beside.path, layout, picture=picture, photos=photos).close()
    return beside.said


def _make_way(out: Path) -> list[str]:
    """Rename a job file with revisions in it; return the sentence about it."""
    if not out.is_file() or not is_job_file(out):
        return []
    try:
        with open_job_file(out) as file:
            kept = len(file.revisions())
    except Held:
        raise
    except Refused:
        kept = -1  # nobody can tell what is in it
    if kept == 0:
        return []
    aside = _aside(out)
    out.rename(aside)
    with_them = f", with its {kept} revision{'s' * (kept != 1)}," if kept > 0 else ""
    return [f"The old {out.name}{with_them} is now {aside.name}."]


def _aside(out: Path) -> Path:
    start = f"{out.stem}-until-{datetime.now().strftime('%Y%m%d-%H%M%S')}"
    number, path = 1, out.with_name(f"{start}{out.suffix}")
    while path.exists():
        number += 1
        path = out.with_name(f"{start}-{number}{out.suffix}")
    return path
