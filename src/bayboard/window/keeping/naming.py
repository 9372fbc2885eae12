"""What a vehicle is called: asked in a line, one undo step."""

from PySide6.QtCore import QObject

from bayboard.edits.name_vehicle import NameVehicle
from bayboard.window.keeping import words
from bayboard.window.keeping.note_line import NameLine
from bayboard.window.workplace import Workplace


class Naming(QObject):
    """Asks for the name of the vehicle on the Wall and gives it."""

    def __init__(self, place: Workplace, line: NameLine) -> None:
        super().__init__(line)
        self.place = place
        self.line = line
        line.kept.connect(self._name)
        place.opened.connect(line.close_line)

    def ask(self) -> None:
        """Ask, unless there is nothing to be named."""
        if self.place.first_start:
            self.place.said.emit("Nothing is open that could be named.")
        elif self.place.job.looking:
            self.place.said.emit(words.ONLY_LOOKED_AT)
        else:
            self.line.ask(self.place.layout.vehicle.name)

    def _name(self, text: str) -> None:
        before = self.place.layout
        if self.place.do(NameVehicle(text)) and self.place.layout is not before:
            self.place.said.emit(f"This is {self.place.layout.vehicle.name} from now on.")
