"""What the Card says in words."""

from bayboard.model.layout import Card, Units
from bayboard.model.placed import Placed
from bayboard.rules.scene import Scene
from bayboard.window.depth import depth_sentence
from bayboard.window.draw.bench import size_text
from bayboard.window.made import drilled_words
from bayboard.window.workplace import Workplace

POUND = 0.45359237  # kg, exact (international avoirdupois pound)
_COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight")
Said = list[tuple[str, bool]]  # sentences, each with whether it is in strong ink


def mass_and_kind(card: Card, units: Units) -> str:
    """Return a card's kind and mass: "amplifier, 6.2 kg"."""
    if card.mass is None:
        return f"{card.kind}, not weighed"
    mass = f"{card.mass / POUND:.1f} lb" if units == "in" else f"{card.mass:.1f} kg"
    return f"{card.kind}, {mass}"


def about(scene: Scene, piece: Placed) -> Said:
    """Return how a stand-in stands, and its figures."""
    made = drilled_words(scene.layout, piece.id)
    told = [(f"{made[:1].upper()}{made[1:]}.", True)] if made else []
    return [
        *told,
        (depth_sentence(scene, piece), True),
        (figures(piece.card, scene.layout.units), False),
    ]


def figures(card: Card, units: Units) -> str:
    """Return a card's size, current, heat and screws in one line."""
    told = [size_text(card, units)]
    if card.current is not None and card.current > 0:
        told.append(f"{card.current:g} A at full output")
    if card.heat is not None and card.heat > 0:
        told.append(f"{card.heat:g} W of heat")
    threads = sorted({screw.thread for screw in card.screws})
    if threads:
        count = len(card.screws)
        number = _COUNTS[count] if count < len(_COUNTS) else str(count)
        told.append(f"{number} screws, {' and '.join(threads)}" if count > 1 else f"one screw, {threads[0]}")
    return " · ".join(told)


def idle_words(place: Workplace) -> Said:
    """Return what one can do while nothing is selected."""
    if not place.shown.gear:
        return [("No gear in this vehicle yet.", True), ("Ctrl O opens another one.", False)]
    said = [("Click a stand-in, or press Tab to walk them.", True)]
    if any(gear.at is None for gear in place.shown.gear):
        said.append(("Drag one up from the bench, or press its number, then Enter.", True))
    return [*said, ("F1 shows the keys of this stage.", False)]


def first_start_words() -> Said:
    """Return what is said below the ways to begin."""
    return [("Or drop a layout file anywhere here.", False)]
