"""A lead's jacket: the pattern says the kind, the colour says it again.

Lines are widened to outlines once and kept, then only filled: wide smooth pens are what costs when a board
carries a hundred leads.  All fills are opaque, since a translucent one costs seven times as much.
"""

from collections.abc import Sequence
from functools import lru_cache
from math import atan2, ceil, hypot, pi, tan

import numpy as np
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPainterPathStroker, QPolygonF

from bayboard.geometry.outline import Points
from bayboard.window.theme import Theme, brush, mixed

ROUND_DOTS = 4.5  # px across; smaller dots are drawn square, which looks the same and costs a fifth
Corners = tuple[tuple[float, float], ...]
Layer = tuple[QPainterPath, str]  # an outline to fill, and what of the jacket it is
_ROUND = Qt.PenCapStyle.RoundCap
_FLAT = Qt.PenCapStyle.FlatCap


def paint_jacket(p: QPainter, path: QPainterPath, kind: str | None, wide: float, theme: Theme) -> None:
    """Paint a lead along its centre line, `wide` pixels: shade, then the pattern of its kind.

    Ends that may not be joined (kind None) wear a broken line in must.
    """
    paint_layers(p, layers(path, kind, wide), kind, theme)


def paint_layers(p: QPainter, made: Sequence[Layer], kind: str | None, theme: Theme) -> None:
    """Fill a jacket's layers in a theme's colours."""
    jacket = theme.lead(kind)
    tokens = {
        "shade": mixed(theme.board, "#000000", 0.6),
        "jacket": jacket,
        "shine": mixed(jacket, "#FFE3C4", 0.38),
        "hollow": theme.board,
        "core": "#10202A",
        "sleeve": "#14140F",
        "far": mixed(jacket, "#000000", 0.38),
    }
    for outline, what in made:
        p.fillPath(outline, brush(tokens[what]))


@lru_cache(maxsize=2048)
def kept_layers(
    corners: Corners, radius: float, px_per_mm: float, kind: str | None, wide: float
) -> tuple[Layer, ...]:
    """Return the layers of a lead through corners in mm, in pixels from bay (0, 0)."""
    return layers(bent(corners, radius, px_per_mm), kind, wide)


def layers(path: QPainterPath, kind: str | None, wide: float) -> tuple[Layer, ...]:
    """Return a jacket's outlines from the lowest up."""
    shade = (_widened(path.translated(0.6, 1.4), wide + 2.4), "shade")
    whole = _widened(path, wide)
    if kind == "power":
        shine = path.translated(-0.17 * wide, -0.17 * wide)
        return shade, (whole, "jacket"), (_widened(shine, max(1.0, 0.14 * wide), _FLAT), "shine")
    if kind == "ground":
        return shade, (whole, "jacket"), (_widened(path, wide - max(2.6, 0.3 * wide)), "hollow")
    if kind == "signal":
        return shade, (whole, "jacket"), (_widened(path, max(1.4, 0.30 * wide)), "core")
    if kind == "speaker":
        far, near = _strands(path, wide)
        return shade, (far, "far"), (near, "jacket")
    if kind == "remote":
        return shade, (whole, "sleeve"), (_dots(path, 0.62 * wide), "jacket")
    return shade, (whole, "sleeve"), (_widened(path, 0.7 * wide, _FLAT, (2.4, 1.5)), "jacket")


def _dots(path: QPainterPath, across: float) -> QPainterPath:
    if across < ROUND_DOTS:
        return _widened(path, 0.92 * across, _FLAT, (1.0, 1.25))
    return _widened(path, across, _ROUND, (0.01, 2.1))


def _widened(
    path: QPainterPath,
    wide: float,
    cap: Qt.PenCapStyle = _ROUND,
    dash: tuple[float, ...] = (),
    join: Qt.PenJoinStyle = Qt.PenJoinStyle.RoundJoin,
) -> QPainterPath:
    """Return the outline of a line drawn `wide`; dashes in widths."""
    stroker = QPainterPathStroker()
    stroker.setWidth(wide)
    stroker.setCapStyle(cap)
    stroker.setJoinStyle(join)
    if dash:
        stroker.setDashPattern(list(dash))
    outline = stroker.createStroke(path)
    outline.setFillRule(Qt.FillRule.WindingFill)
    return outline


def _strands(path: QPainterPath, wide: float) -> tuple[QPainterPath, QPainterPath]:
    """Return the two strands of a twisted pair, each swinging a third of the width to either side."""
    swing = 2.0 * wide  # px between a strand's two extremes, along the lead
    line = _evenly(path, swing / 3)
    if len(line) < 2:
        return QPainterPath(), QPainterPath()
    along = np.vstack((line[1:] - line[:-1], line[-1:] - line[-2:-1]))
    along /= np.maximum(np.hypot(along[:, 0], along[:, 1]), 1e-9)[:, None]
    aside = np.column_stack((-along[:, 1], along[:, 0]))
    aside *= (0.33 * wide * np.sin(np.arange(len(line)) * np.pi / 3))[:, None]
    return _strand(line - aside, 0.42 * wide), _strand(line + aside, 0.42 * wide)


def _strand(points: Points, wide: float) -> QPainterPath:
    path = QPainterPath()
    path.addPolygon(QPolygonF([QPointF(x, y) for x, y in points.tolist()]))
    return _widened(path, wide, _FLAT, join=Qt.PenJoinStyle.BevelJoin)


def _evenly(path: QPainterPath, step: float) -> Points:
    """Return points along a line about `step` pixels apart, shape (n, 2); none along a point."""
    corners = [(at.x(), at.y()) for run in path.toSubpathPolygons() for at in run]
    line = np.asarray(corners, dtype=np.float64).reshape(-1, 2)
    run = np.concatenate(([0.0], np.cumsum(np.hypot(*np.diff(line, axis=0).T))))
    if run[-1] < step:
        return np.empty((0, 2))
    even = np.linspace(0.0, run[-1], max(2, ceil(run[-1] / step)))
    return np.column_stack([np.interp(even, run, line[:, axis]) for axis in (0, 1)])


@lru_cache(maxsize=1024)
def bent(corners: Corners, radius: float, px_per_mm: float) -> QPainterPath:
    """Return a line through corners in mm with bends of `radius` mm, in pixels from bay (0, 0).

    Where half a stretch gives no room for the radius, the bend is as wide as it can be.
    """
    px = [QPointF(x * px_per_mm, -y * px_per_mm) for x, y in corners]
    if not px:
        return QPainterPath()
    path = QPainterPath(px[0])
    for before, here, after in zip(px, px[1:], px[2:], strict=False):
        _bend(path, before, here, after, radius * px_per_mm)
    if len(px) > 1:
        path.lineTo(px[-1])
    return path


def _bend(path: QPainterPath, before: QPointF, here: QPointF, after: QPointF, radius: float) -> None:
    """Add a circular bend, drawn as one cubic curve."""
    ax, ay, bx, by = here.x() - before.x(), here.y() - before.y(), after.x() - here.x(), after.y() - here.y()
    la, lb = hypot(ax, ay), hypot(bx, by)
    turn = abs(atan2(ax * by - ay * bx, ax * bx + ay * by)) if la and lb else 0.0
    if turn < 0.02 or turn > pi - 0.02:
        path.lineTo(here)
        return
    reach = min(radius * tan(turn / 2), la / 2, lb / 2)
    start = QPointF(here.x() - ax / la * reach, here.y() - ay / la * reach)
    end = QPointF(here.x() + bx / lb * reach, here.y() + by / lb * reach)
    # length of the handles of a cubic that follows a circular arc of this turn
    handle = 4.0 / 3.0 * tan(turn / 4) * reach / tan(turn / 2)
    path.lineTo(start)
    path.cubicTo(
        QPointF(start.x() + ax / la * handle, start.y() + ay / la * handle),
        QPointF(end.x() - bx / lb * handle, end.y() - by / lb * handle),
        end,
    )
