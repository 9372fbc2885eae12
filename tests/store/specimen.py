"""A job file with something in every table, pages that are free, and more than one page to each table."""

from random import Random

from tests.store.acts import a_layout, edit, keep, log_print, meta, photo, restore, start, undo

ACTS = (
    edit,
    edit,
    keep,
    photo,
    edit,
    log_print,
    meta,
    keep,
    restore,
    edit,
    photo,
    keep,
    edit,
    log_print,
    meta,
)


def specimen(path, seed=1, rounds=2):
    """Make the file, closed; return what `look` must see in it."""
    rng = Random(seed)
    plain, make = start(f"specimen {seed}")
    with make(path) as file:
        for kind in ACTS * rounds:
            kind(rng, plain)(file)
        _free(rng, plain, file)
    return plain.seen()


def _free(rng, plain, file):
    """Write long states and drop them again, so that pages of the file are free."""
    upto = plain.at
    for _ in range(4):
        made = a_layout(rng, most_note=20_000)
        file.write(made, upto=plain.at, add=(("long", made),), at=plain.at + 1)
        plain.at += 1
    plain.at = upto
    undo(rng, plain)(file)
    edit(rng, plain)(file)
