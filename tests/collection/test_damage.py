"""Damage to the files of a collection ends in an answer or in an error that names the way out."""

from __future__ import annotations

import shutil
from pathlib import Path
from random import Random

import pytest

from lineproof.collection import Collection, CollectionError

from .conftest import Make

KINDS = ("totals-*", "figures-*", "examples-*", "rare-*", "games.bin", "games.idx", "seen.bin")


@pytest.fixture(scope="module")
def whole(invented: dict[str, Path], tmp_path_factory: pytest.TempPathFactory) -> Collection:
    collection = Collection.open("whole", tmp_path_factory.mktemp("whole"))
    collection.add([invented["shared"]])
    return collection


def asked(collection: Collection) -> None:
    for position in ("", "e4", "e4 e5", "1. d4 d5 2. c4 e5 3. dxe5", "Na3 h5"):
        collection.look(position)
        collection.look(position, audience=1500)
        collection.orders(position)
        collection.model_games(position)


@pytest.mark.parametrize("kind", KINDS)
def test_a_damaged_file_of_a_segment_ends_in_an_answer_or_an_error_of_ours(
    whole: Collection, make: Make, invented: dict[str, Path], kind: str
) -> None:
    told = 0
    for seed in range(12):
        random = Random(seed)
        copy = make(f"copy {seed}")
        shutil.copytree(whole.folder, copy.folder)
        (file,) = copy.folder.glob(f"segments/*/{kind}")
        data = bytearray(file.read_bytes())
        for _ in range(random.randrange(1, 8)):
            at = random.randrange(len(data))
            match random.randrange(3):
                case 0:
                    data[at] ^= 1 << random.randrange(8)
                case 1:
                    data[at : at + 8] = random.randbytes(8)
                case _:
                    del data[at : at + random.randrange(1, 60)]
        file.write_bytes(data)
        for question in (
            lambda copy=copy: asked(copy),
            lambda copy=copy: copy.add([invented["random"]]),
        ):
            try:
                question()
            except CollectionError as error:
                assert "damaged" in str(error) or "missing" in str(error)
                told += 1
        copy.close()
        shutil.rmtree(copy.folder)
    assert told >= 3, f"of 12 damaged ones {told} were told"


@pytest.mark.parametrize("kind", KINDS)
def test_a_file_that_is_cut_off_or_gone_is_told(
    whole: Collection, make: Make, invented: dict[str, Path], kind: str
) -> None:
    for left in (0, 0.5, None):
        copy = make(f"cut {left}")
        shutil.copytree(whole.folder, copy.folder)
        (file,) = copy.folder.glob(f"segments/*/{kind}")
        if left is None:
            file.unlink()
        else:
            data = file.read_bytes()
            file.write_bytes(data[: int(left * len(data)) // 8 * 8])
        with pytest.raises(CollectionError, match=r"missing or damaged|it is damaged"):
            if kind == "seen.bin":
                copy.add([invented["random"]])  # only then it is asked
            asked(copy)
