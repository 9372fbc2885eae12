"""Random acts on a job file: each does its part to the plain file and returns what does it to the real one.

An act follows from seed, number and plain file alone, so that two processes walk the same way unasked.
"""

import hashlib
from random import Random

from tests.store.plain_file import NAMES, Plain, a_layout, a_picture

from bayboard.model.read import read
from bayboard.model.write import write
from bayboard.store.job_file import PrintLine, copy_job_file, make_job_file

WORDS = ("Move A2 22.5 left", "Turn A1", "Drill A2#3", "Gehäuse drehen", "x" * 150)


def edit(rng, plain):
    """One to three new states after the present one."""
    upto = plain.at
    made = [(rng.choice(WORDS), a_layout(rng)) for _ in range(rng.choice([1, 1, 1, 3]))]
    for label, value in made:
        plain.push(plain.at, label, write(value))
    at, picture = plain.at, rng.choice([None, a_picture(rng)])
    plain.picture = plain.picture if picture is None else picture
    if rng.random() < 0.8:
        return lambda file: file.write(made[-1][1], upto=upto, add=made, at=at, picture=picture)
    plain.parent = parent = rng.choice([None, *(revision[0] for revision in plain.revisions)])
    return lambda file: file.write(made[-1][1], upto=upto, add=made, at=at, parent=parent, picture=picture)


def fold(rng, plain):
    """The present state written anew, as by a move that goes on."""
    before = max((s[0] for s in plain.states if s[0] < plain.at), default=None)
    if before is None:
        return edit(rng, plain)
    made, label = a_layout(rng), rng.choice(WORDS)
    plain.push(before, label, write(made))
    at = plain.at
    return lambda file: file.write(made, upto=before, add=((label, made),), at=at)


def undo(rng, plain):
    """Back or forth to another state, none of them changed."""
    number, _, text = rng.choice(plain.states[-8:])
    last = plain.states[-1][0]
    plain.at, plain.draft = number, text
    value = read(text)
    return lambda file: file.write(value, upto=last, add=(), at=number)


def keep(rng, plain):
    note = rng.choice(["", "as agreed", "Rück › wand", "n" * 300])
    picture = rng.choice([None, a_picture(rng)])
    plain.keep(note, picture)
    return lambda file: file.keep(note, picture)


def restore(rng, plain):
    """Back to an old revision, the draft kept first or not."""
    if not plain.revisions:
        return keep(rng, plain)
    number, _, _, text, _ = rng.choice(plain.revisions)
    becomes, upto = read(text), plain.at
    first = rng.choice([None, f"before going back to revision {number}"])
    if first is not None:
        plain.keep(first, None)
    label, picture = f"Go back to revision {number}", rng.choice([None, a_picture(rng)])
    plain.push(upto, label, text)
    plain.parent = number
    plain.picture = plain.picture if picture is None else picture
    return lambda file: file.restore(number, becomes, label, keep_first=first, upto=upto, picture=picture)


def photo(rng, plain):
    """A photo, one in four of which the file has already."""
    data = a_picture(rng, rng.choice([10, 3_000, 30_000]))
    if plain.photos and rng.random() < 0.25:
        data = rng.choice(list(plain.photos.values()))
    plain.photos[hashlib.sha256(data).hexdigest() + ".png"] = data
    return lambda file: file.add_photo(data)


def log_print(rng, plain):
    """A line in the print log, and the draft with another `printed`."""
    made = a_layout(rng)
    revision = str(len(plain.revisions) or "draft")
    words = rng.choice(["template A4", "Ganzer Satz"])
    line = PrintLine(revision=revision, paper="a4", face="front", sheets=("template",), words=words, pages=3)
    plain.prints.append((revision, words))
    plain.draft = write(made)
    return lambda file: file.log_print(line, made)


def meta(rng, plain):
    name = rng.choice(NAMES)
    value = {"at": [rng.random(), rng.randrange(9)], "words": rng.choice(WORDS), "on": rng.random() < 0.5}
    plain.meta[name] = value
    return lambda file: file.set_meta(name, value)


def copy(rng, plain):
    """A copy into a folder beside, in place of the last one."""
    return lambda file: copy_job_file(file.path, copy_of(file.path))


def copy_of(path):
    """Return where the walk of a file leaves its copies."""
    folder = path.with_name(path.stem + "-copies")
    folder.mkdir(exist_ok=True)
    return folder / "copy.bay"


ACTS = {edit: 38, fold: 6, undo: 12, keep: 16, restore: 14, photo: 6, log_print: 5, meta: 5, copy: 3}


def start(seed):
    """Return the plain file at its making and what makes the real one at a path."""
    rng = Random(f"{seed}:0")
    first, picture, photos = a_layout(rng), a_picture(rng), [a_picture(rng, 5_000)]
    text = write(first)
    held = {hashlib.sha256(p).hexdigest() + ".png": p for p in photos}
    plain = Plain(text, picture, states=[(1, "", text)], photos=held)
    return plain, lambda path: make_job_file(path, first, picture=picture, photos=photos)


def act(seed, number, plain):
    """Do act `number` (from 1) to the plain file; return its kind's name and what does it to a real file."""
    rng = Random(f"{seed}:{number}")
    (kind,) = rng.choices(list(ACTS), weights=list(ACTS.values()))
    return kind.__name__, kind(rng, plain)


def walked(seed, count):
    """Return the plain file after the first `count` acts."""
    plain, _ = start(seed)
    for number in range(1, count + 1):
        act(seed, number, plain)
    return plain
