#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""includes.py ROOT: arrows between the floors and rooms of the house point down only (DEVELOPERS.md, "The house").

core/ includes nothing of ui/, app/ or Qt; ui/ nothing of app/; a room of ui/ only itself and the rooms before it; nothing
but tests/ includes tests/; and no files include each other in a circle. Says which line breaks that, and what to do.
"""

import pathlib
import re
import sys

FLOORS = ["core", "ui", "app"]
ROOMS = ["words", "document", "charts", "editors", "pages", "sheet", "window"]

# "FILE includes FILE": the reason why it has to be. Best empty.
EXCEPTIONS = {}

INCLUDE = re.compile(r'\s*#\s*include\s*[<"]([^>"]+)[>"]')


def level(file):
    """How far up the house a file is: its floor, then its room. None for what is no file of the house."""
    parts = file.split("/")
    if parts[0] not in FLOORS or len(parts) < 2:
        return None
    floor = FLOORS.index(parts[0])
    if parts[0] != "ui":
        return (floor, 0)
    return (floor, ROOMS.index(parts[1])) if parts[1] in ROOMS else None


def complaint(file, included):
    """What is wrong with this include, or None."""
    here, there = level(file), level(included)
    if re.match(r"Q[A-Z]|Qt", included):
        return f"includes Qt's {included}: the core knows no Qt, do it in ui/" if file.startswith("core/") else None
    if included.startswith("tests/"):
        return f"includes {included}: the program knows nothing of its tests"
    if here and there and there > here:
        return f"includes {included}, which is above it: move what it needs down, or itself up"
    return None


def circle(includes):
    """Files that include each other in a circle, the first one twice; or nothing."""
    done, path = set(), []

    def visit(file):
        if file in path:
            return path[path.index(file):] + [file]
        if file in done:
            return []
        path.append(file)
        for _, included in includes.get(file, []):
            if found := visit(included):
                return found
        done.add(path.pop())
        return []

    return next((found for file in sorted(includes) if (found := visit(file))), [])


def main(root):
    includes = {}
    for floor in FLOORS:
        for path in sorted((root / floor).rglob("*")):
            if path.suffix in (".h", ".cpp"):
                lines = path.read_text(encoding="utf-8").splitlines()
                found = [(number, INCLUDE.match(line)) for number, line in enumerate(lines, 1)]
                includes[str(path.relative_to(root))] = [(number, match[1]) for number, match in found if match]
    if not includes:
        return [f"{root}: no source files there"]

    wrong, used = [], set()
    for file, lines in includes.items():
        if level(file) is None:
            wrong.append(f"{file}: is in no room of ui/: move it into one of {', '.join(ROOMS)}, or name its room here")
        for number, included in lines:
            if why := complaint(file, included):
                exception = f"{file} includes {included}"
                used.add(exception)
                if exception not in EXCEPTIONS:
                    wrong.append(f"{file}:{number}: {why}")
    wrong += [f"includes.py: no longer an exception, take it out: {gone}" for gone in EXCEPTIONS.keys() - used]
    if found := circle(includes):
        wrong.append("a circle of includes, of which one has to go: " + " -> ".join(found))
    return wrong


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit("usage: includes.py ROOT")
    faults = main(pathlib.Path(sys.argv[1]))
    print("\n".join(faults), file=sys.stderr, end="\n" if faults else "")
    sys.exit(1 if faults else 0)
