"""The program's verdict beside the plain recheck's: what differs, in words."""

from collections import Counter

from tests.plain.recheck import RULES, recheck

from bayboard.model.read import from_document
from bayboard.routing.route import routes
from bayboard.rules.check import check
from bayboard.tables.limits import LIMITS

SLACK = 1e-3  # mm, or degrees
SLANT = 5e-3  # mm; a lead that leaves the board flat over a drawn corner arc, itself 0.001 mm off
AREA = 1e-2  # mm2; what the plain recheck's drawn corner arcs leave out of an area
SLACKS = {"lead-path": SLANT, "on-vent": AREA, "lining-cut": AREA}
HAIR = 1e-6  # so near a limit either verdict is right
WARM_HAIR = 1e-5  # K; the faces' round corners are drawn by either side's own chords


def differences(doc):
    """Return one sentence for each thing the program and the plain recheck say differently of a document."""
    layout = from_document(doc)
    paths = {name: [tuple(p) for p in route.points.tolist()] for name, route in routes(layout).items()}
    found, missing = recheck(doc, paths)
    verdict = check(layout)
    said = [(f.rule, f.severity, f.subjects, f.measure, f.limit) for f in verdict.findings if f.rule in RULES]
    ours = _numbered(said)
    plain = _numbered(
        tuple(f[m] for m in ("rule", "severity", "subjects", "measure", "limit")) for f in found
    )
    looked = {(u.rule, u.subjects) for u in verdict.unchecked if u.rule in RULES}
    out = [f"unchecked, only the program: {line}" for line in sorted(looked - set(missing))]
    out += [f"unchecked, only plain: {line}" for line in sorted(set(missing) - looked)]
    warm = doc.get("limits", {}).get("rise_note", LIMITS["rise_note"].value)
    for key in sorted(ours.keys() | plain.keys()):
        out += _differs(key, ours.get(key), plain.get(key), warm)
    return out


def _numbered(said):
    """Return measures and limits by rule, severity, subjects and a count: two sides may lack air alike."""
    out, count = {}, Counter()
    for *key, measure, limit in sorted(said, key=str):
        count[tuple(key)] += 1
        out[*key, count[tuple(key)]] = (measure, limit)
    return out


def _differs(key, ours, plain, warm):
    """Return how the two sides differ; `warm` is the rise that is told, which its note does not name."""
    if ours is None or plain is None:
        measure, limit = ours or plain
        hair = measure is not None and any(
            abs(measure - edge) <= HAIR for edge in (limit or 0, -(limit or 0), 0, 0.01)
        )
        hair |= key[0] == "heat-rise" and abs(measure - warm) <= WARM_HAIR
        return [] if hair else [f"{key}: program {ours}, plain {plain}"]
    slack = SLACKS.get(key[0], SLACK)
    same = all(
        (a is None) == (b is None) and (a is None or abs(a - b) <= slack)
        for a, b in zip(ours, plain, strict=True)
    )
    return [] if same else [f"{key}: program {ours}, plain {plain}"]
