#!/usr/bin/env python3
"""Holds documents against the schemas of resources/schemas.

usage: againstschema.py SCHEMA-FOLDER CASES

CASES has one JSON object a line: {"schema": "job", "document": ...}. Prints one line for each: "accepted", or
"refused" with where and why.
"""
import json
import pathlib
import sys

import jsonschema


def validators(folder):
    found = {}
    for path in sorted(pathlib.Path(folder).glob("*.json")):
        schema = json.loads(path.read_text(encoding="utf-8"))
        jsonschema.Draft202012Validator.check_schema(schema)
        found[path.stem] = jsonschema.Draft202012Validator(schema)
    return found


def main(folder, cases):
    known = validators(folder)
    with open(cases, encoding="utf-8") as lines:
        for line in lines:
            case = json.loads(line)
            error = next(known[case["schema"]].iter_errors(case["document"]), None)
            where = error and "/".join(str(step) for step in error.absolute_path)
            print(f"refused {where}: {error.message.splitlines()[0][:200]}" if error else "accepted")


if __name__ == "__main__":
    main(*sys.argv[1:])
