"""Pencil signs on a card: screws, ports' arrows, dials, fuses, covers, plugs and lights."""

from functools import lru_cache

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath

from bayboard.model.layout import Point
from bayboard.window.draw.strokes import add_head


@lru_cache(maxsize=64)
def service_sign(kind: str, s: float) -> QPainterPath:
    """Return the sign of a service point round (0, 0), `s` times its plain size.  Shared: never change it."""
    path = QPainterPath()
    _SIGNS[kind](path, s)
    return path


def looking(way: Point, s: float) -> QPainterPath:
    """Return the short arrow beside a service point that faces sideways, pixels from the sign's middle."""
    path = QPainterPath(QPointF(way[0] * 9 * s, way[1] * 9 * s))
    tip = QPointF(way[0] * 15 * s, way[1] * 15 * s)
    path.lineTo(tip)
    add_head(path, tip, way, 4 * s, 4 * s)
    return path


def screw_sign(x: float, y: float, r: float) -> QPainterPath:
    """Return a screw: a ring and a cross that reaches 2 pixels beyond it."""
    path = QPainterPath()
    path.addEllipse(QPointF(x, y), r, r)
    for dx, dy in ((r + 2.0, 0.0), (0.0, r + 2.0)):
        path.moveTo(x - dx, y - dy)
        path.lineTo(x + dx, y + dy)
    return path


def _dial(path: QPainterPath, s: float) -> None:
    path.addEllipse(QPointF(0, 0), 5.5 * s, 5.5 * s)
    path.moveTo(0, 0)
    path.lineTo(3.6 * s, -3.6 * s)


def _fuse(path: QPainterPath, s: float) -> None:
    path.addRoundedRect(QRectF(-8 * s, -5 * s, 16 * s, 10 * s), 3 * s, 3 * s)
    path.moveTo(-3.6 * s, 0)
    path.lineTo(3.6 * s, 0)


def _cover(path: QPainterPath, s: float) -> None:
    path.addRect(QRectF(-7 * s, -7 * s, 14 * s, 14 * s))
    path.moveTo(3 * s, -7 * s)
    path.lineTo(7 * s, -3 * s)


def _plug(path: QPainterPath, s: float) -> None:
    path.addRect(QRectF(-6 * s, -4 * s, 12 * s, 8 * s))
    for x in (-3 * s, 3 * s):
        path.moveTo(x, -4 * s)
        path.lineTo(x, -8 * s)


def _light(path: QPainterPath, s: float) -> None:
    path.addEllipse(QPointF(0, 0), 3 * s, 3 * s)
    for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1), (0.7, 0.7), (-0.7, 0.7), (0.7, -0.7), (-0.7, -0.7)):
        path.moveTo(4.6 * s * dx, 4.6 * s * dy)
        path.lineTo(7.2 * s * dx, 7.2 * s * dy)


_SIGNS = {"dial": _dial, "fuse": _fuse, "cover": _cover, "plug": _plug, "light": _light}
