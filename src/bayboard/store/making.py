"""Making and copying job files: built under a name beside, whole on the disk before they have their own."""

import contextlib
import os
import secrets
import sqlite3
import sys
from collections.abc import Iterable, Iterator
from pathlib import Path

from bayboard.model.layout import Layout
from bayboard.model.refused import Refused
from bayboard.model.write import write
from bayboard.store import drafts, holder, metas, newer, photos, schema, states
from bayboard.store.base import Base, connected, refuse_old_sqlite, set_up
from bayboard.store.header import is_job_file, read_header, refuse_side_files
from bayboard.store.sealed import now
from bayboard.store.sentences import path_words, said_of
from bayboard.store.troubles import Held, sentence


def make(path: Path, layout: Layout, picture: bytes | None, pictures: Iterable[bytes]) -> None:
    """Write a new job file that nobody holds; raise `Refused` for a path that exists, nothing made."""
    with new_beside(path) as part, empty(part, path) as base:
        text = write(layout).encode("utf-8", "replace")
        states.put(base, 1, "", text)
        drafts.put(base, drafts.changed_now(None, 1, text, picture))
        metas.put(base, metas.VEHICLE, layout.vehicle.name)
        for data in pictures:
            photos.put(base, data)


@contextlib.contextmanager
def new_beside(path: Path) -> Iterator[Path]:
    """Give a name beside `path`; what was written there gets the name `path`, unless that exists."""
    with said_of(path):
        _must_be_free(path)
        target = Path(os.path.realpath(path))
        part = beside(target)
    try:
        yield part
        with said_of(path):
            flushed(part)
            try:
                _rename_to_new(part, target)
            except FileExistsError:
                raise _exists(path) from None
            folder_flushed(target.parent)
    finally:
        dropped(part)


@contextlib.contextmanager
def empty(part: Path, path: Path) -> Iterator[Base]:
    """Give a job file without a draft at `part`, spoken of as `path`; what is written then is one whole."""
    refuse_old_sqlite()
    with said_of(path):
        part.open("xb").close()
    try:
        conn = sqlite3.connect(part, isolation_level=None)
    except sqlite3.Error as error:
        raise sentence(path, error) from None
    base = Base(path, conn)
    base.at_work = True
    try:
        set_up(conn)
        conn.execute("PRAGMA synchronous = OFF")  # the file is flushed once, before it gets its name
        conn.execute("PRAGMA journal_mode = OFF")
        conn.execute(f"PRAGMA page_size = {schema.PAGE}")
        base.do("BEGIN IMMEDIATE")
        schema.create(conn)
        base.do("INSERT INTO holder (one, writes, checked) VALUES (1, 0, ?)", now()[:10])
        yield base
        base.do("COMMIT")
    except sqlite3.Error as error:
        raise sentence(path, error) from None
    finally:
        base.close()


def copy(path: Path, out: Path, opened: Base | None = None) -> None:
    """Write every page of a job file into `out`, held by nobody; raise `Refused`, `out` as before.

    `opened`: take what this connection sees, also when the path leads elsewhere by now.
    """
    if opened is None and read_header(path).form > schema.FORM:
        raise newer.refused(path, path)
    with said_of(out):
        target = Path(os.path.realpath(out))
        if target == Path(os.path.realpath(path)):
            raise Refused(path_words(out), "this is the same file", "Name another")
        refuse_side_files(target)
        part = beside(target)
    if is_job_file(out):
        _refuse_held(out)
    try:
        with said_of(out):
            part.open("xb").close()
        copy_pages(path, part, opened, out)
        with said_of(out):
            flushed(part)
            part.replace(target)
            folder_flushed(target.parent)
    finally:
        dropped(part)


def copy_pages(path: Path, part: Path, opened: Base | None = None, out: Path | None = None) -> None:
    """Copy a job file as it is at one moment into the empty file `part`, and let that be held by nobody.

    `out`: what is spoken of where there is no room for the copy.
    """
    base = opened or connected(path, look=True)
    copied = sqlite3.connect(part, isolation_level=None)
    try:
        copied.execute("PRAGMA synchronous = OFF")
        base.conn.backup(copied)
        copied.execute("PRAGMA journal_mode = DELETE")
        holder.clear(Base(part, copied))
    except sqlite3.Error as error:
        full = getattr(error, "sqlite_errorcode", None) in (sqlite3.SQLITE_FULL, sqlite3.SQLITE_IOERR_WRITE)
        if out is not None and full:
            what = "there is no room for the copy on that disk"
            raise Refused(path_words(out), what, "Free some room, or name another place") from None
        raise sentence(path, error) from None
    finally:
        copied.close()
        if base is not opened:
            base.close()


def _refuse_held(out: Path) -> None:
    """Raise `Held` for a job file that somebody works in; what cannot be read may be replaced."""
    try:
        base = connected(out, look=True)
    except Refused:
        return
    try:
        holder.refuse_held(base)
    except Held:
        raise
    except Refused:
        pass
    finally:
        base.close()


def beside(target: Path) -> Path:
    """Return a new name in the folder of `target`."""
    return target.with_name(f".{target.name[:40]}.{secrets.token_hex(4)}.part")


def flushed(path: Path) -> None:
    """Bring a file's content to the disk."""
    with path.open("rb+") as file:
        os.fsync(file.fileno())


def folder_flushed(folder: Path) -> None:
    """Bring a folder's names to the disk where the system lets one."""
    if sys.platform == "win32":
        return
    with contextlib.suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def dropped(part: Path) -> None:
    """Remove what was not finished, with what SQLite left beside it."""
    for name in (part.name, part.name + "-journal"):
        with contextlib.suppress(OSError):
            part.with_name(name).unlink(missing_ok=True)


def _must_be_free(path: Path) -> None:
    if path.exists() or path.is_symlink():
        raise _exists(path)
    refuse_side_files(path)


def _exists(path: Path) -> Refused:
    return Refused(path_words(path), "there is a file of that name already", "Name another")


def _rename_to_new(part: Path, target: Path) -> None:
    """Give a file its name; raise FileExistsError when another has it."""
    if sys.platform == "win32":
        part.rename(target)
        return
    try:
        target.hardlink_to(part)
    except FileExistsError:
        raise
    except OSError:
        # a disk without hard links
        if target.exists():
            raise FileExistsError(target) from None
        part.rename(target)
