#include "over_which.h"

#include <string.h>

void over_which_clear(OverWhich *which)
{
    g_free(which->held);
    *which = (OverWhich){.asks = FALSE};
}

void over_which_begin(OverWhich *which)
{
    over_which_clear(which);
    which->asks = TRUE;
}

// NAMES ------------------------------------------------------------------------------------------

static gboolean has_all(const char *name, const char *const *words)
{
    gboolean all = TRUE;
    for (guint i = 0; words[i]; i++)
        all = all && strstr(name, words[i]);
    return all;
}

enum { RANK_WHOLE, RANK_BEGINS, RANK_HAS, RANKS };

static guint rank_of(const char *name, const char *typed, const char *const *words)
{
    g_autofree char *folded = g_utf8_casefold(name, -1);
    return strcmp(folded, typed) == 0        ? RANK_WHOLE
           : g_str_has_prefix(folded, typed) ? RANK_BEGINS
           : has_all(folded, words)          ? RANK_HAS
                                             : RANKS;
}

static char *folded_words(const char *typed)
{
    return g_strstrip(g_utf8_casefold(typed, -1));
}

GPtrArray *over_which_names(const GPtrArray *names, const char *typed)
{
    g_autofree char *folded = folded_words(typed);
    g_auto(GStrv) words = g_strsplit_set(folded, " ", -1);
    GPtrArray *found = g_ptr_array_new();
    for (guint rank = 0; rank < RANKS; rank++)
        for (guint i = 0; i < names->len; i++)
            if (rank_of(names->pdata[i], folded, (const char *const *)words) == rank)
                g_ptr_array_add(found, names->pdata[i]);
    return found;
}

// PAINTING ---------------------------------------------------------------------------------------

static void say_words(Page *page)
{
    page->field = ASKS_TEXT;
    page->explains = TRUE;
    page_say(&page->unit, " ");
    page_say(&page->next, "which check?");
    page_say(&page->then, "words of its name; none for all of them");
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter", "shows it, or asks which one"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "leaves"};
}

static void say_lines(Page *page)
{
    page->field = ASKS_LINE;
    page_say(&page->unit, "no.");
    page_say(&page->next, "which one?");
    page_say(&page->then, "0 Enter shows more lines");
    page->keys[0] = (PageKey){ACTION_TAKE, "number Enter", "shows it"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "asks anew"};
}

void over_which_paint(OverWhich *which, const GPtrArray *names, const char *typed, Page *page)
{
    enum { NUMBER_END = 3, NAME = 5 };
    g_autoptr(GPtrArray) found = over_which_names(names, which->held ? which->held : typed);
    page_say(&page->count, "%u of %u checks", found->len, names->len);
    if (which->held)
        say_lines(page);
    else
        say_words(page);
    page_key(page, ACTION_HELP, NULL);
    for (guint i = 0; i < found->len; i++) {
        g_autofree char *number = g_strdup_printf("%u", i + 1);
        gboolean chosen = which->held && i == which->part.at;
        canvas_put_right(page->body, i, NUMBER_END, style_of(0, 0), number);
        canvas_put(page->body, i, NAME, PAGE_WIDTH - NAME, style_of(chosen ? TYPE_REVERSE : 0, 0),
                   found->pdata[i]);
    }
    if (found->len == 0)
        page_say(&page->remark, "No check that was read and has a limit is called that.");
    ListPart seen = list_part_fitted(&which->part, found->len, page_list_rows(page));
    page_scroll(page, seen.from);
    if (page->height)
        which->part = seen;
}

// KEYS -------------------------------------------------------------------------------------------

static const char *enter_line(OverWhich *which, const GPtrArray *names, const char *typed,
                              Desk *desk, gboolean *keeps)
{
    g_autoptr(GPtrArray) found = over_which_names(names, which->held);
    guint64 line = g_ascii_strtoull(typed, NULL, 10);
    if (line == 0) {
        list_part_turn(&which->part, found->len);
        return NULL;
    }
    if (line <= found->len)
        return found->pdata[line - 1];
    desk_warn(desk, "there is no line %s in this list", typed);
    *keeps = TRUE;
    return NULL;
}

const char *over_which_enter(OverWhich *which, const GPtrArray *names, const char *typed,
                             Desk *desk, gboolean *keeps)
{
    *keeps = FALSE;
    if (which->held)
        return enter_line(which, names, typed, desk, keeps);
    g_autoptr(GPtrArray) found = over_which_names(names, typed);
    g_autofree char *words = folded_words(typed);
    g_autofree char *first = found->len ? g_utf8_casefold(found->pdata[0], -1) : NULL;
    if (found->len == 1 || g_strcmp0(words, first) == 0)
        return found->pdata[0];
    if (found->len == 0) {
        desk_warn(desk,
                  "no check that was read and has a limit is called `%s`; ask with fewer words",
                  typed);
        *keeps = TRUE;
        return NULL;
    }
    which->held = g_strdup(typed);
    which->part = (ListPart){.at = 0};
    return NULL;
}

void over_which_move(OverWhich *which, const GPtrArray *names, gint direction)
{
    g_autoptr(GPtrArray) found = over_which_names(names, which->held ? which->held : "");
    if (which->held)
        list_part_move(&which->part, found->len, direction);
}

void over_which_up(OverWhich *which)
{
    if (which->held)
        over_which_begin(which);
    else
        over_which_clear(which);
}
