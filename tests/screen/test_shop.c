#include "shop_rows.h"

#include <check.h>
#include <string.h>

enum { NOON = 1741867200 }; // 2025-03-13 12:00

static Page shop_page(void)
{
    Page page;
    page_init(&page, 80, FALSE);
    return page;
}

static GPtrArray *one_card(char *tally)
{
    GPtrArray *cards = g_ptr_array_new_with_free_func(card_free);
    Card *card = card_new("TL-0397");
    card->tally = g_strdup(tally);
    card->waits.since = g_strdup("due 18 Mar");
    g_ptr_array_add(cards, card);
    return cards;
}

START_TEST(all_seven_counts_are_whole)
{
    Page page = shop_page();
    g_autoptr(GPtrArray) cards =
        one_card("3 FAIL  130 DOUBT  427 pass  191 noted  11 conc.  313 open  12 n/a");
    guint row;
    ck_assert_uint_eq(shop_cards(cards, 0, G_MAXUINT, NULL, page.body, &row), 1);
    ck_assert_uint_eq(row, 4);
    g_autofree char *text = canvas_text(page.body);
    ck_assert_ptr_nonnull(strstr(text, "              3 FAIL  130 DOUBT  427 pass  191 noted  "
                                       "       due 18 Mar\n"
                                       "              11 conc.  313 open  12 n/a\n"));
    page_clear(&page);
}
END_TEST

START_TEST(few_counts_stand_on_one_row)
{
    Page page = shop_page();
    g_autoptr(GPtrArray) cards = one_card("461 pass  2 open");
    guint row;
    ck_assert_uint_eq(shop_cards(cards, 0, G_MAXUINT, cards->pdata[0], page.body, &row), 1);
    ck_assert_uint_eq(row, 3);
    ck_assert_uint_eq(canvas_cell(page.body, 1, 0)->character, (gunichar)0x3e); // >
    page_clear(&page);
}
END_TEST

// Builds are whole or on the next part of the list, and at least one is seen.
START_TEST(builds_have_room_or_wait)
{
    static const struct {
        guint from, room, shown, row;
    } rows[] = {{0, 7, 3, 7}, {0, 6, 2, 5}, {3, 9, 2, 5}, {4, 2, 1, 3}, {5, 9, 0, 1}};
    g_autoptr(GPtrArray) cards = one_card("461 pass  2 open");
    for (guint i = 0; i < 4; i++)
        g_ptr_array_add(cards, card_new("TL-0405"));
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        Page page = shop_page();
        guint row;
        ck_assert_uint_eq(shop_cards(cards, rows[i].from, rows[i].room, NULL, page.body, &row),
                          rows[i].shown);
        ck_assert_uint_eq(row, rows[i].row);
        page_clear(&page);
    }
}
END_TEST

static void add_clock(GArray *clocks, const char *number, gint64 minutes)
{
    ShopClock one = {number, {CLOCK_NO_RUN, "sump", "C1", NOON + minutes * 60}};
    g_array_append_val(clocks, one);
}

START_TEST(the_soonest_of_all_builds_is_first)
{
    Page page = shop_page();
    g_autoptr(GArray) clocks = g_array_new(FALSE, FALSE, sizeof(ShopClock));
    add_clock(clocks, "B-1", 30);
    add_clock(clocks, "B-1", 80);
    add_clock(clocks, "B-2", 5);
    add_clock(clocks, "B-2", 70);
    ck_assert_uint_eq(shop_clocks(clocks, 0, NOON, page.body), 5);
    g_autofree char *text = canvas_text(page.body);
    g_auto(GStrv) rows = g_strsplit(text, "\n", -1);
    static const char *const parts[] = {"B-2 sump", "B-1 sump", "B-2 sump", "B-1 sump"};
    static const char *const left[] = {" 5 min left", " 30 min left", " 70 min left",
                                       " 80 min left"};
    for (gsize i = 0; i < G_N_ELEMENTS(parts); i++) {
        ck_assert_ptr_nonnull(strstr(rows[i], parts[i]));
        ck_assert(g_str_has_suffix(rows[i], left[i]));
    }
    page_clear(&page);
}
END_TEST

START_TEST(what_is_left_is_not_an_hour_less)
{
    static const struct {
        guint minutes;
        const char *left;
    } rows[] = {{89, "89 min left"},
                {119, "1 h 59 min left"},
                {120, "2 h left"},
                {23 * 60 + 50, "24 h left"},
                {24 * 60 + 20, "24 h left"}};
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        const Clock clock = {.at = NOON + rows[i].minutes * 60};
        g_autofree char *left = clock_left(&clock, NOON);
        ck_assert_str_eq(left, rows[i].left);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("shop");
    TCase *lists = tcase_create("lists");
    tcase_add_test(lists, all_seven_counts_are_whole);
    tcase_add_test(lists, few_counts_stand_on_one_row);
    tcase_add_test(lists, builds_have_room_or_wait);
    tcase_add_test(lists, the_soonest_of_all_builds_is_first);
    tcase_add_test(lists, what_is_left_is_not_an_hour_less);
    suite_add_tcase(suite, lists);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? 0 : 1;
}
