"""Holes that are made: filled chalk discs where they really are, however the plan has moved since."""

from math import hypot

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.model.drilled import drilled_screws
from bayboard.model.layout import Layout, Point
from bayboard.model.placed import Placed
from bayboard.tables.reference import thread
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.strokes import segment
from bayboard.window.theme import Theme, brush, pen

LEAST = 4.0  # px; a made hole is drawn no smaller
OFF = 0.1  # mm from its plan at which a made hole shows where it was planned: the rule's own figure
UNKNOWN = 4.0  # mm; drawn for a thread that is not in the tables


def paint_made_screws(p: QPainter, scale: Scale, layout: Layout, piece: Placed, theme: Theme) -> None:
    """Paint the drilled screws of a stand-in over its card."""
    for number, at in drilled_screws(layout, piece.gear).items():
        screw = piece.card.screws[number - 1]
        known = thread(screw.thread)
        across = UNKNOWN if known is None else known.tap_drill
        paint_made(p, scale, at, scale.length(across) / 2, theme, piece.point(screw.at))


def paint_made(
    p: QPainter, scale: Scale, at: Point, radius: float, theme: Theme, planned: Point | None = None
) -> None:
    """Paint a made hole as a disc of `radius` pixels, joined to its plan where that lies elsewhere."""
    spot, r = scale.px(*at), max(radius, LEAST)
    if planned is not None and hypot(planned[0] - at[0], planned[1] - at[1]) > OFF:
        _paint_astray(p, spot, scale.px(*planned), theme)
    disc = QPainterPath()
    disc.addEllipse(spot, r, r)
    p.fillPath(disc, brush(theme.chalk))
    p.strokePath(disc, pen(theme.pencil, 1.2))


def _paint_astray(p: QPainter, made: QPointF, planned: QPointF, theme: Theme) -> None:
    """Dash the way from where a hole is to where it was planned."""
    way = segment(made, planned)
    p.strokePath(way, pen("#000000", 3.0, 0.5))
    p.strokePath(way, pen(theme.chalk, 1.4, dash=(4.0, 3.0)))
