"""What the limits are called in plain words, and how their values are told and checked when typed."""

from math import isfinite

from bayboard.model.layout import Units
from bayboard.model.refused import Refused
from bayboard.tables.limits import LIMITS
from bayboard.units.figure import NotAFigure, show_number
from bayboard.units.length import LONGEST, NotALength, read_length, show_length
from bayboard.units.typed import plain

WORDS: dict[str, str] = {
    "gap_must": "room between two pieces, at least",
    "gap_should": "room between two pieces, better",
    "gap_cold": "room between two cold pieces",
    "cold_watts": "cold: gives off less than",
    "overlap_area": "shared area that is let pass",
    "outside_silent": "overhang that is let pass",
    "seat_margin": "room before the seat, better",
    "probe_reach": "a probe counts this far round it",
    "sight_angle": "can be read up to this angle",
    "eye_step": "from one eye point to the next",
    "eye_aside": "eyes beside the point, up to",
    "eye_below_top": "eyes below the wall's top, up to",
    "eye_over_top": "eyes over the wall's top, up to",
    "eye_near": "eyes before the wall, from",
    "eye_far": "eyes before the wall, to",
    "eye_floor_lean": "looked down on, from this lean",
    "eye_floor_aside": "eyes past its ends, looking down",
    "eye_floor_near": "eyes above it, looking down, from",
    "eye_floor_far": "eyes above it, looking down, to",
    "eyes_most": "eye points, at most",
    "sight_start": "a line of sight starts this far out",
    "corridor_length": "length of the way in",
    "corridor_fingers": "way in for fingers",
    "corridor_driver": "way in for a screwdriver",
    "corridor_most": "wider than this is not measured",
    "bend_od": "bend radius of a lead",
    "lead_od": "thickness of a lead without a size",
    "beside_should": "run beside a power lead, better under",
    "beside_must": "run beside a power lead, at most",
    "beside_d": "beside: nearer than",
    "beside_angle": "beside: within this angle",
    "crossing_should": "crossing angle, better over",
    "lead_path_silent": "length in the way that is let pass",
    "insert_margin": "landing past an insert's flange",
    "flange_d": "width of a flange nobody measured",
    "no_drill_margin": "room before a no-drill region",
    "edge_d": "hole's middle to the board's edge",
    "pitch_d": "from hole to hole, middles",
    "air_must_share": "share of the asked air that is a must",
    "warm_watts": "warm: gives off at least",
    "rise_note": "warmth of the board told above",
    "swing_off": "hinge and sections may disagree by",
    "drop_should": "loss in the leads, better under",
    "drop_must": "loss in the leads, at most",
    "wire_temp": "temperature of the copper",
    "fuse_ohm": "resistance of a fuse",
    "chassis_ohm": "resistance of the chassis return",
    "fuse_from_source": "fuse this near to the battery",
    "drill_plunge": "a drill plunges through by",
    "spacer_off": "stack of spacers off by",
    "tilt_should": "tilt under a fixing, better under",
    "tilt_must": "tilt under a fixing, at most",
    "engage_must": "thread in the board, at least",
    "engage_should": "thread in the board, better",
    "screw_clear": "screw point clear of what is behind",
    "long_time_hot": "strength left, warm and for years",
    "hot_short": "strength left, warm, for a moment",
    "crash_forward": "crash, along the vehicle",
    "crash_other": "crash, other ways",
    "sag_should": "sag of the board, better under",
}
"""Each limit's name for its reader; it stands before the value."""

_UNIT_WORDS = {
    "x OD": "× the lead's thickness",
    "x d": "× the thread's diameter",
    "x drill": "× the drill",
    "mm2": "mm²",
    "C": "°C",
    "K": "°C",  # of a rise: the same step, and what a thermometer is marked in
    "deg": "°",
    "share": "of it",
}
_MOST = {"mm": float(LONGEST), "deg": 180.0, "share": 1.0, "%": 100.0, "C": 200.0, "g": 1000.0}
_PLACES = 6


def unit_words(unit: str, units: Units) -> str:
    """Return a limit's unit as it is read: "in" for mm where inches are shown."""
    return units if unit == "mm" else _UNIT_WORDS.get(unit, unit)


def show_limit(value: float, unit: str, units: Units) -> str:
    """Return a limit's value with its unit: "6 mm", "60°", "4 × the lead's thickness".

    A length too small for the units shown is told in mm, with all its digits, never as none.
    """
    if unit == "mm" and show_length(value, units) != show_length(0.0, units):
        return show_length(value, units)
    shown = show_number(value, _PLACES)
    if unit == "deg":
        return f"{shown}°"
    word = "mm" if unit == "mm" and value else unit_words(unit, units)
    return f"{shown} {word.removesuffix('s') if value == 1 else word}"


def typed_in(usual: float, unit: str, units: Units) -> Units:
    """Return the unit in which a limit is typed: mm where inches are too coarse to show the usual one."""
    return "mm" if unit == "mm" and show_limit(usual, unit, units).endswith(" mm") else units


def read_limit(text: str, name: str, units: Units) -> float:
    """Return the value of limit `name` as typed, checked; raise `ValueError` with a sentence."""
    unit = LIMITS[name].unit
    try:
        value = read_length(text, units) if unit == "mm" else _figure(text, unit)
    except (NotALength, NotAFigure) as error:
        raise ValueError(str(error)) from None
    try:
        sound(name, value, units)
    except Refused as refused:
        raise ValueError(f"{refused.what[:1].upper()}{refused.what[1:]}. {refused.do}.") from None
    return value


def sound(name: str, value: float, units: Units) -> None:
    """Raise `Refused` where no layout could mean such a limit: unknown, below 0, larger than can be."""
    known = LIMITS.get(name)
    if known is None:
        raise Refused("limits", f"there is no limit called {name}", "Correct its name")
    if not isfinite(value):
        raise Refused(f"limits › {name}", "that is not a figure", "Type one, such as 9")
    most = _MOST.get(known.unit)
    shown = show_limit(value, known.unit, units)
    if value < 0:
        raise Refused(f"limits › {name}", f"{shown} is less than nothing", "Type 0 or more")
    if most is not None and value > most:
        largest = show_limit(most, known.unit, units)
        raise Refused(f"limits › {name}", f"{shown} is more than can be", f"Type {largest} or less")


def _figure(text: str, unit: str) -> float:
    """Return a typed figure; the unit's own letters may stand behind it."""
    told = plain(text).lower()
    for tail in (_UNIT_WORDS.get(unit, unit).lower(), unit.lower(), "°", "×", "x"):
        told = told.removesuffix(tail).rstrip()
    try:
        return round(float(told.replace(",", ".")), _PLACES) + 0.0
    except ValueError:
        said = " ".join(text.split())[:24] or "Nothing"
        raise NotAFigure(f"{said} is not a figure. Try 4 or 2.5.") from None
