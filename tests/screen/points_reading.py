"""Points 1 to 8 of the twenty: readings, the pad, bursts, slips and strikes. Each test returns what it
measured."""
from demo_at import BORES, PARKED, RINGS, SUMP, TENDER, at, same

CYLINDER = ["90.027", "90.026", "90.022", "90.020", "90.019", "90.017"]
PLACES = ["T, top", "T, mid", "T, bottom", "A, top", "A, mid", "A, bottom"]


def point_01_a_reading_costs_its_digits_and_one_enter():
    with at(BORES) as stand:
        before = len(stand.entries())

        def cylinder():
            for value, place in zip(CYLINDER, PLACES):
                stand.next_is(f"bore 4, {place}")  # already there, before any key
                stand.has(r"\[ +\] mm", -4)
                stand.press(value + "\r")
        keys = stand.counted(cylinder)
        same("keys", keys, sum(map(len, CYLINDER)) + 6)
        same("readings", stand.typed()[-6:], CYLINDER)
        same("entries", len(stand.entries()) - before, 6)
        return f"cylinder 4: 6 numbers, {keys} keys = 36 digits and points + 6 Enters, no arrow"


def point_02_enter_writes_judges_and_moves_on_and_alone_does_nothing():
    with at(RINGS) as stand:
        stand.next_is("top ring gap 3")
        stand.press("0.36\r")
        same("on disk", stand.typed()[-1], "0.36")
        stand.has(r"3 +0\.36 +±\.01 +√ pass")
        stand.next_is("top ring gap 4")
        before, screen = len(stand.entries()), stand.screen()
        for _ in range(3):
            stand.type("\r")
            stand.settle()
        same("screen", stand.screen(), screen)
        same("entries", len(stand.entries()), before)
        stand.press("-\r")  # where an old figure stands
        stand.next_is("top ring gap 3")
        screen = stand.screen()
        stand.type("\r")
        stand.settle()
        same("screen at an old figure", stand.screen(), screen)
        same("entries at an old figure", len(stand.entries()), before)
    with at(TENDER) as stand:  # a part takes no value: what is typed is kept, and not taken as new
        stand.answer("W3")
        for keys in ("h", "1\r", "19\r"):
            stand.press(keys)
            stand.ask("wait 300")
        stand.next_is("ring sets 1")
        before = len(stand.entries())
        stand.type("0.31\r")
        stand.settle()
        stand.has("a part is fitted here, no value", -2)
        stand.has(r"\[0\.31 ", -4)
        same("entries", len(stand.entries()), before)
        stand.type("\x7f" * 4)
        stand.press("n")
        stand.press("dry bore\r")
        stand.strike("4")  # a note struck leaves the place in hand
        stand.next_is("ring sets 1")
    return "0.36 on disk and pass at once; 3 Enters on an empty field and 1 on an old figure: nothing"


def point_03_everything_from_the_pad_alone():
    with at(RINGS, who=None) as stand:
        def pad(*keys):
            stand.key(*keys)
            stand.settle()
        digit = stand.has(r"(\d) MO\b", -3)[1]
        pad("Pad" + digit)
        stand.ask(PARKED)
        pad("Pad0", "Pad.", "Pad3", "Pad6", "PadEnter")
        same("read", stand.typed()[-1], "0.36")
        pad("Pad*")
        stand.ask(PARKED)
        pad("Pad4")
        stand.next_is("top ring gap 3")
        pad("Pad+", "PadEnter")
        stand.next_is("top ring gap 4")
        pad("Pad-", "PadEnter")
        stand.next_is("top ring gap 3")
        words = {2: "G08", 3: "note", 5: "Why", 8: "Build", 9: "shop", 0: "Help"}
        for number, word in words.items():
            pad("Pad.", "PadEnter")
            stand.expect("1 gauge", "0 help")
            stand.ask(PARKED)
            pad(f"Pad{number}")
            stand.expect(word)
            if number in (8, 9):
                while not stand.row(-4).startswith("NEXT  top ring gap"):
                    stand.ask("wait 250")
                    pad("Pad+", "PadEnter")  # on, to what NEXT says
            elif number != 2:
                pad("Backspace")
            else:
                pad("Pad.", "PadEnter")
                stand.ask(PARKED)
                pad("Pad2")
            stand.next_is("top ring gap 3")
        for key in ("Pad-", "Pad1", "Pad/", "Pad6", "Pad4", "Pad*", "Pad+"):
            pad(key)  # inside a number they are signs of it
        stand.has(r"\[-1/64\*\+", -4)
        pad(*["Backspace"] * 7)
        pad("Home")
        stand.has(r"^!.*NUM LOCK IS OFF", -2)
        pad("Pad/")
        stand.expect("who picks up?")
        stand.ask(PARKED)
        pad("Pad" + digit)
        return "picked up, read, struck, on, back, six words of more, put down by pad keys; NUM LOCK said"


def point_04_bursts_are_taken_or_parked_and_never_commands():
    forms = ["90,027\r", "+90.027\r", "0090.027\r\n", "90.027 mm\t", "90.027\n", "90.027mm\r\n"]
    with at(BORES) as stand:
        before = len(stand.bodies("read"))
        for form in forms:
            stand.burst(form)
            stand.has(r"^last  bore 4", -2)
        read = stand.bodies("read")[before:]
        same("values", {body["value"]["value"] for body in read}, {"90027/1000"})
        same("places", len(read), 6)
        stand.press("*")  # a question: no burst answers it
        stand.ask(PARKED)
        entries = len(stand.entries())
        stand.burst("4\r")
        stand.expect("ASK   strike")
        stand.has("UNPLACED  4", -5)
        stand.type("\x7f")
        stand.settle()
        stand.press("h")
        for burst in ("141.72\r", "hq\r", "*4\r", "/1\r"):
            stand.burst(burst)
        stand.expect("waits for")
        stand.has("UNPLACED.*and 4 more", -5)
        same("entries that a burst made", [entry["kind"] for entry in stand.entries()[entries:]
                                           if entry["kind"] in ("strike", "put down", "read")], [])
        stand.type("1")  # a bare digit is no command
        stand.settle()
        stand.expect("waits for")
        return f"{len(forms)} forms taken as 90.027; 5 bursts parked, visible, none answered or ran"


def point_05_unit_and_decimals_are_fixed_and_the_typed_text_is_kept():
    with at(RINGS) as stand:
        stand.has(r"\] mm$", -4)
        stand.type("0.0142 in")
        stand.settle()
        stand.has(r"0\.36 mm", -3)  # what it makes, before Enter
        stand.press("\r")
        stand.has(r"  3 +0\.36 +±\.01 +√ pass")
        stand.press("1/64 in\r")
        stand.press("-\r")
        stand.has(r"  4 +0\.40 +±\.01 +√ pass")
        same("as typed", stand.typed()[-2:], ["0.0142 in", "1/64 in"])
        stand.press(".5\r")  # disagrees with what stands: asked about, and taken beside it
        stand.answer("both stand, in doubt")
        stand.press("\r")
        stand.press("-\r")
        stand.has(r"  4 +0\.50 +±\.01")
    more = {"0,37": "0.37", "(0.37 + 0.35) / 2": "0.36", "0.37 ± 0.01": "0.37", "1⁄64″": "0.40"}
    for typed, shown in more.items():  # whatever standbook-reading(7) has, with or without blanks
        with at(RINGS) as stand:
            stand.press(typed + "\r")
            same("as typed", stand.typed()[-1], typed)
            stand.has(rf"  3 +{shown} +±\.0")
    return (f"0.0142 in shown as 0.36 mm, 1/64 in as 0.40 mm, both kept as typed; .5 shown 0.50; {len(more)} other"
            " ways to write")


def point_06_an_implausible_value_is_asked_once_and_a_second_enter_keeps_it():
    odd = {"3.6": "ten times", "9.1": "inch", "-0.36": "sign", "0.9": "far"}
    for value in odd:
        with at(RINGS) as stand:
            stand.press("0.36\r")  # three that agree
            before = len(stand.typed())
            stand.type(value + "\r")
            stand.settle()
            same(f"{value}, asked", len(stand.typed()), before)
            stand.has(rf"\[{value} *\]", -4)  # kept in the field
            if "Enter" not in stand.row(-3) + stand.row(-2):
                stand.fail("nothing says that a second Enter takes it")
            stand.type("\r")
            stand.settle()
            same(f"{value}, taken", stand.typed()[before:], [value])
    with at(RINGS) as stand:
        before = len(stand.entries())
        stand.type("3.6\r")
        stand.settle()
        stand.type("\x7f\x7f\x7f0.36\r")
        stand.settle()
        same("put right", stand.typed()[-1], "0.36")
        same("entries", len(stand.entries()), before + 1)
    with at(RINGS) as stand:  # a gauge that sends
        before = len(stand.typed())
        stand.burst("3.6\r")
        stand.settle()
        same("sent, asked", len(stand.typed()), before)
        stand.has(r"\[3\.6_? *\]", -4)
        stand.burst("0.36\r")  # in its place, never behind it
        stand.settle()
        same("sent again", stand.typed()[before:], ["0.36"])
        stand.burst("3.6\r\n0.37\r\n")  # of one burst nothing gives way
        stand.settle()
        same("two lines", len(stand.typed()), before + 1)
        stand.has("UNPLACED  0.37", -5)
        stand.type("\x7f9")  # what a person has touched stays
        stand.burst("0.36\r")
        stand.settle()
        stand.has(r"\[3\.9_? *\]", -4)
    with at(SUMP) as stand:  # what a digital wrench shows
        stand.answer("W1")
        stand.type("8x")
        stand.settle()
        stand.has("there is no unit `x`", -3)
        stand.type("\x7f\x7f")
        before = len(stand.bodies("tick"))
        stand.type("80\r")
        stand.settle()
        stand.has(r"10 times what is asked\? Enter again keeps 80", -3)
        same("shown, asked", len(stand.bodies("tick")), before)
        stand.type("\r")
        stand.settle()
        same("shown, taken", stand.bodies("tick")[-1]["value"]["typed"], "80")
    return "3.6, 9.1, -0.36 and 0.9 mm: asked once each, kept in the field, taken as typed by a second Enter"


def point_07_one_glance_and_big_digits():
    pictures = []
    for options in ({}, {"mono": True}):
        with at(RINGS, **options) as stand:
            stand.type("0.")
            stand.settle()
            stand.has(r"^then  top ring gap 4", -3)  # nothing is wrong with half a number
            stand.type("9")
            stand.settle()
            stand.has(r"^NEXT  top ring gap 3", -4)  # position
            stand.has(r"  2 +0\.40 +±\.01 +√ pass")  # last readings, verdict
            stand.has(r"0\.30 +0\.50")  # limits
            stand.has(r"\[0\.9\] ±\.01 +▲ FAIL")  # result, as a word
            stand.has(r"FAIL, 0\.40 over", -3)
            pictures.append(stand.screen())
            coloured = [cell for number in range(1, 25) for cell in stand.cells(number)
                        if "foreground" in cell or "background" in cell]
            same("colour", bool(coloured), not options)
            stand.type("\x7f\x7f\x7fb")
            stand.settle()
            stand.has(r"  b small again  ", -1)
            stand.type("0.9")
            stand.settle()
            blocks = [row for row in stand.screen()[3:19] if "█" in row]
            same("rows of big digits at least", len(blocks) >= 10, True)
            stand.has(r"^NEXT  top ring gap 3.*\[0\.9", -4)
    same("monochrome", pictures[1], pictures[0])
    return f"place, readings, limits, result and FAIL on one page, letter for letter without colour; {len(blocks)} rows of digits"


def point_08_one_key_strikes_and_nothing_is_deleted():
    reasons = {"1": "misread", "2": "wrong place", "3": "slipped", "4": "typo", "5": "part changed"}
    for digit, reason in reasons.items():
        with at(RINGS) as stand:
            stand.type("0.37\r")
            stand.settle()
            before = len(stand.entries())
            keys = stand.counted(lambda: stand.strike(digit))
            same("keys", keys, 2)
            stand.next_is("top ring gap 3")
            same("never deleted", (len(stand.entries()), stand.typed()[-1]), (before + 1, "0.37"))
            stand.has(rf"──0\.37──  struck: {reason}")
            stand.strike("0")
            stand.has(r"  3 +0\.37 +±\.01 +√ pass")
    with at(BORES, size="132x43") as stand:  # the wide form lists it struck as well
        stand.press("90.027\r")
        stand.type("90.1\r\r")
        stand.strike("4")
        stand.has(r"before +──90\.1 mm──  struck: typo")
        stand.has(r"──bore 4, T, mid · 90\.1 mm──  s")
    return "5 reasons, 2 keys each: struck figure seen in its place, cursor back there, * 0 takes it back"
