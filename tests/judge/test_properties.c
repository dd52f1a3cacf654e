// What holds of every ledger, tried on random ones. A seed that fails is named, so that it can be
// tried again by itself.
#include "random.h"

#include <standbook/judge/keep.h>
#include <stdlib.h>

enum { LEDGERS = 150, ENTRIES = 60 };

// All verdicts in words, without the numbers of entries.
static char *verdicts(const Story *story, gsize count, gint64 upto)
{
    Assessment *assessment =
        assess(story->plan, (const Entry *const *)story->entries->pdata, count, upto, NULL);
    GString *all = g_string_new(NULL);
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        char *name = requirement_name(made);
        char *value = made->value ? number_text(made->value) : NULL;
        g_string_append_printf(all, "%s: %s %s %x %s%s%s%s\n", name, verdict_words(made->verdict),
                               reason_words(made->reason), made->doubts, value ? value : "",
                               made->withdrawn ? " withdrawn" : "", made->upheld ? " upheld" : "",
                               made->conceded ? " conceded" : "");
        g_free(value);
        g_free(name);
    }
    assessment_free(assessment);
    return g_string_free(all, FALSE);
}

static void expect_same(const char *one, const char *other, guint seed, const char *what)
{
    char **ones = g_strsplit(one, "\n", -1), **others = g_strsplit(other, "\n", -1);
    for (guint i = 0; ones[i] && others[i]; i++)
        ck_assert_msg(strcmp(ones[i], others[i]) == 0, "ledger %u, %s: %s / %s", seed, what,
                      ones[i], others[i]);
    g_strfreev(ones);
    g_strfreev(others);
}

static void random_story(Story *story, const char *plan, guint seed, GRand *random)
{
    g_rand_set_seed(random, seed);
    begin(story, plan);
    for (guint i = 0; i < ENTRIES; i++) {
        if (i == ENTRIES / 2 && seed % 2)
            enter_news(story);
        enter(story, random, "ab");
        if (g_rand_int_range(random, 0, 15) == 0) {
            char *strike =
                g_strdup_printf("{'entry':%d,'cause':'typo'}",
                                g_rand_int_range(random, 9, (gint)story->entries->len + 1));
            story_enter(story, "strike", strike);
            g_free(strike);
        }
    }
}

static void renumber(Story *story)
{
    for (guint i = 0; i < story->entries->len; i++)
        ((Entry *)story->entries->pdata[i])->seq = i + 1;
}

START_TEST(every_requirement_has_one_verdict)
{
    char *plan = plan_of_halves();
    GRand *random = g_rand_new_with_seed(1);
    guint seen = 0;
    for (guint seed = 0; seed < LEDGERS; seed++) {
        Story story;
        random_story(&story, plan, seed, random);
        Assessment *assessment = story_assess(&story);
        guint sum = 0, last = 0;
        for (guint i = 0; i < VERDICTS; i++) {
            sum += assessment->counts[i];
            seen |= assessment->counts[i] ? 1U << i : 0;
        }
        ck_assert_uint_eq(assessment->planned + assessment->added - assessment->withdrawn, sum);
        const GateCount *gate =
            assessment->gates->pdata[assessment->gates->len - 1]; // asks for everything
        for (guint i = 0; i < VERDICTS; i++)
            last += gate->counts[i];
        ck_assert_uint_eq(last, sum);
        assessment_free(assessment);
        story_end(&story);
    }
    ck_assert_uint_eq(seen, (1U << VERDICTS) - 1); // the ledgers reach every verdict
    g_rand_free(random);
    g_free(plan);
}
END_TEST

START_TEST(as_of_an_entry_is_the_ledger_up_to_it)
{
    char *plan = plan_of_halves();
    GRand *random = g_rand_new_with_seed(2);
    for (guint seed = 0; seed < LEDGERS; seed++) {
        Story story;
        random_story(&story, plan, seed, random);
        guint upto = (guint)g_rand_int_range(random, 9, (gint)story.entries->len);
        char *then = verdicts(&story, upto, 0);
        char *now = verdicts(&story, story.entries->len, upto);
        expect_same(then, now, seed, "as of");
        g_free(then);
        g_free(now);
        story_end(&story);
    }
    g_rand_free(random);
    g_free(plan);
}
END_TEST

// A struck move is the one kind that leaves a trace by itself (record.md §5, Setting).
START_TEST(a_struck_entry_never_was)
{
    char *plan = plan_of_halves();
    GRand *random = g_rand_new_with_seed(3);
    for (guint seed = 0; seed < LEDGERS; seed++) {
        Story story;
        g_rand_set_seed(random, seed);
        begin(&story, plan);
        for (guint i = 0; i < ENTRIES; i++)
            enter(&story, random, "ab");
        guint struck = (guint)g_rand_int_range(random, 8, (gint)story.entries->len);
        while (strcmp(((Entry *)story.entries->pdata[struck])->kind->name, "move") == 0)
            struck = (guint)g_rand_int_range(random, 8, (gint)story.entries->len);
        char *strike = g_strdup_printf("{'entry':%u,'cause':'typo'}", struck + 1);
        story_enter(&story, "strike", strike);
        char *with = verdicts(&story, story.entries->len, 0);
        g_ptr_array_remove_index(story.entries, story.entries->len - 1);
        g_ptr_array_remove_index(story.entries, struck);
        renumber(&story);
        char *without = verdicts(&story, story.entries->len, 0);
        expect_same(with, without, seed, "struck");
        g_free(strike);
        g_free(with);
        g_free(without);
        story_end(&story);
    }
    g_rand_free(random);
    g_free(plan);
}
END_TEST

// Windows and waits go by times: those stay with the entries, and the clock on the wall stands.
static void fix_times(Story *story)
{
    for (guint i = 0; i < story->entries->len; i++) {
        Entry *entry = story->entries->pdata[i];
        g_free(entry->done);
        entry->done = entry->at;
        entry->at = moment_text(1000000000 + 60 * 1000);
    }
}

START_TEST(halves_that_share_nothing_do_not_meet)
{
    char *plan = plan_of_halves();
    GRand *random = g_rand_new_with_seed(4);
    for (guint seed = 0; seed < LEDGERS; seed++) {
        Story story;
        g_rand_set_seed(random, seed);
        begin(&story, plan);
        for (guint i = 0; i < ENTRIES; i++)
            enter(&story, random, i % 2 ? "a" : "b");
        fix_times(&story);
        char *mixed = verdicts(&story, story.entries->len, 0);
        for (guint i = 8, j = 8; j < story.entries->len; j += 2, i++) { // all of b, then all of a
            gpointer entry = story.entries->pdata[j];
            memmove(&story.entries->pdata[i + 1], &story.entries->pdata[i],
                    (j - i) * sizeof(gpointer));
            story.entries->pdata[i] = entry;
        }
        renumber(&story);
        char *apart = verdicts(&story, story.entries->len, 0);
        expect_same(mixed, apart, seed, "order");
        g_free(mixed);
        g_free(apart);
        story_end(&story);
    }
    g_rand_free(random);
    g_free(plan);
}
END_TEST

START_TEST(placed_behind_an_entry_is_entered_there)
{
    char *plan = plan_of_halves();
    GRand *random = g_rand_new_with_seed(5);
    for (guint seed = 0; seed < LEDGERS; seed++) {
        Story story;
        g_rand_set_seed(random, seed);
        begin(&story, plan);
        for (guint i = 0; i < ENTRIES; i++)
            enter(&story, random, "ab");
        fix_times(&story);
        guint behind = (guint)g_rand_int_range(random, 8, (gint)story.entries->len - 1);
        Entry *late = story.entries->pdata[story.entries->len - 1];
        late->after = behind;
        char *placed = verdicts(&story, story.entries->len, 0);
        late->after = 0;
        memmove(&story.entries->pdata[behind + 1], &story.entries->pdata[behind],
                (story.entries->len - 1 - behind) * sizeof(gpointer));
        story.entries->pdata[behind] = late;
        renumber(&story);
        char *entered = verdicts(&story, story.entries->len, 0);
        expect_same(placed, entered, seed, "after");
        g_free(placed);
        g_free(entered);
        story_end(&story);
    }
    g_rand_free(random);
    g_free(plan);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("properties");
    TCase *tcase = tcase_create("properties");
    tcase_set_timeout(tcase, 120);
    tcase_add_test(tcase, every_requirement_has_one_verdict);
    tcase_add_test(tcase, as_of_an_entry_is_the_ledger_up_to_it);
    tcase_add_test(tcase, a_struck_entry_never_was);
    tcase_add_test(tcase, halves_that_share_nothing_do_not_meet);
    tcase_add_test(tcase, placed_behind_an_entry_is_entered_there);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
