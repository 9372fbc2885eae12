"""Small named values beside the draft: the vehicle's name, where the view stood, the drill day."""

import json
from typing import Any

from bayboard.store.base import Base
from bayboard.store.sealed import seal

VEHICLE = "vehicle"
MOST = 1_000  # values of a file
_LONGEST = 1_000_000  # letters of a value
LOST = "lost"  # numbers of revisions that a rescue could not bring


def read_value(base: Base, name: str) -> Any:
    """Return a value, None when there is none or it is damaged."""
    row = base.one("SELECT value, seal FROM meta WHERE name = ?", name)
    if row is None or not isinstance(row[0], str) or len(row[0]) > _LONGEST:
        return None
    if seal("meta", name, row[0]) != row[1]:
        return None
    try:
        return json.loads(row[0], parse_constant=_refused)
    except (ValueError, RecursionError):
        return None


def _refused(word: str) -> None:
    raise ValueError(f"{word} is no number")


def put(base: Base, name: str, value: Any) -> None:
    """Write a JSON value in place of the one before."""
    text = json.dumps(value, allow_nan=False)
    if len(text) > _LONGEST:
        raise ValueError(f"the value of {name} is too long to store")
    base.do(
        "INSERT OR REPLACE INTO meta (name, value, seal) VALUES (?, ?, ?)",
        name,
        text,
        seal("meta", name, text),
    )


def broken(base: Base) -> tuple[str, ...]:
    """Return the names of values that are not as they were written."""
    rows = base.few(MOST, "SELECT name, value, seal FROM meta ORDER BY name")
    return tuple(str(name) for name, value, sealed in rows if seal("meta", str(name), str(value)) != sealed)
