"""Prints 'N passed, N failed' for the results that packaging/check left in a folder.

Test cases are counted from GoogleTest's own reports. A program that ctest saw fail although its report names
no failed case (it crashed, a sanitizer stopped it, it ran out of time) counts as one failure more, and so does
each step that failed before any test could run. The exit code is 1 if anything failed or nothing passed.
"""

import argparse
import pathlib
import sys
import xml.etree.ElementTree as ElementTree


def count_cases(report):
    """(passed, failed, skipped) of one GoogleTest report."""
    passed = failed = skipped = 0
    for case in ElementTree.parse(report).iter("testcase"):
        if case.get("status") != "run":
            continue
        if case.find("failure") is not None or case.find("error") is not None:
            failed += 1
        elif case.get("result") == "skipped":
            skipped += 1
        else:
            passed += 1
    return passed, failed, skipped


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=pathlib.Path)
    parser.add_argument("--failed-steps", type=int, default=0)
    options = parser.parse_args()

    passed, failed, skipped = 0, options.failed_steps, 0
    for listing in sorted(options.folder.glob("*.xml")):
        for entry in ElementTree.parse(listing).iter("testcase"):
            name, ran_well = entry.get("name"), entry.get("status") == "run"
            report = options.folder / "gtest" / f"{name}_tests.xml"
            cases = count_cases(report) if report.exists() else (int(ran_well), 0, 0)
            passed, failed, skipped = passed + cases[0], failed + cases[1], skipped + cases[2]
            if not ran_well and cases[1] == 0:
                print(f"{name}: stopped without naming a failed case", file=sys.stderr)
                failed += 1
    if skipped:
        print(f"Skipped: {skipped}")
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or not passed else 0


if __name__ == "__main__":
    sys.exit(main())
