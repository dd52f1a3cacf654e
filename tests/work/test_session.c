// Sessions on a real store in a folder of its own.
#include "store.h"

#include <standbook/book/find.h>
#include <standbook/judge/keep.h>

static void expect_whole(void)
{
    GPtrArray *faults = book_verify(book, NULL);
    ck_assert_ptr_nonnull(faults);
    if (faults->len)
        ck_abort_msg("%s", ((BookFault *)faults->pdata[0])->fault);
    g_ptr_array_unref(faults);
}

START_TEST(an_empty_store_gets_its_shop_with_the_first_line)
{
    Session *shop = open_session(NULL);
    take(shop, "2024-01-08 08:00 EV person EV \"Edda Vail\" role office");
    take(shop, "person MO \"Mab Orrin\"");
    ck_assert_uint_eq(session_taken(shop), 2);
    const Entry *person = shop_find(session_shop(shop), "person", "EV");
    ck_assert_str_eq(person->by, entry_text(person, "id")); // the first enters themselves
    g_autoptr(BookPerson) known = book_person(book, entry_text(person, "id"), NULL);
    ck_assert_str_eq(known->name, "Edda Vail");
    session_close(shop);
    shop = open_session(NULL);
    ck_assert_int_eq(shop_last(session_shop(shop)), 2);
    session_close(shop);
    expect_whole();
}
END_TEST

START_TEST(a_session_goes_on_where_the_last_one_stopped)
{
    Session *session = open_session("TL-0405");
    take(session, "2024-12-05 08:30 MO pick up Crank");
    guint entries = session_entries(session)->len;
    session_close(session);
    session = open_session("TL-0405");
    ck_assert_uint_eq(session_entries(session)->len, entries);
    ck_assert_str_eq(session_step(session)->name, "Crank");
    take(session, "2024-12-05 08:40 MO read crank drag 1.5 with G17");
    take(session, "strike last typo");
    session_close(session);
    expect_whole();
}
END_TEST

START_TEST(each_line_is_answered_with_what_it_changed)
{
    Session *session = open_session("TL-0405");
    expect_answer(session, "2024-12-05 08:30 MO pick up Crank", "#6-7: taken");
    expect_answer(session, "read crank drag 1.5 with G17", "#10: crank drag 1.5 N·m: pass");
    expect_answer(session, "read crank drag 3.8 with G17",
                  "#11: crank drag 3.8 N·m: in doubt · disagree");
    expect_answer(session, "strike last typo",
                  "#12: crank drag 1.5 N·m: pass. Struck: #11 `read crank drag 3.8 N·m with G17`");
    expect_answer(session, "", NULL);
    expect_answer(session, "# only a remark", NULL);
    expect_answer(session, "read found idler backlash 0.24 with G04",
                  "#15: found idler backlash 0.24 mm: fail · high, open until answered");
    expect_answer(session, "decide found idler backlash rework \"set anew\"",
                  "#16: found idler backlash 0.24 mm: noted (fail · high)");
    expect_answer(
        session, "tighten sump stage 1 all with W1",
        "#19: sump in Sump, stage 1: 18 pass. No gasket sealant is laid; write `lay gasket "
        "sealant on sump lot …`");
    expect_answer(session, "look white cloth grey", "#20: white cloth grey: fail · look");
    expect_answer(session, "seal abandoned", "#21: abandoned sealed");
    expect_answer(
        session, "tighten water pump from 3 to 4 with W1",
        "#22: water pump in Manifolds and pumps, stage 1: 3 pass (3, 2, 4). No thread sealant is "
        "laid; write `lay thread sealant on water pump lot …`");
    expect_answer(session, "tighten rod bolts in Fit pistons[2] stage 1 with W1",
                  "#23: rod bolts in Fit pistons, stage 1: 2 in doubt · tool (2, a; 2, b)");
    expect_answer(session, "tighten water pump[1] with W1",
                  "#24: bolt water pump in Manifolds and pumps[1], "
                  "stage 1: in doubt · order");
    session_close(session);
}
END_TEST

START_TEST(a_refused_line_says_where_and_stops)
{
    static const char text[] = "2024-12-05 08:30 MO\n\nread crank drag 1.5\nread crank darg 1.5\n"
                               "read crank drag 1.6\n";
    Session *session = open_session("TL-0405");
    GError *error = NULL;
    ck_assert(!session_text(session, text, strlen(text), NULL, NULL, &error));
    ck_assert_str_eq(error->message, "line 4, column 6: this is not the name of a check; did you "
                                     "mean `crank drag`?");
    g_error_free(error);
    ck_assert_uint_eq(session_taken(session), 1);
    expect_refused(session, "read crank drag", 2,
                   "line 5, column 16: a value is missing here; write digits");
    session_close(session);
    session = open_session("TL-0405");
    error = NULL;
    ck_assert(!session_line(session, "note \0 x", 8, NULL, &error));
    ck_assert_str_eq(error->message, "line 1, column 6: a hidden character (U+0000); take it out");
    g_error_free(error);
    session_close(session);
}
END_TEST

START_TEST(what_is_too_long_for_a_ledger_line_is_refused)
{
    static const gboolean checks[] = {FALSE, TRUE};
    g_autofree char *words = g_strnfill(4000, 'w');
    g_autofree char *line = g_strdup_printf("2024-12-05 08:30 MO note \"%s\"", words);
    for (gsize i = 0; i < G_N_ELEMENTS(checks); i++) {
        SessionOptions chosen = options();
        chosen.check = checks[i];
        Session *session = session_open(book, "TL-0405", &chosen, NULL);
        guint entries = session_entries(session)->len;
        g_autoptr(GError) error = NULL;
        ck_assert(!session_line(session, line, -1, NULL, &error));
        ck_assert_str_eq(error->message,
                         "line 1: ledger line: longer than 4096 bytes; say it in fewer "
                         "words, or in several notes");
        ck_assert_uint_eq(session_entries(session)->len, entries);
        session_close(session);
    }
    expect_whole();
}
END_TEST

START_TEST(no_such_build)
{
    GError *error = NULL;
    SessionOptions chosen = options();
    ck_assert_ptr_null(session_open(book, "TL-0421", &chosen, &error));
    ck_assert_str_eq(error->message, "there is no build `TL-0421`; did you mean `TL-0412`?");
    g_error_free(error);
}
END_TEST

START_TEST(check_stores_nothing)
{
    SessionOptions chosen = options();
    chosen.check = TRUE;
    Session *session = session_open(book, "TL-0405", &chosen, NULL);
    feed(session, "demo-data/tl-0405.log");
    ck_assert_uint_gt(session_entries(session)->len, 50); // as if
    session_close(session);
    session = open_session("TL-0405");
    ck_assert_uint_eq(session_entries(session)->len, 0);
    session_close(session);
}
END_TEST

START_TEST(two_write_to_one_build)
{
    Book *second_book = book_open(path, BOOK_WRITE, NULL);
    SessionOptions chosen = options();
    Session *first = open_session("TL-0405");
    Session *second = session_open(second_book, "TL-0405", &chosen, NULL);
    take(first, "2024-12-05 08:30 MO read crank drag 1.5 with G17");
    take(second, "2024-12-05 08:31 JT read pump tip clearance 0.10 with G08");
    take(first, "read pump end clearance 0.05 with G08"); // behind what the other entered
    ck_assert_uint_eq(session_entries(first)->len, session_entries(second)->len + 1);
    ck_assert_uint_eq(session_entered(first), 1); // not what the other entered meanwhile
    ck_assert(session_catch_up(second, NULL));
    ck_assert_uint_eq(session_entries(first)->len, session_entries(second)->len);
    session_close(first);
    session_close(second);
    book_close(second_book);
    expect_whole();
}
END_TEST

// What the clock handed in does while the line is being taken: somebody else is faster.
typedef struct {
    Session *other;
    const char *line;
} Faster;

static Moment meanwhile(gpointer user)
{
    Faster *faster = user;
    if (faster->line)
        take(faster->other, faster->line);
    faster->line = NULL;
    return clock_time;
}

START_TEST(somebody_was_faster)
{
    Book *second_book = book_open(path, BOOK_WRITE, NULL);
    Faster faster = {open_session("TL-0405"), NULL};
    SessionOptions chosen = options();
    chosen.now = meanwhile;
    chosen.user = &faster;
    Session *slow = session_open(second_book, "TL-0405", &chosen, NULL);
    take(slow, "2024-12-05 08:30 MO");
    take(faster.other, "2024-12-05 08:31 JT");
    faster.line = "read crank drag 1.6 with G17";
    expect_refused(slow, "read crank drag 1.5 with G17", 1,
                   "line 2: done by JT 08:31: #8 at `crank drag`; nothing is stored, look at it, "
                   "then write the line anew");
    faster.line = "read pump tip clearance 0.10 with G08";
    expect_answer(slow, "read crank drag 1.5 with G17", "#13: crank drag 1.5 N·m: pass");
    ck_assert_uint_eq(session_entered(slow), 2); // with the one that tells of the gauge
    session_close(slow);
    session_close(faster.other);
    book_close(second_book);
    expect_whole();
}
END_TEST

START_TEST(news_reaches_the_other_build)
{
    Session *other = open_session("TL-0405");
    take(other, "2024-12-05 08:30 MO tighten drain plug all with W2");
    guint before = session_entries(other)->len;
    Session *session = open_session("TL-0412");
    take(session, "2025-03-11 09:40 JT shop calibration W2 2025-03-11 wrong \"91 for 100\"");
    ck_assert_uint_eq(session_entries(session)->len, 5); // what it is, and who says so
    session_close(session);
    expect_answer(other, "2025-03-11 10:00 MO note \"to be called back\"", "#11: taken");
    ck_assert_uint_eq(session_entries(other)->len, before + 3); // JT, the news, the note
    const Entry *news = session_entries(other)->pdata[before + 1];
    ck_assert_str_eq(news->kind->name, "news");
    session_close(other);
    expect_whole();
}
END_TEST

START_TEST(added_work_can_be_done_and_taken_back)
{
    Session *session = open_session("TL-0405");
    take(session, "2024-12-05 08:30 MO pick up Idler backlash");
    expect_refused(session, "read carrier flatness 0.04", 2,
                   "line 2, column 6: this is not the name of a check; write it in the plan's own "
                   "letters");
    expect_answer(session,
                  "add check \"carrier flatness\" \"fretting\" in Idler backlash: at most 0.05 mm",
                  "#7: taken");
    expect_answer(session, "read carrier flatness 0.09",
                  "#8: carrier flatness 0.09 mm: fail · high");
    session_close(session);
    session = open_session("TL-0405");
    take(session, "2024-12-05 09:30 MO strike #7 typo");
    expect_refused(session, "read carrier flatness 0.04", 2,
                   "line 2, column 6: this is not the name of a check; write it in the plan's own "
                   "letters");
    session_close(session);
}
END_TEST

START_TEST(a_build_that_came_in_from_elsewhere_goes_on)
{
    Session *session = open_session("TL-0405");
    take(session, "2024-12-05 08:30 MO pick up Crank");
    const Entry *build = shop_find(session_shop(session), "build", "TL-0405");
    g_autofree char *rows = book_export(book, entry_text(build, "id"), NULL);
    session_close(session);
    g_autofree char *there = g_build_filename(folder, "other.db", NULL);
    ck_assert(book_create(there, NULL));
    Book *home = book, *other = book_open(there, BOOK_WRITE, NULL);
    gint64 taken = 0;
    book = other;
    add_plan();
    ck_assert(book_import(book, rows, -1, LEDGER_BUILD, "TL-0405", &taken, NULL));
    session = open_session(NULL);
    take(session, "2025-01-08 08:00 QR person QR \"Quin Rolf\"");
    session_close(session);
    session = open_session("TL-0405");
    ck_assert_str_eq(session_step(session)->name, "Crank");
    take(session, "2025-01-08 08:30 QR read crank drag 1.5");
    session_close(session);
    expect_whole();
    book_close(other);
    book = home;
}
END_TEST

static void count_answer(guint line, const char *answer, gpointer user)
{
    ck_assert_uint_gt(line, 0);
    ck_assert_uint_gt(strlen(answer), 0);
    ++*(guint *)user;
}

// Lines that change no verdict are not judged anew: it must come to the same.
START_TEST(what_is_kept_judged_is_what_would_be_judged)
{
    char *text = NULL;
    gsize length = 0;
    guint answers = 0;
    Session *session = open_session("TL-0418");
    ck_assert(g_file_get_contents("demo-data/tl-0418.log", &text, &length, NULL));
    ck_assert(session_text(session, text, length, count_answer, &answers, NULL));
    ck_assert_uint_gt(answers, 20);
    const GPtrArray *entries = session_entries(session);
    Assessment *fresh =
        assess(session_plan(session), (const Entry *const *)entries->pdata, entries->len, 0, NULL);
    char *kept = assessment_keep(session_assessment(session)), *anew = assessment_keep(fresh);
    ck_assert_str_eq(kept, anew);
    assessment_free(fresh);
    g_free(kept);
    g_free(anew);
    g_free(text);
    session_close(session);
}
END_TEST

START_TEST(the_whole_demo_is_stored)
{
    static const char *const logs[] = {"tl-0397", "tl-0405", "tl-0412", "tl-0397-later", "tl-0418"};
    for (gsize i = 0; i < G_N_ELEMENTS(logs); i++) {
        g_autofree char *number = g_strdup_printf("TL-%.4s", logs[i] + 3);
        g_autofree char *file = g_strdup_printf("demo-data/%s.log", logs[i]);
        Session *session = open_session(number);
        feed(session, file);
        session_close(session);
    }
    expect_whole();
    Session *session = open_session("TL-0412");
    const GPtrArray *entries = session_entries(session);
    const Entry *seal = entries->pdata[entries->len - 1];
    ck_assert_str_eq(seal->kind->name, "seal");
    g_autoptr(GBytes) kept = book_kept(book, entry_text(seal, "assessment"), NULL);
    ck_assert_ptr_nonnull(kept);
    session_close(session);
}
END_TEST

static void add_case(Suite *suite, const char *name, void (*fixture)(void),
                     const TTest *const *tests, gsize count)
{
    TCase *tcase = tcase_create(name);
    tcase_set_timeout(tcase, 120);
    tcase_add_checked_fixture(tcase, fixture, clear);
    for (gsize i = 0; i < count; i++)
        tcase_add_test(tcase, tests[i]);
    suite_add_tcase(suite, tcase);
}

int main(void)
{
    Suite *suite = suite_create("session");
    const TTest *empty[] = {an_empty_store_gets_its_shop_with_the_first_line};
    const TTest *with_shop[] = {
        a_session_goes_on_where_the_last_one_stopped,
        each_line_is_answered_with_what_it_changed,
        a_refused_line_says_where_and_stops,
        what_is_too_long_for_a_ledger_line_is_refused,
        no_such_build,
        check_stores_nothing,
        two_write_to_one_build,
        somebody_was_faster,
        news_reaches_the_other_build,
        added_work_can_be_done_and_taken_back,
        a_build_that_came_in_from_elsewhere_goes_on,
        what_is_kept_judged_is_what_would_be_judged,
        the_whole_demo_is_stored,
    };
    add_case(suite, "empty store", make, empty, G_N_ELEMENTS(empty));
    add_case(suite, "demo shop", make_shop, with_shop, G_N_ELEMENTS(with_shop));
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
