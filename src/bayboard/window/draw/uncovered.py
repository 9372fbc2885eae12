"""What no tag may cover: the numbers and ports of the stand-ins, entries; and the names it should spare."""

from dataclasses import dataclass
from typing import ClassVar

import numpy as np
from PySide6.QtCore import QRectF

from bayboard.model.placed import Placed
from bayboard.rules.scene import Scene
from bayboard.window.draw.free_room import Boxes
from bayboard.window.draw.gear import face_of
from bayboard.window.draw.ground import grommet_radius
from bayboard.window.draw.scale import Scale
from bayboard.window.theme import Theme

NOTHING: Boxes = np.empty((0, 4))


@dataclass(frozen=True, slots=True)
class OnCards:
    """Where the stand-ins' numbers, their ports and the ports' names are drawn, in pixels."""

    numbers: Boxes
    ports: Boxes
    names: Boxes


class _Drawn:
    """What was found last at one zoom: a stand-in that did not move since is not worked out again."""

    scale: ClassVar[Scale | None] = None
    size: ClassVar[float] = 0.0
    pieces: ClassVar[dict[str, tuple[Placed, Boxes, Boxes]]] = {}
    scene: ClassVar[Scene | None] = None
    found: ClassVar[OnCards | None] = None


def on_cards(scale: Scale, scene: Scene, theme: Theme) -> OnCards:
    """Return where the stand-ins of a scene wear their numbers, ports and ports' names."""
    if (_Drawn.scale, _Drawn.size) != (scale, theme.size):
        _Drawn.scale, _Drawn.size, _Drawn.scene, _Drawn.pieces = scale, theme.size, None, {}
    if _Drawn.found is None or _Drawn.scene is not scene:
        made = [_on_card(scale, piece, theme) for piece in scene.placed.values()]
        kept = [NOTHING, *(kept for _, kept, _ in made)]
        _Drawn.scene = scene
        _Drawn.found = OnCards(
            np.concatenate([one[:1] for one in kept]),
            np.concatenate([one[1:] for one in kept]),
            np.concatenate([NOTHING, *(names for _, _, names in made)]),
        )
        _Drawn.pieces = {piece.id: (piece, kept, names) for piece, kept, names in made}
    return _Drawn.found


def _on_card(scale: Scale, piece: Placed, theme: Theme) -> tuple[Placed, Boxes, Boxes]:
    known = _Drawn.pieces.get(piece.id)
    if known is not None and known[0] is piece:
        return known
    made, at = face_of(scale, piece, theme), scale.px(*piece.at)
    off = (at.x(), at.y(), at.x(), at.y())
    return piece, made.kept + off, made.names + off


def number_rects(scale: Scale, scene: Scene, theme: Theme) -> list[QRectF]:
    """Return where the numbers of the stand-ins are lettered, in pixels."""
    return _rects(on_cards(scale, scene, theme).numbers)


def port_rects(scale: Scale, scene: Scene, theme: Theme) -> list[QRectF]:
    """Return where the ports are drawn, in pixels."""
    return _rects(on_cards(scale, scene, theme).ports)


def _rects(boxes: Boxes) -> list[QRectF]:
    return [QRectF(x0, y0, x1 - x0, y1 - y0) for x0, y0, x1, y1 in boxes.tolist()]


def entry_rects(scale: Scale, scene: Scene) -> list[QRectF]:
    """Return where leads come in through the wall, in pixels."""
    r = grommet_radius(scale)
    spots = (scale.px(*entry.at) for entry in scene.layout.bay.entries)
    return [QRectF(at.x() - r, at.y() - r, 2 * r, 2 * r) for at in spots]
