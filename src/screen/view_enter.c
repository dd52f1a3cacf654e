// Something new of the shop, entered where it is missed: a person, a tool.
#include "beginning.h"
#include "line_words.h"
#include "view.h"

#include <string.h>

// `MO Mab Orrin` as the shop's line has it. NULL with an error if that is no person.
static char *person_line(const char *typed, GError **error)
{
    if (!person_fits(typed, error))
        return NULL;
    const char *blank = strchr(typed, ' ');
    g_autofree char *initials = g_strndup(typed, (gsize)(blank - typed));
    g_autofree char *name = line_quoted(blank + 1);
    return g_strdup_printf("person %s %s", initials, name);
}

static char *tool_line(const char *typed, GError **error)
{
    (void)error;
    return g_strconcat("tool ", typed, NULL);
}

static char *calibration_line(const char *typed, GError **error)
{
    (void)error;
    return g_strconcat("calibration ", typed, NULL);
}

static const struct {
    const char *what, *prompt, *hint;
    char *(*line)(const char *typed, GError **error);
    const char *then; // what is asked next, NULL for nothing
} things[] = {
    {"person", "who?", "initials and name: TB Tess Bell", person_line, NULL},
    {"tool", "which tool?", "W4 \"click wrench\" kind click wrench range 10..60 N·m", tool_line,
     "calibration"},
    {"calibration", "calibrated?", "W4 2025-01-08 due 2026-01-08 good; Backspace if it is not",
     calibration_line, NULL},
};

// The state is the index of the thing.
static gpointer open(Desk *desk, const char *argument)
{
    guint *at = g_new0(guint, 1);
    (void)desk;
    while (*at + 1 < G_N_ELEMENTS(things) && strcmp(things[*at].what, argument) != 0)
        (*at)++;
    return at;
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    guint at = *(guint *)state;
    (void)desk;
    (void)typed;
    page->ask = FALSE;
    page->means = FALSE;
    page->field = ASKS_TEXT;
    page_say(&page->unit, " ");
    page_say(&page->next, "%s", things[at].prompt);
    page_say(&page->then, "%s", things[at].hint);
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter", "enters it"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "on an empty field leaves"};
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    guint at = *(guint *)state;
    GError *error = NULL;
    if (!*typed)
        return go(GO_UP);
    g_autofree char *line = things[at].line(typed, &error);
    if (error)
        desk_warn_error(desk, error);
    if (!line || !desk_shop_line(desk, line))
        return go(GO_KEEP);
    return things[at].then ? go_instead(VIEW_ENTER, g_strdup(things[at].then)) : go(GO_UP);
}

const ViewOps enter_view = {
    .name = "enter", .small = TRUE, .open = open, .close = g_free, .paint = paint, .enter = enter};
