"""A revision's note as it is read."""


def quoted(note: str) -> str:
    """Return a note in one line between quotes, "" where nothing was said."""
    told = " ".join(note.split())
    return f"“{told}”" if told else ""
