"""What is not from the page that this run opened is refused."""

from __future__ import annotations

import pytest
from starlette.testclient import TestClient

from lineproof.desk import app
from lineproof.desk.app import guarded

from .conftest import ADDRESS, HEADERS, PORT, TOKEN, Desk

EDIT = {"version": 0, "edit": {"op": "undo"}}


def without(name: str) -> dict[str, str | None]:
    return {**HEADERS, name: None}


@pytest.mark.parametrize("address", ["/api/lessons", "/api/lessons/1", "/api/position", "/api/nothing", "/api", "/api/"])  # fmt: skip
def test_nothing_of_the_api_is_had_without_the_token(desk: Desk, address: str) -> None:
    desk.client.headers.pop("Authorization")
    assert desk.client.get(address).status_code == 401


@pytest.mark.parametrize(
    "given",
    [
        TOKEN,
        f"Basic {TOKEN}",
        f"Bearer {TOKEN}x",
        f"Bearer {TOKEN[:-1]}",
        "Bearer ",
        "bearer",
        "Bearer é",
    ],
)
def test_another_token_is_refused(desk: Desk, given: str) -> None:
    headers = {"Authorization": given.encode("latin-1")}
    assert desk.client.get("/api/lessons", headers=headers).status_code == 401


@pytest.mark.parametrize(
    "host",
    [
        "example.org",
        "127.0.0.1",
        "127.0.0.1:1",
        "localhost",
        "example.org:8765",
        "127.0.0.1:8765.example.org",
        "",
    ],
)
def test_another_host_is_refused_for_the_page_too(desk: Desk, host: str) -> None:
    for path in ("/api/lessons", "/"):
        answer = desk.client.get(path, headers={"Host": host})
        assert answer.status_code == 421, path
        assert "lessons" not in answer.json()


def test_the_machine_may_be_called_localhost(desk: Desk) -> None:
    names = {"Host": "localhost:8765", "Origin": "http://localhost:8765"}
    assert desk.client.get("/api/lessons", headers=names).status_code == 200


@pytest.mark.parametrize(
    "origin",
    [
        "null",
        "http://example.org",
        "https://127.0.0.1:8765",
        "http://127.0.0.1:1",
        "http://localhost:8765",
        f"{ADDRESS}/",
    ],
)
def test_another_page_is_refused(desk: Desk, origin: str) -> None:
    assert desk.client.get("/api/lessons", headers={"Origin": origin}).status_code == 403
    answer = desk.client.post("/api/lessons/1/edits", json=EDIT, headers={"Origin": origin})
    assert answer.status_code == 403


def test_an_edit_must_say_which_page_it_comes_from_and_reading_need_not(desk: Desk) -> None:
    desk.client.headers.pop("Origin")
    assert desk.client.get("/api/lessons").status_code == 200
    assert desk.client.post("/api/lessons/1/edits", json=EDIT).status_code == 403


def test_a_body_that_is_too_long_is_refused(desk: Desk) -> None:
    answer = desk.client.post("/api/lessons/1/edits", content=b" " * 8_000_001)
    assert answer.status_code == 413


def test_a_body_of_no_said_length_ends_at_the_limit(desk: Desk) -> None:
    def pieces():
        for _ in range(9):
            yield b" " * 1_000_000

    answer = desk.client.post("/api/lessons/1/edits", content=pieces())
    assert answer.status_code in {400, 413}


def test_a_comment_that_is_too_long_is_refused(desk: Desk) -> None:
    place = desk.place("e4")["id"]
    answer = desk.ask(op="add_comment", place=place, text="x" * 1_000_001)
    assert answer.status_code == 422
    assert desk.look()["version"] == 0


def test_every_answer_forbids_scripts_from_elsewhere_and_other_sites_frames(desk: Desk) -> None:
    for path in ("/", "/nothing", "/api/lessons", "/api/nothing"):
        headers = desk.client.get(path).headers
        policy = headers["content-security-policy"]
        assert "default-src 'none'" in policy
        assert "script-src 'self';" in policy
        assert "frame-ancestors 'none'" in policy
        assert "unsafe" not in policy
        assert "http" not in policy
        assert headers["x-content-type-options"] == "nosniff"
        assert headers["cache-control"] == "no-store"
        assert not [name for name in headers if name.startswith("access-control-")]


@pytest.mark.parametrize(
    "address",
    [
        "/../app.py",
        "/%2e%2e/app.py",
        "/..%2fapp.py",
        "/page.py",
        "//etc/passwd",
        "/%2fetc%2fpasswd",
        "/lines.pgn",
        "/C:\\x",
    ],
)
def test_no_file_but_the_pages_own_is_served(desk: Desk, address: str) -> None:
    answer = desk.client.get(address)
    assert answer.status_code == 404
    assert "import" not in answer.text


def test_a_fault_of_the_program_is_told_as_one(desk: Desk, monkeypatch) -> None:
    def broken(*given: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr(app, "position_shown", broken)
    client = TestClient(
        guarded(desk.lessons, TOKEN, PORT), ADDRESS, headers=HEADERS, raise_server_exceptions=False
    )
    answer = client.get("/api/position", params={"fen": desk.place()["fen"]})
    assert answer.status_code == 500
    assert "fault" in answer.json()["error"]["message"]
    assert "default-src 'none'" in answer.headers["content-security-policy"]
