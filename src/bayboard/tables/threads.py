"""Threads and the blind rivet nuts that take them."""

from dataclasses import dataclass
from functools import cache

from bayboard.tables.rows import Row, figure, known, rows

WASHER_D = 2.0  # x thread diameter: the large washer of an inch thread, which threads.csv leaves blank


@dataclass(frozen=True, slots=True)
class Thread:
    """One thread of threads.csv: mm, and the words of its `status`.

    `clear_medium` is the medium (inch: normal) clearance hole; `washer_od` is None where the table has none.
    """

    name: str
    major_d: float
    pitch: float
    tap_drill: float
    tap_drill_name: str
    clear_medium: float
    washer_od: float | None
    large_washer_od: float
    stress_area: float  # mm2
    status: str

    @property
    def inch(self) -> bool:
        """Return whether it is an inch thread, whose screws come in eighths of an inch."""
        return not self.name.startswith("M")


@dataclass(frozen=True, slots=True)
class Insert:
    """A blind rivet nut of inserts.csv in mm, None where the table has no figure."""

    thread: str
    hole: float | None  # the smooth body of common make, else the ribbed
    grip: tuple[float, float]
    body_length: float | None  # before setting
    flange_od: float | None
    status: str


def thread(name: str) -> Thread | None:
    """Return the thread of that name, None when the tables have none; "M5" is the coarse row "M5x0.8"."""
    return _threads().get(name.strip())


def thread_names() -> tuple[str, ...]:
    """Return the name of every row, in the table's order."""
    return tuple(row["thread"] for row in rows("threads"))


def insert(name: str) -> Insert | None:
    """Return the insert for a thread, however that is spelled, None when the tables have none."""
    found = thread(name)
    return _inserts().get(found.name if found else name.strip())


@cache
def _threads() -> dict[str, Thread]:
    found: dict[str, Thread] = {}
    for row in rows("threads"):
        made = _thread(row)
        found[made.name] = made
        if row["system"] == "ISO metric coarse":
            found[made.name.partition("x")[0]] = made
    return found


def _thread(row: Row) -> Thread:
    major = known(row, "major_d_mm")
    return Thread(
        row["thread"],
        major,
        known(row, "pitch_mm"),
        known(row, "tap_drill_mm"),
        row["tap_drill_name"],
        known(row, "clear_medium_mm"),
        figure(row, "washer_od_mm"),
        figure(row, "large_washer_od_mm") or WASHER_D * major,
        known(row, "tensile_stress_area_mm2"),
        row["status"],
    )


@cache
def _inserts() -> dict[str, Insert]:
    found: dict[str, Insert] = {}
    for row in rows("inserts"):
        for name in row["thread"].split(" / "):
            known_thread = thread(name)
            found[known_thread.name if known_thread else name] = _insert(name, row)
    return found


def _insert(name: str, row: Row) -> Insert:
    hole = figure(row, "hole_smooth_body_common_mm") or figure(row, "hole_ribbed_body_common_mm")
    grip = known(row, "sheet_grip_typ_min_mm"), known(row, "sheet_grip_typ_max_mm")
    length, flange = figure(row, "body_length_unset_typ_mm"), figure(row, "flange_od_typ_mm")
    return Insert(name, hole, grip, length, flange, row["status"])
