// What may hurt in a step: read before its work, and passed by a key.
#include "telling.h"
#include "view.h"
#include "words.h"

#include <standbook/work/summary.h>
#include <standbook/work/too_soon.h>
#include <string.h>

enum { TEXT_COLUMN = 2, TEXT_WIDTH = PAGE_WIDTH - TEXT_COLUMN - 1 };

// The state is what the bench behind it is opened with: the step, and perhaps a place behind a line
// feed.
static gpointer open(Desk *desk, const char *argument)
{
    (void)desk;
    return g_strdup(argument);
}

static const PlanStep *step_of(gpointer state, Desk *desk)
{
    Session *session = desk_build(desk);
    g_auto(GStrv) parts = g_strsplit(state, "\n", 2);
    return session ? plan_step(session_plan(session), parts[0]) : NULL;
}

// A text in lines as wide as the body; none of it may be cut short. Returns the row behind.
static guint put_wrapped(Canvas *body, guint row, Style style, const char *text)
{
    g_auto(GStrv) words = g_strsplit(text, " ", -1);
    g_autoptr(GString) line = g_string_new(NULL);
    for (guint i = 0; words[i]; i++) {
        g_autofree char *longer = g_strconcat(line->str, line->len ? " " : "", words[i], NULL);
        gboolean fits = canvas_text_width(body, longer) <= TEXT_WIDTH;
        if (!fits && line->len)
            canvas_put(body, row++, TEXT_COLUMN, 0, style, line->str);
        g_string_assign(line, fits ? longer : words[i]);
    }
    canvas_put(body, row, TEXT_COLUMN, 0, style, line->str);
    return row + 1;
}

// A sentence a line.
static guint put_sentences(Canvas *body, guint row, const char *text)
{
    g_auto(GStrv) sentences = g_strsplit(text, ". ", -1);
    for (guint i = 0; sentences[i]; i++) {
        gboolean last = !sentences[i + 1];
        g_autofree char *line = g_strconcat(sentences[i], last ? "" : ".", NULL);
        row = put_wrapped(body, row, style_of(TYPE_BOLD, ROLE_CALM), line);
    }
    return row;
}

// That it is held, if it is, before it is begun all the same. Returns the row behind.
static guint put_held(Canvas *body, guint row, Desk *desk, const PlanStep *step)
{
    g_auto(Told) told = {0};
    g_autofree char *held = told_init(&told, desk) ? summary_held(&told.agenda, step) : NULL;
    return held ? put_wrapped(body, row, style_of(0, 0), held) + 1 : row;
}

// What a clock says against beginning it now; NULL for nothing. The caller frees.
static char *soon_words(Desk *desk, const PlanStep *step)
{
    g_auto(Told) told = {0};
    return told_init(&told, desk) ? too_soon_words(&told.agenda, step, desk->now) : NULL;
}

// That, in front of all else. Returns the row behind.
static guint put_soon(Canvas *body, guint row, Desk *desk, const PlanStep *step, Page *page)
{
    g_autofree char *soon = soon_words(desk, step);
    if (!soon)
        return row;
    g_autofree char *line = g_strdup_printf(
        "%s. What is %s before then is in doubt.", soon,
        strcmp(step->begins, "run") == 0 ? "run" : "filled");
    page_say(&page->next, "%s · +Enter: read, on", soon);
    return put_wrapped(body, row, style_of(TYPE_BOLD, ROLE_UNSURE), line) + 1;
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const PlanStep *step = step_of(state, desk);
    g_autofree char *title = desk_title(desk, desk->number);
    guint row = 1;
    (void)typed;
    page_say(&page->status, "%s", title);
    page->field = ASKS_NOTHING;
    page_say(&page->next, "+Enter: read, on");
    page_key(page, ACTION_ON, "read, on");
    page_key(page, ACTION_UP, "not now");
    if (!step)
        return;
    g_autofree char *words = step_words(step);
    page_say(&page->head, "%s", words);
    page_say(&page->count, "CAUTION");
    row = put_soon(page->body, row, desk, step, page);
    row = put_held(page->body, row, desk, step);
    for (guint i = 0; i < step->cautions->len; i++)
        row = put_sentences(page->body, row, step->cautions->pdata[i]) + 1;
    for (guint i = 0; i < step->dos->len; i++)
        row = put_wrapped(page->body, row, style_of(0, 0), step->dos->pdata[i]);
    canvas_put(page->body, row + 1, TEXT_COLUMN, 0, style_of(0, 0),
               "The maker's current service data, local codes, licensed practice come first.");
}

static Go act(gpointer state, Desk *desk, Action action)
{
    const PlanStep *step = step_of(state, desk);
    if (action != ACTION_ON || !step)
        return go(GO_DEFAULT);
    g_autofree char *line = g_strdup_printf("pick up %s", step->name);
    if (!desk_line(desk, line, NULL))
        return go(GO_STAY);
    return go_instead(VIEW_BENCH, g_strdup(state));
}

const ViewOps caution_view = {.name = "caution",
                              .open = open,
                              .close = g_free,
                              .paint = paint,
                              .act = act,
                              .acts = {ACTION_ON}};
