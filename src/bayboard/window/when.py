"""Times as people say them here: stored in UTC, told by the clock on the wall."""

from datetime import UTC, datetime, tzinfo

MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def local(stored: str, zone: tzinfo | None = None) -> datetime | None:
    """Return a stored time (UTC, "2026-11-25T15:43:41Z") as the clock here shows it; None for no time."""
    try:
        return datetime.strptime(stored, "%Y-%m-%dT%H:%M:%SZ").replace(tzinfo=UTC).astimezone(zone)
    except (ValueError, OverflowError, OSError):
        return None


def day_words(stored: str, now: datetime, zone: tzinfo | None = None) -> str:
    """Return "14:20" for today, "4 Nov" for this year, "Nov 2024" for another."""
    at = local(stored, zone)
    if at is None:
        return ""
    if at.date() == now.date():
        return f"{at:%H:%M}"
    month = MONTHS[at.month - 1]
    return f"{at.day} {month}" if at.year == now.year else f"{month} {at.year}"


def moment_words(stored: str, zone: tzinfo | None = None) -> str:
    """Return "4 Nov 2026, 15:43"."""
    at = local(stored, zone)
    return "" if at is None else f"{at.day} {MONTHS[at.month - 1]} {at.year}, {at:%H:%M}"
