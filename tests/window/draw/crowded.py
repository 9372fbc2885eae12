"""Crowded Walls for tests and long runs: many stand-ins, the stage's findings, what no tag may cover."""

from dataclasses import replace
from itertools import combinations, product

from PySide6.QtCore import QRectF, QSize
from shapely import LineString, Point, box
from tests.bays import bay

from bayboard.edits.move_gear import MoveGear
from bayboard.model.read import from_document
from bayboard.rules.check import Checker
from bayboard.window.draw.chalk import FLAG
from bayboard.window.draw.docking import APART, TAGGED, docked
from bayboard.window.draw.mark_spots import mark_rect
from bayboard.window.draw.scale import fitting
from bayboard.window.draw.show import WallShow
from bayboard.window.draw.uncovered import entry_rects, number_rects, port_rects
from bayboard.window.enlarged import MARGIN, TITLE
from bayboard.window.floor_plan import floor_plan
from bayboard.window.marking import marks
from bayboard.window.theme import LIGHT

SIZES = ((1600, 1000), (1280, 800))
SCALES = (1.0, 1.5)
ROOMS = ("measure", "arrange", "keep")


class Crowded:
    """A bay of `pieces` stand-ins as it is drawn whole in a window of a size at a Scale setting."""

    def __init__(self, pieces, seed):
        document = bay(pieces, seed=seed, jitter=12 + seed % 5)
        document["units"] = ("mm", "in")[seed % 2]
        self.layout = from_document(document)
        checker = Checker(self.layout)
        self.verdict, self.scene = checker.now, checker.scene
        rows = -(-pieces // 8)
        self.box = (-200, -200, 8 * 160 + 200, rows * 120 + 200)

    def drawn(self, size, scaled):
        """Return how the Wall is drawn: scale, theme, show, rectangle."""
        theme, plan = LIGHT.sized(scaled), floor_plan(QSize(*size), scaled)
        rect = QRectF(0, 0, plan.wall.width(), plan.wall.height())
        inner = rect.adjusted(0, TITLE * scaled / 2, 0, 0)
        show = WallShow(marks=marks(self.verdict, self.layout, ROOMS), chalk_x=640.0)
        return fitting(self.box, inner, MARGIN * scaled), theme, show, rect

    def docked(self, size, scaled):
        scale, theme, show, rect = self.drawn(size, scaled)
        return docked(scale, self.scene, theme, show, rect)

    def dragged(self, size, scaled, steps, piece=None, by=(2.0, 0.5)):
        """Yield scene and show of each step of a drag: mm each, there and back again."""
        show = self.drawn(size, scaled)[2]
        piece = piece or list(self.scene.placed)[len(self.scene.placed) // 2]
        checker = Checker(self.layout)
        for n in range(steps):
            way = 1 if n < steps / 2 else -1
            layout = MoveGear((piece,), way * by[0], by[1]).apply(checker.scene.layout)
            shown = marks(checker.move(layout), layout, ROOMS)
            yield checker.scene, replace(show, marks=shown, in_hand=frozenset((piece,)))


def wanted(found):
    """Return how many tags were wanted."""
    return min(len(found), TAGGED)


def faults(found, scale, scene, theme, show, rect):
    """Return what is wrong with tags and leaders, by shapely: a sentence each."""
    tags = {one.mark.number: _box(one.tag) for one in found if one.tag is not None}
    lines = {one.mark.number: LineString(one.leader) for one in found if one.leader}
    flag = QRectF(scale.px(show.chalk_x, 0).x() - FLAG[0], rect.top(), 2 * FLAG[0], FLAG[1] * theme.size)
    held = {"a number": number_rects(scale, scene, theme), "a port": port_rects(scale, scene, theme)}
    held |= {"an entry": entry_rects(scale, scene)}
    held |= {"a mark": [mark_rect(one.at, theme) for one in found], "the flag": [flag]}
    for n, tag in tags.items():
        yield from (
            f"tag {n} hides {what}" for what, rects in held.items() for r in rects if _meet(tag, _box(r))
        )
        if not _box(rect).covers(tag):
            yield f"tag {n} is not seen"
    yield from (f"tags {a} and {b} meet" for a, b in combinations(tags, 2) if _meet(tags[a], tags[b]))
    yield from (f"leaders {a} and {b} cross" for a, b in combinations(lines, 2) if lines[a].crosses(lines[b]))
    numbers = [_box(r) for r in held["a number"]]
    for (n, line), number in product(lines.items(), numbers):
        if line.intersects(number) and not number.covers(_end(line)):
            yield f"leader {n} crosses a number"


def place_is_free(tag, scale, scene, theme, found, others):
    """Return whether nothing that must be seen lies under a tag's place, and no other tag or leader near."""
    held = [*number_rects(scale, scene, theme), *port_rects(scale, scene, theme), *entry_rects(scale, scene)]
    held += [mark_rect(one.at, theme) for one in found]
    air = tag.adjusted(-APART, -APART, APART, APART)
    lines = [LineString(one.leader) for one in found if one.leader and one.tag in others]
    return not (
        any(tag.intersects(rect) for rect in held)
        or any(air.intersects(rect) for rect in others)
        or any(line.intersects(_box(tag)) for line in lines)
    )


def _box(rect):
    return box(rect.left(), rect.top(), rect.right(), rect.bottom())


def _meet(a, b):
    return a.intersection(b).area > 0


def _end(line):
    return Point(line.coords[-1])
