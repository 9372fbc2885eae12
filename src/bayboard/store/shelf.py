"""The shelf of vehicles: the job files of some folders, found by name or note through an index.

The files are the truth.  Whatever is asked is answered from files whose time of change and size are those
of the index; any other file is read anew before.
"""

import os
import stat
import time
from collections.abc import Container, Iterable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

import msgspec

from bayboard.store.found import Facts, Found, asked_for, moment, newest_first, told, words_of
from bayboard.store.header import ENDING
from bayboard.store.shelf_index import Entry, Index, Stamp, is_spelled
from bayboard.store.shelf_reader import Draw, Look, look_at

BATCH = 0.2  # s of reading after which what was read is stored
FRESH = 2_000_000_000  # ns; a file changed so lately may change again within the same tick of its clock
ATTEMPTS = 3  # to have every file in the index, the last of them with an index begun anew
NEVER: Stamp = (-1, -1)
ALONE = ""  # the folder of a vehicle that was asked for by itself


class Shelf:
    """An index and the folders it is asked about.  To be used by one thread."""

    def __init__(self, index: Path, draw: Draw | None = None) -> None:
        self._index = Index(index)
        self._draw = draw

    def look_over(self, folders: Iterable[Path], files: Iterable[Path] = ()) -> Iterator[float]:
        """Bring the index up to what is on the disk, yielding the share that is done, 1.0 last.

        `files` are vehicles anywhere, job files or .json layouts.  A folder that is not there or cannot
        be listed keeps what is known of it.
        """
        there = Listing()
        for folder in folders:
            there.add_folder(folder)
            yield 0.0
        there.add_files(files)
        yield from self._follow(there)

    def find(self, text: str, folders: Iterable[Path], files: Iterable[Path] = ()) -> tuple[Found, ...]:
        """Return the vehicles that have all words of `text` in their name or notes, newest first.

        The folders are looked over before, so that what is returned is what is there.
        """
        there = Listing()
        for folder in folders:
            there.add_folder(folder)
        there.add_files(files)
        every: list[Found] = []
        for attempt in range(ATTEMPTS):
            if attempt == ATTEMPTS - 1:
                self._index.begin_anew()
            for _ in self._follow(there, {found.file for found in every} if attempt else None):
                pass
            every = self._indexed(there)
            if len(every) == len(there.stamps):
                break
        asked = asked_for(text)
        every += there.unnamed
        return newest_first(found for found in every if all(word in found.words for word in asked))

    def known(self, folders: Iterable[Path], files: Iterable[Path] = ()) -> tuple[Found, ...]:
        """Return what the index has, newest first, without a look at the disk."""
        named = filter(is_spelled, map(_name, files))
        alone = (self._index.vehicle(file) for file in named)
        inside = self._index.vehicles([*filter(is_spelled, map(_name, folders))])
        every = {found.file: found for found in (*inside, *alone) if found is not None}
        return newest_first(every.values())

    def picture(self, file: str) -> bytes | None:
        """Return the picture of a vehicle as a PNG, None when there is none."""
        return self._index.picture(file)

    def close(self) -> None:
        """Let the index go."""
        self._index.close()

    # --- how ---

    def _follow(self, there: "Listing", whole: Container[str] | None = None) -> Iterator[float]:
        """Read what is new or changed, or not in `whole` where that is given; forget what is gone."""
        known = self._known(there)
        stale = [
            file
            for file, stamp in there.stamps.items()
            if known.get(file) != stamp or (whole is not None and file not in whole)
        ]
        gone = [file for file in known if file not in there.stamps]
        if gone:
            self._index.forget(gone)
        ready: list[Entry] = []
        stored = time.monotonic()
        for number, file in enumerate(stale, start=1):
            ready.append(self._read(file, there))
            if time.monotonic() - stored > BATCH:
                self._index.put(ready)
                ready, stored = [], time.monotonic()
            yield number / (len(stale) + 1)
        if ready:
            self._index.put(ready)
        yield 1.0

    def _known(self, there: "Listing") -> dict[str, Stamp]:
        known = self._index.stamps(there.folders)
        for file in there.alone:
            stamp = self._index.stamp(file)
            if stamp is not None:
                known[file] = stamp
        return known

    def _read(self, file: str, there: "Listing") -> Entry:
        path, stamp = Path(file), there.stamps[file]
        look = look_at(path, self._draw)
        if look.facts.trouble:
            look = self._with_old(look, file)
        settled = NEVER if look.passing or time.time_ns() - stamp[0] < FRESH else stamp
        found = Found(file, look.changed or moment(stamp[0]), words_of(path, look.facts), told(look.facts))
        return Entry(there.folder_of(file), settled, found, look.picture)

    def _with_old(self, look: Look, file: str) -> Look:
        """Return what is told of a file in trouble, with what was known of it before."""
        old = self._index.vehicle(file)
        if old is None or look.facts.notes:
            return look
        facts = msgspec.structs.replace(old.facts, trouble=look.facts.trouble, hold=None)
        return Look(facts, old.changed, look.picture or self._index.picture(file), look.passing)

    def _indexed(self, there: "Listing") -> list[Found]:
        """Return what the index has of the files that are there: all of them, unless it is damaged."""
        alone = (self._index.vehicle(file) for file in there.alone)
        every = (*self._index.vehicles(there.folders), *(found for found in alone if found is not None))
        return [found for found in every if found.file in there.stamps]


@dataclass
class Listing:
    """What is on the disk: each file with its stamp, the folders that were listed, files by themselves.

    `unnamed` are files whose names are no text: they are listed, and nobody can say more of them.
    """

    stamps: dict[str, Stamp] = field(default_factory=dict)
    folders: list[str] = field(default_factory=list)
    alone: list[str] = field(default_factory=list)
    unnamed: list[Found] = field(default_factory=list)

    def add_folder(self, folder: Path) -> None:
        """Add the job files in a folder; one that cannot be listed is left out."""
        name = _name(folder)
        if name in self.folders or not is_spelled(name):
            return
        try:
            with os.scandir(name) as entries:
                found = dict(self._named(_job_files(entries)))
        except (OSError, ValueError):
            return
        self.folders.append(name)
        self.stamps |= found

    def add_files(self, files: Iterable[Path]) -> None:
        """Add vehicles wherever they are; what is no longer there is left out."""
        for path in files:
            file = _name(path)
            if file in self.stamps or not is_spelled(file):
                continue
            try:
                seen = Path(file).stat()
            except (OSError, ValueError):
                continue
            if stat.S_ISREG(seen.st_mode):
                self.stamps[file] = (seen.st_mtime_ns, seen.st_size)
                self.alone.append(file)

    def _named(self, entries: Iterable[tuple[str, Stamp]]) -> Iterator[tuple[str, Stamp]]:
        """Yield the files whose names are text, and put the others aside."""
        for file, stamp in entries:
            if file.isascii() or is_spelled(file):
                yield file, stamp
            else:
                self.unnamed.append(_unnamed(file, stamp))

    def folder_of(self, file: str) -> str:
        """Return the listed folder that a file lies in, `ALONE` for one that was asked for by itself."""
        folder = str(Path(file).parent)
        return folder if folder in self.folders else ALONE


def _job_files(entries: Iterable[os.DirEntry[str]]) -> Iterator[tuple[str, Stamp]]:
    for entry in entries:
        name = entry.name
        if not name.lower().endswith(ENDING) or name.startswith("."):
            continue
        try:
            seen = entry.stat()
        except OSError:
            continue
        if stat.S_ISREG(seen.st_mode):
            yield entry.path, (seen.st_mtime_ns, seen.st_size)


def _unnamed(file: str, stamp: Stamp) -> Found:
    name = Path(file).stem.encode("utf-8", "replace").decode("utf-8")
    facts = Facts(name=name, trouble="its name holds letters that are no text; give it another name")
    return Found(file, moment(stamp[0]), words_of(Path(name), facts), told(facts))


def _name(path: Path) -> str:
    """Return a path as the index spells it: from the root, links in it left as they are."""
    return str(Path(path).absolute())
