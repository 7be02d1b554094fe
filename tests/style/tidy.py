#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What clang-tidy finds in core/, ui/ and app/.

usage: tidy.py BUILD-FOLDER

The folder has a compile_commands.json without precompiled headers. Most of what clang-tidy does is to read and search the
headers of Qt and of the standard library, so neighbours in a folder are looked at together, in a file that includes them
all. Where two of them keep something of the same name to themselves, that does not compile, and they are looked at one by
one.
"""
import concurrent.futures
import json
import os
import pathlib
import re
import subprocess
import sys

TOGETHER = 8
# What each file that speaks calls the class of its own texts; it need not be another name in each.
OWN_TEXTS = "Say"

root = pathlib.Path(__file__).resolve().parents[2]


def batches(commands):
    """Files of one folder each, a few at a time."""
    of_folder = {}
    for file in sorted(commands):
        of_folder.setdefault(file.parent, []).append(file)
    for files in of_folder.values():
        for first in range(0, len(files), TOGETHER):
            yield files[first : first + TOGETHER]


def together(files, commands, folder):
    """The file that includes them, and how it is compiled."""
    place = folder / f"{files[0].relative_to(root).with_suffix('').as_posix().replace('/', '-')}-on.cpp"
    place.write_text(
        "".join(
            f'#define {OWN_TEXTS} {OWN_TEXTS}{i}\n#include "{file}"\n#undef {OWN_TEXTS}\n'
            for i, file in enumerate(files)
        )
    )
    first = commands[files[0]]
    return {**first, "file": str(place), "command": first["command"].replace(str(files[0]), str(place))}


def tidy(build, file):
    """Exit code and what was said, without the colours."""
    said = subprocess.run(
        ["clang-tidy", "-quiet", "-p", build, file], capture_output=True, text=True, check=False, cwd=root
    )
    return said.returncode, re.sub(r"\x1b\[[0-9;]*m", "", said.stdout + said.stderr)


def main():
    build = pathlib.Path(sys.argv[1]).resolve()
    rooms = [root / name for name in ("core", "ui", "app")]
    commands = {}
    for entry in json.loads((build / "compile_commands.json").read_text()):
        file = pathlib.Path(entry["file"])
        if any(room in file.parents for room in rooms):
            commands[file] = entry
    if not commands:
        sys.exit(f"{build}/compile_commands.json has no file of {', '.join(map(str, rooms))}.")

    folder = build / "together"
    folder.mkdir(exist_ok=True)
    todo = list(batches(commands))
    made = [together(files, commands, folder) for files in todo]
    (folder / "compile_commands.json").write_text(json.dumps(made))

    def look(files, entry):
        code, said = tidy(folder, entry["file"])
        if code == 0:
            return []
        if "[clang-diagnostic-error]" not in said:
            return [said]
        alone = [tidy(build, file) for file in files]
        if all(code == 0 for code, _ in alone):
            names = sorted(set(re.findall(r"error: redefinition of '([^']*)'", said)))
            print(f"One by one, for {', '.join(names) or 'a name'} stands twice: {files[0].parent.relative_to(root)}")
        return [said for code, said in alone if code]

    with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
        found = [said for looked in pool.map(look, todo, made) for said in looked]
    (build / "tidy.log").write_text("\n".join(found))
    lines = {line for said in found for line in said.splitlines() if re.search(r"(error|warning): ", line)}
    print("\n".join(sorted(lines)), end="\n" if lines else "", file=sys.stderr)
    if found:
        sys.exit(1)


if __name__ == "__main__":
    main()
