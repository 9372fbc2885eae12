"""Files of an older form: brought up to date on a copy, which then takes the file's place."""

import os
import shutil
import sqlite3
from collections.abc import Callable, Mapping
from pathlib import Path

from bayboard.store import holder, making, schema
from bayboard.store.base import Base, connected
from bayboard.store.sentences import said_of
from bayboard.store.troubles import damaged, sentence

Step = Callable[[Base], None]

# from which form: what makes the next form of it; a form that once was stays in this list for good
STEPS: Mapping[int, Step] = {}


def upgraded(
    path: Path,
    form: int,
    steps: Mapping[int, Step] = STEPS,
    to: int = schema.FORM,
    take: bool = False,
) -> str:
    """Bring the file at `path` from an older form up to `to`, and return the sentence about it.

    The old file stays beside it under another name.  Raises `Refused`, the file as it was, when any step
    fails, and `Held` when somebody has it open, unless it is to be taken.
    """
    if any(number not in steps for number in range(form, to)):
        raise damaged(path, f"this job file says that it is of form {form}, which never was")
    target = Path(os.path.realpath(path))
    part, old = making.beside(target), _free_name(target, form)
    try:
        with said_of(path):
            part.open("xb").close()
        _copy(path, part, take)
        _walk(path, part, form, steps, to)
        with said_of(path):
            making.flushed(part)
            shutil.copy2(target, old)
            making.flushed(old)
            part.replace(target)
            making.folder_flushed(target.parent)
    finally:
        making.dropped(part)
    return f"This file was made by an older Bayboard and is brought up to date; the old one is {old.name}."


def _copy(path: Path, part: Path, take: bool) -> None:
    """Copy the file, its last change taken back, unless somebody has it open."""
    base = connected(path, look=False)
    try:
        if not take:
            holder.refuse_held(base)
        making.copy_pages(path, part, base)
    finally:
        base.close()


def _walk(path: Path, part: Path, form: int, steps: Mapping[int, Step], to: int) -> None:
    """Take the copy from form to form, all of it in one transaction."""
    base = connected(part, look=False)
    base.path = path
    try:
        base.conn.execute("PRAGMA foreign_keys = OFF")
        base.do("BEGIN IMMEDIATE")
        for number in range(form, to):
            steps[number](base)
            base.do(f"PRAGMA user_version = {number + 1}")
        if base.all("PRAGMA foreign_key_check") or base.large("PRAGMA integrity_check(1)") != [("ok",)]:
            raise damaged(path, "this job file of an older form is damaged")
        base.do("COMMIT")
    except sqlite3.Error as error:
        raise sentence(path, error, at_work=False) from None
    finally:
        base.close()


def _free_name(target: Path, form: int) -> Path:
    """Return a name beside the file that nothing has, for its older form."""
    number, name = 1, target.with_name(f"{target.stem}-form-{form}{target.suffix}")
    while name.exists():
        number += 1
        name = target.with_name(f"{target.stem}-form-{form}-{number}{target.suffix}")
    return name
