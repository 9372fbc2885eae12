"""What every edit can do."""

from typing import Protocol, runtime_checkable

from bayboard.model.layout import Layout


@runtime_checkable
class Edit(Protocol):
    """A change to a layout, as a value."""

    def apply(self, layout: Layout, /) -> Layout:
        """Return the layout after the edit, the same object when it changes nothing.

        Raises `Refused` when the layout after it could not be, `KeyError` for a thing that is not there.
        """
        ...

    def label(self, layout: Layout, /) -> str:
        """Return what the edit does to `layout`, as a menu says it: "Move A2 left 1/8 in"."""
        ...
