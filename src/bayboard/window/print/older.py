"""The sheets printed before: what the log says of them, and which a change of the layout makes old."""

from collections.abc import Sequence
from dataclasses import dataclass

from bayboard.job.on_the_bench import OnTheBench, on_the_bench
from bayboard.model.layout import Layout
from bayboard.model.refused import Refused
from bayboard.paper.options import Options
from bayboard.store.records import PrintLine
from bayboard.window.print.making import Asked, NotMade, Sheets, Weighed, Weighing
from bayboard.window.workplace import Workplace


@dataclass(frozen=True, slots=True)
class _Bench:
    """The set on the bench with the layouts that it was printed of and that it shows today."""

    set: OnTheBench
    whole: Layout
    now: Layout


class Older:
    """What was printed of the job on the wall, and the last weighing of it against the layout."""

    def __init__(self, place: Workplace) -> None:
        self.place = place
        self.lines: tuple[PrintLine, ...] = ()
        self.weighed: Weighed | None = None
        self.lost = ""  # why the printed revision cannot be had
        self._bench: _Bench | None = None
        self._weighing: Weighing | None = None
        self.read()

    @property
    def bench(self) -> OnTheBench | None:
        """Return the drill sheets on the bench, None where none were printed or their revision is lost."""
        return self._bench.set if self._bench else None

    def read(self) -> None:
        """Read the log anew; where the set on the bench is another, what was weighed is forgotten."""
        job, before = self.place.job, self._bench
        self._bench, self.lost = None, ""
        try:
            self.lines = job.prints()
            found = on_the_bench(self.lines)
            if found is not None:
                self._bench = _Bench(found, job.revision(found.whole), job.revision(found.now))
        except Refused as refused:
            self.lost = refused.what
        if before is None or self._bench is None or self._bench.set != before.set:
            self.forget()

    def forget(self) -> None:
        """Forget what was weighed."""
        self.weighed, self._weighing = None, None

    def weighing(self, asked: Asked) -> Weighing | None:
        """Return what is to be weighed, None without older sheets of the same paper, white edge and face."""
        layout, options = asked
        bench = self._bench
        if bench is None or "drill" not in (options.only or ()):
            return None
        paper = bench.set.options
        if (paper.paper, paper.margin, paper.face) != (options.paper, options.margin, options.face):
            return None
        same = paper.with_units(options.units).with_revision(options.revision)
        return Weighing(layout, bench.set, bench.whole, bench.now, same)

    def knows(self, weighing: Weighing) -> bool:
        """Return whether just that was weighed."""
        known = self._weighing
        return (
            known is not None
            and (known.layout is weighing.layout and known.now is weighing.now)
            and known.options == weighing.options
        )

    def take(self, weighing: Weighing, found: Weighed | NotMade) -> None:
        """Keep the result of a weighing."""
        self._weighing = weighing
        self.weighed = None if isinstance(found, NotMade) else found

    def swap(self) -> tuple[Sheets, tuple[int, ...]] | None:
        """Return the whole set with the seams of the one on the bench and the sheets of it to be swapped.

        None where no sheet is old, or so many that all are printed again.
        """
        found = self.weighed
        if found is None or found.swap.all_again or not found.swap.sheets:
            return None
        return found.sheets, found.swap.sheets

    def options(self, asked: Asked) -> Options | None:
        """Return the options of a print of just the sheets to be swapped, None where nothing is to be."""
        weighing = self.weighing(asked)
        if weighing is None or self.weighed is None or self.swap() is None:
            return None
        return weighing.print_of(self.weighed.swap)


def last_lines(lines: Sequence[PrintLine], count: int = 5) -> tuple[PrintLine, ...]:
    """Return the last prints, newest first."""
    return tuple(reversed(lines[-count:]))
