"""How one looks at a vehicle, kept in its job file: zoom, middle, chalk line, lever, stage, Section wide.

What is read is believed only as far as it makes sense: a broken value is as good as none.
"""

import math
from typing import Any

from bayboard.window.draw.scale import Scale
from bayboard.window.enlarged import FARTHEST, NEAREST
from bayboard.window.workplace import Workplace

NAME = "view"
FAR = 1e5  # mm; nothing is looked at farther off


def view_of(place: Workplace, stage: str) -> dict[str, Any]:
    """Return the view as JSON: `across` is how many mm the Wall's width shows, null when all is shown."""
    middle = place.scale.mm(place.wall_rect.center())
    across = None if place.whole else round(place.wall_rect.width() / place.scale.px_per_mm, 3)
    return {
        "across": across,
        "middle": [round(middle[0], 3), round(middle[1], 3)],
        "chalk": None if place.chalk_x is None else round(place.chalk_x, 3),
        "lever": place.lever,
        "follow": place.follow,
        "wide": round(place.wide, 3),
        "stage": stage,
    }


def take_view(place: Workplace, value: Any) -> str:
    """Look at the vehicle as `value` says; return the stage it names, "" for none."""
    view = value if isinstance(value, dict) else {}
    lever, chalk, wide = view.get("lever"), _number(view.get("chalk")), _number(view.get("wide"))
    if wide is not None and 0.0 <= wide <= 1.0:
        place.wide = wide
        place.looked.emit()  # the parts take their places before anything is brought to the middle
    if lever in ("up", "folded"):
        place.set_lever(lever)
    if isinstance(view.get("follow"), bool):
        place.follow = view["follow"]
    if chalk is not None:
        place.set_chalk(chalk)
    _take_scale(place, view)
    stage = view.get("stage")
    return stage if isinstance(stage, str) else ""


def _take_scale(place: Workplace, view: dict[str, Any]) -> None:
    across, middle = _number(view.get("across")), view.get("middle")
    if across is None or not isinstance(middle, list) or len(middle) != 2:
        return
    x, y = _number(middle[0]), _number(middle[1])
    wide, centre = place.wall_rect.width(), place.wall_rect.center()
    if x is None or y is None or across <= 0 or not FARTHEST <= wide / across <= NEAREST:
        return
    k = wide / across
    place.set_scale(Scale(k, centre.x() - x * k, centre.y() + y * k))


def _number(value: Any) -> float | None:
    """Return a number that can be looked at, None for anything else."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        return None
    if isinstance(value, float) and not math.isfinite(value):
        return None
    return float(value) if abs(value) <= FAR else None
