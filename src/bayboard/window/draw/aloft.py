"""How stand-ins that are drawn by the frame stand off the board: lifted in the hand, or on their way."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from PySide6.QtCore import QPointF


@dataclass(frozen=True, slots=True)
class Aloft:
    """By gear: `heights` from 0 (on the board) to 1 (in the hand), `shifts` in pixels right and down."""

    heights: Mapping[str, float] = field(default_factory=dict)
    shifts: Mapping[str, tuple[float, float]] = field(default_factory=dict)

    def height(self, name: str) -> float:
        """Return how high a piece is held."""
        return self.heights.get(name, 0.0)

    def shift(self, name: str) -> QPointF:
        """Return how far from its place a piece is drawn, in pixels."""
        return QPointF(*self.shifts.get(name, (0.0, 0.0)))
