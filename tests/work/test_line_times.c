// When a line says that something was done.
#include "build.h"

#include <standbook/work/entry_words.h>

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
    take("2025-03-13 11:36 MO note one"); // typed at 2027-01-01 00:00
    ck_assert_str_eq(last(0)->at, "2027-01-01T00:00:00");
    ck_assert_str_eq(last(0)->done, "2025-03-13T11:36:00");
    LineTaker *other = demo_build(demo, "TL-0418");
    line_taker_trust_times(other, FALSE);
    GError *error = NULL;
    LineTaken *taken = line_take(other, "MO note now", TYPED + 60, &error);
    Entry *entry = taken->entries->pdata[taken->entries->len - 1];
    ck_assert_str_eq(entry->at, "2027-01-01T00:01:00");
    ck_assert_ptr_null(entry->done);
    line_keep(other, taken);
    taken = line_take(other, "09:15 note \"the same day\"", TYPED + 10 * 60 * 60, &error);
    entry = taken->entries->pdata[taken->entries->len - 1];
    ck_assert_str_eq(entry->done, "2027-01-01T09:15:00");
    line_taken_free(taken);
}
END_TEST

// Takes a line typed at a moment into a build of its own; NULL, or the refusal.
static char *typed_at(LineTaker *taker, Moment at, const char *line)
{
    GError *error = NULL;
    LineTaken *taken = line_take(taker, line, at, &error);
    if (taken)
        line_keep(taker, taken);
    char *refusal = taken ? NULL : g_strdup(error->message);
    g_clear_error(&error);
    return refusal;
}

START_TEST(nobody_did_what_is_still_to_come)
{
    enum { NOW = TYPED + 12 * 60 * 60 + 24 * 60 }; // 12:24
    static const char *const refused[][2] = {
        {"12:26 MO note one",
         "column 1: 12:26 today is still to come, it is 12:24 now; write when it was done, with its "
         "date if that was yesterday: 2026-12-31 12:26"},
        {"2027-11-01 10:00 MO note one",
         "column 1: 2027-11-01 10:00 is still to come, it is 2027-01-01 12:24 now; write when it "
         "was done, or set this computer's clock"},
    };
    for (gsize i = 0; i < 2 * G_N_ELEMENTS(refused); i++) {
        LineTaker *other = demo_build(demo, "TL-0418");
        line_taker_trust_times(other, i % 2);
        g_autofree char *refusal = typed_at(other, NOW, refused[i / 2][0]);
        ck_assert_str_eq(refusal, refused[i / 2][1]);
        ck_assert_ptr_null(typed_at(other, NOW, "12:25 MO note \"by a watch that is fast\""));
    }
}
END_TEST

START_TEST(a_clock_that_is_behind_stands_where_it_was)
{
    LineTaker *other = demo_build(demo, "TL-0418");
    line_taker_trust_times(other, FALSE);
    ck_assert_ptr_null(typed_at(other, TYPED, "MO note one"));
    ck_assert_ptr_null(typed_at(other, 60, "2026-12-31 10:00 MO note two"));
    g_autofree char *refusal = typed_at(other, 60, "2027-01-01 00:02 MO note three");
    ck_assert_ptr_nonnull(refusal);
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

int main(void)
{
    const TTest *const tests[] = {
        date_time_and_initials_carry_forward,
        typed_at_and_done_stand_apart,
        nobody_did_what_is_still_to_come,
        a_clock_that_is_behind_stands_where_it_was,
        a_card_does_not_set_the_clock_back,
    };
    return run_on_build("line, times", tests, G_N_ELEMENTS(tests), 0);
}
