"""The two words that stand on every sheet of a set."""

from bayboard.model.codes import set_code
from bayboard.model.layout import Layout
from bayboard.paper.options import Options
from bayboard.paper.swap_words import swap_sentence


def set_words(layout: Layout, options: Options) -> str:
    """Return the set code; that of swap sheets is their own, for they have the seams of an older set.

    The same sheet of a whole set of the same layout may be cut elsewhere.
    """
    return set_code(layout, options.paper, options.face, swap_sentence(options.swap) if options.swap else "")
