#include <check.h>
#include <standbook/record/live.h>
#include <standbook/record/order.h>
#include <stdlib.h>

enum { MOST = 60, LEDGERS = 400 };

typedef struct {
    Entry *entries[MOST];
    gsize count;
} Ledger;

static Entry *append(Ledger *ledger, const char *kind, gint64 after)
{
    Entry *entry = entry_new(kind_newest(kind));
    entry->after = after;
    entry->seq = (gint64)ledger->count + 1;
    ledger->entries[ledger->count++] = entry;
    return entry;
}

static void append_strike(Ledger *ledger, gint64 seq)
{
    Entry *strike = append(ledger, "strike", 0);
    entry_set_number(strike, "entry", seq);
    entry_set_text(strike, "cause", "typo");
}

static void ledger_clear(Ledger *ledger)
{
    while (ledger->count)
        entry_free(ledger->entries[--ledger->count]);
}

static const Entry *const *entries_of(const Ledger *ledger)
{
    return (const Entry *const *)ledger->entries;
}

static void expect_order(const Ledger *ledger, const gint64 *expected)
{
    gint64 ranked[MOST];
    ck_assert(ledger_in_turn(entries_of(ledger), ledger->count, NULL));
    rank_order(entries_of(ledger), ledger->count, ranked);
    for (gsize i = 0; i < ledger->count; i++)
        ck_assert_int_eq(ranked[i], expected[i]);
}

START_TEST(a_correction_stands_where_the_struck_entry_stood)
{
    Ledger ledger = {0};
    for (int i = 0; i < 4; i++)
        append(&ledger, "note", 0);
    append_strike(&ledger, 2);
    append(&ledger, "note", 2); // 6: instead of 2
    append(&ledger, "note", 2); // 7: behind 6
    append(&ledger, "note", 6); // 8: behind 6, before 7
    append(&ledger, "note", 0);
    expect_order(&ledger, (const gint64[]){1, 2, 6, 8, 7, 3, 4, 5, 9});
    ledger_clear(&ledger);
}
END_TEST

START_TEST(a_ledger_out_of_turn_is_refused)
{
    Ledger ledger = {0};
    append(&ledger, "note", 0);
    append(&ledger, "note", 2); // behind itself
    ck_assert(!ledger_in_turn(entries_of(&ledger), 2, NULL));
    ledger.entries[1]->after = 1;
    ck_assert(ledger_in_turn(entries_of(&ledger), 2, NULL));
    ledger.entries[1]->seq = 3;
    ck_assert(!ledger_in_turn(entries_of(&ledger), 2, NULL));
    ledger_clear(&ledger);
}
END_TEST

START_TEST(a_strike_can_be_struck)
{
    Ledger ledger = {0};
    gboolean live[MOST];
    append(&ledger, "note", 0);
    append_strike(&ledger, 1); // 2
    append_strike(&ledger, 2); // 3: 1 counts again
    live_entries(entries_of(&ledger), 3, live);
    ck_assert(live[0] && !live[1] && live[2]);
    ck_assert_int_eq(live_strike_of(entries_of(&ledger), 3, live, 1), 0);
    append_strike(&ledger, 3); // 4: 2 counts again, 1 does not
    live_entries(entries_of(&ledger), 4, live);
    ck_assert(!live[0] && live[1] && !live[2] && live[3]);
    ck_assert_int_eq(live_strike_of(entries_of(&ledger), 4, live, 1), 2);
    append_strike(&ledger, 1); // 5: struck twice over
    append_strike(&ledger, 2); // 6: the older strike is gone, the newer holds
    live_entries(entries_of(&ledger), 6, live);
    ck_assert(!live[0] && !live[1]);
    ck_assert_int_eq(live_strike_of(entries_of(&ledger), 6, live, 1), 5);
    const char *causes[MOST];
    live_causes(entries_of(&ledger), 6, causes);
    ck_assert(causes[0] && causes[1] && causes[2] && !causes[3] && !causes[4]);
    ck_assert_str_eq(causes[0], "typo");
    ledger_clear(&ledger);
}
END_TEST

// The definitions word for word, to compare with: slow and recursive.

static gboolean naive_live(const Ledger *ledger, gint64 seq)
{
    for (gsize i = (gsize)seq; i < ledger->count; i++)
        if (entry_number(ledger->entries[i], "entry") == seq &&
            naive_live(ledger, ledger->entries[i]->seq))
            return FALSE;
    return TRUE;
}

static gsize naive_rank(const Ledger *ledger, gint64 seq, gint64 *rank)
{
    gint64 after = ledger->entries[seq - 1]->after;
    gsize length = after ? naive_rank(ledger, after, rank) : 0;
    rank[length] = seq;
    return length + 1;
}

// Whether one stands before the other: their ranks compared as words in a dictionary are.
static gboolean naive_before(const Ledger *ledger, gint64 one, gint64 other)
{
    gint64 a[MOST], b[MOST];
    gsize la = naive_rank(ledger, one, a), lb = naive_rank(ledger, other, b);
    for (gsize i = 0; i < MIN(la, lb); i++)
        if (a[i] != b[i])
            return a[i] < b[i];
    return la < lb;
}

static void fill(Ledger *ledger, GRand *dice)
{
    gsize count = (gsize)g_rand_int_range(dice, 1, MOST + 1);
    int share = g_rand_int_range(dice, 0, 100); // of entries that strike, and that are placed
    while (ledger->count < count) {
        gint64 earlier =
            (gint64)ledger->count ? g_rand_int_range(dice, 1, (gint32)ledger->count + 1) : 0;
        if (earlier && g_rand_int_range(dice, 0, 100) < share)
            append_strike(ledger, earlier);
        else
            append(ledger, "note", g_rand_int_range(dice, 0, 100) < share ? earlier : 0);
    }
}

START_TEST(the_fast_way_is_the_definition)
{
    GRand *dice = g_rand_new_with_seed(4201);
    for (int i = 0; i < LEDGERS; i++) {
        Ledger ledger = {0};
        gint64 ranked[MOST];
        gboolean live[MOST];
        fill(&ledger, dice);
        rank_order(entries_of(&ledger), ledger.count, ranked);
        for (gsize k = 1; k < ledger.count; k++)
            ck_assert(naive_before(&ledger, ranked[k - 1], ranked[k]));
        live_entries(entries_of(&ledger), ledger.count, live);
        for (gsize k = 0; k < ledger.count; k++)
            ck_assert_int_eq(live[k], naive_live(&ledger, (gint64)k + 1));
        ledger_clear(&ledger);
    }
    g_rand_free(dice);
}
END_TEST

// A later entry never changes the order among the earlier ones.
START_TEST(earlier_days_keep_their_order)
{
    GRand *dice = g_rand_new_with_seed(4202);
    for (int i = 0; i < LEDGERS; i++) {
        Ledger ledger = {0};
        gint64 whole[MOST], part[MOST];
        fill(&ledger, dice);
        gsize days = (gsize)g_rand_int_range(dice, 0, (gint32)ledger.count + 1), k = 0;
        rank_order(entries_of(&ledger), ledger.count, whole);
        rank_order(entries_of(&ledger), days, part);
        for (gsize n = 0; n < ledger.count; n++)
            if (whole[n] <= (gint64)days)
                ck_assert_int_eq(whole[n], part[k++]);
        ck_assert_uint_eq(k, days);
        ledger_clear(&ledger);
    }
    g_rand_free(dice);
}
END_TEST

// A chain of a hundred thousand, which recursion would not survive.
START_TEST(a_long_chain_of_after)
{
    enum { LONG = 100000 };
    Entry *chain = g_new0(Entry, LONG);
    const Entry **entries = g_new0(const Entry *, LONG);
    gint64 *ranked = g_new0(gint64, LONG);
    for (gint64 i = 0; i < LONG; i++) {
        chain[i].seq = i + 1;
        chain[i].after = i;
        entries[i] = &chain[i];
    }
    rank_order(entries, LONG, ranked);
    ck_assert_int_eq(ranked[0], 1);
    ck_assert_int_eq(ranked[LONG - 1], LONG);
    g_free(ranked);
    g_free(entries);
    g_free(chain);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("order");
    TCase *tcase = tcase_create("order");
    tcase_add_test(tcase, a_correction_stands_where_the_struck_entry_stood);
    tcase_add_test(tcase, a_ledger_out_of_turn_is_refused);
    tcase_add_test(tcase, a_strike_can_be_struck);
    tcase_add_test(tcase, the_fast_way_is_the_definition);
    tcase_add_test(tcase, earlier_days_keep_their_order);
    tcase_add_test(tcase, a_long_chain_of_after);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
