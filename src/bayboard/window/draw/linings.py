"""What lies on the metal in the cut: linings, and the felt behind a board."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QPainterPath

from bayboard.rules.scene import Scene
from bayboard.window.draw.cuts import Span, ring_spans, spans, without
from bayboard.window.draw.profile import block
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.strokes import hatched
from bayboard.window.theme import Theme, brush, mixed, pen

UNKNOWN = 7.0  # mm; how thick a lining is drawn that nobody measured, open in front


def paint_linings(p: QPainter, scale: Scale, scene: Scene, theme: Theme, x: float) -> None:
    """Paint the linings that the cut runs through, cut away where a board or a piece stands in them."""
    bay = scene.layout.bay
    for lining in bay.linings:
        for whole in ring_spans(lining.outline, x):
            deep = UNKNOWN if lining.thickness is None else lining.thickness
            open_ = lining.thickness is None
            for low, high in without(whole, _sunk(scene, deep, x)):
                _paint_felt(p, block(scale, 0.0, deep, low, high), theme, open_)
    if bay.lined > 0.0:
        for shape in scene.boards.values():
            back = shape.board.standoff
            for low, high in spans(shape.polygon, x):
                _paint_felt(p, block(scale, back - bay.lined, back, low, high), theme)


def _sunk(scene: Scene, deep: float, x: float) -> list[Span]:
    """Return the stretches of the cut where boards and pieces stand in a lining `deep` mm thick."""
    boards = [s.polygon for s in scene.boards.values() if s.board.standoff < deep]
    found = [span for polygon in boards for span in spans(polygon, x)]
    pieces = [placed.ring for placed in scene.placed.values() if placed.under < deep]
    return found + [span for ring in pieces for span in ring_spans(ring, x)]


def _paint_felt(p: QPainter, body: QRectF, theme: Theme, open_: bool = False) -> None:
    if body.width() < 1.0:
        body.setLeft(body.right() - 1.0)
    path = QPainterPath()
    path.addRect(body)
    p.fillPath(path, brush(mixed(theme.room, theme.ink, 0.22)))
    if body.width() > 4.0:
        hatched(p, path, 5, theme.ink, 0.25, both=True)
    p.strokePath(path, pen(theme.ink2, 0.9, 0.8, dash=(2.0, 2.0) if open_ else ()))
