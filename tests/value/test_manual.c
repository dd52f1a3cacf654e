// The manual says which units there are: its table is the program's. After a change of the table,
// STANDBOOK_UPDATE=1 writes the page anew.
#include <check.h>
#include <standbook/value/unit.h>
#include <stdlib.h>
#include <string.h>

static const char page_name[] = "man/standbook-reading.7";
static const char begin_mark[] = "tests/value/test_manual.c)\n";
static const char end_mark[] = ".\\\" end table\n";

static const char *const bases[] = {"m", "kg", "s", "°", "K"};

// What the factor of a kind counts: `m²·kg/s²` as `m^2 kg s^-2`, so that nothing is left out.
static char *base_of(Kind kind)
{
    const gint exponents[] = {kind.length, kind.mass, kind.time, kind.angle, kind.temperature};
    GString *text = g_string_new(NULL);
    for (gsize i = 0; i < G_N_ELEMENTS(bases); i++) {
        if (exponents[i] == 0) {
            continue;
        }
        g_string_append_printf(text, "%s%s", text->len ? " " : "", bases[i]);
        if (exponents[i] != 1) {
            g_string_append_printf(text, "^%d", exponents[i]);
        }
    }
    return g_string_free(text, FALSE);
}

static char *padded(const char *text, glong width)
{
    glong blanks = MAX(width - g_utf8_strlen(text, -1), 1);
    g_autofree char *blank = g_strnfill((gsize)blanks, ' ');
    return g_strconcat(text, blank, NULL);
}

static void add_unit(GString *table, const UnitListed *unit)
{
    g_autofree char *text = padded(unit->text, 10);
    g_autofree char *spellings = padded(*unit->spellings ? unit->spellings : "-", 56);
    g_autofree char *base = base_of(unit->kind);
    g_autofree char *line =
        g_strconcat(text, spellings, unit->factor, *base ? " " : "", base,
                    unit->offset ? " from " : "", unit->offset ? unit->offset : "", NULL);
    g_string_append_printf(table, "%s\n", line);
}

static char *whole_table(void)
{
    GString *table = g_string_new(".Bd -literal\n");
    UnitListed unit;
    for (gsize i = 0; unit_listed(i, &unit); i++) {
        add_unit(table, &unit);
    }
    g_string_append(table, ".Ed\n");
    g_string_replace(table, "\\", "\\e", 0);
    return g_string_free(table, FALSE);
}

START_TEST(the_table_of_units_is_that_of_the_program)
{
    g_autofree char *page = NULL;
    ck_assert(g_file_get_contents(page_name, &page, NULL, NULL));
    char *begin = strstr(page, begin_mark);
    ck_assert_ptr_nonnull(begin);
    begin += strlen(begin_mark);
    char *end = strstr(begin, end_mark);
    ck_assert_ptr_nonnull(end);
    g_autofree char *now = g_strndup(begin, (gsize)(end - begin));
    g_autofree char *wanted = whole_table();
    if (g_getenv("STANDBOOK_UPDATE")) {
        g_autofree char *front = g_strndup(page, (gsize)(begin - page));
        g_autofree char *whole = g_strconcat(front, wanted, end, NULL);
        ck_assert(g_file_set_contents(page_name, whole, -1, NULL));
    } else {
        ck_assert_str_eq(now, wanted);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("manual");
    TCase *tcase = tcase_create("manual");
    tcase_add_test(tcase, the_table_of_units_is_that_of_the_program);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
