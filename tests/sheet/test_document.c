#include <check.h>
#include <standbook/sheet/document.h>
#include <stdlib.h>
#include <string.h>

static Document *sample(void)
{
    Document *document = document_new("customer", "Build sheet 1");
    document_heading(document, 1, "Measured");
    const DocumentColumn columns[] = {
        {"what", ALIGN_LEFT}, {"value", ALIGN_POINT}, {"note", ALIGN_RIGHT}};
    document_table(document, columns, 3);
    document_row(document, (const char *const[]){"bore", "90.00 mm", "1"});
    document_row(document, (const char *const[]){"float", "0.125 mm", NULL});
    document_row(document, (const char *const[]){"bolts", "8", "12"});
    return document;
}

START_TEST(points_stand_in_one_column)
{
    g_autoptr(Document) document = sample();
    g_autofree char *text = document_text(document);
    ck_assert_ptr_nonnull(strstr(text, "  MEASURED\n  ──"));
    ck_assert_ptr_nonnull(strstr(text, "\n  what       value  note\n"
                                       "  bore   90.00 mm      1\n"
                                       "  float   0.125 mm\n"));
    ck_assert_ptr_nonnull(strstr(text, "\n  bolts   8           12\n"));
}
END_TEST

static void expect_within_width(const char *text)
{
    g_auto(GStrv) lines = g_strsplit(text, "\n", -1);
    for (guint i = 0; lines[i]; i++)
        ck_assert_msg(g_utf8_strlen(lines[i], -1) <= DOCUMENT_WIDTH, "too wide: %s", lines[i]);
}

START_TEST(nothing_is_wider_than_the_page)
{
    g_autoptr(Document) document = document_new("record", "A title");
    g_autofree char *endless = g_strnfill(300, 'x');
    const char *words = "half the new-part allowance, wear seen and small; contact even, no pits, "
                        "bush new; new gear eleven weeks";
    document_paragraph(document, endless);
    document_paragraph(document, words);
    const DocumentColumn columns[] = {{"one", ALIGN_LEFT}, {"two", ALIGN_LEFT}, {"", ALIGN_POINT}};
    document_table(document, columns, 3);
    document_row(document, (const char *const[]){words, endless, "0.064"});
    g_autofree char *text = document_text(document);
    expect_within_width(text);
    ck_assert_ptr_nonnull(strstr(text, "0.064"));
    guint count = 0; // nothing is lost by breaking: 300 twice
    for (const char *at = text; *at; at++)
        count += *at == 'x';
    ck_assert_uint_eq(count, 600);
}
END_TEST

// Several figures in a cell, a doubt behind a whole number: the first figure's point counts.
START_TEST(the_first_figure_stands_on_the_point)
{
    g_autoptr(Document) document = document_new("record", "A title");
    document_table(document, (const DocumentColumn[]){{"", ALIGN_POINT}}, 1);
    static const char *const rows[] = {"0.064 0.067 ±.005", "262 to 271", "8 ±1.5", "<0.03"};
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++)
        document_row(document, &rows[i]);
    g_autofree char *text = document_text(document);
    ck_assert_ptr_nonnull(strstr(text, "\n    0.064 0.067 ±.005\n"
                                       "  262 to 271\n"
                                       "    8 ±1.5\n"
                                       "   <0.03\n"));
}
END_TEST

START_TEST(words_among_figures_are_broken_too)
{
    g_autoptr(Document) document = document_new("record", "A title");
    const char *answer =
        "yes by letter, quote 4,980.00, idler and cam reused, tappets new at +92.40";
    const DocumentColumn columns[] = {{"", ALIGN_WHOLE}, {"", ALIGN_POINT}, {"", ALIGN_WHOLE}};
    document_table(document, columns, 3);
    document_row(document, (const char *const[]){answer, answer, answer});
    document_row(document, (const char *const[]){"bore", "90.015", "pass"});
    g_autofree char *text = document_text(document);
    expect_within_width(text);
}
END_TEST

// A table too wide for the page: no word of it is broken, and the room goes to the column that has
// most to say.
START_TEST(words_stay_whole_and_the_page_is_used)
{
    g_autoptr(Document) document = document_new("record", "A title");
    const DocumentColumn columns[] = {
        {"entry", ALIGN_RIGHT}, {"certificates", ALIGN_LEFT}, {"", ALIGN_LEFT}, {"", ALIGN_LEFT}};
    document_table(document, columns, 4);
    for (guint i = 0; i < 8; i++)
        document_row(document, (const char *const[]){
                                   "#14", "photographed yes", "out-of-roundness",
                                   "bored and honed by somebody else, and read again here with the "
                                   "bore gauge set in its own micrometer"});
    document_row(document, (const char *const[]){"#15", "", "hydrochlorofluorocarbons seen", "no"});
    g_autofree char *text = document_text(document);
    static const char *const whole[] = {"certificates", "photographed", "out-of-roundness",
                                        "micrometer", "hydrochlorofluorocarbons"};
    expect_within_width(text);
    for (gsize i = 0; i < G_N_ELEMENTS(whole); i++)
        ck_assert_msg(strstr(text, whole[i]) != NULL, "%s is broken:\n%s", whole[i], text);
    g_auto(GStrv) lines = g_strsplit(text, "\n", -1);
    ck_assert_msg(g_strv_length(lines) <= 2 + 1 + 8 * 4 + 2 + 1, "too many lines:\n%s", text);
}
END_TEST

// What was answered in words among figures leaves the other columns their room; where there is room
// for all, it stays in its place.
START_TEST(words_among_figures_stand_under_their_row)
{
    const DocumentColumn columns[] = {
        {"asked", ALIGN_LEFT}, {"", ALIGN_POINT}, {"limits", ALIGN_WHOLE}};
    for (guint wide = 0; wide < 2; wide++) {
        g_autoptr(Document) document = document_new("record", "A title");
        document_table(document, columns, 3);
        document_row(document, (const char *const[]){
                                   wide ? "what was said on the telephone when it came" : "said",
                                   "knocks when it is warm", "as the owner words it"});
        document_row(document, (const char *const[]){"bore", "60.14 to 60.16", "59.70 to 60.00"});
        g_autofree char *text = document_text(document);
        ck_assert_msg(wide == (strstr(text, "\n      knocks when it is warm\n") != NULL), "%s",
                      text);
        ck_assert_msg(!wide == (strstr(text, "said   knocks when it is warm") != NULL), "%s", text);
        ck_assert_msg(strstr(text, "60.14 to 60.16") != NULL, "%s", text);
    }
}
END_TEST

START_TEST(escapes_do_not_reach_the_page)
{
    g_autoptr(Document) document = document_new("record", "\x1b[2J");
    document_heading(document, 1, "caf\xe9");
    document_line(document, "a\nb\x1b");
    document_table(document, (const DocumentColumn[]){{"\x07", ALIGN_LEFT}}, 1);
    document_row(document, (const char *const[]){"\xe2\x80\xae"
                                                 "9"});
    document_footnote(document, "\x9b");
    document_footnotes(document);
    g_autofree char *text = document_text(document);
    ck_assert_ptr_null(strpbrk(text, "\x1b\x07"));
    ck_assert_ptr_nonnull(strstr(text, "a\\x0Ab\\x1B"));
    ck_assert_ptr_nonnull(strstr(text, "\\xE2\\x80\\xAE9"));
    ck_assert(g_utf8_validate(text, -1, NULL));
    json_t *json = document_json(document);
    g_autofree char *dumped = json_dumps(json, JSON_COMPACT);
    ck_assert_ptr_nonnull(dumped);
    ck_assert_ptr_null(strstr(dumped, "\\u001"));
    json_decref(json);
}
END_TEST

START_TEST(footnotes_are_numbered_once)
{
    g_autoptr(Document) document = sample();
    ck_assert_uint_eq(document_footnote(document, "Conceded."), 1);
    ck_assert_uint_eq(document_footnote(document, "Upheld."), 2);
    ck_assert_uint_eq(document_footnote(document, "Conceded."), 1);
    document_footnotes(document);
    ck_assert_uint_eq(document_footnote(document, "Later."), 3);
    document_footnotes(document);
    document_footnotes(document);
    g_autofree char *text = document_text(document);
    ck_assert_ptr_nonnull(strstr(text, "\n  1  Conceded.\n  2  Upheld.\n\n  3  Later.\n"));
    ck_assert_ptr_eq(strstr(text, "Later."), g_strrstr(text, "Later."));
}
END_TEST

// A document of several pages: three parts of so many rows, of which every 20th names a footnote.
static Document *long_sample(guint rows)
{
    const DocumentColumn columns[] = {{"what", ALIGN_LEFT}, {"", ALIGN_NOTES}};
    Document *document = document_new("customer", "Build sheet 1");
    document_pages(document, "The shop", "Build sheet 1", "seal 7f3a");
    for (guint part = 0; part < 3; part++) {
        g_autofree char *heading = g_strdup_printf("Part %u", part);
        document_heading(document, 1, heading);
        document_table(document, columns, 2);
        for (guint row = 0; row < rows; row++) {
            g_autofree char *words = g_strdup_printf("row %u of %u.", row, part);
            g_autofree char *why = g_strdup_printf("Footnote of row %u.", row);
            g_autofree char *number =
                row % 20 ? NULL : g_strdup_printf("%u", document_footnote(document, why));
            document_row(document, (const char *const[]){words, number});
        }
        document_footnotes(document);
    }
    return document;
}

static void expect_frame(const char *page, guint number, guint count)
{
    g_auto(GStrv) lines = g_strsplit(page, "\n", -1);
    g_autofree char *foot = g_strdup_printf("%u of %u", number, count);
    ck_assert_uint_eq(g_strv_length(lines), PAGE_LINES + 1);
    ck_assert_str_eq(lines[PAGE_LINES], "");
    ck_assert(g_str_has_prefix(lines[0], "  The shop  "));
    ck_assert(g_str_has_suffix(lines[0], "  Build sheet 1"));
    ck_assert(g_str_has_prefix(lines[PAGE_LINES - 1], "  seal 7f3a  "));
    ck_assert(g_str_has_suffix(lines[PAGE_LINES - 1], foot));
    ck_assert_uint_eq(g_utf8_strlen(lines[PAGE_LINES - 1], -1), DOCUMENT_WIDTH - 2);
}

static void expect_footnotes(const char *page, guint rows)
{
    for (guint row = 0; row < rows; row += 20) {
        g_autofree char *why = g_strdup_printf("  Footnote of row %u.", row);
        gboolean named = FALSE;
        for (guint part = 0; part < 3; part++) {
            g_autofree char *words = g_strdup_printf("\n  row %u of %u. ", row, part);
            named = named || strstr(page, words);
        }
        ck_assert_msg(named == (strstr(page, why) != NULL), "%s\n%.3000s", why, page);
    }
}

static void expect_parts(const char *text, guint rows)
{
    for (guint part = 0; part < 3; part++) {
        g_autofree char *heading = g_strdup_printf("  PART %u\n", part);
        const char *behind = strstr(text, heading);
        ck_assert_ptr_nonnull(behind);
        const char *first = strstr(behind, "\n  row 0"), *end = strchr(behind, '\f');
        ck_assert_ptr_nonnull(first);
        ck_assert_msg(!end || first < end, "the heading %s stands alone", heading);
        for (guint row = 0; row < rows; row++) {
            g_autofree char *words = g_strdup_printf("\n  row %u of %u.", row, part);
            ck_assert_msg(strstr(text, words) != NULL, "lost: %s", words);
        }
    }
}

// Wherever the pages end: each is full and numbered, no row is lost, a footnote stands where it is
// named and there alone, and no heading stands without what it is for.
START_TEST(pages_are_whole_wherever_they_end)
{
    for (guint rows = 30; rows < 60; rows++) {
        g_autoptr(Document) document = long_sample(rows);
        g_autofree char *text = document_text(document);
        g_auto(GStrv) pages = g_strsplit(text, "\f", -1);
        guint count = g_strv_length(pages);
        ck_assert_uint_ge(count, 2);
        for (guint i = 0; i < count; i++) {
            expect_frame(pages[i], i + 1, count);
            expect_footnotes(pages[i], rows);
        }
        expect_parts(text, rows);
    }
}
END_TEST

// What is longer than a page is printed all the same.
START_TEST(nothing_is_lost_where_a_page_is_too_short)
{
    g_autoptr(Document) document = document_new("customer", "Build sheet 1");
    document_pages(document, "The shop", "Build sheet 1", "seal 7f3a");
    g_autofree char *endless = g_strnfill(80 * PAGE_LINES, 'x');
    document_paragraph(document, "before");
    document_paragraph(document, endless);
    document_paragraph(document, "behind");
    g_autofree char *text = document_text(document);
    guint count = 0;
    for (const char *at = text; *at; at++)
        count += *at == 'x';
    ck_assert_uint_eq(count, 80 * PAGE_LINES);
    ck_assert_ptr_nonnull(strstr(text, "  behind\n"));
}
END_TEST

START_TEST(json_holds_the_parts)
{
    g_autoptr(Document) document = sample();
    json_t *json = document_json(document);
    const char *kind, *heading, *cell;
    ck_assert_int_eq(json_unpack(json, "{s:s,s:[{s:s},{s:[[],[],[s]]}]}", "document", &kind,
                                 "parts", "heading", &heading, "rows", &cell),
                     0);
    ck_assert_str_eq(kind, "customer");
    ck_assert_str_eq(heading, "Measured");
    ck_assert_str_eq(cell, "bolts");
    json_decref(json);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("document");
    TCase *tcase = tcase_create("document");
    tcase_add_test(tcase, points_stand_in_one_column);
    tcase_add_test(tcase, nothing_is_wider_than_the_page);
    tcase_add_test(tcase, words_among_figures_stand_under_their_row);
    tcase_add_test(tcase, the_first_figure_stands_on_the_point);
    tcase_add_test(tcase, words_among_figures_are_broken_too);
    tcase_add_test(tcase, words_stay_whole_and_the_page_is_used);
    tcase_add_test(tcase, escapes_do_not_reach_the_page);
    tcase_add_test(tcase, footnotes_are_numbered_once);
    tcase_add_test(tcase, pages_are_whole_wherever_they_end);
    tcase_add_test(tcase, nothing_is_lost_where_a_page_is_too_short);
    tcase_add_test(tcase, json_holds_the_parts);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
