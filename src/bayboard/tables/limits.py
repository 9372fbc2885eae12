"""Every number whose crossing makes a finding, once, with its unit, source and status.

Status words are those of shared/reference: `readN` (seen in N public places), `computed`, `memory`
(recalled, not seen: it may raise a caution, never clear a finding) and `practice` (a habit of the trade or
our own choice: common practice, no source).
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Protocol


@dataclass(frozen=True, slots=True)
class Limit:
    """A threshold: its value, unit, where it comes from and how sure that is."""

    value: float
    unit: str
    source: str
    status: str


class HasLimits(Protocol):
    """Whatever carries overrides of limits: a layout."""

    @property
    def limits(self) -> Mapping[str, float]:
        """Overrides by name."""
        ...


_CHOICE = "our own choice for this trade"
_COMMON = "common practice, no source"

LIMITS: dict[str, Limit] = {
    "gap_must": Limit(6.0, "mm", _COMMON, "practice"),
    "gap_should": Limit(15.0, "mm", _COMMON, "practice"),
    "gap_cold": Limit(1.0, "mm", _COMMON, "practice"),
    "cold_watts": Limit(5.0, "W", _CHOICE, "practice"),
    "overlap_area": Limit(0.01, "mm2", "smaller than a pencil line can show", "practice"),
    "outside_silent": Limit(0.01, "mm", "smaller than a saw can follow", "practice"),
    "seat_margin": Limit(10.0, "mm", _COMMON, "practice"),
    "probe_reach": Limit(75.0, "mm", "our own choice: half a hand's width", "practice"),
    "sight_angle": Limit(
        60.0, "deg", "MIL-STD-1472 viewing practice, eyes and head turned (access_reach.csv)", "memory"
    ),
    "eye_step": Limit(100.0, "mm", _CHOICE, "practice"),
    "eye_aside": Limit(300.0, "mm", _CHOICE, "practice"),
    "eye_below_top": Limit(100.0, "mm", _CHOICE, "practice"),
    "eye_over_top": Limit(500.0, "mm", _CHOICE, "practice"),
    "eye_near": Limit(500.0, "mm", "comfortable reading distance (access_reach.csv)", "memory"),
    "eye_far": Limit(900.0, "mm", _CHOICE, "practice"),
    "eye_floor_lean": Limit(45.0, "deg", _CHOICE, "practice"),
    "eye_floor_aside": Limit(500.0, "mm", _CHOICE, "practice"),
    "eye_floor_near": Limit(400.0, "mm", _CHOICE, "practice"),
    "eye_floor_far": Limit(1200.0, "mm", _CHOICE, "practice"),
    "eyes_most": Limit(200000.0, "eyes", "more would take minutes to look from", "practice"),
    "sight_start": Limit(0.5, "mm", "keeps a ray off the face it starts on", "practice"),
    "corridor_length": Limit(150.0, "mm", "a small hand's length, 152 (access_reach.csv)", "memory"),
    "corridor_fingers": Limit(25.0, "mm", "EN 349 / ISO 13854 finger gap (access.csv)", "read1"),
    "corridor_driver": Limit(12.0, "mm", _COMMON, "practice"),
    "corridor_most": Limit(300.0, "mm", "wider than any hand needs", "practice"),
    "bend_od": Limit(4.0, "x OD", "flexible low-voltage cable (copper_rules.csv)", "practice"),
    "lead_od": Limit(6.0, "mm", "screened signal cable, common practice", "practice"),
    "beside_should": Limit(100.0, "mm", _COMMON, "practice"),
    "beside_must": Limit(600.0, "mm", _COMMON, "practice"),
    "beside_d": Limit(50.0, "mm", "NFPA 70 article 800, 2 in (noise.csv)", "read2"),
    "beside_angle": Limit(20.0, "deg", _CHOICE, "practice"),
    "crossing_should": Limit(60.0, "deg", "26 % of the parallel coupling (checks.md 34)", "computed"),
    "lead_path_silent": Limit(0.01, "mm", "smaller than a cable can show", "practice"),
    "insert_margin": Limit(3.0, "mm", _COMMON, "practice"),
    "flange_d": Limit(2.0, "x d", _COMMON, "practice"),
    "no_drill_margin": Limit(10.0, "mm", _COMMON, "practice"),
    "edge_d": Limit(1.5, "x drill", "a habit; handbooks ask 2 to 2.5 d (plastics_threads.csv)", "practice"),
    "pitch_d": Limit(2.0, "x drill", "a habit; handbooks ask 3 d (plastics_threads.csv)", "practice"),
    "air_must_share": Limit(0.5, "share", _COMMON, "practice"),
    "warm_watts": Limit(20.0, "W", _CHOICE, "practice"),
    "rise_note": Limit(20.0, "K", _CHOICE, "practice"),
    "swing_off": Limit(15.0, "mm", _CHOICE, "practice"),
    "drop_should": Limit(3.0, "%", "ABYC E-11 and ISO 10133 (copper_rules.csv)", "read2"),
    "drop_must": Limit(5.0, "%", _COMMON, "practice"),
    "wire_temp": Limit(60.0, "C", _CHOICE, "practice"),
    "fuse_ohm": Limit(0.0, "ohm", _CHOICE, "practice"),
    "chassis_ohm": Limit(0.001, "ohm", _COMMON, "practice"),
    "fuse_from_source": Limit(450.0, "mm", "the 18 in habit, 457 (fuse_rules.csv)", "practice"),
    "drill_plunge": Limit(15.0, "mm", _COMMON, "practice"),
    "spacer_off": Limit(0.8, "mm", "half a washer of 1.6 mm", "practice"),
    "tilt_should": Limit(3.0, "deg", _COMMON, "practice"),
    "tilt_must": Limit(6.0, "deg", _COMMON, "practice"),
    "engage_must": Limit(
        1.0, "x d", "engagement in steel, the least of all (plastics_threads.csv)", "memory"
    ),
    "engage_should": Limit(1.2, "x d", _COMMON, "practice"),
    "screw_clear": Limit(1.0, "mm", _CHOICE, "practice"),
    "long_time_hot": Limit(0.25, "share", "creep practice (plastics_threads.csv)", "memory"),
    "hot_short": Limit(0.6, "share", "creep practice", "memory"),
    "crash_forward": Limit(20.0, "g", "49 CFR 571.207 S4.2, compared with (loads.csv)", "read2"),
    "crash_other": Limit(10.0, "g", "EN 1789, compared with (loads.csv)", "read1"),
    "sag_should": Limit(3.0, "mm", _COMMON, "practice"),
}

FIXED: dict[str, Limit] = {
    "drilled_off": Limit(0.1, "mm", "a centre punch in plastic is no truer", "practice"),
    "drilled_turn": Limit(0.1, "deg", "0.1 mm at the end of a stand-in 57 mm long", "practice"),
    "reprint_off": Limit(0.1, "mm", "a third of a printed line", "practice"),
    "reprint_drill": Limit(0.01, "mm", "drills step by 0.1 mm or 1/64 in", "practice"),
    "above_lean": Limit(
        45.0, "deg", "our own choice: from there on up is more across than along", "practice"
    ),
    "reprint_holes": Limit(1.0, "holes", "one wrong hole spoils a board", "practice"),
}
"""Thresholds that no layout may change: its `limits` do not know them."""


def fixed(name: str) -> float:
    """Return the value of a threshold of `FIXED`; raise `KeyError` when there is none of that name."""
    return FIXED[name].value


def limit(layout: HasLimits, name: str) -> float:
    """Return the value of limit `name`, the layout's own where it has one.

    Raises `KeyError` when there is no limit of that name.
    """
    override = layout.limits.get(name)
    return LIMITS[name].value if override is None else override
