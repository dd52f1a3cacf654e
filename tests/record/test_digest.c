#include <check.h>
#include <standbook/base/error.h>
#include <standbook/record/digest.h>
#include <standbook/record/entry.h>
#include <stdlib.h>
#include <string.h>

// The golden ledger holds a line of every kind in every released format. Its rows are never edited;
// a new format gets new rows behind them.
static char *text;
static GArray *links;

static void open_golden(void)
{
    ck_assert(g_file_get_contents("tests/record/golden.ledger", &text, NULL, NULL));
    links = g_array_new(FALSE, FALSE, sizeof(ChainLink));
    for (char *row = text; *row;) {
        char *end = strchr(row, '\n');
        ck_assert_ptr_nonnull(end);
        *end = '\0';
        ChainLink link;
        ck_assert(chain_row_read(row, &link, NULL));
        g_array_append_val(links, link);
        row = end + 1;
    }
}

static void close_golden(void)
{
    g_array_free(links, TRUE);
    g_free(text);
}

static ChainLink *link_at(gsize index)
{
    return &g_array_index(links, ChainLink, index);
}

START_TEST(golden_lines_are_read_and_written_byte_for_byte)
{
    for (gsize i = 0; i < links->len; i++) {
        GError *error = NULL;
        g_autoptr(Entry) entry = entry_read(link_at(i)->line, &error);
        ck_assert_msg(entry, "row %zu: %s", i + 1, error ? error->message : "");
        g_autofree char *line = entry_write(entry, NULL);
        ck_assert_str_eq(line, link_at(i)->line);
        g_autofree char *row = chain_row(link_at(i)->digest, line);
        ChainLink again;
        ck_assert(chain_row_read(row, &again, NULL));
        ck_assert_str_eq(again.digest, link_at(i)->digest);
    }
}
END_TEST

// Every kind, every format, every field.
START_TEST(golden_lines_leave_nothing_out)
{
    g_autoptr(GHashTable) seen = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
    for (gsize i = 0; i < links->len; i++) {
        g_autoptr(Entry) entry = entry_read(link_at(i)->line, NULL);
        const char *key;
        json_t *value;
        json_object_foreach(entry->body, key, value) g_hash_table_add(
            seen, g_strdup_printf("%s %d %s", entry->kind->name, entry->kind->format, key));
    }
    gsize count;
    const EntryKind *kinds = kind_table(&count);
    for (gsize i = 0; i < count; i++)
        for (const Field *field = kinds[i].fields; field->name; field++) {
            g_autofree char *name =
                g_strdup_printf("%s %d %s", kinds[i].name, kinds[i].format, field->name);
            ck_assert_msg(g_hash_table_contains(seen, name), "no golden line shows %s", name);
        }
}
END_TEST

START_TEST(the_golden_chain_holds)
{
    GError *error = NULL;
    ck_assert_msg(chain_check((ChainLink *)links->data, links->len, NULL, &error), "%s",
                  error ? error->message : "");
    ck_assert(chain_check(NULL, 0, NULL, NULL)); // an empty ledger is whole
}
END_TEST

static void expect_broken(gsize at, const char *word)
{
    GError *error = NULL;
    gsize broken;
    ck_assert(!chain_check((ChainLink *)links->data, links->len, &broken, &error));
    ck_assert_uint_eq(broken, at);
    ck_assert(g_error_matches(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO));
    ck_assert_msg(strstr(error->message, word), "%s", error->message);
    g_error_free(error);
}

// Every single byte of a line counts.
START_TEST(one_byte_changed_breaks_the_chain_there)
{
    char *line = (char *)link_at(13)->line;
    for (gsize i = 0; line[i]; i++) {
        line[i] ^= 1;
        expect_broken(13, "entry 14");
        line[i] ^= 1;
    }
}
END_TEST

START_TEST(a_row_removed_or_swapped_breaks_the_chain)
{
    ChainLink kept = *link_at(7);
    *link_at(7) = *link_at(8);
    *link_at(8) = kept;
    expect_broken(7, "does not follow");
    g_array_remove_index(links, 7);
    expect_broken(8, "does not follow");
    g_array_remove_range(links, 0, 7);
    expect_broken(0, "does not follow");
}
END_TEST

// Spoilt lines are refused, or are entries in their own exact form; none is taken for another.
START_TEST(a_spoilt_line_is_never_taken_for_another)
{
    GRand *dice = g_rand_new_with_seed(4203);
    int taken = 0;
    for (int i = 0; i < 40000; i++) {
        g_autofree char *line = g_strdup(link_at((gsize)i % links->len)->line);
        char *spoilt = line + g_rand_int_range(dice, 0, (gint32)strlen(line));
        *spoilt = (char)g_rand_int_range(dice, 1, 256);
        g_autoptr(Entry) entry = entry_read(line, NULL);
        g_autofree char *again = entry ? entry_write(entry, NULL) : NULL;
        if (entry)
            ck_assert_str_eq(again, line);
        taken += entry != NULL;
    }
    g_rand_free(dice);
    ck_assert_int_gt(taken, 1000); // a letter of a remark, a digit of an id
}
END_TEST

static void chain_again(gsize from)
{
    for (gsize i = from; i < links->len; i++) {
        const char *previous = i ? link_at(i - 1)->digest : CHAIN_START;
        g_autofree char *digest = chain_next(previous, link_at(i)->line);
        g_strlcpy(link_at(i)->digest, digest, sizeof link_at(i)->digest);
    }
}

// Somebody who recomputes the digests is still held to the form, the turn and the one ledger.
START_TEST(a_forged_chain_must_still_be_a_ledger)
{
    g_array_remove_index(links, 20);
    chain_again(20);
    expect_broken(20, "out of turn");
    char *ledger = strstr((char *)link_at(3)->line, "000000000001");
    ledger[11] = '2';
    chain_again(3);
    expect_broken(3, "another ledger");
    ledger[11] = 'x';
    chain_again(3);
    expect_broken(3, "`ledger` must be a UUID");
}
END_TEST

// FIPS 180-4 example "abc" is 3 bytes and cannot stand here; this value is from coreutils:
// { printf '%064d\n' 0; printf a; } with no line feed at the end | sha256sum
START_TEST(a_digest_as_sha256sum_gives_it)
{
    g_autofree char *digest = chain_next(CHAIN_START, "a");
    ck_assert_str_eq(digest, "2e04306c2c1c72c0567b0630f213452ce913cee8d0772efd39e5699ed22aa637");
}
END_TEST

START_TEST(a_row_has_its_form)
{
    ChainLink link;
    ck_assert(!chain_row_read("", &link, NULL));
    ck_assert(!chain_row_read("abc {}", &link, NULL));
    g_autofree char *no_space = g_strconcat(CHAIN_START, "{}", NULL);
    ck_assert(!chain_row_read(no_space, &link, NULL));
    g_autofree char *longer = g_strconcat("0", CHAIN_START, " {}", NULL);
    ck_assert(!chain_row_read(longer, &link, NULL));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("digest");
    TCase *tcase = tcase_create("digest");
    tcase_add_checked_fixture(tcase, open_golden, close_golden);
    tcase_add_test(tcase, golden_lines_are_read_and_written_byte_for_byte);
    tcase_add_test(tcase, golden_lines_leave_nothing_out);
    tcase_add_test(tcase, the_golden_chain_holds);
    tcase_add_test(tcase, one_byte_changed_breaks_the_chain_there);
    tcase_add_test(tcase, a_row_removed_or_swapped_breaks_the_chain);
    tcase_add_test(tcase, a_spoilt_line_is_never_taken_for_another);
    tcase_add_test(tcase, a_forged_chain_must_still_be_a_ledger);
    tcase_add_test(tcase, a_digest_as_sha256sum_gives_it);
    tcase_add_test(tcase, a_row_has_its_form);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
