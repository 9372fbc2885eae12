"""Angles, masses and plain figures (A, V, W) as people type and read them."""

import re
from decimal import ROUND_HALF_UP, Decimal
from typing import Literal

from bayboard.units.typed import plain

POUND = 0.45359237  # kg, exact (international avoirdupois pound)
_INCH_MM, _CM_MM = 25.4, 10.0
_TYPED_DIGITS = 6  # places after the point that a typed figure keeps
_FIGURE = re.compile(r"([+-]?) ?(\d+(?:[.,]\d*)?|[.,]\d+) ?([a-z°]*)\.?", re.ASCII)
_DEGREES = {"", "°", "deg", "degree", "degrees"}
_MASSES = {"kg": 1.0, "g": 0.001, "lb": POUND, "lbs": POUND, "oz": POUND / 16}


class NotAFigure(ValueError):
    """What was typed is not the figure that is asked for; the message is a sentence for its typist."""


def read_angle(text: str) -> float:
    """Return degrees of a typed angle: `90`, `12,5°`, `-45 deg`; raise `NotAFigure`."""
    number, word = _split(text)
    if number is None or word not in _DEGREES:
        raise NotAFigure(f"{_said(text)} is not an angle. Try 90, 12.5 or -45.")
    return number


def show_angle(degrees: float) -> str:
    """Return degrees to the nearest tenth: "0°", "12.5°"."""
    return f"{show_number(degrees, 1)}°"


def read_mass(text: str, units: Literal["mm", "in"]) -> float:
    """Return kg of a typed mass; a bare number is in kg, or in lb where inches are shown.

    Raises `NotAFigure`.
    """
    number, word = _split(text)
    scale = _MASSES.get(word or ("lb" if units == "in" else "kg"))
    if number is None or scale is None or number < 0:
        raise NotAFigure(f"{_said(text)} is not a mass. Try 4.2 kg or 9 lb.")
    return round(number * scale, _TYPED_DIGITS)


def show_mass(kg: float, units: Literal["mm", "in"]) -> str:
    """Return a mass to the nearest tenth, a hundredth under 1: "4.2 kg", "9.3 lb"."""
    value = kg / POUND if units == "in" else kg
    return f"{show_number(value, 2 if abs(value) < 1 else 1)} {'lb' if units == 'in' else 'kg'}"


def show_area(mm2: float, units: Literal["mm", "in"]) -> str:
    """Return an area to the nearest tenth, a hundredth under 1: "80.5 sq cm", "12.5 sq in"."""
    value = mm2 / (_INCH_MM**2 if units == "in" else _CM_MM**2)
    return _shown(value, 2 if abs(value) < 1 else 1, units)


def show_two_areas(a: float, b: float, units: Literal["mm", "in"]) -> tuple[str, str]:
    """Return two areas in mm2 with as many digits as it takes that unequal ones do not read equal."""
    shown = show_area(a, units), show_area(b, units)
    square = _INCH_MM**2 if units == "in" else _CM_MM**2
    for digits in range(2, _TYPED_DIGITS + 1):
        if a == b or shown[0] != shown[1]:
            break
        shown = _shown(a / square, digits, units), _shown(b / square, digits, units)
    return shown


def _shown(squares: float, digits: int, units: str) -> str:
    return f"{show_number(squares, digits)} sq {'in' if units == 'in' else 'cm'}"


def show_percent(share: float) -> str:
    """Return a share of a whole to the nearest hundredth: "40 %"; only nothing reads 0 and only all 100."""
    whole = share in (0.0, 1.0)
    return f"{share if whole else min(max(round(share, 2), 0.01), 0.99):.0%}".replace("%", " %")


def read_figure(text: str, unit: str) -> float:
    """Return a typed figure whose unit, `A` or `V` or `W`, may stand behind it; raise `NotAFigure`.

    Figures below 0 are refused: no current, voltage or heat of a card is.
    """
    number, word = _split(text)
    if number is None or number < 0 or word not in ("", unit.lower()):
        raise NotAFigure(f"{_said(text)} is not a figure in {unit}. Try 30 {unit} or 7.5 {unit}.")
    return number


def show_figure(value: float, unit: str) -> str:
    """Return a figure to the nearest tenth, a hundredth under 1: "30 A", "0.25 A"."""
    return f"{show_number(value, 2 if abs(value) < 1 else 1)} {unit}"


def show_number(value: float, digits: int) -> str:
    """Return a number with at most `digits` places, trailing zeros dropped, never -0.

    Halves go away from zero, as a person rounds.
    """
    cut = Decimal(repr(float(value))).quantize(Decimal(1).scaleb(-digits), ROUND_HALF_UP)
    return f"{cut.normalize():f}" if cut else "0"


def _split(text: str) -> tuple[float | None, str]:
    """Return the number and the word behind it; None for a text of another form."""
    found = _FIGURE.fullmatch(plain(text))
    if found is None or len(text) > 40:
        return None, ""
    number = float(found[2].replace(",", "."))
    return round(-number if found[1] == "-" else number, _TYPED_DIGITS) + 0.0, found[3]


def _said(text: str) -> str:
    short = " ".join(text.split())[:24]
    return short or "Nothing"
