"""`bayboard check FILE [--json] [--strict]`: say what is wrong with a layout."""

import argparse
import json
from typing import Any

from bayboard.commands.opened import layout_of
from bayboard.commands.words import FILE
from bayboard.rules.check import Verdict, check
from bayboard.rules.cures import with_nudges
from bayboard.rules.finding import Finding, Unchecked
from bayboard.store.named import named

_DIGITS = 4  # figures in --json are rounded to 0.0001
_FEW, _MOST, _LEAST = 40, 10_240, 64  # findings; places for all of them; places for each
_PLACES = 6  # a move is a place: every 1/64 in is exact at 0.000001 mm


def describe(parser: argparse.ArgumentParser) -> None:
    """Add the command's words to `parser`."""
    parser.add_argument("file", metavar="FILE", help=FILE)
    parser.add_argument("--json", action="store_true", help="write findings as JSON")
    parser.add_argument("--strict", action="store_true", help="exit 1 also when anything is unchecked")


def run(chosen: argparse.Namespace) -> int:
    """Print the verdict; return 1 when there is a must (--strict: or anything unchecked), else 0."""
    layout = layout_of(named(chosen.file))
    verdict = check(layout)
    if chosen.json:
        told = with_nudges(verdict, layout, _looks(len(verdict.findings)))
        print(json.dumps(as_json(told), ensure_ascii=False, indent=1))
    else:
        print("\n".join(as_text(verdict)))
    wrong = verdict.counts["must"] or (chosen.strict and verdict.counts["unchecked"])
    return 1 if wrong else 0


def _looks(findings: int) -> int | None:
    """Return at how many places leads are led anew for one finding: at all of the grid, unless many ask."""
    return None if findings <= _FEW else max(_LEAST, _MOST // findings)


def as_json(verdict: Verdict) -> dict[str, Any]:
    """Return the verdict as the JSON value that `check --json` prints."""
    return {
        "bayboard": 1,
        "findings": [_finding(f) for f in verdict.findings],
        "unchecked": [
            {"rule": u.rule, "subjects": list(u.subjects), "says": u.says} for u in verdict.unchecked
        ],
        "counts": verdict.counts,
    }


def as_text(verdict: Verdict) -> list[str]:
    """Return the verdict as lines to read: findings worst first, then what nobody looked at."""
    lines = [_line(number, f) for number, f in enumerate(verdict.findings, start=1)]
    if not lines:
        lines = ["Nothing to say."]
    if verdict.unchecked:
        lines += ["", "Nobody looked:", *(_unlooked(u) for u in verdict.unchecked)]
    counts = verdict.counts
    return [
        *lines,
        "",
        f"{counts['must']} must, {counts['should']} should, {counts['note']} note, "
        f"{counts['let_be']} let be, {counts['unchecked']} unchecked",
    ]


def _line(number: int, finding: Finding) -> str:
    left = f" Let be: {finding.let_be}" if finding.let_be is not None else ""
    return f"{number:>3}  {finding.severity:<6}  {finding.says}{left}"


def _unlooked(unchecked: Unchecked) -> str:
    return f"     {unchecked.rule}: {unchecked.says}"


def _finding(finding: Finding) -> dict[str, Any]:
    nudge = finding.nudge
    return {
        "rule": finding.rule,
        "severity": finding.severity,
        "subjects": list(finding.subjects),
        "measure": _figure(finding.measure),
        "limit": _figure(finding.limit),
        "unit": finding.unit,
        "at": None if finding.at is None else [_figure(v) for v in finding.at],
        "says": finding.says,
        "let_be": finding.let_be,
        "nudge": nudge and {"gear": nudge.gear, "by": [round(v, _PLACES) + 0.0 for v in nudge.by]},
    }


def _figure(value: float | None) -> float | None:
    return None if value is None else round(float(value), _DIGITS) + 0.0
