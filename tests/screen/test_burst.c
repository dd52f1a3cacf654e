#include "burst.h"

#include <check.h>

// Keys as they were read: `\r` is Enter, `\t` Tab, `\x7f` Backspace, other controls no key.
static GArray *keys_of(const char *text, gint64 gap)
{
    GArray *keys = g_array_new(FALSE, FALSE, sizeof(Key));
    gint64 at = G_USEC_PER_SEC;
    for (; *text; text = g_utf8_next_char(text), at += gap) {
        gunichar character = g_utf8_get_char(text);
        KeyKind kind = character == '\r'              ? PRESSED_ENTER
                       : character == '\t'            ? PRESSED_TAB
                       : character == 0x7f            ? PRESSED_BACKSPACE
                       : g_unichar_iscntrl(character) ? PRESSED_OTHER
                                                      : PRESSED_CHARACTER;
        Key key = {kind, character, at};
        g_array_append_val(keys, key);
    }
    return keys;
}

static gboolean is_burst(const char *text, gint64 gap)
{
    g_autoptr(GArray) keys = keys_of(text, gap);
    return keys_are_burst(keys);
}

// The lines with `;` behind each that was ended, `|` behind the others.
static void expect_lines(const char *text, const char *wanted)
{
    g_autoptr(GArray) keys = keys_of(text, 0);
    g_autoptr(GArray) lines = burst_lines(keys);
    g_autoptr(GString) got = g_string_new(NULL);
    for (guint i = 0; i < lines->len; i++) {
        const BurstLine *line = &g_array_index(lines, BurstLine, i);
        g_string_append_printf(got, "%s%s", line->text, line->ended ? ";" : "|");
    }
    ck_assert_str_eq(got->str, wanted);
}

START_TEST(two_keys_are_fingers_and_three_are_none)
{
    ck_assert(!is_burst("9", 0));
    ck_assert(!is_burst("90", 0));
    ck_assert(is_burst("90.", 0));
    ck_assert(is_burst("90\r", 0));
}
END_TEST

START_TEST(enter_that_bounces_is_no_burst)
{
    ck_assert(!is_burst("\r\r\r\r", 0));
    ck_assert(is_burst("\r\rq", 0));
}
END_TEST

START_TEST(a_key_held_down_is_no_burst)
{
    ck_assert(!is_burst("\x7f\x7f\x7f", 25000));
    ck_assert(is_burst("\x7f\x7f\x7f", 100));
    ck_assert(is_burst("999", 25000));
    ck_assert(is_burst("\x7f\x7f\t", 25000));
}
END_TEST

START_TEST(lines_end_with_enter_and_tab)
{
    expect_lines("90.026\r90.022\t7", "90.026;90.022;7|");
    expect_lines("90.026\r\r\r", "90.026;");
    expect_lines("\r\r", "");
    expect_lines("", "");
}
END_TEST

START_TEST(controls_and_sequences_are_no_part_of_a_line)
{
    expect_lines("\x1b[200~0.041\r\x1b[201~", "0.041;");
    expect_lines("\x1b[31m"
                 "9\x1b"
                 "OP0\x03",
                 "90|");
    expect_lines("\x1b[", "[|");
    expect_lines("\x1b[3\r1", "[3;1|");
    expect_lines("\x1b]52;c;aGk=\x07", "]52;c;aGk=|");
    expect_lines("\xc2\x9b"
                 "31m",
                 "31m|");
    expect_lines("\x7f"
                 "9\x7f"
                 "0",
                 "90|");
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {two_keys_are_fingers_and_three_are_none,
                                  enter_that_bounces_is_no_burst, a_key_held_down_is_no_burst,
                                  lines_end_with_enter_and_tab,
                                  controls_and_sequences_are_no_part_of_a_line};
    TCase *tcase = tcase_create("burst");
    for (gsize i = 0; i < G_N_ELEMENTS(tests); i++)
        tcase_add_test(tcase, tests[i]);
    Suite *suite = suite_create("burst");
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? 1 : 0;
}
