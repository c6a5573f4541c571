"""Hooks for schemathesis: bodies that come close to real ones.

Drawn from the schemas alone nearly every body holds some quantity in a unit that does not exist or out of its range, and is refused
before anything is computed. So three of four are drawn into a published example: most fields stay the example's, some become the
drawn ones, at any depth, and a drawn quantity is mostly one like those that its schema shows. All objects are closed and their
fields free of each other, so the mixture is as valid as its parts.
"""

import json
import random
import re

import schemathesis
from schemathesis.generation.meta import GenerationMode, TestPhase


def examples(operation):
    """The published requests of an operation."""
    content = operation.definition.raw["requestBody"]["content"]["application/json"]
    named = [example["value"] for example in content.get("examples", {}).values()]
    return named or [content["example"]]


def resolved(schema, root):
    while "$ref" in schema:
        schema = root["components"]["schemas"][schema["$ref"].rsplit("/", 1)[1]]
    return schema


def nearby(text, chance):
    """A quantity with another number: "24 ft" becomes "31.2 ft"."""
    return re.sub(r"^\d+(\.\d+)?", lambda number: f"{float(number[0]) * chance.uniform(0.5, 2):.3g}", text)


def plausible(value, schema, root, chance):
    """A drawn value, with most of its quantities like those of their schemas."""
    schema = resolved(schema, root)
    if isinstance(value, dict):
        fields = schema.get("properties", {})
        return {name: plausible(field, fields[name], root, chance) if name in fields else field for name, field in value.items()}
    if isinstance(value, list):
        return [plausible(item, schema.get("items", {}), root, chance) for item in value]
    if isinstance(value, str) and schema.get("examples") and chance.random() < 0.9:
        return nearby(chance.choice(schema["examples"]), chance)
    return value


def mix(drawn, example, chance):
    """The example with some of what was drawn in its place."""
    if chance.random() < 0.1:
        return drawn
    if isinstance(drawn, dict) and isinstance(example, dict):
        added = {name: value for name, value in drawn.items() if name not in example and chance.random() < 0.2}
        return {name: mix(drawn[name], value, chance) if name in drawn else value for name, value in example.items()} | added
    if isinstance(drawn, list) and isinstance(example, list) and drawn:
        # A long list has few that differ, or none of it would ever be accepted.
        return [mix(chance.choice(drawn), value, chance) if chance.random() < 0.2 else value for value in example]
    return example


@schemathesis.hook
def map_case(context, case):
    meta = case.meta
    is_free = meta and meta.phase.name == TestPhase.FUZZING and meta.generation.mode == GenerationMode.POSITIVE
    if is_free and isinstance(case.body, dict):
        # By what was drawn, so that the same seed gives the same bodies.
        chance = random.Random(json.dumps(case.body, sort_keys=True))
        if chance.random() < 0.75:
            operation, root = context.operation, context.operation.schema.raw_schema
            schema = operation.definition.raw["requestBody"]["content"]["application/json"]["schema"]
            drawn = plausible(case.body, schema, root, chance)
            case.body = mix(drawn, chance.choice(examples(operation)), chance)
    return case


def holds_absent(value):
    """Whether a member of an object in it is null, an empty text or an empty list."""
    if isinstance(value, dict):
        return any(member in (None, "", []) or holds_absent(member) for member in value.values())
    return isinstance(value, list) and any(holds_absent(item) for item in value)


@schemathesis.hook
def filter_case(context, case):
    """In an optional field or parameter such a value counts as absent, whatever its schema says: the request need not be refused."""
    is_wrong = case.meta and case.meta.generation.mode == GenerationMode.NEGATIVE
    return not (is_wrong and (holds_absent(case.body) or holds_absent(case.query)))
