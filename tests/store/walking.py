"""Walk a job file at random and hold it to the plain one after every act."""

from random import Random

from tests.store.acts import act, copy_of, start
from tests.store.plain_file import NAMES, digest, look

from bayboard.model.write import write
from bayboard.store.job_file import open_job_file

DEEP = 100  # acts after which everything is read, not only lists and a few layouts
REOPENED = 25  # acts after which the file is closed and opened again


def walk(path, seed, count, deep=DEEP):
    """Walk a new file; raise AssertionError with seed, number and kind where it is not as the plain one."""
    plain, make = start(seed)
    file = make(path)
    for number in range(1, count + 1):
        kind, perform = act(seed, number, plain)
        perform(file)
        if number % REOPENED == 0:
            file.close()
            assert not path.with_name(path.name + "-journal").exists()
            file = open_job_file(path)
            assert file.said == ()
        if number % deep == 0:
            assert look(file) == plain.seen(), (seed, number, kind)
        else:
            assert glance(file, number) == glance_at(plain, number), (seed, number, kind)
    file.close()
    with open_job_file(path, look=True) as again:
        assert look(again) == plain.seen()
        assert again.check_whole() == ()
    copy = copy_of(path)
    if copy.exists():
        with open_job_file(copy) as copied:
            assert copied.check_whole() == ()
            kept = copied.revisions()
            assert [revision.sha256 for revision in kept] == [
                digest(r[3]) for r in plain.revisions[: len(kept)]
            ]


def glance(file, number):
    """Return all lists of a file, its draft, and a state, a revision and a photo at random."""
    draft, kept, photos = file.draft(), file.revisions(), file.photos()
    mark, revision, photo = _some(number, draft.states), _some(number, kept), _some(number, sorted(photos))
    return {
        "draft": (write(draft.layout), draft.parent, draft.at, draft.sha256),
        "states": [(mark.number, mark.label) for mark in draft.states],
        "revisions": [(r.number, r.parent, r.note, r.sha256) for r in kept],
        "photos": set(photos),
        "prints": [(p.number, p.revision, p.words) for p in file.prints()],
        "meta": {name: file.meta(name) for name in NAMES},
        "state": mark and write(file.state(mark.number)),
        "revision": revision and (file.revision_text(revision.number), file.picture(revision.number)),
        "photo": photo and file.photo(photo),
    }


def glance_at(plain, number):
    """Return what `glance` must see."""
    state, revision, photo = (
        _some(number, plain.states),
        _some(number, plain.revisions),
        _some(number, sorted(plain.photos)),
    )
    return {
        "draft": (plain.draft, plain.parent, plain.at, digest(plain.draft)),
        "states": [(number, label) for number, label, _ in plain.states],
        "revisions": [(n, parent, note, digest(text)) for n, parent, note, text, _ in plain.revisions],
        "photos": set(plain.photos),
        "prints": [(n, revision, words) for n, (revision, words) in enumerate(plain.prints, start=1)],
        "meta": {name: plain.meta.get(name) for name in NAMES},
        "state": state and state[2],
        "revision": revision and revision[3:],
        "photo": photo and plain.photos[photo],
    }


def _some(number, things):
    """Return one of the things, the same for the same number, None of none."""
    return things[Random(number).randrange(len(things))] if things else None
