#include <check.h>
#include <standbook/base/error.h>
#include <standbook/record/entry.h>
#include <stdlib.h>
#include <string.h>

#define LEDGER "6f1c2d30-0000-4000-8000-000000000001"
#define PERSON "6f1c2d30-0000-4000-8000-0000000000aa"
#define HEAD "{\"ledger\":\"" LEDGER "\",\"seq\":7,"
#define MIDDLE "\"by\":\"" PERSON "\",\"at\":\"2025-03-13T11:36:00\",\"done\":null,\"after\":null,"
#define READ HEAD "\"kind\":\"read\",\"format\":1," MIDDLE

static Entry *an_entry(const char *kind)
{
    Entry *entry = entry_new(kind_newest(kind));
    entry->ledger = g_strdup(LEDGER);
    entry->seq = 7;
    entry->by = g_strdup(PERSON);
    entry->at = g_strdup("2025-03-13T11:36:00");
    return entry;
}

START_TEST(a_line_has_one_exact_form)
{
    g_autoptr(Entry) entry = an_entry("read");
    const char *place[] = {"1", "front"};
    entry_set_text(entry, "note", "½ turn \"tight\"\n\x1b");
    entry_set_value(entry, "value", "17/32", "in", "17/32");
    entry_set_list(entry, "place", place, 2);
    entry_set_text(entry, "check", "main bore");
    entry_set_text(entry, "state", NULL); // not said: left out
    g_autofree char *line = entry_write(entry, NULL);
    ck_assert_str_eq(line,
                     READ "\"body\":{\"check\":\"main bore\",\"place\":[\"1\",\"front\"],"
                          "\"value\":{\"value\":\"17/32\",\"unit\":\"in\",\"typed\":\"17/32\"},"
                          "\"note\":\"½ turn \\\"tight\\\"\\n\\u001B\"}}");
    g_autoptr(Entry) back = entry_read(line, NULL);
    ck_assert_ptr_nonnull(back);
    ck_assert_str_eq(entry_text(back, "check"), "main bore");
    ck_assert_str_eq(entry_value(back, "value", "unit"), "in");
    ck_assert_uint_eq(entry_list_length(back, "place"), 2);
    ck_assert_str_eq(entry_list_item(back, "place", 1), "front");
}
END_TEST

// Lines that are refused, and a word of the sentence.
static const struct {
    const char *line, *word;
} refused[] = {
    {"", "not JSON"},
    {"[]", "exactly the keys"},
    {HEAD "\"kind\":\"red\",\"format\":1," MIDDLE "\"body\":{}}", "no kind `red`"},
    {HEAD "\"kind\":\"read\",\"format\":9," MIDDLE "\"body\":{}}", "no format 9 of `read`"},
    {READ "\"body\":{\"check\":\"b\"}}", "`value` of `read` is missing"},
    {READ "\"body\":[]}", "must be an object"},
    {READ "\"body\":{\"check\":\"b\",\"chekc\":\"b\"}}", "no field `chekc`"},
    {READ "\"body\":{\"check\":\"\",\"value\":{\"value\":\"1\",\"unit\":\"mm\",\"typed\":\"1\"}}}",
     "`check` of `read` must be text"},
    {READ
     "\"body\":{\"check\":\"b\",\"value\":{\"value\":\"01\",\"unit\":\"mm\",\"typed\":\"1\"}}}",
     "`value` of `read` must be a value"},
    {READ
     "\"body\":{\"check\":\"b\",\"value\":{\"value\":\"1/0\",\"unit\":\"mm\",\"typed\":\"1\"}}}",
     "`value` of `read` must be a value"},
    {READ "\"body\":{\"check\":\"b\",\"value\":1.5}}", "`value` of `read` must be a value"},
    {READ "\"body\":{\"value\":{\"value\":\"1\",\"unit\":\"mm\",\"typed\":\"1\"},\"check\":\"b\"}}",
     "exact form"},
    {READ
     " \"body\":{\"check\":\"b\",\"value\":{\"value\":\"1\",\"unit\":\"mm\",\"typed\":\"1\"}}}",
     "exact form"},
    {READ "\"body\":{\"check\":\"b\",\"check\":\"b\"}}", "duplicate"},
    {HEAD
     "\"kind\":\"note\",\"format\":1,\"by\":\"x\",\"at\":\"2025-03-13T11:36:00\",\"done\":null,"
     "\"after\":null,\"body\":{\"text\":\"a\"}}",
     "`by`"},
    {HEAD
     "\"kind\":\"note\",\"format\":1,\"by\":\"" PERSON
     "\",\"at\":\"2025-02-30T11:36:00\",\"done\":null,\"after\":null,\"body\":{\"text\":\"a\"}}",
     "`at`"},
    {HEAD "\"kind\":\"strike\",\"format\":1," MIDDLE "\"body\":{\"entry\":7,\"cause\":\"a\"}}",
     "`entry` of `strike` must be the number of an earlier"},
    {HEAD
     "\"kind\":\"concede\",\"format\":1," MIDDLE
     "\"body\":{\"asked\":\"read\",\"name\":\"b\",\"reasons\":[\"low\",\"mood\"],\"why\":\"w\","
     "\"who\":\"c\"}}",
     "`reasons` of `concede` must be a list of texts: low/high"},
    {HEAD "\"kind\":\"calibration\",\"format\":1," MIDDLE "\"body\":{\"id\":\"" LEDGER
          "\",\"tool\":\"" LEDGER "\",\"date\":\"2025-02-29\",\"found\":\"good\"}}",
     "`date` of `calibration`"},
    {HEAD "\"kind\":\"note\",\"format\":1,\"by\":\"" PERSON
          "\",\"at\":\"2025-02-20T11:36:00\",\"done\":null,\"after\":7,\"body\":{\"text\":\"a\"}}",
     "`after`"},
    {HEAD "\"kind\":\"note\",\"format\":1,\"by\":\"" PERSON
          "\",\"at\":\"2025-02-20T11:36:00\",\"done\":5,\"after\":null,\"body\":{\"text\":\"a\"}}",
     "exact form"},
};

START_TEST(what_does_not_fit_is_refused_in_words)
{
    GError *error = NULL;
    ck_assert_ptr_null(entry_read(refused[_i].line, &error));
    ck_assert(g_error_matches(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO));
    ck_assert_msg(strstr(error->message, refused[_i].word), "%s", error->message);
    g_error_free(error);
}
END_TEST

START_TEST(a_long_line_is_refused_both_ways)
{
    g_autoptr(Entry) entry = an_entry("note");
    g_autofree char *words = g_strnfill(LEDGER_LINE_MOST, 'x');
    entry_set_text(entry, "text", words);
    ck_assert_ptr_null(entry_write(entry, NULL));
    ck_assert_ptr_null(entry_read(words, NULL));
    words[LEDGER_LINE_MOST / 2] = '\0';
    entry_set_text(entry, "text", words);
    g_autofree char *line = entry_write(entry, NULL);
    ck_assert_ptr_nonnull(line);
    g_autofree char *longest =
        g_strnfill(LEDGER_LINE_MOST / 2 + LEDGER_LINE_MOST - strlen(line), 'x');
    entry_set_text(entry, "text", longest);
    g_autofree char *full = entry_write(entry, NULL);
    ck_assert_ptr_nonnull(full);
    ck_assert_uint_eq(strlen(full), LEDGER_LINE_MOST);
    g_autoptr(Entry) again = entry_read(full, NULL);
    ck_assert_ptr_nonnull(again);
}
END_TEST

// No place is all of them; a place on other axes than those asked about is none of theirs.
START_TEST(an_entry_reaches_its_place)
{
    static const char *const here[] = {"3", "front", NULL}, *const there[] = {"3", "rear", NULL},
                             *const shorter[] = {"3", NULL};
    g_autoptr(Entry) entry = an_entry("read");
    ck_assert(entry_reaches(entry, here));
    ck_assert_ptr_null(entry_labels(entry, 0));
    entry_set_list(entry, "place", here, 2);
    ck_assert(entry_reaches(entry, here));
    ck_assert(!entry_reaches(entry, there));
    ck_assert(!entry_reaches(entry, shorter));
    g_autofree const char **labels = entry_labels(entry, 2);
    ck_assert(g_strv_equal(labels, here));
    ck_assert_ptr_null(entry_labels(entry, 1));
}
END_TEST

START_TEST(the_table_is_in_order)
{
    gsize count;
    const EntryKind *kinds = kind_table(&count);
    for (gsize i = 0; i < count; i++) {
        ck_assert_ptr_eq(kind_find(kinds[i].name, kinds[i].format), &kinds[i]);
        ck_assert_ptr_null(kinds[i].fields[KIND_FIELDS].name);
        for (const Field *field = kinds[i].fields; field->name; field++) {
            ck_assert_ptr_eq(kind_field(&kinds[i], field->name), field);
            ck_assert_ptr_nonnull(field->help);
            ck_assert(field->type == FIELD_LIST ||
                      (field->type == FIELD_CHOICE) == (field->choices != NULL));
        }
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("entry");
    TCase *tcase = tcase_create("entry");
    tcase_add_test(tcase, a_line_has_one_exact_form);
    tcase_add_loop_test(tcase, what_does_not_fit_is_refused_in_words, 0, G_N_ELEMENTS(refused));
    tcase_add_test(tcase, a_long_line_is_refused_both_ways);
    tcase_add_test(tcase, an_entry_reaches_its_place);
    tcase_add_test(tcase, the_table_is_in_order);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
