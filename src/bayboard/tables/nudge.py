"""The grid of places on which a cure by a move is looked for.

Source: the project's own contract: 0.5 mm, where inches are shown 1/64 in, up to 80 mm.
"""

from typing import Literal

STEP: dict[Literal["mm", "in"], float] = {"mm": 0.5, "in": 25.4 / 64}  # mm
MOST = 80.0  # mm; the longest move that is looked at
FIRST_BLOCK, GROWTH = 64, 4  # places looked at together, the nearest first, and how the blocks grow
TAPE_STEP: dict[Literal["mm", "in"], float] = {"mm": 1.0, "in": 25.4 / 16}  # mm; of standoffs and lifts
LIFT_MOST = 40.0  # mm; the highest lift offered, our own choice: spacers under feet get no longer
QUARTER = 90.0  # degrees; the turn that is offered
WAYS_KEPT = 20_000  # ways of leads kept while cures are looked for: some 20 MB
WINDOW_LOOKS = 600  # places of a stand-in looked at one by one while a person waits: a few seconds at most
TOGETHER = 128  # moves looked at together: fewer pay more calls, more pay for moves that nobody needs
