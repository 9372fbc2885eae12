"""Paper sizes."""

from functools import cache
from math import inf

from bayboard.tables.rows import figure, known, rows


def paper(name: str) -> tuple[float, float]:
    """Return (short, long) sides in mm of a sheet of paper.csv; a roll's long side is inf.

    The name is the table's, or its start: "A4", "Letter", "roll 24 in".  Raises `KeyError` naming
    the papers there are.
    """
    found = _papers().get(name.lower())
    if found is None:
        raise KeyError(
            f"there is no paper {name!r}; there is {', '.join(row['name'] for row in rows('paper'))}"
        )
    return found


@cache
def _papers() -> dict[str, tuple[float, float]]:
    found: dict[str, tuple[float, float]] = {}
    for row in rows("paper"):
        size = round(known(row, "short_side_mm"), 6), round(figure(row, "long_side_mm") or inf, 6)
        full = row["name"].lower()
        found[full] = size
        found.setdefault(full.partition(" (")[0], size)
    return found
