"""What drill day remembers beside the layout: which slots are half made, what was pressed, what was checked.

It lies in the job file as plain JSON; a file from elsewhere may hold anything there, and what is not of this
form is left out.
"""

from dataclasses import dataclass, field, replace
from math import isfinite
from typing import Any

from bayboard.model.layout import Point

NAME = "drill_day"  # of its place in the job file
MOST = 5000  # presses remembered
FARTHEST = 100_000.0  # mm; no layout reaches farther
Press = tuple[str, int]  # a hole, and which of its parts


@dataclass(frozen=True, slots=True)
class Notes:
    """`halves`: where the first of a slot's two holes went, bay axes; `pressed`: what was made, in order.

    `checked`: the boards whose datum holes were measured.
    """

    halves: dict[str, Point] = field(default_factory=dict)
    pressed: tuple[Press, ...] = ()
    checked: frozenset[str] = frozenset()

    def halved(self, hole: str, at: Point) -> "Notes":
        """Return the notes with the first hole of a slot made."""
        return replace(self, halves=self.halves | {hole: at})

    def whole(self, hole: str) -> "Notes":
        """Return the notes with nothing of a slot made."""
        return replace(self, halves={name: at for name, at in self.halves.items() if name != hole})

    def after(self, press: Press) -> "Notes":
        """Return the notes with one press more."""
        rest = tuple(one for one in self.pressed if one != press)
        return replace(self, pressed=(*rest, press)[-MOST:])

    def without(self, press: Press) -> "Notes":
        """Return the notes with a press taken back."""
        return replace(self, pressed=tuple(one for one in self.pressed if one != press))

    def check(self, board: str) -> "Notes":
        """Return the notes with a board's datum holes measured."""
        return replace(self, checked=self.checked | {board})

    def uncheck(self, board: str) -> "Notes":
        """Return the notes with a board's datum holes still to be measured."""
        return replace(self, checked=self.checked - {board})

    def to_json(self) -> dict[str, Any]:
        """Return what is written to the job file."""
        return {
            "halves": {name: list(at) for name, at in sorted(self.halves.items())},
            "pressed": [list(press) for press in self.pressed],
            "checked": sorted(self.checked),
        }


def read_notes(value: object) -> Notes:
    """Return the notes that lie in a job file; whatever has another form counts as not there."""
    if not isinstance(value, dict):
        return Notes()
    halves, pressed, checked = (value.get(name) for name in ("halves", "pressed", "checked"))
    return Notes(
        {n: (float(at[0]), float(at[1])) for n, at in halves.items() if _is_point(at)}
        if isinstance(halves, dict)
        else {},
        tuple((p[0], p[1]) for p in pressed if _is_press(p))[-MOST:] if isinstance(pressed, list) else (),
        frozenset(n for n in checked if isinstance(n, str)) if isinstance(checked, list) else frozenset(),
    )


def _is_point(at: object) -> bool:
    return isinstance(at, list) and len(at) == 2 and all(_is_length(figure) for figure in at)


def _is_length(figure: object) -> bool:
    if isinstance(figure, bool) or not isinstance(figure, int | float):
        return False
    return abs(figure) <= FARTHEST and isfinite(figure)


def _is_press(press: object) -> bool:
    if not isinstance(press, list) or len(press) != 2:
        return False
    return isinstance(press[0], str) and isinstance(press[1], int) and not isinstance(press[1], bool)
