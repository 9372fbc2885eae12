"""The words of the shelf: what stands on a card, what is told of the vehicle that is chosen."""

from collections.abc import Sequence
from datetime import datetime, tzinfo
from pathlib import Path

from bayboard.store.found import Found
from bayboard.store.troubles import Holder
from bayboard.window.when import day_words, moment_words

EMPTY = ("Nothing on the shelf yet.", "A new vehicle gets its file here at its first change.")
LOOKING = "Looking over the shelf …"
FIND = "Find by name or note"
FIND_ALOUD = "Find a vehicle by words in its name or notes"
HERE = "on the Wall now"
PLAIN = "a plain .json layout"
WALL = "the vehicle that is open; the shelf is below"
WALL_BARE = "no vehicle is open; the shelf is below"
STATE = "The shelf is open. Esc goes back to work."
NO_NOTE = "No note."
MOST_NOTES = 6  # of the newest revisions that the Card tells
JSON = ".json"


def counted(count: int, what: str = "vehicle") -> str:
    """Return "1 vehicle", "12 vehicles"."""
    return f"{count} {what}{'' if count == 1 else 's'}"


def phrase(every: int, shown: int, text: str, share: float) -> str:
    """Return what stands beside the title: how many there are, or how many have what is typed."""
    if not every:
        return "looking" if share < 1.0 else ""
    if text.strip():
        return f"{shown or 'none'} of {every}"
    told = f"{counted(every)}, last worked on first"
    return f"{told}; looked over {int(share * 100)} %" if share < 1.0 else told


def none_found(text: str) -> str:
    """Return what an empty line says when something is typed."""
    return f"No vehicle has “{' '.join(text.split())}” in its name or notes."


def note_of(vehicle: Found) -> str:
    """Return the note on a card: that of the newest revision which has one, else the vehicle's."""
    facts = vehicle.facts
    return next((note.note for note in facts.notes if note.note), facts.note)


def held_by(holder: Holder) -> str:
    """Return "held by Jo"."""
    return f"held by {holder.name}"


def foot(vehicle: Found, here: bool, holder: Holder | None) -> str:
    """Return the last line of a card."""
    facts = vehicle.facts
    if here:
        return HERE
    if facts.trouble:
        return "cannot be read"
    if holder is not None:
        return held_by(holder)
    if vehicle.path.suffix.lower() == JSON:
        return PLAIN
    if facts.printed:
        return f"printed {day_words(facts.printed, datetime.now().astimezone())}"
    return counted(facts.revisions, "revision") if facts.revisions else "nothing kept yet"


def sentence(vehicle: Found, date: str, last: str) -> str:
    """Return what a screen reader is told of a card."""
    told = (vehicle.facts.name, date, vehicle.facts.trouble or note_of(vehicle), last)
    return ", ".join(word for word in told if word)


# --- the Card ---


def state_words(vehicle: Found, here: bool, holder: Holder | None, zone: tzinfo | None = None) -> str:
    """Return what has to be known before it is opened, "" for nothing."""
    if here:
        return ""
    if vehicle.facts.trouble:
        return f"It cannot be read: {vehicle.facts.trouble}."
    if holder is None:
        return ""
    since = day_words(holder.since, datetime.now().astimezone(), zone)
    return f"Held by {holder.name} on {holder.host}{f' since {since}' if since else ''}. It can be looked at."


def told(vehicle: Found, zone: tzinfo | None = None) -> tuple[tuple[str, bool], ...]:
    """Return paragraphs about a vehicle, each with whether it is in strong ink."""
    facts = vehicle.facts
    lines: list[tuple[str, bool]] = [(facts.note, True)] if facts.note else []
    if vehicle.path.suffix.lower() == JSON:
        lines.append(("A plain .json layout: it has no revisions.", False))
    elif facts.revisions or not facts.trouble:
        lines.append(
            (counted(facts.revisions, "revision") if facts.revisions else "Nothing kept yet.", False)
        )
    for note in facts.notes[:MOST_NOTES]:
        said = f"“{note.note}”" if note.note else NO_NOTE
        day = day_words(note.kept, datetime.now().astimezone())
        lines.append((f"{note.number}, {day}: {said}" if day else f"{note.number}: {said}", False))
    if facts.printed:
        lines.append((f"Printed {moment_words(facts.printed, zone)}.", False))
    elif facts.revisions:
        lines.append(("Nothing printed yet.", False))
    lines.append((f"In {shown_folder(vehicle.path.parent)}", False))
    return tuple(lines)


def shown_folder(folder: Path) -> str:
    """Return a folder as it is told: the user's own folder is "~"."""
    try:
        inside = folder.relative_to(Path.home())
    except (ValueError, RuntimeError):
        return str(folder)
    return str(Path("~") / inside)


def walked(vehicle: Found, at: int, shown: Sequence[Found], last: str) -> str:
    """Return what is said aloud when another vehicle is chosen."""
    return f"{sentence(vehicle, '', last)}, {at + 1} of {len(shown)}"
