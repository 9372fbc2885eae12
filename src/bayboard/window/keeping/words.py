"""The words of keeping: how a job stands in its file, who holds it, what stays behind in a copy."""

from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from bayboard.job.job import Job
from bayboard.model.refused import Refused
from bayboard.store.troubles import Holder
from bayboard.window.when import day_words

NOTHING_OPEN = "nothing open yet"
ONLY_LOOKED_AT = "This job is only looked at, so nothing of it is kept. Ctrl Shift S saves a copy to work on."
SAID_NOT = "not written"


@dataclass(frozen=True, slots=True)
class Standing:
    """How the job stands in its file, for the strip; `harmed`: it is not where it should be."""

    words: str
    harmed: bool = False


def standing(
    job: Job, trouble: Refused | None, holder: Holder | None, kept_as: int | None, newest: int, alone: bool
) -> Standing:
    """Return how the job on the Wall stands; `kept_as` is the revision it equals, `newest` 0 for none.

    `alone`: no file could be made for it.
    """
    if job.looking:
        return Standing(looking_words(holder))
    if trouble is not None:
        return Standing(f"{SAID_NOT}: {trouble.what}", harmed=True)
    if job.file is not None:
        return Standing(draft_words(kept_as, job.parent, bool(newest)))
    if job.path is None:
        if alone:
            return Standing("draft, not in any file", harmed=True)
        return Standing("draft, kept as you go" if job.dirty else "new; kept as you go, no saving needed")
    return Standing(f"{job.path.name}, {'changed since it was saved' if job.dirty else 'saved'}")


def draft_words(kept_as: int | None, parent: int | None, kept: bool) -> str:
    """Return "revision 6", "draft after revision 6", "not kept yet"."""
    if kept_as is not None:
        return f"revision {kept_as}"
    if parent is not None:
        return f"draft after revision {parent}"
    return "draft, not kept yet" if kept else "not kept yet"


def looking_words(holder: Holder | None) -> str:
    """Return "looking only: open on SHOP-PC since 14:02"."""
    return f"looking only: open {where(holder)}" if holder else "looking only"


def where(holder: Holder) -> str:
    """Return "on SHOP-PC since 14:02"."""
    since = since_words(holder)
    return f"on {holder.host}{f' since {since}' if since else ''}"


def since_words(holder: Holder) -> str:
    """Return since when, as short as it can be told, "" where the file does not say."""
    return day_words(holder.since, now())


def now() -> datetime:
    """Return the time as the clock here shows it."""
    return datetime.now().astimezone()


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
