"""The files of the store that make a job file, for the figures of the long runs."""

from pathlib import Path

STORE = Path(__file__).resolve().parents[2] / "src" / "bayboard" / "store"
ELSEWHERE = ("__init__", "files", "found", "named", "replacing", "shelf")  # layouts, words, the shelf
ROOMS = tuple(
    f"store/{path.name}" for path in sorted(STORE.glob("*.py")) if not path.name.startswith(ELSEWHERE)
)
