"""A lesson told and handed on from the desk: running order, the PGN file, products; and what games say of a position."""

from __future__ import annotations

import io
import os
import subprocess
import sys
from pathlib import Path

import chess.pgn
from playwright.sync_api import expect

from .conftest import RUN
from .test_writing import SHORT, NewPage, Start, move, on_disk, opened, saved

GAMBIT = """[SetUp "1"]
[FEN "rnbqkb1r/pppp1ppp/5n2/4p3/4P3/2N5/PPPP1PPP/R1BQKBNR w KQkq - 2 3"]

3. f4 d5 {The best answer.} *
"""


def test_the_running_order_is_told_with_its_times(start: Start, new_page: NewPage) -> None:
    page = opened(new_page, start(SHORT, side="white"))
    page.get_by_role("button", name="the running order").click()
    expect(page.locator("pre.script")).to_contain_text("The gambit.")
    expect(page.locator("desk-hand-on")).to_contain_text("at 150 words a minute")
    expect(page.locator("pre.script")).not_to_contain_text("**")
    with page.expect_download() as download:
        page.get_by_role("button", name="save the script").click()
    assert "**Play**" in download.value.path().read_text(encoding="utf-8")


def test_a_file_is_imported_answered_and_exported_as_python_chess_reads_it(
    start: Start, new_page: NewPage, tmp_path: Path
) -> None:
    more = tmp_path / "gambit.pgn"
    more.write_text(f'[Event "The gambit"]\n{GAMBIT}', encoding="utf-8")
    desk = start('[Event "The rest"]\n\n1. e4 *\n', side="white")
    page = opened(new_page, desk)
    page.get_by_text("About this lesson", exact=True).click()
    page.get_by_label("Add the games of PGN files").set_input_files(more)
    page.get_by_role("button", name="add them").click()
    on_disk(desk, "{The best answer.}")
    todo = page.locator("desk-todo:not([here])")
    todo.get_by_role("button", name="look for them").click()
    thing = todo.locator(".thing:not(details .thing)", has_text="3... exf4").first
    expect(thing).to_be_visible(timeout=60_000)
    thing.get_by_role("button", name="take it into the lesson").click()
    on_disk(desk, "(3... exf4 4. e5")
    saved(page)
    with page.expect_download() as download:
        page.get_by_role("button", name="save the PGN file").click()
    text = download.value.path().read_bytes()
    assert text == desk.lines.read_bytes()
    with io.StringIO(text.decode()) as stream:
        games = [chess.pgn.read_game(stream), chess.pgn.read_game(stream)]
    assert games[0] and games[1]
    assert [game.errors for game in games if game] == [[], []]
    assert [node.san() for node in games[0].mainline()] == ["e4"]
    f4 = games[1].end().parent
    assert f4
    assert [child.san() for child in f4.variations] == ["d5", "exf4"]
    assert f4.variations[0].comment == "The best answer."
    assert next(node.san() for node in f4.variations[1].mainline()) == "e5"


def test_a_lesson_is_published_unless_a_claim_fails(
    start: Start, new_page: NewPage, tmp_path: Path
) -> None:
    desk = start("1. e4 e5 {White is a pawn up.} *", side="white")
    page = opened(new_page, desk)
    expect(page.get_by_role("button", name="1 fails")).to_be_visible()
    form = page.locator("desk-hand-on form")
    while form.locator("input[name=only]:checked").count():
        form.locator("input[name=only]:checked").first.uncheck()
    form.locator("input[value=pgn]").check()
    form.get_by_label("into the folder").fill(str(tmp_path / "out"))
    form.get_by_role("button", name="publish").click()
    expect(page.get_by_role("alert")).to_be_visible()
    assert not (tmp_path / "out").exists()
    form.get_by_label("also where claims fail").check()
    form.get_by_role("button", name="publish").click()
    expect(page.locator("desk-hand-on [role=status]")).to_contain_text("1 claim that fails")
    assert (tmp_path / "out" / "pgn" / "SHA256SUMS").exists()
    form.get_by_text("How it looks").click()
    expect(form.get_by_label("Columns")).to_have_value("")
    form.get_by_label("higher than wide").check()
    form.locator("input[value=pgn]").uncheck()
    form.locator("input[value=video]").check()
    form.get_by_role("button", name="publish").click()
    expect(page.locator("desk-hand-on [role=status]")).to_contain_text("frames are done")
    expect(page.locator("desk-hand-on [role=status]")).to_contain_text("This is Edition 1, ")
    (film,) = (tmp_path / "out" / "video").glob("*.mp4")
    asked = (
        "ffprobe",
        "-v",
        "error",
        "-select_streams",
        "v",
        "-show_entries",
        "stream=width,height",
    )
    told = subprocess.run(
        [*asked, "-of", "csv=p=0", film], capture_output=True, text=True, check=True
    )
    assert told.stdout.strip() == "1080,1920"

    field = page.locator("#move")
    page.locator("desk-manuscript").get_by_role("button", name="1... e5", exact=True).click()
    field.fill("Nf3 Nc6")
    field.press("Enter")
    page.get_by_label("What is new since").select_option("1")
    page.get_by_role("button", name="say it").click()
    expect(page.get_by_label("What is new", exact=True)).to_contain_text("2. Nf3 Nc6")


def test_the_games_of_a_collection_are_told_in_sentences(
    run: Start, new_page: NewPage, tmp_path: Path
) -> None:
    games = tmp_path / "games.pgn"
    tags = '[White "Ann"]\n[Black "Ben"]\n[WhiteElo "1400"]\n[BlackElo "1400"]\n[Result "1-0"]\n\n'
    played = ("1. e4 e5 2. Nc3 Nf6 3. f4 exf4 1-0", "1. e4 e5 2. Nc3 Nc6 3. f4 exf4 1-0")
    games.write_text("\n".join(f"{tags}{moves}\n" for moves in played), encoding="utf-8")
    subprocess.run(
        [sys.executable, "-c", RUN, "collect", "add", str(games), "--collection", "club"],
        env={**os.environ, "LINEPROOF_DATA": str(tmp_path / "home" / "data")}, check=True, capture_output=True,
    )  # fmt: skip
    lines = tmp_path / "lesson.pgn"
    lines.write_text(SHORT.replace("The gambit.", "exf4 is often played."), encoding="utf-8")
    page = opened(new_page, run(lines))
    move(page, "2. Nc3").click()
    page.get_by_role("button", name="count", exact=True).click()
    figures = page.locator("desk-figures")
    expect(figures).to_contain_text("2 games")
    expect(figures).to_contain_text("Nf6")

    # Chosen for the checks, they tell how often a move is played.
    page.get_by_role("button", name="1 is unsettled").click()
    expect(page.locator("desk-note")).to_contain_text("no collection of games")
    page.get_by_text("About this lesson", exact=True).click()
    page.get_by_label("Games that are counted").select_option("club")
    expect(page.locator(".counted")).to_have_text("1 claim: 1 holds.")


def test_only_what_fails_is_drawn_on_the_map_when_asked(start: Start, new_page: NewPage) -> None:
    page = opened(
        new_page,
        start("1. e4 e5 2. Nf3 (2. f4 {White is a queen up.} d5) 2... Nc6 3. Bb5 a6 *"),
    )
    page.get_by_role("button", name="only what fails").click()
    expect(page.locator("desk-map text")).to_have_text(["e4", "e5", "f4"])
    page.get_by_role("button", name="show all").click()
    expect(page.locator("desk-map text", has_text="Bb5")).to_be_visible()


def test_what_is_being_published_is_broken_off(
    start: Start, new_page: NewPage, tmp_path: Path
) -> None:
    words = " ".join(["Listen"] * 2000)
    page = opened(new_page, start(f"1. e4 {{{words}}} e5 *", side="white"))
    form = page.locator("desk-hand-on form")
    while form.locator("input[name=only]:checked").count():
        form.locator("input[name=only]:checked").first.uncheck()
    form.locator("input[value=video]").check()
    form.get_by_text("How it looks").click()
    form.get_by_label("every frame of the video in its file").check()
    form.get_by_label("into the folder").fill(str(tmp_path / "out"))
    form.get_by_role("button", name="publish").click()
    said = page.locator("desk-hand-on [role=status]")
    expect(said).to_contain_text("frames are done")
    # Another window, and this one when it is opened again, see it too.
    page.reload()
    expect(said).to_contain_text("frames are done")
    page.get_by_role("button", name="break it off").click()
    expect(page.get_by_role("button", name="break it off")).to_have_count(0)
    expect(said).to_have_text("")
    assert not (tmp_path / "out").exists()


def test_a_report_is_saved_as_a_page_of_its_own(
    start: Start, new_page: NewPage, tmp_path: Path
) -> None:
    page = opened(new_page, start("1. e4 e5 {White is a pawn up.} *", side="white"))
    expect(page.get_by_role("button", name="1 fails")).to_be_visible()
    with page.expect_download() as download:
        page.get_by_role("button", name="save a report of all that was checked").click()
    assert download.value.suggested_filename == "lesson-proof.html"
    file = tmp_path / "report.html"
    download.value.save_as(file)
    report = new_page()
    report.goto(file.as_uri())
    expect(report.get_by_text("White is a pawn up").first).to_be_visible()
