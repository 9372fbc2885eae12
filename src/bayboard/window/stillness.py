"""Whether the desktop asks that nothing moves: asked once, in each system's own way.

Windows: "Show animations"; macOS: "Reduce motion"; other desktops: the toolkit settings of the user's folder.
What cannot be asked is taken as no.
"""

import configparser
import contextlib
import plistlib
import sys
from functools import lru_cache
from pathlib import Path
from typing import Any

ANIMATES = (4, 0x02)  # byte and bit of "Animate controls and elements inside windows"; from memory
# (file in the settings folder, section, key, the value that asks for stillness)
TOOLKITS = (
    ("kdeglobals", "KDE", "AnimationDurationFactor", 0.0),
    ("gtk-4.0/settings.ini", "Settings", "gtk-enable-animations", 0.0),
    ("gtk-3.0/settings.ini", "Settings", "gtk-enable-animations", 0.0),
)


@lru_cache(maxsize=1)
def desktop_is_still() -> bool:
    """Return whether the desktop asks for less motion."""
    with contextlib.suppress(Exception):  # a desktop that answers oddly has asked for nothing
        if sys.platform == "win32":
            return _windows_is_still()
        if sys.platform == "darwin":
            return _plist_is_still(Path.home() / "Library/Preferences/com.apple.universalaccess.plist")
        return toolkits_are_still(Path.home() / ".config")
    return False


def _windows_is_still() -> bool:
    import winreg  # noqa: PLC0415  only there on Windows

    reg: Any = winreg
    with reg.OpenKey(reg.HKEY_CURRENT_USER, r"Control Panel\Desktop") as desktop:
        mask, _ = reg.QueryValueEx(desktop, "UserPreferencesMask")
    return not animates(bytes(mask))


def animates(mask: bytes) -> bool:
    """Return whether a UserPreferencesMask of Windows lets things in a window move; one too short does."""
    byte, bit = ANIMATES
    return len(mask) <= byte or bool(mask[byte] & bit)


def _plist_is_still(path: Path) -> bool:
    with path.open("rb") as file:
        return bool(plistlib.load(file).get("reduceMotion", False))


def toolkits_are_still(folder: Path) -> bool:
    """Return what the first toolkit says that says anything in a settings folder."""
    for name, section, key, still in TOOLKITS:
        read = configparser.ConfigParser(strict=False, interpolation=None)
        with contextlib.suppress(OSError, configparser.Error, UnicodeError):
            read.read(folder / name, encoding="utf-8")
        if not read.has_option(section, key):
            continue
        value = read.get(section, key).strip().lower()
        return value == "false" or _figure(value) == still
    return False


def _figure(value: str) -> float | None:
    try:
        return float(value)
    except ValueError:
        return None
