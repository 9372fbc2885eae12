"""What must be true of every layout beyond its form; `check` is the one door."""

from bayboard.model.layout import Layout


def check(layout: Layout) -> None:
    """Raise `Refused` for the first thing of a layout that cannot be so."""
