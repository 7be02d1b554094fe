#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Reads Layshaft's window through the accessibility bus (AT-SPI), as a screen reader does, and uses it by keyboard.

usage: read_window.py PROGRAM PROFILE

Needs a display, a window manager and a message bus. What is expected is written beside each check; all checks are made,
and the exit code is 1 if one of them failed.
"""

import json
import signal
import subprocess
import sys
import time

import gi

gi.require_version("Atspi", "2.0")
from gi.repository import Atspi, GLib  # noqa: E402

PATIENCE_S = 20.0
failures = []
passed = 0


def check(holds, what):
    global passed
    if holds:
        passed += 1
    else:
        failures.append(what)
        print("FAILED: " + what)


def path_of(node):
    """Where it stands, for a message."""
    names = []
    while node is not None and node.get_role() != Atspi.Role.APPLICATION:
        names.append(node.get_name() or node.get_role_name())
        node = node.get_parent()
    return " < ".join(names)


def children(node):
    for i in range(max(0, node.get_child_count())):
        child = node.get_child_at_index(i)
        if child is not None:
            yield child


def everything(node):
    """The node and all below it that are on screen."""
    yield node
    for child in children(node):
        try:
            if has(child, Atspi.StateType.VISIBLE):
                yield from everything(child)
        except GLib.Error:
            continue  # gone while we looked


def has(node, state):
    node.clear_cache()  # not every change is told to who remembers
    return node.get_state_set().contains(state)


def text_of(node):
    return Atspi.Text.get_text(node, 0, -1) if "Text" in node.get_interfaces() else ""


def said_by(node):
    """What is read out of it: name, text and description."""
    return "\n".join(part for part in (node.get_name(), text_of(node), node.get_description()) if part)


def until(question):
    """Asks until the answer is true or patience ends; gives the last answer."""
    ends = time.monotonic() + PATIENCE_S
    while True:
        try:
            answer = question()
        except GLib.Error:
            answer = None  # it was being rebuilt
        if answer or time.monotonic() > ends:
            return answer
        time.sleep(0.1)


def find_window():
    desktop = Atspi.get_desktop(0)
    for application in children(desktop):
        if "layshaft" in (application.get_name() or "").lower():
            for window in children(application):
                if window.get_role() in (Atspi.Role.FRAME, Atspi.Role.WINDOW):
                    return window
    return None


def focused(window):
    """What has the focus. The tab in front always calls itself focused, so it is only asked when nothing else is."""
    tab = None
    for node in everything(window):
        if node == window or not has(node, Atspi.StateType.FOCUSED):
            continue
        if node.get_role() != Atspi.Role.PAGE_TAB:
            return node
        tab = node
    return tab


def press(*keys):
    subprocess.run(["xdotool", "key", "--clearmodifiers", *keys], check=True)
    time.sleep(0.15)


def plain(text):
    return " ".join(text.split())


def readout_of(window):
    for node in everything(window):
        if node.get_name() == "Readout":
            return node
    return None


def check_readout(window, program, profile):
    report = subprocess.run([program, "report", profile, "--format", "text"], check=True, capture_output=True,
                            encoding="utf-8").stdout
    readout = readout_of(window)
    check(readout is not None, "the readout is found by its name")
    if readout is None:
        return
    check(has(readout, Atspi.StateType.FOCUSABLE), "the readout can have the focus")
    said = plain(text_of(readout))
    check(len(said) > 100, f"the readout is a text and not only a name: {said!r}")
    lines = [plain(line) for line in report.splitlines() if line.strip()]
    headline = next((line for line in lines if line in said), None)
    check(headline is not None and len(headline) > 20, "the report's headline is read out in the window, word for word")


def name_heard(node):
    """A choice is called by the label it belongs to: as its name Qt gives what is chosen."""
    labels = [relation.get_target(i).get_name() for relation in node.get_relation_set()
              if relation.get_relation_type() == Atspi.RelationType.LABELLED_BY
              for i in range(relation.get_n_targets())]
    if node.get_role() == Atspi.Role.COMBO_BOX:
        return " ".join(labels)
    return node.get_name() or " ".join(labels)


def check_tab_stops(window):
    """One round with Tab: each stop has a name, and the round ends where it began."""
    begin = node = until(lambda: focused(window))
    check(begin is not None, "something has the focus at the start")
    seen = []
    while node is not None and len(seen) < 120:
        name = name_heard(node)
        check(bool(name.strip()), f"a Tab stop has a name: a {node.get_role_name()} after {seen[-1:]}")
        seen.append(name)
        press("Tab")
        left = node
        node = until(lambda: (found := focused(window)) is not None and found != left and found) or None
        if node == begin:
            break
    check(node is not None and node == begin, "Tab comes round; at last it was at " + ", ".join(seen[-3:]))
    return seen


def check_fields(window):
    """Units are in the names of fields that have one, and a field's value is a value."""
    wanted = {"Rev limit": "rpm", "Shift at": "rpm", "Width": "mm", "Rim": "in", "Rollout": "mm"}
    for words, unit in wanted.items():
        fields = [node for node in everything(window)
                  if node.get_role() == Atspi.Role.SPIN_BUTTON and words.lower() in (node.get_name() or "").lower()]
        check(bool(fields), f"there is a field {words}")
        check(any((field.get_name() or "").endswith(f", {unit}") for field in fields),
              f"the unit {unit} is in the name of the field {words}: {[field.get_name() for field in fields]}")
        for field in fields:
            check("Value" in field.get_interfaces(), f"{field.get_name()!r} has a value")


def refuse_rev_limit(window):
    """What a field does not take is its description and an alert, until the next edit."""
    fields = [node for node in everything(window)
              if node.get_role() == Atspi.Role.SPIN_BUTTON and "rev limit" in (node.get_name() or "").lower()]
    check(bool(fields), "there is a field for the rev limit")
    if not fields:
        return
    field = fields[0]
    Atspi.Component.grab_focus(field)
    until(lambda: has(field, Atspi.StateType.FOCUSED))
    press("ctrl+a", *"99999", "Return")
    told = until(lambda: "out of range" in (field.get_description() or "") and field.get_description()) or ""
    check("99999 rpm is out of range" in told, f"the field's description says what was refused: {told!r}")
    alerts = [node.get_name() for node in everything(window) if node.get_role() == Atspi.Role.ALERT]
    check(alerts == [told], f"an alert says the same: {alerts}")
    press("Escape")
    check(bool(until(lambda: not any(node.get_role() == Atspi.Role.ALERT for node in everything(window)))),
          "Escape takes the alert away")


def step_rear_teeth(window):
    """Turns the proposal's rear teeth by a key: the readout and the focused field tell what it did."""
    rear = [node for node in everything(window)
            if node.get_role() == Atspi.Role.SPIN_BUTTON and "rear" in (node.get_name() or "").lower()]
    check(bool(rear), "there is a field for the rear teeth")
    if not rear:
        return
    before = plain(text_of(readout_of(window)))
    Atspi.Component.grab_focus(rear[0])
    until(lambda: has(rear[0], Atspi.StateType.FOCUSED))
    press("Up")
    changed = until(lambda: plain(text_of(readout_of(window))) != before)
    check(bool(changed), "a step of the rear teeth changes what the readout reads out")
    after = plain(text_of(readout_of(window)))
    description = until(lambda: plain(rear[0].get_description() or "")) or ""
    check(bool(description) and description in after,
          f"the new headline is the focused field's description: {description!r}")
    press("ctrl+z")
    until(lambda: plain(text_of(readout_of(window))) == before)
    check(plain(text_of(readout_of(window))) == before, "undo brings the old text back")


def choose_page(window, word):
    """Goes to the page whose tab has that word."""
    for node in everything(window):
        if node.get_role() == Atspi.Role.PAGE_TAB and word in (node.get_name() or "").replace("&", ""):
            Atspi.Action.do_action(node, 0)
            return True
    return False


def check_sentences(window):
    """Sentences that have a name beside their words are read with their words."""
    for page, name, word in (("Chain", "Whether it fits", "links"), ("Chain", "Cautions", "Key out"),
                             ("Acceleration", "The straight in words", "km/h"), ("Ladder", "Answer to the aims", " ")):
        check(choose_page(window, page), f"there is a page {page} to go to")
        found = until(lambda: [node for node in everything(window) if node.get_name() == name])
        check(bool(found) and word in text_of(found[0]),
              f"{name!r} on page {page} is read with its words: {text_of(found[0]) if found else None!r}")
    choose_page(window, "Sawtooth")


PICTURES = (Atspi.Role.CHART, Atspi.Role.IMAGE, Atspi.Role.CANVAS)


def picture_in_view(window):
    """The picture of the page in view, by its long description; icons have none."""
    for node in everything(window):
        if (node.get_role() in PICTURES and has(node, Atspi.StateType.SHOWING)
                and len(node.get_description() or "") > 40):
            return node
    return None


def check_charts(window):
    """Each page's picture is a graphic that is summed up in words and says where its numbers are."""
    for page in ("Pull", "Acceleration", "Chain", "Lap", "Sawtooth"):
        check(choose_page(window, page), f"there is a page {page} to go to")
        picture = until(lambda: picture_in_view(window))
        said = plain(picture.get_description()) if picture else ""
        check("Table" in said and "roposed" in said, f"the picture of page {page} is summed up in words: {said!r}")
        check(bool(picture and picture.get_name()), f"the picture of page {page} has a name")


def pumped():
    """Lets events arrive."""
    while GLib.MainContext.default().iteration(False):
        pass
    return True


def check_crosshair(window):
    """Keys move the crosshair of a chart, and what it reads is heard."""
    chart = until(lambda: picture_in_view(window))
    check(chart is not None and chart.get_role() == Atspi.Role.CHART, "the sawtooth is a chart")
    if chart is None:
        return
    check("Value" in chart.get_interfaces(), "the crosshair's place is a value")
    whole = chart.get_description()
    Atspi.Component.grab_focus(chart)
    until(lambda: has(chart, Atspi.StateType.FOCUSED))
    told = []  # what is told without being asked for
    listener = Atspi.EventListener.new(lambda event: told.append(event.type))
    for kind in ("accessible-value", "accessible-description"):
        listener.register("object:property-change:" + kind)
    heard = []
    for _ in range(2):
        press("Right")
        known = [plain(whole)] + [said for _, said in heard]
        until(lambda: has(chart, Atspi.StateType.FOCUSED) and plain(chart.get_description()) not in known)
        heard.append((Atspi.Value.get_current_value(chart), plain(chart.get_description())))
    for kind in ("accessible-value", "accessible-description"):
        check(bool(until(lambda: pumped() and any(kind in event for event in told))), f"a changed {kind} is told")
        listener.deregister("object:property-change:" + kind)
    check(heard[1][0] > heard[0][0], f"Right moves the crosshair on: {heard!r}")
    check("Stock" in heard[1][1] and heard[1][1] != heard[0][1], f"what the crosshair reads is heard: {heard!r}")
    press("Escape")
    until(lambda: has(chart, Atspi.StateType.FOCUSED) and chart.get_description() == whole)
    check(chart.get_description() == whole, "without a crosshair the chart is summed up again")


def main():
    program, profile = sys.argv[1:3]
    shown = subprocess.Popen([program, profile])
    try:
        window = until(find_window)
        if window is None:
            print("the window did not appear on the accessibility bus", file=sys.stderr)
            return 1
        until(lambda: has(window, Atspi.StateType.ACTIVE))
        until(lambda: readout_of(window) is not None)
        with open(profile, encoding="utf-8") as file:
            name = json.load(file)["name"]
        check(name in window.get_name(), f"the window's title {window.get_name()!r} has the bike's name {name!r}")
        check_readout(window, program, profile)
        check_fields(window)
        check_sentences(window)
        refuse_rev_limit(window)
        check_charts(window)
        check_crosshair(window)
        step_rear_teeth(window)
        stops = check_tab_stops(window)
        if "-v" in sys.argv:
            print("\n".join(stops))
    finally:
        # It must not ask whether to save: nothing is lost, the profile was only read.
        shown.send_signal(signal.SIGKILL)
        shown.wait()
    print(f"{passed} passed, {len(failures)} failed")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
