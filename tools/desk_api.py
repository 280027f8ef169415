"""Writes the desk's OpenAPI description, which ships with the package.

.venv/bin/python tools/desk_api.py            writes it anew
.venv/bin/python tools/desk_api.py --check    fails when it is stale
"""

from __future__ import annotations

import argparse
import json
import sys
from pathlib import Path

from lineproof.desk.app import application
from lineproof.desk.lessons import Lessons

FILE = Path(__file__).resolve().parent.parent / "python" / "lineproof" / "desk" / "openapi.json"


def described() -> str:
    """The description of the API as the code has it."""
    return json.dumps(application(Lessons()).openapi(), indent=1, sort_keys=True) + "\n"


def main() -> int:
    """Writes or checks the file."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--check", action="store_true", help="only say whether it is stale")
    given = parser.parse_args()
    text = described()
    if not given.check:
        FILE.write_text(text, encoding="utf-8")
    elif not FILE.exists() or FILE.read_text(encoding="utf-8") != text:
        print(f"{FILE.name} is stale: run python tools/desk_api.py", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
