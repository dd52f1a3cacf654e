// The builds of the demo judged entry after entry are what they are when judged whole.
#include "../judge/same.h"
#include "demo.h"

#include <standbook/judge/judgement.h>
#include <standbook/work/grown.h>

// Every so many entries the whole is judged too; all of them where it is asked for.
enum { STRIDE = 29 };

static guint stride(void)
{
    return g_getenv("STANDBOOK_LONG") ? 1 : STRIDE;
}

static Assessment *assess_first(const Plan *plan, const GPtrArray *entries, guint count)
{
    return assess(plan, (const Entry *const *)entries->pdata, count, 0, NULL);
}

// Supposes the next entry, takes it back, adds it: each time it is what the whole is.
static void expect_next(Judgement *judgement, const Plan *plan, const GPtrArray *entries,
                        guint next, const char *build)
{
    const Entry *const *entry = (const Entry *const *)&entries->pdata[next];
    g_autofree char *where =
        g_strdup_printf("%s, entry %u, a %s", build, next + 1, entry[0]->kind->name);
    Assessment *before = assess_first(plan, entries, next);
    Assessment *after = assess_first(plan, entries, next + 1);
    expect_same_assessment(judgement_suppose(judgement, entry, 1), after, where);
    expect_same_assessment(judgement_now(judgement), before, where);
    judgement_add(judgement, entry[0]);
    expect_same_assessment(judgement_now(judgement), after, where);
    assessment_free(before);
    assessment_free(after);
}

static void follow(const Plan *kept, const GPtrArray *entries, const char *build)
{
    Plan *grown = plan_grown(kept, (const Entry *const *)entries->pdata, entries->len);
    const Plan *plan = grown ? grown : kept;
    Judgement *judgement = judgement_new(plan);
    for (guint i = 0; i < entries->len; i++)
        if (i % stride() == 0) {
            expect_next(judgement, plan, entries, i, build);
        } else {
            judgement_add(judgement, entries->pdata[i]);
            judgement_now(judgement);
        }
    judgement_free(judgement);
    plan_free(grown);
}

static LineTaker *taker_of(Demo *demo, const char *number)
{
    const Entry *build = shop_find(demo->shop, "build", number);
    ck_assert_ptr_nonnull(build);
    LineTaker *taker = g_hash_table_lookup(demo->builds, entry_text(build, "id"));
    return taker ? taker : demo_build(demo, number);
}

// All logs are fed in first, so that what one build learns of another's tools is among its entries.
START_TEST(the_demo_judged_entry_after_entry_is_what_the_whole_is)
{
    static const struct {
        const char *number, *file;
    } logs[] = {{"TL-0397", "demo-data/tl-0397.log"},
                {"TL-0405", "demo-data/tl-0405.log"},
                {"TL-0412", "demo-data/tl-0412.log"},
                {"TL-0397", "demo-data/tl-0397-later.log"},
                {"TL-0418", "demo-data/tl-0418.log"}};
    static const char *const builds[] = {"TL-0397", "TL-0405", "TL-0412", "TL-0418"};
    Demo *demo = demo_new();
    for (gsize i = 0; i < G_N_ELEMENTS(logs); i++)
        demo_feed(demo, taker_of(demo, logs[i].number), logs[i].file);
    for (gsize i = 0; i < G_N_ELEMENTS(builds); i++)
        follow(demo->plan, line_taker_entries(taker_of(demo, builds[i])), builds[i]);
    demo_free(demo);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("judgement");
    TCase *tcase = tcase_create("judgement");
    tcase_set_timeout(tcase, 3600);
    tcase_add_test(tcase, the_demo_judged_entry_after_entry_is_what_the_whole_is);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
