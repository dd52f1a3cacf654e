// Help, made from the list of actions. Any key goes back and does nothing else.
#include "view.h"

#include <string.h>

static gpointer open(Desk *desk, const char *argument)
{
    (void)desk;
    return g_strdup(argument ? argument : "");
}

static const char *const notations[] = {
    " A number: 2.0512   .0021   2-5/8   17/32 in   63,51 mm   <0.03   +27 on a dial",
};

static const char *const signs[] = {
    " √ pass  · open  ▲ FAIL above  ▼ FAIL below  ? DOUBT  ◆ conc.  = noted  − n/a",
    " 0.050 ├────▒▒█▒▒▒─────┤ 0.080   █ reading  ▒ its doubt  ├ ┤ limits  ┼ aim",
    "",
    " The maker's current service data, local codes, licensed practice come first.",
};

static void put_lines(Page *page, guint *row, const char *const *lines, gsize count)
{
    for (gsize i = 0; i < count; i++)
        canvas_put(page->body, (*row)++, 0, 0, style_of(0, 0), lines[i]);
}

static void put_action(Page *page, guint row, guint column, Action action)
{
    const ActionInfo *info = action_info(action);
    g_autofree char *keys =
        info->more >= 0 ? g_strdup_printf("%s   %d", info->keys, info->more) : g_strdup(info->keys);
    canvas_put(page->body, row, column, 6, style_of(0, 0), keys);
    canvas_put(page->body, row, column + 7, 0, style_of(0, 0), info->about);
}

// The keys of the number pad one below the other, beside the last of them the one that empties the
// field; the letters in two columns: all of them are seen on the least screen.
static void put_actions(Page *page, guint *row)
{
    enum { FIRST = 1, SECOND = 41, ROWS = (ACTIONS - ACTION_MORE + 1) / 2 };
    for (guint i = 1; i < ACTION_CLEAR; i++)
        put_action(page, (*row)++, FIRST, (Action)i);
    put_action(page, *row - 1, SECOND, ACTION_CLEAR);
    for (guint i = 0; i < ACTIONS - ACTION_MORE; i++)
        put_action(page, *row + i % ROWS, i < ROWS ? FIRST : SECOND, (Action)(ACTION_MORE + i));
    *row += ROWS;
}

// The rows of the screen under it stay: what is asked there, and what was typed.
static void clear_body(Page *page)
{
    Canvas *body = canvas_new_growing(PAGE_WIDTH, page->body->ascii);
    canvas_free(page->body);
    canvas_free(page->detail);
    page->body = body;
    page->detail = NULL;
    page->heads = page->focus = 0;
    g_clear_pointer(&page->remark, g_free);
    g_clear_pointer(&page->count, g_free);
    memset(page->keys, 0, sizeof page->keys);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    guint row = 0;
    (void)desk;
    (void)typed;
    clear_body(page);
    page_say(&page->head, "Help: %s", (const char *)state);
    put_lines(page, &row, notations, G_N_ELEMENTS(notations));
    put_actions(page, &row);
    put_lines(page, &row, signs, G_N_ELEMENTS(signs));
    page->any_key = TRUE;
    page->keys[0] = (PageKey){ACTION_UP, "any key", "goes back and does nothing else"};
}

const ViewOps help_view = {
    .name = "help", .small = TRUE, .over = TRUE, .open = open, .close = g_free, .paint = paint};
