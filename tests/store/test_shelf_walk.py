"""The shelf walked at random against a plain look at every file."""

import shutil
import tempfile
from pathlib import Path
from random import Random

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, precondition, rule
from tests.store.vehicles import age, rename_in, vehicle

from bayboard.model.refused import Refused
from bayboard.store.job_file import open_job_file
from bayboard.store.shelf import Shelf

WORDS = ("alder", "birch", "cedar", "van")


def plainly(folder, text):
    """Return (file, name) of the vehicles with these words in name, file or notes, each opened anew."""
    found = []
    for path in folder.glob("*.bay"):
        try:
            with open_job_file(path, look=True) as file:
                name, notes = file.draft().layout.vehicle.name, [r.note for r in file.revisions()]
        except Refused:
            continue
        if all(word in " ".join((name, path.stem, *notes)).lower() for word in text.split()):
            found.append((path.name, name))
    return sorted(found)


class Shop(RuleBasedStateMachine):
    """Files come, change, break and go; the index is harmed; another shelf looks in."""

    def __init__(self):
        super().__init__()
        self.own = Path(tempfile.mkdtemp())
        self.folder = self.own / "shelf"
        self.folder.mkdir()
        self.index = self.own / "index"
        self.shelf = Shelf(self.index)
        self.count = 0

    def teardown(self):
        self.shelf.close()
        shutil.rmtree(self.own)

    def files(self):
        return sorted(self.folder.glob("*.bay"))

    def one(self, pick):
        files = self.files()
        return files[pick % len(files)]

    @rule(name=st.sampled_from(WORDS), notes=st.lists(st.sampled_from(WORDS), max_size=2), aged=st.booleans())
    def comes(self, name, notes, aged):
        self.count += 1
        vehicle(self.folder, f"file-{self.count}", name, notes=notes, aged=aged)

    @precondition(lambda self: self.files())
    @rule(pick=st.integers(0, 9))
    def goes(self, pick):
        self.one(pick).unlink()

    @precondition(lambda self: self.files())
    @rule(pick=st.integers(0, 9), name=st.sampled_from(WORDS))
    def changes(self, pick, name):
        path = self.one(pick)
        if path.stem.startswith("file"):
            rename_in(path, name)

    @precondition(lambda self: self.files())
    @rule(pick=st.integers(0, 9))
    def takes_anothers_name(self, pick):
        self.one(pick).replace(self.one(pick + 1))

    @rule()
    def breaks(self):
        self.count += 1
        age(_text(self.folder / f"broken-{self.count}.bay"))

    @precondition(lambda self: self.index.exists())
    @rule(seed=st.integers(0, 99))
    def index_is_harmed(self, seed):
        rng, data = Random(seed), bytearray(self.index.read_bytes())
        self.shelf.close()
        for _ in range(20):
            data[rng.randrange(len(data))] ^= 1 << rng.randrange(8)
        self.index.write_bytes(bytes(data))
        self.shelf = Shelf(self.index)

    @rule()
    def another_looks_in(self):
        other = Shelf(self.index)
        other.find("", [self.folder])
        other.close()

    @invariant()
    def what_is_found_is_what_is_there(self):
        for text in ("", "alder", "birch cedar"):
            found = self.shelf.find(text, [self.folder])
            whole = [(f.path.name, f.facts.name) for f in found if not f.facts.trouble]
            assert sorted(whole) == plainly(self.folder, text)
            if not text:
                assert sorted(f.path for f in found) == self.files()


def _text(path):
    path.write_text("hello", encoding="utf-8")
    return path


TestShop = Shop.TestCase
TestShop.settings = settings(derandomize=True, max_examples=8, stateful_step_count=10, deadline=None)
