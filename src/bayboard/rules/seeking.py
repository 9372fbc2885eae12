"""Searches that can be called off: they yield between steps and return what they found."""

from collections.abc import Generator
from typing import TypeVar

T = TypeVar("T")

Seeking = Generator[None, None, T]
"""A search; whoever runs it may stop at any of its yields."""


def to_end(search: Seeking[T]) -> T:
    """Return what a search finds."""
    work = telling(search, 0.0)
    while True:
        try:
            next(work)
        except StopIteration as end:
            found: T = end.value
            return found


def telling(search: Seeking[T], share: float) -> Generator[float, None, T]:
    """Yield how much is done, 0 to 1, wherever the search may be called off; return what it finds."""
    while True:
        try:
            next(search)
        except StopIteration as end:
            found: T = end.value
            return found
        yield share
