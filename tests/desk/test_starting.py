"""A lesson comes on the desk: opened, new, imported, from a position, or the demo."""

from __future__ import annotations

import base64
import io
import re
from pathlib import Path
from typing import Any

import chess.pgn
import pytest

from .conftest import Desk
from .lessons import VIENNA
from .refusing import fill_disk

ROOT = Path(__file__).resolve().parents[2]
ENDING = "8/8/8/8/4k3/8/4P3/4K3 w - - 0 1"


def start(desk: Desk, **asked: Any) -> Any:
    return desk.client.post("/api/lessons", json={"start": asked})


def started(desk: Desk, **asked: Any) -> dict[str, Any]:
    """The lesson that came on the desk."""
    answer = start(desk, **asked)
    assert answer.status_code == 200, answer.text
    return desk.get(f"/api/lessons/{answer.json()['key']}")


def given(*texts: str | bytes) -> list[dict[str, str]]:
    """Files as a window hands them over."""
    data = [text.encode() if isinstance(text, str) else text for text in texts]
    return [
        {"name": f"{number}.pgn", "base64": base64.b64encode(each).decode()}
        for number, each in enumerate(data, 1)
    ]


@pytest.fixture
def there(tmp_path: Path) -> str:
    return str(tmp_path / "evening")


def test_a_lesson_is_opened_by_its_path(desk: Desk) -> None:
    path = desk.path.parent / "other.pgn"
    path.write_text("1. d4 *")
    lesson = started(desk, how="open", path=str(path))
    assert [p["san"] for p in lesson["places"]] == [None, "d4"]
    assert [each["key"] for each in desk.get("/api/lessons")["lessons"]] == ["1", "2"]
    assert started(desk, how="open", path=str(desk.path))["key"] == "1"


def test_a_new_lesson_begins_empty_and_can_be_written(desk: Desk, there: str) -> None:
    lesson = started(desk, how="new", path=there, side="black", audience=1500)
    assert (lesson["title"], lesson["side"], lesson["audience"]) == ("evening", "black", 1500)
    (root,) = lesson["places"]
    edit = {"op": "add_line", "place": root["id"], "moves": ["d4", "Nf6", "c4", "e5"]}
    body = {"version": 0, "edit": edit}
    answer = desk.client.post(f"/api/lessons/{lesson['key']}/edits", json=body)
    assert len(answer.json()["lesson"]["places"]) == 5


def test_a_new_lesson_is_made_of_a_file_byte_for_byte(desk: Desk, there: str) -> None:
    data = b'[Event "L\xe9gal"]\r\n\r\n1. e4 {caf\xe9} e5 *\r\n'
    lesson = started(desk, how="new", path=there, files=given(data))
    assert (Path(there) / "lines.pgn").read_bytes() == data
    assert lesson["title"] == "Légal"


def test_a_new_lesson_is_made_of_several_files_at_once(desk: Desk, there: str) -> None:
    lesson = started(desk, how="new", path=there, files=given("1. e4 e5", "1. d4", b"1. c4 {\xe9} *"))  # fmt: skip
    assert [p["san"] for p in lesson["places"]] == [None, "e4", "e5", None, "d4", None, "c4"]
    assert lesson["places"][-1]["after"][0]["text"] == "é"
    text = (Path(there) / "lines.pgn").read_text(encoding="utf-8")
    stream = io.StringIO(text)
    games = iter(lambda: chess.pgn.read_game(stream), None)
    assert [game.end().ply() for game in games] == [2, 1, 1]


def test_a_new_lesson_begins_with_a_position(desk: Desk, there: str) -> None:
    lesson = started(desk, how="new", path=there, fen=ENDING)
    assert [p["fen"] for p in lesson["places"]] == [ENDING]
    assert start(desk, how="new", path=f"{there}-2", fen="8/8 w").status_code == 422
    assert not Path(f"{there}-2").exists()


def test_the_demo_is_a_copy_of_the_vienna_lesson(desk: Desk, there: str) -> None:
    lesson = started(desk, how="demo", path=there)
    example = ROOT / "examples" / "vienna" / "lines.pgn"
    assert (Path(there) / "lines.pgn").read_bytes() == example.read_bytes()
    assert (lesson["side"], lesson["audience"]) == ("white", 1400)


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        ({"how": "open", "path": "/no such/lesson"}, "no such file"),
        ({"how": "open", "path": "lines.pgn"}, "not whole"),
        ({"how": "open", "path": "/\0"}, "no file can have"),
        ({"how": "new", "path": "evening"}, "not whole"),
        ({"how": "open", "path": "/dev/zero"}, "ordinary file"),
    ],
)
def test_what_cannot_be_opened_is_refused_with_the_reason(
    desk: Desk, asked: dict[str, str], told: str
) -> None:
    answer = start(desk, **asked)
    assert answer.status_code == 422
    assert told in answer.json()["error"]["message"]


def test_a_folder_that_holds_something_is_left_alone(desk: Desk) -> None:
    before = sorted(desk.path.rglob("*"))
    answer = start(desk, how="new", path=str(desk.path))
    assert answer.status_code == 422
    assert "something is there" in answer.json()["error"]["message"]
    assert sorted(desk.path.rglob("*")) == before


@pytest.mark.parametrize("more", [{}, {"fen": ENDING}])
def test_a_new_lesson_has_the_title_that_it_is_given(
    desk: Desk, there: str, more: dict[str, str]
) -> None:
    found = started(desk, how="new", path=there, title=' The "short" way ', **more)
    assert found["title"] == 'The "short" way'
    assert dict(found["games"][0]["tags"])["Event"].replace("\\", "") == 'The "short" way'


@pytest.mark.parametrize("data", ["1. e5 *", "1. e4 {open", "%PDF-1.7", "", b"\0\0\0\0"])
def test_a_file_that_is_no_pgn_makes_no_lesson(desk: Desk, there: str, data: str | bytes) -> None:
    answer = start(desk, how="new", path=there, files=given("1. e4 *", data))
    assert answer.status_code == 422
    assert not Path(there).exists()
    assert desk.ask(op="import", files=given(data)).status_code == 422
    assert desk.text == VIENNA


def test_games_are_imported_after_those_of_the_lesson_and_taken_back_in_one_step(
    desk: Desk,
) -> None:
    done = desk.edit(op="import", files=given("1. d4 {one} Nf6", '[Event "Two"]\n\n1. c4 e5 1-0\n'))
    assert desk.text == f'{VIENNA.rstrip()}\n\n1. d4 {{one}} Nf6 *\n\n[Event "Two"]\n\n1. c4 e5 1-0'
    assert [game["result"] for game in desk.lesson["games"]] == ["*", "*", "1-0"]
    assert done["at"] == desk.lesson["games"][1]["root"]
    desk.edit(op="undo")
    assert desk.text == VIENNA


MORE = """[Event "Two"]
[White "Ann Quay"]

{Hello.} 1. e4! e5 2. Nc3 {White develops a  knight.} {And now?} Nc6 (2... Bc5 3. f4 {New.} (3. Qg4) d6) 3. f4 1-0

[Event "Three"]

1. d4 d5 *

[SetUp "1"]
[FEN "8/8/8/8/4k3/8/4P3/4K3 w - - 0 1"]

1. Kd2 {An ending.} *
"""


def roads(text: str) -> tuple[set[tuple[str, ...]], set[tuple[tuple[str, ...], str]]]:
    """All roads of the games in a text, and the words on them, as python-chess reads it."""
    found, said = set(), set()
    with io.StringIO(text) as stream:
        while (game := chess.pgn.read_game(stream)) is not None:
            assert not game.errors
            nodes: list[chess.pgn.GameNode] = [game]
            while nodes:
                node = nodes.pop()
                road = (game.board().fen(), *(move.uci() for move in node.board().move_stack))
                found.add(road)
                comments = [node.comment] if isinstance(node.comment, str) else node.comment
                said |= {
                    (road, w)
                    for c in comments
                    for w in re.findall(r"[A-Z][^.?]*[.?]", " ".join(c.split()))
                }
                nodes += node.variations
    return found, said


def test_games_are_written_into_the_lines_that_are_there_and_nothing_of_them_is_lost(
    desk: Desk,
) -> None:
    desk.edit(op="import", files=given(MORE), joined=True)
    assert roads(desk.text) == tuple(a | b for a, b in zip(roads(VIENNA), roads(MORE), strict=True))
    assert [dict(game["tags"]).get("Event") for game in desk.lesson["games"]] == [
        "The Vienna Gambit for White",
        "Three",
        None,
    ]
    assert desk.place("e4")["nags"] == [1]
    assert desk.text.count("White develops a") == 1 and "Ann Quay" not in desk.text
    once = desk.text
    desk.edit(op="import", files=given(MORE), joined=True)
    assert desk.text.split() == once.split()
    while desk.lesson["undo"]:
        desk.edit(op="undo")
    assert desk.text == VIENNA


def test_of_several_games_that_fit_the_one_with_the_most_moves_in_common_takes_it_in(
    desk: Desk,
) -> None:
    desk.edit(op="import", files=given("1. e4 c5 2. Nf3 d6 *"))
    desk.edit(op="import", files=given("1. e4 c5 2. Nf3 Nc6 *", "1. d4 *"), joined=True)
    assert [game["result"] for game in desk.lesson["games"]] == ["*", "*", "*"]
    assert desk.text.rstrip().endswith("1. e4 c5 2. Nf3 d6 (2... Nc6) *\n\n1. d4 *")


def test_what_comes_into_an_empty_lesson_is_written_together(desk: Desk, there: str) -> None:
    key = started(desk, how="new", path=there)["key"]
    files = given("1. e4 e5 2. Nf3 *", "1. e4 c5 {Other.} *")
    body = {"version": 0, "edit": {"op": "import", "files": files, "joined": True}}
    answer = desk.client.post(f"/api/lessons/{key}/edits", json=body)
    assert answer.status_code == 200, answer.text
    assert len(answer.json()["lesson"]["games"]) == 1
    assert len(answer.json()["lesson"]["places"]) == 5


def test_words_that_can_stand_in_no_braces_refuse_the_whole(desk: Desk) -> None:
    answer = desk.ask(op="import", files=given("1. e4 ; a } brace\n e5 *"), joined=True)
    assert answer.status_code == 422
    assert desk.text == VIENNA


def test_a_lesson_without_a_move_makes_way_for_what_is_imported(desk: Desk, there: str) -> None:
    key = started(desk, how="new", path=there)["key"]
    body = {"version": 0, "edit": {"op": "import", "files": given(VIENNA)}}
    answer = desk.client.post(f"/api/lessons/{key}/edits", json=body)
    assert len(answer.json()["lesson"]["games"]) == 1
    assert len(answer.json()["lesson"]["places"]) == 11


def test_a_folder_shows_lessons_files_and_folders_by_name_only(desk: Desk) -> None:
    base = desk.path.parent
    (base / "a file.PGN").write_text("1. e4 *")
    (base / "letter.txt").write_text("private")
    (base / ".hidden").mkdir()
    (base / "games").mkdir()
    found = desk.get("/api/folder", path=str(base))
    told = {entry["name"]: entry["kind"] for entry in found["entries"]}
    assert told == {"a file.PGN": "file", "vienna": "lesson", "games": "folder"}
    assert found["parent"] == str(base.parent)
    assert not found["more"]
    assert desk.get("/api/folder", path="/")["parent"] is None


@pytest.mark.parametrize("address", ["/no such folder", "vienna", "/\0", "~nobody/x"])
def test_a_folder_that_is_not_there_is_refused(desk: Desk, address: str) -> None:
    assert desk.client.get("/api/folder", params={"path": address}).status_code == 422


def test_a_lesson_is_taken_off_the_desk_once_it_is_saved(desk: Desk) -> None:
    desk.edit(op="add_comment", place=desk.place("e4")["id"], text="The last words.")
    answer = desk.client.delete("/api/lessons/1")
    assert answer.json() == {"lessons": [], "outside": None}
    assert "The last words." in desk.on_disk
    assert desk.client.get("/api/lessons/1").status_code == 404
    assert desk.client.delete("/api/lessons/1").status_code == 404
    # It is nobody's now: another program may write it, and it is opened again under a key of its own.
    again = desk.lessons.open(desk.path).opened
    assert (again.key, "The last words." in again.lesson.text) == ("2", True)
    assert desk.get("/api/lessons/2")["undo"]


def test_one_that_cannot_be_saved_stays_on_the_desk(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as patch:
        fill_disk(patch)
        desk.edit(op="add_comment", place=desk.place("e4")["id"], text="The last words.")
        answer = desk.client.delete("/api/lessons/1")
        assert answer.status_code == 422
        assert "not all of it is saved" in answer.json()["error"]["message"]
        assert desk.look()["key"] == "1"
    assert desk.client.delete("/api/lessons/1").status_code == 200
    assert "The last words." in desk.on_disk
