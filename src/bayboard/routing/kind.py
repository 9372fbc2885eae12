"""What a lead carries, told by what it joins."""

from bayboard.model.layout import LEAD_KINDS, Entry, LeadKind, Port, PortKind

_ALIKE: dict[PortKind, LeadKind] = {
    "power": "power",
    "ground": "ground",
    "remote": "remote",
    "data": "data",
}
_PAIRS: tuple[frozenset[PortKind], ...] = (
    frozenset(("signal-out", "signal-in")),
    frozenset(("speaker-out", "speaker-in")),
)
_FROM_ENTRY: dict[PortKind, tuple[LeadKind, ...]] = {
    "signal-in": ("signal",),
    "signal-out": ("signal",),
    "speaker-out": ("speaker",),
    "speaker-in": ("signal", "speaker"),
}


def kind(a: Port | Entry, b: Port | Entry) -> LeadKind | None:
    """Return what a lead between the two carries, None when they may not be joined.

    A lead is signal when either port is signal-in, signal-out or speaker-in: the speaker leads of a
    head unit that feed an amplifier pick up noise like any signal.
    """
    if isinstance(a, Entry):
        if isinstance(b, Entry):
            return next((k for k in LEAD_KINDS if k in a.carries and k in b.carries), None)
        return _at_entry(a, b)
    if isinstance(b, Entry):
        return _at_entry(b, a)
    if a.kind == b.kind:
        return _ALIKE.get(a.kind)
    return "signal" if frozenset((a.kind, b.kind)) in _PAIRS else None


def _at_entry(entry: Entry, port: Port) -> LeadKind | None:
    alike = _ALIKE.get(port.kind)
    if alike is not None:
        return alike if alike in entry.carries else None
    if not any(carried in entry.carries for carried in _FROM_ENTRY[port.kind]):
        return None
    return "speaker" if port.kind == "speaker-out" else "signal"
