"""Hashes and seals: how a flipped bit is noticed."""

import re
import zlib
from datetime import UTC, datetime
from hashlib import sha256

from bayboard.model.raw import LARGEST_FILE

_HASH = re.compile(r"[0-9a-f]{64}")
_TIME = "%Y-%m-%dT%H:%M:%SZ"

Sealed = int | str | bytes | None


def seal(kind: str, *values: Sealed) -> str:
    """Return the SHA-256 over a row's values, each with its type and length, and the kind of row."""
    digest = sha256()
    for value in (kind, *values):
        sign, data = _spelled(value)
        digest.update(b"%c%d:" % (sign, len(data)))
        digest.update(data)
    return digest.hexdigest()


def hash_of(data: bytes) -> str:
    """Return the SHA-256 in hexadecimal figures, as `sha256sum` prints it."""
    return sha256(data).hexdigest()


def is_hash(value: object) -> bool:
    """Return whether a value from a file is spelled like a SHA-256."""
    return isinstance(value, str) and _HASH.fullmatch(value) is not None


def is_time(value: object) -> bool:
    """Return whether a value from a file is a time as `now` spells it."""
    if not isinstance(value, str) or len(value) != len("2026-11-25T15:43:41Z"):
        return False
    try:
        datetime.strptime(value, _TIME).replace(tzinfo=UTC)
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


def _spelled(value: Sealed) -> tuple[int, bytes]:
    if value is None:
        return ord("0"), b""
    if isinstance(value, bytes):
        return ord("b"), value
    if isinstance(value, str):
        return ord("t"), value.encode("utf-8", "surrogatepass")
    return ord("i"), str(value).encode("ascii")
