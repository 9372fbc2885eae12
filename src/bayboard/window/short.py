"""A finding in the few words of a tag on the scene; the whole sentence stands in the list."""

from collections.abc import Callable

from bayboard.model.layout import Units
from bayboard.rules.finding import Finding
from bayboard.units.figure import show_two_areas
from bayboard.units.length import show_length, show_two
from bayboard.window.folds import under

_FEW: dict[str, str] = {
    "overlap": "{much} into each other",
    "gap": "{much}, {wish}",
    "off-board": "{much} off the board",
    "off-wall": "{much} off the wall",
    "seat-depth": "{much} {under}",
    "seat-swing": "{seat} sweeps {much} into it",
    "air": "{much} of air, {wish}",
    "warm-stack": "a hotter box {much} below",
    "heat-rise": "about {much} warmer than the air",
    "plug-room": "{much} to plug, needs {need}",
    "reach": "way in {much}, needs {need}",
    "sight": "{much} off, limit {need}",
    "on-stay": "{much} into what stays",
    "on-landing": "{much} into the metal",
    "on-vent": "{much} of air, needs {need}",
    "lining-cut": "{much} of lining to cut",
    "way-in": "{much} too wide to go in",
    "beside": "{much} beside 12 V",
    "crossing": "crosses at {much}",
    "lead-path": "{much} in the way",
    "insert-landing": "{much} to the rim, needs {need}",
    "no-drill": "{much} from the rim of no-drill",
    "hole-edge": "{much} to the edge, needs {need}",
    "hole-hole": "{much} apart, needs {need}",
    "drilled": "moved {much} since it was drilled",
    "reprint": "holes to print again: {much}",
}
_NO_MEASURE: dict[str, str] = {
    "sight": "hidden",
    "on-stay": "covers what must stay free",
}
_NEGATIVE: dict[str, str] = {
    "seat-depth": "digs {much} into {seat}",
    "insert-landing": "{much} off the landing",
    "hole-edge": "{much} off the board",
}
_NOTHING: dict[str, str] = {
    "air": "no air, {wish}",
    "reach": "no way in, needs {need}",
    "on-stay": "no way in, needs {need}",
}
_DROP_SIGN = frozenset((*_NEGATIVE, "on-stay", "on-landing", "no-drill"))


def few_words(finding: Finding, units: Units, seat: str = "the seat") -> str:
    """Return the finding for a tag: its measure, what is needed or better, `seat` where it is about one."""
    form = _form(finding)
    if finding.measure is None:
        return form
    measure = abs(finding.measure) if finding.rule in _DROP_SIGN else finding.measure
    much, need = _figures(finding, measure, units)
    wish = f"needs {need}" if finding.severity == "must" else f"{need} is better"
    return form.format(much=much, need=need, wish=wish, seat=seat, under=under(seat))


def _form(finding: Finding) -> str:
    if finding.measure is None:
        return _NO_MEASURE.get(finding.rule, finding.rule.replace("-", " "))
    if finding.measure < 0 and finding.rule in _NEGATIVE:
        return _NEGATIVE[finding.rule]
    if finding.rule == "on-stay" and finding.measure > 0:  # no way for fingers, though the board clears it
        return _FEW["reach"]
    if finding.rule == "no-drill" and finding.measure > 0:
        return "{much} inside no-drill"
    if finding.measure == 0 and finding.rule in _NOTHING:
        return _NOTHING[finding.rule]
    return _FEW.get(finding.rule, f"{finding.rule.replace('-', ' ')} {{much}}")


def _figures(finding: Finding, measure: float, units: Units) -> tuple[str, str]:
    if finding.unit == "mm":
        if finding.limit is None:
            return show_length(measure, units), ""
        return show_two(measure, finding.limit, units)
    if finding.unit == "mm2":
        shown = show_two_areas(measure, finding.limit or 0.0, units)
        return shown if finding.limit is not None else (shown[0], "")
    say = _SAY.get(finding.unit, _plain)
    need = "" if finding.limit is None else say(finding.limit)
    return say(measure), need


def _degrees(value: float) -> str:
    return f"{value:.0f}°"


def _kelvin(value: float) -> str:
    return f"{value:.0f} °C"


def _plain(value: float) -> str:
    return f"{value:.3g}"


_SAY: dict[str, Callable[[float], str]] = {"deg": _degrees, "K": _kelvin}
