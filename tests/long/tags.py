"""Tags on 50 crowded Walls of 20 to 40 stand-ins, at two sizes and two Scale settings.

Checked by shapely: no two tags meet, none hides a number, a port, a mark or the chalk line's flag, no leader
crosses a number or another.  Of the tags that are wanted at most a tenth may fall back to their number.
The time to place them in each step of a drag is told against painting the marks and tags alone.
"""

import os
import statistics
import time

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import figures
from PySide6.QtGui import QImage, QPainter
from tests.window.draw.crowded import SCALES, SIZES, Crowded, faults, wanted

from bayboard.window.app import application
from bayboard.window.draw.docking import docked, paint_docked

FIGURES = ("tags folded on crowded Walls", "placing tags")
ROOMS = (
    "window/draw/docking.py",
    "window/draw/mark_spots.py",
    "window/draw/uncovered.py",
    "window/draw/free_room.py",
    "window/draw/leaders.py",
    "window/draw/tags.py",
    "window/draw/face.py",
    "window/short.py",
)
BAYS, GOAL, PLACE_GOAL, STEPS = 50, 0.1, 2.0, 60


def main() -> None:
    """Count what is folded or wrong on all Walls, time the most crowded one, and keep both figures."""
    app = application()
    bays = [Crowded(20 + seed * 2 % 21, seed) for seed in range(1, BAYS + 1)]
    asked, folded, short, wrong = 0, {}, 0, []
    for bay in bays:
        for size in SIZES:
            for scaled in SCALES:
                found = bay.docked(size, scaled)
                scale, theme, show, rect = bay.drawn(size, scaled)
                wrong += faults(found, scale, bay.scene, theme, show, rect)
                worn = [one for one in found if one.tag is not None]
                asked += wanted(found)
                short += sum(one.words != one.mark.short for one in worn)
                key = f"{size[0]} at {scaled}"
                folded[key] = folded.get(key, 0) + wanted(found) - len(worn)
    assert not wrong, wrong[:5]
    figures.keep(
        FIGURES[0],
        ROOMS,
        baseline="tags wanted: the five worst of each Wall",
        goal=GOAL,
        value=round(sum(folded.values()) / asked, 4),
        spread=[0, max(folded.values())],
        count=asked,
        seed=f"1 to {BAYS}",
        folded=folded,
        fewer_words=short,
        hidden_or_meeting=len(wrong),
    )
    _time(bays[-1])
    del app


def _time(bay: Crowded) -> None:
    """Time each step of a drag against painting what was placed, and see how many tags moved or folded."""
    size, scaled = SIZES[0], 1.0
    scale, theme, _, rect = bay.drawn(size, scaled)
    sheet = QImage(1200, 620, QImage.Format.Format_ARGB32_Premultiplied)
    frames = list(bay.dragged(size, scaled, STEPS))
    ratios, painting, folded, moved, before = [], [], 0, 0, {}
    for scene, show in frames:
        start = time.perf_counter()
        found = docked(scale, scene, theme, show, rect)
        placed = time.perf_counter()
        painter = QPainter(sheet)
        paint_docked(painter, found, theme)
        painter.end()
        painting.append(time.perf_counter() - placed)
        ratios.append((placed - start) / painting[-1])
        tags = {one.mark.of: one.tag.topLeft() for one in found if one.tag is not None}
        folded += wanted(found) - len(tags)
        moved += sum((tags[of] - before[of]).manhattanLength() > 4.0 for of in tags.keys() & before.keys())
        before = tags
    figures.keep(
        FIGURES[1],
        ROOMS,
        baseline="painting the same marks, leaders and tags, each step of a drag",
        goal=PLACE_GOAL,
        value=round(statistics.median(ratios), 3),
        spread=[round(min(ratios), 3), round(max(ratios), 3)],
        count=STEPS,
        baseline_spread=round(max(painting) / min(painting), 2),
        seed=BAYS,
        marks=len(found),
        folded=folded,
        moved=moved,
    )


if __name__ == "__main__":
    main()
