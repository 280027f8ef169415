"""The API does what its published description says, whatever it is sent."""

from __future__ import annotations

import json
import re
import subprocess
import sys
from collections.abc import Iterator
from importlib.resources import files
from pathlib import Path

import pytest
import schemathesis
from hypothesis import HealthCheck, settings
from schemathesis.specs.openapi.checks import positive_data_acceptance

from lineproof.desk.app import application
from lineproof.desk.lessons import Lessons
from lineproof.proof import Effort

from .lessons import folder
from .served import served

ROOT = Path(__file__).resolve().parents[2]
DESCRIPTION = json.loads(files("lineproof.desk").joinpath("openapi.json").read_text("utf-8"))
api = schemathesis.openapi.from_dict(DESCRIPTION)


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    lessons = Lessons(Effort.SKETCH)
    lessons.open(folder(tmp_path_factory.mktemp("desk")))
    with served(lessons) as told:
        yield told


def test_the_description_is_that_of_the_code() -> None:
    assert application(Lessons()).openapi() == DESCRIPTION


def test_the_page_is_built_with_the_shapes_of_the_server() -> None:
    """The TypeScript compiler then sees to it that the page keeps to them: `npm run check`."""
    done = subprocess.run(
        [sys.executable, "tools/desk_api.py", "--check"], cwd=ROOT, capture_output=True, text=True
    )
    assert (done.returncode, done.stderr) == (0, "")
    types = (ROOT / "web/src/wire.ts").read_text(encoding="utf-8")
    assert set(re.findall(r"export interface (\w+)", types)) <= set(DESCRIPTION["components"]["schemas"])  # fmt: skip
    for part in (
        "  parent: string | null;\n",
        "  tags: [string, string][];\n",
        '  outcome: "holds" | "fails" | "unsettled" | "waiting";\n',
        "  window?: string;\n",
        "  order: [string, number | null][] | null;\n",
    ):
        assert part in types


def test_every_operation_says_what_it_answers_and_how_it_refuses() -> None:
    for path, operations in DESCRIPTION["paths"].items():
        for operation in operations.values():
            assert operation["description"], path
            assert operation["responses"]["422"]["content"]["application/json"]["schema"] == {
                "$ref": "#/components/schemas/Refused"
            }, path


# Events never end; a start and publishing make folders wherever they are told to; of a lesson that is taken off nothing more could be asked.
@api.exclude(operation_id=["events", "start", "publish", "take_off"]).parametrize()
@settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
def test_whatever_is_asked_is_answered_as_described(case: schemathesis.Case, address: str) -> None:
    base, token = address.split("/#token=")
    headers = {"Authorization": f"Bearer {token}", "Origin": base}
    if "key" in case.path_parameters and len(case.path_parameters["key"]) % 2:
        case.path_parameters["key"] = "1"  # else hardly any request would meet the lesson
    response = case.call(base_url=base, headers=headers)
    assert response.status_code < 500, response.text
    # An edit of the right form may still be one that cannot be made.
    case.validate_response(response, excluded_checks=[positive_data_acceptance])
