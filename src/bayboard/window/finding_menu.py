"""The menu of a finding: what its buttons and links do, in lines."""

from bayboard.rules.check import Verdict
from bayboard.window.findings_rows import LET_BE, LET_SPEAK, WHY, Row, Spot

SHOW_IT = "show it"
MOST_CURES = 3  # of a finding in the menu; the others are in its row


def finding_lines(spot: Spot | None, verdict: Verdict) -> list[tuple[str, str, str]]:
    """Return the lines (act, words, key) for an open row: seven at most, the first cure first."""
    if spot is None or not isinstance(spot.row, Row):
        return []
    number = verdict.number(spot.row.finding)
    said = {WHY: "Say why", LET_BE: f"Let finding {number} be", LET_SPEAK: f"Let finding {number} speak"}
    cures = [(word, word, "" if i else "Enter") for i, (word, _) in enumerate(spot.acts[:MOST_CURES])]
    links = [(word, said.get(word, word), "") for word, _ in spot.links]
    return [*cures, *links[:2], (SHOW_IT, "Show it on the Wall", ""), ("next_finding", "Next finding", "N")]
