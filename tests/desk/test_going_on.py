"""What is done with a lesson once it is written: figures of games, the order to tell it in, files to hand on."""

from __future__ import annotations

import base64
import io
from pathlib import Path
from typing import Any

import chess.pgn
import pytest

from lineproof.collection import Collection
from lineproof.desk import publishing, studies
from lineproof.desk.wire import LooksAsked
from lineproof.order import running_order
from lineproof.order.script import script
from lineproof.publish import Choices, Filming, chosen
from lineproof.replies import Replies, StudyError

from .conftest import Desk
from .lessons import VIENNA
from .test_findings import say
from .waiting import until

GAMES = """[Event "Invented"]
[White "A. Mallow"]
[Black "B. Teasel"]
[WhiteElo "1400"]
[BlackElo "1420"]
[Result "{result}"]

1. e4 e5 2. Nc3 {move} {result}
"""


@pytest.fixture
def games(desk: Desk, tmp_path: Path) -> Desk:
    """A desk beside a collection of three games, all of the audience."""
    file = tmp_path / "games.pgn"
    some = [("Nf6", "1-0"), ("Nf6", "0-1"), ("Bc5", "1-0")]
    file.write_text("\n".join(GAMES.format(move=m, result=r) for m, r in some))
    Collection.open("evenings").add([file])
    return desk


def figures(desk: Desk, *sans: str, **more: Any) -> Any:
    place = desk.place(*sans)["id"]
    query = {"place": place, "collection": "evenings", **more}
    return desk.client.get("/api/lessons/1/figures", params=query)


def test_games_are_counted_at_a_place_of_the_lesson(games: Desk) -> None:
    assert games.get("/api/collections") == {"collections": [{"name": "evenings", "games": 3}]}
    found = figures(games, "e4", "e5", "Nc3").json()
    assert found["games"] == 3
    told = [(m["move"]["san"], m["games"], m["of"]) for m in found["moves"]]
    assert told == [("Nf6", 2, 3), ("Bc5", 1, 3)]
    assert all(m["low"] < m["share"] < m["high"] for m in found["moves"])
    assert any("2 of 3 games" in line for line in found["said"])
    assert figures(games, "e4", "e5", "Nc3", of_audience="true").json()["games"] == 3
    # Black replied as the lesson has it in all three games, so that all come to 2. Nc3; two of three go on to 2... Nf6.
    assert (
        "Of 100 games of the audience in which White plays the lesson's moves 100.0"
        in found["said"][-1]
    )
    there = figures(games, "e4", "e5", "Nc3", "Nf6").json()["said"][-1]
    assert (
        "moves 66.7 (" in there and "resting on 3 games or more at each of Black's moves" in there
    )
    assert figures(games).json()["said"][-1].startswith("All games of the audience")
    games.edit(op="settings", audience=2400)
    assert figures(games, "e4", "e5", "Nc3", of_audience="true").json()["games"] == 0


@pytest.mark.parametrize("name", ["nothing", "../etc", "a/b", ""])
def test_a_collection_that_is_not_there_is_refused(games: Desk, name: str) -> None:
    assert figures(games, collection=name).status_code == 422


def test_the_order_is_that_of_the_command_line(desk: Desk) -> None:
    found = desk.get("/api/lessons/1/order")
    assert found["script"] == script(running_order(desk.on_desk.opened.lesson))
    assert "words a minute" in found["said"][0]


def test_a_lesson_without_words_has_no_order(desk: Desk) -> None:
    for _ in range(3):
        desk.edit(op="remove_comment", comment=0)
    answer = desk.client.get("/api/lessons/1/order")
    assert answer.status_code == 422
    assert answer.json()["error"]["kind"] == "OrderError"


def long_sideline(desk: Desk) -> None:
    """Adds a line with two minutes of words."""
    desk.edit(op="add_line", place=desk.place("e4")["id"], moves=["c5"])
    words = " ".join(["Long"] * 300)
    desk.edit(op="add_comment", place=desk.place("e4", "c5")["id"], text=words)


def test_the_order_is_fitted_into_minutes(desk: Desk) -> None:
    long_sideline(desk)
    lesson, store = desk.on_desk.opened.lesson, desk.on_desk.prover.store
    fitted = running_order(lesson, minutes=1, replies=Replies(lesson.settings.audience, store))
    told = desk.get("/api/lessons/1/order", minutes="1")["script"]
    assert told == script(fitted)
    assert "Long" not in told and "Long" in desk.get("/api/lessons/1/order")["script"]


@pytest.mark.parametrize("asked", ["minutes=100000", "minutes=0", "pauses=true"])
def test_an_order_that_cannot_be_had_is_refused(desk: Desk, asked: str) -> None:
    assert desk.client.get(f"/api/lessons/1/order?{asked}").status_code == 422


def test_what_is_new_since_an_edition_is_told(desk: Desk, tmp_path: Path) -> None:
    assert desk.get("/api/lessons/1/editions") == {"editions": []}
    assert desk.client.get("/api/lessons/1/editions/1/news").status_code == 422
    desk.findings()
    done = published(desk, publish(desk, tmp_path / "out", "pgn", anyway=True))
    assert desk.get("/api/lessons/1/editions") == {
        "editions": [{"number": 1, "words": done["edition"]}]
    }
    desk.edit(op="add_line", place=desk.place("e4")["id"], moves=["c5", "Nc3"])
    told = desk.get("/api/lessons/1/editions/1/news")["text"]
    assert "After 1. e4: 1... c5 2. Nc3." in told
    assert "to the lesson as it is now" in told and str(tmp_path) not in told
    desk.findings()
    published(desk, publish(desk, tmp_path / "out", "pgn", anyway=True))
    desk.edit(op="add_line", place=desk.place("e4")["id"], moves=["e6", "d4"])
    up_to = desk.get("/api/lessons/1/editions/1/news", until="2")["text"]
    assert "1... c5 2. Nc3" in up_to and "1... e6" not in up_to
    assert "1... e6" in desk.get("/api/lessons/1/editions/1/news")["text"]
    assert desk.client.get("/api/lessons/1/editions/1/news?until=9").status_code == 422


def test_the_file_is_had_as_it_is_and_another_reader_reads_it(desk: Desk) -> None:
    desk.edit(op="add_line", place=desk.place("e4")["id"], moves=["c5", "Nc3", "Nc6"])
    desk.edit(op="add_comment", place=desk.place("e4", "c5")["id"], text="The other way.")
    found = desk.get("/api/lessons/1/pgn")
    assert found["name"] == "lines.pgn"
    text = base64.b64decode(found["base64"]).decode()
    assert text == desk.text
    game = chess.pgn.read_game(io.StringIO(text))
    assert game is not None
    assert not game.errors
    board, nodes, fens = game.board(), [game], set()
    while nodes:
        node = nodes.pop()
        fens.add(node.board().fen(en_passant="legal"))
        nodes += node.variations
    assert fens == {place["fen"] for place in desk.lesson["places"]}
    assert board.fen() in fens
    (sicilian,) = (n for n in game.variations[0].variations if n.san() == "c5")
    assert sicilian.comment == "The other way."


def publish(desk: Desk, out: Path, *only: str, anyway: bool = False) -> Any:
    body = {"path": str(out), "only": list(only), "anyway": anyway}
    return desk.client.post("/api/lessons/1/publish", json=body)


def published(desk: Desk, answer: Any) -> Any:
    """What came of it, once it is done."""
    assert answer.status_code == 200, answer.text
    found = until(lambda: ended(desk))
    assert found["state"] == "done", found
    return found["published"]


def ended(desk: Desk) -> Any:
    found = desk.get("/api/lessons/1/publish")
    return None if found["state"] == "running" else found


def test_a_checked_lesson_is_published(desk: Desk, tmp_path: Path) -> None:
    names = {product["name"]: product for product in desk.get("/api/products")["products"]}
    assert names["epd"]["needs_study"]
    assert not names["pgn"]["needs_study"]
    assert [name for name, one in names.items() if one["usual"]] == [p.name for p in chosen(None)]
    desk.edit(op="remove_comment", comment=2)  # it is false
    desk.findings()
    done = published(desk, publish(desk, tmp_path / "out", "pgn"))
    for file in done["files"]:
        assert (Path(done["folder"]) / file["name"]).stat().st_size == file["size"]
    assert (tmp_path / "out" / "pgn").is_dir()


def test_captions_follow_an_order_that_is_cut(desk: Desk, tmp_path: Path) -> None:
    long_sideline(desk)
    desk.findings()
    body = {"path": str(tmp_path / "out"), "only": ["captions"], "anyway": True}
    said = []
    for looks in ({}, {"minutes": 1}):
        answer = desk.client.post("/api/lessons/1/publish", json=body | {"looks": looks})
        done = published(desk, answer)
        (file,) = (tmp_path / "out" / "captions").glob("*.vtt")
        said.append(file.read_text(encoding="utf-8"))
    assert "Long Long" in said[0] and "Long" not in said[1]
    assert any("1 line left out" in note for note in done["notes"])


def test_how_it_looks_is_as_it_was_asked_for() -> None:
    looks = LooksAsked(
        width=300, language="nl", notation="figurine", paper="letter", columns=1, large=True, vertical=True, burn_captions=True,
        constant_rate=True, codec="av1", loop=2, voice="/tmp/voice.wav",
    )  # fmt: skip
    assert publishing.choices_of(looks) == Choices(
        300, language="nl", notation="figurine", paper="letter", columns=1, large=True,
        filming=Filming(
            voice=Path("/tmp/voice.wav"), vertical=True, loop=2, burn_captions=True, constant_rate=True, codec="av1"
        ),
    )  # fmt: skip
    assert publishing.choices_of(LooksAsked()) == Choices()


def test_what_is_not_made_unless_it_is_named_is_not_chosen_beforehand(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(publishing, "chosen", lambda _: chosen(["pgn"]))
    products = desk.get("/api/products")["products"]
    assert [one["name"] for one in products if one["usual"]] == ["pgn"]


def test_a_lesson_in_which_something_fails_is_published_only_if_that_is_said(
    desk: Desk, tmp_path: Path
) -> None:
    say(desk, "This is mate.", "e4")
    desk.findings()
    answer = publish(desk, tmp_path / "out", "pgn")
    assert answer.status_code == 422
    error = answer.json()["error"]
    assert error["kind"] == "RefusedError"
    assert "--" not in error["hint"] and "also where claims fail" in error["hint"]
    assert not (tmp_path / "out").exists()
    answer = publish(desk, tmp_path / "out", "pgn", anyway=True)
    assert published(desk, answer)["failing"] >= 1


def test_what_needs_a_study_waits_for_one(desk: Desk, tmp_path: Path) -> None:
    desk.findings()
    answer = publish(desk, tmp_path / "out", "epd", anyway=True)
    assert answer.json()["what"] == "step"
    done = published(desk, answer)
    assert [file["product"] for file in done["files"]] or done["empty"] == ["epd"]
    assert desk.get("/api/lessons/1/study")["state"] == "done"


def test_a_study_that_fails_is_told_and_nothing_is_published(
    desk: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*_: Any, **__: Any) -> Any:
        raise StudyError("it cannot be studied")

    monkeypatch.setattr(studies, "study", broken)
    desk.findings()
    publish(desk, tmp_path / "out", "epd", anyway=True)
    found = until(lambda: ended(desk))
    assert (found["state"], found["problem"]) == ("failed", "it cannot be studied")
    assert not (tmp_path / "out").exists()
    # It is tried anew when it is asked for again.
    monkeypatch.undo()
    monkeypatch.setenv("LINEPROOF_DATA", str(tmp_path / "data"))
    assert published(desk, publish(desk, tmp_path / "out", "epd", anyway=True))["edition"]


def test_a_lesson_is_not_published_while_it_is_being_checked(desk: Desk, tmp_path: Path) -> None:
    desk.findings()
    desk.on_desk.prover.stop()
    desk.edit(op="change_words", comment=1, text="Another sentence.")
    answer = publish(desk, tmp_path / "out", "pgn", anyway=True)
    assert answer.status_code == 422
    assert "still being checked" in answer.json()["error"]["message"]


@pytest.mark.parametrize("only", ["nothing", ""])
def test_a_product_that_is_none_is_refused(desk: Desk, tmp_path: Path, only: str) -> None:
    desk.findings()
    assert publish(desk, tmp_path / "out", only, anyway=True).status_code == 422
    assert desk.text == VIENNA
