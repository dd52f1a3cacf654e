"""Points 9 to 20 of the twenty: what survives, bolts, clocks, hands, closing, the office, finding. Each
test returns what it measured."""
import json
import time

from demo_at import ANGLE, NUMBER, NUTS, PARKED, RINGS, RULE, TENDER, Stand, at, same
from walk import go

LAID = ("11:30 lay gasket sealant", "2025-03-13 11:31")
FLANGE = ("10:20 fit pick-up flange", "2025-03-13 10:36")
PUMP_LAID = ("09:10 lay thread sealant on water pump", "2025-03-18 09:12")
PUMP = ("tighten water pump[2]", "2025-03-18 09:20")
COVER = ("read pick-up depth 135.86", "2025-03-13 09:13")


def point_09_each_entry_survives_a_pulled_plug():
    with at(RINGS) as stand:
        for value in ("0.36", "0.42", "0.33"):
            stand.press(value + "\r")
        before = len(stand.entries())
        stand.type("0.3")  # half typed
        stand.settle()
        stand.lacks(r"(?i)\bsave")
        stand.restarted("KILL")
        same("entries", len(stand.entries()), before)
        same("readings", stand.typed()[-3:], ["0.36", "0.42", "0.33"])
        stand.lacks(r"(?i)\b(save|recover|restore|continue\?)")
        if "who picks up?" in stand.row(-4):
            stand.pick_up("MO")  # who, the one thing that it cannot know
        stand.next_is("second ring gap 2")
        stand.has(r"\[ +\] mm", -4)
        same("verify", "the store is whole" in stand.run("verify"), True)
    return "killed with 3 read and 3 keys half typed: 3 kept, the half lost, on at the 4th place"


def point_10_start_up_lands_where_the_work_was_left():
    with at(TENDER) as stand:
        stand.has("TL-0418", 1)
        stand.has(r"S17  main caps.*stage 3 of 3", 2)
        stand.has(r"[╔║]> +2 +<║")
        stand.has(r"^last  bolt 1 · 100 N·m · .*08:54 MO, 3[56] min ago", -2)
        stand.type("\x7f" if stand.row(-4).startswith("ASK") else "")
        stand.settle()
        stand.press("*")  # and that is what it strikes
        stand.has(r"^ASK   strike bolt 1 · 100 N·m\?", -4)
    return "TL-0418, S17, stage 3, bolt 2 in hand; last: bolt 1, 100 N·m, 08:54 MO, 36 min ago"


def point_11_next_is_always_on_the_same_line_with_all_that_hands_need():
    seen = []
    with at(NUTS) as stand:
        stand.answer("W4")
        seen.append(stand.has(r"^NEXT  bolt 3 · 1 of 10 · 30 N·m · W4.*· engine oil", -4)[0])
        stand.has(r"^then  bolts 8, 4, 7", -3)
        for key, word in (("b", "NEXT"), ("b", "NEXT"), ("h", "NEXT"), ("+\r", "NEXT")):
            stand.type(key)
            stand.settle()
            stand.has(r"^(NEXT|ASK)  ", -4)
    with at(PUMP) as stand:  # bolt 4 is reached with the adapter X1 alone
        stand.answer("W1 with X1")
        stand.next_is("bolt 4 · 20 N·m · W1 with X1 set 18.5 · thread sealant")
        for label, said in (("W1", "W1 set 20 "), ("W1 with X1", "W1 with X1 set 18.5 ")):
            stand.press("g")
            stand.answer(label + "(?! with)")
            stand.has(said, -4)
        stand.press("\r")
        same("the adapter", stand.bodies("tick")[-1]["adapter"], "X1")
        stand.has(r"^last  bolt 4 · 20 N·m", -2)
    with at(PUMP_LAID) as stand:  # one Enter for those that it does not need, none of them tight
        stand.answer("W1(?! with)")
        stand.next_is("bolts 1, 3, 2 · 20 N·m · W1 set 20")
        stand.has(r"\[ Enter = all 3 \]", -4)
        stand.press("\r")
        same("bolts", stand.bodies("tick")[-1]["bolts"], ["1", "3", "2"])
        stand.next_is("bolt 4 · 20 N·m · W1 with X1 set 18.5")
    with at(RULE) as stand:  # what a rule cannot tell is read again, with a better gauge
        stand.press("-\r")
        stand.next_is("pick-up depth again   G06 caliper")
        stand.press("136.3\r")
        stand.next_is("pan depth again   G06 caliper")
        stand.press("141.72\r")
        stand.next_is("rod bolt paint seen")
    return f"row 21 of 24 on every screen: {seen[0]}; with X1 the setting 18.5"


def point_12_a_bolt_is_one_enter_and_a_round_one_key_but_never_angle_or_stretch():
    with at(NUTS) as stand:
        stand.answer("W4")
        before = len(stand.bodies("tick"))
        keys = stand.counted(lambda: stand.press("\r"))
        same("keys of a bolt", keys, 1)
        same("ticks", len(stand.bodies("tick")), before + 1)
    with at(LAID, "JT") as stand:
        stand.answer("W1")
        stand.has(r"\[ Enter = all 18 \]", -4)  # the count is shown
        keys = stand.counted(lambda: stand.press("\r"))
        same("keys of a round", keys, 1)
        stand.has(r"^last  all 18", -2)
    with at(ANGLE) as stand:
        stand.type("2")
        stand.settle()
        if "which" in stand.row(-4):
            stand.answer("A1")
        stand.has(r"\[ Enter = tight \]|° $|\] °", -4)
        stand.lacks("Enter = all")
        before = len(stand.bodies("tick"))
        stand.type("\r")
        stand.settle()
        same("bolts an Enter takes in an angle stage at most",
             len(stand.bodies("tick")) - before <= 1, True)
    with at(TENDER) as stand:  # Enter right behind an answer is no tick
        before = len(stand.bodies("tick", "TL-0418"))
        stand.ask("wait 300")
        stand.ask("slow 60 4\\x0d")  # W3
        stand.settle()
        stand.has("the digit alone was the answer", -2)
        same("ticks", len(stand.bodies("tick", "TL-0418")), before)
        stand.ask("wait 500")
        stand.press("\r")
        same("ticks", len(stand.bodies("tick", "TL-0418")), before + 1)
    with at(FLANGE) as stand:  # back from the first bolt to the place before, on to it again
        stand.press("1\r")  # what is laid on it first, out of the one lot
        stand.answer("W1")
        stand.next_is("bolt 1 · 1 of 2")
        stand.press("-\r")
        stand.next_is("pick-up flange 2   new")
        stand.press("+\r")
        stand.next_is("bolt 1 · 1 of 2")
        stand.press("a")
        stand.has("^ASK   add to this build", -4)
    return "head nut: 1 key; 18 sump bolts: 1 key, `all 18` shown; flywheel +50°: bolt by bolt only"


def point_13_returning_to_an_angle_stage_asks_how_the_bolt_was_left():
    with at(ANGLE) as stand:
        stand.has(r"^ASK   bolt 6: how was it left\?", -4)
        stand.expect("1  done", "2  not begun", "3  cannot tell")
        stand.type("3")
        stand.settle()
        stand.next_is("flywheel bolts 6   new, lot ")  # the restart rule: out, a new one
        same("found", stand.bodies("note")[-1]["text"], "bolt 6, stage 2, +50°: nobody can tell "
             "how it was left when work was taken up again")
        stand.press("1\r")
        same("a new one", stand.entries()[-1]["kind"], "fit")
        stand.has("stage 1 of 2", 2)  # and all its stages
        stand.answer("W4")
        stand.next_is("bolt 6 · ")
    with at(ANGLE) as stand:
        before = len(stand.bodies("tick"))
        stand.type("1")
        stand.settle()
        same("done: ticked", len(stand.bodies("tick")), before + 1)
        same("and found so", stand.bodies("note")[-1]["text"],
             "bolt 6, stage 2, +50°: found done when work was taken up again")
    with at(ANGLE) as stand:
        before = len(stand.entries())
        stand.type("2")
        stand.settle()
        same("not begun: nothing but the pick-up", [entry["kind"] for entry in
             stand.entries()[before:] if entry["kind"] in ("tick", "slacken")], [])
        same("but that it was found so", stand.bodies("note")[-1]["text"],
             "bolt 6, stage 2, +50°: found not begun when work was taken up again")
        stand.has("stage 2 of 2", 2)
    with at(ANGLE) as stand:  # who comes to one who is still at it is not asked
        stand.type("2")
        stand.settle()
        stand.answer("G12")
        stand.press("\r")
        with Stand(stand.build, folder=stand.folder, now=ANGLE[1]) as other:
            other.pick_up("JT")
            other.has("MO here too", 2)
            other.lacks("how was it left")
    with at(ANGLE) as stand:  # but it is asked once his program is gone, whoever comes
        stand.type("2")
        stand.settle()
        stand.answer("G12")
        stand.press("\r")
        stand.restarted("KILL")
        stand.pick_up("JT")
        stand.has(r"^ASK   bolt 5: how was it left\?", -4)
        stand.lacks("MO here too")
    with at(NUTS) as stand:  # going back a stage, logged
        stand.answer("W4")
        for _ in range(11):
            stand.press("\r")
        stand.has("stage 2 of 5", 2)
        before = len(stand.entries())
        stand.press(".\r")
        stand.ask(PARKED)
        stand.press("6")
        stand.has(r"^ASK   begin 55 N·m again, or loosen a bolt\?", -4)
        stand.has("1 again from bolt 3 on     2 loosen bolt 8", -3)
        stand.ask(PARKED)
        stand.press("2")
        stand.ask(PARKED)
        stand.next_is("why loosen?")
        stand.press("did not click\r")
        same("logged", [entry["kind"] for entry in stand.entries()[before:]], ["slacken"])
    with at(NUTS) as stand:  # a stage begun again: each bolt once more, all of it in the record
        stand.answer("W4")
        for _ in range(3):
            stand.press("\r")
        before = len(stand.entries())
        stand.press("l")
        stand.ask(PARKED)
        stand.press("1")
        stand.has(r"\[ Enter = tight \]", -4)
        for bolt in ("3", "8", "4", "7"):
            stand.next_is(f"bolt {bolt} · ")
            stand.press("\r")
        stand.next_is("bolt 2 · 5 of 10")
        same("logged", [entry["kind"] for entry in stand.entries()[before:]], ["note"] + 4 * ["tick"])
        same("pulled twice", [body["bolts"] for body in stand.bodies("tick")[-7:]],
             [["3"], ["8"], ["4"], ["3"], ["8"], ["4"], ["7"]])
    return "asked of bolt 6: 1 ticks it, 2 pulls it now, 3 takes it out and back to 30 N·m; a bolt loosened again is logged"


def point_14_clocks_show_everywhere_and_become_late():
    with at(LAID, "JT") as stand:
        stand.has(" {2}sump FIT BEFORE 11:42, 11 min", 1)
        for key in ("\x7f", "h", "f"):  # the build, the shop, find
            stand.type(key)
            stand.settle()
            named = "TL-0412: sump " if key in "hf" else " {2}sump "  # where no build is on screen
            stand.has(named + "FIT BEFORE 11:42", 1)
        stand.restarted("KILL")
        stand.has("FIT BEFORE 11:42", 1)
        stand.bells()
        stand.set_clock("2025-03-13 11:43")
        stand.wait_for("LATE")
        stand.has("LATE", 1)
        same("bells", stand.bells(), 1)
        stand.has("who picks up?", -4)  # no box over it
    with at(LAID, "JT") as stand:
        stand.answer("W1")
        stand.press("\r")
        stand.has("sump no fluid before 13:30", 1)
        stand.ask("resize 80x90")
        for key in ("e", "w"):
            stand.type(key)
            stand.settle()
        stand.expect("Proof: ", "clocks                  sump no fluid before 13:30")
        stand.restarted("TERM")
        stand.has("sump no fluid before 13:30", 1)
    return "FIT BEFORE 11:42 on bench, shop, build, find and after a kill; LATE with one bell at 11:43; fitted: no fluid before 13:30"


def point_15_put_down_is_one_key_and_idle_hands_stamp_themselves():
    with at(RINGS) as stand:
        before = len(stand.entries())
        keys = stand.counted(lambda: stand.press("/"))
        same("keys", keys, 1)
        same("stamped", [entry["kind"] for entry in stand.entries()[before:]], ["put down"])
        stand.set_clock("2025-03-05 09:12")
        stand.type("n")  # two words, if one likes
        stand.settle()
        stand.type("telephone, gasket\r")
        stand.settle()
        same("words", "telephone, gasket" in json.dumps(stand.entries()[-2:]), True)
        if "who picks up?" not in stand.row(-4):
            stand.type("/")
            stand.settle()
        stand.pick_up("JT")
        same("picked up by JT", stand.entries()[-1]["kind"], "pick up")
        stand.next_is("top ring gap 3")
    # Idle time runs on the clock that nothing sets: here all clocks are ahead by so many seconds.
    with at(RINGS, FAKETIME_DONT_FAKE_MONOTONIC="0", ahead=0) as stand:
        before = len(stand.entries())
        stand.set_ahead(11 * 60)
        stand.ask("wait 1200")
        same("idle 11 min, stamped", [entry["kind"] for entry in stand.entries()[before:]],
             ["put down"])
        stand.has("^ASK   put down .* MO: who picks up\\?", -4)  # and the screen says so
        stand.burst("0.36\r")  # what is sent now enters nothing
        same("nothing is entered", len(stand.entries()), before + 1)
        stand.answer("MO")
        stand.ask(PARKED)
        stand.next_is("top ring gap 3")
        stand.press("0.36\r")
        same("goes on", (stand.entries()[-2]["kind"], stand.typed()[-1]), ("pick up", "0.36"))
    return "1 key, stamped, words taken with n, JT picks up at the same place; 11 idle minutes stamp themselves"


def point_15_a_person_is_idle_by_all_terminals_and_each_says_so():
    with at(RINGS, FAKETIME_DONT_FAKE_MONOTONIC="0", ahead=0) as stand:
        other = Stand(stand.build, folder=stand.folder)
        other.environment = stand.environment  # the same clocks
        with other:
            other.pick_up("MO")
            stand.type("0.4")  # half typed
            stand.settle()
            stand.set_ahead(9 * 60)
            other.press("0.36\r")
            before = len(stand.entries())
            stand.set_ahead(14 * 60)
            stand.ask("wait 1200")
            same("busy at the other terminal", len(stand.entries()), before)
            stand.lacks("who picks up")
            stand.set_ahead(25 * 60)
            stand.ask("wait 1200")
            same("idle at both", [entry["kind"] for entry in stand.entries()[before:]], ["put down"])
            for each in (stand, other):
                each.wait_for("MO: who picks up?")
            stand.settle()
            stand.ask("wait 1700")  # it came by itself
            stand.answer("JT")
            stand.ask(PARKED)
            stand.has(r"^NEXT .*\[0\.4 ", -4)  # what was typed stands again
            stand.has(" JT  ", 1)
    return "not while the same person enters elsewhere; then both screens ask, and 0.4 stands again"


def point_16_who_works_is_two_keys_and_two_terminals_see_each_other():
    with at(RINGS) as stand:
        def hands():
            stand.press("/")
            stand.ask("wait 300")
            stand.press(stand.has(r"(\d) JT\b", -3)[1])
        keys = stand.counted(hands)
        same("keys", keys, 2)
        stand.ask(PARKED)
        stand.has(r" JT  08:50$", 1)
        stand.press("0.36\r")
        stand.has("08:50 JT", -2)
        environment = {"folder": stand.folder, "now": RINGS[1]}
        with Stand(stand.build, **environment) as other:
            other.pick_up("MO")
            other.next_is("top ring gap 4")
            other.press("0.42\r")
            begun = time.monotonic()
            stand.wait_for("0.42", seconds=2)
            seen = time.monotonic() - begun
            stand.has("top ring gap 3 · 0.36", -2)  # only one's own can be struck
            stand.press("0.33\r")  # of the place that the other has read meanwhile
            stand.answer("both stand, in doubt")
            stand.press("\r")
            other.wait_for("0.33", seconds=2)
            same("both append", stand.typed()[-3:], ["0.36", "0.42", "0.33"])
    with at(NUTS) as stand:
        stand.answer("W4")
        with Stand(stand.build, folder=stand.folder, now=NUTS[1]) as other:
            other.pick_up("JT")
            other.answer("W4")
            other.press("\r")
            stand.wait_for("│JT 3  √│", seconds=2)
            stand.next_is("bolt 8")
    return f"hands changed with {keys} keys; the other's reading seen after {seen:.1f} s, nothing locked, his bolt shown"


def point_17_the_office_never_makes_the_stand_wait():
    with at(RINGS, "JT") as stand, \
            Stand(stand.build, folder=stand.folder, now=RINGS[1]) as office:
        office.pick_up("EV")
        go(office, "f", "what was said?")
        office.type("3 main")
        office.settle()
        begun = time.monotonic()
        stand.press("0.36\r")
        waited = time.monotonic() - begun
        same("the stand waits less than 0.5 s", waited < 0.5, True)
        office.leave("3 main")
        go(office, "h", "waits for")
        go(office, "r", "which sheet?")
        office.type("\x7f")
        office.settle()
        office.type("n")
        office.settle()
        office.type("new gasket ordered")
        office.settle()
        office.hangup()
        office.wait_end()
        stand.press("0.42\r")
        same("on", stand.typed()[-2:], ["0.36", "0.42"])
    return f"office in find, sheets and a note, then hung up: a reading took {waited * 1000:.0f} ms, all goes on"


def point_18_before_access_closes_what_becomes_impossible_is_listed():
    def listed(stand):
        stand.has(r"^S30  Sump: before it goes on +1 line not settled", 2)
        stand.expect("THIS CLOSES rods, mains, pick-up", "√ pass   pick-up clearance       7.4",
                     "· open   rod bolt paint seen", "√ pass   main caps")
        stand.has(r"^ \d+ lines = .*pass .*open")
        stand.has("1 settle: rod bolt paint seen     2 close all the same: say why", -3)
        stand.ask("wait 300")

    def to_the_first_bolt(stand):
        stand.next_is("rod bolt paint seen")
        stand.press("+\r")
        for _ in range(2):  # its bolts are new ones
            stand.has("^NEXT  pick-up flange [12]   fit new", -4)
            stand.press("\r")
            stand.ask("wait 300")

    with at(COVER, "JT") as stand:
        to_the_first_bolt(stand)
        listed(stand)
        stand.press("1")
        stand.next_is("rod bolt paint seen")
        stand.press("8\r")
        stand.next_is("lay medium locker, lot ")
        stand.press("1\r")
        stand.has("which wrench", -4)
    with at(COVER, "JT") as stand:
        to_the_first_bolt(stand)
        listed(stand)
        before = len(stand.entries())
        stand.press("2")
        stand.type("\r")
        stand.settle()
        stand.has("^!     an answer is needed here", -2)
        same("nothing without a reason", len(stand.entries()), before)
        stand.press("photographs follow\r")
        same("kept", [(entry["kind"], entry["body"].get("why")) for entry in
             stand.entries()[before:]], [("close", "photographs follow")])
        stand.press("1\r")  # laid on the flange
        stand.answer("W1")  # and the work goes on, asked once
        stand.next_is("bolt 1 · ")
        stand.press("\r")
        stand.next_is("bolt 2 · ")
        stand.restarted("KILL")
        stand.pick_up("JT")
        stand.answer("W1")
        stand.next_is("bolt 2 · ")
        stand.press("d")
        stand.has("2 close all the same: say why", -3)  # bolts are open beside it
        stand.run("log", NUMBER, feed="JT pick up Sump\n" + "".join(
            f"tighten {bolts}\n" for bolts in (
                "pick-up flange stage 1 all with W1", "pick-up flange stage 2 all with W1",
                "sump stage 1 all with W1", "sump stage 2 all with W1", "drain plug all with W4")))
        stand.wait_for("2 close all the same: photographs follow", seconds=2)  # it still stands
        stand.ask(PARKED)
        before = len(stand.entries())
        stand.press("2")
        same("signed", [entry["kind"] for entry in stand.entries()[before:]], ["sign"])
    return "before the sump's first bolt: what it hides with its verdicts; 1 settles, 2 takes words; not asked again"


def point_19_doing_and_typing_are_two_times():
    with at(RINGS) as stand:
        stand.run("log", NUMBER, feed="2025-03-05 08:40 MO note \"card found\" from paper\n")
        entry = stand.entries()[-1]
        same("done and typed", (entry["done"][:16], entry["at"][:10]),
             ("2025-03-05T08:40", entry["at"][:10]))
        same("two times", entry["done"] != entry["at"], True)
        stand.press("0.36\r")
        stand.bells()
        stand.set_clock("2021-01-01 00:00")  # a board without a battery
        stand.wait_for("The clock went back to 2021-01-01 00:00", seconds=2)
        stand.has(r"^! +The clock went back", -2)
        same("bells", stand.bells(), 1)
        stand.press("0.42\r")  # said once
        same("taken", stand.typed()[-1], "0.42")
        same("order", [entry["seq"] for entry in stand.entries()[-2:]],
             sorted(entry["seq"] for entry in stand.entries()[-2:]))
    with at((RINGS[0], "2021-01-01 00:00"), who=None) as stand:  # it woke up in the past
        stand.wait_for("The clock went back to 2021-01-01 00:00", seconds=2)
        stand.pick_up("MO")
        stand.next_is("top ring gap 3")
    return "a card typed later has both times; a clock in 2021 is said, the entry taken and in its order"


def point_20_found_by_what_people_say():
    answers = {"3 main": "0.041", "MB-2417-C": "TL-0397", "H23-4/01187": "TL-0412",
               "W2 since 2024": "TL-0397", "harrow": "TL-0412", "noisy": "0.086"}
    with at(TENDER) as stand:
        if stand.row(-4).startswith("ASK"):
            stand.type("\x7f")
            stand.settle()
        for words, answer in answers.items():
            go(stand, "f", "what was said?")
            stand.type(words)
            stand.settle()
            if not any(answer in row for row in stand.screen()):
                keys = stand.counted(lambda: stand.type("\r"))
                stand.settle()
                stand.expect(answer)
            stand.leave(words)
        before = stand.row(1)  # what is looked at in another engine is left again
        go(stand, "f", "what was said?")
        stand.type("3 main\r")
        go(stand, stand.has(r"^ *(\d+) .* TL-0412")[1] + "\r", "any other key goes back")
        stand.has("^TL-0412", 1)
        stand.type("x")
        stand.leave("\b")
        same("the build in hand", stand.row(1), before)
        stand.type("h")
        stand.settle()
        stand.type("r")
        stand.settle()
        stand.expect("sheet")
    return f"{len(answers)} questions answered while typing or with one Enter; any screen prints with r"
