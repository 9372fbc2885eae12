"""Put a stand-in or fixing back where it was drilled."""

from dataclasses import dataclass
from math import atan2, degrees, hypot

from msgspec.structs import replace

from bayboard.edits.gear import standing, whole_turn, with_gear
from bayboard.edits.made import owner_named, with_fixing
from bayboard.geometry import outline as outlines
from bayboard.model.drilled import drilled_screws
from bayboard.model.layout import Fixing, Gear, Layout, Point, Pose
from bayboard.model.refused import Refused
from bayboard.model.rounding import rounded_point

_FITS = 2e-6  # mm; holes told to 0.000001 mm lie no farther from the pose that they were drilled in
_NO_ARM = 1e-9  # mm2; holes all on one spot tell no turn


@dataclass(frozen=True, slots=True)
class PutBack:
    """Let the plan follow what was drilled: in the board, for a fixing else in the metal.

    A stand-in is laid on its drilled holes as well as it fits them all, and that becomes the pose that it
    was drilled in; with a single hole it keeps the turn that it was drilled with.
    """

    id: str

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with it put back; raise `Refused` where nothing was drilled for it."""
        owner = owner_named(layout, self.id)
        if isinstance(owner, Fixing):
            there = owner.drilled or owner.metal
            if there is None:
                raise _not_drilled(self.id)
            return with_fixing(layout, replace(owner, at=there))
        made = drilled_screws(layout, owner)
        if owner.drilled is None and not made:
            raise _not_drilled(self.id)
        return with_gear(layout, (self.id,), lambda gear: _back(layout, gear, made))

    def label(self, _layout: Layout) -> str:
        """Return "Put A2 back where it was drilled"."""
        return f"Put {self.id} back where it was drilled"


def is_back(layout: Layout, name: str) -> bool:
    """Return whether something drilled stands where `PutBack` would put it; False for what is not drilled."""
    try:
        return PutBack(name).apply(layout) == layout
    except Refused:
        return False


def _not_drilled(name: str) -> Refused:
    return Refused(name, "nothing was drilled for it", "Say first where it was drilled")


def _back(layout: Layout, gear: Gear, made: dict[int, Point]) -> Gear:
    screws = layout.cards[gear.card].screws
    pairs = [(screws[n - 1].at, at) for n, at in made.items()]
    pose = gear.drilled
    if pairs and (pose is None or _farthest(pairs, pose) > _FITS):
        pose = fitted(pairs, gear.turn if pose is None else pose.turn)
    assert pose is not None  # nothing drilled at all has been refused
    back = standing(gear, pose.at)
    return replace(back, turn=pose.turn, drilled=pose)


def _farthest(pairs: list[tuple[Point, Point]], pose: Pose) -> float:
    stood = outlines.placed([screw for screw, _ in pairs], pose.at, pose.turn)
    return max(hypot(x - a, y - b) for (x, y), (_, (a, b)) in zip(stood, pairs, strict=True))


def fitted(pairs: list[tuple[Point, Point]], turn: float) -> Pose:
    """Return the pose that lays screws (card frame) onto holes (bay axes) with the least sum of squares.

    `turn`, degrees, is kept where the pairs tell none: one pair, or all on one spot.  Rounded to 0.000001.
    Source: W. Kabsch, "A solution for the best rotation to relate two sets of vectors", Acta Cryst. A32
    (1976) 922-923; in the plane the angle is that of the summed (dot, cross) products about both means.
    """
    count = len(pairs)
    sx, sy = (sum(screw[i] for screw, _ in pairs) / count for i in (0, 1))
    hx, hy = (sum(hole[i] for _, hole in pairs) / count for i in (0, 1))
    arms = [((x - sx, y - sy), (a - hx, b - hy)) for (x, y), (a, b) in pairs]
    dot = sum(x * a + y * b for (x, y), (a, b) in arms)
    cross = sum(x * b - y * a for (x, y), (a, b) in arms)
    if hypot(dot, cross) > _NO_ARM:
        turn = whole_turn(degrees(atan2(cross, dot)))
    x, y = outlines.turned([(sx, sy)], turn)[0]
    return Pose(at=rounded_point((hx - float(x), hy - float(y))), turn=turn)
