"""The words of Kept: cards on the line, titles, what going back means."""

from collections.abc import Sequence
from datetime import tzinfo
from typing import Literal

from bayboard.model.layout import Layout
from bayboard.store.records import PrintLine, Revision
from bayboard.window.when import moment_words

Pick = int | Literal["draft"]  # a revision by its number, or what is worked on
DRAFT: Literal["draft"] = "draft"
EMPTY = "Press K to keep this one."
NOT_KEPT = "not kept yet"
CHOOSE = "Click sets then; Shift and click, or the right button, sets now."
ONLY_LOOKED_AT = "This job is only looked at, so there is no going back in it."
PLAIN_FILE = "A .json holds no revisions: K makes a job file of it."
SHEETS = {"drill": "drill template", "cards": "stand-ins"}


def name_of(pick: Pick) -> str:
    """Return "revision 4" or "the draft"."""
    return "the draft" if pick == DRAFT else f"revision {pick}"


def capital(words: str) -> str:
    """Return the words with a capital to begin with."""
    return f"{words[:1].upper()}{words[1:]}"


def line_phrase(count: int) -> str:
    """Return what stands beside "Kept"."""
    if not count:
        return "no revision yet"
    return f"{count} {'revisions' if count > 1 else 'revision'} and the draft, newest on the right"


def drilled_count(layout: Layout) -> int:
    """Return how many holes of a layout were drilled: fixings in board or metal, screws, whole stand-ins."""
    fixings = sum(f.drilled is not None or f.metal is not None for f in layout.fixings)
    listed = {hole.partition("#")[0] for hole in layout.drilled_holes}
    whole = [g for g in layout.gear if g.drilled is not None and g.id not in listed]
    return fixings + len(layout.drilled_holes) + sum(len(layout.cards[g.card].screws) for g in whole)


def foot_words(printed: bool, drilled: int) -> str:
    """Return the last line of a revision's card: "printed", "2 drilled" or both."""
    told = ["printed"] if printed else []
    return ", ".join([*told, f"{drilled} drilled"] if drilled else told)


def draft_words(kept_as: int | None) -> str:
    """Return the last line of the draft's card."""
    return NOT_KEPT if kept_as is None else f"as revision {kept_as}"


def card_sentence(pick: Pick, told: Sequence[str], chosen: str) -> str:
    """Return what a screen reader is told of a card: "revision 4, 4 Nov, shown to owner, printed, then"."""
    return ", ".join(word for word in (name_of(pick), *told, chosen) if word)


# --- titles ---


def wall_phrases(then: Pick | None, now: Pick) -> tuple[str, ...]:
    """Return what the Wall's title line says, in words of falling length."""
    if then is None:
        return (f"{name_of(now)}; nothing else is kept yet", name_of(now))
    return (f"{name_of(now)}; {name_of(then)} shows as chalk", f"{name_of(then)} as chalk")


def pair_words(then: Pick | None, now: Pick) -> str:
    """Return "revision 4 to the draft"."""
    return name_of(now) if then is None else f"{name_of(then)} to {name_of(now)}"


def strip_words(then: Pick | None, now: Pick) -> str:
    """Return what the strip says of this mode."""
    pair = name_of(now) if then is None else f"{name_of(now)} beside {name_of(then)}"
    return f"{pair} · Esc goes back to work"


def sounds(then: Pick | None, now: Pick, words: Sequence[str]) -> str:
    """Return what is said aloud when other cards are chosen."""
    return f"{pair_words(then, now)}: {words[0] if len(words) == 1 else f'{len(words)} lines'}"


# --- the card at the right ---


def print_words(line: PrintLine, zone: tzinfo | None = None) -> str:
    """Return "Printed 5 Nov 2026, 10:12: drill template and stand-ins, 21 pages of letter, LAMP RIVET"."""
    sheets = " and ".join(SHEETS.get(kind, kind) for kind in line.sheets)
    pages = f"{line.pages} {'pages' if line.pages != 1 else 'page'} of {line.paper}"
    face = ", from the back" if line.face == "back" else ""
    code = f", {line.words}" if line.words else ""
    return f"Printed {moment_words(line.at, zone)}: {sheets or 'sheets'}, {pages}{face}{code}."


def parent_words(revision: Revision, before: int | None) -> str:
    """Return what a revision went on from, where that is not the one kept just before it."""
    if revision.parent is None or revision.parent == before:
        return ""
    return f"Goes on from revision {revision.parent}."


def back_words(kept_as: int | None, coming: int, drilled: bool) -> str:
    """Return what becomes of the draft on going back; `coming` is the next number."""
    if kept_as is None:
        told = f"Going back keeps today's draft as revision {coming}, so nothing is lost."
    else:
        told = f"The draft is kept already as revision {kept_as}, so nothing is lost."
    return f"{told} What is drilled stays drilled." if drilled else told


def went_back(number: int, kept: int | None) -> str:
    """Return the line in the strip after going back."""
    before = f" The draft before is kept as revision {kept}." if kept is not None else ""
    return f"Back at revision {number}.{before} Ctrl Z takes it back."


def same_as_draft(number: int) -> str:
    """Return why there is no button: the draft is that revision."""
    return f"The draft is revision {number} as it was kept: go on from here."


def file_name(stem: str, number: int) -> str:
    """Return the name that a revision's own file is given."""
    return f"{stem}-revision-{number}.json"
