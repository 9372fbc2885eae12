"""What of the verdict is shown on the Wall: marks, tags and the distances that findings are about."""

from collections.abc import Iterable, Sequence, Set

import shapely

from bayboard.model.layout import Layout, Point
from bayboard.rules.check import Verdict
from bayboard.rules.scene import Scene
from bayboard.units.length import show_length
from bayboard.window.draw.show import Mark, Measure
from bayboard.window.folds import seat_of
from bayboard.window.loud import is_loud, open_findings
from bayboard.window.measuring import Reach, reaches, tightest
from bayboard.window.short import few_words

_WHOLE = frozenset(("off-board", "seat-depth", "air", "screw", "hold", "drop", "drilled"))  # of a stand-in


def marks(
    verdict: Verdict, layout: Layout, rooms: Sequence[str], told: Set[int] = frozenset()
) -> tuple[Mark, ...]:
    """Return a mark for each open finding that shouts, or is `told`; the others are folded away."""
    return tuple(
        Mark(
            number=number,
            severity=finding.severity,
            at=finding.at,
            short=few_words(finding, layout.units, seat_of(layout, finding)),
            subject=finding.subjects[0] if finding.subjects else None,
            corner=finding.rule in _WHOLE and "." not in finding.subjects[0],
            of=(finding.rule, *finding.subjects),
        )
        for number, finding in open_findings(verdict)
        if is_loud(finding, rooms) or number in told
    )


def gap_measures(
    verdict: Verdict, scene: Scene, skip: Set[frozenset[str]], numbers: Set[int]
) -> list[Measure]:
    """Return the distances that gap findings of these numbers are about, but for the pairs to skip.

    They are lines without words: those stand on the finding's own tag.
    """
    found = []
    for number, finding in open_findings(verdict):
        pair = frozenset(finding.subjects)
        if finding.rule != "gap" or pair in skip or number not in numbers or not pair <= scene.placed.keys():
            continue
        a, b = (scene.placed[name].polygon for name in finding.subjects)
        line = shapely.get_coordinates(shapely.shortest_line(a, b))
        ends: list[Point] = [(float(x), float(y)) for x, y in line]
        found.append(Measure(ends[0], ends[-1], "", finding.severity))
    return found


def chalk_measures(
    verdict: Verdict, scene: Scene, moving: Set[str], only_tightest: bool = False
) -> tuple[tuple[Measure, ...], frozenset[frozenset[str]]]:
    """Return the chalk measures of stand-ins, and the pairs they tell of.

    A measure between two pieces that a gap finding is about wears its number and its words.
    """
    found: Iterable[Reach] = reaches(scene, moving)
    if only_tightest:
        nearest = tightest(found)
        found = () if nearest is None else (nearest,)
    gaps = {frozenset(f.subjects): (n, f) for n, f in open_findings(verdict) if f.rule == "gap"}
    told, pairs = [], set()
    for reach in found:
        pair = frozenset((reach.piece, reach.other or ""))
        number, finding = gaps.get(pair, (None, None))
        if finding is None:
            told.append(Measure(reach.a, reach.b, show_length(reach.long, scene.layout.units)))
            continue
        pairs.add(pair)
        words = few_words(finding, scene.layout.units)
        told.append(Measure(reach.a, reach.b, words, finding.severity, number))
    return tuple(told), frozenset(pairs)
