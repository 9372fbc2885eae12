"""What "Why?" tells of a rule: its reason, when it speaks, and the limits it judges by with their sources."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from bayboard.model.layout import Layout
from bayboard.model.limit_words import WORDS
from bayboard.rules import RULES
from bayboard.tables.limits import FIXED, LIMITS, Limit

_WAY_IN = ("corridor_fingers", "corridor_driver", "corridor_length", "corridor_most")
_EYES = ("eye_near", "eye_far", "eye_aside", "eye_below_top", "eye_over_top", "eye_step", "eyes_most")
_EYES_OVER_A_FLOOR = ("eye_floor_lean", "eye_floor_near", "eye_floor_far", "eye_floor_aside")

LIMITS_OF: dict[str, tuple[str, ...]] = {
    "off-wall": ("outside_silent",),
    "on-stay": ("corridor_fingers", "corridor_length", "overlap_area"),
    "on-landing": ("overlap_area",),
    "on-vent": ("overlap_area",),
    "way-in": (),
    "lining-cut": ("overlap_area",),
    "overlap": ("overlap_area",),
    "gap": ("gap_must", "gap_should", "gap_cold", "cold_watts", "overlap_area"),
    "off-board": ("outside_silent",),
    "air": ("air_must_share",),
    "warm-stack": ("warm_watts", "above_lean"),
    "heat-rise": ("rise_note",),
    "seat-depth": ("seat_margin", "probe_reach", "lead_od"),
    "seat-swing": ("swing_off",),
    "sight": ("sight_angle", *_EYES, *_EYES_OVER_A_FLOOR, "sight_start"),
    "reach": _WAY_IN,
    "plug-room": ("bend_od", "lead_od"),
    "beside": ("beside_should", "beside_must", "beside_d", "beside_angle", "lead_od"),
    "crossing": ("crossing_should", "lead_od"),
    "lead-path": ("lead_path_silent", "lead_od"),
    "insert-landing": ("insert_margin", "flange_d"),
    "no-drill": ("no_drill_margin",),
    "hole-edge": ("edge_d",),
    "hole-hole": ("pitch_d",),
    "drilled": ("drilled_off", "drilled_turn"),
    "reprint": ("reprint_holes", "reprint_off", "reprint_drill"),
}
"""The limits each rule reads, the one that matters most first; a test reads along and compares."""

_STATUS = {
    "computed": "worked out, not measured",
    "memory": "from memory: a caution, look it up before you rely on it",
}


@dataclass(frozen=True, slots=True)
class Told:
    """A limit as a page tells it.

    `value` is what this vehicle is judged by, `usual` what all others are; `fixed`: no layout may change it.
    """

    name: str
    words: str
    unit: str
    value: float
    usual: float
    source: str
    status: str
    fixed: bool = False

    @property
    def own(self) -> bool:
        """Return whether this vehicle has a limit of its own."""
        return self.value != self.usual


@dataclass(frozen=True, slots=True)
class Page:
    """One rule, told: the fault in a line, why it is one, when it is quiet, and its limits."""

    rule: str
    fault: str
    why: str
    quiet: str
    limits: tuple[Told, ...]


def page(rule: str, layout: Layout) -> Page | None:
    """Return the page of a rule for a layout, None where there is no rule of that name."""
    module = next((r for r in RULES if rule == r.RULE), None)
    if module is None:
        return None
    text = " ".join((module.__doc__ or "").split())
    parts = re.split(r"\s*(?:Why|Quiet|Speaks):\s*", text)
    fault, why, quiet, *_ = (*parts, "", "", "")
    return Page(rule, fault, _capital(why), _capital(quiet), tuple(told(rule, layout)))


def told(rule: str, layout: Layout) -> Iterator[Told]:
    """Yield the limits of a rule as this layout is judged by them."""
    for name in LIMITS_OF.get(rule, ()):
        known = LIMITS.get(name)
        if known is None:
            yield _told(name, FIXED_WORDS[name], FIXED[name], FIXED[name].value, fixed=True)
        else:
            yield _told(name, WORDS[name], known, layout.limits.get(name, known.value))


FIXED_WORDS: dict[str, str] = {
    "drilled_off": "a hole is where it was, within",
    "drilled_turn": "a piece is turned as it was, within",
    "above_lean": "looked down on, from this lean",
    "reprint_off": "a hole is where it was printed, within",
    "reprint_drill": "a drill is as it was printed, within",
    "reprint_holes": "speaks from so many holes on",
}


def own_limits(rule: str, layout: Layout) -> tuple[Told, ...]:
    """Return the limits of a rule that this vehicle has set for itself."""
    if not layout.limits:
        return ()
    return tuple(line for line in told(rule, layout) if line.own)


def status_words(known: Limit) -> str:
    """Return how sure a limit is: "common practice", "read in 2 public places", a caution from memory."""
    if known.status == "practice":
        return "our own choice" if known.source.startswith("our own choice") else "common practice"
    if known.status.startswith("read"):
        count = known.status.removeprefix("read")
        return f"read in {count} public place{'' if count == '1' else 's'}"
    return _STATUS.get(known.status, known.status)


def source_words(known: Limit) -> str:
    """Return where a limit comes from without names of files; "" where its status says it all."""
    source = re.sub(r"\s*\([^()]*\.(?:csv|md)[^()]*\)", "", known.source)
    source = re.sub(r"(\w+)\.(?:csv|md)", lambda name: f"tables of {name[1].replace('_', ' and ')}", source)
    source = (
        source.removesuffix(", compared with")
        .removesuffix(", common practice")
        .removeprefix("our own choice: ")
    )
    return "" if source.startswith(("common practice", "our own choice")) else source


def _told(name: str, words: str, known: Limit, value: float, fixed: bool = False) -> Told:
    return Told(name, words, known.unit, value, known.value, source_words(known), status_words(known), fixed)


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
