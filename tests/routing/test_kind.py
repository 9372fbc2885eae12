"""What a lead carries, and which ends may not be joined."""

import pytest

from bayboard.model.layout import Entry, Port
from bayboard.routing.kind import kind


def _port(what):
    return Port(id="P", kind=what, at=(0, 0), z=0, towards=0, plug=10)


def _entry(*carries):
    return Entry(id="E", name="e", at=(0, 0), carries=carries, run=0)


@pytest.mark.parametrize(
    ("a", "b", "carries"),
    [
        ("power", "power", "power"),
        ("ground", "ground", "ground"),
        ("remote", "remote", "remote"),
        ("data", "data", "data"),
        ("signal-out", "signal-in", "signal"),
        ("speaker-out", "speaker-in", "signal"),
        ("signal-in", "signal-in", None),
        ("signal-out", "signal-out", None),
        ("speaker-out", "speaker-out", None),
        ("speaker-in", "speaker-in", None),
        ("power", "ground", None),
        ("power", "remote", None),
        ("signal-out", "speaker-in", None),
        ("speaker-out", "signal-in", None),
    ],
)
def test_two_ports_tell_the_kind_either_way_round(a, b, carries):
    assert kind(_port(a), _port(b)) == carries
    assert kind(_port(b), _port(a)) == carries


@pytest.mark.parametrize(
    ("port", "entry", "carries"),
    [
        ("power", ("power",), "power"),
        ("power", ("ground",), None),
        ("signal-in", ("signal",), "signal"),
        ("signal-out", ("signal",), "signal"),
        ("speaker-out", ("speaker",), "speaker"),
        ("speaker-out", ("signal",), None),
        ("speaker-in", ("speaker",), "signal"),
        ("speaker-in", ("signal",), "signal"),
        ("speaker-in", ("power",), None),
        ("data", ("power", "data"), "data"),
        ("remote", (), None),
    ],
)
def test_an_entry_feeds_what_it_carries(port, entry, carries):
    assert kind(_port(port), _entry(*entry)) == carries
    assert kind(_entry(*entry), _port(port)) == carries


def test_two_entries_carry_the_first_kind_in_the_contracts_order_that_both_have():
    assert kind(_entry("data", "ground"), _entry("ground", "data", "power")) == "ground"
    assert kind(_entry("data"), _entry("power")) is None
