"""Call a vehicle something else."""

from dataclasses import dataclass

from msgspec.structs import replace

from bayboard.model.check import check
from bayboard.model.layout import Layout
from bayboard.model.refused import Refused


@dataclass(frozen=True, slots=True)
class NameVehicle:
    """Give the vehicle this name; spaces round it and line ends in it are not part of it."""

    name: str

    def apply(self, layout: Layout) -> Layout:
        """Return the layout with the vehicle named; raise `Refused` for a name that is none."""
        name = " ".join(self.name.split())
        if not name:
            raise Refused("vehicle › name", "a vehicle needs a name", "Type what you call it")
        if name == layout.vehicle.name:
            return layout
        after = replace(layout, vehicle=replace(layout.vehicle, name=name))
        check(after)
        return after

    def label(self, _layout: Layout) -> str:
        """Return "Name the vehicle Tarn panel van"."""
        return f"Name the vehicle {' '.join(self.name.split())}"
