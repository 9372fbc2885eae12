"""The grid of places on which a cure by a move is looked for.

Source: the project's own contract: 0.5 mm, where inches are shown 1/64 in, up to 80 mm.
"""

from typing import Literal

STEP: dict[Literal["mm", "in"], float] = {"mm": 0.5, "in": 25.4 / 64}  # mm
MOST = 80.0  # mm; the longest move that is looked at
FIRST_BLOCK, GROWTH = 64, 4  # places looked at together, the nearest first, and how the blocks grow
