"""The network in floating point, as it is trained, and its rounding to whole numbers."""

from __future__ import annotations

import torch
from quantised import (
    FEATURE_MOST,
    FEATURES,
    OUTPUT_BIAS_MOST,
    OUTPUT_MOST,
    OUTPUT_UNIT,
    UNIT,
    Features,
    Network,
    NetworkError,
    Sizes,
)
from torch import Tensor, nn

# Weights beyond these would not fit in the whole numbers of the engine.
_FEATURE_MOST = FEATURE_MOST / UNIT
_OUTPUT_MOST = OUTPUT_MOST / OUTPUT_UNIT
KINDS = 12


class Learner(nn.Module):
    """One layer a side, values clamped to 0 to 1 and squared, one output (Nasu, Efficiently Updatable
    Neural-Network-based Evaluation Function for Computer Shogi, 2018).

    A column is the sum of parts for its kind of man, for kind and rank, kind and file, kind and square, and, with several
    king buckets, of its own, so that rare squares and rare places of the king learn from common ones. The sum alone is
    written down.
    """

    def __init__(self, sizes: Sizes, seed: int) -> None:
        super().__init__()
        self.sizes = sizes
        chosen = torch.Generator().manual_seed(seed)

        def spread(most: float, *shape: int) -> nn.Parameter:
            return nn.Parameter((torch.rand(*shape, generator=chosen) * 2.0 - 1.0) * most)

        self.kinds = spread(0.08, KINDS, 1, 1, sizes.width)
        self.ranks = nn.Parameter(torch.zeros(KINDS, 8, 1, sizes.width))
        self.files = nn.Parameter(torch.zeros(KINDS, 1, 8, sizes.width))
        self.shared = nn.Parameter(torch.zeros(KINDS, 8, 8, sizes.width))
        buckets = sizes.inputs // FEATURES
        self.own = nn.Parameter(torch.zeros(buckets, *self.shared.shape)) if buckets > 1 else None
        # Begins with sums of about 0 to 1 in most positions.
        self.biases = spread(0.3, sizes.width)
        # All output buckets begin alike.
        outputs = spread((2 * sizes.width) ** -0.5, 1, 2 * sizes.width)
        self.outputs = nn.Parameter(outputs.detach().repeat(sizes.outputs, 1))
        self.output_biases = nn.Parameter(torch.zeros(sizes.outputs))

    @torch.no_grad()
    def begin(self, network: Network) -> None:
        """Takes the weights of a network: its columns go into the parts as far as means over ranks, files and squares explain
        them. Several king buckets can begin with one.

        :raises NetworkError: when it has other sizes.
        """
        sizes = network.sizes
        buckets = sizes.inputs // FEATURES
        mine = (self.sizes.width, self.sizes.output_buckets, self.sizes.scale)
        same = (sizes.width, sizes.output_buckets, sizes.scale) == mine
        if not same or (buckets > 1 and sizes.king_buckets != self.sizes.king_buckets):
            raise NetworkError("the network to begin with has other sizes")
        columns = network.features.to(torch.float32) / UNIT
        columns = columns.reshape(buckets, KINDS, 8, 8, sizes.width)
        mean = columns.mean(dim=0)
        if self.own is not None:
            self.own.copy_(columns - mean if buckets > 1 else torch.zeros_like(self.own))
        kinds = mean.mean(dim=(1, 2), keepdim=True)
        ranks = mean.mean(dim=2, keepdim=True) - kinds
        files = mean.mean(dim=1, keepdim=True) - kinds
        self.kinds.copy_(kinds)
        self.ranks.copy_(ranks)
        self.files.copy_(files)
        self.shared.copy_(mean - kinds - ranks - files)
        self.biases.copy_(network.biases.to(torch.float32) / UNIT)
        self.outputs.copy_(network.outputs.to(torch.float32) / OUTPUT_UNIT)
        self.output_biases.copy_(network.output_biases.to(torch.float32) / (UNIT * OUTPUT_UNIT))

    def features(self) -> Tensor:
        """The columns: (inputs, width)."""
        columns = self.shared + self.ranks + self.files + self.kinds
        if self.own is not None:
            columns = self.own + columns
        return columns.reshape(-1, self.sizes.width)

    def forward(self, ones: Tensor, bucket: Tensor) -> Tensor:
        """Centipawns for the mover, (n,), from the ones and zeros of [`Features.dense`], (2 n, inputs), and the output
        buckets, (n,)."""
        sums = ones @ self.features() + self.biases
        active = sums.clamp(0.0, 1.0).square()
        both = torch.cat(active.chunk(2), dim=1)
        every = both @ self.outputs.T + self.output_biases
        chosen: Tensor = every.gather(1, bucket[:, None])[:, 0] * self.sizes.scale
        return chosen

    def values(self, squares: Tensor, features: Features) -> Tensor:
        """Centipawns for the mover, from digits (n, 64)."""
        found: Tensor = self(features.dense(squares), features.output(squares))
        return found

    def groups(self, decay: float) -> list[dict[str, list[Tensor] | float]]:
        """The parameters for an optimizer: `decay` draws the parts of single squares towards nothing, no others."""
        parts = [part for part in (self.shared, self.own) if part is not None]
        others = [self.kinds, self.ranks, self.files, self.biases, self.outputs, self.output_biases]
        return [
            {"params": [*parts], "weight_decay": decay},
            {"params": [*others], "weight_decay": 0.0},
        ]

    @torch.no_grad()
    def clip(self) -> None:
        """Keeps all weights where whole numbers can follow."""
        # The last part is moved until the sum fits.
        last = self.shared if self.own is None else self.own
        sums = self.features().reshape(last.shape)
        last.add_(sums.clamp(-_FEATURE_MOST, _FEATURE_MOST) - sums)
        self.biases.clamp_(-_FEATURE_MOST, _FEATURE_MOST)
        self.outputs.clamp_(-_OUTPUT_MOST, _OUTPUT_MOST)

    @torch.no_grad()
    def quantised(self, text: str = "") -> Network:
        """The nearest network of whole numbers."""

        def whole(weights: Tensor, unit: int, most: int, kind: torch.dtype) -> Tensor:
            return (weights * unit).round().clamp(-most, most).to(kind)

        return Network(
            self.sizes,
            whole(self.features(), UNIT, FEATURE_MOST, torch.int16),
            whole(self.biases, UNIT, FEATURE_MOST, torch.int16),
            whole(self.outputs, OUTPUT_UNIT, OUTPUT_MOST, torch.int16),
            whole(self.output_biases, UNIT * OUTPUT_UNIT, OUTPUT_BIAS_MOST, torch.int32),
            text,
        )
