"""Let a finding be, with the reason, or let it speak again."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.model.check import check
from bayboard.model.layout import Layout, LetBe
from bayboard.model.raw import MOST_THINGS
from bayboard.model.refused import Refused


@dataclass(frozen=True, slots=True)
class LetFindingBe:
    """Leave a should or a note as it is: `measure` is what it tells now, `reason` why that is all right."""

    rule: str
    subjects: tuple[str, ...]
    measure: float | None
    reason: str

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with the entry last, in place of one about the same; refuse an empty reason."""
        reason = self.reason.strip()
        if not reason:
            raise Refused("let_be › reason", "there is no reason", "Say in a few words why it is all right")
        others = _others(layout, self.rule, self.subjects)
        if len(others) >= MOST_THINGS:
            raise Refused("let_be", f"{MOST_THINGS} findings are let be already", "Let one speak again first")
        entry = LetBe(rule=self.rule, subjects=self.subjects, measure=self.measure, reason=reason)
        after = replace(layout, let_be=(*others, entry))
        check(after)
        return after

    def label(self, _layout: Layout) -> str:
        """Return "Let sight of A2.dial be"."""
        return f"Let {self.rule} of {' and '.join(self.subjects)} be"


@dataclass(frozen=True, slots=True)
class LetFindingSpeak:
    """Take back that a finding was let be."""

    rule: str
    subjects: tuple[str, ...]

    def apply(self, layout: Layout) -> Layout:
        """Return the layout without entries about that finding."""
        others = _others(layout, self.rule, self.subjects)
        return layout if len(others) == len(layout.let_be) else replace(layout, let_be=others)

    def label(self, _layout: Layout) -> str:
        """Return "Let sight of A2.dial speak again"."""
        return f"Let {self.rule} of {' and '.join(self.subjects)} speak again"


def _others(layout: Layout, rule: str, subjects: tuple[str, ...]) -> tuple[LetBe, ...]:
    return tuple(entry for entry in layout.let_be if (entry.rule, entry.subjects) != (rule, subjects))
