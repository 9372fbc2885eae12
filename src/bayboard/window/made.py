"""What of a stand-in or fixing is drilled already, in words: what is made stays where it is."""

from collections.abc import Iterable

from bayboard.model.drilled import drilled_screws, is_drilled
from bayboard.model.layout import Layout


def holes_made(layout: Layout, name: str) -> tuple[int, int]:
    """Return how many holes of a stand-in are made, and how many it has; (0, 0) for anything else."""
    gear = next((gear for gear in layout.gear if gear.id == name), None)
    if gear is None:
        return 0, 0
    return len(drilled_screws(layout, gear)), len(layout.cards[gear.card].screws)


def drilled_words(layout: Layout, name: str) -> str:
    """Return "drilled, 3 of 4 holes", "" for what is not drilled."""
    if not is_drilled(layout, name):
        return ""
    made, count = holes_made(layout, name)
    return f"drilled, {made} of {count} holes" if count else "drilled"


def why_not(layout: Layout, names: Iterable[str]) -> str:
    """Return why these cannot be moved by hand: the first of them that is drilled; "" when none is."""
    name = next((name for name in names if is_drilled(layout, name)), None)
    if name is None:
        return ""
    made, count = holes_made(layout, name)
    if not count:
        return f"{name} is drilled. Say where it went in Drill day, or plan a new hole."
    all_made = made == count
    told = "all its holes are made" if all_made and count > 1 else f"{made} of its {count} holes are made"
    if made == 1 and not all_made:
        told = f"1 of its {count} holes is made"
    if count == 1:
        told = "its hole is made"
    return f"{name} is drilled: {told}. Say where they went in Drill day, or plan new holes."
