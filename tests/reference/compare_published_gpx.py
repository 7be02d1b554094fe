#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""compare_published_gpx.py PRINT_FIXES FOLDER: the program reads recordings that others published as gpxpy does.

They are the sample files of three MIT-licensed parsers in the npm registry. They are fetched once into FOLDER and are
no part of this project; a registry that cannot be reached skips the test (77), a file that is not the published one
fails it."""
import base64
import hashlib
import io
import os
import sys
import tarfile
import urllib.error
import urllib.request
from pathlib import Path

from compare_gpx import differences

REGISTRY = os.environ.get("npm_config_registry", "https://registry.npmjs.org/").rstrip("/")
SKIPPED = 77
PATIENCE_S = 20

# Name, version, SHA-512 as the registry tells it, and the files in it with the points that they have.
PACKAGES = [
    ("stoplight", "0.0.7", "OzV6S99rhyGYnpozRvE2A0rbxtLDKTjCvQRv0AwyW6spLv7f45jqMOz76GAevRa1xxGcQDz9hZ68/20uFO59vA==",
     {"package/gpx/sample-ride.gpx": 850, "package/gpx/sample.gpx": 1919}),
    ("gpx-parse", "0.10.4", "4PUA2Hzp4m5EjDEa4YB1CKWh5Cjm1cgJuDe+nL6B77DgtFuYR7VtvBbmvbwjx6M40iA96q2BaKyD8/lraez2xw==",
     {"package/tests/integration/data/route-1.1.gpx": 7745}),
    ("gpxparser", "3.0.8", "rXKrDQoXUHz7wZ+Q/C9EbzGNaRLGeEC3uT/KGMPOj3pCHXEJfKWYxVsd+WjVEyivuVsjJib7eR1H/BBO8USUgA==",
     {"package/test/test.xml": 205}),
]


def package(name, version, sha512, folder):
    """The bytes of a package, as published; OSError where the registry cannot be reached."""
    kept = folder / f"{name}-{version}.tgz"
    if not kept.exists():
        with urllib.request.urlopen(f"{REGISTRY}/{name}/-/{kept.name}", timeout=PATIENCE_S) as answer:
            kept.write_bytes(answer.read())
    content = kept.read_bytes()
    if base64.b64encode(hashlib.sha512(content).digest()).decode() != sha512:
        kept.unlink()
        sys.exit(f"{kept.name} is not the published one")
    return content


def main(program, folder):
    folder.mkdir(parents=True, exist_ok=True)
    faults, compared = [], 0
    for name, version, sha512, files in PACKAGES:
        try:
            content = package(name, version, sha512, folder)
        except OSError as problem:
            print(f"{REGISTRY} cannot be reached: {problem}")
            return SKIPPED
        with tarfile.open(fileobj=io.BytesIO(content)) as archive:
            for path, points in files.items():
                file = folder / f"{name}-{Path(path).stem}.gpx"
                file.write_bytes(archive.extractfile(path).read())
                said, count = differences(program, file, file.name)
                faults += said
                compared += count
                if count != points:
                    faults.append(f"{file.name}: {count} points, published are {points}")
    print("\n".join(faults[:20]) if faults else f"{compared} points are read alike")
    return 1 if faults else 0


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit("usage: compare_published_gpx.py PRINT_FIXES FOLDER")
    sys.exit(main(sys.argv[1], Path(sys.argv[2])))
