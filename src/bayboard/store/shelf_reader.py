"""One vehicle's file read for the shelf: quickly, changing nothing, believing nothing.

A file that cannot be read gives its name and the reason; it is listed all the same.
"""

import time
from collections.abc import Callable
from dataclasses import replace
from math import isfinite
from pathlib import Path

import msgspec

from bayboard.model.layout import Layout
from bayboard.model.read import read
from bayboard.model.refused import Refused
from bayboard.store import drafts, metas, newer, schema
from bayboard.store.base import Base, connected
from bayboard.store.files import open_layout
from bayboard.store.found import Facts, RevisionNote
from bayboard.store.header import ENDING, has_journal, is_job_file, read_header
from bayboard.store.holder import Hold, held_by
from bayboard.store.revisions import LONGEST_NOTE, tidy
from bayboard.store.sealed import is_time
from bayboard.store.troubles import Damaged, Newer

LONGEST = 1.0  # s that one file may take
PATIENCE = 250  # ms that a file in use is waited for
STEPS = 20_000  # of SQLite between two looks at the clock
MOST_NOTES = 500  # of the newest revisions
LONGEST_NAME = 200  # letters
LARGEST_PICTURE = 200_000  # bytes
WIDEST = 1_000  # px of a picture
_PNG = b"\x89PNG\r\n\x1a\n"

Draw = Callable[[Layout], bytes]


class Look(msgspec.Struct, frozen=True):
    """What was read of a file; `changed`: when the draft did (UTC), "" where the file does not say.

    `passing`: the trouble may go without a change of the file, so it is worth another look.
    """

    facts: Facts
    changed: str = ""
    picture: bytes | None = None
    passing: bool = False


class _Vehicle(msgspec.Struct):
    name: str = ""
    note: str = ""


class _Named(msgspec.Struct):
    vehicle: _Vehicle


def look_at(path: Path, draw: Draw | None = None) -> Look:
    """Return what a vehicle's file says; `draw` makes the picture where the file has none."""
    start = time.monotonic()
    try:
        if path.suffix.lower() == ENDING or is_job_file(path):
            return _job_file(path, draw)
        return _layout(path, draw)
    except Refused as refused:
        in_it = isinstance(refused, Damaged) or time.monotonic() - start > LONGEST
        return Look(Facts(name=path.stem, trouble=refused.what), passing=not in_it)


def _layout(path: Path, draw: Draw | None) -> Look:
    layout = open_layout(path)
    facts = Facts(
        name=_shown(layout.vehicle.name) or path.stem, note=tidy(layout.vehicle.note[:LONGEST_NOTE])
    )
    return Look(facts, "", draw(layout) if draw else None)


def _job_file(path: Path, draw: Draw | None) -> Look:
    header = read_header(path)
    if header.form > schema.FORM:
        return _newer(path, newer.refused(path, path))
    has_journal(path)  # one that is not Bayboard's is refused; one that is tells when it is read
    if header.logged:
        raise Refused("", "another program left it in a form of its own; opening it sets that right")
    base = connected(path, look=True)
    try:
        return _inside(path, base, draw)
    finally:
        base.close()


def _inside(path: Path, base: Base, draw: Draw | None) -> Look:
    end = time.monotonic() + LONGEST
    base.do(f"PRAGMA busy_timeout = {PATIENCE}")
    base.conn.set_progress_handler(lambda: time.monotonic() > end, STEPS)
    found = base.all("SELECT type, name, tbl_name, sql FROM sqlite_master ORDER BY name, type, sql")
    if tuple(found) != schema.expected():
        raise base.damaged("it holds something that Bayboard does not write")
    notes = _notes(base)
    told = Facts(
        name=_shown(metas.read_value(base, metas.VEHICLE)) or path.stem,
        revisions=_count(base),
        notes=notes,
        printed=_printed(base),
        hold=_hold(base),
    )
    try:
        row = drafts.read_row(base)
    except Refused as refused:
        return Look(msgspec.structs.replace(told, trouble=refused.what), _kept(notes), _newest_picture(base))
    return Look(_with_vehicle(told, row.text), row.changed, _picture(base, row, draw))


def _with_vehicle(facts: Facts, text: bytes) -> Facts:
    """Return the facts with what the draft says of its vehicle."""
    try:
        vehicle = msgspec.json.decode(text, type=_Named).vehicle
    except (msgspec.MsgspecError, RecursionError):
        return msgspec.structs.replace(facts, trouble="the draft in it is not a layout")
    return msgspec.structs.replace(
        facts, name=_shown(vehicle.name) or facts.name, note=tidy(vehicle.note[:LONGEST_NOTE])
    )


def _notes(base: Base) -> tuple[RevisionNote, ...]:
    told = f"number, kept, substr(note, 1, {LONGEST_NOTE})"
    rows = base.all(f"SELECT {told} FROM revision ORDER BY number DESC LIMIT {MOST_NOTES}")
    return tuple(
        RevisionNote(number=number, kept=kept if is_time(kept) else "", note=tidy(note))
        for number, kept, note in rows
        if isinstance(number, int) and isinstance(note, str)
    )


def _hold(base: Base) -> Hold | None:
    hold = held_by(base)
    return hold if hold is None or isfinite(hold.started) else replace(hold, started=0.0)


def _kept(notes: tuple[RevisionNote, ...]) -> str:
    return notes[0].kept if notes else ""


def _count(base: Base) -> int:
    row = base.one("SELECT count(*) FROM revision")
    return int(row[0]) if row else 0


def _printed(base: Base) -> str:
    row = base.one("SELECT at FROM print ORDER BY number DESC LIMIT 1")
    return str(row[0]) if row and is_time(row[0]) else ""


def _picture(base: Base, row: drafts.DraftRow, draw: Draw | None) -> bytes | None:
    """Return the draft's picture, else the newest revision's, else one made of the draft."""
    for found in (row.picture, _newest_picture(base)):
        if is_small_png(found):
            return found
    try:
        return draw(read(row.text)) if draw else None
    except Refused:
        return None


def _newest_picture(base: Base) -> bytes | None:
    row = base.one("SELECT picture FROM revision ORDER BY number DESC LIMIT 1")
    return row[0] if row and is_small_png(row[0]) else None


def _newer(path: Path, refused: Newer) -> Look:
    """Return what a file of a newer form shows: its notes and its last picture."""
    kept = sorted(refused.kept, key=lambda one: one.number, reverse=True)[:MOST_NOTES]
    notes = tuple(RevisionNote(number=one.number, kept=one.kept, note=one.note) for one in kept)
    pictures = (one.picture for one in kept if is_small_png(one.picture))
    facts = Facts(name=path.stem, revisions=len(refused.kept), notes=notes, trouble=refused.what)
    return Look(facts, _kept(notes), next(pictures, None))


def _shown(name: object) -> str:
    return tidy(name[:LONGEST_NAME]) if isinstance(name, str) else ""


def is_small_png(data: object) -> bool:
    """Return whether a value from a file is a PNG of a size that a card shows, by its head."""
    if not isinstance(data, bytes) or len(data) > LARGEST_PICTURE or not data.startswith(_PNG):
        return False
    wide, high = (int.from_bytes(data[at : at + 4], "big") for at in (16, 20))
    return data[12:16] == b"IHDR" and 0 < wide <= WIDEST and 0 < high <= WIDEST
