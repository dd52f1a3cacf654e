// Help: the keys of the screen it was opened from, what is written and what signs mean, then what
// else of the list of actions works there. Any key goes back and does nothing else; Enter turns to
// what does not fit.
#include "view.h"

#include <string.h>

typedef struct {
    char *name; // of the screen it was opened from
    PageTurn turn;
} Help;

static gpointer open(Desk *desk, const char *argument)
{
    Help *help = g_new0(Help, 1);
    (void)desk;
    help->name = g_strdup(argument ? argument : "");
    return help;
}

static void close(gpointer state)
{
    Help *help = state;
    g_free(help->name);
    g_free(help);
}

static const char *const notations[] = {
    " A number: 2.0512   .0021   2-5/8   17/32 in   63,51 mm   <0.03   +27 on a dial",
};

static const char *const signs[] = {
    " √ pass · open  FAIL: ▲ above ▼ below × not so  ? DOUBT ◆ conc. = noted − n/a",
    " 0.050 ├────▒▒█▒▒▒─────┤ 0.080   █ reading  ▒ its doubt  ├ ┤ limits  ┼ aim",
};

static const char *const safety[] = {
    " The maker's current service data, local codes, licensed practice come first.",
};

static void put_lines(Page *page, guint *row, const char *const *lines, gsize count)
{
    for (gsize i = 0; i < count; i++)
        canvas_put(page->body, (*row)++, 0, 0, style_of(0, 0), lines[i]);
}

enum { BODY_ROWS = 16 }; // at the least height

enum { FIRST = 1, SECOND = 41, KEY_WIDTH = 6, SAID = FIRST + KEY_WIDTH + 1 };

// One key the width of the page.
static void put_key(Page *page, guint *row, const char *keys, const char *said)
{
    guint behind = canvas_put(page->body, *row, FIRST, 0, style_of(0, 0), keys) + 1;
    canvas_put(page->body, (*row)++, MAX(behind, SAID), 0, style_of(0, 0), said);
}

// The keys that the screen under it has in its last row, as it names them: what it calls like the
// list of actions is told as there. Returns the actions of which nothing more is to be said.
static Actions put_here(Page *page, guint *row, const PageKey keys[KEYS_MOST])
{
    Actions told = action_bit(ACTION_NONE) | action_bit(ACTION_HELP);
    for (guint i = 0; i < KEYS_MOST && keys[i].action != ACTION_NONE; i++) {
        const ActionInfo *info = action_info(keys[i].action);
        gboolean usual = strcmp(keys[i].word, info->word) == 0;
        if (keys[i].action != ACTION_HELP)
            put_key(page, row, keys[i].keys, usual ? info->about : keys[i].word);
        told |= action_bit(keys[i].action);
    }
    return told;
}

static void put_letter(Page *page, guint row, guint column, Action action)
{
    const ActionInfo *info = action_info(action);
    g_autofree char *keys =
        info->more >= 0 ? g_strdup_printf("%s   %d", info->keys, info->more) : g_strdup(info->keys);
    canvas_put(page->body, row, column, KEY_WIDTH, style_of(0, 0), keys);
    canvas_put(page->body, row, column + KEY_WIDTH + 1, 0, style_of(0, 0), info->about);
}

// What else works there: the number pad one below the other, the letters in two columns.
static void put_rest(Page *page, guint *row, Actions works, Actions told)
{
    Action letters[ACTIONS];
    guint count = 0;
    for (guint i = 1; i < ACTIONS; i++) {
        const ActionInfo *info = action_info((Action)i);
        if (!(works & ~told & action_bit((Action)i)))
            continue;
        if (i <= ACTION_MORE)
            put_key(page, row, info->keys, info->about);
        else
            letters[count++] = (Action)i;
    }
    guint rows = (count + 1) / 2;
    for (guint i = 0; i < count; i++)
        put_letter(page, *row + i % rows, i < rows ? FIRST : SECOND, letters[i]);
    *row += rows;
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
    Help *help = state;
    guint row = 0;
    PageKey keys[KEYS_MOST];
    Actions works = view_actions(help->name, desk->book != NULL) &
                    typing_actions(page->field, page_offers(page));
    (void)typed;
    memcpy(keys, page->keys, sizeof keys);
    clear_body(page);
    page_say(&page->head, "Help: %s", help->name);
    Actions told = put_here(page, &row, keys);
    put_lines(page, &row, notations, G_N_ELEMENTS(notations));
    put_lines(page, &row, signs, G_N_ELEMENTS(signs));
    put_rest(page, &row, works, told);
    put_lines(page, &row, safety, G_N_ELEMENTS(safety));
    page->any_key = TRUE;
    page_turn(page, &help->turn);
    page->keys[0] =
        (PageKey){ACTION_UP, "any key",
                  help->turn.rest ? "goes back and does nothing else; Enter first shows all"
                                  : "goes back and does nothing else"};
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Help *help = state;
    (void)desk;
    return go(action == ACTION_TAKE && page_turn_on(&help->turn) ? GO_STAY : GO_DEFAULT);
}

const ViewOps help_view = {.name = "help",
                           .small = TRUE,
                           .over = TRUE,
                           .open = open,
                           .close = close,
                           .paint = paint,
                           .act = act};
