"""A document that uses every member of the contract, and nothing that is refused."""

from typing import Any

from tests.build import rectangle

PICTURE = "0123456789abcdef" * 4


def rich() -> dict[str, Any]:
    """Return a fresh document with every member set to something else than its default."""
    return {
        "bayboard": 1,
        "vehicle": {"name": "Gärtner's grey van", "note": "second row\nfolds", "steering": "right"},
        "units": "in",
        "bay": _bay(),
        "boards": _boards(),
        "cards": {"deep": _amplifier(), "block": _block()},
        "gear": [
            {
                "id": "A1",
                "card": "deep",
                "at": [200, 180.5],
                "turn": 90,
                "lift": 3,
                "taped": True,
                "drilled": {"at": [200.1, 180.4], "turn": 90.2},
            },
            {"id": "A2", "card": "deep", "board": "B2", "at": [1300, 150]},
            {"id": "D1", "card": "block", "at": None},
        ],
        "leads": [
            {
                "id": "P1",
                "from": "FEED",
                "to": "D1.IN",
                "size": "1/0 AWG",
                "conductor": "cca15",
                "od": 14.5,
                "fuse": {"rating": 150, "from_start": 300},
                "via": [[20, 20], [20, 90.25]],
                "side": "back",
            },
            {"id": "P2", "from": "D1.OUT", "to": "A1.PWR", "size": "16 mm2", "conductor": "cca10"},
            {"id": "S1", "from": "RCA", "to": "A2.SIG", "size": None},
        ],
        "fixings": [
            {
                "id": "F1",
                "board": "B2",
                "at": [1030, 30],
                "thread": "M6",
                "into": "stud",
                "slot": {"travel": 4, "angle": 12.5},
                "rated": 2500,
                "taped": True,
                "drilled": [1030.2, 30],
                "metal": [1030, 30.1],
            },
            {"id": "F2", "at": [30, 30], "thread": "1/4-20"},
        ],
        "drilled_holes": {"A1#2": [143.25, 160]},
        "let_be": [{"rule": "gap", "subjects": ["A1", "A2"], "measure": 12.25, "reason": "Ünited by tape"}],
        "photos": [
            {
                "id": "PH1",
                "file": f"{PICTURE}.jpg",
                "size": [4000, 3000],
                "turned": 90,
                "shows": "card:deep",
                "points": [{"px": [10.5, 20], "at": [0, 0]}],
                "k1": -0.012,
                "note": "left half",
            },
            {
                "id": "PH2",
                "file": f"{PICTURE}.png",
                "size": [640, 480],
                "turned": 0,
                "shows": "wall",
                "points": [],
                "k1": None,
            },
        ],
        "printed": {
            "revision": "3",
            "holes": [
                {
                    "id": "F1",
                    "at": [1030, 30],
                    "make": "slot",
                    "drill": 6.6,
                    "slot": {"travel": 4, "angle": 12.5},
                },
                {"id": "A1#1", "at": [150, 160], "make": "tap", "drill": 4.2, "slot": None},
            ],
        },
        "limits": {"gap_should": 18, "fuse_from_source": 180.5},
        "x": {"shop": {"bin": [1, "b", None, {"deep": [True]}], "e": 1e300}},
    }


def _bay() -> dict[str, Any]:
    return {
        "wall": [[-50, -50], [1700, -50], [1700, 520], [-50, 520]],
        "landings": [
            {
                "id": "L1",
                "outline": rectangle(0, 0, 80, 400),
                "recess": -1.5,
                "sheet": 0.9,
                "behind": 40,
                "tilt": [1.5, -2],
            },
            {"id": "L2", "outline": rectangle(1000, 0, 1080, 400), "recess": None},
        ],
        "stays": [
            {
                "id": "ST1",
                "name": "Belt reel",
                "outline": rectangle(600, 420, 700, 500),
                "height": 62.5,
                "keep": "reach",
                "clear": 5,
            }
        ],
        "linings": [{"id": "LN1", "name": "Carpet", "outline": rectangle(-50, -50, 500, 0), "thickness": 12}],
        "vents": [{"id": "V1", "outline": rectangle(1500, 400, 1600, 500), "free_area": 150000}],
        "no_drill": [{"id": "ND1", "name": "Tank", "outline": rectangle(300, 0, 420, 60)}],
        "seats": [
            {
                "id": "SE1",
                "x": [-50, 800],
                "up": [[150, -50], [260, -50], [200, 520]],
                "folded": [[150, -50], [700, -50], [700, 60]],
                "hinge": [200, -60],
                "swing": -85,
                "give": 12,
                "probes": [[100, 100, 160], [400, 100, 158.5]],
            }
        ],
        "eye": {"x": [-200, 1900], "y": [400, 1000], "z": [450, 950]},
        "entries": [
            {
                "id": "FEED",
                "name": "Grommet left",
                "at": [0, 0],
                "carries": ["power", "ground"],
                "run": 3200,
                "way": "left sill",
                "to": "battery",
            },
            {"id": "RCA", "name": "Tunnel", "at": [900, -40], "carries": ["signal", "remote"], "run": None},
        ],
        "lined": 4,
        "lean": -12.5,
        "faces": "forward",
        "way_in": [900, 700],
        "tape": 2,
        "supply": {"volts": 14.2, "air": [-30, 80], "fit": 18},
    }


def _boards() -> list[dict[str, Any]]:
    return [
        {
            "id": "B1",
            "outline": rectangle(0, 0, 900, 400),
            "corner_radius": 20,
            "cutouts": [
                {"id": "C1", "outline": rectangle(700, 100, 800, 200)},
                {"id": "C2", "outline": rectangle(800, 200, 850, 300)},
            ],
            "material": "birch-ply",
            "thickness": 12,
            "standoff": 20,
            "stock": [12, 6],
        },
        {"id": "B2", "outline": rectangle(1000, 0, 1600, 350), "thickness": 10, "standoff": -2.5},
    ]


def _amplifier() -> dict[str, Any]:
    return {
        "name": "Deep amplifier",
        "kind": "amplifier",
        "outline": rectangle(-150, -90, 150, 90),
        "height": 54,
        "mass": 4.2,
        "foot": 3,
        "solids": [{"outline": rectangle(-150, -80, 150, 80), "z": [0, 54]}],
        "screws": [{"at": [-140, -80], "thread": "M5"}, {"at": [140, 80], "thread": "M5"}],
        "ports": [
            {
                "id": "PWR",
                "kind": "power",
                "at": [150, 40],
                "z": 20,
                "towards": 0,
                "plug": 30,
                "plug_wide": 18,
                "ways": 2,
                "stud": "M6",
            },
            {"id": "SIG", "kind": "signal-in", "at": [-150, 0], "z": 20.5, "towards": 180, "plug": 45},
            {"id": "TOP", "kind": "remote", "at": [0, 0], "z": 54, "towards": "out", "plug": 12},
        ],
        "service": [
            {"id": "GAIN", "kind": "dial", "at": [-100, 60], "z": 54, "facing": "out", "tool": "screwdriver"},
            {"id": "FUSE", "kind": "fuse", "at": [150, -40], "z": 25, "facing": 0, "tool": "fingers"},
        ],
        "air": {"out": 20, "left": 5, "right": 5, "up": 25, "down": 1},
        "current": 42.5,
        "fuse": 80,
        "heat": 90,
        "guessed": ["heat", "foot"],
    }


def _block() -> dict[str, Any]:
    return {
        "name": "Block",
        "kind": "distribution",
        "outline": rectangle(-40, -30, 40, 30),
        "height": None,
        "mass": None,
        "foot": None,
        "ports": [
            {"id": "IN", "kind": "power", "at": [-40, 0], "z": 10, "towards": 180, "plug": 20},
            {"id": "OUT", "kind": "power", "at": [40, 0], "z": 10, "towards": 0, "plug": 20},
        ],
        "current": None,
        "fuse": None,
        "heat": None,
    }
