// What is not taken, and the sentence that says what to write instead.
#include "build.h"

// Lines that are refused, with the whole sentence.
static const char *const refusals[][2] = {
    {"reed main journal 5", "column 1: `reed` is no verb; did you mean `read`?"},
    {"read mian bore 59.79",
     "column 6: this is not the name of a check; did you mean `main bore`?"},
    {"read main caps 59.79", "column 6: `main caps` is a bolt set; write the name of a check"},
    {"read main bore[1, fornt] 59.79",
     "column 19: `main bore` has no place `fornt`; did you mean `front`?"},
    {"read main bore[7, front] 59.79",
     "column 16: `main bore` has no place `7`; its places are main 1 2 3, end front rear"},
    {"read main bore[1, 2, front] 59.79",
     "column 19: `2` is a second main; name one in a line, or leave it out for all"},
    {"read main bore[main 1, main 2] 59.79",
     "column 24: `main 2` is a second main; name one in a line, or leave it out for all"},
    {"read main bore[1] 59.79",
     "column 6: `main bore` has 2 places here, from `1, front` to `1, rear`, but 1 follow; write "
     "one for each, or name the place in brackets"},
    {"read crank drag 1.5 1.6", "column 6: `crank drag` has one place here, but 2 values follow; "
                                "write one"},
    {"read crank drag", "column 16: a value is missing here; write digits"},
    {"read crank drag 1,5,0",
     "column 20: `1,5,0` could be 15.0 or 1.50; write the one that is meant"},
    {"read crank drag 1.5 mm",
     "column 21: `mm` is a length, but a torque is read here; write it in N·m"},
    {"read crank drag 1.5 with G71", "column 26: the shop has no tool `G71`; did you mean `G01`?"},
    {"read crank drag 1.5 loose",
     "column 21: `crank drag` is no setting, so it is not read loose; leave `loose` out"},
    {"read main clearance[1] 0.05",
     "column 6: `main clearance` is worked out from other checks; read those"},
    {"read white cloth clean",
     "column 6: `white cloth` is answered, not measured; write `look white cloth …`"},
    {"look crank drag 1.5", "column 6: `crank drag` is measured; write `read crank drag …`"},
    {"look white cloth spotless",
     "column 18: this is no answer to `white cloth`; write one of: clean, grey, dirty"},
    {"look galleries brushed many", "column 24: the count is a whole number from 0"},
    {"pick up Cranks", "column 9: this is not the name of a step; did you mean `Crank`?"},
    {"sign", "column 5: a step is missing here; write its name"},
    {"tighten main caps in Sump all",
     "column 22: `Sump` has no `main caps`; write `in Main clearances` or `in Crank`"},
    {"tighten main caps all",
     "column 9: `main caps` is in several steps; write `in Main clearances` or `in Crank` behind "
     "it"},
    {"tighten main caps in Crank all",
     "column 28: which stage? write `stage` and its number; `main caps in Crank` has 3: 40 > 75 > "
     "100"},
    {"tighten main caps in Crank stage 4 all",
     "column 34: `main caps in Crank` has no stage 4; its stages are 40 > 75 > 100"},
    {"tighten head nuts in Head on stage 4 all",
     "column 30: stage 4 of `head nuts` is a wait; write `waited head nuts stage 4`"},
    {"waited head nuts in Head on stage 3",
     "column 29: stage 3 of `head nuts` is no wait; write `tighten head nuts stage 3`"},
    {"tighten sump stage 1 with W1",
     "column 22: which bolts? write `all`, `sump[L4]`, or a run like `from L4 to …`"},
    {"tighten sump[L8] stage 1",
     "column 14: `sump` has no place `L8`; its places are bolt L1 L2 L3 L4 L5 L6 L7 R1 R2 R3 R4 R5 "
     "… B2"},
    {"tighten main caps in Crank stage 1 from 2 to 3",
     "column 41: the run goes backwards; the order asked is 3-4-1-2-5-6"},
    {"move crank drag to 5", "column 6: `crank drag` is no setting, so nothing is moved; write a "
                             "note"},
    {"fit main shells lot MB-2471-C new",
     "column 21: the shop has no lot `MB-2471-C`; did you mean `MB-2417-C`?"},
    {"fit main shells lot MB-2417-C",
     "column 30: its condition is missing here; write new, reused or reworked"},
    {"fit idler gear reused", "column 22: why can it be used again? write the reason in quotes"},
    {"lay gasket sealant on sump lot LK-330",
     "column 32: lot LK-330 is medium locker, not gasket sealant; look at the tube"},
    {"lay moly paste on rod bolts",
     "column 5: this is no consumable of the plan; write one of: gasket sealant, thread sealant, "
     "medium locker, cam paste"},
    {"lay gasket sealnt on sump",
     "column 5: this is no consumable of the plan; did you mean `gasket sealant`?"},
    {"strike #999 typo", "column 8: there is no entry #999; the last one is #0"},
    {"strike crank drag typo", "column 8: nothing is entered there that could be struck"},
    {"strike last typo", "column 8: this person has entered nothing that could be struck"},
    {"decide crank drag keep \"x\"",
     "column 8: `crank drag` is no finding; write `concede` for what stays outside its limits"},
    {"choose clearance by grade[1] C", "column 30: there is no grade `C`; write one of: A, B"},
    {"add check \"bore\" \"x\" in Crank: any",
     "column 12: there is a check of this name already, in step "
     "\"Check returned work\"; give this one another name"},
    {"add check \"face\" \"seen\" in Crank: at mots 0.05 mm", NULL},
    {"amend crank drag limits 3.0..2.0 N·m \"x\"", NULL},
    {"note \"open", "column 6: this quote is not closed; end the words with \", and write a quote "
                    "within them twice"},
    {"note one after #7", "column 16: there is no entry #7; the last one is #0"},
    {"fit rear seal new wiht", "column 19: `wiht` is too much here; did you mean `with`?"},
    {"1136 read crank drag 1.5",
     "column 1: `1136` is no date, time or verb; write a date like 2025-03-13 and a time like "
     "11:36"},
    {"note one two", "column 10: `two` is too much here; the line should end before"},
    {"2025-03-14 note one", "column 1: a new date needs a time behind it: 2025-03-14 08:30"},
    {"25:10 note one", "column 1: there is no such time as 25:10; a day goes from 00:00 to 23:59"},
    {"2025-02-28 12:61:00 note one",
     "column 12: there is no such time as 12:61:00; a day goes from 00:00 to 23:59"},
    {"2025-02-30 08:00 note one", "column 1: there is no such day as 2025-02-30"},
    {"2025-2-28 08:00 note one",
     "column 1: `2025-2-28` is no date, time or verb; write a date like 2025-03-13 and a time like "
     "11:36"},
    {"shop calibration W2 2025-02-30 good", "column 21: there is no such day as 2025-02-30"},
    {"shop calibration W2 2025-02-28 due 2026-02-29 good",
     "column 36: there is no such day as 2026-02-29"},
    {"QQ note one",
     "column 1: the shop has no person `QQ`; enter that person first, with a line `person QQ "
     "\"First Last\"` in `standbook log --shop`"},
    {"shop person tb \"Tess Bell\"",
     "column 13: `tb` could not be told from a verb; initials are two to four capitals"},
    {"shop build TL-0412 engine H23-4/01187 plan \"x\"",
     "column 12: `TL-0412` is the name of another build already; choose another one"},
    {"shop build TL-0500 engine H23-4/01178 plan \"x\"",
     "column 27: the shop has no engine `H23-4/01178`; did you mean `H23-4/01187`?"},
    {"shop build TL-0500 engine H23-4/01187 plan \"Hathersey H32 four, full rebuild\"",
     "column 39: the store has no plan `Hathersey H32 four, full rebuild`; did you mean `Hathersey "
     "H23 four, full rebuild`?"},
    {"shop calibration W2 2025-03-14 good",
     "column 21: this calibration is still to come; the line is of 2025-03-13"},
    {"shop calibration W2 2025-03-01 wrong", "column 37: what was wrong? write it in quotes"},
    {"shop calibration W2 2025-03-01 due 2026-03-01 certificate KF-1",
     "column 63: how was it found? write good, wrong or adjusted"},
    {"shop calibration W2 2025-03-01 good due 2026-03-01 due 2027-03-01",
     "column 52: `due` is too much here; the line should end before"},
    {"shop calibration W2 2025-03-01 wrong \"x\" gave 0 at 100",
     "column 47: `0` is no plain figure above 0; write what it gave and at what, as in `gave 91 at "
     "100, 41 at 45`"},
    {"shop calibration W2 2025-03-01 wrong \"x\" gave 91 at -100",
     "column 53: `-100` is no plain figure above 0; write what it gave and at what, as in `gave 91 "
     "at 100, 41 at 45`"},
    {"shop calibration W2 2025-03-01 wrong \"x\" gave 91 at 100, 82 at 90, 92 at 100",
     "column 74: what it gave at 100 N·m is said already; write each setting once"},
    {"shop calibration W2 2025-03-01 wrong \"x\" gave 91 mm at 100",
     "column 47: `mm` is a length; write what this tool gave in N·m, as its range is"},
    {"shop calibration W2 2025-03-01 wrong \"x\" gave 91, 41 at 45",
     "column 49: write `at` and what it was set to here, as in `gave 91 at 100`"},
    {"shop calibration W2 2025-03-01 wrong \"x\" gave 91 at",
     "column 52: a value is missing here; write digits"},
    {"shop calibration X1 2025-03-01 wrong \"x\" gave 91 at 100",
     "column 47: the tool has no range whose unit this could have; write the unit"},
    {"shop calibration W2 2025-03-01 wrong \"x\" gave <91 at 100",
     "column 47: `<91` is no plain figure above 0; write what it gave and at what, as in `gave 91 "
     "at 100, 41 at 45`"},
    {"shop calibration W2 2025-03-01 wrong \"x\" gave 91 at 100 41 at 45",
     "column 57: write a comma and a blank between two settings, as in `gave 91 at 100, 41 at 45`"},
    {"shop calibration W2 2025-03-01 wrong \"x\" gave 91 at 100,41 at 45",
     "column 60: write a comma and a blank between two settings, as in `gave 91 at 100, 41 at 45`"},
    {"shop calibration W2 2025-03-01 wrong \"x\" gave 91 at 100 and 41 at 45", NULL},
    {"shop calibration W2 2025-03-01 wrong \"x\" gave 91 at 100, 41 at 45,", NULL},
    {"shop tool G99 \"x\" kind feelers range 5..1 mm", "column 32: the range is upside down"},
    {"shop tool G99 \"x\" kind feelers range 1/2-3-4 mm",
     "column 41: a tight hyphen behind `1/2` could be a mixed number or a minus; write ` - ` with "
     "spaces to subtract, or `2-5/8`"},
    {"shop calibration W2 2025-03-13 good U 3 %",
     "column 37: write it in N·m: 3 % of 120 N·m, the end of its range, is 3.6 N·m"},
    {"shop tool G99 \"x\" kind feelers range 1 till 5 mm",
     "column 40: write a range like 0..25 mm or 0 to 25 mm"},
    {"shop tool W99 \"x\" kind torque wrench range 10 to 100 lbf in",
     "column 54: write this torque in one word: lbf-in"},
};

START_TEST(refused_lines_say_what_to_write_instead)
{
    const char *line = refusals[_i][0], *expected = refusals[_i][1];
    g_free(demo_try(demo, build, "2025-03-13 11:36 MO"));
    char *refusal = demo_try(demo, build, line);
    ck_assert_msg(refusal != NULL, "taken: %s", line);
    if (expected)
        ck_assert_msg(strcmp(refusal, expected) == 0, "%s\n  gives    %s\n  expected %s", line,
                      refusal, expected);
    ck_assert_uint_eq(line_taker_entries(build)->len, 0);
    g_free(refusal);
}
END_TEST

static guint random_below(guint64 *state, guint limit)
{
    *state = *state * G_GUINT64_CONSTANT(6364136223846793005) + 1442695040888963407; // Knuth, MMIX
    return (guint)(*state >> 33) % limit;
}

// One slip of the kind fingers and disks make.
static void spoil(GString *line, const char *other, guint64 *state)
{
    static const char *const odd[] = {"\"",         "[",
                                      "]",          ",",
                                      " ",          "#",
                                      "..",         "±",
                                      "/",          "-",
                                      "<",          "°",
                                      "with",       "in",
                                      "to",         "stage",
                                      "\t",         "é",
                                      "\xff",       "after #3",
                                      "from paper", "9999999999999999999999"};
    gsize at = random_below(state, (guint)line->len + 1);
    switch (random_below(state, 4)) {
    case 0:
        g_string_erase(line, (gssize)at, (gssize)MIN(3, line->len - at));
        break;
    case 1:
        g_string_insert(line, (gssize)at, odd[random_below(state, G_N_ELEMENTS(odd))]);
        break;
    case 2:
        g_string_truncate(line, at);
        g_string_append(line, other + random_below(state, (guint)strlen(other) + 1));
        break;
    default:
        if (at < line->len)
            line->str[at] = (char)(1 + random_below(state, 255));
    }
}

// Whatever is typed is taken whole, or refused whole with its column in clean words.
START_TEST(spoilt_lines_are_taken_or_refused)
{
    char *text = NULL;
    guint64 state = 2025;
    guint taken_count = 0;
    LineTaker *taker = demo_build(demo, "TL-0418");
    demo_feed(demo, taker, "demo-data/tl-0418.log");
    ck_assert(g_file_get_contents("demo-data/tl-0412.log", &text, NULL, NULL));
    GStrv lines = g_strsplit(text, "\n", -1);
    guint count = g_strv_length(lines), entries = line_taker_entries(taker)->len;
    for (guint i = 0; i < 4000; i++) {
        g_autoptr(GString) line = g_string_new(lines[random_below(&state, count)]);
        GError *error = NULL;
        spoil(line, lines[random_below(&state, count)], &state);
        LineTaken *taken = line_take(taker, line->str, TYPED, &error);
        ck_assert_msg(taken || g_str_has_prefix(error->message, "column "), "%s", line->str);
        ck_assert(taken || g_utf8_validate(error->message, -1, NULL));
        taken_count += taken != NULL;
        line_taken_free(taken);
        g_clear_error(&error);
    }
    ck_assert_uint_eq(line_taker_entries(taker)->len, entries);
    ck_assert_uint_gt(taken_count, 100);
    g_strfreev(lines);
    g_free(text);
}
END_TEST

START_TEST(nobody_is_named_yet)
{
    char *refusal = demo_try(demo, build, "note one");
    ck_assert_str_eq(refusal,
                     "column 1: nobody is named yet; write the initials in front of the verb: "
                     "EV, MO, JT");
    g_free(refusal);
}
END_TEST

START_TEST(what_is_hidden_is_refused)
{
    g_free(demo_try(demo, build, "2025-03-13 11:36 MO"));
    char *refusal = demo_try(demo, build, "note \"\x01\"");
    ck_assert_str_eq(refusal, "column 7: a hidden character (U+0001); take it out");
    g_free(refusal);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        spoilt_lines_are_taken_or_refused,
        nobody_is_named_yet,
        what_is_hidden_is_refused,
        refused_lines_say_what_to_write_instead,
    };
    return run_on_build("refused", tests, G_N_ELEMENTS(tests), G_N_ELEMENTS(refusals));
}
