"""The nudges of a layout found the long way: every stand-in at every place, the whole check at each."""

from bayboard.edits.move_gear import MoveGear
from bayboard.rules.check import check


def levels(layout, judge=check):
    """Return the worst severity of each rule and subjects."""
    rank = {"note": 1, "should": 2, "must": 3}
    found = {}
    for finding in judge(layout).findings:
        name = finding.rule, finding.subjects
        found[name] = max(rank[finding.severity], found.get(name, 0))
    return found


def nudges(layout, moves, judge=check):
    """Return (gear, by) for each finding that a move cures, by rule and subjects.

    The shortest of `moves`, of equals the first stand-in's, of those the first in the list.
    """
    before = levels(layout)
    best = {}
    for number, gear in enumerate(layout.gear):
        if gear.at is None or gear.taped:
            continue
        for place, (dx, dy) in enumerate(moves):
            now = levels(MoveGear((gear.id,), float(dx), float(dy)).apply(layout), judge)
            if any(level == 3 and before.get(name) != 3 for name, level in now.items()):
                continue
            rank = round((dx * dx + dy * dy) ** 0.5, 9), number, place
            for name in before.keys() - now.keys():
                if name not in best or rank < best[name][0]:
                    best[name] = rank, (gear.id, (float(dx), float(dy)))
    return {name: told for name, (_, told) in best.items()}
