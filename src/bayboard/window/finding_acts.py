"""What can be done about a finding by its buttons: a cure, another edit, or a stage that is gone to."""

from collections.abc import Sequence
from dataclasses import dataclass

from bayboard.edits.edit import Edit
from bayboard.edits.plan_new_hole import PlanNewHole
from bayboard.edits.put_back import PutBack, is_back
from bayboard.model.layout import Layout
from bayboard.rules.cures import Cure
from bayboard.rules.finding import Finding

BUTTONS = 2  # cures that have a button; more would push the other findings out of sight
OWN_ACTS = frozenset(("reprint", "drilled"))  # rules whose findings have buttons of their own


@dataclass(frozen=True, slots=True)
class FindingAct:
    """A button of a finding: its words, and the edit it does or the stage it goes to.

    `cure`: the edit was found for the layout `found_for`, and is tried again on any other.
    """

    words: str
    edit: Edit | None = None
    stage: str = ""
    cure: Cure | None = None
    found_for: Layout | None = None


def acts_of(finding: Finding, layout: Layout, cures: Sequence[Cure] = ()) -> tuple[FindingAct, ...]:
    """Return the buttons of a finding, the first cure first; () for one without.

    What is back on its holes as well as they fit is not offered to be put back once more.
    """
    if finding.rule == "reprint":
        return (FindingAct("Go to Print", stage="Print"),)
    if finding.rule != "drilled" or len(finding.subjects) != 1:
        return tuple(of_cure(cure, layout) for cure in cures[:BUTTONS])
    name = finding.subjects[0]
    fixing = any(fixing.id == name for fixing in layout.fixings)
    back = FindingAct(f"Put {name} back", PutBack(name))
    anew = FindingAct("Plan a new hole" if fixing else "Plan new holes", PlanNewHole(name))
    return (anew,) if is_back(layout, name) else (back, anew)


def of_cure(cure: Cure, layout: Layout) -> FindingAct:
    """Return the button of a cure; one that leaves a should or a note says that it only helps."""
    label = cure.edit.label(layout)
    words = label if cure.gone else f"Better: {label[:1].lower()}{label[1:]}"
    return FindingAct(words, cure.edit, cure=cure, found_for=layout)
