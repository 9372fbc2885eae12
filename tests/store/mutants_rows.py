"""Job files that nobody trusts: rows gone, changed, far too long and far too many.

Each mutant is a whole file with one kind of change.  Most rows are sealed anew afterwards, so that what a
seal would catch is tried behind it, too.
"""

import contextlib
import sqlite3
import zlib

from tests.model.test_mutations import text_mutant, tree_mutant

from bayboard.store.sealed import hash_of, seal

BIGGEST = 2**63 - 1
HOSTILE = (
    None, "", 0, 1, -1, BIGGEST, -(2**63), 2**31, 1.5, 1e308, float("inf"), b"", bytes(50), "\0", "x" * 5_000,
    "2026-11-25T15:43:41Z", "9999-99-99T99:99:99Z", "\u202e", "NaN", "null", "[" * 5_000, "a" * 64, "\n›;--",
    b"\xff\xfe", "../../etc/passwd", "file:///dev/zero", "0" * 64,
)  # fmt: skip
SEALED = {
    "revision": ("number", "parent", "kept", "note", "sha256", "picture_sha256"),
    "draft": ("parent", "changed", "sha256", "at", "picture_sha256"),
    "state": ("number", "label", "sha256"),
    "meta": ("name", "value"),
    "print": ("number", "at", "revision", "paper", "face", "sheets", "words", "pages"),
}
NUMBERED = {
    "revision": ("number",),
    "state": ("number",),
    "print": ("number",),
    "draft": ("at", "parent"),
    "holder": ("writes", "pid", "started"),
}
WORDED = {
    "revision": ("note", "layout", "picture"),
    "draft": ("layout", "picture", "changed"),
    "state": ("label", "layout"),
    "meta": ("name", "value"),
    "print": ("words", "sheets"),
    "photo": ("data",),
    "holder": ("user", "token"),
}
TABLES = (*SEALED, "photo", "holder")


@contextlib.contextmanager
def plain(path):
    """Give a connection that takes anything; triggers and types are off and stand again afterwards."""
    with contextlib.closing(_open(path)) as conn:
        triggers = conn.execute("select name, sql from sqlite_master where type = 'trigger'").fetchall()
        forms = conn.execute("select rowid, sql from sqlite_master where type = 'table'").fetchall()
        for name, _ in triggers:
            conn.execute(f"drop trigger {name}")
        bare = [(row, sql.removesuffix(" STRICT").replace("NOT NULL", "")) for row, sql in forms]
        _spell(conn, bare)
    with contextlib.closing(_open(path)) as conn:
        yield conn
        _spell(conn, forms)
    with contextlib.closing(_open(path)) as conn:
        for _, sql in triggers:
            conn.execute(sql)


def _open(path):
    conn = sqlite3.connect(path, isolation_level=None)
    for setting in ("synchronous = off", "foreign_keys = off", "ignore_check_constraints = on"):
        conn.execute(f"pragma {setting}")
    return conn


def _spell(conn, forms):
    conn.execute("pragma writable_schema = on")
    conn.executemany("update sqlite_master set sql = ? where rowid = ?", [(sql, row) for row, sql in forms])
    conn.execute("pragma writable_schema = reset")


def reseal(conn, table):
    """Give every row of a table the seal that its values have now."""
    columns = SEALED.get(table, ())
    listed = conn.execute(f"select rowid, {', '.join(columns)} from {table}").fetchall() if columns else ()
    for row, *values in listed:
        fit = [value if isinstance(value, int | str | bytes | None) else str(value) for value in values]
        conn.execute(f"update {table} set seal = ? where rowid = ?", (seal(table, *fit), row))


def column_of(rng, conn, table):
    """Return the name of a random column."""
    return rng.choice([row[1] for row in conn.execute(f"pragma table_info({table})")])


def one_of(rng, columns):
    """Return the name of a table and of one of its columns listed."""
    return rng.choice([(table, column) for table, listed in columns.items() for column in listed])


def row_of(rng, conn, table):
    """Return the rowid of a random row, 1 when there is none."""
    return rng.choice([row[0] for row in conn.execute(f"select rowid from {table}")] or [1])


def rows_gone(rng, path):
    """Some rows of a table are not there."""
    with plain(path) as conn:
        table = rng.choice(TABLES)
        for _ in range(rng.choice([1, 1, 3, 50])):
            conn.execute(f"delete from {table} where rowid = ?", (row_of(rng, conn, table),))


def value_changed(rng, path):
    """A few values are something else, seals as they were."""
    _change(rng, path, seals=False)


def value_resealed(rng, path):
    """A few values are something else, and every seal is right."""
    _change(rng, path, seals=True)


def _change(rng, path, seals):
    with plain(path) as conn:
        table = rng.choice(TABLES)
        for _ in range(rng.choice([1, 1, 2])):
            value = rng.choice(HOSTILE)
            with contextlib.suppress(sqlite3.IntegrityError):
                change = f"update {table} set {column_of(rng, conn, table)} = ? where rowid = ?"
                conn.execute(change, (value, row_of(rng, conn, table)))
        if seals:
            reseal(conn, table)


def number_at_the_end(rng, path):
    """The highest number there is stands where the next one would have to follow."""
    with plain(path) as conn:
        table, column = one_of(rng, NUMBERED)
        value = rng.choice([BIGGEST, BIGGEST - 1, 2**53, 2**62, 10**9])
        conn.execute(f"update {table} set {column} = ? where rowid = ?", (value, row_of(rng, conn, table)))
        reseal(conn, table)


def no_layout(rng, path):
    """Hash and seal are right, and what they vouch for is no layout."""
    text = rng.choice([text_mutant, tree_mutant])(rng)
    if rng.random() < 0.3:
        text = rng.choice(
            [b"", b"null", b"[" * 50_000, b'{"a":' * 20_000, b"1" * 5_000, b"\0", b"[1e999]", b"\xff"]
        )
    table = rng.choice(["draft", "draft", "revision", "state"])
    with plain(path) as conn:
        row = row_of(rng, conn, table)
        shown = zlib.compress(text) if table == "state" else text.decode("utf-8", "replace")
        sha = hash_of(text if table == "state" else shown.encode("utf-8"))
        conn.execute(f"update {table} set layout = ?, sha256 = ? where rowid = ?", (shown, sha, row))
        reseal(conn, table)
        if table == "draft" and rng.random() < 0.5:
            no_state_left(conn)


def no_state_left(conn):
    """Let nothing stand in for the draft."""
    conn.execute("delete from state")


def bomb(rng, path, sizes=(19_999_999, 20_000_001, 300_000_000)):
    """A little that unpacks to a lot."""
    size = rng.choice(sizes)
    packer = zlib.compressobj(9)
    data = b"".join(packer.compress(bytes(1_000_000)) for _ in range(size // 1_000_000)) + packer.flush()
    data = rng.choice([data, data[:-5], data + b"more", data * 3, b"\x78\x9c"])
    with plain(path) as conn:
        conn.execute("update state set layout = ?", (data,))
        if rng.random() < 0.5:
            conn.execute("delete from draft")


def long_value(rng, path, lengths=(1_000_000, 19_000_000, 45_000_000, 70_000_000)):
    """One value is far longer than any that was ever written; its hash and seal are right."""
    table, column = one_of(rng, WORDED)
    length = rng.choice(lengths)
    text = rng.choice(
        ["a" * length, "\U0001f600" + "a" * length, "[" + "{}," * (length // 3) + "{}]", "a," * (length // 2)]
    )
    value = text.encode() if column in ("picture", "data") or (table, column) == ("state", "layout") else text
    with plain(path) as conn:
        row = row_of(rng, conn, table)
        conn.execute(f"update {table} set {column} = ? where rowid = ?", (value, row))
        if column in ("layout", "picture"):
            named = "sha256" if column == "layout" else "picture_sha256"
            sha = hash_of(value if isinstance(value, bytes) else value.encode())
            conn.execute(f"update {table} set {named} = ? where rowid = ?", (sha, row))
        reseal(conn, table)


def many_rows(rng, path, counts=(2_000, 20_000, 100_000)):
    """Far more rows than anybody could make."""
    table = rng.choice(["state", "meta", "print", "revision", "photo"])
    count = rng.choice(counts)
    with plain(path) as conn:
        names = [row[1] for row in conn.execute(f"pragma table_info({table})")]
        row = conn.execute(f"select * from {table} limit 1").fetchone()
        if row is None:
            return
        key = "sha256" if table == "photo" else names[0]
        made = dict(zip(names, row, strict=True))
        shrunk = {name: rng.choice([b"", b"x"]) for name in ("data", "picture") if name in made}
        rows = []
        for n in range(1_000, 1_000 + count):
            made |= {
                key: hash_of(b"%d" % n) if table == "photo" else f"n{n}" if table == "meta" else n
            } | shrunk
            if table != "photo":
                made["seal"] = seal(table, *(made[name] for name in SEALED[table]))
            rows.append(tuple(made.values()))
        conn.execute("begin")
        conn.executemany(f"insert into {table} values ({', '.join('?' * len(names))})", rows)
        conn.execute("commit")
