"""Tags on 50 crowded Walls of 20 to 40 stand-ins, at two sizes and two Scale settings.

Checked by shapely: no two tags meet, none hides a number, a port, a mark or the chalk line's flag, no leader
crosses a number or another.  Of the tags that are wanted at most a tenth may fall back to their number.
The time to place them is told against painting the marks and tags alone.
"""

import os
from dataclasses import replace

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import figures
from PySide6.QtGui import QImage, QPainter
from tests.window.draw.crowded import SCALES, SIZES, Crowded, faults, wanted

from bayboard.window.app import application
from bayboard.window.draw.docking import docked, paint_docked

FIGURES = ("tags folded on crowded Walls", "placing tags")
ROOMS = (
    "window/draw/docking.py",
    "window/draw/free_room.py",
    "window/draw/leaders.py",
    "window/draw/tags.py",
    "window/draw/face.py",
    "window/short.py",
)
BAYS, GOAL, PLACE_GOAL = 50, 0.1, 8.0


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
    size, scaled = SIZES[0], 1.0
    found, theme = bay.docked(size, scaled), bay.drawn(size, scaled)[1]
    sheet = QImage(1200, 620, QImage.Format.Format_ARGB32_Premultiplied)

    def paint() -> None:
        """Paint marks, leaders and tags alone."""
        painter = QPainter(sheet)
        paint_docked(painter, found, theme)
        painter.end()

    scale, theme, show, rect = bay.drawn(size, scaled)

    def place() -> None:
        """Place marks and tags; a show of its own each time, for what was placed last is remembered."""
        docked(scale, bay.scene, theme, replace(show), rect)

    measured = figures.paired(place, paint, pairs=41)
    figures.keep(
        FIGURES[1],
        ROOMS,
        baseline="painting the same marks, leaders and tags",
        goal=PLACE_GOAL,
        seed=BAYS,
        **measured,
    )


if __name__ == "__main__":
    main()
