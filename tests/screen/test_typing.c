#include "typing.h"

#include <check.h>
#include <string.h>

static Typing typing;
static gint64 now;

static void begin(void)
{
    typing_init(&typing);
    now = 1000000;
}

static void end(void)
{
    typing_clear(&typing);
}

static Press press_key(Asks field, KeyKind kind, gunichar character)
{
    now += 400000;
    return typing_press(&typing, field, &(Key){kind, character, now});
}

static Press press_text(Asks field, const char *text)
{
    Press last = {0};
    for (const char *at = text; *at; at = g_utf8_next_char(at))
        last = press_key(field, PRESSED_CHARACTER, g_utf8_get_char(at));
    return last;
}

static void expect_action(Press press, Action action)
{
    ck_assert_int_eq(press.kind, PRESS_ACTION);
    ck_assert_int_eq(press.action, action);
}

START_TEST(a_reading_is_its_digits_and_enter)
{
    press_text(ASKS_NUMBER, "+0.041");
    ck_assert_str_eq(typing.text->str, "+0.041");
    ck_assert_int_eq(press_key(ASKS_NUMBER, PRESSED_ENTER, 0).kind, PRESS_ENTER);
}
END_TEST

START_TEST(a_sign_alone_and_enter_is_a_command)
{
    static const struct {
        const char *sign;
        Action action;
    } signs[] = {{"+", ACTION_ON}, {"-", ACTION_BACK}, {".", ACTION_MORE}};
    for (gsize i = 0; i < G_N_ELEMENTS(signs); i++) {
        press_text(ASKS_NUMBER, signs[i].sign);
        ck_assert_int_eq(typing_command(&typing), signs[i].action);
        expect_action(press_key(ASKS_NUMBER, PRESSED_ENTER, 0), signs[i].action);
        ck_assert_uint_eq(typing.text->len, 0);
    }
}
END_TEST

START_TEST(star_and_slash_act_only_where_no_number_stands)
{
    expect_action(press_text(ASKS_NUMBER, "*"), ACTION_STRIKE);
    expect_action(press_text(ASKS_TICK, "/"), ACTION_PUT_DOWN);
    press_text(ASKS_NUMBER, "17/32");
    ck_assert_str_eq(typing.text->str, "17/32");
}
END_TEST

START_TEST(letters_act_on_an_empty_field_and_are_units_in_a_number)
{
    expect_action(press_text(ASKS_NUMBER, "g"), ACTION_GAUGE);
    ck_assert_int_eq(press_text(ASKS_NUMBER, "0.4 thou").kind, PRESS_TYPED);
    ck_assert_str_eq(typing.text->str, "0.4 thou");
    expect_action(press_text(ASKS_NUMBER, "?"), ACTION_HELP);
    ck_assert_str_eq(typing.text->str, "0.4 thou");
}
END_TEST

START_TEST(words_are_only_words)
{
    press_text(ASKS_TEXT, "* / g d q?");
    ck_assert_str_eq(typing.text->str, "* / g d q?");
}
END_TEST

START_TEST(a_name_begins_with_no_sign_that_acts)
{
    expect_action(press_text(ASKS_NAME, "*"), ACTION_STRIKE);
    expect_action(press_text(ASKS_NAME, "/"), ACTION_PUT_DOWN);
    ck_assert_str_eq(typing.text->str, "");
    press_text(ASKS_NAME, "gd * /?");
    ck_assert_str_eq(typing.text->str, "gd * /?");
}
END_TEST

START_TEST(enter_on_an_empty_number_does_nothing_ever)
{
    ck_assert_int_eq(press_key(ASKS_NUMBER, PRESSED_ENTER, 0).kind, PRESS_NOTHING);
    ck_assert_int_eq(press_key(ASKS_TICK, PRESSED_ENTER, 0).kind, PRESS_ENTER);
}
END_TEST

START_TEST(enter_on_an_empty_line_does_nothing_ever)
{
    ck_assert_int_eq(press_key(ASKS_LINE, PRESSED_ENTER, 0).kind, PRESS_NOTHING);
}
END_TEST

START_TEST(a_second_enter_so_soon_is_dropped_and_said)
{
    ck_assert_int_eq(press_key(ASKS_TICK, PRESSED_ENTER, 0).kind, PRESS_ENTER);
    now += ENTER_GAP - 1;
    ck_assert_int_eq(typing_press(&typing, ASKS_TICK, &(Key){PRESSED_ENTER, 0, now}).kind,
                     PRESS_SAY);
    now += ENTER_GAP;
    ck_assert_int_eq(typing_press(&typing, ASKS_TICK, &(Key){PRESSED_ENTER, 0, now}).kind,
                     PRESS_ENTER);
}
END_TEST

START_TEST(an_enter_late_of_a_burst_is_its_own)
{
    typing_add_burst(&typing, "90.026");
    typing_end_burst(&typing, FALSE, TRUE, now);
    now += ENTER_GAP / 4;
    ck_assert_int_eq(typing_press(&typing, ASKS_NUMBER, &(Key){PRESSED_ENTER, 0, now}).kind,
                     PRESS_ENTER);
}
END_TEST

START_TEST(an_enter_behind_that_of_a_burst_is_dropped_and_said)
{
    typing_end_burst(&typing, TRUE, FALSE, now);
    now += ENTER_GAP / 4;
    Press pressed = typing_press(&typing, ASKS_TICK, &(Key){PRESSED_ENTER, 0, now});
    ck_assert_int_eq(pressed.kind, PRESS_SAY);
    ck_assert_ptr_nonnull(strstr(pressed.words, "pasted"));
    ck_assert_int_eq(press_key(ASKS_TICK, PRESSED_ENTER, 0).kind, PRESS_ENTER);
    now += ENTER_GAP / 4; // a bounce of a finger is not called pasted
    pressed = typing_press(&typing, ASKS_TICK, &(Key){PRESSED_ENTER, 0, now});
    ck_assert_ptr_null(strstr(pressed.words, "pasted"));
}
END_TEST

START_TEST(escape_empties_the_field)
{
    static const Asks fields[] = {ASKS_NUMBER, ASKS_TICK, ASKS_LINE, ASKS_TEXT, ASKS_NAME};
    for (gsize i = 0; i < G_N_ELEMENTS(fields); i++) {
        ck_assert_int_eq(press_key(fields[i], PRESSED_CLEAR, 0x1b).kind, PRESS_NOTHING);
        typing_add_text(&typing, "12");
        expect_action(press_key(fields[i], PRESSED_CLEAR, 0x1b), ACTION_CLEAR);
        g_string_truncate(typing.text, 0);
    }
}
END_TEST

START_TEST(backspace_erases_and_never_leaves_the_bench)
{
    press_text(ASKS_NUMBER, "0±");
    press_key(ASKS_NUMBER, PRESSED_BACKSPACE, 0);
    ck_assert_str_eq(typing.text->str, "0");
    press_key(ASKS_NUMBER, PRESSED_BACKSPACE, 0);
    ck_assert_int_eq(press_key(ASKS_NUMBER, PRESSED_BACKSPACE, 0).kind, PRESS_SAY);
    expect_action(press_key(ASKS_LINE, PRESSED_BACKSPACE, 0), ACTION_UP);
}
END_TEST

START_TEST(a_question_takes_one_digit)
{
    Press press = press_text(ASKS_DIGIT, "3");
    ck_assert_int_eq(press.kind, PRESS_DIGIT);
    ck_assert_uint_eq(press.digit, 3);
    ck_assert_int_eq(press_text(ASKS_DIGIT, "*").kind, PRESS_NOTHING);
    press = press_key(ASKS_DIGIT, PRESSED_ENTER, 0);
    ck_assert_int_eq(press.kind, PRESS_SAY);
    ck_assert_ptr_nonnull(strstr(press.words, "one digit answers"));
    ck_assert_int_eq(press_text(ASKS_DIGIT, "+").kind, PRESS_NOTHING);
}
END_TEST

START_TEST(a_word_at_a_question_does_nothing)
{
    for (const char *at = "pngcuslr"; *at; at++)
        ck_assert_int_eq(press_text(ASKS_DIGIT, (char[]){*at, '\0'}).kind, PRESS_NOTHING);
    ck_assert_int_eq(press_text(ASKS_DIGIT, "S12").kind, PRESS_SAY);
    now += WORD_GAP;
    ck_assert_int_eq(press_text(ASKS_DIGIT, "2").kind, PRESS_DIGIT);
    expect_action(press_text(ASKS_DIGIT, "w"), ACTION_WHY);
    expect_action(press_text(ASKS_DIGIT, "?"), ACTION_HELP);
    typing.offered = action_bit(ACTION_UPHOLD) | action_bit(ACTION_STRIKE) | action_bit(ACTION_UP);
    expect_action(press_text(ASKS_DIGIT, "u"), ACTION_UPHOLD);
    ck_assert_int_eq(press_text(ASKS_DIGIT, "s").kind, PRESS_NOTHING);
    ck_assert_int_eq(press_text(ASKS_DIGIT, "q").kind, PRESS_NOTHING);
}
END_TEST

START_TEST(a_name_typed_at_a_list_strikes_nothing)
{
    ck_assert_int_eq(press_text(ASKS_LINE, "s").kind, PRESS_NOTHING);
    ck_assert_int_eq(press_text(ASKS_LINE, "p").kind, PRESS_NOTHING);
    expect_action(press_text(ASKS_LINE, "*"), ACTION_STRIKE);
    expect_action(press_text(ASKS_LINE, "/"), ACTION_PUT_DOWN);
    expect_action(press_text(ASKS_NUMBER, "s"), ACTION_STRIKE);
}
END_TEST

START_TEST(the_pad_without_its_lock_is_said)
{
    Press press = press_key(ASKS_NUMBER, PRESSED_NUM_LOCK, 0);
    ck_assert_int_eq(press.kind, PRESS_SAY);
    ck_assert_str_eq(press.words,
                     "NUM LOCK IS OFF, if that was the pad; the key itself does nothing here");
    press = press_key(ASKS_LINE, PRESSED_NUM_LOCK, 0);
    ck_assert_str_eq(
        press.words,
        "NUM LOCK IS OFF, if that was the pad; a list pages by 0 Enter, or the arrows");
}
END_TEST

START_TEST(controls_never_stand_in_a_field)
{
    ck_assert(!typing_add(&typing, 0x1b));
    ck_assert(!typing_add(&typing, 0x9b));
    for (guint i = 0; i < 2 * TYPED_MOST; i++)
        typing_add(&typing, '9');
    ck_assert_uint_le(typing.text->len, TYPED_MOST);
}
END_TEST

START_TEST(a_full_field_says_so_and_takes_what_has_room)
{
    g_autofree char *many = g_strnfill(2 * TYPED_MOST, '9');
    gsize taken = typing_add_text(&typing, many);
    ck_assert_uint_eq(taken, typing.text->len);
    ck_assert_uint_gt(taken, TYPED_MOST / 2);
    ck_assert_uint_le(taken, TYPED_MOST);
    ck_assert_int_eq(press_text(ASKS_NUMBER, "9").kind, PRESS_SAY);
}
END_TEST

START_TEST(a_burst_never_goes_behind_digits_that_were_typed)
{
    ck_assert(typing_fits_burst(&typing, ASKS_NUMBER, "90.026"));
    ck_assert(typing_fits_burst(&typing, ASKS_TICK, "75"));
    press_text(ASKS_NUMBER, "9");
    ck_assert(!typing_fits_burst(&typing, ASKS_NUMBER, "0.026"));
    ck_assert(!typing_fits_burst(&typing, ASKS_TICK, "75"));
    ck_assert(typing_fits_burst(&typing, ASKS_TEXT, " words"));
}
END_TEST

START_TEST(a_burst_that_was_not_taken_gives_way_to_the_next_until_somebody_types)
{
    typing_add_burst(&typing, "3.6");
    ck_assert(!typing_fits_burst(&typing, ASKS_NUMBER, "0.36"));
    typing.sent = TRUE;
    ck_assert(typing_fits_burst(&typing, ASKS_NUMBER, "0.36"));
    typing_add_burst(&typing, "0.36");
    ck_assert_str_eq(typing.text->str, "0.36");
    typing.sent = TRUE;
    typing_add(&typing, '1');
    ck_assert(!typing_fits_burst(&typing, ASKS_NUMBER, "0.36"));
    typing.sent = TRUE;
    const Key backspace = {PRESSED_BACKSPACE, 0, 1};
    typing_press(&typing, ASKS_NUMBER, &backspace);
    ck_assert(!typing_fits_burst(&typing, ASKS_NUMBER, "0.36"));
}
END_TEST

START_TEST(a_burst_finds_no_field_in_a_list_or_a_question)
{
    const Asks without[] = {ASKS_NOTHING, ASKS_LINE, ASKS_DIGIT, ASKS_KEY};
    for (gsize i = 0; i < G_N_ELEMENTS(without); i++)
        ck_assert(!typing_fits_burst(&typing, without[i], "1"));
    g_autofree char *many = g_strnfill(TYPED_MOST, 'x');
    ck_assert(!typing_fits_burst(&typing, ASKS_TEXT, many));
}
END_TEST

START_TEST(any_key_goes_back_and_one_upholds)
{
    for (const char *key = "x0q /9"; *key; key++) {
        const char one[] = {*key, '\0'};
        ck_assert_int_eq(press_text(ASKS_KEY, one).action, ACTION_UP);
    }
    ck_assert_int_eq(press_text(ASKS_KEY, "u").action, ACTION_UPHOLD);
    expect_action(press_key(ASKS_KEY, PRESSED_ENTER, 0), ACTION_TAKE);
    const Key bounced = {PRESSED_ENTER, 0, now + 200000};
    ck_assert_int_eq(typing_press(&typing, ASKS_KEY, &bounced).kind, PRESS_SAY);
    ck_assert_int_eq(press_text(ASKS_KEY, "1").action, ACTION_UPHOLD);
    ck_assert_int_eq(press_text(ASKS_KEY, "w").action, ACTION_WHY);
}
END_TEST

START_TEST(a_list_takes_digits_and_signs_alone)
{
    press_text(ASKS_LINE, "1");
    ck_assert_int_eq(press_text(ASKS_LINE, "x").kind, PRESS_NOTHING);
    ck_assert_int_eq(press_text(ASKS_LINE, "\xd9\xa3").kind, PRESS_NOTHING); // an Arabic 3
    ck_assert_str_eq(typing.text->str, "1");
}
END_TEST

START_TEST(nothing_but_words_begins_with_a_blank)
{
    const Asks fields[] = {ASKS_NUMBER, ASKS_TICK};
    for (gsize i = 0; i < G_N_ELEMENTS(fields); i++) {
        ck_assert_int_eq(press_text(fields[i], " ").kind, PRESS_SAY);
        ck_assert_str_eq(typing.text->str, "");
    }
    ck_assert_int_eq(press_text(ASKS_NUMBER, "2 5").kind, PRESS_TYPED);
    ck_assert_str_eq(typing.text->str, "2 5");
}
END_TEST

START_TEST(enter_held_down_is_dropped_as_long_as_it_is)
{
    ck_assert_int_eq(press_key(ASKS_TICK, PRESSED_ENTER, 0).kind, PRESS_ENTER);
    for (guint i = 0; i < 20; i++) {
        now += ENTER_GAP / 4;
        ck_assert_int_eq(typing_press(&typing, ASKS_TICK, &(Key){PRESSED_ENTER, 0, now}).kind,
                         PRESS_SAY);
    }
}
END_TEST

START_TEST(a_key_held_down_acts_once)
{
    ck_assert_int_eq(press_text(ASKS_LINE, "q").kind, PRESS_ACTION);
    for (guint i = 0; i < 20; i++) {
        now += REPEAT_GAP / 3;
        ck_assert_int_eq(typing_press(&typing, ASKS_LINE, &(Key){PRESSED_CHARACTER, 'q', now}).kind,
                         PRESS_SAY);
    }
    now += REPEAT_GAP;
    ck_assert_int_eq(typing_press(&typing, ASKS_LINE, &(Key){PRESSED_CHARACTER, 'q', now}).kind,
                     PRESS_ACTION);
}
END_TEST

START_TEST(a_digit_held_down_answers_one_question)
{
    const Key key = {PRESSED_CHARACTER, '1', now + G_USEC_PER_SEC};
    const Key again = {PRESSED_CHARACTER, '1', key.at + REPEAT_GAP / 3};
    const Key other = {PRESSED_CHARACTER, '2', again.at + REPEAT_GAP / 3};
    ck_assert_int_eq(typing_press(&typing, ASKS_DIGIT, &key).kind, PRESS_DIGIT);
    ck_assert_int_eq(typing_press(&typing, ASKS_DIGIT, &again).kind, PRESS_SAY);
    ck_assert_int_eq(typing_press(&typing, ASKS_DIGIT, &other).kind, PRESS_DIGIT);
}
END_TEST

START_TEST(backspace_held_down_erases_and_leaves_nothing)
{
    press_text(ASKS_LINE, "12");
    Key key = {PRESSED_BACKSPACE, 0x7f, now + G_USEC_PER_SEC};
    for (guint i = 0; i < 6; i++, key.at += REPEAT_GAP / 3)
        ck_assert_int_eq(typing_press(&typing, ASKS_LINE, &key).kind,
                         i < 2 ? PRESS_TYPED : PRESS_SAY);
}
END_TEST

// What the list of actions says must be unmistakable.
START_TEST(no_two_actions_share_a_letter_or_a_digit)
{
    for (guint i = 1; i < ACTIONS; i++) {
        const ActionInfo *info = action_info((Action)i);
        ck_assert_ptr_nonnull(info->about);
        if (i >= ACTION_GAUGE) // two of them stand on one row of the help page
            ck_assert_uint_le(strlen(info->about), 32);
        if (info->letter)
            ck_assert_int_eq(action_of_letter((gunichar)info->letter), i);
        if (info->more >= 0)
            ck_assert_int_eq(action_of_more((guint)info->more), i);
    }
    for (guint digit = 0; digit < 10; digit++)
        ck_assert_int_ne(action_of_more(digit), ACTION_NONE);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        a_reading_is_its_digits_and_enter,
        a_sign_alone_and_enter_is_a_command,
        star_and_slash_act_only_where_no_number_stands,
        letters_act_on_an_empty_field_and_are_units_in_a_number,
        words_are_only_words,
        a_name_begins_with_no_sign_that_acts,
        enter_on_an_empty_number_does_nothing_ever,
        enter_on_an_empty_line_does_nothing_ever,
        a_second_enter_so_soon_is_dropped_and_said,
        an_enter_late_of_a_burst_is_its_own,
        an_enter_behind_that_of_a_burst_is_dropped_and_said,
        escape_empties_the_field,
        backspace_erases_and_never_leaves_the_bench,
        a_question_takes_one_digit,
        a_word_at_a_question_does_nothing,
        a_name_typed_at_a_list_strikes_nothing,
        the_pad_without_its_lock_is_said,
        controls_never_stand_in_a_field,
        a_full_field_says_so_and_takes_what_has_room,
        a_burst_never_goes_behind_digits_that_were_typed,
        a_burst_that_was_not_taken_gives_way_to_the_next_until_somebody_types,
        a_burst_finds_no_field_in_a_list_or_a_question,
        any_key_goes_back_and_one_upholds,
        a_list_takes_digits_and_signs_alone,
        nothing_but_words_begins_with_a_blank,
        enter_held_down_is_dropped_as_long_as_it_is,
        a_key_held_down_acts_once,
        a_digit_held_down_answers_one_question,
        backspace_held_down_erases_and_leaves_nothing,
        no_two_actions_share_a_letter_or_a_digit};
    TCase *tcase = tcase_create("typing");
    tcase_add_checked_fixture(tcase, begin, end);
    for (gsize i = 0; i < G_N_ELEMENTS(tests); i++)
        tcase_add_test(tcase, tests[i]);
    Suite *suite = suite_create("typing");
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? 1 : 0;
}
