"""The small picture of a layout, as it stands on job cards: boards black on the primer, stand-ins in buff.

Colours are those of the bench by daylight, for a picture is kept with its revision and shown on white card.
"""

import io
from collections.abc import Iterable

import numpy as np
from PIL import Image, ImageDraw

from bayboard.geometry import outline as outlines
from bayboard.geometry.outline import Points
from bayboard.model.layout import Board, Layout
from bayboard.model.placed import board_of

WIDE, HIGH = 240, 96  # px
FINER = 4  # drawn so many times larger, then made small: smooth edges
MARGIN = 6.0  # px of a picture of the usual height left free all round
NEAREST = 0.5  # px a mm at most: a board of one hand's width does not fill the card
FARTHEST = 30_000.0  # px from the middle beyond which a corner is drawn nearer
ARC = 0.5  # mm; how far a drawn corner may lie from the true one
EDGE = 1.0  # px of a stand-in's cut edge
ROOM, WALL, BOARD = (198, 202, 198), (174, 180, 176), (31, 33, 35)
BUFF, CUT = (211, 188, 144), (156, 131, 90)

Spots = list[tuple[float, float]]


def picture(layout: Layout, wide: int = WIDE, high: int = HIGH) -> bytes:
    """Return the front view as a PNG of `wide` x `high` px, true to scale.

    The boards and all that is on them fill it; with no board the wall does, and with neither it is bare.
    The same layout gives the same bytes.
    """
    pieces = _pieces(layout)
    onto = _Paper(wide, high, pieces or ([np.asarray(layout.bay.wall)] if layout.bay.wall else []))
    if layout.bay.wall:
        onto.fill(layout.bay.wall, WALL)
    for board in layout.boards:
        onto.board(board)
    for ring in pieces[len(layout.boards) :]:
        onto.card(ring)
    return onto.png()


def _pieces(layout: Layout) -> list[Points]:
    """Return the outlines of the boards, then of the stand-ins on them, in bay axes."""
    boards = [outlines.rounded(board.outline, board.corner_radius, ARC) for board in layout.boards]
    hung = [
        outlines.placed(layout.cards[gear.card].outline, gear.at, gear.turn)
        for gear in layout.gear
        if gear.at is not None and board_of(layout, gear.board) is not None
    ]
    return boards + hung


class _Paper:
    """What is drawn on, `FINER` times as large as the picture, and how mm lie on it."""

    def __init__(self, wide: int, high: int, pieces: list[Points]) -> None:
        self.size = (wide, high)
        self.drawn = Image.new("RGB", (wide * FINER, high * FINER), ROOM)
        self._pen = ImageDraw.Draw(self.drawn)
        x0, y0, x1, y1 = outlines.box(np.vstack(pieces)) if pieces else (0.0, 0.0, 1.0, 1.0)
        free = 2 * MARGIN * high / HIGH
        across, up = (wide - free) / max(x1 - x0, 1.0), (high - free) / max(y1 - y0, 1.0)
        self._scale = min(across, up, NEAREST) * FINER
        self._middle = np.array([(x0 + x1) / 2, (y0 + y1) / 2])

    def fill(self, ring: Iterable[tuple[float, float]] | Points, colour: tuple[int, int, int]) -> None:
        """Fill a ring of bay mm."""
        self._pen.polygon(self._spots(ring), fill=colour)

    def board(self, board: Board) -> None:
        """Draw a board; what lies under it shows through its cut-outs."""
        shape = Image.new("1", self.drawn.size)
        pen = ImageDraw.Draw(shape)
        pen.polygon(self._spots(outlines.rounded(board.outline, board.corner_radius, ARC)), fill=1)
        for cut in board.cutouts:
            pen.polygon(self._spots(cut.outline), fill=0)
        self.drawn.paste(BOARD, (0, 0), shape)

    def card(self, ring: Points) -> None:
        """Draw a stand-in with its cut edge."""
        spots = self._spots(ring)
        self._pen.polygon(spots, fill=BUFF)
        self._pen.line([*spots, spots[0], spots[1]], fill=CUT, width=round(EDGE * FINER), joint="curve")

    def png(self) -> bytes:
        """Return the picture made small, without a time or any other word in it."""
        small = self.drawn.resize(self.size, Image.Resampling.LANCZOS)
        out = io.BytesIO()
        small.quantize(64, Image.Quantize.FASTOCTREE, dither=Image.Dither.NONE).save(
            out, "PNG", optimize=True
        )
        return out.getvalue()

    def _spots(self, ring: Iterable[tuple[float, float]] | Points) -> Spots:
        """Return where the corners of a ring lie; y of the picture grows downward."""
        xy = np.asarray(ring if isinstance(ring, np.ndarray) else list(ring), dtype=np.float64)
        out = (xy - self._middle) * (self._scale, -self._scale)
        out = np.clip(out, -FARTHEST, FARTHEST) + np.array(self.drawn.size) / 2
        return [(float(x), float(y)) for x, y in out]
