#include "build.h"

#include <standbook/work/entry_words.h>

START_TEST(one_line_is_one_ledger_line)
{
    take("2025-03-13 11:36 MO pick up Check returned work");
    take("11:40 read main journal[2, rear, v] 59.790 with G01");
    char *line = entry_write(last(0), NULL);
    const Entry *tool = shop_find(demo->shop, "tool", "G01");
    const Entry *person = shop_find(demo->shop, "person", "MO");
    const Entry *calibration =
        shop_calibration_on(demo->shop, entry_text(tool, "id"), "2025-03-13");
    char *expected = g_strdup_printf(
        "{\"ledger\":\"%s\",\"seq\":%" G_GINT64_FORMAT ",\"kind\":\"read\",\"format\":1,"
        "\"by\":\"%s\",\"at\":\"2025-03-13T11:40:00\",\"done\":null,\"after\":null,\"body\":{"
        "\"check\":\"main journal\",\"place\":[\"2\",\"rear\",\"v\"],\"step\":\"Check returned "
        "work\",\"value\":{\"value\":\"5979/100\",\"unit\":\"mm\",\"typed\":\"59.790\"},"
        "\"tool\":\"%s\",\"calibration\":\"%s\"}}",
        last(0)->ledger, last(0)->seq, entry_text(person, "id"), entry_text(tool, "id"),
        entry_text(calibration, "id"));
    ck_assert_str_eq(line, expected);
    g_free(expected);
    free(line);
}
END_TEST

START_TEST(what_the_build_relies_on_is_taken_once)
{
    static const char *const order[] = {"build", "plan", "engine", "owner", "person"};
    take("2025-03-13 11:36 MO pick up Crank");
    for (guint i = 0; i < G_N_ELEMENTS(order); i++) {
        const Entry *entry = line_taker_entries(build)->pdata[i];
        expect_kind(entry, "take");
        expect_text(entry, "what", order[i]);
        const Entry *origin = shop_entry(demo->shop, entry_number(entry, "seq"));
        ck_assert(json_equal(json_object_get(entry->body, "body"), origin->body));
    }
    take("12:00 read crank travel 0.01 0.14 with G04");
    ck_assert_uint_eq(count_of("take"), 7); // the tool and its calibration in force
    take("12:10 JT read crank travel 0.01 0.13 with G04");
    ck_assert_uint_eq(count_of("take"), 8); // the other person
    take("12:20 fit main shells lot MB-2417-C new");
    take("12:20 fit main shells[1] lot MB-2417-C new");
    ck_assert_uint_eq(count_of("take"), 9);
}
END_TEST

START_TEST(the_calibration_of_the_day_is_the_one_in_force)
{
    const Entry *tool = shop_find(demo->shop, "tool", "G04");
    GPtrArray *all = shop_calibrations(demo->shop, entry_text(tool, "id"));
    ck_assert_uint_eq(all->len, 2);
    take("2024-11-30 10:00 MO read crank travel 0.01 0.14 with G04");
    expect_text(last(0), "calibration", entry_text(all->pdata[0], "id"));
    ck_assert_uint_eq(count_of("take"), 8); // the later one too: it says what the first was worth
    take("2024-12-01 10:00 read crank travel 0.01 0.14 with G04");
    expect_text(last(0), "calibration", entry_text(all->pdata[1], "id"));
    ck_assert_uint_eq(count_of("take"), 8);
    take("read crank drag 1.5 with W2 from paper");
    g_ptr_array_unref(all);
}
END_TEST

START_TEST(several_values_run_through_the_places)
{
    take("2025-03-13 11:36 MO read main journal[2] 59.741 59.742 < 59.743 5/8 in with G01");
    const GPtrArray *entries = line_taker_entries(build);
    expect_list(last(3), "place", "2 | front | v");
    expect_list(last(2), "place", "2 | front | h");
    expect_list(last(1), "place", "2 | rear | v");
    expect_list(last(0), "place", "2 | rear | h");
    ck_assert_str_eq(entry_value(last(1), "value", "value"), "<59743/1000");
    ck_assert_str_eq(entry_value(last(0), "value", "value"), "5/8");
    ck_assert_str_eq(entry_value(last(0), "value", "unit"), "in");
    ck_assert_uint_eq(((Entry *)entries->pdata[entries->len - 1])->seq, entries->len);
}
END_TEST

START_TEST(bolts_go_in_the_order_asked)
{
    take("2025-03-13 11:36 MO pick up Main clearances");
    take("tighten main caps stage 1 all with W2");
    expect_list(last(0), "bolts", "3 | 4 | 1 | 2 | 5 | 6");
    take("tighten main caps stage 2 from 4 to 2 with W2");
    expect_list(last(0), "bolts", "4 | 1 | 2");
    take("tighten main caps[5] stage 2 75 with W2");
    expect_list(last(0), "bolts", "5");
    ck_assert_str_eq(entry_value(last(0), "value", "unit"), "N·m");
    take("slacken main caps[1] 1/4 turn \"cap crooked\"");
    ck_assert_str_eq(entry_value(last(0), "turn", "value"), "1/4");
    expect_text(last(0), "why", "cap crooked");
    take("pick up Fit pistons");
    take("tighten rod bolts[2] stage 1 with W4");
    expect_list(last(0), "bolts", "2, a | 2, b");
    expect_text(last(0), "step", "Fit pistons");
    take("tighten flywheel bolts[4] stage 2 50 with A1");
    ck_assert_str_eq(entry_value(last(0), "value", "unit"), "°");
    take("tighten water pump[4] with W1 adapter X1");
    expect_text(last(0), "adapter", "X1");
    ck_assert_int_eq(entry_number(last(0), "stage"), 1);
}
END_TEST

START_TEST(the_step_in_hand_comes_first)
{
    take("2025-03-13 11:36 MO pick up Crank");
    ck_assert_str_eq(line_taker_step(build)->name, "Crank");
    take("slacken main caps all");
    expect_text(last(0), "step", "Crank");
    take("note on main bore \"of another step\"");
    expect_text(last(0), "step", "Main clearances");
    take("put down \"telephone\"");
    ck_assert_ptr_null(line_taker_step(build));
    take("slacken main caps in Main clearances all");
    expect_text(last(0), "step", "Main clearances");
}
END_TEST

START_TEST(cautions_are_passed_once_by_each)
{
    take("2025-03-13 11:36 MO pick up Crank");
    ck_assert_uint_eq(count_of("caution passed"), 1);
    take("put down");
    take("pick up Crank");
    ck_assert_uint_eq(count_of("caution passed"), 1);
    take("JT pick up Crank");
    ck_assert_uint_eq(count_of("caution passed"), 2);
}
END_TEST

START_TEST(strikes_find_their_entry)
{
    take("2025-03-13 11:36 MO read top ring gap 0.38 0.40 3.6 0.42 with G08");
    gint64 first = last(0)->seq - 3;
    take("strike top ring gap[3] typo");
    expect_kind(last(0), "strike");
    ck_assert_int_eq(entry_number(last(0), "entry"), first + 2);
    take("strike last wrong place");
    ck_assert_int_eq(entry_number(last(0), "entry"), first + 3);
    expect_text(last(0), "cause", "wrong place");
    take("strike last typo"); // the one before: what is struck does not count
    ck_assert_int_eq(entry_number(last(0), "entry"), first + 1);
    char *line = g_strdup_printf("strike #%" G_GINT64_FORMAT " \"held crooked\"", first);
    take(line);
    ck_assert_int_eq(entry_number(last(0), "entry"), first);
    char *refusal = demo_try(demo, build, line);
    char *expected =
        g_strdup_printf("column 8: entry #%" G_GINT64_FORMAT " is struck already", first);
    ck_assert_str_eq(refusal, expected);
    g_free(line);
    g_free(refusal);
    g_free(expected);
}
END_TEST

START_TEST(endings)
{
    take("2025-03-13 11:36 MO note one");
    gint64 seq = last(0)->seq;
    char *line = g_strdup_printf("note two after #%" G_GINT64_FORMAT " from paper", seq);
    take(line);
    ck_assert_int_eq(last(0)->after, seq);
    expect_text(last(0), "note", NULL); // a note has no remark of its own
    take("read crank drag 1.5 from paper");
    expect_text(last(0), "note", "from paper");
    take("fit rear seal new \"spring outward\" from paper");
    expect_text(last(0), "note", "spring outward; from paper");
    take("note \"he took it from paper\"");
    expect_text(last(0), "text", "he took it from paper");
    g_free(line);
}
END_TEST

START_TEST(signatures_are_counted)
{
    take("2025-03-13 11:36 MO sign Main clearances");
    ck_assert_int_eq(entry_number(last(0), "signature"), 1);
    char *refusal = demo_try(demo, build, "sign Main clearances");
    ck_assert_str_eq(refusal,
                     "column 6: this person has signed `Main clearances` already; its hold "
                     "(grades chosen) is still open, and another person writes it, as in "
                     "`EV sign Main clearances`");
    g_free(refusal);
    take("JT sign Main clearances");
    ck_assert_int_eq(entry_number(last(0), "signature"), 2);
    expect_text(last(0), "statement", "grades chosen");
    refusal = demo_try(demo, build, "EV sign Main clearances");
    ck_assert_str_eq(refusal, "column 9: `Main clearances` is signed already; write `reopen Main "
                              "clearances` and why, if there is more to do");
    g_free(refusal);
    take("MO reopen Main clearances \"a shell turned\"");
    take("sign Main clearances");
    ck_assert_int_eq(entry_number(last(0), "signature"), 1);
}
END_TEST

START_TEST(decisions)
{
    take("2025-03-13 11:36 MO decide found bore wear[2] rework \"bore out\" customer letter");
    expect_text(last(0), "decision", "rework");
    expect_text(last(0), "consent", "letter");
    expect_list(last(0), "place", "2");
    take("choose clearance by grade[1] B \"0.046 predicted\"");
    expect_list(last(0), "place", "1");
    expect_text(last(0), "label", "B");
    take(
        "add check \"carrier face flatness\" \"fretting seen\" in Idler backlash: at most 0.05 mm");
    expect_text(last(0), "definition", "at most 0.05 mm");
    expect_text(last(0), "step", "Idler backlash");
    take("amend spring load limits 255..290 N \"supplier's sheet\"");
    expect_text(last(0), "limits", "255..290 N");
    take("amend cam lift[4, in] wear 6.60 \"supplier's sheet\"");
    expect_text(last(0), "wear", "6.60");
    expect_list(last(0), "place", "in | 4");
    take("withdraw oil sample taken \"no oil left\"");
    expect_text(last(0), "what", "check");
    take("not needed spring load[8] \"no eighth spring\"");
    expect_text(last(0), "asked", "read");
    expect_list(last(0), "place", "8");
    take("pick up Crank");
    take("not needed main caps[6] \"five studs\"");
    expect_text(last(0), "asked", "bolt");
    ck_assert_int_eq(entry_number(last(2), "stage"), 1);
    ck_assert_int_eq(entry_number(last(0), "stage"), 3);
    take("claim bore[4, T, mid] 90.005 ± 0.005 by \"BG-2291\"");
    ck_assert_str_eq(entry_value(last(0), "doubt", "value"), "1/200");
    take("cost \"credit, cylinder 4\" -120.00 GBP");
    ck_assert_str_eq(entry_value(last(0), "amount", "unit"), "GBP");
    ck_assert_str_eq(entry_value(last(0), "amount", "value"), "-120");
}
END_TEST

START_TEST(names_stand_outside_the_chain)
{
    GError *error = NULL;
    LineTaken *taken = line_take(demo->desk, "person ZZ \"Zena Zoll\" role helper", TYPED, &error);
    ck_assert_ptr_nonnull(taken);
    ck_assert_uint_eq(taken->names->len, 1);
    const LineName *name = taken->names->pdata[0];
    const Entry *entry = taken->entries->pdata[0];
    ck_assert_str_eq(name->name, "Zena Zoll");
    ck_assert_str_eq(name->id, entry_text(entry, "id"));
    expect_text(entry, "role", "helper");
    char *line = entry_write(entry, NULL);
    ck_assert_ptr_null(strstr(line, "Zena"));
    free(line);
    line_taken_free(taken);
}
END_TEST

// From the first day to the last, the wrench found wrong in between.
START_TEST(every_line_of_the_demo_is_taken)
{
    LineTaker *first = demo_build(demo, "TL-0397"), *main_build = demo_build(demo, "TL-0412"),
              *left = demo_build(demo, "TL-0418");
    demo_feed(demo, first, "demo-data/tl-0397.log");
    demo_feed(demo, build, "demo-data/tl-0405.log");
    demo_feed(demo, main_build, "demo-data/tl-0412.log");
    demo_feed(demo, first, "demo-data/tl-0397-later.log");
    demo_feed(demo, left, "demo-data/tl-0418.log");
    ck_assert_uint_eq(count_of("news"), 0); // W2 was not used on TL-0405
    build = first;
    ck_assert_uint_eq(count_of("news"), 2);
    ck_assert_uint_eq(count_of("uphold"), 6); // the six bolts of its housing, in the stage with W2
    build = main_build;
    ck_assert_uint_eq(count_of("news"), 2);
    ck_assert_uint_eq(count_of("concede"), 1);
    ck_assert_uint_eq(count_of("seal"), 2);
}
END_TEST

START_TEST(a_concession_keeps_how_far_it_goes)
{
    take("2025-02-25 08:30 MO read bore[4, T, mid] 90.026 with G03");
    take("read skirt[4] 89.940 with G02");
    char *refusal = demo_try(demo, build, "concede piston clearance[4] to 0.083 \"x\"");
    ck_assert_str_eq(refusal, "column 29: that is not far enough; `piston clearance` stands at "
                              "0.086 mm");
    g_free(refusal);
    take("concede piston clearance[4] \"honed oversize\" customer telephone");
    const Entry *entry = last(0);
    expect_text(entry, "asked", "read");
    expect_list(entry, "place", "4");
    expect_list(entry, "reasons", "high");
    expect_text(entry, "side", "high");
    expect_text(entry, "who", "customer");
    expect_text(entry, "how", "telephone");
    ck_assert_str_eq(entry_value(entry, "bound", "value"), "43/500");
    ck_assert_str_eq(entry_value(entry, "bound", "typed"), "0.086");
    refusal = demo_try(demo, build, "concede piston clearance \"all of them\"");
    ck_assert_str_eq(refusal,
                     "column 9: nothing there fails or is in doubt, so there is nothing to "
                     "concede");
    g_free(refusal);
}
END_TEST

START_TEST(an_uphold_names_each_doubt)
{
    take("2025-03-11 09:00 MO tighten drain plug all with W2");
    char *refusal = demo_try(demo, build, "uphold drain plug \"felt right\" second MO");
    ck_assert_str_eq(refusal, "column 32: the second person must be another one");
    g_free(refusal);
    take("uphold drain plug \"felt right\" second JT"); // W2 is overdue
    expect_text(last(0), "asked", "bolt");
    expect_text(last(0), "doubt", "tool");
    ck_assert_int_eq(entry_number(last(0), "stage"), 1);
    expect_text(last(0), "second", entry_text(shop_find(demo->shop, "person", "JT"), "id"));
    refusal = demo_try(demo, build, "uphold drain plug \"felt right\"");
    ck_assert_str_eq(refusal, "column 8: nothing there is in doubt, so there is nothing to uphold");
    g_free(refusal);
}
END_TEST

START_TEST(a_seal_names_the_assessment_it_keeps)
{
    take("2025-03-11 09:00 MO read crank drag 1.5 with G17");
    gint64 covers = last(0)->seq;
    demo->judged = build;
    GError *error = NULL;
    LineTaken *taken = line_take(build, "seal first start", TYPED, &error);
    ck_assert_ptr_nonnull(taken);
    const Entry *entry = taken->entries->pdata[taken->entries->len - 1];
    char *digest = g_compute_checksum_for_bytes(G_CHECKSUM_SHA256, taken->kept);
    expect_text(entry, "assessment", digest);
    ck_assert_int_eq(entry_number(entry, "covers"), covers);
    ck_assert_int_eq(entry_number(entry, "supplement"), 0);
    line_keep(build, taken);
    g_free(digest);
    take("seal first start");
    ck_assert_int_eq(entry_number(last(0), "supplement"), 1);
    char *refusal = demo_try(demo, build, "seal frist start");
    ck_assert_str_eq(refusal, "column 6: which gate? write one of: first start, hand over, "
                              "follow-up, abandoned");
    g_free(refusal);
}
END_TEST

// An example of the manual, with its quotes and signs as typed.
static char *example_of(const char *row)
{
    GString *text = g_string_new(row);
    g_string_replace(text, "\\(dq", "\"", 0);
    g_string_replace(text, "\\(+-", "±", 0);
    return g_string_free(text, FALSE);
}

// Refused only for how this build stands at its end, or for want of a step in hand.
static gboolean may_be_refused(const char *example)
{
    static const char *const starts[] = {"tighten main caps",        "waited head nuts",
                                         "concede piston clearance", "uphold main clearance",
                                         "11:40 JT sign Crank",      "photo "};
    for (gsize i = 0; i < G_N_ELEMENTS(starts); i++)
        if (g_str_has_prefix(example, starts[i]))
            return TRUE;
    return FALSE;
}

START_TEST(the_examples_of_the_manual_are_taken)
{
    char *page = NULL;
    guint examples = 0;
    LineTaker *taker = demo_build(demo, "TL-0412");
    demo_feed(demo, taker, "demo-data/tl-0412.log");
    ck_assert_ptr_null(demo_try(demo, taker, "2025-03-26 09:00 MO put down"));
    ck_assert(g_file_get_contents("man/standbook-log.5", &page, NULL, NULL));
    char *verbs = strstr(page, ".Sh VERBS"), *end = strstr(page, ".Sh SHOP LINES");
    ck_assert(verbs && end);
    *end = '\0';
    GStrv rows = g_strsplit(verbs, "\n", -1);
    for (guint i = 0; rows[i]; i++) {
        if (!g_str_has_prefix(rows[i], ".Dl "))
            continue;
        g_autofree char *example = example_of(rows[i] + 4);
        GError *error = NULL;
        LineTaken *taken = line_take(taker, example, TYPED, &error);
        ck_assert_msg(taken || may_be_refused(example), "%s: %s", example,
                      error ? error->message : "");
        line_taken_free(taken);
        g_clear_error(&error);
        examples++;
    }
    ck_assert_uint_gt(examples, 30);
    g_strfreev(rows);
    g_free(page);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        one_line_is_one_ledger_line,
        what_the_build_relies_on_is_taken_once,
        the_calibration_of_the_day_is_the_one_in_force,
        several_values_run_through_the_places,
        bolts_go_in_the_order_asked,
        the_step_in_hand_comes_first,
        cautions_are_passed_once_by_each,
        strikes_find_their_entry,
        endings,
        signatures_are_counted,
        decisions,
        names_stand_outside_the_chain,
        every_line_of_the_demo_is_taken,
        the_examples_of_the_manual_are_taken,
        a_concession_keeps_how_far_it_goes,
        an_uphold_names_each_doubt,
        a_seal_names_the_assessment_it_keeps,
    };
    return run_on_build("line", tests, G_N_ELEMENTS(tests), 0);
}
