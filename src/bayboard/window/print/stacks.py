"""What to print: a stack for each kind of sheet on the ledge; a press takes one off and puts it back."""

from dataclasses import dataclass

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPainterPath, QResizeEvent
from PySide6.QtWidgets import QWidget

from bayboard.window import lettering
from bayboard.window.access import announce
from bayboard.window.canvas import Canvas
from bayboard.window.draw.strokes import cased
from bayboard.window.lettering import HELPER, STRONG, Style
from bayboard.window.panel_title import paint_panel_title
from bayboard.window.print import words
from bayboard.window.print.desk import PrintDesk
from bayboard.window.print.paint_page import paint_paper_shadow, paper_ink, paper_white
from bayboard.window.print.slip import PrintSlip
from bayboard.window.theme import Theme, brush, mixed, pen

LIP = 44.0  # px; the ledge's front, where the names stand
TOP = 44.0
PAPER = (74.0, 96.0)  # px; a sheet of a stack at most
APART, CLOSE = 46.0, 24.0  # px between stacks, and where the panel is narrow
CAUTION = 18.0  # px; from line to line of a caution
NAMES = 76.0  # px; a stack's name takes so much
ROOMY = 560.0  # px; a narrower panel stands its stacks closer
LEFT_SIDE, LEAST_SLIP = 250.0, 220.0  # px; what the slip leaves free, and how narrow it is then
SAID = Style(px=15.0)
CAUTIONS = (words.PROVE, words.BEHIND)


@dataclass(frozen=True, slots=True)
class Stack:
    """A stack on the ledge: its kind, its upper sheet, its name's place, all that is felt of it."""

    kind: str
    sheet: QRectF
    label: QRectF

    @property
    def felt(self) -> QRectF:
        """Return where a press means this stack."""
        return self.sheet.united(self.label).adjusted(-8.0, -8.0, 8.0, 0.0)


class StacksPanel(Canvas):
    """The left panel of the Print stage.  Arrows walk the stacks, Space switches one off or on."""

    layered = False

    def __init__(self, desk: PrintDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self.place = desk.place
        self.current = 0
        self.hovered = -1
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("What to print")
        self.slip = PrintSlip(desk, self)
        self.slip.changed.connect(self.lay_slip)
        desk.changed.connect(self._tell)

    @property
    def theme(self) -> Theme:
        """Return the workplace's colours."""
        return self.place.theme

    def stacks(self) -> tuple[Stack, ...]:
        """Return where the stacks stand."""
        size, high = self.theme.size, self.height()
        room = high - (TOP + LIP + 14.0) * size - len(self._cautions()) * CAUTION * size
        tall = max(min(PAPER[1] * size, room), 40.0)
        wide = tall * PAPER[0] / PAPER[1]
        apart = max(wide + CLOSE * size, NAMES * size) if self._narrow() else wide + APART * size
        floor, left = high - LIP * size, max(34.0 * size, (NAMES * size - wide) / 2)
        made = []
        for kind in words.KINDS:
            sheet = QRectF(left, floor - tall, wide, tall)
            made.append(Stack(kind, sheet, QRectF(left - 14.0, floor, wide + 28.0, LIP * size)))
            left += apart
        return tuple(made)

    def left_side(self) -> float:
        """Return how wide the part is that the slip leaves free."""
        size = self.theme.size
        if not self.slip.told():
            return float(self.width())
        return max(0.46 * self.width(), min(LEFT_SIDE * size, self.width() - LEAST_SLIP * size))

    def _narrow(self) -> bool:
        return self.slip.told() and self.width() < ROOMY * self.theme.size

    def _caution_style(self) -> Style:
        return (HELPER if self._narrow() else SAID).sized(self.theme.size)

    def lay_slip(self) -> None:
        """Put the slip at the right, over the ledge."""
        size, left = self.theme.size, round(self.left_side())
        wide, high = self.width() - left - round(12 * size), self.height() - round(20 * size)
        self.slip.setGeometry(left, round(10 * size), wide, high)
        self.slip.setVisible(self.slip.told())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the slip in its place."""
        self.lay_slip()

    def _cautions(self) -> list[str]:
        """Return the cautions in lines as wide as the panel."""
        size = self.theme.size
        room, style = max(self.left_side() - 28.0 * size, 60.0), self._caution_style()
        return [line for words_ in CAUTIONS for line in lettering.wrapped(words_, style, room)]

    def state(self, kind: str) -> str:
        """Return what is said of a stack: how many sheets, that it is left out, or why there is none."""
        if kind not in self.desk.kinds():
            return words.MISSING[kind]
        if kind in self.desk.choices.off:
            return "left out"
        if self.desk.swapping and kind != "drill":
            return "with all"
        count = self.desk.to_print(kind)
        return words.counted(count) if count else "laying out"

    def phrase(self) -> str:
        """Return what stands beside the title."""
        desk = self.desk
        if not desk.wanted():
            return "nothing switched on" if desk.kinds() else "nothing yet"
        if not desk.count() or desk.refused is not None:
            return "laying out the sheets" if desk.laying else ""
        return words.sheets_of_paper(desk.to_print(), desk.choices.paper)

    def _tell(self) -> None:
        said = ", ".join(f"{name} {self.state(kind)}" for kind, name in words.KINDS.items())
        if said != self.accessibleDescription():
            self.setAccessibleDescription(said)
            announce(self, said)
        self.update()

    # --- painting ---

    def paint_live(self, p: QPainter) -> None:
        """Paint the ledge, the stacks and the cautions over them."""
        theme, size, rect = self.theme, self.theme.size, QRectF(self.rect())
        p.fillRect(rect, brush(theme.bench))
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        sheet = QPainterPath()
        sheet.addRoundedRect(rect, 8.0, 8.0)
        p.setClipPath(sheet)
        floor = rect.bottom() - LIP * size
        p.fillRect(rect, brush(theme.shelf))
        p.fillRect(QRectF(0.0, floor, rect.width(), LIP * size), brush(theme.lath))
        p.fillRect(QRectF(0.0, floor - 0.8, rect.width(), 1.6), brush(mixed(theme.lath, theme.ink, 0.3)))
        paint_panel_title(p, "What to print", self.phrase(), theme, self.left_side())
        for i, line in enumerate(self._cautions()):
            at = QPointF(16.0 * size, (54.0 + i * CAUTION) * size)
            lettering.draw(p, at, line, self._caution_style(), theme.ink)
        for i, stack in enumerate(self.stacks()):
            self._paint_stack(p, stack, i)
        p.setClipping(False)
        p.setBrush(Qt.BrushStyle.NoBrush)
        p.setPen(pen(theme.blue if self.hasFocus() else theme.rule, 2.0 if self.hasFocus() else 1.0))
        p.drawRoundedRect(rect.adjusted(1.0, 1.0, -1.0, -1.0), 8.0, 8.0)

    def _paint_stack(self, p: QPainter, stack: Stack, i: int) -> None:
        theme, size = self.theme, self.theme.size
        shown = stack.kind in self.desk.wanted() and not (self.desk.swapping and stack.kind != "drill")
        if shown:
            self._paint_sheets(p, stack, i == self.hovered)
        else:
            self._paint_gap(p, stack)
        style = STRONG.sized(size) if shown else HELPER.sized(size)
        name = words.KINDS[stack.kind]
        lettering.draw_in(p, stack.label, name, style, theme.ink if shown else theme.ink2)
        if self.hasFocus() and i == self.current:
            ring = QPainterPath()
            ring.addRoundedRect(stack.sheet.adjusted(-10.0, -10.0, 10.0, 6.0), 6.0, 6.0)
            cased(p, ring, theme.blue, 2.2, theme, dash=(4.0, 2.5))

    def _paint_sheets(self, p: QPainter, stack: Stack, hovered: bool) -> None:
        count = self.desk.to_print(stack.kind)
        white = paper_white(self.theme)
        edge = mixed(white, "#000000", 0.35)
        for back in range(min(max(count, 1), 4) - 1, -1, -1):
            sheet = stack.sheet.translated(3.6 * back, -3.6 * back - (2.0 if hovered else 0.0))
            if back == 0 or back == min(count, 4) - 1:
                paint_paper_shadow(p, sheet, 5.0 if hovered else 3.0)
            p.setBrush(brush(white))
            p.setPen(pen(edge, 1.0))
            p.drawRect(sheet)
        upper = stack.sheet.translated(0.0, -2.0 if hovered else 0.0)
        (_paint_template if stack.kind == "drill" else _paint_cards)(p, upper, self.theme)
        if count:
            self._paint_count(p, upper, count)

    def _paint_count(self, p: QPainter, sheet: QRectF, count: int) -> None:
        theme, style = self.theme, STRONG.sized(self.theme.size)
        wide = max(lettering.width(str(count), style) + 12.0, 24.0 * theme.size)
        high = 24.0 * theme.size
        tag = QRectF(sheet.right() - wide + 6.0, sheet.bottom() - high - 3.0, wide, high)
        p.setBrush(brush(theme.ink))
        p.setPen(pen(theme.paper, 1.5))
        p.drawRoundedRect(tag, 3.0, 3.0)
        lettering.draw_in(p, tag, str(count), style, theme.field)

    def _paint_gap(self, p: QPainter, stack: Stack) -> None:
        gap = QPainterPath()
        gap.addRect(stack.sheet.adjusted(0.5, 0.5, -0.5, -0.5))
        p.strokePath(gap, pen(self.theme.rule2, 1.3, dash=(5.0, 4.0)))
        style = HELPER.sized(self.theme.size)
        lines = lettering.wrapped(self.state(stack.kind), style, stack.sheet.width() - 6.0)
        top = stack.sheet.center().y() - 9.0 * self.theme.size * len(lines)
        for i, line in enumerate(lines):
            row = QRectF(
                stack.sheet.left(),
                top + 18.0 * self.theme.size * i,
                stack.sheet.width(),
                18.0 * self.theme.size,
            )
            lettering.draw_in(p, row, line, style, self.theme.ink2)

    # --- hands ---

    def stack_at(self, at: QPointF) -> int:
        """Return which stack is there, -1 for none."""
        return next((i for i, stack in enumerate(self.stacks()) if stack.felt.contains(at)), -1)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Switch the stack that is pressed."""
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        at = self.stack_at(event.position())
        if at >= 0 and event.button() == Qt.MouseButton.LeftButton:
            self.current = at
            self.desk.switch(self.stacks()[at].kind)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show which stack the pointer is over."""
        self.hovered = self.stack_at(event.position())
        over = Qt.CursorShape.PointingHandCursor if self.hovered >= 0 else Qt.CursorShape.ArrowCursor
        self.setCursor(over)
        self.update()

    def leaveEvent(self, event: QEvent) -> None:
        """Forget the pointer."""
        self.hovered = -1
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk with the arrows, switch with Space or Enter."""
        by = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}.get(Qt.Key(event.key()))
        if by is not None:
            self.current = min(max(self.current + by, 0), len(words.KINDS) - 1)
            kind = tuple(words.KINDS)[self.current]
            announce(self, f"{words.KINDS[kind]} {self.state(kind)}")
            self.update()
        elif event.key() in (Qt.Key.Key_Space, Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.desk.switch(tuple(words.KINDS)[self.current])
        else:
            event.ignore()


def _paint_template(p: QPainter, sheet: QRectF, theme: Theme) -> None:
    """Paint the look of a template sheet: a board's corner and a hole's cross."""
    wide, high = sheet.width(), sheet.height()
    corner = QPainterPath(QPointF(sheet.left() + 0.16 * wide, sheet.bottom() - 1.0))
    corner.lineTo(sheet.left() + 0.16 * wide, sheet.top() + 0.24 * high)
    corner.lineTo(sheet.right() - 1.0, sheet.top() + 0.24 * high)
    p.strokePath(corner, pen(paper_ink(theme), 1.6))
    at = QPointF(sheet.left() + 0.42 * wide, sheet.top() + 0.44 * high)
    cross = QPainterPath()
    cross.addEllipse(at, 5.0, 5.0)
    for dx, dy in ((9.0, 0.0), (0.0, 9.0)):
        cross.moveTo(at.x() - dx, at.y() - dy)
        cross.lineTo(at.x() + dx, at.y() + dy)
    p.strokePath(cross, pen(paper_ink(theme), 1.2))


def _paint_cards(p: QPainter, sheet: QRectF, theme: Theme) -> None:
    """Paint the look of a card sheet: a stand-in to be cut out."""
    card = QRectF(
        sheet.left() + 0.18 * sheet.width(),
        sheet.top() + 0.2 * sheet.height(),
        0.64 * sheet.width(),
        0.34 * sheet.height(),
    )
    p.setBrush(brush(theme.buff))
    p.setPen(pen(theme.buffedge, 1.2, dash=(4.0, 2.5)))
    p.drawRect(card)
    style = Style("pencil", round(0.22 * sheet.height()))
    lettering.draw_in(p, card, "A1", style, theme.pencil)
