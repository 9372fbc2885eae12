"""The vehicle that is chosen, told in full, and the ways to work: take it down, or begin elsewhere."""

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QWidget

from bayboard.window import lettering
from bayboard.window.controls import TARGET, Button, Control, Link
from bayboard.window.findings_panel import bar_dress
from bayboard.window.first_frame import paint_panel
from bayboard.window.lettering import BODY, Style
from bayboard.window.panel_title import paint_panel_title
from bayboard.window.shelf import words
from bayboard.window.shelf.desk import ShelfDesk
from bayboard.window.theme import brush
from bayboard.window.when import moment_words

PAD = 16.0
TOP = 42.0  # px of the title
SMALL = Style(px=15.0)
TAKE, GO_ON, LOOK = "Take it down", "Go on with it", "Look only"
OPEN, NEW, EXAMPLE = "Open a file…", "A new vehicle", "See a finished one"

Paragraphs = tuple[tuple[str, bool], ...]


class Told(QWidget):
    """Paragraphs one under the other, strong ones in ink."""

    def __init__(self, desk: ShelfDesk) -> None:
        super().__init__()
        self.desk = desk
        self.told: Paragraphs = ()

    def tell(self, told: Paragraphs) -> None:
        """Tell these paragraphs."""
        self.told = told
        self.setAccessibleName(" ".join(text for text, _ in told))
        self.follow()

    def lines(self) -> list[tuple[float, str, Style, bool]]:
        """Return each line with its baseline, style and whether it is in strong ink."""
        size, y = self.desk.place.theme.size, 0.0
        found = []
        for text, strong in self.told:
            style = (BODY if strong else SMALL).sized(size)
            for line in lettering.wrapped(text, style, max(self.width() - 6.0, 80.0)):
                y += 21.0 * size
                found.append((y, line, style, strong))
            y += 3.0 * size
        return found

    def follow(self) -> None:
        """Be as high as there is to tell."""
        lines = self.lines()
        self.setMinimumHeight(round(lines[-1][0] + 8.0) if lines else 0)
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Wrap the lines anew."""
        self.follow()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the lines."""
        theme = self.desk.place.theme
        with QPainter(self) as p:
            p.fillRect(self.rect(), brush(theme.paper))
            room = max(self.width() - 6.0, 80.0)
            for y, line, style, strong in self.lines():
                shown = lettering.elided(line, style, room)
                lettering.draw(p, QPointF(0.0, y), shown, style, theme.ink if strong else theme.ink2)


class ChoiceCard(QWidget):
    """The right panel.  `take` is its one filled button, `new` where nothing can be taken."""

    take_wanted = Signal()
    look_wanted = Signal()
    open_wanted = Signal()
    new_wanted = Signal()
    example_wanted = Signal()

    def __init__(self, desk: ShelfDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self.place = desk.place
        self.told = Told(desk)
        self.scroll = QScrollArea(self)
        self.scroll.setWidget(self.told)
        self.scroll.setWidgetResizable(True)
        self.scroll.setFrameShape(QFrame.Shape.NoFrame)
        self.scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.take = Button(TAKE, self, act=True, tip="Opens this vehicle. Enter")
        self.look = Button(LOOK, self, tip="Opens this vehicle to look at; nothing in it changes")
        # the ways to begin elsewhere: small below a vehicle, large where none is chosen
        self.ways = (
            (OPEN, "Opens a file anywhere. Ctrl+Shift+O", self.open_wanted),
            (NEW, "Begins with a bare wall. Ctrl+N", self.new_wanted),
            (EXAMPLE, "Shows a finished vehicle to try things on", self.example_wanted),
        )
        self.links = tuple(Link(text, self, tip) for text, tip, _ in self.ways)
        self.begin = tuple(Button(text, self, act=text == NEW, tip=tip) for text, tip, _ in self.ways)
        self._connect()
        self.setAccessibleName("Vehicle")
        self.dress()

    def _connect(self) -> None:
        self.take.clicked.connect(self.take_wanted)
        self.look.clicked.connect(self.look_wanted)
        for (_, _, signal), link, button in zip(self.ways, self.links, self.begin, strict=True):
            link.clicked.connect(signal)
            button.clicked.connect(signal)
        self.desk.changed.connect(self.follow)

    @property
    def stops(self) -> tuple[Control, ...]:
        """Return what Tab walks here, in order."""
        return self.take, self.look, *self.links, *self.begin

    def dress(self) -> None:
        """Wear the workplace's colours."""
        theme = self.place.theme
        for control in self.stops:
            control.dress(theme)
        self.scroll.setStyleSheet(f"QScrollArea, QScrollArea > QWidget {{ background: {theme.paper}; }}")
        self.scroll.verticalScrollBar().setStyleSheet(bar_dress(theme))
        self.follow()

    def follow(self) -> None:
        """Tell of the vehicle that is chosen."""
        desk, vehicle = self.desk, self.desk.vehicle()
        here = vehicle is not None and desk.is_here(vehicle)
        if vehicle is not None:
            state = words.state_words(vehicle, here, desk.holder(vehicle))
            self.told.tell((*(((state, True),) if state else ()), *words.told(vehicle)))
            self.take.setText(GO_ON if here else TAKE)
            self.take.setAccessibleName(f"{self.take.text()}: {vehicle.facts.name}")
        for control in (self.scroll, self.take, *self.links):
            control.setVisible(vehicle is not None)
        for button in self.begin:
            button.setVisible(vehicle is None)
        self.look.setVisible(vehicle is not None and not here)
        self._lay_out()
        self.update()

    def title(self) -> tuple[str, str]:
        """Return the title and when it was worked on."""
        vehicle = self.desk.vehicle()
        if vehicle is None:
            return "Begin elsewhere", ""
        return vehicle.facts.name, moment_words(vehicle.changed)

    # --- where things lie ---

    def _lay_out(self) -> None:
        size = self.place.theme.size
        pad, tall, link = round(PAD * size), round((TARGET + 8) * size), round(TARGET * size)
        top, bottom = round(TOP * size), self.height() - link - round(4.0 * size)
        whole, x = self.width() - 2 * pad + 8, pad - 6
        for i, (small, large) in enumerate(zip(self.links, self.begin, strict=True)):
            wide = small.sizeHint().width()
            small.setGeometry(x, bottom, wide, link)
            large.setGeometry(pad - 4, top + i * (tall + round(4.0 * size)), whole, tall)
            x += wide
        bottom -= tall - round(3.0 * size)
        look = 0 if self.look.isHidden() else self.look.sizeHint().width()
        self.take.setGeometry(pad - 4, bottom, whole - look - (4 if look else 0), tall)
        self.look.setGeometry(pad - 4 + whole - look, bottom, look, tall)
        self.scroll.setGeometry(pad, top, self.width() - pad - 6, max(bottom - top - 2, 0))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the controls in their places."""
        self._lay_out()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the sheet and the title."""
        theme, size = self.place.theme, self.place.theme.size
        with QPainter(self) as p:
            p.fillRect(self.rect(), brush(theme.bench))
            p.setRenderHint(QPainter.RenderHint.Antialiasing)
            paint_panel(p, QRectF(self.rect()), theme.paper, theme)
            name, when = self.title()
            room = self.width() - 2 * PAD * size - lettering.width(when, SMALL.sized(size)) - 14.0 * size
            shown = lettering.elided(name, lettering.HEADING.sized(size), room)
            paint_panel_title(p, shown, "", theme, float(self.width()), when)
