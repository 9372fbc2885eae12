"""The words of keeping: who holds a file, what a note is asked for, what stays behind in a copy."""

from pathlib import Path

from bayboard.store.troubles import Holder
from bayboard.window.standing import where

ONLY_LOOKED_AT = "This job is only looked at, so nothing of it is kept. Ctrl Shift S saves a copy to work on."


def held_words(path: Path, holder: Holder) -> str:
    """Return the question about a file that somebody has open."""
    return (
        f"{path.name} is open {where(holder)}, by {holder.name}. You may look at it. "
        f"If you take it over, the window on {holder.host} can write nothing more into it and says so; "
        "take it only where nobody works on it."
    )


def kept_words(number: int, file: Path | None = None, left: Path | None = None) -> str:
    """Return what is said of a kept revision; `file` is new, `left` the plain layout it was made of."""
    if file is None:
        return f"Kept as revision {number}."
    behind = f"; {left.name} stays as it was saved" if left else ""
    return f"Kept as revision {number} in {file.name}. Work goes on there{behind}."


def note_helper(kept_as: int | None, made: Path | None) -> str:
    """Return the line under the field for a note."""
    if kept_as is not None:
        return f"Nothing changed since revision {kept_as}. Enter keeps another all the same; Esc leaves it."
    if made is not None:
        return f"A plain .json has no revisions: this makes {made.name} and goes on in it. Esc leaves it."
    return "Enter keeps it, with a note or without. Esc leaves it."


def stays_behind(revisions: int, photos: int) -> str:
    """Return what a `.json` does not take along, "" for nothing."""
    parts = []
    if revisions:
        parts.append("1 revision" if revisions == 1 else f"{revisions} revisions")
    if photos:
        parts.append("1 photo" if photos == 1 else f"{photos} photos")
    return " and ".join(parts)
