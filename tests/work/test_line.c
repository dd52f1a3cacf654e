#include "demo.h"

#include <standbook/record/live.h>

static Demo *demo;
static LineTaker *build; // TL-0405, with nothing in it yet

static void make(void)
{
    demo = demo_new();
    build = demo_build(demo, "TL-0405");
}

static void clear(void)
{
    demo_free(demo);
}

static void take(const char *line)
{
    char *refusal = demo_try(demo, build, line);
    ck_assert_msg(!refusal, "%s: %s", line, refusal);
}

static const Entry *last(guint back)
{
    const GPtrArray *entries = line_taker_entries(build);
    ck_assert_uint_lt(back, entries->len);
    return entries->pdata[entries->len - 1 - back];
}

static void expect_kind(const Entry *entry, const char *kind)
{
    ck_assert_str_eq(entry->kind->name, kind);
}

static void expect_text(const Entry *entry, const char *field, const char *text)
{
    if (!text)
        ck_assert_ptr_null(entry_text(entry, field));
    else
        ck_assert_str_eq(entry_text(entry, field), text);
}

static void expect_list(const Entry *entry, const char *field, const char *items)
{
    g_autoptr(GString) text = g_string_new(NULL);
    for (gsize i = 0; i < entry_list_length(entry, field); i++)
        g_string_append_printf(text, "%s%s", i ? " | " : "", entry_list_item(entry, field, i));
    ck_assert_str_eq(text->str, items);
}

static guint count_of(const char *kind)
{
    const GPtrArray *entries = line_taker_entries(build);
    guint count = 0;
    for (guint i = 0; i < entries->len; i++)
        count += strcmp(((Entry *)entries->pdata[i])->kind->name, kind) == 0;
    return count;
}

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

START_TEST(date_time_and_initials_carry_forward)
{
    take("2025-03-13 11:36 MO note one");
    take("note two");
    ck_assert_str_eq(last(0)->at, "2025-03-13T11:36:00");
    take("11:40:20 JT");
    take("note three");
    ck_assert_str_eq(last(0)->at, "2025-03-13T11:40:20");
    ck_assert_str_eq(last(0)->by, entry_text(shop_find(demo->shop, "person", "JT"), "id"));
    char *refusal = demo_try(demo, build, "12:00 EV nonsense");
    g_free(refusal);
    take("note four"); // a refused line changes nothing
    ck_assert_str_eq(last(0)->at, "2025-03-13T11:40:20");
    take("# 13:00 EV a remark after #9999");
    take("");
    take("note five");
    ck_assert_str_eq(last(0)->at, "2025-03-13T11:40:20");
    ck_assert_str_eq(last(0)->by, entry_text(shop_find(demo->shop, "person", "JT"), "id"));
}
END_TEST

START_TEST(typed_at_and_done_stand_apart)
{
    line_taker_trust_times(build, FALSE);
    take("2025-03-13 11:36 MO note one"); // typed at 1970-01-01 00:00
    ck_assert_str_eq(last(0)->at, "1970-01-01T00:00:00");
    ck_assert_str_eq(last(0)->done, "2025-03-13T11:36:00");
    LineTaker *other = demo_build(demo, "TL-0418");
    line_taker_trust_times(other, FALSE);
    GError *error = NULL;
    LineTaken *taken = line_take(other, "MO note now", 60, &error);
    Entry *entry = taken->entries->pdata[taken->entries->len - 1];
    ck_assert_str_eq(entry->at, "1970-01-01T00:01:00");
    ck_assert_ptr_null(entry->done);
    line_keep(other, taken);
    taken = line_take(other, "09:15 note \"the same day\"", 60, &error);
    entry = taken->entries->pdata[taken->entries->len - 1];
    ck_assert_str_eq(entry->done, "1970-01-01T09:15:00");
    line_taken_free(taken);
}
END_TEST

START_TEST(a_card_does_not_set_the_clock_back)
{
    take("2025-03-13 11:36 MO note one");
    take("09:00 JT read crank drag 1.5 from paper");
    ck_assert_str_eq(last(0)->at, "2025-03-13T11:36:00");
    ck_assert_str_eq(last(0)->done, "2025-03-13T09:00:00");
    take("10:00 MO note two"); // it did go back
    ck_assert_str_eq(last(0)->at, "2025-03-13T10:00:00");
    take("10:30 note three from paper");
    ck_assert_str_eq(last(0)->at, "2025-03-13T11:36:00");
    take("14:00 note four from paper");
    ck_assert_str_eq(last(0)->at, "2025-03-13T14:00:00");
    ck_assert_ptr_null(last(0)->done);
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
                     "(grades chosen) is signed by another one");
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

START_TEST(a_calibration_is_news_to_all_who_took_the_tool)
{
    LineTaker *other = demo_build(demo, "TL-0418");
    char *refusal = demo_try(demo, other, "2025-03-01 09:00 MO tighten drain plug all with W2");
    ck_assert_ptr_null(refusal);
    guint before = line_taker_entries(other)->len;
    take("2025-03-11 09:40 JT shop calibration W2 2025-03-11 certificate KF-118 wrong \"low\"");
    ck_assert_uint_eq(count_of("news"), 0); // this build has not used it
    const GPtrArray *entries = line_taker_entries(other);
    ck_assert_uint_eq(entries->len, before + 2);
    expect_text(entries->pdata[before], "what", "person"); // who says so is not known there yet
    expect_kind(entries->pdata[before + 1], "news");
    ck_assert_int_eq(entry_number(entries->pdata[before + 1], "seq"), shop_last(demo->shop));
    take("tighten drain plug all with W2");
    ck_assert_uint_eq(count_of("news"), 0); // taken at first use
    take("shop calibration W2 2025-03-11 adjusted");
    ck_assert_uint_eq(count_of("news"), 1);
    ck_assert_uint_eq(entries->len, before + 3);
}
END_TEST

START_TEST(a_recalled_lot_says_so)
{
    take("2025-03-13 11:36 MO fit thrust washers lot RB-1182-B new");
    take("shop recall lot RB-1182-B \"supplier's letter\"");
    expect_kind(last(0), "news");
    expect_text(last(0), "what", "recall");
    LineTaker *other = demo_build(demo, "TL-0418");
    ck_assert_ptr_null(demo_try(demo, other,
                                "2025-03-14 08:00 MO fit thrust washers lot RB-1182-B "
                                "new"));
    const GPtrArray *entries = line_taker_entries(other);
    expect_text(entries->pdata[entries->len - 2], "what", "recall"); // taken with the lot
}
END_TEST

START_TEST(names_stand_outside_the_chain)
{
    GError *error = NULL;
    LineTaken *taken = line_take(demo->desk, "person ZZ \"Zena Zoll\" role helper", 0, &error);
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
    LineTaken *taken = line_take(build, "seal first start", 0, &error);
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
    {"read main bore[1] 59.79",
     "column 6: `main bore` has 2 places here, from `1, front` to `1, rear`, but 1 follow; write "
     "one for each, or name the place in brackets"},
    {"read crank drag 1.5 1.6", "column 6: `crank drag` has one place here, but 2 values follow; "
                                "write one"},
    {"read crank drag", "column 16: a value is missing here; write digits"},
    {"read crank drag 1,5", "column 18: a decimal is written with a point, not a comma"},
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
    {"lay gasket sealnt on sump",
     "column 5: this is no consumable of the plan; did you mean `gasket sealant`?"},
    {"strike #999 typo", "column 8: there is no entry #999; the last one is #0"},
    {"strike crank drag typo", "column 8: nothing is entered there that could be struck"},
    {"strike last typo", "column 8: this person has entered nothing that could be struck"},
    {"decide crank drag keep \"x\"",
     "column 8: `crank drag` is no finding; write `concede` for what stays outside its limits"},
    {"choose clearance by grade[1] C", "column 30: there is no grade `C`; write one of: A, B"},
    {"add check \"bore\" \"x\" in Crank: any",
     "column 12: step \"Crank\", check \"bore\": there is a check of this name already, in step "
     "\"Check returned work\"; give this one another name"},
    {"add check \"face\" \"seen\" in Crank: at mots 0.05 mm", NULL},
    {"amend crank drag limits 3.0..2.0 N·m \"x\"", NULL},
    {"note \"open", "column 6: this quote is not closed; end the words with \", and write a quote "
                    "within them twice"},
    {"note one after #7", "column 16: there is no entry #7; the last one is #0"},
    {"fit rear seal new wiht", "column 19: `wiht` is too much here; did you mean `with`?"},
    {"1136 read crank drag 1.5",
     "column 1: `1136` is no date, time or verb; write a time like 11:36"},
    {"note one two", "column 10: `two` is too much here; the line should end before"},
    {"2025-03-14 note one", "column 1: a new date needs a time behind it: 2025-03-14 08:30"},
    {"25:00 note one", "column 1: `25:00` is no time of day; write it like 11:36"},
    {"QQ note one",
     "column 1: the shop has no person `QQ`; enter it first with a line `shop person "
     "…`"},
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
    {"shop tool G99 \"x\" kind feelers range 5..1 mm", "column 32: the range is upside down"},
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
        LineTaken *taken = line_take(taker, example, 0, &error);
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
        LineTaken *taken = line_take(taker, line->str, 0, &error);
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
                     "column 1: nobody is named yet; write the initials in front of the verb");
    g_free(refusal);
}
END_TEST

START_TEST(what_is_too_long_for_a_ledger_line_is_refused)
{
    g_free(demo_try(demo, build, "2025-03-13 11:36 MO"));
    char *words = g_strnfill(4000, '\x01'); // hidden, so refused for that
    char *line = g_strdup_printf("note \"%s\"", words);
    char *refusal = demo_try(demo, build, line);
    ck_assert_str_eq(refusal, "column 7: a hidden character (U+0001); take it out");
    g_free(refusal);
    memset(words, 'w', 4000);
    g_free(line);
    line = g_strdup_printf("note \"%s\"", words);
    refusal = demo_try(demo, build, line);
    ck_assert_str_eq(refusal,
                     "column 1: ledger line: longer than 4096 bytes; say it in fewer words, "
                     "or in several notes");
    g_free(refusal);
    g_free(line);
    g_free(words);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("line");
    TCase *tcase = tcase_create("line");
    tcase_add_checked_fixture(tcase, make, clear);
    const TTest *const tests[] = {
        one_line_is_one_ledger_line,
        what_the_build_relies_on_is_taken_once,
        the_calibration_of_the_day_is_the_one_in_force,
        several_values_run_through_the_places,
        date_time_and_initials_carry_forward,
        typed_at_and_done_stand_apart,
        a_card_does_not_set_the_clock_back,
        bolts_go_in_the_order_asked,
        the_step_in_hand_comes_first,
        cautions_are_passed_once_by_each,
        strikes_find_their_entry,
        endings,
        signatures_are_counted,
        decisions,
        a_calibration_is_news_to_all_who_took_the_tool,
        a_recalled_lot_says_so,
        names_stand_outside_the_chain,
        every_line_of_the_demo_is_taken,
        the_examples_of_the_manual_are_taken,
        a_concession_keeps_how_far_it_goes,
        an_uphold_names_each_doubt,
        a_seal_names_the_assessment_it_keeps,
        spoilt_lines_are_taken_or_refused,
        nobody_is_named_yet,
        what_is_too_long_for_a_ledger_line_is_refused,
    };
    for (gsize i = 0; i < G_N_ELEMENTS(tests); i++)
        tcase_add_test(tcase, tests[i]);
    tcase_add_loop_test(tcase, refused_lines_say_what_to_write_instead, 0,
                        (int)G_N_ELEMENTS(refusals));
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
