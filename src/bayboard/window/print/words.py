"""What the Print stage says: short, measured, in the units of the sheets."""

from collections.abc import Sequence
from math import floor

from bayboard.model.layout import Units
from bayboard.paper.marks import Page
from bayboard.rules.check import Verdict
from bayboard.units.length import show_length
from bayboard.window.print.laid import LaidBoard, LaidSheet, Nearest

KINDS = {"drill": "template", "cards": "cards"}  # kinds of sheet as they are called on the ledge
MISSING = {"drill": "no board yet", "cards": "no gear yet"}
PAPERS = {"a4": "A4", "a3": "A3", "letter": "Letter", "tabloid": "Tabloid", "roll-610": "Roll"}
PROVE = "Print at 100 %, then lay a steel rule on both bars."
INCH = 25.4
BEHIND = "Look behind the panel before you drill."


def counted(count: int, what: str = "sheet") -> str:
    """Return "1 sheet" or "14 sheets"."""
    return f"{count} {what}" if count == 1 else f"{count} {what}s"


def sheets_of_paper(count: int, paper: str) -> str:
    """Return "22 sheets of letter", "1 sheet off the 610 mm roll"."""
    if paper == "roll-610":
        return f"{counted(count)} off the 610 mm roll"
    return f"{counted(count)} of {PAPERS[paper] if paper in ('a4', 'a3') else paper}"


def listed(numbers: Sequence[int]) -> str:
    """Return "5", "5 and 8", "5, 8 and 9"."""
    names = [str(n) for n in numbers]
    return " and ".join(names) if len(names) < 3 else f"{', '.join(names[:-1])} and {names[-1]}"


def lies(sheet: LaidSheet) -> str:
    """Return which sheets a sheet lies over and under: "lies over 5 and 8, under 9"."""
    parts = [f"over {listed(sorted(sheet.over))}"] if sheet.over else []
    parts += [f"under {listed(sorted(sheet.under))}"] if sheet.under else []
    return f"lies {', '.join(parts)}" if parts else "one sheet, nothing to tape"


def taping(board: LaidBoard) -> str:
    """Return how the sheets of a board are taped: "tape each column first: 1 to 2, 3 to 4 …"."""
    if len(board.sheets) == 1:
        return ""
    columns = [c for c in board.columns if len(c) > 1]
    if not columns:
        return f"tape from left to right, {board.sheets[0].number} to {board.sheets[-1].number}"
    if len(board.columns) == 1:
        return f"tape down the column, {columns[0][0]} to {columns[0][-1]}"
    shown = ", ".join(f"{c[0]} to {c[-1]}" for c in columns[:2])
    return f"tape each column first: {shown}{' …' if len(columns) > 2 else ''}"


def stand_ins(page: Page) -> str:
    """Return whose stand-ins are on a page of cards."""
    names = list(dict.fromkeys(shown.id for shown in page.shows if shown.what == "stand-in"))
    if len(names) > 6:
        names = [*names[:6], "…"]
    return f"stand-ins of {', '.join(names)}"


def beside_hole(nearest: Nearest, units: Units) -> str:
    """Return how near a sheet's seams come to a hole; never more than they keep."""
    if nearest.mm < 0:
        return f"its seam cuts {nearest.hole}: measure that one twice"
    step = INCH / 64 if units == "in" else 0.1
    mm = show_length(floor(nearest.mm / step + 1e-6) * step, units)
    if nearest.near:
        return f"its seam is {mm} from {nearest.hole}: measure that one twice"
    return f"its seams keep {mm} clear of {nearest.hole}"


def open_musts(verdict: Verdict) -> str:
    """Return that musts are open, "" when none is."""
    count = verdict.counts["must"]
    if not count:
        return ""
    start = "1 must is" if count == 1 else f"{count} musts are"
    return f"{start} open; holes print where they stand."


def saved(count: int, name: str) -> str:
    """Return that a PDF stands in a file."""
    return f"Saved {counted(count)} in {name}."
