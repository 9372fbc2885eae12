"""Which sheets of a set that was printed are no longer true: told by what the pages show.

Two pages are the same when all that is drawn on them lies alike, their information strips aside: those name
the revision and the set.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import isclose

from bayboard.paper.book import Book
from bayboard.paper.marks import Clipped, Fill, Letters, Mark, Page, Stroke, Trace

ALIKE = 0.01  # mm, degrees; what differs less is the seam solver's own uncertainty
FEW = 0.25  # of the sheets; where fewer stay, nobody saves paper by taping old and new together


@dataclass(frozen=True, slots=True)
class Swap:
    """Numbers of drill sheets: `sheets` of the new set that differ, `gone` of the old set, `same` in both.

    `came`: the new set has sheets more, so that "3 of 12" no longer holds on the old ones.
    """

    sheets: tuple[int, ...]
    gone: tuple[int, ...]
    same: tuple[int, ...]
    came: bool = False

    @property
    def all_again(self) -> bool:
        """Return whether the whole set is better printed: sheets came or went, or hardly any stays."""
        count = len(self.sheets) + len(self.same)
        return self.came or bool(self.gone) or (bool(self.sheets) and len(self.same) < FEW * count)


def swap(old: Book, new: Book) -> Swap:
    """Return which drill sheets of the new book differ from those of the old one, both whole sets."""
    before = {page.number: page for page in old.pages if page.number}
    after = {page.number: page for page in new.pages if page.number}
    same = tuple(n for n, page in after.items() if n in before and alike(before[n], page))
    return Swap(
        sheets=tuple(n for n in after if n not in same),
        gone=tuple(n for n in before if n not in after),
        same=same,
        came=any(n not in before for n in after),
    )


def alike(a: Page, b: Page) -> bool:
    """Return whether two pages show the same, their information strips aside."""
    return _close(a.size, b.size) and _all_alike(a.body, b.body)


def _all_alike(a: Sequence[Mark], b: Sequence[Mark]) -> bool:
    return len(a) == len(b) and all(_mark_alike(x, y) for x, y in zip(a, b, strict=True))


def _mark_alike(a: Mark, b: Mark) -> bool:
    match a, b:
        case Clipped(), Clipped():
            return _all_alike(a.marks, b.marks) and _traces_alike((a.region,), (b.region,))
        case Stroke(), Stroke():
            same_pen = (a.width, a.dash, a.white) == (b.width, b.dash, b.white)
            return same_pen and _traces_alike(a.traces, b.traces)
        case Fill(), Fill():
            return a.white == b.white and _traces_alike(a.traces, b.traces)
        case Letters(), Letters():
            same_words = (a.text, a.face, a.anchor) == (b.text, b.face, b.anchor)
            return same_words and _close((*a.at, a.size, a.turn), (*b.at, b.size, b.turn))
    return False


def _traces_alike(a: Sequence[Trace], b: Sequence[Trace]) -> bool:
    forms = ([(t.closed, *map(len, t.steps)) for t in traces] for traces in (a, b))
    return next(forms) == next(forms) and _close(tuple(_figures(a)), tuple(_figures(b)))


def _figures(traces: Sequence[Trace]) -> Iterator[float]:
    for trace in traces:
        yield from trace.start
        for step in trace.steps:
            yield from step


def _close(a: Sequence[float], b: Sequence[float]) -> bool:
    return len(a) == len(b) and all(
        isclose(x, y, rel_tol=0.0, abs_tol=ALIKE) for x, y in zip(a, b, strict=True)
    )
