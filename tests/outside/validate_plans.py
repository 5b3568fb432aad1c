"""Says of each plan file whether it follows the schema: validate_plans.py SCHEMA PLAN...

Prints a line a file, "follows" or the first way in which it does not. The validator is python3-jsonschema
(Draft202012Validator), which shares nothing with the program.
"""

import json
import sys

import jsonschema


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        schema = json.load(file)
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    for name in sys.argv[2:]:
        with open(name, encoding="utf-8") as file:
            plan = json.load(file)
        error = next(validator.iter_errors(plan), None)
        print("follows" if error is None else f"{error.json_path}: {error.message[:200]}")


main()
