"""Which standoff of a board cures what is wrong between its back and the bay."""

from bayboard.rules.arrange import on_stay
from bayboard.rules.finding import Finding
from bayboard.rules.measure import on_landing, on_vent
from bayboard.rules.scene import Scene


def curing_standoff(scene: Scene, finding: Finding) -> float | None:
    """Return the least standoff in mm of the finding's board at which it is gone; None where none helps.

    Speaks of on-landing, on-vent and the must of on-stay with a measure; whether the board's new front
    brings other findings is for whoever moves it to see.  Exact: what is shown or typed is rounded up.
    """
    if finding.measure is None or finding.severity != "must":
        return None
    bay, about = scene.layout.bay, finding.subjects[0]
    if finding.rule == on_landing.RULE:
        return next(
            (on_landing.needed(bay, landing) for landing in bay.landings if landing.id == about), None
        )
    if finding.rule == on_vent.RULE:
        board = scene.boards[finding.subjects[1]]
        return next((on_vent.needed(scene, vent, board) for vent in bay.vents if vent.id == about), None)
    if finding.rule == on_stay.RULE:
        stay, _ = scene.stays[about]
        return None if stay.height is None else on_stay.needed(bay, stay, stay.height)
    return None
