"""The painters need a Qt application, no window: everything is painted into images."""

import os

import pytest

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


@pytest.fixture(autouse=True)
def application(qapp):
    """Start Qt once; fonts and glyphs need it."""
    return qapp
