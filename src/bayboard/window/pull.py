"""The Section pulled wide over the Wall, and what the bottom row shows meanwhile.

The Wall keeps the strip round the chalk line and both views keep their scale.  With the seat folded a list of
what is seen and reached has the Bench's place, and the point that the list speaks of has the Card's.
"""

from dataclasses import replace
from typing import Protocol

from PySide6.QtCore import QObject, QRect, QRectF
from PySide6.QtWidgets import QWidget

from bayboard.window.access import announce
from bayboard.window.bench_panel import BenchPanel
from bayboard.window.floor_plan import FloorPlan
from bayboard.window.point_card import PointCard
from bayboard.window.section_view import SectionView
from bayboard.window.seen_panel import SeenPanel
from bayboard.window.tapes import FootTape, HangingTape, OutTape
from bayboard.window.wall_view import WallView
from bayboard.window.workplace import Workplace

WIDEST = 1112.0 / 1600.0  # of the window's width
LEAST = 0.12  # of the way; let go nearer than this the Section goes back
Places = tuple[QWidget, QWidget, QWidget, QWidget, QWidget]  # Wall, Section, Bench, Findings, Card


class Slides(Protocol):
    """What brings the Section over a narrow Wall."""

    section_out: bool

    def slide_section(self) -> None:
        """Bring it, or put it away; nothing where it stands beside the Wall."""


class Window(Protocol):
    """What is needed of the window."""

    place: Workplace
    wall: WallView
    section: SectionView
    hanging: HangingTape
    foot: FootTape
    bench: BenchPanel
    card: QWidget
    narrow: Slides

    def lay_out(self) -> None:
        """Put all parts in their places."""

    def to_wall(self) -> None:
        """Give the keys to the Wall."""


def pulled(plan: FloorPlan, share: float) -> FloorPlan:
    """Return the plan with the Section pulled over the Wall by a share of the way, its tape under it.

    A Section that slides covers the Wall, one that stands beside it leaves it the strip; one that is put
    away, or as wide already, stays as it is.
    """
    widest = round(plan.strip.width() * WIDEST)
    more = round((widest - plan.section.width()) * share)
    if more <= 0 or plan.section.width() <= 0:
        return plan
    beside = plan.hanging.left() == plan.wall.right() + 1
    return replace(
        plan,
        wall=plan.wall.adjusted(0, 0, -more, 0) if beside else plan.wall,
        foot=plan.foot.adjusted(0, 0, -more, 0) if beside else plan.foot,
        hanging=plan.hanging.translated(-more, 0),
        section=plan.section.adjusted(-more, 0, 0, -plan.foot.height()),
    )


class Pull(QObject):
    """How far the Section is pulled, by W or by the hanging tape, and what goes with it."""

    def __init__(self, window: Window, parent: QWidget) -> None:
        super().__init__(parent)
        self.window = window
        place = window.place
        self.usual = QRectF()  # of the Wall while the Section is not pulled
        self.out = OutTape(place, window.section, parent)
        self.seen = SeenPanel(place, parent)
        self.point = PointCard(place, self.seen.rows.chosen, parent)
        self._from: float | None = None
        self._shown = (*self._state(), place.wide)
        for part in (self.out, self.seen, self.point):
            part.hide()
        window.hanging.drawn.connect(self._draw)
        window.hanging.let_go.connect(self._let_go)
        self.seen.rows.left.connect(window.to_wall)
        self.seen.rows.keys_changed.connect(self._follow)
        place.looked.connect(self._follow)

    # --- where things lie ---

    def planned(self, plan: FloorPlan, here: bool) -> FloorPlan:
        """Return the plan with the Section as far as it is pulled; `here`: the stage shows this Section."""
        self.usual = QRectF(0.0, 0.0, plan.wall.width(), plan.wall.height())
        place = self.window.place
        made = pulled(plan, place.wide if here and place.chalk_x is not None else 0.0)
        self.window.section.pulled = made is not plan
        return made

    def instead(self, parts: Places) -> Places:
        """Return the five parts with the list in the Bench's place, and a point in the Card's."""
        wall, section, bench, findings, card = parts
        lists, points = self._state()
        return (
            wall,
            section,
            self.seen if lists and bench is self.window.bench else bench,
            findings,
            self.point if points and card is self.window.card else card,
        )

    def lay_out(self, plan: FloorPlan, shown: Places) -> None:
        """Put the tape under the Section while it is pulled, and show the parts that have another's place."""
        section = plan.section
        had_keys = self.seen.rows.hasFocus() or self.window.bench.hasFocus()
        for own, usual in ((self.seen, self.window.bench), (self.point, self.window.card)):
            own.setVisible(own in shown)
            if own in shown or usual in shown:
                usual.setVisible(usual in shown)
        if had_keys and not (self.seen.rows.hasFocus() or self.window.bench.hasFocus()):
            self.window.to_wall()
        self.out.setVisible(self.window.section.pulled)
        self.out.raise_()
        self.out.setGeometry(QRect(section.left(), plan.foot.top(), section.width(), plan.foot.height()))

    def dress(self) -> None:
        """Wear the workplace's colours."""
        self.seen.dress()
        self.window.section.update()

    # --- hands ---

    def toggle(self) -> None:
        """Pull the Section wide, or let it go back; one that is put away comes first."""
        if self.window.place.chalk_x is None:
            return  # there is nothing to cut
        if self.window.place.wide == 0.0 and not self.window.narrow.section_out:
            self.window.narrow.slide_section()
        self._to(0.0 if self.window.place.wide > 0.0 else 1.0)
        section = self.window.section
        announce(section, f"Section {section.phrases()[0]}")

    def _draw(self, by: float) -> None:
        """Follow the hand that draws the hanging tape aside."""
        place, wide = self.window.place, float(self.out.window().width())
        if place.chalk_x is None:
            return
        if self._from is None:
            self._from = place.wide
        way = WIDEST * wide - self._usual_section()
        self._to(min(max(self._from - by / max(way, 1.0), 0.0), 1.0))

    def _usual_section(self) -> float:
        """Return how wide the Section is while it is not pulled, px."""
        section, usual = self.window.section.width(), self.usual.width()
        return section - (usual - self.window.place.wall_rect.width())

    def _let_go(self) -> None:
        self._from = None
        if self.window.place.wide < LEAST:
            self._to(0.0)

    def _to(self, share: float) -> None:
        place = self.window.place
        if share != place.wide:
            place.wide = share
            place.looked.emit()

    # --- what is shown ---

    def _state(self) -> tuple[bool, bool]:
        """Return whether the list is shown, and a point in the Card's place."""
        place = self.window.place
        lists = self.window.section.pulled and place.lever == "folded"
        return lists, lists and self.seen.rows.hasFocus() and self.seen.rows.chosen() is not None

    def _follow(self) -> None:
        """Show list and point when their time comes; keep the chalk line in the strip that is left."""
        window = self.window
        if window.wall.gesture is None and window.bench.gesture is None and not window.foot.held:
            window.place.keep_line_seen()
        now = (*self._state(), self.window.place.wide)
        if now != self._shown:
            self._shown = now
            self.window.lay_out()
