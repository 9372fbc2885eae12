"""A layout in a file of its own: opened with one sentence if it cannot be, saved whole or not at all."""

import contextlib
import os
import secrets
from collections.abc import Mapping
from pathlib import Path

from bayboard.model.layout import Layout
from bayboard.model.places import label, step_to
from bayboard.model.raw import LARGEST_FILE
from bayboard.model.read import read
from bayboard.model.refused import Refused
from bayboard.model.write import write
from bayboard.store.sentences import path_words, said_of, unopened


def open_layout(path: Path) -> Layout:
    """Return the layout of a .json file; raise `Refused`, the file named, when there is none in it."""
    path = Path(path)
    try:
        with path.open("rb") as file:
            # one byte more tells a file that is too large without holding it whole
            text = file.read(LARGEST_FILE + 1)
    except (OSError, ValueError) as error:
        raise unopened(path, error) from None
    try:
        return read(text)
    except Refused as refused:
        place = step_to(label(path.name), refused.place)
        raise Refused(place, refused.what, refused.do) from None


def save_layout(path: Path, layout: Layout) -> None:
    """Replace `path` by the layout's normal form; raise `Refused` and leave the old file when that fails."""
    write_whole(path, write(layout).encode("utf-8", "replace"))


def write_whole(path: Path, content: bytes) -> None:
    """Replace the file at `path` by `content`, whole or not at all; raise `Refused` when that fails.

    A crash at any moment leaves the old file or the new one.  A link is followed, its file replaced.
    """
    write_all({path: content})


def write_all(files: Mapping[Path, bytes]) -> None:
    """Replace several files, each whole, none before all are on the disk; raise `Refused` if not."""
    ready: list[tuple[Path, Path, Path]] = []
    try:
        for path, content in files.items():
            ready.append(_beside(path))
            with said_of(path):
                _write(*ready[-1][1:], content)
        for path, beside, target in ready:
            with said_of(path):
                beside.replace(target)
    finally:
        for _, beside, _ in ready:
            with contextlib.suppress(OSError):
                beside.unlink(missing_ok=True)


def _beside(path: Path) -> tuple[Path, Path, Path]:
    """Return the path, a new name beside the file it leads to, and that file."""
    with said_of(path):
        target = Path(os.path.realpath(path))
        may_be_replaced(target, path)
    return path, target.with_name(f".{target.name[:40]}.{secrets.token_hex(4)}.part"), target


def _write(beside: Path, target: Path, content: bytes) -> None:
    with beside.open("xb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())
    if target.exists():
        beside.chmod(target.stat().st_mode & 0o777)


def may_be_replaced(target: Path, path: Path) -> None:
    """Raise `Refused` for what is there and is not a plain file that may be written."""
    if target.is_dir():
        raise Refused(path_words(path), "this is a folder", "Name a file in it")
    if target.exists() and not target.is_file():
        raise Refused(path_words(path), "this is not a plain file", "Name another file")
    if target.exists() and not os.access(target, os.W_OK):
        raise Refused(path_words(path), "this file may only be read", "Save under another name")
