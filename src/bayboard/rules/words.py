"""Amounts as sentences tell them."""

from bayboard.geometry.crowd import HAIR
from bayboard.model.layout import Units
from bayboard.units.length import show_length, show_two


def amount(mm: float, units: Units) -> str:
    """Return a length; what is more than nothing never reads 0."""
    return show_two(mm, 0.0, units)[0] if abs(mm) > HAIR else show_length(0.0, units)


def amount_and_need(mm: float, need: float, units: Units) -> tuple[str, str]:
    """Return a length and what is needed: unequal ones never read equal, and only nothing reads 0."""
    shown, wanted = show_two(mm, need, units)
    return (amount(mm, units), wanted) if shown == show_length(0.0, units) else (shown, wanted)
