"""Photos of a job: named by their hash, each once."""

from bayboard.model.refused import Refused
from bayboard.store.base import Base
from bayboard.store.photo_kind import LARGEST_PHOTO, photo_kind
from bayboard.store.sealed import hash_of, is_hash
from bayboard.store.sentences import path_words

MOST = 5_000  # photos of a file


def names(base: Base) -> tuple[str, ...]:
    """Return the names of all photos, `<sha256>.jpg` or `.png`, in the order they came."""
    rows = base.few(MOST, "SELECT sha256, kind FROM photo ORDER BY rowid")
    return tuple(f"{sha}.{kind}" for sha, kind in rows if is_hash(sha) and kind in ("jpg", "png"))


def data_of(base: Base, name: str) -> bytes:
    """Return a photo; raise `Refused` when it is not there or has not its hash."""
    sha, _, kind = name.partition(".")
    rows = base.large("SELECT kind, data FROM photo WHERE sha256 = ?", sha)
    if not rows or rows[0][0] != kind:
        raise Refused(path_words(base.path), f"the photo {name[:12]}… is not in it", "Add it again")
    data = rows[0][1]
    if not isinstance(data, bytes) or hash_of(data) != sha or photo_kind(data) != kind:
        raise base.damaged(f"the photo {name[:12]}… is damaged")
    return data


def numbered(base: Base, number: int) -> bytes:
    """Return a photo by its place in the file, without the index of names; raise `Refused` when damaged."""
    rows = base.large("SELECT sha256, kind, data FROM photo WHERE rowid = ?", number)
    row = rows[0] if rows else None
    if row is None or not isinstance(row[2], bytes) or hash_of(row[2]) != row[0]:
        raise base.damaged(f"photo {number} is damaged")
    if photo_kind(row[2]) != row[1]:
        raise base.damaged(f"photo {number} is damaged")
    return row[2]


def named(data: bytes) -> str:
    """Return the name of a photo; raise `Refused` when it is none, or too large."""
    kind = photo_kind(data)
    if kind is None:
        raise Refused("photo", "this is neither a JPEG nor a PNG picture", "Save it as one of these first")
    if len(data) > LARGEST_PHOTO:
        raise Refused(
            "photo", f"this is larger than {LARGEST_PHOTO // 1_000_000} MB", "Save it smaller first"
        )
    return f"{hash_of(data)}.{kind}"


def put(base: Base, data: bytes) -> str:
    """Write a photo that is not there yet, and return its name."""
    name = named(data)
    sha, _, kind = name.partition(".")
    base.large(
        "INSERT OR IGNORE INTO photo (sha256, kind, size, data) VALUES (?, ?, ?, ?)",
        sha,
        kind,
        len(data),
        data,
    )
    return name
