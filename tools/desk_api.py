"""Writes the desk's OpenAPI description, which ships with the package, and its shapes in TypeScript, which the page is built with.

.venv/bin/python tools/desk_api.py            writes them anew
.venv/bin/python tools/desk_api.py --check    fails when one is stale
"""

from __future__ import annotations

import argparse
import json
import sys
from pathlib import Path

from desk_types import typed

from lineproof.desk.app import application
from lineproof.desk.lessons import Lessons

ROOT = Path(__file__).resolve().parent.parent
DESCRIPTION = ROOT / "python" / "lineproof" / "desk" / "openapi.json"
TYPES = ROOT / "web" / "src" / "wire.ts"


def described() -> dict[Path, str]:
    """The files and their texts, of the API as the code has it."""
    api = application(Lessons()).openapi()
    return {DESCRIPTION: json.dumps(api, indent=1, sort_keys=True) + "\n", TYPES: typed(api)}


def main() -> int:
    """Writes or checks the files."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--check", action="store_true", help="only say whether one is stale")
    given = parser.parse_args()
    status = 0
    for file, text in described().items():
        if not given.check:
            file.write_text(text, encoding="utf-8")
        elif not file.exists() or file.read_text(encoding="utf-8") != text:
            print(f"{file.name} is stale: run python tools/desk_api.py", file=sys.stderr)
            status = 1
    return status


if __name__ == "__main__":
    sys.exit(main())
