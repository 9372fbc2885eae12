"""Turn stand-ins, each where it stands or all about one point."""

from dataclasses import dataclass

import numpy as np
from msgspec.structs import replace

from bayboard.edits.gear import standing, told, whole_turn, with_gear
from bayboard.geometry import outline as outlines
from bayboard.model.layout import Gear, Layout, Point

_QUARTER = 90.0  # degrees


@dataclass(frozen=True, slots=True)
class TurnGear:
    """Turn stand-ins by `by` degrees, counter-clockwise.

    Each turns about its own middle, or, where `about` is given (bay axes, mm), all of them about that point;
    those on the bench keep their place there.
    """

    ids: tuple[str, ...]
    by: float
    about: Point | None = None

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with the stand-ins turned; a turn that is changed lies from 0 up to 360."""
        return with_gear(layout, self.ids, self._turned) if self.by % 360.0 else layout

    def _turned(self, gear: Gear) -> Gear:
        turned = replace(gear, turn=whole_turn(gear.turn + self.by))
        if self.about is None or gear.at is None:
            return turned
        away = np.subtract(gear.at, self.about)[np.newaxis]
        x, y = outlines.turned(away, self.by)[0]
        return standing(turned, (self.about[0] + float(x), self.about[1] + float(y)))

    def label(self, _layout: Layout) -> str:
        """Return "Turn A2 left 37.5°" for a turn counter-clockwise, "Turn A2 a quarter left" for 90°."""
        way = "left" if self.by > 0 else "right"
        together = " together" if self.about is not None and len(self.ids) > 1 else ""
        if abs(self.by) == _QUARTER:
            return f"Turn {told(self.ids)}{together} a quarter {way}"
        return f"Turn {told(self.ids)}{together} {way} {abs(self.by):g}°"
