"""What differs between two layouts, a row for each thing, in plain words."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from bayboard.job.member_words import limit_change, member_change
from bayboard.model.compare import Changed, Comparison, Moved
from bayboard.model.drilled import is_drilled
from bayboard.model.layout import Layout, Point, Units
from bayboard.units.figure import show_angle
from bayboard.units.length import show_length

if TYPE_CHECKING:  # what changed is told without asking the rules
    from bayboard.rules.check import Verdict

NOTHING = "Nothing changed."
LOOKING = "looking …"
MOST = 4  # ids or changes told by name; more are counted
HOLES, FINDINGS = "Holes", "Findings"
_SECTIONS = {"bay.wall": "Wall", "let_be": "Let be", "x": "Extras"}


@dataclass(frozen=True, slots=True)
class Row:
    """A line of What changed.  `ids`: what of the Wall it is about; `pencil`: the label is a number."""

    label: str
    words: str
    ids: tuple[str, ...] = ()
    pencil: bool = True


def way_words(by: Point, units: Units) -> str:
    """Return "right 1 3/4, up 4 1/8 in"; what is too small to be shown is told as less than the finest."""
    parts = [
        (way if far > 0 else back, show_length(abs(far), units))
        for far, way, back in ((by[0], "right", "left"), (by[1], "up", "down"))
        if far
    ]
    zero = show_length(0.0, units)
    shown = [(word, far) for word, far in parts if far != zero]
    if not shown:
        return f"{parts[0][0]} less than {'1/64 in' if units == 'in' else '0.1 mm'}" if parts else "nowhere"
    end = f" {units}"
    told = [f"{word} {far.removesuffix(end)}" for word, far in shown]
    return f"{', '.join(told)}{end}"


def turn_words(turned: float) -> str:
    """Return "turned 90° left" for a turn counter-clockwise."""
    side = "" if turned == 180.0 else " left" if turned > 0 else " right"
    return f"turned {show_angle(abs(turned))}{side}"


def moved_words(moved: Moved, units: Units) -> str:
    """Return "right 1 3/4 in, turned 90° left"."""
    parts = [way_words(moved.by, units)] if any(moved.by) else []
    return ", ".join([*parts, turn_words(moved.turned)] if moved.turned else parts)


def listed(names: Sequence[str]) -> str:
    """Return "H2", "H2 and H3", "H2, H3 and H4"."""
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


class Rows:
    """The rows of one comparison, in the new layout's order, what went after what is there."""

    def __init__(self, old: Layout, new: Layout, found: Comparison) -> None:
        self.old, self.new, self.found = old, new, found
        self.units: Units = new.units
        self.moved = {item.id: item for item in found.moved}
        self.added = _but(found.added, new.cards.keys() - old.cards.keys())
        self.removed = _but(found.removed, old.cards.keys() - new.cards.keys())
        self.changes: dict[str, list[Changed]] = {}
        self.card_changes: dict[str, list[Changed]] = {}
        for item in found.changed:
            changes = self.card_changes if item.of == "cards" else self.changes
            changes.setdefault(item.id or "", []).append(item)

    def all(self) -> tuple[Row, ...]:
        """Return the rows of things, then of holes, boards, bay and settings; findings are told elsewhere."""
        if self.found.same:
            return (Row("", NOTHING, pencil=False),)
        rows = [*self._gear(), *self._holes(), *self._leads(), *self._cards(), *self._others()]
        return (*rows, *self._settings())

    # --- stand-ins ---

    def _gear(self) -> Iterator[Row]:
        known = {gear.id for gear in self.new.gear}
        for gear in (*self.new.gear, *(g for g in self.old.gear if g.id not in known)):
            words = self.gear_words(gear.id)
            if words:
                yield Row(gear.id, "; ".join(words), (gear.id,))

    def gear_words(self, name: str) -> list[str]:
        """Return what is to be told of a stand-in, the most telling first."""
        here = next((gear for gear in self.new.gear if gear.id == name), None)
        if here is not None and name in self.added:
            return ["is new, on the bench" if here.at is None else "is new"]
        if here is None and name in self.removed:
            return ["went"]
        changes = self.changes.get(name, [])
        told = [words for item in changes if item.member == "at" for words in [_bench_words(item)]]
        moved = self.moved.get(name)
        if moved is not None:
            told.insert(0, moved_words(moved, self.units))
            told[0] = f"moved {told[0]}" if any(moved.by) else told[0]
            if is_drilled(self.new, name):
                told.append("its holes are drilled already")
        told += [self._gear_change(item) for item in changes if item.member != "at"]
        return told

    def _gear_change(self, item: Changed) -> str:
        if item.member == "taped":
            return "taped down" if item.after else "its tape lifted"
        if item.member == "drilled":
            return "its holes were drilled" if item.after else "no longer counts as drilled"
        if item.member == "card":
            names = self.old.cards[item.before].name, self.new.cards[item.after].name
            return f"is a {names[1]}, was a {names[0]}"
        return member_change(item.member, item.before, item.after, self.units)

    # --- holes ---

    def _holes(self) -> Iterator[Row]:
        here = {fixing.id: fixing for fixing in self.new.fixings}
        then = {fixing.id for fixing in self.old.fixings}
        moved = [name for name in here if name in self.moved]
        parts = [
            _each(moved, "moved"),
            _each([name for name in here if name in self.added], "is new", "are new"),
            _each([fixing.id for fixing in self.old.fixings if fixing.id in self.removed], "went"),
            _each(self._drilled_since(), "was drilled since", "were drilled since"),
            _each(
                [name for name in moved if is_drilled(self.new, name)], "is drilled and moved all the same"
            ),
            _each(self._drilled_before(here), "is not drilled"),
            *self._fixing_changes(here),
            self._drilled_and_still(here, moved),
        ]
        words = "; ".join(part for part in parts if part)
        about = tuple(
            name for name in here if name in self.moved or name in self.added or name in self.changes
        )
        gone = tuple(name for name in sorted(then) if name in self.removed)
        if words:
            yield Row(HOLES, words, (*about, *gone), pencil=False)

    def _drilled_since(self) -> list[str]:
        """Return the fixings and screws that are drilled now and were not then."""
        fixings = [
            name
            for name, items in self.changes.items()
            for item in items
            if item.member == "drilled" and item.after and any(f.id == name for f in self.new.fixings)
        ]
        screws = [
            item.member.partition(".")[2]
            for item in self.changes.get("", [])
            if item.member.startswith("drilled_holes.") and item.after
        ]
        return [*fixings, *screws]

    def _drilled_before(self, here: Iterable[str]) -> list[str]:
        """Return the fixings that were drilled then and are not now."""
        changes = ((name, item) for name in here for item in self.changes.get(name, []))
        return [name for name, item in changes if item.member == "drilled" and not item.after]

    def _fixing_changes(self, here: Iterable[str]) -> Iterator[str]:
        for name in here:
            for item in self.changes.get(name, []):
                if item.member == "taped":
                    yield f"{name} {'taped' if item.after else 'untaped'}"
                elif item.member == "metal":
                    yield f"{name} was drilled in the metal" if item.after else f"{name} is not in the metal"
                elif item.member != "drilled":
                    yield f"{name}: {member_change(item.member, item.before, item.after, self.units)}"

    def _drilled_and_still(self, here: Iterable[str], moved: Sequence[str]) -> str:
        still = [name for name in here if name not in moved and is_drilled(self.new, name)]
        if not still:
            return ""
        told = {name for name in still for item in self.changes.get(name, []) if item.after}
        if not moved and told.issuperset(still):
            return ""
        are = "is" if len(still) == 1 else "are"
        return (
            f"{len(still)} {are} drilled and did not" if moved else f"{len(still)} {are} drilled, none moved"
        )

    # --- leads, cards, boards, bay, settings ---

    def _leads(self) -> Iterator[Row]:
        yield from self._things([lead.id for lead in self.old.leads], [lead.id for lead in self.new.leads])

    def _cards(self) -> Iterator[Row]:
        for name in dict.fromkeys((*self.new.cards, *self.old.cards)):
            came, went = name not in self.old.cards, name not in self.new.cards
            told = _changed_words(self.card_changes.get(name, []), self.units)
            words = "is a new card" if came else "card went" if went else told
            card = self.new.cards.get(name) or self.old.cards[name]
            about = tuple(gear.id for gear in self.new.gear if gear.card == name and gear.at is not None)
            if words:
                yield Row(card.name, words, about, pencil=False)

    def _others(self) -> Iterator[Row]:
        boards = [_board_ids(layout) for layout in (self.old, self.new)]
        yield from self._things(*boards)
        yield from self._things(*[_bay_ids(layout) for layout in (self.old, self.new)])
        yield from self._things(*[[photo.id for photo in layout.photos] for layout in (self.old, self.new)])

    def _things(self, old: Sequence[str], new: Sequence[str]) -> Iterator[Row]:
        for name in dict.fromkeys((*new, *old)):
            words = "is new" if name not in old else "went" if name not in new else self._thing_words(name)
            if words:
                yield Row(name, words, (name,))

    def _thing_words(self, name: str) -> str:
        moved = self.moved.get(name)
        way = "" if moved is None else f"moved {moved_words(moved, self.units)}"
        told = _changed_words(self.changes.get(name, []), self.units)
        return "; ".join(part for part in (way, told) if part)

    def _settings(self) -> Iterator[Row]:
        told: dict[str, list[str]] = {}
        for item in self.changes.get("", []):
            head, _, member = item.member.partition(".")
            if head == "drilled_holes":
                continue
            label, words = self._setting(head, member, item)
            told.setdefault(label, []).append(words)
        for label, lines in told.items():
            yield Row(label, "; ".join(dict.fromkeys(lines)), pencil=False)

    def _setting(self, head: str, member: str, item: Changed) -> tuple[str, str]:
        """Return the label and the words of a change of what has no id."""
        last = member.rpartition(".")[2]
        if head in ("vehicle", "bay") and member != "wall" and last:
            words = member_change(last, item.before, item.after, self.units)
        else:
            words = self._other(head, member, item)
        return _SECTIONS.get(f"{head}.{member}") or _SECTIONS.get(head, head.capitalize()), words

    def _other(self, head: str, member: str, item: Changed) -> str:
        if head == "limits":
            return limit_change(member, item.before, item.after, self.units)
        if head == "let_be":
            counts = [len(v or ()) for v in (item.before, item.after)]
            return f"{counts[1]} finding{'s' * (counts[1] != 1)} let be, {counts[0]} then"
        if head == "units":
            return f"{item.after}, {item.before} then"
        if head == "x":
            return "what other programs keep here changed"
        return "outline changed" if member == "wall" else "in another order"


def _but(names: Iterable[str], cards: Iterable[str]) -> frozenset[str]:
    """Return the names without the cards among them: a card may have the id of a piece of gear."""
    told = Counter(names)
    told.subtract(cards)
    return frozenset(+told)


def _changed_words(items: Sequence[Changed], units: Units) -> str:
    """Return "changed: height 60 mm, was 50 mm; screws"; "" where nothing is."""
    words = (member_change(item.member, item.before, item.after, units) for item in items[:MOST])
    told = [word.removesuffix(" changed") for word in words]
    more = [f"and {len(items) - MOST} more"] if len(items) > MOST else []
    return f"changed: {'; '.join([*told, *more])}" if told else ""


def _bench_words(item: Changed) -> str:
    return "back to the bench" if item.after is None else "came up from the bench"


def _each(names: Sequence[str], one: str, more: str = "") -> str:
    """Return "H2 and H3 moved" with the verb that fits, counted where there are many; "" for none."""
    if not names:
        return ""
    told = listed(names) if len(names) <= MOST else f"{len(names)} of them"
    verb = one if len(names) == 1 else more or one.replace("is ", "are ", 1)
    return f"{told} {verb}"


def _board_ids(layout: Layout) -> list[str]:
    return [name for board in layout.boards for name in (board.id, *(cut.id for cut in board.cutouts))]


def _bay_ids(layout: Layout) -> list[str]:
    bay = layout.bay
    kinds = (bay.landings, bay.stays, bay.linings, bay.vents, bay.no_drill, bay.seats, bay.entries)
    return [item.id for kind in kinds for item in kind]


def findings_words(then: "Verdict | None", now: "Verdict | None") -> str:
    """Return "1 should then, none now; 9 could not look"."""
    if then is None or now is None:
        return LOOKING
    was, is_ = _counted(then), _counted(now)
    comma = ";" if "," in was + is_ else ","
    told = f"{is_}, as then" if was == is_ else f"{was} then{comma} {is_} now"
    blind, before = now.counts["unchecked"], then.counts["unchecked"]
    if not blind and not before:
        return told
    if blind == before:
        return f"{told}; {blind} could not look"
    return f"{told}; {blind or 'none'} could not look, {before or 'none'} then"


def _counted(verdict: "Verdict") -> str:
    from bayboard.rules.finding import SEVERITIES  # noqa: PLC0415

    counts = verdict.counts
    words = [
        f"{counts[s]} {s}{'s' if s == 'note' and counts[s] > 1 else ''}" for s in SEVERITIES if counts[s]
    ]
    return ", ".join(words) or "none"
