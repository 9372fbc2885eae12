"""Large writes of every kind, to a file that has at least one revision."""

from random import Random

from tests.build import layout
from tests.store.plain_file import LETTERS, a_picture

from bayboard.store.job_file import PrintLine

_dice = Random(5)
LINE = PrintLine(revision="1", paper="a4", face="front", sheets=("template",), words="all", pages=9)


def large():
    """Return a layout of about 20 000 letters, never the same twice."""
    return layout(vehicle={"name": "Van", "note": "".join(_dice.choices(LETTERS, k=19_000))})


def _edit(file):
    draft, made = file.draft(), large()
    file.write(made, upto=draft.at, add=(("Move", made),), at=draft.at + 1, picture=a_picture(_dice, 100_000))


def _restore(file):
    file.restore(1, large(), "Go back to revision 1", keep_first="before", upto=file.draft().at)


PUSHES = {
    "edit": _edit,
    "keep": lambda file: file.keep("pushed", a_picture(_dice, 100_000)),
    "restore": _restore,
    "photo": lambda file: file.add_photo(a_picture(_dice, 150_000)),
    "print": lambda file: file.log_print(LINE, large()),
    "meta": lambda file: file.set_meta("view", {"words": a_picture(_dice, 50_000).hex()}),
}
