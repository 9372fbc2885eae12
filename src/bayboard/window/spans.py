"""What is measured between two: two points, edges or stand-ins that are picked, until Escape."""

from collections.abc import Callable, Iterable
from math import hypot

from bayboard.model.layout import Point
from bayboard.rules.scene import Scene
from bayboard.units.length import show_length
from bayboard.window.draw.show import Measure
from bayboard.window.ends import End, line_between, spot_of

STRAIGHT = 0.05  # mm; a measure that leans by less is upright or flat


def words(scene: Scene, a: Point, b: Point) -> str:
    """Return the distance: "4 1/2 in", and what of it goes across and up where it leans."""
    dx, dy = abs(b[0] - a[0]), abs(b[1] - a[1])
    units = scene.layout.units
    far = show_length(hypot(dx, dy), units)
    if min(dx, dy) <= STRAIGHT:
        return far
    return f"{far}: {show_length(dx, units)} across, {show_length(dy, units)} up"


class Spans:
    """What is measured between two on the Wall; `changed` is called when it is another."""

    def __init__(self, changed: Callable[[], None]) -> None:
        self._changed = changed
        self.asking = False  # the next press on the Wall picks an end
        self.first: End | None = None
        self.second: End | None = None
        self.loose: End | None = None  # where the pointer would pick the next end

    def begin(self, chosen: Iterable[str]) -> None:
        """Measure between two chosen stand-ins at once; from one ask for the other end, else for both."""
        ends = [End(None, name) for name in chosen]
        ends = ends if len(ends) <= 2 else []
        self.first, self.second, self.loose = ends[0] if ends else None, None, None
        self.asking = len(ends) < 2
        if len(ends) == 2:
            self.second = ends[1]
        self._changed()

    def pick(self, end: End) -> None:
        """Take an end: the first, or the second; the next after that begins another measure."""
        if self.first is None or self.second is not None:
            self.first, self.second = end, None
        else:
            self.second = end
        self.loose = None
        self._changed()

    def point(self, end: End | None) -> None:
        """Show where the pointer would pick."""
        if end != self.loose:
            self.loose = end
            self._changed()

    def from_end(self) -> End | None:
        """Return the end that the next pick is measured from, None where it begins a measure."""
        return self.first if self.second is None else None

    def put_away(self) -> bool:
        """Take the measure off and ask no more; return whether there was anything."""
        was = self.asking or self.first is not None
        self.asking, self.first, self.second, self.loose = False, None, None, None
        if was:
            self._changed()
        return was

    def shown(self, scene: Scene, chosen: Iterable[str]) -> tuple[tuple[Measure, ...], tuple[Point, ...]]:
        """Return the measure to lay down and the ends to ring; a stand-in walked to by keys is the second."""
        second = self.second or (None if self.first is None else self.loose)
        if second is None and self.asking and self.first is not None:
            others = [End(None, name) for name in chosen if name != self.first.piece]
            second = others[0] if others else None
        dotted = [self.first, second if self.first is not None else self.loose]
        spots = [spot for end in dotted if end is not None and (spot := spot_of(scene, end)) is not None]
        line = None if self.first is None or second is None else line_between(scene, self.first, second)
        if line is None:
            return (), tuple(spots)
        return (Measure(*line, words(scene, *line)),), line

    def sentence(self, scene: Scene) -> str:
        """Return a measure that has both its ends as one says it, "" where there is none."""
        first, second = self.first, self.second
        line = None if first is None or second is None else line_between(scene, first, second)
        if line is None or first is None or second is None:
            return ""
        names = [end.piece if end.piece and end.at is None else "" for end in (first, second)]
        between = f"{names[0]} to {names[1]}: " if all(names) else ""
        return f"{between}{words(scene, *line)}"

    def phrase(self) -> str:
        """Return what the Wall's title line says meanwhile, "" while nothing is asked for."""
        if not self.asking:
            return ""
        start = self.from_end()
        if start is None:
            return "measuring: press a point, an edge or a stand-in; Esc ends"
        origin = start.piece if start.piece and start.at is None else "there"
        return f"measuring from {origin}: press where to; Esc ends"
