#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""compare_gpx.py PRINT_FIXES: the program reads GPX as gpxpy (Debian's python3-gpxpy) does, files that gpxpy writes and
files as others write them, and refuses what gpxpy cannot read."""
import datetime
import json
import math
import random
import subprocess
import sys
import tempfile
from pathlib import Path

import gpxpy
import gpxpy.gpx

BY_HAND = {
    "extensions, comments, text beside the points": """<gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1"
 xmlns:v="urn:v"><metadata><time>2024-01-01T00:00:00Z</time></metadata><trk><name>a &amp; b</name><!-- <trkpt lat="1" lon="1"/> -->
<trkseg>text<trkpt lat="-0.000001" lon="179.999999"><ele>-3.25</ele><time>2024-02-29T23:59:59.500Z</time><hdop>0.9</hdop>
<extensions><v:speed>12.5</v:speed><v:ele>99</v:ele></extensions></trkpt>
<trkpt lat="10" lon="-179.999999"><time>2024-03-01T01:59:59+02:00</time></trkpt></trkseg><trkseg/>
<trkseg><trkpt lat='1e1' lon='-2'><ele>
 7.5
</ele></trkpt><trkpt lat="90" lon="0"/></trkseg></trk></gpx>""",
    "two tracks and a route": """<gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1">
<rte><rtept lat="5" lon="5"/></rte><trk><trkseg><trkpt lat="1" lon="2"/><trkpt lat="1.5" lon="2"/></trkseg></trk>
<trk><trkseg><trkpt lat="3" lon="4"/><trkpt lat="3.5" lon="4"/></trkseg></trk></gpx>""",
}
UNREADABLE = ["<gpx><trk>", "<gpx version='1.1' creator='x'><trk><trkseg><trkpt lat='a' lon='1'/></trkseg></trk></gpx>"]


def generated(seed):
    """A track of some segments, as gpxpy writes it."""
    dice = random.Random(seed)
    gpx = gpxpy.gpx.GPX()
    gpx.name = "Ünïcödé <&>"
    track = gpxpy.gpx.GPXTrack(name="lap \"1\"")
    gpx.tracks.append(track)
    moment = datetime.datetime(2026, 5, 12, 10, 0, 0, tzinfo=datetime.timezone.utc)
    lat, lon = dice.uniform(-89, 89), dice.uniform(-179, 179)
    for _ in range(dice.randint(1, 4)):
        segment = gpxpy.gpx.GPXTrackSegment()
        track.segments.append(segment)
        for _ in range(dice.randint(4, 200)):
            lat += dice.gauss(0, 1e-4)
            lon += dice.gauss(0, 1e-4)
            moment += datetime.timedelta(milliseconds=dice.choice([100, 200, 1000]))
            segment.points.append(gpxpy.gpx.GPXTrackPoint(
                lat, lon, elevation=dice.choice([None, dice.uniform(-100, 3000)]),
                time=dice.choice([None, moment])))
    return gpx.to_xml(version="1.1")


def read_by_gpxpy(text):
    points = []
    for track in gpxpy.parse(text).tracks:
        for segment in track.segments:
            for p in segment.points:
                points.append((p.latitude, p.longitude, p.elevation, p.time.timestamp() if p.time else None))
    return points


def same(a, b, tolerance):
    return a is b is None or (a is not None and b is not None and math.isclose(a, b, rel_tol=0, abs_tol=tolerance))


def differences(program, file, name):
    """What the program reads otherwise than gpxpy does in a file, a line each; and how many points were compared."""
    run = subprocess.run([program, file], capture_output=True, text=True)
    ours = [json.loads(line) for line in run.stdout.splitlines()]
    theirs = read_by_gpxpy(Path(file).read_text(encoding="utf-8"))
    if run.returncode != 0 or len(ours) != len(theirs):
        return [f"{name}: {len(ours)} points, gpxpy has {len(theirs)} {run.stderr}"], 0
    return [f"{name}, point {k}: {a}, gpxpy has {b}" for k, (a, b) in enumerate(zip(ours, theirs))
            if not all(same(x, y, 1e-6 if i == 3 else 0) for i, (x, y) in enumerate(zip(a, b)))], len(ours)


def main(program):
    texts = dict(BY_HAND) | {f"generated {seed}": generated(seed) for seed in range(40)}
    faults, compared = [], 0
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "a.gpx"
        for name, text in texts.items():
            file.write_text(text, encoding="utf-8")
            said, points = differences(program, file, name)
            faults += said
            compared += points
        for text in UNREADABLE:
            file.write_text(text, encoding="utf-8")
            try:
                gpxpy.parse(text)
                faults.append(f"gpxpy reads {text}")
            except Exception:
                if subprocess.run([program, file], capture_output=True).returncode != 1:
                    faults.append(f"not refused: {text}")
    print("\n".join(faults[:20]) if faults else f"{len(texts)} files and {compared} points are read alike")
    return 1 if faults or compared < 1000 else 0


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit("usage: compare_gpx.py PRINT_FIXES")
    sys.exit(main(sys.argv[1]))
