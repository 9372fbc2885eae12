"""The information strip: which sheet this is, of what, how to prove its scale, where it lies."""

from collections.abc import Sequence
from dataclasses import dataclass

from bayboard.paper.curves import Box, Carry, line, rectangle
from bayboard.paper.form import Form
from bayboard.paper.lettering import fitted, width
from bayboard.paper.marks import CUT, DRILLED, MEASURED, Clipped, Fill, Letters, Mark, Stroke, Trace, pt

PROVE = "Print at 100 %, then lay a steel rule on both bars."
LEAST = pt(6.0)
_NUMBER = pt(32.0)
_TITLE, _SMALL, _CODE = pt(10.0), pt(6.5), pt(8.0)
_GAP = 3.0  # mm
RULE = 10.3  # mm over the foot
_BASELINES = (6.9, 3.8, 0.8)  # mm over the strip's foot
_SILHOUETTE = (32.0, 9.0)  # mm; the most it may take


@dataclass(frozen=True, slots=True)
class Silhouette:
    """The thing in small: its rings, its box, and the part that is on this sheet."""

    rings: tuple[Trace, ...]
    box: Box
    here: Box


@dataclass(frozen=True, slots=True)
class Strip:
    """What a strip says."""

    number: int
    title: Sequence[str]  # joined by dots
    sentence: str
    code: str  # "set walnut harbour", "card K7PD"
    remark: str
    silhouette: Silhouette | None = None


def strip(form: Form, says: Strip) -> tuple[Mark, ...]:
    """Return the marks of a strip at its place on the page."""
    w, h = form.size
    m = form.margin
    if form.strip == "below":
        length, carry = w - 2 * m, Carry.to((m, m))
    else:
        length, carry = h - 2 * m, Carry.to((w - m, m), 90.0)
    return tuple(carried(mark, carry) for mark in _marks(length, says))


def carried(mark: Mark, carry: Carry) -> Mark:
    """Return a mark carried by quarter turns, without mirroring."""
    match mark:
        case Stroke():
            return Stroke(tuple(carry.trace(t) for t in mark.traces), mark.width, mark.dash, mark.white)
        case Fill():
            return Fill(tuple(carry.trace(t) for t in mark.traces), mark.white)
        case Letters():
            turn = (mark.turn + carry.turn) % 360.0
            return Letters(mark.text, carry.point(mark.at), mark.size, mark.face, turn, mark.anchor)
        case Clipped():
            inner = tuple(m for n in mark.marks if not isinstance(m := carried(n, carry), Letters))
            return Clipped(carry.trace(mark.region), inner)


def _marks(length: float, says: Strip) -> list[Mark]:
    """Return the strip lying at the origin."""
    made: list[Mark] = [Stroke((line((0.0, RULE), (length, RULE)),), CUT)]
    number = str(says.number)
    made.append(Letters(number, (0.0, 0.9), _NUMBER, "bold"))
    left, right = width(number, "bold", _NUMBER) + _GAP, length
    if says.silhouette is not None:
        drawn, wide = _silhouette(length, says.silhouette)
        made += drawn
        right = length - wide - _GAP
    room = right - left
    made.append(_title(left, room, says))
    sentence, size = fitted(says.sentence, "text", _SMALL, room, LEAST)
    made.append(Letters(sentence, (left, _BASELINES[1]), size))
    made += _last_line(left, room, says)
    return made


def _title(left: float, room: float, says: Strip) -> Letters:
    """Return the title; where it is too long its first part, the name, is cut and nothing else."""
    name, *rest = says.title
    tail = "".join(f" · {part}" for part in rest)
    whole, size = fitted(name + tail, "bold", _TITLE, room, LEAST)
    if whole != name + tail:
        short, size = fitted(name, "bold", LEAST, room - width(tail, "bold", LEAST), LEAST)
        whole = short + tail
    return Letters(whole, (left, _BASELINES[0]), size, "bold")


def _last_line(left: float, room: float, says: Strip) -> list[Letters]:
    code, size = fitted(says.code, "bold", _CODE, room, LEAST)
    past = width(code, "bold", size) + _GAP
    made = [Letters(code, (left, _BASELINES[2]), size, "bold")]
    if says.remark:
        remark, small = fitted(says.remark, "text", _SMALL, room - past, LEAST)
        made.append(Letters(remark, (left + past, _BASELINES[2]), small))
    return made


def _silhouette(length: float, shape: Silhouette) -> tuple[list[Mark], float]:
    """Return the silhouette at the strip's right end, and its width."""
    x0, y0, x1, y1 = shape.box
    scale = min(_SILHOUETTE[0] / (x1 - x0), _SILHOUETTE[1] / (y1 - y0))
    wide, high = (x1 - x0) * scale, (y1 - y0) * scale
    carry = Carry(scale, 0.0, 0.0, scale, length - wide - x0 * scale, (RULE - high) / 2 - y0 * scale)
    rings = tuple(carry.trace(t) for t in shape.rings)
    here = Fill((rectangle(carry.box(shape.here)),))
    return [Clipped(rings[0], (here,)), Stroke(rings, MEASURED if len(rings) > 3 else DRILLED)], wide
