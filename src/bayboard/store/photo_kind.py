"""Which pictures a job file takes."""

LARGEST_PHOTO = 60_000_000  # bytes
_STARTS = {"jpg": b"\xff\xd8\xff", "png": b"\x89PNG\r\n\x1a\n"}


def photo_kind(data: bytes) -> str | None:
    """Return "jpg" or "png" by how the data begins, None for anything else."""
    return next((kind for kind, start in _STARTS.items() if data.startswith(start)), None)
