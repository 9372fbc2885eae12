"""The Section: the side view at the chalk line, on the Wall's own height axis and scale."""

from dataclasses import replace

from PySide6.QtCore import QPointF, QRectF, Qt, QTimer
from PySide6.QtGui import QMouseEvent, QPainter
from PySide6.QtWidgets import QWidget

from bayboard.window import motion
from bayboard.window.draw.section import paint_section
from bayboard.window.draw.section_show import SectionShow
from bayboard.window.listed import Listed
from bayboard.window.place_view import PlaceView
from bayboard.window.section_points import points_here
from bayboard.window.section_said import Told, told
from bayboard.window.section_showing import section_show
from bayboard.window.side_view import SideView
from bayboard.window.workplace import Workplace

POINT = 14.0  # px round a service point that are felt
REST = 300  # ms without a change after which the description is written anew


class SectionView(SideView, PlaceView[SectionShow], Listed):
    """What a cut at the chalk line shows, looking left."""

    reads_as = "Section"

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(place, "Section", section_show, parent)
        self._lever = place.lever
        self._folding = motion.Ease(self, self._fold_to, 0.0)
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(REST)
        self._rest.timeout.connect(self._describe)
        place.looked.connect(self._follow_lever)
        place.changed.connect(self._rest.start)
        place.looked.connect(self._rest.start)

    # --- the lever ---

    def _follow_lever(self) -> None:
        """Let a seat with a known hinge swing to where the lever has it."""
        lever = self.place.lever
        if lever == self._lever:
            return
        self._lever = lever
        end = 1.0 if lever == "folded" else 0.0
        if self.isVisible() and super().show_now().swings:
            self._folding.run(motion.LEVER, end, 1.0 - end)
        else:
            self._folding.run(0, end, end)

    def _fold_to(self, share: float) -> None:
        self.update()

    def show_now(self) -> SectionShow:
        """Return what is shown; while a seat swings nothing is measured."""
        show = super().show_now()
        if not self._folding.running:
            return show
        return replace(show, folding=self._folding.now, sights=(), depths=(), fans=(), tubes=(), eyes=None)

    # --- painting ---

    def still_key(self) -> object:
        """Return what the whole view is painted from."""
        return self.place.shown, self.show_now()

    def paint_still(self, p: QPainter) -> None:
        """Paint the cut."""
        paint_section(
            p, self.layer_scale(), self.place.scene, self.theme, self.show_now(), QRectF(self.rect())
        )

    # --- hands ---

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Speak of the service point that is pressed, else select the piece that is cut here."""
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        if event.button() != Qt.MouseButton.LeftButton:
            return
        subject, name = self.point_at(event.position()), self.piece_at(event.position())
        if subject is not None:
            self.place.speak_of_point(subject)
        elif name is not None:
            self.place.select((name,))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show which piece the pointer is over."""
        self.place.hover(self.piece_at(event.position()))
        over = self.point_at(event.position()) is not None
        self.setCursor(Qt.CursorShape.PointingHandCursor if over else Qt.CursorShape.ArrowCursor)

    def point_at(self, at: QPointF) -> str | None:
        """Return the service point that lies under a pixel, the nearest of several."""
        scale, found = self.layer_scale(), []
        for point in points_here(self.place):
            if point.view is not None:
                _, y, z = point.view.start.tolist()
                off = scale.px(-z, y) - at
                found.append((off.x() ** 2 + off.y() ** 2, point.subject))
        nearest = min(found, default=None)
        return nearest[1] if nearest is not None and nearest[0] <= (POINT * self.theme.size) ** 2 else None

    def piece_at(self, at: QPointF) -> str | None:
        """Return the piece cut by the chalk line that lies under a pixel."""
        x = self.place.chalk_x
        minus_z, y = self.layer_scale().mm(at)
        for piece in reversed(self.place.scene.placed.values()):
            x0, y0, x1, y1 = piece.box
            cut = x is not None and x0 <= x <= x1 and y0 <= y <= y1
            if cut and piece.top is not None and piece.under <= -minus_z <= piece.top:
                return piece.id
        return None

    # --- read aloud ---

    def _told(self) -> tuple[Told, ...]:
        return told(self.place)

    def _describe(self) -> None:
        where = self.phrases()[-1]
        words = [f"{where}, seat {self.place.lever}", *self.parts_said()]
        self.setAccessibleDescription(". ".join(words) + ".")

    def parts_said(self) -> list[str]:
        """Return a sentence for each thing that is seen: pieces, rooms, points."""
        return [one.words for one in self._told()]

    def part_rect(self, index: int) -> QRectF:
        """Return where a sentence is about, in pixels."""
        return self._told()[index].rect(self.layer_scale())

    def part_held(self, index: int) -> bool:
        """Return whether a sentence is about what is selected or spoken of."""
        subject = self._told()[index].subject
        return subject == self.place.service or subject in self.place.selected
