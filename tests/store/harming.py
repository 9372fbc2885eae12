"""Damage a job file where it hurts, and hold what comes of it to what was in the file."""

import contextlib
import sqlite3
from dataclasses import dataclass
from hashlib import sha256
from random import Random

from tests.store.pages import HEADER, mapped
from tests.store.plain_file import look

from bayboard.model.refused import Refused
from bayboard.model.write import write
from bayboard.store.job_file import open_job_file, rescue

UNREADABLE = (sqlite3.Error, UnicodeError)  # an error's own words may be no text


def pages_of(path):
    """Return the pages of a whole job file, whose each is found from the schema."""
    with contextlib.closing(sqlite3.connect(path)) as conn:
        roots = dict(conn.execute("select name, rootpage from sqlite_master where rootpage > 1"))
    return mapped(path.read_bytes(), roots)


def truncations(pages, count, seed):
    """Yield (words, bytes): the file cut at page borders, in its header and in the middle of rows."""
    rng, data = Random(seed), pages.data
    lengths = [0, 1, 15, 16, 17, 50, 99, 100, 101, 512, pages.size - 1, len(data) - 1, len(data) - pages.size]
    while len(lengths) < count:
        border = rng.randrange(1, len(data) // pages.size) * pages.size
        used = rng.choice([span for span in pages.cells.values() if span[1] - span[0] > 8])
        lengths.append(
            rng.choice([border, border, border + 1, border - 1, rng.randrange(*used), rng.randrange(*used)])
        )
    for length in lengths[:count]:
        yield f"cut to {length} bytes", data[:length]


def flips(pages, count, seed):
    """Yield (words, bytes): one bit other; half in used cells of each table in turn, the rest elsewhere."""
    rng, owners = Random(seed), sorted(set(pages.owner.values()) - {"schema", "freelist", "free"})
    places = (_header, _page_head, _freelist, _schema)
    for number in range(count):
        if number % 2 == 0:
            name = owners[number // 2 % len(owners)]
            at = _used(rng, pages, name)
        else:
            place = places[number // 2 % len(places)]
            name, at = place.__name__.strip("_"), place(rng, pages)
        bit = rng.randrange(8)
        data = bytearray(pages.data)
        data[at] ^= 1 << bit
        yield f"{name}: bit {bit} of byte {at}", bytes(data)


def _used(rng, pages, name):
    spans = [pages.cells[page] for page, owner in pages.owner.items() if owner == name]
    spans = [span for span in spans if span[0] < span[1]]
    return rng.randrange(*rng.choice(spans)) if spans else rng.randrange(len(pages.data))


def _header(rng, pages):
    return rng.randrange(HEADER)


def _page_head(rng, pages):
    trees = [page for page, owner in pages.owner.items() if "overflow" not in owner and "free" not in owner]
    page = rng.choice(trees)
    return pages.page(page) + (HEADER if page == 1 else 0) + rng.randrange(12)


def _freelist(rng, pages):
    return _used(rng, pages, "freelist")


def _schema(rng, pages):
    return _used(rng, pages, "schema")


def opened(path):
    """Return what a job file gives back, None for what it refuses, and its sentences."""
    said = []
    try:
        with open_job_file(path) as file:
            said += (*file.said, *file.check_whole())
            return parts(file, said), said
    except Refused as refused:
        return {}, [*said, str(refused)]


def parts(file, said, hold=True):
    """Return each part that can be had on its own by name; a refusal of one goes to `said`.

    Without `hold` the large ones are asked for and let go.
    """
    found = {}

    def had(name, get):
        try:
            value = get()
            if hold or isinstance(name, str):
                found[name] = value
        except Refused as refused:
            said.append(str(refused))

    had("draft", lambda: write(file.draft().layout))
    had("revisions", lambda: tuple((r.number, r.parent, r.note, r.sha256) for r in file.revisions()))
    had("prints", lambda: tuple((p.revision, p.words) for p in file.prints()))
    had("photos", lambda: tuple(file.photos()))
    for number in [r[0] for r in found.get("revisions", ())]:
        had(("revision", number), lambda n=number: file.revision_text(n))
        had(("picture", number), lambda n=number: file.picture(n))
    for name in found.get("photos", ()):
        had(("photo", name), lambda n=name: file.photo(n))
    for name in ("view", "drill_day"):
        had(("meta", name), lambda n=name: file.meta(n))
    for mark in file.draft().states if "draft" in found else ():
        had(("state", mark.number), lambda n=mark.number: write(file.state(n)))
    return found


def whole_parts(path):
    """Return the parts of a file that is known to be whole."""
    found, said = opened(path)
    assert said == [], said
    return found


def silent_loss(parts, said, whole):
    """Return the parts that came back other than they were, and those missing though nothing was said."""
    if not said:
        return [
            f"{name} is not as it was, and nothing is said"
            for name in whole
            if parts.get(name) != whole[name]
        ]
    wrong = [f"{name} was never there" for name in parts if name not in whole and name[0] != "revision"]
    for name in parts.keys() & whole.keys():
        if parts[name] != whole[name] and not _told_as_damaged(name, parts[name], whole):
            wrong.append(f"{name} came back otherwise")
    return wrong


def _told_as_damaged(name, part, whole):
    """Return whether a part that is not as it was may be so once a sentence was said."""
    if name == "draft":
        return part in {value for name, value in whole.items() if name[0] in ("revision", "state")}
    if name == "revisions":
        return all(fact in whole[name] or fact[2].startswith("(damaged) ") for fact in part)
    if name == "prints":
        return set(part) <= set(whole[name])
    if name == "photos":
        return True  # the photos themselves are parts of their own
    return name[0] == "meta" and part is None


@dataclass
class Readable:
    """What a plain connection still reads row by row, its hash right."""

    revisions: set[str]
    photos: set[bytes]
    draft: str | None


def readable(path):
    """Return what a plain connection still reads of a damaged file."""
    found = Readable(set(), set(), None)
    with contextlib.suppress(*UNREADABLE), contextlib.closing(_plain(path)) as conn:
        conn.execute("pragma writable_schema = on")  # lets SQLite read what a file that was cut still holds
        found.draft = next(_rows(conn, "select layout, sha256 from draft where one = ?", [1]), None)
        found.revisions = set(
            _rows(conn, "select layout, sha256 from revision where number = ?", range(1, 60))
        )
        found.photos = set(_rows(conn, "select data, sha256 from photo where rowid = ?", range(1, 60)))
    return found


def _rows(conn, question, numbers):
    """Yield the value of each numbered row that has its hash."""
    for number in numbers:
        with contextlib.suppress(*UNREADABLE):
            row = conn.execute(question, (number,)).fetchone()
            value = row[0] if row else None
            data = value.encode() if isinstance(value, str) else value
            if isinstance(data, bytes) and sha256(data).hexdigest() == row[1]:
                yield value


def _plain(path):
    return sqlite3.connect(f"file:{path}?mode=ro&immutable=1", uri=True)


def rescued(path, out, whole):
    """Rescue a damaged file; return its sentences and what is wrong with what came."""
    there = readable(path)
    try:
        said = rescue(path, out)
    except Refused as refused:
        left = ["a file was left"] if out.exists() else []
        return (str(refused),), [
            *left,
            *(["what can be read was refused"] if there.revisions or there.draft else []),
        ]
    with open_job_file(out) as file:
        wrong = [*file.said, *file.check_whole()]
        seen = look(file)
    kept = {
        name: {value for key, value in whole.items() if key[0] == name}
        for name in ("revision", "photo", "state")
    }
    came = {text for *_, text, _ in seen["revisions"]}
    photos = set(seen["photos"].values())
    wrong += ["a revision that was never kept"] if came - kept["revision"] else []
    wrong += ["a photo that was never there"] if photos - kept["photo"] else []
    wrong += ["a revision that can be read was left"] if there.revisions & kept["revision"] - came else []
    wrong += ["a photo that can be read was left"] if there.photos & kept["photo"] - photos else []
    wrong += ["the draft can be read and was left"] if there.draft and seen["draft"][0] != there.draft else []
    wrong += [] if said else ["nothing said of a rescue"]
    return said, wrong
