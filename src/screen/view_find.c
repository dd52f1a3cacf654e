// Any words: the entries that hold them, of every build and of the shop.
#include "view.h"

#include <standbook/work/found.h>
#include <string.h>

typedef struct {
    GPtrArray *found; // Found *; NULL before anything was asked
    char *words;      // that were asked
    gboolean asking;  // words are typed; else a line of what was found is chosen
} Find;

static gpointer open(Desk *desk, const char *argument)
{
    Find *find = g_new0(Find, 1);
    (void)desk;
    (void)argument;
    find->asking = TRUE;
    return find;
}

static void close(gpointer state)
{
    Find *find = state;
    if (find->found)
        g_ptr_array_unref(find->found);
    g_free(find->words);
    g_free(find);
}

static guint builds_in(const GPtrArray *all)
{
    g_autoptr(GHashTable) labels = g_hash_table_new(g_str_hash, g_str_equal);
    for (guint i = 0; i < all->len; i++)
        g_hash_table_add(labels, ((Found *)all->pdata[i])->label);
    return g_hash_table_size(labels);
}

// The newest first: it is what is asked for most.
static const Found *found_at(const Find *find, guint line)
{
    return line < find->found->len ? find->found->pdata[find->found->len - 1 - line] : NULL;
}

static void paint_found(const Find *find, Page *page)
{
    for (guint i = 0; i < find->found->len; i++) {
        const Found *found = found_at(find, i);
        g_autofree char *line = g_strdup_printf("%2u", i + 1);
        Style style = style_of(TYPE_PLAIN, found->struck ? ROLE_FAINT : ROLE_CALM);
        canvas_put(page->body, i, 0, 3, style, line);
        canvas_put(page->body, i, 4, 8, style, found->label);
        g_autofree char *day = g_strndup(found->when ? found->when : "", 10);
        canvas_put(page->body, i, 13, 0, style, day);
        canvas_put(page->body, i, 24, 3, style, found->by);
        g_autofree char *words = g_strconcat(found->words, found->struck ? "  (struck)" : "", NULL);
        canvas_put(page->body, i, 28, 0, style, words);
    }
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Find *find = state;
    (void)desk;
    (void)typed;
    page_say(&page->status, "The shop");
    page_say(&page->head, "Find%s%s", find->words ? ": " : "", find->words ? find->words : "");
    page->field = find->asking ? ASKS_TEXT : ASKS_LINE;
    page_say(&page->unit, find->asking ? " " : "no.");
    page_say(&page->next, find->asking ? "what was said?" : "which one?");
    page_say(&page->then, find->asking ? "any words: 3 main, a lot, a tool, a name, noisy cold"
                                       : "its line opens that build; Backspace asks anew");
    page->keys[0] = (PageKey){ACTION_TAKE, find->asking ? "Enter" : "number Enter",
                              find->asking ? "finds" : "opens"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", find->asking ? "leaves" : "asks anew"};
    page_key(page, ACTION_HELP, NULL);
    if (!find->found)
        return;
    page_say(&page->count, "%u found in %u", find->found->len, builds_in(find->found));
    paint_found(find, page);
}

static Go look(Find *find, Desk *desk, const char *typed)
{
    GError *error = NULL;
    g_clear_pointer(&find->found, g_ptr_array_unref);
    g_free(find->words);
    find->words = g_strdup(typed);
    find->found = found_words(desk->book, typed, &error);
    if (!find->found) {
        desk_warn_error(desk, error);
        return go(GO_KEEP);
    }
    if (find->found->len == 0) {
        desk_warn(desk, "nothing holds `%s`", typed);
        return go(GO_KEEP);
    }
    find->asking = FALSE;
    return go(GO_STAY);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Find *find = state;
    if (find->asking)
        return *typed ? look(find, desk, typed) : go(GO_UP);
    guint64 line = g_ascii_strtoull(typed, NULL, 10);
    const Found *found = line >= 1 ? found_at(find, (guint)line - 1) : NULL;
    if (!found || !found->when || strcmp(found->label, "shop") == 0) {
        desk_warn(desk,
                  found ? "that stands in the shop's ledger, in no build" : "there is no line %s",
                  typed);
        return go(GO_KEEP);
    }
    desk_take_up(desk, found->label);
    return go_instead(VIEW_STEPS, NULL);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Find *find = state;
    (void)desk;
    if (action != ACTION_UP || find->asking)
        return go(GO_DEFAULT);
    find->asking = TRUE;
    return go(GO_STAY);
}

const ViewOps find_view = {
    .name = "find", .open = open, .close = close, .paint = paint, .enter = enter, .act = act};
