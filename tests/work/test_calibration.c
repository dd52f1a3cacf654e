// What is printed of a calibration is typed back as a line, and is the same calibration.
#include "build.h"

#include <standbook/work/entry_words.h>

// What the newest calibration of the shop says: without its id, and of figures value and unit,
// which is printed also where it was not typed.
static json_t *newest_body(void)
{
    json_t *body = json_deep_copy(shop_entry(demo->shop, shop_last(demo->shop))->body);
    json_object_del(body, "id");
    json_object_del(json_object_get(body, "uncertainty"), "typed");
    json_object_del(json_object_get(body, "repeat"), "typed");
    return body;
}

// Types a form that was printed; the entry that comes of it must say the same.
static void expect_same(const char *printed, const json_t *body)
{
    g_autofree char *line = g_strconcat("shop ", printed, NULL);
    take(line);
    json_t *again = newest_body();
    char *got = json_dumps(again, JSON_SORT_KEYS), *wanted = json_dumps(body, JSON_SORT_KEYS);
    ck_assert_msg(json_equal(again, body), "`%s`: %s instead of %s", line, got, wanted);
    free(got);
    free(wanted);
    json_decref(again);
}

// As the shop's ledger has it, with the tools that it knows.
static char *shop_form(void)
{
    const Entry *tool = shop_find(demo->shop, "tool", "W2");
    g_autoptr(Taken) taken = taken_new(&tool, 1, NULL);
    return entry_words(taken, shop_entry(demo->shop, shop_last(demo->shop)));
}

// As a build that used the tool has it: `calibration of W2 …`.
static char *build_form(void)
{
    const GPtrArray *entries = line_taker_entries(build);
    g_autoptr(Taken) taken = taken_new((const Entry *const *)entries->pdata, entries->len, NULL);
    g_autofree char *words = entry_words(taken, last(0));
    ck_assert(g_str_has_prefix(words, "news calibration of W2 "));
    return g_strdup(words + strlen("news "));
}

static const char *const typed[] = {
    "good",
    "due 2026-03-11 good",
    "good due 2026-03-11 certificate KF-7",
    "certificate \"KF 118, page 2\" wrong \"reads \"\"low\"\", see #4 (twice)\"",
    "certificate KF-118 adjusted \"new spring\"",
    "due 2026-03-11 certificate KF-118 wrong \"low\" U 2 N·m repeats 1 gave 91 at 100, 41 at 45",
    "wrong \"low\" gave 67 at 74, 30 at 33.5 ft-lb U 2 ft-lb repeats 1 lbf ft due 2026-03-11",
    "gave 91 at 100 certificate KF-118 wrong \"low\" U 0.5",
    "U 2 good",
};

START_TEST(what_is_printed_is_typed_back)
{
    take("2025-03-12 09:00 MO tighten drain plug all with W2");
    for (gsize i = 0; i < G_N_ELEMENTS(typed); i++) {
        g_autofree char *line = g_strconcat("shop calibration W2 2025-03-11 ", typed[i], NULL);
        take(line);
        json_t *body = newest_body();
        g_autofree char *shop = shop_form(), *told = build_form();
        expect_same(shop, body);
        expect_same(told, body);
        json_decref(body);
    }
}
END_TEST

// As sheets had it that were printed before: how it was found first, the remark at the end.
START_TEST(what_was_printed_before_is_typed_back)
{
    take("2025-03-12 09:00 MO tighten drain plug all with W2");
    take("shop calibration W2 2025-03-11 due 2026-03-11 certificate KF-118 wrong \"low (twice)\" U "
         "2 "
         "N·m repeats 1 N·m gave 91 at 100");
    json_t *body = newest_body();
    expect_same("calibration W2 2025-03-11 wrong certificate KF-118 U 2 N·m repeats 1 N·m due "
                "2026-03-11 gave 91 N·m at 100 N·m (low (twice))",
                body);
    json_decref(body);
    take("shop calibration W2 2025-03-11 certificate KF-118 wrong \"low\"");
    body = newest_body();
    expect_same("calibration of W2 2025-03-11 wrong certificate KF-118 \"low\"", body);
    json_decref(body);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {what_is_printed_is_typed_back,
                                  what_was_printed_before_is_typed_back};
    return run_on_build("calibration", tests, G_N_ELEMENTS(tests), 0);
}
