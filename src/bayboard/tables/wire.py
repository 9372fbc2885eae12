"""Cable sizes: copper area and outside diameter of "4 AWG" or "16 mm2"."""

from dataclasses import dataclass
from functools import cache
from math import pi, sqrt

from bayboard.tables.rows import figure, known, rows


@dataclass(frozen=True, slots=True)
class Wire:
    """A cable size: copper area in mm2 and its largest usual outside diameter in mm.

    `od_max` comes from copper_wire.csv: of the size's own row, else of the next larger size that
    has one.
    """

    size: str
    area: float
    od_max: float


def awg_diameter(number: int) -> float:
    """Return the diameter in mm of solid AWG `number`, 0 for 1/0, -3 for 4/0: ASTM B258."""
    exact: float = 0.127 * 92.0 ** ((36 - number) / 39)
    return exact


def awg_number(name: str) -> int:
    """Return the AWG number of "4", "1/0" (0), "4/0" (-3) or "0000" (-3); raise `ValueError` otherwise."""
    if "/" in name:
        zeros, _, last = name.partition("/")
        if last != "0":
            raise ValueError(f"{name} is not an AWG size")
        return 1 - int(zeros)
    return 1 - len(name) if name and not name.strip("0") else int(name)


def wire(size: str | None) -> Wire | None:
    """Return the cable of a size like "4 AWG", "2/0 AWG" or "16 mm2"; None when it is none of these."""
    if size is None:
        return None
    name, _, system = size.partition(" ")
    try:
        if system == "AWG":
            number = awg_number(name)
            return Wire(size, pi / 4 * awg_diameter(number) ** 2, _awg_od(number))
        if system == "mm2" and float(name) > 0:
            return Wire(size, float(name), _metric_od(float(name)))
    except ValueError:
        return None
    return None


def lead_od(size: str | None, od: float | None) -> float | None:
    """Return a lead's outside diameter in mm: as given, else the largest usual one of its size.

    None when neither is known; `limit(layout, "lead_od")` stands in for leads that may lack a size.
    """
    if od is not None:
        return od
    known_wire = wire(size)
    return None if known_wire is None else known_wire.od_max


@cache
def _awg_rows() -> tuple[tuple[int, float], ...]:
    """Return (number, od) of the AWG rows that have an outside diameter, largest cable first."""
    found = []
    for row in rows("copper_wire"):
        od = figure(row, "od_typical_max_mm")
        if row["system"] == "AWG" and od is not None:
            found.append((awg_number(row["size"]), od))
    return tuple(sorted(found))


@cache
def _metric_rows() -> tuple[tuple[float, float], ...]:
    """Return (mm2, od) of the metric rows that have an outside diameter, smallest first."""
    found = []
    for row in rows("copper_wire"):
        od = figure(row, "od_typical_max_mm")
        if row["system"] == "mm2" and od is not None:
            found.append((known(row, "area_mm2"), od))
    return tuple(sorted(found))


def _awg_od(number: int) -> float:
    larger = [od for n, od in _awg_rows() if n <= number]
    if larger:
        return larger[-1]
    most, od = _awg_rows()[0]
    return od * awg_diameter(number) / awg_diameter(most)  # larger than the table: grown with the copper


def _metric_od(area: float) -> float:
    larger = [od for a, od in _metric_rows() if a >= area]
    if larger:
        return larger[0]
    most, od = _metric_rows()[-1]
    return od * sqrt(area / most)  # larger than the table: grown with the copper
