"""Read what a person typed for a length: fractions, primes, commas, sums.

Reading order: `measure` (the whole text), `plain` (odd characters made plain), then the grammar from the
outside in:

    sum    = [sign] term { sign term }
    term   = number [unit]  |  number feet number [inches]
    number = 12 | 12.5 | 12,5 | 3/8 | 12 3/8 | 12-3/8
"""

import re
from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple
from unicodedata import normalize

LONGEST = 80  # letters; nobody types more for a length
INCH = Fraction(254, 10)  # mm, exact (international inch)
_FEET = "ft"
_METRIC = ("mm", "cm", "m")
_MM = {"mm": Fraction(1), "cm": Fraction(10), "m": Fraction(1000), "in": INCH, _FEET: 12 * INCH}
_WORDS = {
    "mm": "mm millimeter millimeters millimetre millimetres",
    "cm": "cm centimeter centimeters centimetre centimetres",
    "m": "m meter meters metre metres",
    "in": '" in inch inches',
    _FEET: "' ft foot feet",
}
_UNITS = {word: unit for unit, words in _WORDS.items() for word in words.split()}

_LOOKS_LIKE = {"'": "′’‘‛ʹʼ´`", '"': "″”“„‟ʺ〃", "-": "−‐‑‒–—", "/": "⁄∕", "": "\u200b\u2060\ufeff"}
_PLAIN = str.maketrans({odd: plain for plain, odds in _LOOKS_LIKE.items() for odd in odds})
_BEFORE_SMALL_FIGURE = re.compile(r"(?<=[0-9])(?=[¼½¾⅐-⅟↉⁰¹²³⁴-⁹])")

_TOKEN = re.compile(
    r"(?P<whole>\d+)[ -](?P<part>\d+/\d+)|(?P<fraction>\d+/\d+)|(?P<decimal>\d+(?:[.,]\d*)?|[.,]\d+)"
    r"|(?P<unit>(?:[a-z]+|['\"])\.?)|(?P<sign>[+-])|(?P<space> )|(?P<odd>.)",
    re.ASCII,
)
_AFTER_FEET = r"(?:'|\bft\.?|\bfoot|\bfeet)"
_JOINED = re.compile(rf"({_AFTER_FEET})-(?=\d)")
_EITHER_WAY = re.compile(rf"(?<![\d/.,])\d+(?: -|- )\d+/\d|{_AFTER_FEET}(?: -|- )\d")
_THOUSANDS = re.compile(r"(?<![\d.,])[1-9]\d{0,2},\d{3}(?!\d)")


class NotALength(ValueError):
    """What was typed is not a length; the message is a sentence for the person who typed it."""


class Token(NamedTuple):
    """A piece of a typed text: a number, a unit or a sign."""

    kind: str
    word: str
    value: Fraction = Fraction(0)


def not_a_length(text: str) -> NotALength:
    """Return the error for a text that cannot be read at all."""
    shown = " ".join(text.split())
    if len(shown) > 24:
        shown = shown[:23] + "…"
    start = f"{shown} is not a length" if shown else "Nothing is typed yet"
    return NotALength(f"{start}. Try 18 7/8, 479 mm or 47.9 cm.")


def plain(text: str) -> str:
    """Return `text` with odd spaces, primes, dashes and fraction characters spelled in plain letters."""
    apart = _BEFORE_SMALL_FIGURE.sub(" ", text.translate(_PLAIN))
    letters = normalize("NFKC", apart).translate(_PLAIN).lower().replace("''", '"')
    return re.sub(" ?/ ?", "/", " ".join(letters.split()))


def measure(text: str, shown: str) -> Fraction:
    """Return mm, exact, of a typed text; a bare number is in `shown`, "mm" or "in".

    Raises `NotALength` with a sentence that helps, also for texts that can be read two ways.
    """
    if len(text) > LONGEST:
        raise not_a_length(text)
    typed = plain(text)
    if _EITHER_WAY.search(typed):
        raise NotALength(
            f"{typed} can be read two ways. Write 12-3/8 to add the part, 12 - 3/8 to take it away."
        )
    comma = _THOUSANDS.search(typed)
    if comma:
        whole, point = comma[0].replace(",", ""), comma[0].replace(",", ".")
        raise NotALength(f"{comma[0]} can be read two ways. Write {whole} or {point}.")
    try:
        return _sum(list(tokens(_JOINED.sub(r"\1 ", typed))), shown)
    except (_UnreadableError, ZeroDivisionError):
        raise not_a_length(text) from None


class _UnreadableError(ValueError):
    pass


def tokens(typed: str) -> Iterator[Token]:
    """Yield the numbers, units and signs of a plain text; raise `ValueError` for anything else."""
    for found in _TOKEN.finditer(typed):
        kind = str(found.lastgroup)
        if kind == "part":
            part = Fraction(found["part"])
            if part >= 1:
                raise _UnreadableError(typed)
            yield Token("number", found[0], int(found["whole"]) + part)
        elif kind in ("fraction", "decimal"):
            yield Token("number", found[0], Fraction(found[0].replace(",", ".")))
        elif kind in ("unit", "sign"):
            yield Token(kind, found[0].rstrip("."))
        elif kind == "odd":
            raise _UnreadableError(typed)


def _sum(left: list[Token], shown: str) -> Fraction:
    """Return mm of the whole text; every term but the first needs its sign."""
    total = Fraction(0)
    said: set[str | None] = set()
    first = True
    while left or first:
        sign = left.pop(0).word if left and left[0].kind == "sign" else "+" if first else ""
        if not sign:
            raise _UnreadableError
        mm, unit = _term(left, shown)
        total += mm if sign == "+" else -mm
        said.add(unit)
        first = False
    if None in said and any(unit and (unit in _METRIC) != (shown in _METRIC) for unit in said):
        raise NotALength("Say the unit of each part: 12 3/8 in + 5 mm, not 12 3/8 + 5 mm.")
    return total


def _term(left: list[Token], shown: str) -> tuple[Fraction, str | None]:
    """Take one term off the front of `left`; return its mm and its unit, None when bare."""
    number = _number(left)
    unit = _unit(left)
    if unit == _FEET and left and left[0].kind == "number":
        inches = _number(left)
        if _unit(left) not in (None, "in"):
            raise _UnreadableError
        return number * _MM[_FEET] + inches * INCH, unit
    return number * _MM[unit or shown], unit


def _number(left: list[Token]) -> Fraction:
    if not left or left[0].kind != "number":
        raise _UnreadableError
    return left.pop(0).value


def _unit(left: list[Token]) -> str | None:
    if not left or left[0].kind != "unit":
        return None
    word = left.pop(0).word
    if word not in _UNITS:
        raise _UnreadableError
    return _UNITS[word]
