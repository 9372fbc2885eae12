"""Take the pictures of README anew: the running window, and two pages as a printer would get them.

    xvfb-run -a -s "-screen 0 1700x1100x24" .venv/bin/python tests/pictures.py

Needs poppler's pdftoppm for the pages.
"""

import os
import subprocess
import sys
import tempfile
from itertools import count
from pathlib import Path
from unittest import mock

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT))

from msgspec.structs import replace  # noqa: E402
from PySide6.QtCore import QPointF  # noqa: E402
from PySide6.QtTest import QTest  # noqa: E402
from tests.window.compare.story import pickup  # noqa: E402
from tests.window.hands import CTRL, Hands  # noqa: E402
from tests.window.shelf.shop import fill  # noqa: E402

from bayboard.edits.move_gear import MoveGear  # noqa: E402
from bayboard.edits.place_gear import PlaceGear  # noqa: E402
from bayboard.job.job import open_job  # noqa: E402
from bayboard.job.printing import print_now  # noqa: E402
from bayboard.job.runner import InPlace  # noqa: E402
from bayboard.mechanics.printed import printed_of  # noqa: E402
from bayboard.model.read import read  # noqa: E402
from bayboard.paper.book import Options, book  # noqa: E402
from bayboard.store.job_file import open_job_file  # noqa: E402
from bayboard.window.compare.stage import add_compare  # noqa: E402
from bayboard.window.curing import MOST  # noqa: E402
from bayboard.window.drill_day.stage import add_drill_day  # noqa: E402
from bayboard.window.loud import is_loud  # noqa: E402
from bayboard.window.print.stage import add_print  # noqa: E402
from bayboard.window.shelf.stage import add_shelf  # noqa: E402
from bayboard.window.wishes import Wishes, wish  # noqa: E402

PICTURES = ROOT / "assets" / "pictures"
PICKUP = ROOT / "demo_layouts" / "crew-pickup-rear-wall.json"
FLOOR = ROOT / "demo_layouts" / "floor-lid.json"


def take(name, path, size, act):
    """Open the window on a layout, do something to it, and keep its picture."""
    hands = Hands(read(path.read_bytes()), size, path=path)
    hands.stage = add_print(hands.window, InPlace())
    hands.window.findings.cure_beside(InPlace())
    keep(hands, name, act)


def keep(hands, name, act):
    """Do something to a window, keep its picture and close it."""
    act(hands)
    hands.app.processEvents()
    QTest.qWait(1500)  # cures are looked for once the hands rest
    hands.picture().save(str(PICTURES / f"{name}.png"))
    hands.frame.settled = True
    hands.frame.close()


def compare():
    """Compare the draft of a vehicle with a past to what was shown to its owner, A2 spoken of."""
    with tempfile.TemporaryDirectory() as folder:
        job = pickup(Path(folder) / "pickup.bay")
        hands = Hands(job.layout, (1600, 1000))
        hands.place.take(job)
        hands.stage = add_print(hands.window, InPlace())
        add_compare(hands.window)
        keep(hands, "compare", at_kept)
        job.close()


def shelf():
    """Open the shop's shelf over a vehicle; another program holds one of the others, one is chosen."""
    with tempfile.TemporaryDirectory() as own:
        folder = Path(own) / "shelf"
        with mock.patch.dict(os.environ, BAYBOARD_SHELF=str(folder), XDG_DATA_HOME=own, LOGNAME="jo"):
            first, *_, held = fill(folder)[:4]
            job = open_job(first)
            hands = Hands(job.layout, (1600, 1000))
            hands.place.take(job)
            hands.stage = add_print(hands.window, InPlace())
            stage = add_shelf(hands.window)
            with open_job_file(held):
                stage.open()
                QTest.qWait(1500)
                keep(hands, "shelf", lambda hands: hands.key("Right"))
            stage.desk.end()
            job.close()


def at_kept(hands):
    """Go to Kept, two cards back, and down to the first row."""
    hands.key("K", CTRL)
    for key in ("Left", "Left", "Down"):
        hands.key(key)


def biggest(hands):
    """Return the largest stand-in that a must is about, or the largest of all."""
    about = {s for f in hands.place.verdict.findings if f.severity == "must" for s in f.subjects}
    standing = hands.place.scene.placed.values()
    return max(standing, key=lambda placed: (placed.id in about, placed.polygon.area))


def in_hand(hands):
    """Take a stand-in in hand and leave it there."""
    start = hands.px(*biggest(hands).at)
    hands.press(start)
    for step in range(1, 8):
        hands.move(start + QPointF(-2.0 * step, -3.0 * step))


def folded(hands):
    """Choose a stand-in, fold the seat and pull the Section wide."""
    hands.click_mm(*biggest(hands).at)
    hands.key("F")
    hands.key("W")


def crowded():
    """Hang everything too near, then cure finding by finding, each by its own button, until none is left."""
    layout = read(PICKUP.read_bytes())
    for edit in CROWD:
        layout = edit.apply(layout)
    hands = Hands(layout, (1600, 1000))
    add_print(hands.window, InPlace())
    hands.window.findings.cure_beside(InPlace())
    QTest.qWait(1500)
    hands.picture().save(str(PICTURES / "crowded.png"))
    for _ in range(30):
        curing = hands.window.findings.list.curing
        for _ in range(20):  # until every finding was looked at
            found = [f for f in hands.place.verdict.findings if is_loud(f, hands.place.rooms)]
            if all(curing.search.found(f, hands.place.layout) is not None for f in found[:MOST]):
                break
            QTest.qWait(500)
        curable = [f for f in found if curing.acts(f)]
        if not curable:
            break
        hands.window.findings.list.go_to(curable[0])
        hands.window.findings.list.setFocus()
        hands.app.processEvents()
        hands.key("Return")
        QTest.qWait(300)
    hands.key("Escape")
    hands.key("Escape")
    keep(hands, "crowded-cured", lambda hands: hands.place.take_up(None))


CROWD = (
    PlaceGear("W1", (690.0, 152.0)),
    PlaceGear("K1", (600.0, 401.0)),
    MoveGear(("A4",), -12.0, 20.0),
    MoveGear(("P1",), -20.0, 0.0),
    MoveGear(("B1",), 70.0, 50.0),
)


def why_page(hands):
    """Open the page behind the depth under the seat."""
    findings = hands.place.verdict.findings
    hands.window.findings.tell_why(next(f for f in findings if f.rule == "seat-depth"))


def in_the_dark(hands):
    """Wear the dark colours, the largest piece chosen."""
    while not hands.place.theme.dark:
        hands.key("F9")
    hands.click_mm(*biggest(hands).at)


def at_print(hands):
    """Go to the Print stage and take the fourth sheet."""
    hands.key("P", CTRL)
    QTest.qWait(300)
    for key in ("Right", "Right", "Right"):
        hands.key(key)


def drill_day():
    """Drill a kept and printed board down to the second hole of a slot."""
    layout = read(PICKUP.read_bytes())
    with tempfile.TemporaryDirectory() as folder:
        hands = Hands(replace(layout, printed=printed_of(layout, "1")), (1600, 1000))
        hands.place.job.house(Path(folder) / "crew-pickup.bay")
        hands.place.job.keep("for the drill")
        day = add_drill_day(hands.window)
        day.view.clock = count(0.0, 1.0).__next__  # every press is one of its own

        def drill(hands):
            """Press the space bar until a slot is half made."""
            hands.window.show_stage("Drill day")
            for _ in range(29):
                hands.key("Space")

        keep(hands, "drill-day", drill)
        hands.place.job.close()


def swap():
    """Print a kept vehicle, push a piece aside, and see which sheets are to be swapped."""
    with tempfile.TemporaryDirectory() as folder:
        hands = Hands(read(PICKUP.read_bytes()), (1600, 1000))
        job = hands.place.job
        job.house(Path(folder) / "crew-pickup.bay")
        print_now(job, Options("letter", units="in"), lambda made: None)
        hands.stage = add_print(hands.window, InPlace())
        job.do(MoveGear(("P1",), 3.175, 0.0))
        keep(hands, "print-swap", lambda hands: hands.key("P", CTRL))
        job.close()


def pages():
    """Keep one template page and one page of stand-ins."""
    made = book(read(PICKUP.read_bytes()), Options(paper="letter").with_units("in"))
    kinds = [page["sheet"] for page in made.map()["pages"]]
    with tempfile.TemporaryDirectory() as folder:
        pdf = Path(folder) / "sheets.pdf"
        pdf.write_bytes(made.pdf())
        for name, number in (("template", 8), ("stand-ins", kinds.index("cards") + 4)):
            out = str(PICTURES / name)
            words = ["pdftoppm", "-r", "80", "-png", "-gray", "-singlefile", "-f", str(number), str(pdf), out]
            subprocess.run(words, check=True)


if __name__ == "__main__":
    PICTURES.mkdir(exist_ok=True)
    take("arrange", PICKUP, (1600, 1000), lambda hands: None)
    take("in-hand", PICKUP, (1600, 1000), in_hand)
    take("folded", PICKUP, (1600, 1000), folded)
    crowded()
    take("why", PICKUP, (1600, 1000), why_page)
    take("dark", PICKUP, (1600, 1000), in_the_dark)
    wish(Wishes(colours="light"), keep=False)
    take("arrange-1280", PICKUP, (1280, 800), lambda hands: hands.click_mm(*biggest(hands).at))
    take("floor-lid-1280", FLOOR, (1280, 800), lambda hands: None)
    take("print", PICKUP, (1600, 1000), at_print)
    swap()
    compare()
    shelf()
    drill_day()
    pages()
