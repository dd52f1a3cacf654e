#include "list_part.h"

#include <check.h>

// Every line is seen when a list is turned to its end, whatever the room, and the next turn begins
// anew.
START_TEST(no_line_is_passed_over)
{
    for (guint lines = 0; lines <= 30; lines++)
        for (guint rows = 1; rows <= 31; rows++) {
            ListPart part = {0};
            guint seen = 0, turns = 0;
            do {
                part = list_part_fitted(&part, lines, rows);
                ck_assert_uint_le(part.rows, rows);
                ck_assert_uint_le(part.from, seen);
                seen = part.from + part.rows;
                list_part_turn(&part, lines);
                turns++;
            } while (part.at);
            ck_assert_uint_eq(seen, lines);
            ck_assert_uint_eq(turns, lines ? (lines + rows - 1) / rows : 1);
        }
}
END_TEST

static gboolean is_seen(const ListPart *part)
{
    return part->from <= part->at && part->at < part->from + part->rows;
}

START_TEST(the_line_chosen_is_seen)
{
    ListPart part = {0};
    for (gint i = 0; i < 40; i++) {
        part = list_part_fitted(&part, 20, 6);
        ck_assert(is_seen(&part));
        list_part_move(&part, 20, i < 25 ? 1 : -1);
    }
    ck_assert_uint_eq(part.at, 4);
    part = list_part_fitted(&part, 20, 6);
    ck_assert_uint_eq(part.from, 4); // the way up scrolls no sooner than it must
}
END_TEST

// A smaller window, and a list that another filter left shorter.
START_TEST(less_room_and_fewer_lines)
{
    ListPart part = {.at = 11, .from = 0};
    part = list_part_fitted(&part, 20, 12);
    ck_assert_uint_eq(part.from, 0);
    part = list_part_fitted(&part, 20, 4);
    ck_assert(is_seen(&part));
    part = list_part_fitted(&part, 3, 4);
    ck_assert_uint_eq(part.at, 2);
    ck_assert_uint_eq(part.from, 0);
    part = list_part_fitted(&part, 0, 4);
    ck_assert_uint_eq(part.rows, 0);
}
END_TEST

int main(void)
{
    TCase *tcase = tcase_create("list part");
    tcase_add_test(tcase, no_line_is_passed_over);
    tcase_add_test(tcase, the_line_chosen_is_seen);
    tcase_add_test(tcase, less_room_and_fewer_lines);
    Suite *suite = suite_create("list part");
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? 1 : 0;
}
