"""Where things lie in an SQLite file, read from its bytes by the published file format, without SQLite.

Source: "Database File Format", sqlite.org/fileformat2.html, sections 1.3 (header), 1.5 (freelist),
1.6 (b-tree pages), 1.6.1 (overflow).  From memory of that text; the tests hold it to SQLite itself.
"""

import struct

HEADER = 100
LEAF_TABLE, INNER_TABLE, LEAF_INDEX, INNER_INDEX = 13, 5, 10, 2


class Pages:
    """The bytes of a file and whose each page is."""

    def __init__(self, data):
        self.data = data
        self.size = struct.unpack_from(">H", data, 16)[0]
        self.owner = {}  # page number -> name
        self.cells = {}  # page number -> (start, end) of what is used in it, in bytes of the file

    def page(self, number):
        """Return where a page starts in the file; pages count from 1."""
        return (number - 1) * self.size

    def tree(self, root, name):
        """Walk a b-tree and note its pages under a name."""
        start = self.page(root)
        head = start + (HEADER if root == 1 else 0)
        kind, _, count, content = struct.unpack_from(">BHHH", self.data, head)
        self.owner[root] = name
        self.cells[root] = (start + (content or 65536), start + self.size)
        inner = kind in (INNER_TABLE, INNER_INDEX)
        pointers = struct.unpack_from(f">{count}H", self.data, head + (12 if inner else 8))
        for cell in pointers:
            at = start + cell
            if inner:
                self.tree(struct.unpack_from(">I", self.data, at)[0], name)
            if kind != INNER_TABLE:
                self._payload(at + (4 if inner else 0), kind, name)
        if inner:
            self.tree(struct.unpack_from(">I", self.data, head + 8)[0], name)

    def _payload(self, at, kind, name):
        length, at = self._number(at)
        if kind == LEAF_TABLE:
            _, at = self._number(at)
        most = self.size - 35 if kind == LEAF_TABLE else (self.size - 12) * 64 // 255 - 23
        if length <= most:
            return
        least = (self.size - 12) * 32 // 255 - 23
        local = least + (length - least) % (self.size - 4)
        local = local if local <= most else least
        (following,) = struct.unpack_from(">I", self.data, at + local)
        left = length - local
        while following:
            self.owner[following] = f"{name}, overflow"
            start = self.page(following)
            self.cells[following] = (start, start + 4 + min(left, self.size - 4))
            left -= self.size - 4
            (following,) = struct.unpack_from(">I", self.data, start)

    def _number(self, at):
        value = 0
        for n in range(9):
            byte = self.data[at + n]
            if n == 8:
                return value << 8 | byte, at + 9
            value = value << 7 | byte & 0x7F
            if byte < 0x80:
                return value, at + n + 1
        raise AssertionError

    def free(self):
        """Note the trunks and leaves of the freelist."""
        trunk = struct.unpack_from(">I", self.data, 32)[0]
        while trunk:
            start = self.page(trunk)
            trunk_next, count = struct.unpack_from(">II", self.data, start)
            self.owner[trunk] = "freelist"
            self.cells[trunk] = (start, start + 8 + 4 * count)
            for leaf in struct.unpack_from(f">{count}I", self.data, start + 8):
                self.owner[leaf] = "free"
                self.cells[leaf] = (self.page(leaf), self.page(leaf) + self.size)
            trunk = trunk_next


def mapped(data, roots):
    """Return the pages of a file; `roots`: name of each table or index and the page of its root."""
    pages = Pages(data)
    pages.tree(1, "schema")
    for name, root in roots.items():
        pages.tree(root, name)
    pages.free()
    return pages
