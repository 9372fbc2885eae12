"""Job files that nobody trusts, changed outside their rows: schema, header, bytes, and what lies beside."""

import contextlib
import sqlite3
import struct

from bayboard.store.schema import SCHEMA

ENDLESS = "with recursive n(x) as (select 1 union all select x + 1 from n) select {} from n where x < 0"
NULLS = ", ".join(["x"] * 9)
STATEMENTS = (
    "create table other (a, b)",
    "create view other as select 1",
    "create index other on revision (note)",
    "create index other on revision (abs(number)) where number > 0",
    "create trigger other after insert on revision begin delete from photo; end",
    f"create trigger other before update on holder begin {ENDLESS.format('x')}; end",
    "create trigger other before update on holder begin update holder set writes = writes + 1; end",
    "create trigger other before insert on state begin select load_extension('x'); end",
    "create trigger other before insert on state begin select writefile('/tmp/out', 'x'); end",
    "create table other (a, b as (a * 2) stored, check (b < 5))",
    "create virtual table other using fts5(a)",
    "create virtual table other using rtree(a, b, c)",
    "create table other (a integer primary key autoincrement)",
    "analyze",
    "alter table revision add column more text",
    "alter table meta rename to beta",
    "drop trigger revision_stays",
    "drop table photo",
    "vacuum",
    "pragma auto_vacuum = 1; vacuum",
    "pragma auto_vacuum = 2; vacuum",
    "pragma page_size = 512; vacuum",
    "pragma page_size = 65536; vacuum",
    "pragma journal_mode = wal",
)
REPLACED = (
    f"create view {{}} as {ENDLESS.format(NULLS)}",
    "create view {} as select * from {}",
    "create table {} (a, b, c)",
    "create table {} (number, parent, kept, note, sha256, picture_sha256, seal, picture, layout)",
    "create virtual table {} using fts5(a)",
)
TABLES = ("holder", "meta", "revision", "draft", "state", "photo", "print")
MAGIC = b"SQLite format 3\0"
FIELDS = {  # offset: length, of the header's members
    16: 2, 18: 1, 19: 1, 20: 1, 21: 1, 24: 4, 28: 4, 32: 4, 36: 4, 40: 4, 44: 4, 48: 4, 52: 4, 56: 4, 60: 4,
    64: 4, 68: 4, 72: 4, 92: 4, 96: 4,
}  # fmt: skip


def schema_changed(rng, path):
    """One statement that no Bayboard runs."""
    with contextlib.closing(sqlite3.connect(path, isolation_level=None)) as conn:
        conn.executescript(rng.choice(STATEMENTS))


def table_replaced(rng, path):
    """A table is something else under the same name; sometimes the file says that it is newer."""
    name = rng.choice(TABLES)
    with contextlib.closing(sqlite3.connect(path, isolation_level=None)) as conn:
        conn.execute("pragma foreign_keys = off")
        conn.execute(f"drop table {name}")
        conn.execute(rng.choice(REPLACED).replace("{}", name))
        if rng.random() < 0.5:
            conn.execute(f"pragma user_version = {rng.choice([2, 7, 2**31 - 1])}")


def schema_lies(rng, path):
    """The schema's text or root pages say what is not so."""
    with contextlib.closing(sqlite3.connect(path, isolation_level=None)) as conn:
        conn.execute("pragma writable_schema = on")
        name = rng.choice(TABLES)
        change = rng.choice(
            [
                ("rootpage = ?", rng.choice([0, 1, 2, 3, 5, 2**31 - 1, -1])),
                ("sql = ?", rng.choice(SCHEMA[:7])),
                ("sql = ?", "x" * 3_000_000),
                ("sql = null, type = ?", "index"),
                ("name = ?", "sqlite_other"),
                ("tbl_name = ?", "meta"),
                ("sql = sql || ?", "--"),
            ]
        )
        with contextlib.suppress(sqlite3.Error):
            conn.execute(f"update sqlite_master set {change[0]} where name = ?", (change[1], name))


def header_changed(rng, path):
    """One member of the header is something else."""
    offset = rng.choice(list(FIELDS))
    length = FIELDS[offset]
    value = rng.choice(
        [0, 1, 2, 3, 4, 64, 255, 512, 4096, 2**16 - 1, 2**31 - 1, 2**31, 2**32 - 1, rng.getrandbits(32)]
    )
    data = bytearray(path.read_bytes())
    data[offset : offset + length] = (value % 256**length).to_bytes(length, "big")
    path.write_bytes(data)


def bytes_changed(rng, path):
    """A stretch of bytes is other, longer, shorter, doubled or from elsewhere."""
    data = path.read_bytes()
    for _ in range(rng.choice([1, 1, 1, 3, 20])):
        at, length = rng.randrange(len(data)), rng.choice([1, 1, 2, 4, 60, 4096])
        other = rng.randrange(len(data))
        put = rng.choice(
            [rng.randbytes(length), bytes(length), b"\xff" * length, data[other : other + length], b""]
        )
        cut = rng.choice([length, length, length, 0])
        data = data[:at] + put + data[at + cut :]
        data = data or b"\0"
    path.write_bytes(data)


def pages_changed(rng, path):
    """Whole pages are swapped, doubled, wiped or pointing at each other."""
    data = path.read_bytes()
    pages = [data[n : n + 4096] for n in range(0, len(data), 4096)]
    for _ in range(rng.choice([1, 1, 4])):
        a, b = rng.randrange(len(pages)), rng.randrange(len(pages))
        way = rng.randrange(5)
        if way == 0:
            pages[a], pages[b] = pages[b], pages[a]
        elif way == 1:
            pages[a] = pages[b]
        elif way == 2:
            pages[a] = bytes(4096)
        elif way == 3:  # a page's first number is the next of an overflow or freelist chain
            pages[a] = struct.pack(">I", rng.choice([a + 1, b + 1, 1, 0, 2**31])) + pages[a][4:]
        else:
            del pages[a]
            pages = pages or [b"\0"]
    path.write_bytes(b"".join(pages))


def neighbour(rng, path):
    """Something lies beside the file that SQLite would look at."""
    end = rng.choice(["-journal", "-journal", "-journal", "-wal", "-shm"])
    beside, data = path.with_name(path.name + end), path.read_bytes()
    head = bytes.fromhex("d9d505f920a163d7") + struct.pack(">IIIII", 1, rng.getrandbits(32), 3, 512, 4096)
    what = rng.choice(["empty", "noise", "journal", "named", "folder", "link", "wal", "own"])
    if what == "folder":
        beside.mkdir()
    elif what == "link":
        beside.symlink_to(path.with_name("victim"))
        path.with_name("victim").write_bytes(rng.choice([head + bytes(5_000), b"precious"]))
    else:
        noise, page = rng.randbytes(5_000), struct.pack(">I", rng.choice([1, 2, 99]))
        named = b"victim".ljust(16, b"\0") + struct.pack(">II", 6, sum(b"victim")) + head[:8]
        beside.write_bytes(
            {
                "empty": b"",
                "noise": noise,
                "journal": head.ljust(512, b"\0") + page + noise[:4100],
                "named": head.ljust(512, b"\0") + page + noise[:4100] + named,
                "wal": struct.pack(">IIII", 0x377F0682, 3007000, 4096, 0) + noise,
                "own": data,
            }[what]
        )


def no_job_file(rng, path):
    """Something else altogether, under the name of a job file."""
    data = path.read_bytes()
    others = (
        b"",
        bytes(5_000),
        MAGIC,
        MAGIC * 90,
        b"PK\x03\x04" + data,
        b'{"bayboard":1}',
        b"\x89PNG\r\n\x1a\n",
    )
    bent = (
        data[:100],
        data[:100] + rng.randbytes(9_000),
        b"\xef\xbb\xbf" + data,
        data.hex().encode(),
        data[::-1],
    )
    what = rng.choice([*others, *bent])
    path.write_bytes(what)
    if rng.random() < 0.2:
        with path.open("r+b") as file:
            file.truncate(6 * 10**9)  # takes no room: it is all one hole
