// One build of the demo shop, with nothing in it yet, and what its lines came to.
#pragma once
#include "demo.h"

static Demo *demo;
static LineTaker *build; // TL-0405, with nothing in it yet

static inline void make(void)
{
    demo = demo_new();
    build = demo_build(demo, "TL-0405");
}

static inline void clear(void)
{
    demo_free(demo);
}

static inline void take(const char *line)
{
    char *refusal = demo_try(demo, build, line);
    ck_assert_msg(!refusal, "%s: %s", line, refusal);
}

static inline const Entry *last(guint back)
{
    const GPtrArray *entries = line_taker_entries(build);
    ck_assert_uint_lt(back, entries->len);
    return entries->pdata[entries->len - 1 - back];
}

static inline void expect_kind(const Entry *entry, const char *kind)
{
    ck_assert_str_eq(entry->kind->name, kind);
}

static inline void expect_text(const Entry *entry, const char *field, const char *text)
{
    if (!text)
        ck_assert_ptr_null(entry_text(entry, field));
    else
        ck_assert_str_eq(entry_text(entry, field), text);
}

static inline void expect_list(const Entry *entry, const char *field, const char *items)
{
    g_autoptr(GString) text = g_string_new(NULL);
    for (gsize i = 0; i < entry_list_length(entry, field); i++)
        g_string_append_printf(text, "%s%s", i ? " | " : "", entry_list_item(entry, field, i));
    ck_assert_str_eq(text->str, items);
}

static inline guint count_of(const char *kind)
{
    const GPtrArray *entries = line_taker_entries(build);
    guint count = 0;
    for (guint i = 0; i < entries->len; i++)
        count += strcmp(((Entry *)entries->pdata[i])->kind->name, kind) == 0;
    return count;
}

// The remarks of a line, which is taken, each ended by a full stop; empty if there are none.
static inline char *remarks_of(const char *line)
{
    GError *error = NULL;
    demo->judged = build;
    LineTaken *taken = line_take(build, line, TYPED, &error);
    ck_assert_msg(taken != NULL, "%s: %s", line, error ? error->message : "");
    GString *remarks = g_string_new(NULL);
    for (guint i = 0; i < taken->remarks->len; i++)
        g_string_append_printf(remarks, "%s%s.", i ? " " : "",
                               (const char *)taken->remarks->pdata[i]);
    demo_keep(demo, build, taken);
    return g_string_free(remarks, FALSE);
}

static inline void expect_remark(const char *line, const char *expected)
{
    char *remarks = remarks_of(line);
    ck_assert_msg(strcmp(remarks, expected) == 0, "%s\n  says     %s\n  expected %s", line, remarks,
                  expected);
    g_free(remarks);
}

static inline void expect_refusal(const char *line, const char *expected)
{
    char *refusal = demo_try(demo, build, line);
    ck_assert_msg(g_strcmp0(refusal, expected) == 0, "%s\n  gives    %s\n  expected %s", line,
                  refusal ? refusal : "(taken)", expected);
    g_free(refusal);
}

// Runs tests as one suite, each on a fresh build; `rows` counts those of a table that the last runs
// through, 0 for none.
static inline int run_on_build(const char *name, const TTest *const *tests, gsize count, guint rows)
{
    Suite *suite = suite_create(name);
    TCase *tcase = tcase_create(name);
    tcase_add_checked_fixture(tcase, make, clear);
    for (gsize i = 0; i < count; i++)
        if (rows && i + 1 == count)
            tcase_add_loop_test(tcase, tests[i], 0, (int)rows);
        else
            tcase_add_test(tcase, tests[i]);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
