"""Trains the learned evaluation on records of the engine's own games: `python training/network/train.py RECORDS... --out FOLDER`.

Writes into the folder: `network.bin` (and `network.bin.sha256`), `network.json` with all settings, losses and times, and
`state.pt`, from which `--resume` goes on. The first three are written after every pass, so that a run cut short leaves the
network of its last whole pass. README.md beside this file says what is trained on what.
"""

from __future__ import annotations

import argparse
import hashlib
import json
import math
import sys
import time
from dataclasses import asdict, dataclass
from pathlib import Path

import quantised
import records
import torch
from learner import Learner
from quantised import (
    Features,
    Network,
    NetworkError,
    Sizes,
    king_buckets,
    output_buckets,
)
from records import RecordError
from torch import Tensor

# The mover's expected score is 1 / (1 + exp(-SLOPE * centipawns)): what a centipawn means, as in training/model.py.
SLOPE = 0.006
# Records at either end of a block that validates which are used for nothing: the game there may go on in the next block.
GAP = 512
# Products while training may be rounded to 11 bits on a GPU, less than the whole numbers are afterwards.
PRECISION = "high"
# Steps before one is recorded, in which the device's libraries make themselves ready.
WARM_STEPS = 20


class SettingError(ValueError):
    """Settings that cannot be used together, or with these records."""


@dataclass(frozen=True)
class Goal:
    """What the network is to foretell: `blend` of the result, where there is one, and the rest of what the search score says
    by `slope` (1 / centipawns); a miss counts by its `power`, or as cross-entropy when that is 0."""

    blend: float
    slope: float
    power: float

    def target(self, batch: records.Decoded) -> Tensor:
        """The mover's points, 0 to 1, (n,)."""
        said = torch.sigmoid(batch.scores * self.slope)
        blend = self.blend * batch.played
        return blend * batch.results + (1.0 - blend) * said

    def loss(self, centipawns: Tensor, target: Tensor) -> Tensor:
        """The mean loss."""
        if self.power == 0.0:
            return torch.nn.functional.binary_cross_entropy_with_logits(centipawns * SLOPE, target)
        return (torch.sigmoid(centipawns * SLOPE) - target).abs().pow(self.power).mean()


@dataclass(frozen=True)
class Judgement:
    """How a network does on positions held back: `loss` as trained; `entropy` and `square` against the target, and
    `result_entropy` against the results alone, where there are any."""

    loss: float
    entropy: float
    square: float
    result_entropy: float


@dataclass(frozen=True)
class Rounding:
    """What whole numbers change, in centipawns."""

    mean: float
    largest: float


@dataclass(frozen=True)
class Pass:
    """One pass over the positions: its number, the learning rate at its beginning, losses, seconds since the beginning."""

    number: int
    rate: float
    training: float
    validation: float
    seconds: float


def arguments(words: list[str] | None = None) -> argparse.Namespace:
    """The command line."""
    parser = argparse.ArgumentParser(description="Train the learned evaluation on records.")
    add = parser.add_argument
    add("records", nargs="+", type=Path, help="files of records, also .xz or .zst, or folders")
    add("--out", type=Path, required=True, help="the folder to write into")
    add("--width", type=int, default=512, help="accumulator values a side")
    add("--king-buckets", default="1", help="1, 4, 8, or 32 numbers for a1 to d1, a2 to d2, ...")
    add("--output-buckets", type=int, default=8, help="by number of men")
    add("--scale", type=int, default=300, help="centipawns for an output of one")
    add("--blend", type=float, default=0.3, help="share of the result in the target, 0 to 1")
    add(
        "--score-slope",
        type=float,
        help="expected score a centipawn of the search; fitted if not said",
    )
    add("--power", type=float, default=2.5, help="of a miss; 0 for cross-entropy")
    add("--passes", type=int, default=20, help="over all positions")
    add("--batch", type=int, default=16384, help="positions a step")
    add("--rate", type=float, default=1e-3, help="highest learning rate")
    add("--last-rate", type=float, default=1e-6, help="learning rate at the end")
    add(
        "--warm-up",
        type=int,
        default=200,
        help="steps in which the rate rises, a twentieth of all at most",
    )
    add(
        "--decay",
        type=float,
        default=1.0,
        help="of the parts of single squares (Loshchilov and Hutter 2019)",
    )
    add("--validation", type=float, default=0.02, help="share of the blocks that is held back")
    add("--block", type=int, default=65536, help="records that are held back together")
    add("--seed", type=int, default=1, help="first weights, blocks held back, order")
    add("--device", help="cuda or cpu; the first that is there if not said")
    add("--seconds", type=float, help="stop at the end of the first pass after so long")
    add(
        "--graph",
        action="store_true",
        help="on a GPU, record a step and repeat it as one command: the same sums, less waiting",
    )
    add("--begin", type=Path, help="a network whose weights to begin with instead of chance")
    add("--resume", action="store_true", help="go on from state.pt in the folder")
    add(
        "--note", default="", help="a line for the network's text, such as where the games are from"
    )
    return parser.parse_args(words)


def split(count: int, block: int, share: float, seed: int) -> tuple[Tensor, Tensor]:
    """Numbers of the records to train on, and of those held back: whole blocks, without their ends.

    :raises SettingError: when nothing would be held back or left.
    """
    blocks = -(-count // block)
    held = max(1, round(blocks * share))
    if blocks < 2 or block <= 2 * GAP:
        raise SettingError(f"{count} records make no two blocks of {block}: give a smaller --block")
    order = torch.randperm(blocks, generator=torch.Generator().manual_seed(seed))
    chosen = torch.zeros(blocks, dtype=torch.bool)
    chosen[order[:held]] = True
    numbers = torch.arange(count)
    validates = chosen[numbers // block]
    place = numbers % block
    inner = (place >= GAP) & (place < block - GAP) & (numbers < count - GAP)
    return numbers[~validates], numbers[validates & inner]


def slope_of_scores(batch: records.Decoded) -> float:
    """The slope with which the search scores foretell the results best, in 1 / centipawns, by cross-entropy."""
    low, high = math.log(0.0005), math.log(0.05)
    played = batch.played > 0.0
    scores, results = batch.scores[played].double(), batch.results[played].double()

    def loss(logarithm: float) -> float:
        said = scores * math.exp(logarithm)
        return float(torch.nn.functional.binary_cross_entropy_with_logits(said, results))

    while high - low > 1e-3:
        third = (high - low) / 3.0
        if loss(low + third) < loss(high - third):
            high -= third
        else:
            low += third
    return math.exp((low + high) / 2.0)


class Training:
    """One training: the records on the device, the network, how far it has come."""

    def __init__(self, options: argparse.Namespace) -> None:
        self.begun = time.monotonic()
        self.options = options
        name = options.device or ("cuda" if torch.cuda.is_available() else "cpu")
        self.device = torch.device(name)
        torch.manual_seed(options.seed)
        torch.set_float32_matmul_precision(PRECISION)
        self.digits = records.table(self.device)
        words = records.read(options.records)
        records.check(words, self.digits)
        self.training, self.validation = (
            part.to(self.device)
            for part in split(len(words), options.block, options.validation, options.seed)
        )
        if len(self.training) < options.batch or not len(self.validation):
            raise SettingError(
                f"{len(self.training)} records to train on and {len(self.validation)} held back:"
                f" too few for batches of {options.batch}"
            )
        self.digest = hashlib.sha256(words.numpy().reshape(-1).data).hexdigest()
        self.words = words.to(self.device)
        self.sizes = Sizes(
            options.width,
            king_buckets(options.king_buckets),
            output_buckets(options.output_buckets),
            options.scale,
        )
        self.features = Features(self.sizes, self.device)
        sample = self.training[:: max(1, len(self.training) // 1_000_000)]
        slope = options.score_slope or slope_of_scores(self.batch(sample))
        self.goal = Goal(options.blend, slope, options.power)
        learner = Learner(self.sizes, options.seed)
        self.begun_with = "chance"
        if options.begin is not None:
            learner.begin(quantised.read(options.begin))
            self.begun_with = hashlib.sha256(options.begin.read_bytes()).hexdigest()
        self.learner = learner.to(self.device)
        self.graph = options.graph and self.device.type == "cuda"
        self.optimizer = torch.optim.AdamW(
            self.learner.groups(options.decay),
            lr=torch.tensor(options.rate, device=self.device) if self.graph else options.rate,
            fused=self.device.type == "cuda",
            capturable=self.graph,
        )
        self.numbers = torch.zeros(options.batch, dtype=torch.int64, device=self.device)
        self.total = torch.zeros((), dtype=torch.float64, device=self.device)
        # Steps done one by one since the beginning or going on.
        self.warm = 0
        self.recorded: torch.cuda.CUDAGraph | None = None
        self.steps_a_pass = len(self.training) // options.batch
        self.step = 0
        self.log: list[Pass] = []

    def batch(self, numbers: Tensor) -> records.Decoded:
        """The records with these numbers."""
        return records.decode(self.words[numbers], self.digits)

    def rate(self) -> float:
        """The learning rate of the step: a short rise, then down along a cosine (Loshchilov and Hutter 2017)."""
        options = self.options
        steps = max(1, self.steps_a_pass * options.passes)
        rise = min(1.0, (self.step + 1) / max(1, min(options.warm_up, steps // 20)))
        done = self.step / steps
        fall = 0.5 * (1.0 + math.cos(math.pi * min(1.0, done)))
        rate: float = rise * (options.last_rate + (options.rate - options.last_rate) * fall)
        return rate

    def set_rate(self, rate: float) -> None:
        """Sets the learning rate of the next step."""
        for group in self.optimizer.param_groups:
            if isinstance(group["lr"], Tensor):
                group["lr"].fill_(rate)
            else:
                group["lr"] = rate

    def one_step(self) -> None:
        """Learns from the positions of `numbers`, and adds their loss to the total."""
        batch = self.batch(self.numbers)
        found = self.learner.values(batch.squares, self.features)
        loss = self.goal.loss(found, self.goal.target(batch))
        self.optimizer.zero_grad(set_to_none=True)
        loss.backward()  # type: ignore[no-untyped-call]
        self.optimizer.step()
        self.learner.clip()
        self.total += loss.detach()

    def record(self) -> None:
        """Records a step to be repeated as one command, and does it once."""
        torch.cuda.synchronize()
        self.optimizer.zero_grad(set_to_none=True)
        self.recorded = torch.cuda.CUDAGraph()
        with torch.cuda.graph(self.recorded):
            self.one_step()
        self.recorded.replay()

    def one_pass(self) -> float:
        """Trains on every position once, in an order of the seed and the pass; the mean loss."""
        size = self.options.batch
        order = torch.Generator(self.device).manual_seed(
            1_000_003 * self.options.seed + len(self.log)
        )
        shuffled = self.training[
            torch.randperm(len(self.training), generator=order, device=self.device)
        ]
        self.total.zero_()
        for begin in range(0, self.steps_a_pass * size, size):
            self.set_rate(self.rate())
            self.numbers.copy_(shuffled[begin : begin + size])
            if self.recorded is not None:
                self.recorded.replay()
            elif self.graph and self.warm >= WARM_STEPS:
                self.record()
            else:
                self.one_step()
                self.warm += 1
            self.step += 1
        mean: float = self.total.item() / self.steps_a_pass
        return mean

    @torch.no_grad()
    def values(self, network: Network | Learner) -> Tensor:
        """Centipawns of the positions held back, as exactly as 32 bits allow."""
        parts = torch.split(self.validation, self.options.batch)
        torch.set_float32_matmul_precision("highest")
        found = [network.values(self.batch(part).squares, self.features) for part in parts]
        torch.set_float32_matmul_precision(PRECISION)
        return torch.cat(found).to(torch.float64)

    @torch.no_grad()
    def judge(self, centipawns: Tensor) -> Judgement:
        """How values of the positions held back do."""
        every = self.batch(self.validation)
        target = self.goal.target(every).double()
        logits = centipawns * SLOPE
        played = every.played > 0.0
        entropy = torch.nn.functional.binary_cross_entropy_with_logits
        return Judgement(
            loss=float(self.goal.loss(centipawns, target)),
            entropy=float(entropy(logits, target)),
            square=float((torch.sigmoid(logits) - target).square().mean()),
            result_entropy=float(entropy(logits[played], every.results.double()[played])),
        )

    def yardsticks(self) -> dict[str, Judgement]:
        """What the least and the most that can be known would score: a level position always, and the search itself."""
        every = self.batch(self.validation)
        said = every.scores.double() * (self.goal.slope / SLOPE)
        return {"level": self.judge(torch.zeros_like(said)), "search score": self.judge(said)}

    def resume(self) -> None:
        """Goes on from the state in the folder.

        :raises SettingError: when it is of other settings.
        """
        state = torch.load(
            self.options.out / "state.pt", map_location=self.device, weights_only=True
        )
        if state["settings"] != self.settings() or state["records"] != self.digest:
            raise SettingError("state.pt is of other settings or records")
        self.learner.load_state_dict(state["learner"])
        self.optimizer.load_state_dict(state["optimizer"])
        self.step = state["step"]
        self.log = [Pass(**line) for line in state["log"]]

    def settings(self) -> dict[str, str | int | float]:
        """All that the outcome depends on."""
        ignored = ("records", "out", "device", "seconds", "resume", "note", "graph")
        found = {name: value for name, value in vars(self.options).items() if name not in ignored}
        found["begin"] = self.begun_with
        found["score_slope"] = round(self.goal.slope, 7)
        found["positions_trained"] = len(self.training)
        found["positions_held_back"] = len(self.validation)
        return found

    def write(self, final: bool) -> None:
        """Writes the network as it is, the log and the state."""
        out = self.options.out
        precise = self.values(self.learner)
        whole = self.learner.quantised()
        rounded = self.values(whole.to(self.device))
        differences = (rounded - precise.clamp(-20_000, 20_000)).abs()
        rounding = Rounding(float(differences.mean()), float(differences.max()))
        judged = self.judge(rounded)
        text = self.text(judged, rounding)
        content = Network(
            whole.sizes,
            whole.features,
            whole.biases,
            whole.outputs,
            whole.output_biases,
            text,
        ).to_bytes()
        (out / "network.bin").write_bytes(content)
        digest = hashlib.sha256(content).hexdigest()
        (out / "network.bin.sha256").write_text(f"{digest}  network.bin\n", encoding="ascii")
        account = {
            "settings": self.settings(),
            "records": {
                "given": [path.name for path in self.options.records],
                "count": len(self.words),
                "sha256": self.digest,
            },
            "note": self.options.note,
            "device": torch.cuda.get_device_name() if self.device.type == "cuda" else "cpu",
            "torch": torch.__version__,
            "yardsticks": {name: asdict(of_it) for name, of_it in self.yardsticks().items()},
            "floating": asdict(self.judge(precise)),
            "quantised": asdict(judged),
            "rounding_centipawns": asdict(rounding),
            "passes": [asdict(line) for line in self.log],
            "sha256": digest,
        }
        (out / "network.json").write_text(json.dumps(account, indent=1) + "\n", encoding="utf-8")
        state = {
            "settings": self.settings(),
            "records": self.digest,
            "learner": self.learner.state_dict(),
            "optimizer": self.optimizer.state_dict(),
            "step": self.step,
            "log": [asdict(line) for line in self.log],
        }
        torch.save(state, out / "state.pt")
        if final:
            print(text, flush=True)

    def text(self, judged: Judgement, rounding: Rounding) -> str:
        """Where the network comes from, for its file."""
        settings = ", ".join(f"{name} {value}" for name, value in self.settings().items())
        lines = [
            "Learned from games of this engine against itself; no other games or evaluations.",
            self.options.note,
            f"Records: {len(self.words)}, sha256 {self.digest}",
            f"Settings: {settings}",
            f"Passes: {len(self.log)}. Held back, in whole numbers: loss {judged.loss:.6f},"
            f" cross-entropy {judged.entropy:.5f}, against results alone {judged.result_entropy:.5f}",
            f"Rounding: mean {rounding.mean:.2f}, largest {rounding.largest:.1f} centipawns",
        ]
        return "\n".join(line for line in lines if line) + "\n"

    def run(self) -> None:
        """Trains to the end, or until the time is up."""
        options = self.options
        options.out.mkdir(parents=True, exist_ok=True)
        if options.resume:
            self.resume()
        print(
            f"{len(self.training)} positions to train on, {len(self.validation)} held back;"
            f" slope of scores {self.goal.slope:.5f}; {self.steps_a_pass} steps a pass;"
            f" {self.device}; {time.monotonic() - self.begun:.1f} s",
            flush=True,
        )
        for name, of_it in self.yardsticks().items():
            print(f"{name}: {of_it}", flush=True)
        while len(self.log) < options.passes:
            rate = self.rate()
            loss = self.one_pass()
            validation = self.judge(self.values(self.learner)).loss
            seconds = time.monotonic() - self.begun
            self.log.append(Pass(len(self.log) + 1, rate, loss, validation, seconds))
            print(
                f"pass {len(self.log)} of {options.passes}: rate {rate:.2e}, training {loss:.6f},"
                f" validation {validation:.6f}, {seconds:.1f} s",
                flush=True,
            )
            self.write(final=False)
            if options.seconds is not None and seconds > options.seconds:
                print("the time is up", flush=True)
                break
        self.write(final=True)


def main() -> int:
    """Runs the command line; the exit status."""
    try:
        Training(arguments()).run()
    except (RecordError, NetworkError, SettingError, OSError) as error:
        print(f"train: {error}", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
