"""What naming a vehicle refuses and leaves alone."""

import pytest
from tests.edits.test_laws import start

from bayboard.edits.name_vehicle import NameVehicle
from bayboard.model.refused import Refused


@pytest.mark.parametrize("name", ["", "  ", "\n"])
def test_a_vehicle_needs_a_name(name):
    with pytest.raises(Refused, match="a vehicle needs a name"):
        NameVehicle(name).apply(start())


def test_a_name_that_no_file_would_take_is_refused():
    with pytest.raises(Refused):
        NameVehicle("a" * 201).apply(start())


def test_the_same_name_is_no_change():
    layout = start()
    assert NameVehicle(f" {layout.vehicle.name} ").apply(layout) is layout


def test_the_note_and_the_steering_side_stay():
    layout = start()
    named = NameVehicle("Tarn panel van").apply(layout)
    assert (named.vehicle.note, named.vehicle.steering) == (layout.vehicle.note, layout.vehicle.steering)
