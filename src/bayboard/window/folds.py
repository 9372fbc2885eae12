"""What the part is called that folds before the board: a seat, or the lid over a floor."""

from bayboard.model.layout import Layout
from bayboard.rules.finding import Finding

LID_LEAN = 45.0  # degrees; in a bay that leans more the part that folds is a lid
BEFORE = frozenset(("seat-depth", "seat-swing"))  # rules whose last subject is a seat


def folds_word(layout: Layout) -> str:
    """Return "seat" or "lid"."""
    return "lid" if abs(layout.bay.lean) >= LID_LEAN else "seat"


def the_seat(layout: Layout, seat: str) -> str:
    """Return how a seat is told: "the seat", "the lid", or by its id where there are several."""
    word = folds_word(layout)
    return f"{word} {seat}" if len(layout.bay.seats) > 1 else f"the {word}"


def under(seat: str) -> str:
    """Return the words between a room and its seat: one that is called "left" is not left under itself."""
    return f"left under {seat}" if seat.startswith("the ") else f"under {seat}"


def seat_of(layout: Layout, finding: Finding) -> str:
    """Return how the seat of a finding is told; "the seat" where it is about none."""
    return the_seat(layout, finding.subjects[-1]) if finding.rule in BEFORE else "the seat"
