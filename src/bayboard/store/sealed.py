"""Hashes and seals: how a flipped bit is noticed."""

import re
import zlib
from datetime import UTC, datetime
from hashlib import sha256

from bayboard.model.raw import LARGEST_FILE

_HASH = re.compile(r"[0-9a-f]{64}")
_SPELLED_TIME = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}Z")
_TIME = "%Y-%m-%dT%H:%M:%SZ"

Sealed = int | str | bytes | None


def seal(kind: str, *values: Sealed) -> str:
    """Return the SHA-256 over a row's values, each with its type and length, and the kind of row."""
    return sha256(b"".join(map(_spelled, (kind, *values)))).hexdigest()


def hash_of(data: bytes) -> str:
    """Return the SHA-256 in hexadecimal figures, as `sha256sum` prints it."""
    return sha256(data).hexdigest()


def is_hash(value: object) -> bool:
    """Return whether a value from a file is spelled like a SHA-256."""
    return isinstance(value, str) and _HASH.fullmatch(value) is not None


def is_time(value: object) -> bool:
    """Return whether a value from a file is a time as `now` spells it."""
    if not isinstance(value, str) or _SPELLED_TIME.fullmatch(value) is None:
        return False
    try:
        datetime.fromisoformat(value)
    except ValueError:
        return False
    return True


def now() -> str:
    """Return the time in UTC, to the second."""
    return datetime.now(UTC).strftime(_TIME)


def packed(text: bytes) -> bytes:
    """Return a layout's text made small."""
    return zlib.compress(text, 6)


def unpacked(data: bytes) -> bytes | None:
    """Return the text that `packed` made small; None when there is none, or more than a layout may have."""
    try:
        opened = zlib.decompressobj()
        text = opened.decompress(data, LARGEST_FILE + 1)
    except zlib.error:
        return None
    return text if opened.eof and len(text) <= LARGEST_FILE else None


def _spelled(value: Sealed) -> bytes:
    if isinstance(value, str):
        data = value.encode("utf-8", "surrogatepass")
        return b"t%d:%b" % (len(data), data)
    if isinstance(value, bytes):
        return b"b%d:%b" % (len(value), value)
    return b"0" if value is None else f"i{value}:".encode("ascii")
