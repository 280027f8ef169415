"""What every running order keeps, whatever the lesson."""

from __future__ import annotations

import heapq
from collections import Counter
from itertools import count

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from lineproof.claims.sentence import sentences
from lineproof.lesson import Lesson
from lineproof.lesson.graph import Graph
from lineproof.order import Measure, RunningOrder, flow, running_order
from lineproof.order.acts import measure
from lineproof.order.order import steps_of, telling
from lineproof.order.proving import smaller
from lineproof.order.references import COMPARES, LATER
from lineproof.order.steps import Steps
from lineproof.order.telling import Teller
from lineproof.order.waiting import waits

from .random_lessons import lessons

FEW = settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])


def said(lesson: Lesson) -> Counter[tuple[int, str]]:
    return Counter(
        (sentence.start, sentence.text)
        for comment in lesson.comments
        for sentence in sentences(comment.text, comment.start)
    )


@given(lessons())
@FEW
def test_every_sentence_is_said_once(lesson: Lesson) -> None:
    cues = running_order(lesson).cues
    assert Counter((c.start, c.words) for c in cues if c.kind == "say") == said(lesson)


@given(lessons())
@FEW
def test_every_move_is_shown_and_each_from_the_board_that_is_there(lesson: Lesson) -> None:
    graph = Graph(lesson)
    shown = set()
    board = lesson.games[0].start
    for cue in running_order(lesson).cues:
        if cue.kind == "play":
            assert cue.uci is not None
            shown.add((board.key, cue.uci))
            board = board.play(cue.uci)
        if cue.kind in ("play", "go back to"):
            board = board if cue.kind == "play" else cue.place.board
            assert cue.place.key == board.key
    assert shown == {(key, uci) for key, moves in graph.moves.items() for uci in moves}


@given(lessons())
@FEW
def test_each_sentence_is_said_with_its_position_on_the_board(lesson: Lesson) -> None:
    """But for words that take leave, which need no board."""
    order = running_order(lesson)
    spoken_of = {c.start + len(c.text): c.place.key for c in lesson.comments}
    for cue in order.cues:
        if cue.kind == "say" and cue.start is not None and cue.step is not None:
            (key,) = [key for end, key in sorted(spoken_of.items()) if end > cue.start][:1]
            assert cue.place.key == key


@given(lessons())
@FEW
def test_each_way_back_goes_to_one_position_that_was_shown_and_says_which(lesson: Lesson) -> None:
    shown = {lesson.games[0].start.key: lesson.games[0].start}
    for cue in running_order(lesson).cues:
        if cue.kind == "go back to":
            assert cue.place.key in shown
            fits = [b for b in shown.values() if all(mark.holds(b) for mark in cue.landmarks)]
            if "beginning" not in cue.words:
                assert [b.key for b in fits] == [cue.place.key]
                assert all(mark.at in cue.words for mark in cue.landmarks)
        shown[cue.place.key] = cue.place.board


@given(lessons())
@FEW
def test_it_is_never_worse_than_the_file_and_never_better_than_the_bound(lesson: Lesson) -> None:
    found = telling(steps_of(lesson))
    assert found.least <= found.measure <= found.file
    assert measure(found.acts, found.punished) == found.measure


@given(lessons())
@FEW
def test_nothing_is_told_before_what_it_refers_to(lesson: Lesson) -> None:
    found = telling(steps_of(lesson))
    order = [act.number for act in found.acts if act.number is not None]
    at = {number: place for place, number in enumerate(order)}
    early = {(ref.step, ref.sentence.start) for ref in found.early}
    circle = {ref.sentence.start for ref in waits(found.steps, found.references)[1]}
    broken = {ref.sentence.start for ref in found.file_early}
    assert {start for _, start in early} <= circle | broken
    for ref in found.references:
        for one in ref.to:
            if ref.step in at and one in at and (ref.step, ref.sentence.start) not in early:
                assert at[one] < at[ref.step], ref
    compares = [
        n
        for n in sorted(at)
        for sentence in found.steps.all[n].said
        if found.steps.all[n].uci
        and COMPARES.search(sentence.text)
        and not LATER.search(sentence.text)
    ]
    if not early:
        assert sorted(compares, key=at.__getitem__) == compares


@given(lessons())
@FEW
def test_the_main_line_is_told_in_its_own_order(lesson: Lesson) -> None:
    found = telling(steps_of(lesson))
    order = [act.number for act in found.acts if act.number is not None]
    main = [n for n in found.steps.main_line() if n in order]
    assert [n for n in order if n in set(main)] == main


@given(lessons())
@FEW
def test_the_same_lesson_has_the_same_order(lesson: Lesson) -> None:
    again = Lesson.from_text(lesson.text, side="white")
    assert _plain(running_order(lesson)) == _plain(running_order(again))


def _plain(order: RunningOrder) -> list[tuple[object, ...]]:
    return [(c.kind, c.words, c.begins, c.seconds, c.place.index) for c in order.cues]


@given(lessons(most=6))
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_a_small_lesson_has_the_best_order_there_is(lesson: Lesson) -> None:
    found = telling(steps_of(lesson))
    if not found.early:
        assert found.proven
        assert found.measure == by_trying_all(
            found.steps, found.punished, waits(found.steps, found.references)[0]
        )


@given(lessons(most=7))
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_branches_that_are_taken_out_cost_the_same_in_any_order(lesson: Lesson) -> None:
    found = telling(steps_of(lesson))
    main = found.steps.main_line()
    refs = waits(found.steps, found.references)[0]
    waiting = {n: to - set(main) for n, to in refs.items() if to - set(main)}
    bound = frozenset(waiting) | {one for to in waiting.values() for one in to}
    small = smaller(found.steps, bound)
    if small.ends:
        rest = by_trying_all(small.steps, {}, waiting)
        whole = by_trying_all(found.steps, {}, waiting)
        assert whole.ways_back == rest.ways_back + small.ends


def by_trying_all(
    steps: Steps, punished: dict[int, int], waiting: dict[int, frozenset[int]]
) -> Measure:
    """The least measure of any telling, by Dijkstra over all that can be done; no bound, no heuristic."""
    (root,) = steps.beginnings
    first = (frozenset[int]({root}), steps.all[root].start, frozenset[tuple[int, str]]())
    number = count()
    queue = [((0, 0, 0), next(number), first)]
    done = set()
    while queue:
        spent, _, state = heapq.heappop(queue)
        told, board, shown = state
        if steps.wanted_set <= told:
            return Measure(*spent)
        if state in done:
            continue
        done.add(state)
        places = {steps.all[root].start} | {steps.all[n].end for n in told}
        for place in places - {board}:
            heapq.heappush(queue, ((spent[0] + 1, *spent[1:]), next(number), (told, place, shown)))
        for uci, after in steps.moves.get(board, {}).items():
            may = [
                n
                for n in steps.outs.get(board, [])
                if steps.all[n].uci == uci and n not in told and waiting.get(n, frozenset()) <= told
            ]
            again = (board, uci) in shown
            for one in [*may, None] if again else may:
                open_ = sum(m in told and r not in told and r != one for m, r in punished.items())
                now = told | {one} if one is not None else told
                price = (spent[0], spent[1] + again, spent[2] + open_)
                heapq.heappush(queue, (price, next(number), (now, after, shown | {(board, uci)})))
    raise AssertionError("no telling")


@given(st.integers(60, 300))
@FEW
def test_a_faster_speaker_needs_no_longer(speed: int) -> None:
    from dataclasses import replace

    lesson = Lesson.from_text("1. e4 {One two three.} e5 (1... c5 {Four.}) 2. Nc3 *")
    at = lesson.with_settings(replace(lesson.settings, words_a_minute=speed))
    slow = lesson.with_settings(replace(lesson.settings, words_a_minute=60))
    assert running_order(at).seconds <= running_order(slow).seconds


def test_the_search_finds_what_the_first_telling_misses() -> None:
    text = "1. Nf3 $2 (1. Nc3 {As we saw, this is fine.}) (1. e3) (1. d4 {In the main line White waits.}) 1... Nf6 {By contrast, this is slow.} *"
    found = telling(steps_of(Lesson.from_text(text)))
    steps, punished = found.steps, found.punished
    waiting, _ = waits(steps, found.references)
    first = measure(Teller(steps, waiting, punished, flow.bound(steps)).tell(), punished)
    assert found.measure < first
    assert found.measure == by_trying_all(steps, punished, waiting)
