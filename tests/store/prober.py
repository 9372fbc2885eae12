"""Try everything on a job file that nobody trusts; tell what came of it in one line of JSON.

    python prober.py        reads a path a line, answers a line each

The answer: `opened`; `said`, the sentences; `wrong`, all that is neither a result nor a sentence;
`seconds`; `peak`, the most memory that the process ever had, in MB.
"""

import faulthandler
import json
import resource
import sys
import time
import traceback
from pathlib import Path
from random import Random

sys.path[:0] = [str(Path(__file__).resolve().parents[2])]

from tests.store.acts import a_layout, a_picture  # noqa: E402
from tests.store.harming import parts  # noqa: E402

from bayboard.model.refused import Refused  # noqa: E402
from bayboard.store.job_file import (  # noqa: E402
    PrintLine,
    copy_job_file,
    examine,
    is_job_file,
    open_job_file,
    rescue,
)

LONGEST = 60  # s for all that is tried on one file, else it hangs
PRINTED = PrintLine(revision="1", paper="a4", face="front", sheets=("template",), words="all", pages=2)


class Probe:
    """What was tried on one file and what came of it."""

    def __init__(self, path):
        self.path = path
        self.said, self.wrong = [], []

    def attempt(self, act, *given, **named):
        """Return what an act gives back, None when it is refused; note anything else."""
        try:
            return act(*given, **named)
        except Refused as refused:
            self.hear(str(refused))
        except BaseException:
            self.wrong.append(traceback.format_exc())
        return None

    def hear(self, sentence):
        """Note a sentence, and what is wrong with it."""
        self.said.append(sentence[:600])
        if not sentence.isprintable() or not sentence.endswith(".") or len(sentence) > 600:
            self.wrong.append(f"no sentence: {sentence[:300]!r}")

    def read(self, look):
        """Open the file and read all of it."""
        file = self.attempt(open_job_file, self.path, look=look, take=not look)
        if file is None:
            return False
        for sentence in (*file.said, *(self.attempt(file.check_whole) or ())):
            self.hear(sentence)
        self.attempt(parts, file, self.said, hold=False)
        if not look:
            self.work(file)
        self.attempt(file.close)
        return True

    def work(self, file):
        """Write into the open file whatever can be written."""
        rng = Random(1)
        made, picture = a_layout(rng), a_picture(rng)
        draft = self.attempt(file.draft)
        at = draft.at if draft else 1
        self.attempt(file.write, made, upto=at, add=(("Move A1", made),), at=at + 1, picture=picture)
        self.attempt(file.keep, "a note", picture)
        self.attempt(file.restore, 1, made, "Go back", keep_first="before", upto=at + 1)
        self.attempt(file.add_photo, picture)
        self.attempt(file.log_print, PRINTED, made)
        self.attempt(file.set_meta, "view", {"x": 1})

    def aside(self):
        """Try what makes another file of it; whatever is made must open."""
        self.attempt(is_job_file, self.path)
        for sentence in self.attempt(examine, self.path) or ():
            self.hear(sentence)
        for make in (copy_job_file, rescue):
            out = self.path.with_name("made.bay")
            said = self.attempt(make, self.path, out)
            for sentence in said or ():
                self.hear(sentence)
            if out.exists() and make is rescue:
                self.attempt(self.whole, out)
            out.unlink(missing_ok=True)

    def whole(self, out):
        """Note what is wrong with a rescued file."""
        try:
            with open_job_file(out) as file:
                file.draft()
                self.wrong += [f"rescued, and then: {said}" for said in (*file.said, *file.check_whole())]
        except Refused as refused:
            self.wrong.append(f"rescued, and then: {refused}")


def peak_mb():
    """Return the most memory that this process ever had, in MB."""
    status = Path("/proc/self/status")
    if status.exists():  # the figure of rusage takes in what the parent had
        return round(int(status.read_text().split("VmHWM:")[1].split()[0]) / 1024, 1)
    return round(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 2**20, 1)


def probe(path):
    """Return the answer for one file."""
    faulthandler.dump_traceback_later(LONGEST, exit=True)
    began, tried = time.perf_counter(), Probe(path)
    victim = path.with_name("victim")  # another file, to which something beside this one leads
    precious = victim.read_bytes() if victim.exists() else None
    tried.aside()
    tried.read(look=True)
    done = tried.read(look=False)
    faulthandler.cancel_dump_traceback_later()
    if precious is not None and (not victim.exists() or victim.read_bytes() != precious):
        tried.wrong.append("another file was changed")
    seconds = time.perf_counter() - began
    return {
        "opened": done,
        "said": tried.said,
        "wrong": tried.wrong,
        "seconds": round(seconds, 3),
        "peak": peak_mb(),
    }


if __name__ == "__main__":
    for line in sys.stdin:
        print(json.dumps(probe(Path(line.rstrip("\n")))), flush=True)
