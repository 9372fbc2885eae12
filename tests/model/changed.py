"""The rich document with one member changed, and the refusal that it earns."""

import pytest
from tests.model.rich import rich

from bayboard.model.read import from_document, read
from bayboard.model.refused import Refused


def changed(*path, to):
    """Return the rich document with the member at `path` set to `to` (a callable: of what was there)."""
    doc = rich()
    here = doc
    for step in path[:-1]:
        here = here[step]
    here[path[-1]] = to(here.get(path[-1])) if callable(to) else to
    return doc


def without(*path):
    """Return the rich document less the member at `path`."""
    doc = rich()
    here = doc
    for step in path[:-1]:
        here = here[step]
    del here[path[-1]]
    return doc


def refusal(doc):
    """Return the refusal of a document, or of a text."""
    with pytest.raises(Refused) as caught:
        from_document(doc) if isinstance(doc, dict) else read(doc)
    return caught.value
