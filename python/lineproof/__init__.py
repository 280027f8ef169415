"""Lineproof checks every checkable sentence of a chess lesson before it is taught."""

from __future__ import annotations
