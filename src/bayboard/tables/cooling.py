"""How well still air cools a warm face: from cooling.csv."""

import re
from functools import cache
from typing import NamedTuple

from bayboard.tables.rows import rows


class Film(NamedTuple):
    """Heat that a face gives to still air, W/m2K: the books' range, the figure used, how sure that is."""

    low: float
    high: float
    used: float
    source: str
    status: str


@cache
def still_air() -> Film:
    """Return the film of free air round faces 10 to 50 K warmer, radiation left out."""
    row = next(row for row in rows("cooling") if row["key"] == "h_natural_air_typ")
    low, high, used = (float(figure) for figure in re.findall(r"\d+(?:\.\d+)?", row["value"]))
    return Film(low, high, used, row["source"], row["status"])
