"""The shapes of the desk's API as TypeScript, made from its OpenAPI description, for the page (`web/src/wire.ts`).

Only what such a description of ours has: objects, lists, pairs, literals, unions and references.
"""

from __future__ import annotations

import json
from typing import Any

HEAD = "// Made by tools/desk_api.py from the API's description: the shapes that the page and the server say to each other.\n"
PLAIN = {"string": "string", "integer": "number", "number": "number", "boolean": "boolean", "null": "null"}  # fmt: skip

OTHERS = {"HTTPValidationError", "ValidationError"}
"""Shapes of the framework's, which our server never sends."""


def typed(description: dict[str, Any]) -> str:
    """The module's text.

    :raises ValueError: for a schema of a sort that is not known here.
    """
    schemas = description["components"]["schemas"]
    return HEAD + "".join(_interface(name, schemas[name]) for name in sorted(set(schemas) - OTHERS))


def _interface(name: str, schema: dict[str, Any]) -> str:
    told = "\n".join(f" * {line}".rstrip() for line in schema.get("description", "").splitlines())
    comment = f"/**\n{told}\n */\n" if told else ""
    required = set(schema.get("required", ()))
    fields = "".join(
        f"  {field}{'' if field in required else '?'}: {type_of(each)};\n"
        for field, each in schema["properties"].items()
    )
    return f"\n{comment}export interface {name} {{\n{fields}}}\n"


def type_of(schema: dict[str, Any]) -> str:
    """The type of one schema.

    :raises ValueError: as above.
    """
    if "$ref" in schema:
        return str(schema["$ref"]).rpartition("/")[2]
    for union in ("anyOf", "oneOf"):
        if union in schema:
            return " | ".join(dict.fromkeys(type_of(each) for each in schema[union]))
    if "const" in schema:
        return json.dumps(schema["const"])
    if "enum" in schema:
        return " | ".join(json.dumps(value) for value in schema["enum"])
    sort = schema.get("type")
    if sort == "array":
        if "prefixItems" in schema:
            return f"[{', '.join(type_of(each) for each in schema['prefixItems'])}]"
        item = type_of(schema["items"])
        return f"({item})[]" if " | " in item and not item.startswith("[") else f"{item}[]"
    if sort in PLAIN:
        return PLAIN[sort]
    raise ValueError(f"no TypeScript for {schema}")
