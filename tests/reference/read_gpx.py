#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""read_gpx.py FILE: what Python's XML parser finds in a GPX file, as JSON; an error if it is not well-formed."""

import json
import sys
import xml.etree.ElementTree as tree

root = tree.parse(sys.argv[1]).getroot()
namespace, _, tag = root.tag.lstrip("{").partition("}")
ns = {"g": namespace}
kinds = [child.tag.partition("}")[2] for child in root]
print(json.dumps({
  "root": tag,
  "namespace": namespace,
  "version": root.get("version"),
  "children": [kind for i, kind in enumerate(kinds) if kind not in kinds[:i]],
  "name": root.findtext("g:trk/g:name", None, ns),
  "waypoints": [point.findtext("g:name", None, ns) for point in root.findall("g:wpt", ns)],
  "points": [[float(point.get("lat")), float(point.get("lon")), float(point.findtext("g:ele", None, ns))]
             for point in root.findall("g:trk/g:trkseg/g:trkpt", ns)],
}))
