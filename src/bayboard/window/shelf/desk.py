"""What the shelf shows: the vehicles that have what is typed, and which of them is chosen."""

from collections import OrderedDict
from collections.abc import Callable
from functools import lru_cache
from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QPixmap

from bayboard.job.shelf import open_shelf, shelf_folder
from bayboard.store.found import Found, chosen
from bayboard.store.shelf import Shelf
from bayboard.store.troubles import Holder
from bayboard.window.last import data_folder, recent
from bayboard.window.shelf.looking import Looking
from bayboard.window.workplace import Workplace

PICTURES = 160  # kept ready; one is 90 kB


@lru_cache(maxsize=8)
def names_of(path: Path) -> frozenset[Path]:
    """Return a path from the root, as it is and with every link in it followed."""
    try:
        return frozenset((path.absolute(), path.resolve()))
    except (OSError, ValueError, RuntimeError):
        return frozenset((path,))


def _own_shelf() -> Shelf:
    return open_shelf(data_folder())


class ShelfDesk(QObject):
    """The vehicles on the shelf, newest first.

    Always true: `current` is the file of one in `shown`, or "" where that is empty.
    """

    changed = Signal()

    def __init__(self, place: Workplace, opened: Callable[[], Shelf] = _own_shelf) -> None:
        super().__init__(place)
        self.place = place
        self.looking = Looking(opened, self)
        self.vehicles: tuple[Found, ...] = ()
        self.shown: tuple[Found, ...] = ()
        self.text = ""
        self.current = ""  # the file of the vehicle that is chosen
        self.share = 0.0
        self._untouched = True  # nobody has chosen since it was opened
        self._pictures: OrderedDict[str, QPixmap | None] = OrderedDict()
        self.looking.seen.connect(self._see)
        self.looking.pictured.connect(self._hang)

    # --- looking ---

    def begin(self) -> None:
        """Look the shelf over: the folder of vehicles and what was open lately."""
        self._untouched, self.share = True, 0.0
        self._pictures.clear()
        self.looking.start((shelf_folder(),), recent())
        self.search("")

    def end(self) -> None:
        """Look no further."""
        self.looking.end()

    def _see(self, vehicles: tuple[Found, ...], share: float) -> None:
        before = {vehicle.file: vehicle for vehicle in self.vehicles}
        for vehicle in vehicles:
            if before.get(vehicle.file) != vehicle:
                self._pictures.pop(vehicle.file, None)
        self.vehicles, self.share = vehicles, share
        self._choose_shown()

    # --- what is shown ---

    def search(self, text: str) -> None:
        """Show the vehicles that have these words."""
        if text != self.text:
            self._untouched = True
        self.text = text
        self._choose_shown()

    def _choose_shown(self) -> None:
        self.shown = chosen(self.text, self.vehicles)
        files = [vehicle.file for vehicle in self.shown]
        if self._untouched or self.current not in files:
            self.current = self._first(files)
        self.changed.emit()

    def _first(self, files: list[str]) -> str:
        """Return what is chosen before anybody chose: the vehicle on the Wall, else the first."""
        here = next((file for file in files if Path(file) in self._here()), "")
        return here if here and not self.text.strip() else (files[0] if files else "")

    def at(self) -> int:
        """Return where the chosen vehicle hangs, -1 when none does."""
        return next((i for i, vehicle in enumerate(self.shown) if vehicle.file == self.current), -1)

    def vehicle(self) -> Found | None:
        """Return the vehicle that is chosen."""
        return self.shown[self.at()] if self.shown else None

    def choose(self, file: str) -> None:
        """Choose one of those that are shown."""
        if any(vehicle.file == file for vehicle in self.shown):
            self.current, self._untouched = file, False
            self.changed.emit()

    def walk(self, by: int) -> None:
        """Choose the vehicle so many places on, as far as there are any."""
        if self.shown:
            self.choose(self.shown[min(max(self.at() + by, 0), len(self.shown) - 1)].file)

    # --- what is known of one ---

    def is_here(self, vehicle: Found) -> bool:
        """Return whether a vehicle is the one on the Wall."""
        return not self.place.first_start and vehicle.path in self._here()

    def _here(self) -> frozenset[Path]:
        """Return the names under which the file of the job on the Wall may hang here."""
        path = self.place.job.path
        return frozenset() if path is None else names_of(path)

    def holder(self, vehicle: Found) -> Holder | None:
        """Return who else has a vehicle open."""
        return None if self.is_here(vehicle) else vehicle.holder

    def picture(self, file: str) -> QPixmap | None:
        """Return a vehicle's picture, None while it has not come or when there is none."""
        if file not in self._pictures:
            self._pictures[file] = None
            self.looking.want(file)
            while len(self._pictures) > PICTURES:
                self._pictures.popitem(last=False)
        self._pictures.move_to_end(file)
        return self._pictures[file]

    def _hang(self, file: str, data: bytes | None) -> None:
        made = QPixmap()
        if data is not None and made.loadFromData(data) and not made.isNull():
            self._pictures[file] = made
            self.changed.emit()
