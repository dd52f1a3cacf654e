// The manual says what the program does: its table of kinds is the program's, and its shell is that
// of tests/check-ledger. After a change of the table, STANDBOOK_UPDATE=1 writes the page anew.
#include <check.h>
#include <standbook/record/kind.h>
#include <stdlib.h>
#include <string.h>

static const char page_name[] = "man/standbook-ledger.5";
static const char begin_mark[] = "tests/record/test_manual.c)\n";
static const char end_mark[] = ".\\\" end table\n";

// Characters that troff would make typographic, or take for its own.
static char *troff(const char *text)
{
    GString *safe = g_string_new(text);
    g_string_replace(safe, "\\", "\\e", 0);
    g_string_replace(safe, "'", "\\(aq", 0);
    g_string_replace(safe, "-", "\\-", 0);
    g_string_replace(safe, "…", "...", 0);
    return g_string_free(safe, FALSE);
}

static void add_field(GString *table, const Field *field)
{
    g_autofree char *help = troff(field->help);
    g_autofree char *type = troff(field_type_words(field->type));
    g_string_append_printf(table, ".It Va %s%s\n%s\n", field->name, field->needed ? " *" : "",
                           help);
    g_auto(GStrv) words = g_strsplit(field->choices ? field->choices : "", "/", -1);
    g_autofree char *choices = g_strjoinv(", ", words);
    if (field->choices)
        g_string_append_printf(table, ".Pq %s\n", choices);
    else if (field->type != FIELD_TEXT)
        g_string_append_printf(table, ".Pq %s\n", type);
}

static void add_kind(GString *table, const EntryKind *kind)
{
    static const char *const where[] = {
        [LEDGER_BUILD] = "build", [LEDGER_SHOP] = "shop", [LEDGER_BOTH] = "build or shop"};
    g_autofree char *help = troff(kind->help);
    g_string_append_printf(table, ".Ss %s (format %d, %s)\n%s\n", kind->name, kind->format,
                           where[kind->ledgers], help);
    g_string_append(table, ".Bl -tag -width description -compact\n");
    for (const Field *field = kind->fields; field->name; field++)
        add_field(table, field);
    g_string_append(table, ".El\n");
}

static char *whole_table(void)
{
    gsize count;
    const EntryKind *kinds = kind_table(&count);
    GString *table = g_string_new(NULL);
    for (gsize i = 0; i < count; i++)
        add_kind(table, &kinds[i]);
    return g_string_free(table, FALSE);
}

static char *contents(const char *name)
{
    char *text = NULL;
    ck_assert_msg(g_file_get_contents(name, &text, NULL, NULL), "%s cannot be read", name);
    return text;
}

START_TEST(the_table_is_the_programs)
{
    g_autofree char *page = contents(page_name);
    char *begin = strstr(page, begin_mark), *end = strstr(page, end_mark);
    ck_assert(begin && end);
    begin += strlen(begin_mark);
    g_autofree char *table = whole_table();
    g_autofree char *head = g_strndup(page, (gsize)(begin - page));
    g_autofree char *wanted = g_strconcat(head, table, end, NULL);
    if (g_getenv("STANDBOOK_UPDATE"))
        ck_assert(g_file_set_contents(page_name, wanted, -1, NULL));
    else
        ck_assert_msg(strcmp(page, wanted) == 0, "%s: the table of kinds is not the program's",
                      page_name);
}
END_TEST

START_TEST(the_shell_is_the_one_that_is_tested)
{
    g_autofree char *script = contents("tests/check-ledger");
    char *begin = strstr(script, "check() {\n");
    ck_assert_ptr_nonnull(begin);
    char *end = strstr(begin, "\n}\n");
    ck_assert_ptr_nonnull(end);
    end[3] = '\0';
    g_autofree char *safe = troff(begin);
    g_autofree char *page = contents(page_name);
    ck_assert_msg(strstr(page, safe), "%s does not show:\n%s", page_name, safe);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("manual");
    TCase *tcase = tcase_create("manual");
    tcase_add_test(tcase, the_table_is_the_programs);
    tcase_add_test(tcase, the_shell_is_the_one_that_is_tested);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
