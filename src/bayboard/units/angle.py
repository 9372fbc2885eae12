"""Angles as people type and read them; inside the program degrees, counter-clockwise."""

import re

from bayboard.units.figure import show_number

_DIGITS = 6  # places after the point that a typed angle keeps
_TYPED = re.compile(
    r"\s*([-+−–]?)\s*(\d{1,6}(?:[.,]\d{0,9})?|[.,]\d{1,9})\s*(?:°|deg|degrees?)?\s*", re.IGNORECASE
)


class NotAnAngle(ValueError):
    """What was typed is not an angle; the message is a sentence for the person who typed it."""


def read_angle(text: str) -> float:
    """Return degrees from 0 up to 360 of a typed angle: `90`, `-12,5` or `45°`.

    Raises `NotAnAngle` with one helpful sentence.
    """
    found = _TYPED.fullmatch(text)
    if found is None:
        shown = " ".join(text.split())[:24] or "Nothing"
        raise NotAnAngle(f"{shown} is not an angle. Try 90, -15 or 12.5.")
    degrees = float(found[2].replace(",", "."))
    return round((degrees if found[1] in ("", "+") else -degrees) % 360.0, _DIGITS) % 360.0


def short_way(before: float, after: float) -> float:
    """Return the degrees from one direction to another the short way round, in (-180, 180]."""
    by = (after - before) % 360.0
    return by - 360.0 if by > 180.0 else by


def show_angle(degrees: float) -> str:
    """Return an angle to a tenth of a degree: "12.5°"."""
    return f"{show_number(round(degrees % 360.0, 1) % 360.0, 1)}°"


def show_two_angles(a: float, b: float) -> tuple[str, str]:
    """Return two angles in whole degrees, or with as many places as it takes that unequal ones differ."""
    for digits in range(_DIGITS + 1):
        shown = show_number(a, digits), show_number(b, digits)
        if a == b or shown[0] != shown[1]:
            break
    return f"{shown[0]}°", f"{shown[1]}°"
