// What a verdict rests on: its figures, its notes, and the entries about it.
#include "view.h"
#include "widget_groups.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <standbook/work/entry_words.h>
#include <string.h>

// The state is the requirement's name (requirement_name).
static gpointer open(Desk *desk, const char *argument)
{
    (void)desk;
    return g_strdup(argument);
}

static const Requirement *asked(const char *name, const Assessment *assessment)
{
    for (guint i = 0; i < assessment->requirements->len; i++) {
        g_autofree char *each = requirement_name(assessment->requirements->pdata[i]);
        if (strcmp(each, name) == 0)
            return assessment->requirements->pdata[i];
    }
    return NULL;
}

static guint put(Page *page, guint row, Style style, const char *text)
{
    canvas_put(page->body, row, 1, 0, style, text);
    return row + 1;
}

static guint put_figures(const Requirement *made, Page *page)
{
    g_autofree char *value = figure_value(made), *doubt = figure_doubt(made);
    g_autofree char *limits = figure_limits(made), *verdict = figure_verdict(made);
    g_autofree char *line = g_strdup_printf("%s %s %s   %s%s", value, doubt, figure_unit(made),
                                            *limits ? "limits " : "no limit known", limits);
    guint row = put(page, 0, style_of(TYPE_BOLD, 0), line);
    row = put(page, row, verdict_style(made->verdict), verdict);
    if (made->reason != REASON_NONE)
        row = put(page, row, style_of(0, 0), reason_sentence(made->reason));
    if (made->check && made->check->formula_text) {
        g_autofree char *formula =
            g_strdup_printf("%s = %s", made->check->name, made->check->formula_text);
        row = put(page, row, style_of(0, 0), formula);
    }
    for (guint i = 0; i < made->notes->len; i++)
        row = put(page, row, style_of(0, 0), made->notes->pdata[i]);
    return row + 1;
}

static gboolean is_about(const Entry *entry, const Requirement *made)
{
    static const char *const fields[] = {"check", "tightening", "part", "name"};
    for (gsize i = 0; i < G_N_ELEMENTS(fields); i++) {
        const char *name = kind_field(entry->kind, fields[i]) ? entry_text(entry, fields[i]) : NULL;
        if (name)
            return strcmp(name, made->name) == 0;
    }
    return FALSE;
}

// Whether an entry names this place, or none in particular.
static gboolean is_here(const Entry *entry, const Requirement *made)
{
    gsize labels = kind_field(entry->kind, "place") ? entry_list_length(entry, "place") : 0;
    for (gsize i = 0; i < labels; i++)
        if (!g_strv_contains((const char *const *)made->labels, entry_list_item(entry, "place", i)))
            return FALSE;
    return TRUE;
}

static void put_entries(Session *session, const Requirement *made, guint row, Page *page)
{
    const GPtrArray *entries = session_entries(session);
    Taken *taken = taken_new((const Entry *const *)entries->pdata, entries->len, NULL);
    for (guint i = 0; i < entries->len; i++) {
        const Entry *entry = entries->pdata[i];
        if (!is_about(entry, made) || !is_here(entry, made))
            continue;
        g_autofree char *words = entry_words(taken, entry), *when = entry_when(entry);
        g_autofree char *line = g_strdup_printf("#%" G_GINT64_FORMAT " %s %s  %s", entry->seq, when,
                                                taken_initials(taken, entry->by), words);
        row = put(page, row, style_of(0, 0), line);
    }
    taken_free(taken);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Session *session = desk_build(desk);
    const Requirement *made = session ? asked(state, session_assessment(session)) : NULL;
    g_autofree char *title = desk_title(desk, desk->number);
    (void)typed;
    page_say(&page->status, "%s", title);
    page_say(&page->head, "Why: %s", (const char *)state);
    page->field = ASKS_KEY;
    page_say(&page->next, "any key goes back");
    page->keys[0] = (PageKey){ACTION_UP, "any key", "goes back and does nothing else"};
    if (made)
        put_entries(session, made, put_figures(made, page), page);
}

const ViewOps why_view = {.name = "why", .open = open, .close = g_free, .paint = paint};
