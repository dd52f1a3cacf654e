// Parts by lot, on the demo's plan and shop.
#include "store.h"

#include <standbook/work/part_lots.h>
#include <standbook/work/slip_words.h>

static Session *session;

static void begin(void)
{
    session = open_session("TL-0405");
    take(session, "2025-03-06 09:30 MO pick up Fit pistons");
    clock_time = 1741253400; // 2025-03-06 09:30
}

static Agenda agenda_now(void)
{
    const GPtrArray *entries = session_entries(session);
    return (Agenda){session_plan(session), session_assessment(session),
                    (const Entry *const *)entries->pdata, entries->len};
}

static guint find(const char *name)
{
    const Agenda agenda = agenda_now();
    for (guint i = 0; i < agenda.assessment->requirements->len; i++) {
        g_autofree char *each = requirement_name(agenda.assessment->requirements->pdata[i]);
        if (strcmp(each, name) == 0)
            return i;
    }
    ck_abort_msg("there is no %s", name);
}

static void expect_lots(const char *part, const char *expected)
{
    g_autoptr(GPtrArray) lots = part_lots(session, part);
    g_autoptr(GString) labels = g_string_new(NULL);
    for (guint i = 0; i < lots->len; i++)
        g_string_append_printf(labels, "%s%s", i ? " " : "", shop_label(lots->pdata[i]));
    ck_assert_str_eq(labels->str, expected);
}

START_TEST(lots_of_a_part_are_known_by_their_words_the_newest_first)
{
    begin();
    expect_lots("main shells", "MB-2420-A MB-2398-F MB-2417-C");
    expect_lots("big-end shells", "RB-1182-B");
    expect_lots("big-end", "RB-1182-B"); // words begin so
    expect_lots("big-end shell", "");    // a word is whole
    expect_lots("shells", "");
    g_autoptr(GPtrArray) lots = part_lots(session, "big-end shells");
    g_autofree char *words = part_lot_words(session, lots->pdata[0]);
    ck_assert_str_eq(words, "big-end shells -0.25 · 8 of Hollin Bearing Stores");
    session_close(session);
}
END_TEST

START_TEST(an_answer_is_a_line_of_the_list_or_a_label)
{
    begin();
    g_autoptr(GPtrArray) lots = part_lots(session, "main shells");
    static const char *const answers[][2] = {
        {"1", "MB-2420-A"}, {"3", "MB-2417-C"}, {"mb-2398-f", "MB-2398-F"},
        {"0", "0"},         {"4", "4"},         {"1x", "1x"},
        {"", ""},           {"XX-1", "XX-1"},   {"18446744073709551617", "18446744073709551617"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(answers); i++) {
        g_autofree char *answer = part_answer(lots, answers[i][0]);
        ck_assert_str_eq(answer, answers[i][1]);
    }
    session_close(session);
}
END_TEST

static void expect_packet(const char *name, const char *target, const char *place,
                          const char *shared)
{
    const Agenda agenda = agenda_now();
    g_auto(PartPacket) packet = part_packet(&agenda, find(name));
    ck_assert_str_eq(packet.target, target);
    ck_assert_str_eq(packet.place, place);
    ck_assert_pstr_eq(packet.shared, shared);
}

START_TEST(a_packet_fits_both_halves_while_both_are_open)
{
    begin();
    expect_packet("fit big-end shells[1, lower]", "big-end shells[1] in Fit pistons", "1",
                  "upper, lower");
    take(session, "fit big-end shells[1, upper] lot RB-1182-B new");
    expect_packet("fit big-end shells[1, lower]", "big-end shells[1, lower] in Fit pistons",
                  "1, lower", NULL);
    expect_packet("fit big-end shells[2, upper]", "big-end shells[2] in Fit pistons", "2",
                  "upper, lower");
    session_close(session);
}
END_TEST

static void expect_doubt(const char *name, const char *lot, const char *expected)
{
    g_autofree char *doubt = part_lot_doubt(
        session, "MO", find(name), shop_find(session_shop(session), "lot", lot), clock_time);
    ck_assert_pstr_eq(doubt, expected);
}

START_TEST(a_lot_that_is_too_old_or_recalled_says_so)
{
    Session *shop = open_session(NULL);
    take(shop, "2025-03-01 09:00 MO lot RB-1 \"big-end shells -0.25\" expires 2025-03-05");
    take(shop, "lot RB-2 \"big-end shells -0.25\" expires 2025-03-06");
    take(shop, "lot RB-3 \"big-end shells -0.25\"");
    take(shop, "recall lot RB-3 \"cracks\"");
    session_close(shop);
    begin();
    expect_lots("big-end shells", "RB-3 RB-2 RB-1 RB-1182-B");
    expect_doubt("fit big-end shells[1, upper]", "RB-1182-B", NULL);
    expect_doubt("fit big-end shells[1, upper]", "RB-1", "expired 2025-03-05");
    expect_doubt("fit big-end shells[1, upper]", "RB-2", NULL); // its last day
    expect_doubt("fit big-end shells[1, upper]", "RB-3", "recalled");
    session_close(session);
}
END_TEST

START_TEST(a_lot_of_another_grade_than_was_chosen_says_so)
{
    begin();
    take(session, "choose clearance by grade[2] A");
    expect_doubt("fit main shells[2, upper]", "MB-2417-C", NULL);
    expect_doubt("fit main shells[2, upper]", "MB-2420-A", "grade B");
    session_close(session);
}
END_TEST

static void expect_words(const char *expected)
{
    g_autofree char *words =
        part_lot_words(session, shop_find(session_shop(session), "lot", "RB-1182-B"));
    ck_assert_str_eq(words, expected);
}

// Whatever engine they went into; who strikes a fitting puts it back, who strikes that does not.
START_TEST(what_is_left_of_a_lot_is_said_and_more_than_that_is_asked_about)
{
    static const char fit[] = "fit big-end shells[1] lot RB-1182-B new";
    begin();
    take(session, fit);
    expect_words("big-end shells -0.25 · 6 left of 8 of Hollin Bearing Stores");
    session_close(session);
    session = open_session("TL-0412");
    take(session, "2025-03-06 09:30 MO fit big-end shells[1] lot RB-1182-B new");
    take(session, "fit big-end shells[2] lot RB-1182-B new");
    expect_words("big-end shells -0.25 · 2 left of 8 of Hollin Bearing Stores");
    take(session, "strike last \"wrong box\"");
    expect_words("big-end shells -0.25 · 3 left of 8 of Hollin Bearing Stores");
    g_autofree char *strike =
        g_strdup_printf("strike #%u \"it was the box\"", session_entries(session)->len);
    take(session, strike);
    expect_words("big-end shells -0.25 · 2 left of 8 of Hollin Bearing Stores");
    g_autofree char *none = session_slip(session, "MO fit big-end shells[3] lot RB-1182-B new");
    ck_assert_ptr_null(none);
    take(session, "fit big-end shells[3] lot RB-1182-B new");
    g_autofree char *slip = session_slip(session, "MO fit big-end shells[4] lot RB-1182-B new");
    ck_assert_str_eq(slip, "None of RB-1182-B is left of 8: another lot? Enter again fits it");
    take(session, "fit big-end shells[4] lot RB-1182-B new");
    expect_words("big-end shells -0.25 · 0 left of 8 of Hollin Bearing Stores");
    session_close(session);
}
END_TEST

int main(void)
{
    const TTest *tests[] = {lots_of_a_part_are_known_by_their_words_the_newest_first,
                            an_answer_is_a_line_of_the_list_or_a_label,
                            a_packet_fits_both_halves_while_both_are_open,
                            a_lot_that_is_too_old_or_recalled_says_so,
                            a_lot_of_another_grade_than_was_chosen_says_so,
                            what_is_left_of_a_lot_is_said_and_more_than_that_is_asked_about};
    TCase *tcase = tcase_create("demo shop");
    tcase_add_checked_fixture(tcase, make_shop, clear);
    for (gsize i = 0; i < G_N_ELEMENTS(tests); i++)
        tcase_add_test(tcase, tests[i]);
    Suite *suite = suite_create("part lots");
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
