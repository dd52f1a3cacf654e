// What stands in no ledger yet: it is kept beside the store as long as the program runs, and taken
// up when the next one starts.
#include "screen_inside.h"

#include "burst.h"

#include <string.h>

// `trial main bore 1, front, TL-0418`: in whose field the cursor stands.
static char *place_words(const Screen *screen)
{
    g_auto(GStrv) asked = g_strsplit(screen->painted.next ? screen->painted.next : "", "   ", 2);
    const char *number = screen->desk.number;
    return g_strconcat(asked[0] ? asked[0] : "", number ? ", " : "", number, NULL);
}

// The number of a line in a list, or of an answer, is a command and nothing to be kept.
static void add_typed(const Screen *screen, GPtrArray *all)
{
    const char *typed = screen->typing.text->str;
    g_autofree char *place = place_words(screen);
    if (*typed && field_takes_burst(screen->painted.field))
        unplaced_add(all, typed, place, screen->typed_at);
}

// What stands in the field of a view under a question.
static void add_waiting(const Screen *screen, GPtrArray *all)
{
    for (guint i = 0; i < screen->views->len; i++) {
        const char *typed = g_array_index(screen->views, Opened, i).typed;
        if (typed && *typed)
            unplaced_add(all, typed, NULL, screen->typed_at);
    }
}

void screen_park_typed(Screen *screen)
{
    add_typed(screen, screen->desk.unplaced);
    g_string_truncate(screen->typing.text, 0);
}

void screen_park_waiting(Screen *screen)
{
    add_waiting(screen, screen->desk.unplaced);
    for (guint i = 0; i < screen->views->len; i++)
        g_clear_pointer(&g_array_index(screen->views, Opened, i).typed, g_free);
}

void screen_save_keys(Screen *screen, const GArray *keys)
{
    g_autoptr(GArray) lines = burst_lines(keys);
    gboolean field = field_takes_burst(screen->field), sent = keys_are_burst(keys);
    if (lines->len && field && (sent || screen->typing.text->len)) {
        const char *first = g_array_index(lines, BurstLine, 0).text;
        gsize taken = typing_add_text(&screen->typing, first);
        if (first[taken])
            unplaced_add(screen->desk.unplaced, first + taken, NULL, screen->typed_at);
    }
    for (guint i = field ? 1 : 0; i < lines->len && sent; i++)
        unplaced_add(screen->desk.unplaced, g_array_index(lines, BurstLine, i).text, NULL,
                     screen->typed_at);
}

void screen_keep(Screen *screen)
{
    const Desk *desk = &screen->desk;
    g_autoptr(GPtrArray) fields = unplaced_new(), all = g_ptr_array_new();
    add_typed(screen, fields);
    add_waiting(screen, fields);
    g_ptr_array_extend(all, desk->unplaced, NULL, NULL);
    g_ptr_array_extend(all, fields, NULL, NULL);
    g_autofree char *text = unplaced_write(all, desk->drafts);
    aside_keep(screen->aside, text);
}

void screen_take_up(Screen *screen)
{
    Desk *desk = &screen->desk;
    g_autoptr(GPtrArray) left = NULL;
    screen->aside = aside_open(desk->options->store, &left);
    for (guint i = 0; i < left->len; i++)
        unplaced_read(left->pdata[i], desk->unplaced, desk->drafts);
    guint count = desk->unplaced->len;
    if (!count)
        return;
    g_autofree char *how = unplaced_how(desk->unplaced, 0, desk->now);
    g_autofree char *more = count > 1 ? g_strdup_printf("; %u more", count - 1) : g_strdup("");
    desk_last(desk, "unplaced when the terminal went: %s, %s%s", unplaced_text(desk->unplaced, 0),
              how ? how : "", more);
}
