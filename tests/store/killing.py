"""Kill a writing child at a random moment and hold its file to what it had confirmed."""

import shutil
import struct
import subprocess
import sys
import time
from dataclasses import dataclass
from pathlib import Path
from random import Random

from tests.store.acts import copy_of, walked
from tests.store.plain_file import look

from bayboard.store.job_file import open_job_file

WRITER = Path(__file__).with_name("writer.py")
MAGIC = bytes.fromhex("d9d505f920a163d7")  # of a journal that will be rolled back: SQLite's file format, 3
WHOLE_WALK = 70  # acts after which a file has grown enough and another is begun
PASSED = (0, 1, 1, 2, 3, 5, 8, 12)  # acts that a child may end before the one it is killed in
TORN = 0.5  # of the journals to roll back find the file as after a power cut
SECTOR = 512  # bytes that a disk writes whole
AIMED = 0.4  # of the kills wait until the journal is complete, the rest fall at any moment


@dataclass(frozen=True, slots=True)
class Death:
    """One kill: the act that was under way, the state of its transaction, and what is wrong afterwards."""

    kind: str
    begun: bool  # a journal that is not empty lay beside the file
    hot: bool  # and it was complete: pages of the file may have been overwritten already
    torn: bool  # as by a failing supply, sectors of those pages were mixed from old, new and noise
    landed: bool  # what was under way is in the file
    wrong: tuple[str, ...]


class Victims:
    """Kills one child after the other, each going on with the file that the last one left."""

    def __init__(self, folder, seed):
        self.folder, self.dice = folder, Random(seed)
        self.walk, self.done = 0, -1
        self.seconds = {}

    @property
    def path(self):
        """Return the file under attack."""
        return self.folder / f"walk-{self.walk}.bay"

    def kill(self):
        """Start a child, kill it, hold what it left to what it said; return its death."""
        modes = [word for word in ("slow", "spill") if self.dice.random() < 0.4]
        words = [sys.executable, str(WRITER), str(self.path), str(self.walk), str(self.done), *modes]
        with subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as child:
            told = self._watched(child, modes)
            child.kill()
            told += child.stdout.read().splitlines()  # what was said before it died counts
            complaint = child.stderr.read()
        assert not complaint, complaint
        death = self._examined(*understood(told, self.done))
        if self.done >= WHOLE_WALK:
            self.path.unlink()
            shutil.rmtree(copy_of(self.path).parent)
            self.walk, self.done = self.walk + 1, -1
        return death

    def _watched(self, child, modes):
        """Let some acts pass and a random part of the next; return the lines so far."""
        told, left = (
            [],
            self.dice.choice(PASSED) if self.done >= 0 else 0,
        )  # a file in the making is killed, too
        while line := child.stdout.readline():
            told.append(line.strip())
            word, *rest = line.split()
            if word == "end":
                kind = told[-2].split()[1]
                self.seconds[kind, *modes] = float(rest[1])
                left -= 1
            elif left <= 0:
                self._moment(self.seconds.get((rest[0], *modes), 0.02))
                break
        return told

    def _moment(self, usual):
        """Wait for a random moment of an act that usually takes so many seconds."""
        if self.dice.random() < AIMED:
            end = time.perf_counter() + 2 * usual
            while not journal(self.path)[1] and time.perf_counter() < end:
                time.sleep(0.0001)
            time.sleep(self.dice.uniform(0, 0.2 * usual))
        else:
            time.sleep(self.dice.uniform(0, 1.1 * usual))

    def _examined(self, kind, confirmed, under_way):
        begun, hot = journal(self.path)
        torn = hot and self.dice.random() < TORN
        if torn:
            tear(self.path, self.dice)
        if confirmed < 0 and not self.path.exists():
            for part in self.folder.iterdir():
                part.unlink()
            return Death(kind, begun, hot, torn, False, ())
        with open_job_file(self.path) as file:
            wrong = [] if file.said or not hot else ["a journal was rolled back and nothing said"]
            wrong += file.check_whole()
            seen = look(file)
        if kind == "make":
            for part in self.folder.glob(f".{self.path.name}.*.part"):
                part.unlink()  # the new file has its name already; the one it was built under is of no use
        wrong += [f"{path.name} is left beside it" for path in self.folder.glob("*.*") if path != self.path]
        wrong += self._copies(seen)
        for done in sorted({max(confirmed, 0), under_way}, reverse=True):
            differing = differences(seen, walked(self.walk, done).seen())
            if not differing:
                self.done = done
                return Death(kind, begun, hot, torn, done > confirmed, tuple(wrong))
        return Death(kind, begun, hot, torn, False, (*wrong, *differing))

    def _copies(self, seen):
        """Return what is wrong with the copies: each is whole, of one moment, and held by nobody."""
        copy = copy_of(self.path)
        for part in copy.parent.glob(".*.part*"):
            part.unlink()  # what a killed copying had not named yet
        if not copy.exists():
            return []
        with open_job_file(copy) as file:
            kept = look(file)["revisions"]
            wrong = [*file.said, *file.check_whole()]
        return [
            *wrong,
            *(["a copy holds what was never kept"] if kept != seen["revisions"][: len(kept)] else []),
        ]


def understood(told, done):
    """Return the act under way, how many acts are confirmed, and how many there are if it came through."""
    confirmed, kind, under_way = done, "start", done
    for line in told:
        word, *rest = line.split()
        if word == "begin":
            kind, under_way = rest[0], int(rest[1])
        else:
            confirmed, kind = int(rest[0]), "between two"
    return kind, confirmed, under_way


def differences(seen, wanted):
    """Return the members of a file that are not as wanted."""
    return [f"{member} differs" for member in wanted if seen[member] != wanted[member]]


def journal(path):
    """Return whether a journal that is not empty lies beside the file, and whether it is complete.

    SQLite writes the head of a journal once the old pages in it are on the disk; before that it has not
    touched the file, and the journal's head is zeros.
    """
    try:
        with journal_of(path).open("rb") as file:
            head = file.read(len(MAGIC))
    except FileNotFoundError:
        head = b""
    return bool(head), head == MAGIC


def tear(path, dice):
    """Leave the pages that the journal can give back as a power cut may: each sector old, new or noise.

    What the journal holds was on the disk before the file was touched; the file's own pages were not.  Its
    form: "The Rollback Journal", sqlite.org/fileformat.html section 3.  The first sector stays one of
    old and new, for a disk writes a sector whole.
    """
    data, old = bytearray(path.read_bytes()), journal_of(path).read_bytes()
    count, _, _, sector, page = struct.unpack_from(">IIIII", old, len(MAGIC))
    for record in range(count):
        at = sector + record * (page + 8)
        (number,) = struct.unpack_from(">I", old, at)
        for offset in range(0, page, SECTOR):
            place = (number - 1) * page + offset
            before = old[at + 4 + offset : at + 4 + offset + SECTOR]
            ways = [before, data[place : place + SECTOR], *([dice.randbytes(SECTOR)] if place else [])]
            data[place : place + SECTOR] = dice.choice(ways)
    path.write_bytes(data)


def journal_of(path):
    """Return where SQLite keeps the journal of a file."""
    return path.with_name(path.name + "-journal")


def table(deaths):
    """Return the kinds of act with kills, transactions begun, journals to roll back, landed and wrong."""
    rows = [
        (
            "act under way",
            "kills",
            "transaction open",
            "rolled back",
            "torn before",
            "went through",
            "lost or wrong",
        )
    ]
    for kind in sorted({death.kind for death in deaths}):
        rows.append((kind, *_counted([death for death in deaths if death.kind == kind])))
    rows.append(("all", *_counted(deaths)))
    return rows


def _counted(deaths):
    members = ("begun", "hot", "torn", "landed", "wrong")
    return (len(deaths), *(sum(bool(getattr(death, name)) for death in deaths) for name in members))


def as_text(rows):
    """Return the table as lines of Markdown."""
    lines = ["| " + " | ".join(map(str, row)) + " |" for row in rows]
    return "\n".join([lines[0], "| --- " + "| ---: " * (len(rows[0]) - 1) + "|", *lines[1:]])
