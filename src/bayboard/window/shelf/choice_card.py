"""The vehicle that is chosen, told in full, and the ways to work: take it down, or begin elsewhere."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from bayboard.window.controls import TARGET, Button, Control, Link
from bayboard.window.shelf import words
from bayboard.window.shelf.desk import ShelfDesk
from bayboard.window.told import PAD, TOP, ToldSheet
from bayboard.window.when import moment_words

TAKE, GO_ON, LOOK = "Take it down", "Go on with it", "Look only"
OPEN, NEW, EXAMPLE = "Open a file…", "A new vehicle", "See a finished one"


class ChoiceCard(ToldSheet):
    """The right panel.  `take` is its one filled button, `new` where nothing can be taken."""

    lead, gap = 21.0, 3.0

    take_wanted = Signal()
    look_wanted = Signal()
    open_wanted = Signal()
    new_wanted = Signal()
    example_wanted = Signal()

    def __init__(self, desk: ShelfDesk, parent: QWidget | None = None) -> None:
        super().__init__(desk.place, parent)
        self.desk = desk
        self.take = Button(TAKE, self, act=True, tip="Opens this vehicle. Enter")
        self.look = Button(LOOK, self, tip="Opens this vehicle to look at; nothing in it changes.")
        # the ways to begin elsewhere: small below a vehicle, large where none is chosen
        self.ways = (
            (OPEN, "Opens a file anywhere. Ctrl Shift O", self.open_wanted),
            (NEW, "Begins with a bare wall. Ctrl N", self.new_wanted),
            (EXAMPLE, "Shows a finished vehicle to try things on.", self.example_wanted),
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
        self.scroll.dress(theme)
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
        self.lay_out()
        self.update()

    def title(self) -> tuple[str, str]:
        """Return the title and when it was worked on."""
        vehicle = self.desk.vehicle()
        if vehicle is None:
            return "Begin elsewhere", ""
        return vehicle.facts.name, moment_words(vehicle.changed)

    # --- where things lie ---

    def _link_rows(self, whole: int) -> list[list[Link]]:
        """Return the links in as many lines as they need, px `whole` wide."""
        rows: list[list[Link]] = [[]]
        for link in self.links:
            wide = sum(one.sizeHint().width() for one in (*rows[-1], link))
            if rows[-1] and wide > whole + 8:
                rows.append([])
            rows[-1].append(link)
        return rows

    def lay_out(self) -> None:
        """Put the controls at the foot, what is told over them."""
        size = self.place.theme.size
        pad, tall, link = round(PAD * size), round((TARGET + 8) * size), round(TARGET * size)
        top, bottom = round(TOP * size), self.height() - link - round(4.0 * size)
        whole = self.width() - 2 * pad + 8
        for i, large in enumerate(self.begin):
            large.setGeometry(pad - 4, top + i * (tall + round(4.0 * size)), whole, tall)
        for row in reversed(self._link_rows(whole)):
            x = pad - 6
            for small in row:
                wide = small.sizeHint().width()
                small.setGeometry(x, bottom, wide, link)
                x += wide
            bottom -= link
        bottom += link
        bottom -= tall - round(3.0 * size)
        look = 0 if self.look.isHidden() else self.look.sizeHint().width()
        self.take.setGeometry(pad - 4, bottom, whole - look - (4 if look else 0), tall)
        self.look.setGeometry(pad - 4 + whole - look, bottom, look, tall)
        self.lay_told(bottom - 2)
