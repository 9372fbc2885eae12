"""Lengths as people type and read them; inside the program a length is mm, always.

Reading order: `read_length`, `show_length`, `show_two` and `show_both`, `surprise`.
Fractions are spelled `12 3/8` in plain text; screen and paper draw them.
"""

from fractions import Fraction
from math import ceil, floor
from typing import Literal

from bayboard.units.figure import show_number
from bayboard.units.typed import INCH, NotALength, measure

__all__ = [
    "NotALength",
    "read_length",
    "rounded",
    "show_at_least",
    "show_both",
    "show_length",
    "show_two",
    "surprise",
]

Units = Literal["mm", "in"]

LONGEST = 100_000  # mm; the largest length of a layout
TYPED_DIGITS = 6  # places after the point, mm, that a typed or dragged value keeps; every 1/64 in is exact
FINEST = 64  # parts of an inch that are shown
_EXACT_DIGITS = 9  # places that tell any two lengths of a layout apart
_SPARE = Fraction(1, 1_000_000)  # of a step; what floating point leaves over is not rounded up
_SURPRISE = 10  # times the bay's size


def rounded(mm: float) -> float:
    """Return a typed or dragged length rounded to 0.000001 mm, never -0."""
    return round(mm, TYPED_DIGITS) + 0.0


def read_length(text: str, units: Units) -> float:
    """Return mm of a typed length, rounded to 0.000001 mm; a bare number is in `units`.

    Reads `12 3/8`, `12-3/8"`, `314 mm`, `31,4 cm`, `1' 2"` and sums like `12 3/8 + 1/2`; `12 - 3/8`
    takes away.  Raises `NotALength` with one helpful sentence.
    """
    mm = measure(text, units)
    if abs(mm) > LONGEST:
        raise NotALength(f"{' '.join(text.split())} is more than 100 m. Correct the figure.")
    return float(round(mm, TYPED_DIGITS)) + 0.0


def show_length(mm: float, units: Units) -> str:
    """Return a length to the nearest 1/64 in ("12 3/8 in") or 0.1 mm ("314.5 mm"); halves go up."""
    return f"{_inches(mm, FINEST)} in" if units == "in" else f"{show_number(mm, 1)} mm"


def show_at_least(mm: float, units: Units) -> str:
    """Return a length rounded up to 1/64 in or 0.1 mm, so that whoever keeps to it has enough."""
    step = INCH / FINEST if units == "in" else Fraction(1, 10)
    return show_length(float(ceil(Fraction(mm) / step - _SPARE) * step), units)


def show_both(mm: float) -> str:
    """Return a length in both units: "12 3/8 in, 314.3 mm"."""
    return f"{show_length(mm, 'in')}, {show_length(mm, 'mm')}"


def show_two(a: float, b: float, units: Units) -> tuple[str, str]:
    """Return two lengths with as many digits as it takes that unequal ones never read equal."""
    shown = show_length(a, units), show_length(b, units)
    if a == b or shown[0] != shown[1]:
        return shown
    scale = float(INCH) if units == "in" else 1.0
    for digits in range(2, _EXACT_DIGITS + 1):
        shown = f"{show_number(a / scale, digits)} {units}", f"{show_number(b / scale, digits)} {units}"
        if shown[0] != shown[1]:
            return shown
    return f"{a / scale!r} {units}", f"{b / scale!r} {units}"


def surprise(mm: float, span_mm: float, units: Units, text: str) -> str | None:
    """Return a question when a length is over ten times the bay's size, else None.

    `text` is what was typed for `mm` with `units` shown, `span_mm` the longer side of what was measured;
    0 means that nothing was, and nothing surprises.
    """
    most = _SURPRISE * span_mm
    if not span_mm or abs(mm) <= most:
        return None
    start = f"{show_length(mm, units)} is over ten times the size of this bay"
    meant = measure(text, "mm")
    if units == "in" and abs(meant) <= most:
        return f"{start}; did you mean {show_length(float(meant), 'mm')}?"
    return f"{start}; is that right?"


def _inches(mm: float, parts: int) -> str:
    """Return inches to the nearest 1/`parts`, as `12 3/8`."""
    count = floor(abs(Fraction(mm)) / INCH * parts + Fraction(1, 2))
    whole, part = divmod(count, parts)
    sign = "-" if mm < 0 and count else ""
    words = [str(whole)] if whole or not part else []
    if part:
        words.append(str(Fraction(part, parts)))
    return sign + " ".join(words)
