"""The child for whom the disk runs out, or the folder closes, in the middle of its work.

    python hard_times.py room PATH ROUNDS SEED      files may not grow, by RLIMIT_FSIZE
    python hard_times.py folder                     nothing may be written in a folder, by its mode

Prints the sentences it was given, a line each; fails on anything that is not right.
"""

import os
import resource
import shutil
import signal
import sys
import tempfile
from pathlib import Path
from random import Random

sys.path[:0] = [str(Path(__file__).resolve().parents[2])]

from tests.store.acts import act, copy_of, start  # noqa: E402
from tests.store.plain_file import look  # noqa: E402
from tests.store.pushing import PUSHES  # noqa: E402

from bayboard.model.refused import Refused  # noqa: E402
from bayboard.store.job_file import open_job_file  # noqa: E402

NOBODY = 65534
WALKED = 20  # acts before it gets hard


def begun(path, seed):
    """Return a file that was worked in, open, and what is in it."""
    plain, make = start(seed)
    file = make(path)
    for number in range(1, WALKED + 1):
        act(seed, number, plain)[1](file)
    shutil.rmtree(copy_of(path).parent, ignore_errors=True)
    file.keep("before it gets hard")
    return file, look(file)


def refused(push, file):
    """Return whether a push was refused, its sentence said."""
    try:
        push(file)
    except Refused as sentence:
        print(sentence, flush=True)
        return True
    return False


def seen(file):
    """Return what is in the file, None while it cannot be read."""
    try:
        return look(file)
    except Refused as sentence:
        print(sentence, flush=True)
        return None


def room(path, rounds, seed):
    """Take the room away at a random size, push, give it back, push again."""
    signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    rng = Random(seed)
    file, before = begun(path, f"room {seed}")
    for _ in range(rounds):
        push, size = rng.choice(list(PUSHES.values())), path.stat().st_size
        most = rng.choice([size, size + rng.randrange(300_000), rng.randrange(512, size)])
        resource.setrlimit(resource.RLIMIT_FSIZE, (most, resource.RLIM_INFINITY))
        was_refused = refused(push, file)
        between = seen(file)
        assert between is not None or most < size, "it can no longer be read"
        assert between in (None, before) or not was_refused, "refused, and yet it changed"
        resource.setrlimit(resource.RLIMIT_FSIZE, (resource.RLIM_INFINITY, resource.RLIM_INFINITY))
        assert look(file) == before or not was_refused, "the last good state is gone"
        push(file)
        before = look(file)
    file.close()
    left(path, before)


def folder(path):
    """Close the folder, push, open it, push again; as somebody to whom modes apply."""
    begun(path, "whatever is imported late is imported now")[0].close()
    path.unlink()
    if os.geteuid() == 0:
        os.chown(path.parent, NOBODY, NOBODY)
        os.seteuid(NOBODY)
    for name, push in PUSHES.items():
        file, before = begun(path, f"folder {name}")
        path.parent.chmod(0o555)
        assert refused(push, file), f"{name} went through"
        assert look(file) == before
        path.parent.chmod(0o755)
        push(file)
        after = look(file)
        assert after != before
        path.parent.chmod(0o555)
        file.close()
        path.parent.chmod(0o755)
        left(path, after)
        path.unlink()


def left(path, wanted):
    """Hold what lies on the disk at the end to what must be there."""
    with open_job_file(path) as file:
        assert look(file) == wanted
        assert file.check_whole() == ()
    assert list(path.parent.iterdir()) == [path]


if __name__ == "__main__":
    if sys.argv[1] == "room":
        room(Path(sys.argv[2]), int(sys.argv[3]), sys.argv[4])
    else:
        with tempfile.TemporaryDirectory() as own:  # a test's own folder is closed to everybody else
            folder(Path(own) / "job.bay")
            os.seteuid(os.getuid())
