"""Whether the desktop asks programs to move less; each system keeps that wish somewhere else."""

import ctypes
import shutil
import subprocess
import sys
from collections.abc import Callable
from functools import cache
from pathlib import Path

from PySide6.QtCore import QSettings, QStandardPaths

_CLIENT_AREA_ANIMATION = 0x1042  # SPI_GETCLIENTAREAANIMATION of the Windows SDK (winuser.h)
_PATIENCE = 0.5  # s that a settings program may take


@cache
def system_calm() -> bool:
    """Return whether the desktop asks for reduced motion; False where it does not say.  Asked once."""
    asked: dict[str, Callable[[], bool]] = {"win32": _windows, "darwin": _mac}
    try:
        return asked.get(sys.platform, _free_desktop)()
    except (OSError, AttributeError, subprocess.SubprocessError):
        return False


def _windows() -> bool:
    """Return whether "Animation effects" is off."""
    shown = ctypes.c_int(1)
    library = getattr(ctypes, "windll").user32  # noqa: B009  the name exists on Windows only
    asked = library.SystemParametersInfoW(_CLIENT_AREA_ANIMATION, 0, ctypes.byref(shown), 0)
    return bool(asked) and not shown.value


def _mac() -> bool:
    """Return whether "Reduce motion" is on."""
    path = Path.home() / "Library" / "Preferences" / "com.apple.universalaccess.plist"
    kept = QSettings(str(path), QSettings.Format.NativeFormat)
    return _yes(kept.value("reduceMotion"))


def _free_desktop() -> bool:
    """Return whether the desktop's animations are off: in KDE's file, in GTK's, or in GNOME's settings."""
    config = QStandardPaths.StandardLocation.GenericConfigLocation
    for name, key, calm in (
        ("kdeglobals", "KDE/AnimationDurationFactor", _zero),
        ("gtk-4.0/settings.ini", "Settings/gtk-enable-animations", _no),
        ("gtk-3.0/settings.ini", "Settings/gtk-enable-animations", _no),
    ):
        path = QStandardPaths.locate(config, name)
        if path and calm(QSettings(path, QSettings.Format.IniFormat).value(key)):
            return True
    return _gnome()


def _gnome() -> bool:
    program = shutil.which("gsettings")
    if program is None:
        return False
    asked = [program, "get", "org.gnome.desktop.interface", "enable-animations"]
    said = subprocess.run(
        asked, capture_output=True, text=True, encoding="utf-8", timeout=_PATIENCE, check=False
    )
    return _no(said.stdout.strip())


def _yes(kept: object) -> bool:
    return str(kept).lower() in ("1", "true")


def _no(kept: object) -> bool:
    return str(kept).lower() in ("0", "false")


def _zero(kept: object) -> bool:
    try:
        return kept is not None and float(str(kept)) == 0.0
    except ValueError:
        return False
