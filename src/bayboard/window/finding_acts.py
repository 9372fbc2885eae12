"""What can be done about a finding by its buttons: an edit, or a stage that is gone to."""

from dataclasses import dataclass

from bayboard.edits.edit import Edit
from bayboard.edits.plan_new_hole import PlanNewHole
from bayboard.edits.put_back import PutBack, is_back
from bayboard.model.layout import Layout
from bayboard.rules.finding import Finding


@dataclass(frozen=True, slots=True)
class FindingAct:
    """A button of a finding: its words, and the edit it does or the stage it goes to."""

    words: str
    edit: Edit | None = None
    stage: str = ""


def acts_of(finding: Finding, layout: Layout) -> tuple[FindingAct, ...]:
    """Return the buttons of a finding, the first cure first; () for one without.

    What is back on its holes as well as they fit is not offered to be put back once more.
    """
    if finding.rule == "reprint":
        return (FindingAct("Go to Print", stage="Print"),)
    if finding.rule != "drilled" or len(finding.subjects) != 1:
        return ()
    name = finding.subjects[0]
    fixing = any(fixing.id == name for fixing in layout.fixings)
    back = FindingAct(f"Put {name} back", PutBack(name))
    anew = FindingAct("Plan a new hole" if fixing else "Plan new holes", PlanNewHole(name))
    return (anew,) if is_back(layout, name) else (back, anew)
