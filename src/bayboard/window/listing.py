"""The lines of the Findings as values: what shouts, the folded stages, what was let be."""

from collections.abc import Set

from bayboard.model.layout import Layout
from bayboard.model.limit_words import show_limit
from bayboard.rules.finding import Finding
from bayboard.rules.pages import own_limits
from bayboard.window.findings_rows import Fold, Row
from bayboard.window.loud import folded, is_loud
from bayboard.window.workplace import Workplace, key_of


def listed(place: Workplace, unfolded: Set[str], at_fold: str | None = None) -> list[Row | Fold]:
    """Return the lines from the top, the open one marked; a spoken finding unfolds its stage."""
    verdict, rooms = place.told, place.rooms
    loud = [f for f in verdict.findings if f.let_be is None and is_loud(f, rooms)]
    quiet = [f for f in verdict.findings if f.let_be is not None]
    opened = place.finding if place.spoken_of() is not None else (key_of(loud[0]) if loud else None)

    def row(finding: Finding) -> Row:
        """Return a finding's line."""
        return Row(finding, verdict.number(finding), open=key_of(finding) == opened)

    found: list[Row | Fold] = [row(f) for f in loud]
    for fold in folded(verdict, rooms):
        shown = fold.stage in unfolded or any(key_of(f) == place.finding for f in fold.findings)
        found.append(Fold(fold.stage, fold.words(), shown, current=fold.stage == at_fold))
        found += [row(f) for f in fold.findings] if shown else []
    return found + [row(f) for f in quiet]


def own_words(finding: Finding, layout: Layout) -> str:
    """Return what tells of the limits of its own that this vehicle is judged by here, "" for none."""
    own = own_limits(finding.rule, layout)
    told = [f"{line.words}: {show_limit(line.value, line.unit, layout.units)}" for line in own]
    return f"Set for this vehicle: {', '.join(told)}." if told else ""
