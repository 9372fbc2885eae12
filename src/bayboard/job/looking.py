"""What follows from the layout that is shown: worked out at once, or bit by bit between two frames."""

from math import inf
from typing import TYPE_CHECKING

from bayboard.job.change import Shown
from bayboard.model.layout import Layout

if TYPE_CHECKING:  # a command that only keeps or goes back asks no rules and does without them
    from bayboard.rules.check import Checker, Verdict


class Looking:
    """The rules' look at one layout after another.

    Always true: `shown` is of the layout last taken up; where it is not `judged` yet, its verdict leaves
    out what moved since the last one that was.
    """

    def __init__(self) -> None:
        self._others: list[tuple[Layout, Verdict]] = []
        self.shown: Shown | None = None
        self._checker: Checker | None = None  # None: the next look starts from nothing

    def take_up(self, layout: Layout, within: float = inf) -> Shown:
        """Return the layout with what follows; after about `within` seconds the rest waits for `go_on`.

        If that fails, the next look starts from nothing.
        """
        from bayboard.rules.check import Checker  # noqa: PLC0415

        was, checker = self.shown, self._checker
        if was is not None and checker is not None and not was.judged and layout == was.layout:
            was = self.go_on(within)  # what is equal needs no second look
            if within < inf:
                return was
            checker = self._checker
        self._checker = None
        try:
            self.shown = self._begun(checker, layout) if checker else None
            self._checker = checker or Checker(layout)
            return self.go_on(within)
        except BaseException:
            self.shown, self._checker = was, None
            raise

    def _begun(self, checker: "Checker", layout: Layout) -> Shown:
        scene, moved = checker.begin(layout)
        ends = {lead.id: (lead.from_, lead.to) for lead in layout.leads} if moved else {}
        led = {n for n, both in ends.items() if any(end.partition(".")[0] in moved for end in both)}
        return Shown(layout, checker.now.apart_from(moved | led), scene.carried, scene, judged=False)

    def go_on(self, within: float = inf) -> Shown:
        """Return what is shown after looking on for about `within` seconds, judged if that was enough."""
        from bayboard.rules.check import Checker  # noqa: PLC0415

        shown, checker, self._checker = self.shown, self._checker, None
        if shown is not None and shown.judged:
            self._checker = checker
            return shown
        if checker is None and shown is not None:
            checker = Checker(shown.layout)
        assert checker is not None
        if checker.go_on(within):
            layout = checker.scene.layout if shown is None else shown.layout
            shown = Shown(layout, checker.now, checker.routes, checker.scene)
        assert shown is not None
        self.shown, self._checker = shown, checker
        return shown

    def verdict_of(self, layout: Layout) -> "Verdict":
        """Return what the rules say of any layout; the last few are remembered."""
        from bayboard.rules.check import check  # noqa: PLC0415

        if self.shown is not None and layout is self.shown.layout:
            return self.go_on().verdict
        found = next((verdict for known, verdict in self._others if known is layout), None)
        if found is None:
            found = check(layout)
            self._others = [*self._others[-7:], (layout, found)]
        return found
