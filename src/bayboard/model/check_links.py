"""What points at something: a card, a board, the ends of a lead, a screw that was drilled."""

from collections.abc import Iterable

from bayboard.model.layout import Card, Fixing, Gear, Layout, Lead
from bayboard.model.places import label, quoted, step_to
from bayboard.model.refused import Refused

_FEW = 8  # names that a sentence lists
_SHOWS = ("wall", "board", "other")


def check_links(layout: Layout) -> None:
    """Raise `Refused` for the first reference to something that is not there."""
    boards = {board.id for board in layout.boards}
    cards_of = {}
    for gear in layout.gear:
        cards_of[gear.id] = _card(layout, gear)
        _board(f"gear {gear.id}", gear, boards)
    entries = {entry.id for entry in layout.bay.entries}
    for lead in layout.leads:
        _lead(lead, cards_of, entries)
    for fixing in layout.fixings:
        if not boards:
            raise Refused(
                f"fixing {fixing.id}", "there is no board that it could go through", "Add the board first"
            )
        _board(f"fixing {fixing.id}", fixing, boards)
    for hole in layout.drilled_holes:
        _drilled(hole, cards_of)
    _photos(layout)


def _card(layout: Layout, gear: Gear) -> Card:
    card = layout.cards.get(gear.card)
    if card is None:
        what = f"there is no card {quoted(gear.card)}"
        raise Refused(f"gear {gear.id} › card", what, _there_is("cards", layout.cards))
    return card


def _board(place: str, thing: Gear | Fixing, boards: set[str]) -> None:
    if thing.board is not None and thing.board not in boards:
        what = f"there is no board {quoted(thing.board)}"
        raise Refused(step_to(place, "board"), what, _there_is("boards", sorted(boards)))


def _lead(lead: Lead, cards_of: dict[str, Card], entries: set[str]) -> None:
    for member, end in (("from", lead.from_), ("to", lead.to)):
        _end(f"lead {lead.id} › {member}", end, cards_of, entries)
    if lead.from_ == lead.to:
        raise Refused(f"lead {lead.id}", f"both ends are at {lead.to}", "Take the other end somewhere else")


def _end(place: str, end: str, cards_of: dict[str, Card], entries: set[str]) -> None:
    gear, dot, port = end.partition(".")
    if not dot:
        if end not in entries:
            raise Refused(place, f"there is no entry {quoted(end)}", "Write GEAR.PORT or an entry's id")
        return
    if gear not in cards_of:
        raise Refused(place, f"there is no gear {quoted(gear)}", "Write GEAR.PORT or an entry's id")
    ports = [known.id for known in cards_of[gear].ports]
    if port not in ports:
        raise Refused(place, f"gear {gear} has no port {quoted(port)}", _there_is("ports", ports))


def _drilled(hole: str, cards_of: dict[str, Card]) -> None:
    place = f"drilled_holes › {label(hole)}"
    gear, mark, number = hole.partition("#")
    if not mark or not number.isdecimal() or not number.isascii():
        raise Refused(place, "this names no screw", "Write GEAR#n, the screws of its card counted from 1")
    if gear not in cards_of:
        raise Refused(place, f"there is no gear {quoted(gear)}", "Write GEAR#n")
    count = len(cards_of[gear].screws)
    if str(int(number)) != number or not 1 <= int(number) <= count:
        what = f"gear {gear} has no screw {label(number)}"
        raise Refused(place, what, f"Its card has {count}, counted from 1")


def _photos(layout: Layout) -> None:
    for photo in layout.photos:
        place = f"photo {photo.id} › shows"
        kind, colon, card = photo.shows.partition(":")
        if not colon:
            if photo.shows not in _SHOWS:
                raise Refused(
                    place,
                    f"{quoted(photo.shows)} is not what a photo shows",
                    "Write wall, board, card:CARD or other",
                )
        elif kind != "card":
            raise Refused(place, f"{quoted(photo.shows)} is not what a photo shows", "Write card:CARD")
        elif card not in layout.cards:
            raise Refused(place, f"there is no card {quoted(card)}", _there_is("cards", layout.cards))


def _there_is(kind: str, names: Iterable[str]) -> str:
    known = list(names)
    if not known:
        return f"There are no {kind} yet"
    more = ", …" if len(known) > _FEW else ""
    return f"The {kind} are {', '.join(label(name) for name in known[:_FEW])}{more}"
