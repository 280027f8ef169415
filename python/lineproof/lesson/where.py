"""Where the data of a user lives: one clear place for each kind.

>>> list(where())
['collections', 'students', 'questions', 'weighed openings', 'bare files']
"""

from __future__ import annotations

import hashlib
import os
import re
from pathlib import Path

VARIABLE = "LINEPROOF_DATA"
"""Environment variable that puts everything elsewhere."""


def data_folder() -> Path:
    """The folder of all user data; it need not exist yet."""
    chosen = os.environ.get(VARIABLE)
    if chosen:
        return Path(chosen)
    from platformdirs import user_data_path

    return user_data_path("lineproof", appauthor=False)


def where() -> dict[str, Path]:
    """Each kind of user data and its folder, in a fixed order.

    "weighed openings" holds evidence, and is safe to delete. "bare files" holds the history and cache of lessons that are a PGN file without a folder.
    """
    base = data_folder()
    return {
        "collections": base / "collections",
        "students": base / "students",
        "questions": base / "questions",
        "weighed openings": base / "weighed",
        "bare files": base / "bare",
    }


def bare_home(file: Path) -> Path:
    """The folder of the history and cache of a bare PGN file, by its absolute path."""
    real = os.path.realpath(file)
    digest = hashlib.sha256(os.fsencode(real)).hexdigest()[:16]
    name = re.sub(r"\W+", "-", file.stem).strip("-")[:40]
    return where()["bare files"] / f"{name or 'lesson'}-{digest}"
