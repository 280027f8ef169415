"""The training of the learned evaluation: `python -m pytest training/network`."""

from __future__ import annotations

import json
import lzma
import random
import shutil
import subprocess
from pathlib import Path

import chess
import pytest
import quantised
import records
import torch
import train
from learner import Learner
from quantised import Features, Network, NetworkError, Sizes, king_buckets, output_buckets

ROOT = Path(__file__).resolve().parent.parent.parent
CPU = torch.device("cpu")
ROLES = [chess.PAWN, chess.KNIGHT, chess.BISHOP, chess.ROOK, chess.QUEEN, chess.KING]
WORTH = {1: 100, 2: 300, 3: 300, 4: 500, 5: 900, 6: 0}


def digits(board: chess.Board) -> list[int]:
    """A board from its mover's side, by python-chess's own mirroring."""
    seen = board if board.turn == chess.WHITE else board.mirror()
    found = [0] * 64
    for square, piece in seen.piece_map().items():
        found[square] = piece.piece_type + (0 if piece.color == chess.WHITE else 6)
    return found


def random_boards(seed: int, games: int) -> list[chess.Board]:
    """Positions of games of random moves."""
    chosen = random.Random(seed)
    boards = []
    for _ in range(games):
        board = chess.Board()
        while not board.is_game_over() and board.ply() < 200:
            board.push(chosen.choice(list(board.legal_moves)))
            boards.append(board.copy(stack=False))
    return boards


def squares_of(boards: list[chess.Board]) -> torch.Tensor:
    return torch.tensor([digits(board) for board in boards], dtype=torch.uint8)


def random_network(seed: int, sizes: Sizes, most: bool = False) -> Network:
    """Weights by lot, or the largest that are allowed, with both signs by lot."""
    chosen = torch.Generator().manual_seed(seed)

    def weights(limit: int, kind: torch.dtype, *shape: int) -> torch.Tensor:
        if most:
            signs = torch.randint(0, 2, shape, generator=chosen) * 2 - 1
            return (signs * limit).to(kind)
        return torch.randint(-limit, limit + 1, shape, generator=chosen).to(kind)

    return Network(
        sizes,
        weights(992 if most else 60, torch.int16, sizes.inputs, sizes.width),
        weights(992 if most else 200, torch.int16, sizes.width),
        weights(1023 if most else 160, torch.int16, sizes.outputs, 2 * sizes.width),
        weights(1 << 24 if most else 40_000, torch.int32, sizes.outputs),
        "by lot",
    )


@pytest.fixture(scope="module")
def material(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Records of men set down by lot, whose scores and results are their worth alone."""
    chosen = random.Random(5)
    content = bytearray()
    for _ in range(12_000):
        squares = [0] * 64
        places = chosen.sample(range(64), chosen.randint(4, 14))
        squares[places[0]], squares[places[1]] = records.OWN_KING, records.ENEMY_KING
        worth = 0
        for place in places[2:]:
            role, enemy = chosen.randint(1, 5), chosen.random() < 0.5
            squares[place] = role + 6 * enemy
            worth += -WORTH[role] if enemy else WORTH[role]
        result = 1 if abs(worth) < 100 else 2 if worth > 0 else 0
        content += records.encode(squares, worth, result)
    path = tmp_path_factory.mktemp("records") / "material.bin"
    path.write_bytes(content)
    return path


def options(*words: str) -> list[str]:
    common = "--width 32 --output-buckets 2 --batch 256 --block 2048 --device cpu --validation 0.2"
    return [*words, *common.split()]


def test_a_record_gives_back_what_another_library_set_up(tmp_path: Path) -> None:
    boards = random_boards(1, 6)
    chosen = random.Random(2)
    tags = [(chosen.randint(-9000, 9000), chosen.randint(0, 2)) for _ in boards]
    content = b"".join(
        records.encode(digits(board), *tag) for board, tag in zip(boards, tags, strict=True)
    )
    assert len(content) == 32 * len(boards)
    path = tmp_path / "records.bin.xz"
    path.write_bytes(lzma.compress(content))
    found = records.decode(records.read([path]), records.table(CPU))
    assert (found.squares == squares_of(boards)).all()
    assert found.scores.tolist() == [max(-8191, min(8191, score)) for score, _ in tags]
    assert found.results.tolist() == [result / 2 for _, result in tags]


def test_the_first_word_of_the_first_position_is_as_reckoned_by_hand() -> None:
    # Rook, knight, bishop, queen of one's own on a1 to d1: 4 + 2 * 13 + 3 * 169 + 5 * 2197 = 11522.
    content = records.encode(digits(chess.Board()), score=-8191, result=0)
    assert int.from_bytes(content[:2], "little") == 11522


@pytest.mark.parametrize(
    ("place", "value", "message"),
    [(0, 28_561, "no four squares"), (1, 0, "not one king"), (15, 0, "not one king")],
)
def test_a_record_that_is_no_position_is_refused(place: int, value: int, message: str) -> None:
    words = records.words_of(records.encode(digits(chess.Board()), 0, 1))
    words[0, place] = value
    with pytest.raises(records.RecordError, match=message):
        records.check(words, records.table(CPU))


def test_a_folder_is_its_files_in_the_order_of_their_names(tmp_path: Path) -> None:
    board = digits(chess.Board())
    for name, score in (("b.bin", 2), ("a.bin", 1), ("about.txt", 0)):
        (tmp_path / name).write_bytes(records.encode(board, score, 1))
    (tmp_path / "c.bin.xz").write_bytes(lzma.compress(records.encode(board, 3, 1)))
    found = records.decode(records.read([tmp_path]), records.table(CPU))
    assert found.scores.tolist() == [1, 2, 3]


def test_a_file_that_ends_within_a_record_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "records.bin"
    path.write_bytes(bytes(33))
    with pytest.raises(records.RecordError, match="33 bytes"):
        records.read([path])


def features_by_the_definition(board: chess.Board, side: chess.Color, sizes: Sizes) -> list[int]:
    king = board.king(side)
    assert king is not None
    rank_flip = 0 if side == chess.WHITE else 56
    file_flip = 7 if chess.square_file(king) >= 4 else 0
    home = king ^ rank_flip ^ file_flip
    bucket = sizes.king_buckets[4 * (home // 8) + home % 8]
    return sorted(
        768 * bucket
        + 64 * (piece.piece_type - 1 + (0 if piece.color == side else 6))
        + (square ^ rank_flip ^ file_flip)
        for square, piece in board.piece_map().items()
    )


def test_features_are_those_of_the_definition() -> None:
    sizes = Sizes(32, quantised.king_buckets("8"), quantised.output_buckets(8))
    boards = random_boards(3, 4)
    found = Features(sizes, CPU).active(squares_of(boards))
    for row, board in enumerate(boards):
        for side, offset in ((board.turn, 0), (not board.turn, len(boards))):
            active = sorted(x for x in found[row + offset].tolist() if x < sizes.inputs)
            assert active == features_by_the_definition(board, side, sizes)


def test_output_buckets_grow_with_the_men_and_all_are_used() -> None:
    for count in (1, 4, 8):
        table = quantised.output_buckets(count)
        assert list(table) == sorted(table)
        assert set(table[2:]) == set(range(count))


def test_blocks_that_validate_share_no_record_with_the_others() -> None:
    training, validation = train.split(100_000, 4096, 0.1, seed=1)
    assert not set(training.tolist()) & set(validation.tolist())
    blocks = set((validation // 4096).tolist())
    assert len(blocks) == 2
    assert not blocks & set((training // 4096).tolist())
    for block in blocks:
        assert block * 4096 + train.GAP - 1 not in validation.tolist()


def test_material_is_learned_in_seconds(material: Path, tmp_path: Path) -> None:
    words = [str(material), "--out", str(tmp_path), "--passes", "12", "--rate", "0.01"]
    train.Training(train.arguments(options(*words))).run()
    account = json.loads((tmp_path / "network.json").read_text())
    level, quantised_losses = account["yardsticks"]["level"], account["quantised"]
    assert quantised_losses["square"] < 0.1 * level["square"]
    assert account["passes"][-1]["validation"] < 0.5 * account["passes"][0]["validation"]
    # A queen or a rook more is worth more, whoever has it.
    network = quantised.read(tmp_path / "network.bin")
    boards = [
        chess.Board(f"4k3/pppp4/8/8/8/8/PPPP4/{men}K3 w - - 0 1") for men in ("3Q", "3R", "4")
    ]
    values = network.values(squares_of(boards), Features(network.sizes, CPU)).tolist()
    assert values[0] > values[1] > values[2] + 100
    assert account["rounding_centipawns"]["mean"] < 20


def test_a_training_that_goes_on_ends_where_one_without_a_break_ends(
    material: Path, tmp_path: Path
) -> None:
    whole, broken = tmp_path / "whole", tmp_path / "broken"
    words = [str(material), "--passes", "2", "--king-buckets", "4"]
    train.Training(train.arguments(options(*words, "--out", str(whole)))).run()
    first = options(*words, "--out", str(broken), "--seconds", "0")
    train.Training(train.arguments(first)).run()
    assert len(json.loads((broken / "network.json").read_text())["passes"]) == 1
    train.Training(train.arguments(options(*words, "--out", str(broken), "--resume"))).run()
    assert (whole / "network.bin").read_bytes() == (broken / "network.bin").read_bytes()


@pytest.mark.parametrize(("kings", "later"), [("1", "1"), ("1", "4"), ("8", "8")])
def test_a_training_begins_with_a_network_s_values(kings: str, later: str) -> None:
    buckets = output_buckets(4)
    before = Learner(Sizes(32, king_buckets(kings), buckets), seed=3)
    for parameter in before.parameters():
        with torch.no_grad():
            parameter.add_(torch.rand_like(parameter) * 0.1)
    network = before.quantised()
    after = Learner(Sizes(32, king_buckets(later), buckets), seed=4)
    after.begin(network)
    again = after.quantised()
    columns = network.features.repeat(again.sizes.inputs // network.sizes.inputs, 1)
    for found, known in (
        (again.features, columns),
        (again.biases, network.biases),
        (again.outputs, network.outputs),
        (again.output_biases, network.output_biases),
    ):
        assert torch.equal(found, known)


def test_a_network_of_other_sizes_is_nothing_to_begin_with() -> None:
    network = Learner(Sizes(32, king_buckets("1"), output_buckets(4)), seed=3).quantised()
    for sizes in (
        Sizes(64, king_buckets("1"), output_buckets(4)),
        Sizes(32, king_buckets("1"), output_buckets(8)),
    ):
        with pytest.raises(NetworkError, match="other sizes"):
            Learner(sizes, seed=4).begin(network)


def test_rounding_keeps_the_values_of_a_learner_near() -> None:
    sizes = Sizes(64, quantised.king_buckets("4"), quantised.output_buckets(8))
    learner = Learner(sizes, seed=3)
    with torch.no_grad():
        learner.outputs.add_(3.0)
    learner.clip()
    boards = squares_of(random_boards(4, 3))
    features = Features(sizes, CPU)
    with torch.no_grad():
        precise = learner.values(boards, features)
    whole = learner.quantised()
    assert int(whole.outputs.max()) == quantised.OUTPUT_MOST
    relative = (whole.values(boards, features) - precise).abs() / precise.abs().clamp(min=100)
    assert float(relative.max()) < 0.02


def test_a_network_is_read_as_it_was_written(tmp_path: Path) -> None:
    sizes = Sizes(96, quantised.king_buckets("4"), quantised.output_buckets(3), 350)
    written = random_network(1, sizes)
    path = tmp_path / "network.bin"
    path.write_bytes(written.to_bytes())
    found = quantised.read(path)
    assert (found.sizes, found.text) == (sizes, "by lot")
    for name in ("features", "biases", "outputs", "output_biases"):
        assert torch.equal(getattr(found, name), getattr(written, name))


def test_a_damaged_network_is_refused(tmp_path: Path) -> None:
    sizes = Sizes(32, quantised.king_buckets("1"), quantised.output_buckets(1))
    content = bytearray(random_network(1, sizes).to_bytes())
    content[-9] ^= 1
    path = tmp_path / "network.bin"
    path.write_bytes(content)
    with pytest.raises(quantised.NetworkError, match="damaged"):
        quantised.read(path)


@pytest.mark.skipif(shutil.which("cargo") is None, reason="the engine is built with cargo")
@pytest.mark.parametrize("most", [False, True])
@pytest.mark.parametrize(("width", "kings"), [(32, "1"), (512, "1"), (288, "8"), (1024, "4")])
def test_the_engine_has_the_same_values(tmp_path: Path, width: int, kings: str, most: bool) -> None:
    # The largest weights would give nothing but the largest values.
    scale = 4 if most else 400
    sizes = Sizes(width, quantised.king_buckets(kings), quantised.output_buckets(8), scale)
    network = random_network(width, sizes, most)
    path = tmp_path / "network.bin"
    path.write_bytes(network.to_bytes())
    boards = random_boards(width, 8)
    example = [
        "cargo",
        "run",
        "--release",
        "--quiet",
        "-j",
        "2",
        "-p",
        "lineproof-engine",
        "--example",
        "values",
        "--",
    ]
    said = subprocess.run(
        [*example, str(path)],
        cwd=ROOT,
        input="".join(f"{board.fen()}\n" for board in boards),
        capture_output=True,
        text=True,
        check=True,
    )
    expected = network.values(squares_of(boards), Features(sizes, CPU)).tolist()
    assert [int(line.split()[0]) for line in said.stdout.splitlines()] == expected
    assert len(set(expected)) > 20
