"""The workplace as the values that Wall and Section are painted from."""

from dataclasses import replace

from bayboard.window.cure_show import cures_shown
from bayboard.window.draw.docking import TAGGED
from bayboard.window.draw.show import Measure, WallShow
from bayboard.window.lead_under import end_names
from bayboard.window.marking import chalk_measures, gap_measures, marks
from bayboard.window.workplace import Workplace, key_of


def wall_show(place: Workplace) -> WallShow:
    """Return what the Wall shows besides the layout."""
    hand = place.hand
    asked = (place.finding, place.pointed_at)
    told = frozenset(place.heard.number(f) for f in place.heard.findings if key_of(f) in asked)
    measures, pairs = _measures(place)
    shown = marks(place.heard, place.shown, place.rooms, told)
    worst = frozenset(mark.number for mark in shown[:TAGGED])
    gaps = gap_measures(place.heard, place.scene, pairs, worst | told)
    spans, ends = place.spans.shown(place.scene, place.selected)
    return WallShow(
        selected=frozenset(place.selected),
        focused=place.selected[-1] if place.by_keys and place.selected else None,
        hovered=place.hovered,
        in_hand=hand.pieces,
        ghosts=hand.ghosts,
        measures=(*measures, *gaps, *spans),
        ends=ends,
        named=end_names(place.scene, place.hovered) if not hand.pieces else (),
        snaps=hand.snaps,
        marquee=hand.marquee,
        marks=shown,
        told=told,
        chalk_x=place.chalk_x,
        lever=place.lever,
        pointer=place.pointer,
        turning=hand.turning,
        cures=cures_shown(place),
    )


def _measures(place: Workplace) -> tuple[tuple[Measure, ...], frozenset[frozenset[str]]]:
    """Return the chalk measures to lay down: of the hand, the selected, else the hovered one's tightest."""
    if place.hand.turning is not None:
        return (), frozenset()  # the degrees are what one looks at
    if place.hand.pieces:
        return chalk_measures(place.heard, place.scene, place.hand.pieces)
    if place.measured and place.selected:
        return chalk_measures(place.heard, place.scene, frozenset(place.selected))
    if place.hovered and place.hovered not in place.selected and place.hand.marquee is None:
        return chalk_measures(place.heard, place.scene, frozenset((place.hovered,)), only_tightest=True)
    return (), frozenset()


def _number_only(measure: Measure) -> Measure:
    """Return a measure as the still layer knows it: that the finding wears no mark of its own."""
    return Measure((0.0, 0.0), (0.0, 0.0), "", measure.severity, measure.number)


def still(show: WallShow) -> WallShow:
    """Return the show with only what the still layer is painted from: another one asks for a new layer."""
    return replace(
        show,
        ghosts=(),
        ends=(),
        named=(),
        hovered=None,
        measures=tuple(_number_only(m) for m in show.measures if m.number is not None),
        snaps=(),
        marquee=None,
        pointer=None,
        turning=None,
        cures=(),
        chalk_x=None,
        focused=None,
    )
