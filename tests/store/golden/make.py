"""Make the golden file of today's form: run once for each form, then never again.

python tests/store/golden/make.py       writes form-N.bay beside itself, unless it is there
"""

import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parents[2])]

from tests.model.rich import rich  # noqa: E402

from bayboard.edits.move_gear import MoveGear  # noqa: E402
from bayboard.model.read import from_document  # noqa: E402
from bayboard.store.job_file import PrintLine, make_job_file  # noqa: E402
from bayboard.store.schema import FORM  # noqa: E402

JPEG = b"\xff\xd8\xff\xe0 not much of a photo"
PNG = b"\x89PNG\r\n\x1a\n not much of a picture"
LINE = PrintLine(revision="2", paper="a4", face="front", sheets=("drill", "wall"), words="oak tin", pages=9)


def layouts():
    """Return the layouts that the file holds, in the order in which they were worked out."""
    plain = from_document(rich())
    name = plain.gear[0].id
    return [plain, *(MoveGear((name,), step, 0).apply(plain) for step in (0.5, 1.0, 1.5))]


def main():
    """Write the file."""
    plain, first, second, third = layouts()
    with make_job_file(HERE / f"form-{FORM}.bay", plain, picture=PNG, photos=[JPEG]) as file:
        file.write(first, upto=1, add=[("Move 0.5", first)], at=2)
        file.keep("as measured")
        file.write(second, upto=2, add=[("Move 1", second)], at=3)
        file.keep("as printed", PNG + b" 2")
        file.log_print(LINE, second)
        file.write(third, upto=3, add=[("Move 1.5", third)], at=4)
        file.restore(1, first, "Go back to revision 1", keep_first="before going back", upto=4)
        file.write(third, upto=5, add=(), at=4)
        file.set_meta("view", {"stage": "fix", "zoom": 1.5})


if __name__ == "__main__":
    main()
