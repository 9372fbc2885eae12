"""What of the Wall is drawn by the frame: pieces in the hand, coming to rest, or sliding to their place.

An act is done before anything moves: a piece that slides already stands where it will come to rest.
"""

from collections.abc import Callable, Iterable
from math import hypot

from PySide6.QtCore import QObject

from bayboard.model.layout import Point
from bayboard.window.draw.aloft import Aloft
from bayboard.window.draw.show import Measure, Snap
from bayboard.window.motion import CURE, LIFT, SETTLE, SNAP, Ease
from bayboard.window.workplace import EMPTY, Workplace

HIGH = 3.0  # px that a piece in the hand is lifted
SHARE = 0.25  # of the nearest measure: no piece is lifted by more, for its edges are being looked at
NEAR = 1.5  # px; a piece that goes less far does not slide
MANY = 12  # more pieces than these do not slide: too much would move at once


class Carrying(QObject):
    """Follows the hand and the layout; `show` asks for another frame."""

    def __init__(self, place: Workplace, owner: QObject, show: Callable[[], None]) -> None:
        super().__init__(owner)
        self.place = place
        self._show = show
        self._lift = Ease(self, self._step)
        self._slide = Ease(self, self._step, 1.0)
        self._held: frozenset[str] = frozenset()  # in the hand, or coming down
        self._from: dict[str, Point] = {}  # mm from where it stands to where a sliding piece came from
        self._hand = EMPTY
        self._stood = self._places()
        place.opened.connect(self._begin_anew)
        place.changed.connect(self._follow_places)
        place.looked.connect(self._follow_hand)
        place.carried.connect(self._follow_hand)

    def pieces(self) -> frozenset[str]:
        """Return the pieces that are drawn by the frame."""
        coming = self._held if self._lift.running else frozenset()
        sliding = frozenset(self._from) if self._slide.running else frozenset()
        return self.place.hand.pieces | coming | sliding

    def aloft(self, measures: Iterable[Measure]) -> Aloft:
        """Return how those pieces stand off the board; `measures` are those laid on the scene."""
        k, height = self.place.scale.px_per_mm, self._lift.now
        up = height * self._lifted(measures)
        left = 1.0 - self._slide.now
        shifts = {name: (dx * left * k, -dy * left * k) for name, (dx, dy) in self._from.items()}
        for name in self._held:
            x, y = shifts.get(name, (0.0, 0.0))
            shifts[name] = (x, y - up)
        return Aloft(dict.fromkeys(self._held, height), shifts)

    def _lifted(self, measures: Iterable[Measure]) -> float:
        """Return the pixels a piece is lifted: none where it is level with something, or while it turns."""
        hand, k = self.place.hand, self.place.scale.px_per_mm
        if hand.snaps or hand.turning is not None:
            return 0.0
        nearest = min((hypot(m.b[0] - m.a[0], m.b[1] - m.a[1]) for m in measures), default=HIGH / SHARE / k)
        return min(HIGH, SHARE * nearest * k)

    # --- following ---

    def _places(self) -> dict[str, Point]:
        return {name: piece.at for name, piece in self.place.scene.placed.items()}

    def _begin_anew(self) -> None:
        self._stood, self._from, self._held, self._hand = self._places(), {}, frozenset(), EMPTY

    def _follow_places(self) -> None:
        """Let pieces that were moved without a hand slide to where they stand now."""
        before, self._stood = self._stood, self._places()
        if self.place.hand.pieces:
            return
        near = NEAR / self.place.scale.px_per_mm
        came = {n: before.get(n) or self._ledge() for n, at in self._stood.items() if at != before.get(n)}
        ways = {name: _way(self._stood[name], at) for name, at in came.items()}
        ways = {name: way for name, way in ways.items() if hypot(*way) > near}
        if self.place.at_once or len(ways) > MANY:
            self._slide.finish()
        elif ways:
            self._begin_slide(ways, SETTLE if self._hand.pieces else CURE)

    def _ledge(self) -> Point:
        """Return where a piece comes from that waited until now: the middle of the ledge, mm on the Wall."""
        return self.place.scale.mm(self.place.ledge_rect.center())

    def _follow_hand(self) -> None:
        """Lift what is taken in the hand, lay down what is let go, tick where a line takes hold."""
        before, self._hand = self._hand, self.place.hand
        hand = self._hand
        if hand.pieces and not before.pieces:
            self._held = hand.pieces
            self._lift.run(LIFT, 1.0, 0.0)
        elif before.pieces and not hand.pieces:
            self._lift.run(SETTLE, 0.0)
        self._held = hand.pieces or self._held
        tick = _tick(before.snaps, hand.snaps, before.pulled, hand.pulled)
        if hand.pieces and before.pieces and hypot(*tick) > NEAR / self.place.scale.px_per_mm:
            self._begin_slide(dict.fromkeys(hand.pieces, tick), SNAP)

    def _begin_slide(self, ways: dict[str, Point], ms: int) -> None:
        self._from = ways
        self._slide.run(ms, 1.0, 0.0)

    def _step(self, _value: float) -> None:
        self._show()


def _way(now: Point, before: Point) -> Point:
    return before[0] - now[0], before[1] - now[1]


def _tick(before: tuple[Snap, ...], now: tuple[Snap, ...], pulled: Point, pulls: Point) -> Point:
    """Return how far a piece jumped as a line took hold of it or let it go, by axis."""
    jumps = (pulled[0] - pulls[0], pulled[1] - pulls[1])
    changed = (_held_by(before, 0) != _held_by(now, 0), _held_by(before, 1) != _held_by(now, 1))
    return jumps[0] if changed[0] else 0.0, jumps[1] if changed[1] else 0.0


def _held_by(snaps: tuple[Snap, ...], axis: int) -> float | None:
    """Return at what a line holds a piece along x (axis 0, an upright line) or y, None for no line."""
    return next((snap.a[axis] for snap in snaps if snap.a[axis] == snap.b[axis]), None)
