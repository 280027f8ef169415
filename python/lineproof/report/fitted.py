"""What a fit of the model of natural moves has brought, in sentences and as JSON."""

from __future__ import annotations

from typing import Any

from lineproof.replies import Natural
from lineproof.replies.fitting import Fit
from lineproof.replies.observed import Quality

from .counted import counted
from .plain import plain

FORMAT = 1


def _line(of: Quality) -> str:
    return (
        f"the move played was its likeliest in {of.first:.1f} of 100 games, among its three likeliest in {of.three:.1f};"
        f" log-loss {of.loss:.3f}, all moves alike {of.uniform:.3f}"
    )


def told_quality(of: Quality, natural: Natural, name: str) -> str:
    return (
        f"{plain(name)}: {counted(of.games, 'move')} at {counted(of.positions, 'position')}.\n"
        f"The model ({plain(natural.source)}): {_line(of)}.\n"
    )


def told_fit(fit: Fit, file: str) -> str:
    after = fit.after
    return (
        f"Judged by {counted(after.games, 'move')} at {counted(after.positions, 'position')} that were not fitted:\n"
        f"  before: {_line(fit.before)}\n"
        f"  now: {_line(after)}\n"
        f"Its opinion counts as {fit.natural.alpha:.0f} games. The weights are in {plain(file)}.\n"
    )


def _quality(of: Quality) -> dict[str, Any]:
    return {
        "games": of.games,
        "positions": of.positions,
        "first": round(of.first, 3),
        "among_three": round(of.three, 3),
        "log_loss": round(of.loss, 5),
        "log_loss_uniform": round(of.uniform, 5),
    }


def quality_json(of: Quality, natural: Natural, name: str) -> dict[str, Any]:
    return {"format": FORMAT, "file": name, "weights": natural.source, "quality": _quality(of)}


def fit_json(fit: Fit, file: str) -> dict[str, Any]:
    return {
        "format": FORMAT,
        "file": file,
        "alpha": fit.natural.alpha,
        "before": _quality(fit.before),
        "after": _quality(fit.after),
    }
