"""Why?: one short page in the Findings' place, with a rule's reason, its drawing and its limits."""

from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter
from PySide6.QtWidgets import QApplication, QWidget

from bayboard.rules.finding import Finding
from bayboard.rules.pages import Page, page
from bayboard.window import lettering
from bayboard.window.controls import Link
from bayboard.window.lettering import BODY, STRONG
from bayboard.window.panel_title import paint_panel_title
from bayboard.window.scroll import Scroll
from bayboard.window.sheet import Sheet, Wrapped
from bayboard.window.theme import brush
from bayboard.window.why.drawings import paint_drawing
from bayboard.window.why.limit_line import LimitLine
from bayboard.window.workplace import Workplace

PAD = 16.0
TOP = 42.0  # px of the title
DRAWN = (164.0, 118.0)  # px of the drawing
LINE = 22.0


class WhyBody(Wrapped):
    """What is told: drawing and reason side by side, the limits below."""

    left = Signal()

    def __init__(self, place: Workplace) -> None:
        super().__init__(place)
        self.told: Page | None = None
        self.lines: list[LimitLine] = []
        self.setAccessibleName("Why")

    def tell(self, told: Page) -> None:
        """Tell a rule; where it is the one told already, its limits as they are now."""
        alike = self.told is not None and [x.name for x in self.told.limits] == [x.name for x in told.limits]
        again = alike and self.told is not None and self.told.rule == told.rule
        self.told = told
        if not again:
            self._lines_anew(told)
        for line, limit in zip(self.lines, told.limits, strict=True):
            line.take(limit)
        self.setAccessibleDescription(" ".join([told.fault, told.why, *(line.says() for line in self.lines)]))
        self.follow()

    def _lines_anew(self, told: Page) -> None:
        for line in self.lines:
            line.hide()
            line.deleteLater()
        self.lines = [LimitLine(self.place, limit, self) for limit in told.limits]
        for line in self.lines:
            line.dress(self.place.theme)
            line.show()
            line.left.connect(self.left)
            if line.field is not None:
                line.field.read_anew.connect(self.follow)

    def words(self) -> list[tuple[QPointF, str, bool]]:
        """Return each line of the fault and the reason, where it begins, and whether it is the fault's."""
        if self.told is None:
            return []
        size = self.place.theme.size
        left = (DRAWN[0] + 14.0) * size
        found, y = [], 16.0 * size
        for text, strong in ((self.told.fault, True), (self.told.why, False)):
            style = (STRONG if strong else BODY).sized(size)
            for line in lettering.wrapped(text, style, max(self.width() - left - 6.0, 80.0)):
                found.append((QPointF(left, y), line, strong))
                y += LINE * size
            y += 5.0 * size
        return found

    def follow(self) -> None:
        """Put the limits below what is told, and be as high as all of it."""
        size = self.place.theme.size
        words = self.words()
        y = max(words[-1][0].y() + 10.0 * size if words else 0.0, DRAWN[1] * size) + 8.0 * size
        for line in self.lines:
            high = line.high(float(self.width() - 6))
            line.setGeometry(0, round(y), self.width() - 6, high)
            line.lay_out()
            y += high
        self.setMinimumHeight(round(y))
        self.update()

    def paint(self, p: QPainter) -> None:
        """Paint the drawing and the words."""
        theme, size = self.place.theme, self.place.theme.size
        if self.told is None:
            return
        box = QRectF(0.0, 0.0, DRAWN[0] * size, DRAWN[1] * size)
        p.fillRect(box, brush(theme.room))
        paint_drawing(p, box.adjusted(4.0, 4.0, -4.0, -4.0), self.told.rule, theme)
        for at, line, strong in self.words():
            style = (STRONG if strong else BODY).sized(size)
            lettering.draw(p, at, line, style, theme.ink if strong else theme.ink2)


class WhyPage(Sheet):
    """The page.  Escape or Back leaves it; each figure in it can be set for this vehicle."""

    left = Signal()

    def __init__(self, place: Workplace, parent: QWidget | None = None) -> None:
        super().__init__(place, parent)
        self.rule = ""
        self.spare = 0  # px left free at the right end of the title line
        self.body = WhyBody(place)
        self.scroll = Scroll(self.body, self)
        self.back = Link("Back", self, "Shows the findings again. Esc")
        self.back.clicked.connect(self.left)
        self.body.left.connect(self.left)
        self.setAccessibleName("Why")
        place.changed.connect(self.follow)

    def open(self, finding: Finding) -> bool:
        """Tell the rule of a finding; return False where there is none of its name."""
        told = page(finding.rule, self.place.layout)
        if told is None:
            return False
        self.rule = finding.rule
        self.body.told = None  # its fields are made for the units shown now
        self._tell(told)
        self.scroll.verticalScrollBar().setValue(0)
        self.show()
        self.back.setFocus(Qt.FocusReason.OtherFocusReason)
        return True

    def follow(self) -> None:
        """Tell the limits as they are now; begin anew where lengths are shown otherwise."""
        if self.isHidden() or not self.rule:
            return
        fields = [line.field for line in self.body.lines if line.field is not None]
        if any(field.units != self.place.units for field in fields):
            self.body.told = None
        told = page(self.rule, self.place.layout)
        if told is not None:
            self._tell(told)
        self.update()

    def _tell(self, told: Page) -> None:
        self.body.tell(told)
        stops = [self.back, *(part for line in self.body.lines for part in line.stops())]
        for a, b in pairwise(stops):
            QWidget.setTabOrder(a, b)

    def has_keys(self) -> bool:
        """Return whether the keys are on the page."""
        now = QApplication.focusWidget()
        return now is not None and (now is self or self.isAncestorOf(now))

    def dress(self) -> None:
        """Wear the workplace's colours."""
        theme = self.place.theme
        self.scroll.dress(theme)
        self.back.dress(theme)
        for line in self.body.lines:
            line.dress(theme)
        self.lay_out()
        self.body.follow()

    def lay_out(self) -> None:
        """Put the way back at the right end of the title, the page below."""
        size, hint = self.place.theme.size, self.back.sizeHint()
        self.back.setGeometry(self.width() - hint.width() - 10 - self.spare, 2, hint.width(), hint.height())
        pad, top = round(PAD * size), round(TOP * size)
        self.scroll.setGeometry(pad, top, self.width() - pad - 6, max(self.height() - top - 8, 0))

    def paint(self, p: QPainter) -> None:
        """Paint the title."""
        paint_panel_title(p, "Why?", "", self.place.theme, float(self.width()))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Leave with Escape."""
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            event.ignore()
