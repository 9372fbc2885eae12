"""The rows of the shipped reference tables, read once."""

import csv
from functools import cache

from bayboard.tables.where import shipped

Row = dict[str, str]


@cache
def rows(table: str) -> tuple[Row, ...]:
    """Return the rows of `shared/reference/TABLE.csv` by column name, blank cells as ''."""
    with shipped("shared", "reference", f"{table}.csv").open(encoding="utf-8", newline="") as file:
        return tuple(csv.DictReader(file))


def figure(row: Row, column: str) -> float | None:
    """Return a cell as a number, None where it is blank: there is no figure."""
    text = row[column].strip()
    return float(text) if text else None


def known(row: Row, column: str) -> float:
    """Return a cell that is never blank as a number; raise `ValueError` naming it when it is."""
    number = figure(row, column)
    if number is None:
        raise ValueError(f"{column} is blank in {row}")
    return number
