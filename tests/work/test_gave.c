#include <check.h>
#include <stdlib.h>
#include <string.h>

#include <standbook/work/gave.h>

static char *gave_of(const char *rows, const char *unit_word, const char *set)
{
    g_autofree char *text = g_strdup_printf("{\"gave\":%s}", rows);
    json_t *body = json_loads(text, 0, NULL);
    ck_assert_ptr_nonnull(body);
    g_autoptr(Unit) unit = unit_parse(unit_word, NULL);
    g_autoptr(Number) typed = number_from_text(set, NULL);
    g_autoptr(Number) at = unit_to_base(unit, typed);
    g_autoptr(Number) gave = gave_at(body, unit_kind(unit), at);
    g_autoptr(Number) shown = gave ? unit_from_base(unit, gave) : NULL;
    json_decref(body);
    return shown ? number_text(shown) : g_strdup("-");
}

START_TEST(what_is_written_is_read)
{
    static const char *const rows[][4] = {
        {"[\"91 N·m at 100 N·m\"]", "N·m", "50", "45.5"},
        // 0.5 lbf·ft at 1 lbf·ft: half, in whatever unit
        {"[\"1/2 lbf·ft at 1 lbf·ft\"]", "N·m", "50", "25"},
        {"[\"91 N·m at 100 N·m\",\"40.5 N·m at 45 N·m\"]", "N·m", "45", "40.5"},
        // What says nothing of it, or is no such row, is passed over.
        {"[\"91 N·m at 100 N·m\"]", "mm", "50", "-"},
        {"[\"91 at 100\",\"0 N·m at 5 N·m\",\"x\",\"9 N·m\",\" at \",\"3 N·m at 4 mm\"]", "N·m",
         "50", "-"},
        {"[7,null,\"9 N·m at 10 N·m\"]", "N·m", "50", "45"},
        {"[]", "N·m", "50", "-"},
        {"3", "N·m", "50", "-"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autofree char *gave = gave_of(rows[i][0], rows[i][1], rows[i][2]);
        ck_assert_msg(strcmp(gave, rows[i][3]) == 0, "%s gives %s", rows[i][0], gave);
    }
    g_autoptr(Number) set = number_from_integer(50);
    ck_assert_ptr_null(gave_at(NULL, (Kind){0}, set));
}
END_TEST

// The ledger of a build: what it took and was told of calibrations, and a tick on a day behind it.
typedef struct {
    const char *kind, *tool, *date, *found;
} Told;

static Entry *entry_of(const Told *told, gint64 seq)
{
    Entry *entry = entry_new(kind_newest(told->kind));
    entry->seq = seq;
    entry->at = g_strconcat(told->date, "T08:00:00", NULL);
    if (strcmp(told->kind, "tick") == 0)
        return entry;
    json_object_set_new(entry->body, "what", json_string("calibration"));
    json_object_set_new(entry->body, "body",
                        json_pack("{s:s, s:s, s:s, s:[s]}", "tool", told->tool, "date", told->date,
                                  "found", told->found, "gave", "9 N·m at 10 N·m"));
    return entry;
}

// The day of the calibration that tells of a use on that day.
static const char *told_by(const char *used, gboolean with_struck)
{
    static const Told ledger[] = {
        {"take", "w", "2025-01-10", "good"},     {"news", "other", "2025-02-01", "wrong"},
        {"news", "w", "2025-03-10", "wrong"},    {"news", "w", "2025-02-20", "good"},
        {"news", "w", "2025-02-25", "wrong"}, // struck
        {"news", "w", "2025-04-01", "adjusted"},
    };
    enum { COUNT = G_N_ELEMENTS(ledger) };
    Entry *entries[COUNT + 1];
    gboolean live[COUNT + 1] = {TRUE, TRUE, TRUE, TRUE, with_struck, TRUE, TRUE};
    for (guint i = 0; i < COUNT; i++)
        entries[i] = entry_of(&ledger[i], i + 1);
    entries[COUNT] = entry_of(&(Told){.kind = "tick", .date = used}, COUNT + 1);
    ck_assert(gave_tells((const Entry *const *)entries, COUNT, "w"));
    ck_assert(!gave_tells((const Entry *const *)entries, 2, "w"));
    g_autoptr(GArray) all = gave_calibrations((const Entry *const *)entries, COUNT, live, "w");
    const json_t *body = gave_wrong(all, entries[COUNT]);
    const char *found = "-";
    for (guint i = 0; i < COUNT; i++)
        if (body && body == json_object_get(entries[i]->body, "body"))
            found = ledger[i].date;
    for (guint i = 0; i <= COUNT; i++)
        entry_free(entries[i]);
    return found;
}

START_TEST(the_next_calibration_tells_and_the_last_one_if_it_was_wrong)
{
    ck_assert_str_eq(told_by("2025-01-20", FALSE), "-"); // found good behind it
    ck_assert_str_eq(told_by("2025-03-01", FALSE), "2025-03-10");
    ck_assert_str_eq(told_by("2025-03-20", FALSE), "2025-03-10"); // its fault was known
    ck_assert_str_eq(told_by("2025-04-02", FALSE), "-");
    ck_assert_str_eq(told_by("2025-02-21", FALSE), "2025-03-10");
    ck_assert_str_eq(told_by("2025-02-21", TRUE), "2025-02-25");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("gave");
    TCase *tcase = tcase_create("gave");
    tcase_add_test(tcase, what_is_written_is_read);
    tcase_add_test(tcase, the_next_calibration_tells_and_the_last_one_if_it_was_wrong);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
