"""Which drill sheets lie on the bench, read from the print log: the last whole set, and what was swapped."""

from collections.abc import Sequence
from dataclasses import dataclass

from bayboard.job.printing import DRILL, EDGE
from bayboard.paper.form import MARGIN
from bayboard.paper.options import Options, Stay
from bayboard.store.records import PrintLine


@dataclass(frozen=True, slots=True)
class OnTheBench:
    """A set of drill sheets: `whole` is the revision it was printed of, `now` the one it shows today.

    `words` are those of the whole set, `swapped` the sheets put in since, oldest first.  `line`: the last
    print, the one that made it show `now`.
    """

    whole: int
    now: int
    words: str
    swapped: Stay
    line: PrintLine

    @property
    def options(self) -> Options:
        """Return the paper, white edge and face of the set."""
        paper, edge = paper_of(self.line)
        return Options(paper, (DRILL,), edge, "back" if self.line.face == "back" else "front")

    def staying(self, same: Sequence[int]) -> Stay:
        """Return the set words that the sheets of these numbers bear, and which of them bear each."""
        bears = dict.fromkeys(same, self.words)
        for words, numbers in self.swapped:
            bears |= {n: words for n in numbers if n in bears}
        found: dict[str, list[int]] = {}
        for number, words in bears.items():
            found.setdefault(words, []).append(number)
        return tuple((words, tuple(numbers)) for words, numbers in found.items())


def on_the_bench(lines: Sequence[PrintLine]) -> OnTheBench | None:
    """Return the drill sheets that were printed last, None where none were.

    A line that names no revision, or swaps sheets of a set that is not there, is passed over.
    """
    found: OnTheBench | None = None
    for line in lines:
        if not line.revision.isascii() or not line.revision.isdecimal():
            continue
        number, numbers = int(line.revision), swapped_sheets(line)
        if DRILL in line.sheets:
            found = OnTheBench(number, number, line.words, (), line)
        elif numbers and found is not None and _same_paper(line, found.line):
            swapped = (*found.swapped, (line.words, numbers))
            found = OnTheBench(found.whole, number, found.words, swapped, line)
    return found


def swapped_sheets(line: PrintLine) -> tuple[int, ...]:
    """Return the numbers of the drill sheets that a print put in the place of older ones."""
    words = [word.removeprefix(f"{DRILL} ") for word in line.sheets if word.startswith(f"{DRILL} ")]
    return tuple(int(word) for word in words if word.isascii() and word.isdecimal())


def paper_of(line: PrintLine) -> tuple[str, float]:
    """Return the paper of a print and its white edge in mm."""
    paper, _, edge = line.paper.partition(EDGE)
    try:
        return paper, float(edge) if edge else MARGIN
    except ValueError:
        return paper, MARGIN


def _same_paper(a: PrintLine, b: PrintLine) -> bool:
    return (a.paper, a.face) == (b.paper, b.face)
