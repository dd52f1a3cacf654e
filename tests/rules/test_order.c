#include <check.h>
#include <standbook/rules/order.h>
#include <stdlib.h>
#include <string.h>

enum { MOST = 7 };

// Bolts are one letter each; the expected text names those in doubt, in the order ticked.
static void expect_doubt(const char *asked, const char *ticked, const char *expected)
{
    guint asked_bolts[16] = {0}, ticked_bolts[16] = {0};
    gboolean in_doubt[16] = {FALSE};
    gsize asked_count = strlen(asked), ticked_count = strlen(ticked);
    for (gsize i = 0; i < asked_count; i++)
        asked_bolts[i] = (guchar)asked[i];
    for (gsize i = 0; i < ticked_count; i++)
        ticked_bolts[i] = (guchar)ticked[i];
    order_mark(asked_bolts, asked_count, ticked_bolts, ticked_count, in_doubt);
    g_autoptr(GString) found = g_string_new(NULL);
    for (gsize i = 0; i < ticked_count; i++) {
        if (in_doubt[i])
            g_string_append_c(found, ticked[i]);
    }
    ck_assert_msg(strcmp(found->str, expected) == 0, "asked %s, ticked %s: in doubt %s, not %s",
                  asked, ticked, found->str, expected);
}

// Main caps from the middle, 3-4-1-2-5-6. Common practice, no published source.
START_TEST(exactly_the_bolt_out_of_turn)
{
    expect_doubt("341256", "341256", "");
    expect_doubt("341256", "", "");
    expect_doubt("341256", "341", "");     // under way
    expect_doubt("341256", "31256", "");   // bolt 4 skipped and still open: that is open, not order
    expect_doubt("341256", "312564", "4"); // skipped, then done last
    expect_doubt("341256", "634125", "6"); // early
    expect_doubt("341256", "314256", "1"); // neighbours swapped: the early one
    expect_doubt("341256", "541236", "53");    // far ones swapped: both
    expect_doubt("341256", "652143", "65214"); // all backwards: only the one that came first holds
    expect_doubt("341256", "342165", "26");    // two swaps, one bolt of each
    expect_doubt("1234", "12x34", "x");        // a bolt nobody asked for
    expect_doubt("", "x", "x");
}
END_TEST

// The oracle tries every set of ticks, and keeps the largest that is in order, of equals the one
// with the earliest turns.
static gboolean keeps_order(const guint *ticked, gsize count, guint set, guint *run, gsize *length)
{
    *length = 0;
    for (gsize i = 0; i < count; i++) {
        if (!(set >> i & 1))
            continue;
        if (*length > 0 && run[*length - 1] >= ticked[i])
            return FALSE;
        run[(*length)++] = ticked[i];
    }
    return TRUE;
}

static gboolean comes_first(const guint *run, const guint *other, gsize length)
{
    for (gsize i = 0; i < length; i++) {
        if (run[i] != other[i])
            return run[i] < other[i];
    }
    return FALSE;
}

static guint oracle(const guint *ticked, gsize count)
{
    guint best_set = 0, best[MOST], run[MOST];
    gsize best_length = 0, length = 0;
    for (guint set = 0; set < 1u << count; set++) {
        if (!keeps_order(ticked, count, set, run, &length) || length < best_length)
            continue;
        if (length > best_length || comes_first(run, best, length)) {
            best_set = set;
            best_length = length;
            memcpy(best, run, sizeof run);
        }
    }
    return best_set;
}

typedef struct {
    guint asked[MOST], ticked[MOST];
    gsize bolts, cases;
} Trial;

static void compare_with_oracle(Trial *trial, gsize ticks)
{
    gboolean in_doubt[MOST] = {FALSE};
    order_mark(trial->asked, trial->bolts, trial->ticked, ticks, in_doubt);
    guint kept = oracle(trial->ticked, ticks);
    for (gsize i = 0; i < ticks; i++)
        ck_assert_int_eq(in_doubt[i], !(kept >> i & 1));
    trial->cases++;
}

// Every sequence of ticks of every number of bolts, whether all are ticked or not.
static void try_all(Trial *trial, gsize ticks, guint used)
{
    compare_with_oracle(trial, ticks);
    for (guint bolt = 0; bolt < trial->bolts; bolt++) {
        if (used >> bolt & 1)
            continue;
        trial->ticked[ticks] = bolt;
        try_all(trial, ticks + 1, used | 1u << bolt);
    }
}

START_TEST(as_trying_every_run_says)
{
    Trial trial = {.asked = {0, 1, 2, 3, 4, 5, 6}};
    for (trial.bolts = 0; trial.bolts <= MOST; trial.bolts++)
        try_all(&trial, 0, 0);
    // Sum of n!/(n-k)! over k <= n <= 7.
    ck_assert_uint_eq(trial.cases, 1 + 2 + 5 + 16 + 65 + 326 + 1957 + 13700);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("order");
    TCase *tcase = tcase_create("order");
    tcase_add_test(tcase, exactly_the_bolt_out_of_turn);
    tcase_add_test(tcase, as_trying_every_run_says);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
