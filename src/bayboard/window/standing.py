"""How a vehicle stands in its file, in the few words of the strip."""

from dataclasses import dataclass
from datetime import datetime

from bayboard.job.job import Job
from bayboard.model.refused import Refused
from bayboard.store.troubles import Holder
from bayboard.window.when import day_words

NOTHING_OPEN = "nothing open yet"
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
        return Standing(f"{SAID_NOT}: {trouble.what}" if job.dirty else trouble.what, harmed=True)
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
