"""Edits as the page asks for them."""

from __future__ import annotations

import pytest

from .conftest import Desk
from .lessons import VIENNA
from .waiting import until


def test_the_lesson_comes_as_places_in_spoken_order(desk: Desk) -> None:
    places = desk.lesson["places"]
    moves = [p["san"] for p in places]
    assert moves == [None, "e4", "e5", "Nc3", "Nf6", "Bc5", "f4", "f4", "d5", "fxe5", "Nxe4"]
    assert [p["number"] for p in places[:4]] == ["", "1.", "1...", "2."]
    assert places[0]["after"] == [
        {"index": 0, "text": "Tonight we play the Vienna.", "to_line_end": False}
    ]
    assert desk.place("e4", "e5", "Nc3", "Bc5", "f4")["depth"] == 1
    assert desk.place("e4", "e5", "Nc3", "Nf6", "f4", "d5")["nags"] == [1]
    assert (desk.lesson["side"], desk.lesson["audience"]) == ("white", 1400)


def test_a_comment_that_opens_a_variation_stands_before_its_first_move(desk: Desk) -> None:
    path = desk.path.parent / "other.pgn"
    path.write_text("1. e4 e5 ({or else} 1... c5 {sharp} 2. Nf3) 2. Nc3 *")
    desk.lessons.open(path)
    lesson = desk.get("/api/lessons/2")
    c5 = next(p for p in lesson["places"] if p["san"] == "c5")
    assert [c["text"] for c in c5["before"]] == ["or else"]
    assert [c["text"] for c in c5["after"]] == ["sharp"]


def test_a_move_at_the_end_extends_the_line(desk: Desk) -> None:
    end = desk.place("e4", "e5", "Nc3", "Nf6", "f4", "d5", "fxe5", "Nxe4")["id"]
    done = desk.edit(op="add_line", place=end, moves=["d1f3", "Nc6"])
    assert done["said"] == "extended"
    assert desk.text == VIENNA.replace("Nxe4 *", "Nxe4 5. Qf3 Nc6 *")
    assert (
        done["at"]
        == desk.place(*["e4", "e5", "Nc3", "Nf6", "f4", "d5", "fxe5", "Nxe4", "Qf3", "Nc6"])["id"]
    )


def test_another_move_branches_off(desk: Desk) -> None:
    done = desk.edit(op="add_line", place=desk.place("e4", "e5")["id"], moves=["Nf3"])
    assert done["said"] == "branched"
    assert "(2. Nf3)" in desk.text


def test_a_known_move_changes_nothing(desk: Desk) -> None:
    done = desk.edit(op="add_line", place=desk.place("e4")["id"], moves=["e5"])
    assert (done["said"], done["lesson"]["version"]) == ("known", 0)
    assert desk.text == VIENNA


def test_a_move_that_transposes_says_so(desk: Desk) -> None:
    start = desk.place()["id"]
    done = desk.edit(op="add_line", place=start, moves=["Nc3", "e5", "e4"])
    assert done["joins"] == desk.place("e4", "e5", "Nc3")["id"]
    twin = next(p for p in desk.lesson["places"] if p["id"] == done["joins"])
    assert twin["joins"] == done["at"]


@pytest.mark.parametrize("move", ["Nd5", "e9", "", "<script>", "e2e5", "0-0"])
def test_a_move_that_cannot_be_played_is_refused(desk: Desk, move: str) -> None:
    answer = desk.ask(op="add_line", place=desk.place("e4")["id"], moves=[move])
    assert answer.status_code == 422
    assert answer.json()["error"]["message"]
    assert desk.text == VIENNA


def test_words_are_changed_and_nothing_else_is(desk: Desk) -> None:
    comment = desk.place("e4", "e5", "Nc3")["after"][0]["index"]
    done = desk.edit(op="change_words", comment=comment, text="The knight comes out.")
    assert desk.text == VIENNA.replace("White develops a knight.", "The knight comes out.")
    assert done["at"] == desk.place("e4", "e5", "Nc3")["id"]


def test_words_get_the_line_ends_of_the_file(tmp_path, desk: Desk) -> None:
    path = tmp_path / "other.pgn"
    path.write_bytes(b'[Event "x"]\r\n\r\n1. e4 {one} *\r\n')
    opened = desk.lessons.open(path).opened
    edit = {"op": "change_words", "comment": 0, "text": "one\ntwo"}
    answer = desk.client.post("/api/lessons/2/edits", json={"version": 0, "edit": edit})
    assert answer.status_code == 200
    assert opened.lesson.text == '[Event "x"]\r\n\r\n1. e4 {one\r\ntwo} *\r\n'


def test_comments_are_added_and_removed(desk: Desk) -> None:
    desk.edit(op="add_comment", place=desk.place("e4")["id"], text="The king's pawn.")
    assert "1. e4 {The king's pawn.}" in desk.text
    index = desk.place("e4")["after"][0]["index"]
    desk.edit(op="remove_comment", comment=index)
    assert desk.text == VIENNA.replace("1. e4 e5", "1. e4 1... e5")


def test_moves_are_cut_promoted_and_marked(desk: Desk) -> None:
    bishop = ("e4", "e5", "Nc3", "Bc5")
    desk.edit(op="promote", place=desk.place(*bishop)["id"])
    assert desk.place(*bishop)["depth"] == 0
    desk.edit(op="cut", place=desk.place("e4", "e5", "Nc3", "Nf6")["id"])
    assert "Nf6" not in desk.text
    desk.edit(op="set_marks", place=desk.place(*bishop)["id"], nags=[2, 14])
    assert "Bc5? $14" in desk.text


def test_a_variation_is_brought_forward(desk: Desk) -> None:
    desk.edit(op="add_line", place=desk.place("e4", "e5", "Nc3")["id"], moves=["Nc6"])
    done = desk.edit(op="bring_forward", place=desk.place("e4", "e5", "Nc3", "Nc6")["id"])
    assert desk.text.index("2... Nc6") < desk.text.index("2... Bc5")
    assert done["at"] == desk.place("e4", "e5", "Nc3", "Nc6")["id"]
    answer = desk.ask(op="bring_forward", place=done["at"])
    assert answer.status_code == 422


def test_a_line_has_a_source_which_survives_edits_elsewhere(desk: Desk) -> None:
    bishop = ("e4", "e5", "Nc3", "Bc5")
    source = {"sort": "book", "words": "The club's handbook, page 12"}
    desk.edit(op="source", place=desk.place(*bishop)["id"], source=source)
    desk.edit(op="add_line", place=desk.place("e4")["id"], moves=["c5"])
    desk.edit(op="promote", place=desk.place(*bishop)["id"])
    assert [p["san"] for p in desk.lesson["places"] if p["source"] == source] == ["Bc5"]
    assert "page 12" in (desk.path / "lesson.toml").read_text()
    other = {"sort": "pupil", "words": "Robin"}
    desk.edit(op="source", place=desk.place(*bishop)["id"], source=other)
    assert desk.place(*bishop)["source"] == other
    desk.edit(op="source", place=desk.place(*bishop)["id"], source=None)
    assert desk.place(*bishop)["source"] is None
    assert "sources" not in (desk.path / "lesson.toml").read_text()


def test_a_source_that_is_none_is_left_alone_in_the_settings(desk: Desk) -> None:
    file = desk.path / "lesson.toml"
    kept = '\n[[decisions.sources]]\nposition = "far away"\nwords = "?"\n'
    file.write_text(file.read_text() + kept)
    until(lambda: desk.on_desk.opened.lesson.settings.decisions)
    desk.look()
    place = desk.place("e4")["id"]
    desk.edit(op="source", place=place, source={"sort": "game", "words": ""})
    desk.edit(op="source", place=place, source=None)
    assert "far away" in file.read_text()


def test_a_line_is_joined_where_it_transposes(desk: Desk) -> None:
    done = desk.edit(op="add_line", place=desk.place()["id"], moves=["Nc3", "e5", "e4"])
    desk.edit(op="join", place=done["at"], other=done["joins"])
    assert desk.place("Nc3", "e5", "e4", "Nf6", "f4", "d5", "fxe5", "Nxe4")


def test_title_side_and_audience_are_written(desk: Desk) -> None:
    desk.edit(op="settings", title="An evening", side="black", audience=1600)
    assert (desk.lesson["title"], desk.lesson["side"], desk.lesson["audience"]) == ("An evening", "black", 1600)  # fmt: skip
    assert 'title = "An evening"' in (desk.path / "lesson.toml").read_text()
    until(lambda: desk.on_desk.opened.saved_event().version == desk.lesson["version"])


def test_a_bare_file_has_no_place_for_settings(desk: Desk) -> None:
    path = desk.path.parent / "other.pgn"
    path.write_text("1. e4 *")
    desk.lessons.open(path)
    assert desk.get("/api/lessons/2")["folder"] is False
    body = {"version": 0, "edit": {"op": "settings", "side": "white"}}
    answer = desk.client.post("/api/lessons/2/edits", json=body)
    assert answer.status_code == 422
    assert answer.json()["error"]["kind"] == "SettingsError"


def test_an_edit_of_an_older_version_is_refused_with_the_present_one(desk: Desk) -> None:
    e4 = desk.place("e4")["id"]
    desk.edit(op="add_comment", place=e4, text="First.")
    answer = desk.ask(version=0, op="add_comment", place=e4, text="Second.")
    assert answer.status_code == 409
    assert answer.json()["lesson"] == desk.look()
    assert "Second" not in desk.text


def test_places_keep_their_names_over_edits_elsewhere(desk: Desk) -> None:
    before = {p["id"]: p["fen"] for p in desk.lesson["places"]}
    desk.edit(op="add_line", place=desk.place("e4")["id"], moves=["c5", "Nc3"])
    desk.edit(op="promote", place=desk.place("e4", "c5")["id"])
    after = {p["id"]: p["fen"] for p in desk.lesson["places"]}
    assert len(after) == len(before) + 2
    assert before.items() <= after.items()


def test_an_edit_is_in_the_file_within_moments(desk: Desk) -> None:
    desk.edit(op="add_comment", place=desk.place("e4")["id"], text="The king's pawn.")
    until(lambda: "The king's pawn." in desk.on_disk)
    assert desk.on_disk == desk.text


@pytest.mark.parametrize(
    "body",
    [b"", b"{", b"[]", b'{"version": 0}', b'{"version": -1, "edit": {"op": "undo"}}', b'{"version": 0, "edit": {"op": "erase"}}',
     b'{"version": 0, "edit": {"op": "undo", "more": 1}}', b'{"version": 0, "edit": {"op": "cut", "place": "\\ud800"}}',
     b'{"version": 0, "edit": {"op": "cut", "place": "../../etc"}}', b'{"version": 1e400, "edit": {"op": "undo"}}',
     b'{"version": 0, "edit": {"op": "add_comment", "place": "0dbbf6663adb0344", "text": "\\ud800"}}', b"\xff\xfe"],
)  # fmt: skip
def test_a_malformed_request_is_refused(desk: Desk, body: bytes) -> None:
    answer = desk.client.post(
        "/api/lessons/1/edits", content=body, headers={"Content-Type": "application/json"}
    )
    assert answer.status_code == 422
    assert answer.json()["error"]["message"]
    assert desk.text == VIENNA


@pytest.mark.parametrize("address", ["/api/lessons/2", "/api/lessons/1/nothing", "/api/nothing", "/api/lessons/../1"])  # fmt: skip
def test_what_is_not_there_is_not_found(desk: Desk, address: str) -> None:
    answer = desk.client.get(address)
    assert answer.status_code == 404
    assert answer.json()["error"]["message"]


def test_a_position_tells_its_legal_moves(desk: Desk) -> None:
    fen = desk.place("e4", "e5")["fen"]
    told = desk.get("/api/position", fen=fen)
    assert (told["turn"], told["check"], len(told["legal"])) == ("white", False, 29)
    knight = next(m for m in told["legal"] if m["san"] == "Nc3")
    assert knight["uci"] == "b1c3"
    assert knight["fen"] == desk.place("e4", "e5", "Nc3")["fen"]
    assert "knights b1 and g1" in told["alternative"]


@pytest.mark.parametrize("fen", ["", "nothing", "8/8/8/8/8/8/8/8 w - - 0 1", "x" * 201])
def test_a_position_that_is_none_is_refused(desk: Desk, fen: str) -> None:
    assert desk.client.get("/api/position", params={"fen": fen}).status_code == 422
