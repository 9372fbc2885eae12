"""What all sheets of one board have in common: its face, their plan, stations, and the words of the set."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from bayboard.model.layout import Layout, Point
from bayboard.paper.clearances import Clearances, clearances
from bayboard.paper.curves import Box
from bayboard.paper.diagonals import Crosses, corner_crosses
from bayboard.paper.face import Face, face
from bayboard.paper.form import forms
from bayboard.paper.ground import sampled
from bayboard.paper.options import Options
from bayboard.paper.set_words import set_words
from bayboard.paper.stations import Station, stations
from bayboard.paper.tiles import Plan, plan


@dataclass(frozen=True, slots=True)
class SetWords:
    """What every sheet says of the set it belongs to."""

    vehicle: str
    code: str
    options: Options
    several: bool  # more than one board: the sheets name theirs


@dataclass(frozen=True)
class Section:
    """All sheets of one board."""

    words: SetWords
    face: Face
    plan: Plan
    stations: tuple[Station, ...]
    clearances: Clearances

    @cached_property
    def crosses(self) -> Crosses | None:
        """Return the corner crosses."""
        return corner_crosses(self.face)

    @cached_property
    def sawn_points(self) -> NDArray[np.float64]:
        """Return points along the outline and the cut-outs, in the face's mm."""
        return np.vstack([sampled(t) for t in (self.face.outline, *(t for _, t in self.face.cutouts))])

    @cached_property
    def dashed_points(self) -> dict[str, NDArray[np.float64]]:
        """Return points along the outline of each stand-in by its id, in the face's mm."""
        return {s.id: sampled(s.trace) for s in self.face.stand_ins}

    @cached_property
    def strays(self) -> tuple[str, ...]:
        """Return the ids of holes that no sheet shows: they lie off the board."""
        windows = [t.window for t in self.plan.tiles]
        return tuple(h.id for h in self.face.holes if not any(_in(h.at, w) for w in windows))


def _like(options: Options, board: str) -> Face | None:
    """Return the board as it was when the set was printed whose seams are kept."""
    like = options.like
    was = next((b for b in like.boards if b.id == board), None) if like else None
    return None if like is None or was is None else face(like, was, options.face == "back")


def _in(at: Point, box: Box) -> bool:
    return box[0] <= at[0] <= box[2] and box[1] <= at[1] <= box[3]


def sections(layout: Layout, options: Options) -> Iterator[Section]:
    """Return a section for each board; sheets and stations are numbered through."""
    code = set_words(layout, options)
    words = SetWords(layout.vehicle.name, code, options, len(layout.boards) > 1)
    made = forms(options.paper, options.margin)
    sheet, station = 1, 1
    for board in layout.boards:
        seen = face(layout, board, options.face == "back")
        planned = plan(seen, made, sheet, _like(options, board.id))
        marked = stations(seen, planned.seams, station)
        yield Section(words, seen, planned, marked, clearances(seen, planned))
        sheet, station = sheet + len(planned.tiles), station + len(marked)
