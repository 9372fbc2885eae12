"""What the Print stage says: short, measured, in the units of the sheets."""

from collections.abc import Sequence
from datetime import tzinfo
from math import floor

from bayboard.job.on_the_bench import paper_of, swapped_sheets
from bayboard.model.layout import Units
from bayboard.paper.form import MARGIN
from bayboard.paper.marks import Page
from bayboard.paper.swap_words import runs
from bayboard.rules.check import Verdict
from bayboard.store.records import PrintLine
from bayboard.units.length import show_length
from bayboard.window.print.laid import LaidBoard, LaidSheet, Nearest
from bayboard.window.when import MONTHS, local

KINDS = {"drill": "template", "cards": "cards"}  # kinds of sheet as they are called on the ledge
MISSING = {"drill": "no board yet", "cards": "no gear yet"}
PAPERS = {"a4": "A4", "a3": "A3", "letter": "Letter", "tabloid": "Tabloid", "roll-610": "Roll"}
PROVE = "Print at 100 %, then lay a steel rule on both bars."
INCH = 25.4
DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
ALL_AGAIN = "Nearly every sheet differs: print the whole set again."
ALL_HOLD = "Every sheet on the bench still holds."
OTHER_PAPER = "Other paper, edge or face is printed whole."
NOT_LOGGED = "Not in the print log: this job is only looked at."
BEHIND = "Look behind the panel before you drill."


def counted(count: int, what: str = "sheet") -> str:
    """Return "1 sheet" or "14 sheets"."""
    return f"{count} {what}" if count == 1 else f"{count} {what}s"


def sheets_of_paper(count: int, paper: str) -> str:
    """Return "22 sheets of letter", "1 sheet off the 610 mm roll"."""
    if paper == "roll-610":
        return f"{counted(count)} off the 610 mm roll"
    return f"{counted(count)} of {PAPERS[paper] if paper in ('a4', 'a3') else paper}"


def listed(numbers: Sequence[int | str]) -> str:
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


def swap_sheets(numbers: Sequence[int]) -> str:
    """Return "sheet 3", "sheets 3 and 7", "sheets 5–8", "6 sheets" where they would be a long list."""
    told = numbered(numbers)
    if len(told) > 20:
        return counted(len(numbers))
    return f"sheet {told}" if len(numbers) == 1 else f"sheets {told}"


def numbered(numbers: Sequence[int]) -> str:
    """Return sheets' numbers, those in a row in short: "3 and 7", "1, 5–8 and 12"."""
    return listed(runs(tuple(numbers)).split(", "))


def swap_told(numbers: Sequence[int]) -> str:
    """Return "Swap sheets 3 and 7; the others stay."."""
    which = "sheet" if len(numbers) == 1 else "sheets"
    return f"Swap {which} {numbered(numbers)}; the others stay."


def holes_told(names: Sequence[str]) -> str:
    """Return "3 holes differ: A2#1, A2#2, H3.", a few names of many."""
    if not names:
        return "No hole differs."
    told = ", ".join(names[:4]) + (f" and {len(names) - 4} more" if len(names) > 4 else "")
    return f"1 hole differs: {told}." if len(names) == 1 else f"{len(names)} holes differ: {told}."


def on_paper(line: PrintLine) -> str:
    """Return "A4", "Letter, back", "A4, 6 mm edge"."""
    paper, edge = paper_of(line)
    parts = [PAPERS.get(paper, paper)]
    parts += [f"{edge:g} mm edge"] if edge != MARGIN else []
    return ", ".join(parts + (["back"] if line.face == "back" else []))


def printed_told(line: PrintLine, zone: tzinfo | None = None, short: bool = False) -> str:
    """Return "Printed as revision 4 on Tue 24 Nov, A4.", or "Revision 4, Tue 24 Nov, A4."."""
    on = on_day(line.at, zone)
    if short:
        return f"Revision {line.revision}, {f'{on}, ' if on else ''}{on_paper(line)}."
    return f"Printed as revision {line.revision}{f' on {on}' if on else ''}, {on_paper(line)}."


def logged(line: PrintLine, zone: tzinfo | None = None, short: bool = False) -> str:
    """Return a line of the log: "Tue 24 Nov: revision 4, A4, 21 sheets", or "24 Nov: 4, 21 sheets"."""
    numbers = swapped_sheets(line)
    count = f"swapped {numbered(numbers)}" if numbers else counted(line.pages)
    on = on_day(line.at, zone)
    if short:
        return f"{on[4:] + ': ' if on else ''}{line.revision}, {count}"
    return f"{on + ': ' if on else ''}revision {line.revision}, {on_paper(line)}, {count}"


def on_day(stored: str, zone: tzinfo | None = None) -> str:
    """Return the day of a stored time as the clock here shows it, "Tue 24 Nov"; "" for no time."""
    at = local(stored, zone)
    return "" if at is None else f"{DAYS[at.weekday()]} {at.day} {MONTHS[at.month - 1]}"


def printed_as(revision: str) -> str:
    """Return the line for the strip once a print is logged."""
    return f"Printed as revision {revision}."


def saved(count: int, name: str) -> str:
    """Return that a PDF stands in a file."""
    return f"Saved {counted(count)} in {name}."
