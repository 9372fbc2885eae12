"""How warm a board's faces run."""

from bayboard.tables.cooling import still_air

MM2 = 1e6  # in a square metre


def rise(watts: float, face: float) -> float:
    """Return about how many K faces of `face` mm2 run warmer than still air when they shed `watts`.

    Newton's law of cooling, K = W / (h A), with h of cooling.csv, from memory.  It leaves radiation out and
    so errs on the warm side: it may raise a caution, never clear one.
    """
    return watts / (still_air().used * face / MM2)
