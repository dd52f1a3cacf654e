// Accepts what is outside its requirement: seven lines, the last of which makes the entry.
#include "line_words.h"
#include "view.h"
#include "widget_groups.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <string.h>

enum { LINES = 7, LINE_WHY = 0, LINE_TOLD = 4, LINE_DECIDES = 6 };

typedef struct {
    char *name;         // of the requirement
    char *target;       // as a log line writes it
    char *lines[LINES]; // NULL: not written yet
    guint at;
} Concession;

static const struct {
    const char *word, *hint;
} lines[LINES] = {
    {"why", "why it is as it is"},
    {"instead", "what else could be done, and its price"},
    {"effect", "what the customer may notice"},
    {"watch", "what to look at, and when"},
    {"told", "who was told, and how: present, by telephone, letter or mail"},
    {"answer", "what the customer said"},
    {"decides", "initials of who decides; Enter makes the entry"},
};

// The argument is the name of the requirement (requirement_name), a line feed, its target.
static gpointer open(Desk *desk, const char *argument)
{
    Concession *concession = g_new0(Concession, 1);
    g_auto(GStrv) parts = g_strsplit(argument, "\n", 2);
    concession->name = g_strdup(parts[0]);
    concession->target = g_strdup(parts[1]);
    GStrv draft = g_hash_table_lookup(desk->drafts, concession->name);
    for (guint i = 0; draft && draft[i]; i++)
        concession->lines[concession->at++] = g_strdup(draft[i]);
    return concession;
}

// What is written so far stays for the next time.
static void keep_draft(const Concession *concession, Desk *desk)
{
    g_autoptr(GStrvBuilder) draft = g_strv_builder_new();
    for (guint i = 0; i < concession->at; i++)
        g_strv_builder_add(draft, concession->lines[i]);
    g_hash_table_insert(desk->drafts, g_strdup(concession->name), g_strv_builder_end(draft));
}

static void close(gpointer state)
{
    Concession *concession = state;
    for (guint i = 0; i < LINES; i++)
        g_free(concession->lines[i]);
    g_free(concession->name);
    g_free(concession->target);
    g_free(concession);
}

static const Requirement *conceded(const Concession *concession, Desk *desk)
{
    Session *session = desk_build(desk);
    const Assessment *assessment = session ? session_assessment(session) : NULL;
    for (guint i = 0; assessment && i < assessment->requirements->len; i++) {
        g_autofree char *name = requirement_name(assessment->requirements->pdata[i]);
        if (strcmp(name, concession->name) == 0)
            return assessment->requirements->pdata[i];
    }
    return NULL;
}

static void paint_figures(const Requirement *made, Page *page)
{
    g_autofree char *name = figure_name(made), *value = figure_value(made);
    g_autofree char *doubt = figure_doubt(made), *limits = figure_limits(made);
    g_autofree char *fault = fault_words(made);
    g_autofree char *line = g_strdup_printf("%s   %s %s %s%s   limits %s", name, value, doubt,
                                            figure_unit(made), fault, limits);
    canvas_put(page->body, 0, 1, 0, verdict_style(made->verdict), line);
}

static void paint_lines(const Concession *concession, Page *page)
{
    for (guint i = 0; i < LINES; i++) {
        g_autofree char *number = g_strdup_printf("%u %s", i + 1, lines[i].word);
        Style style = style_of(i == concession->at ? TYPE_BOLD : TYPE_PLAIN, ROLE_CALM);
        canvas_put(page->body, 2 + i, 1, 11, style, number);
        canvas_put(page->body, 2 + i, 13, 0, style_of(0, 0),
                   concession->lines[i] ? concession->lines[i] : "·");
    }
    canvas_put(page->body, 3 + LINES, 1, 0, style_of(0, 0),
               "It will read ◆ conceded wherever it stands, beside its value, and never pass.");
    canvas_put(page->body, 4 + LINES, 1, 0, style_of(0, 0),
               "Lines 1 to 6 print on the customer's sheet as they are written here.");
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Concession *concession = state;
    const Requirement *made = conceded(concession, desk);
    g_autofree char *title = desk_title(desk, desk->number);
    (void)typed;
    page_say(&page->status, "%s", title);
    page_say(&page->head, "Concession: %s", concession->name);
    page_say(&page->count, "%u of %u lines written", concession->at, LINES);
    if (made)
        paint_figures(made, page);
    paint_lines(concession, page);
    page->field = ASKS_TEXT;
    page_say(&page->unit, " ");
    page_say(&page->next, "%u %s", concession->at + 1, lines[concession->at].word);
    page_say(&page->then, "%s", lines[concession->at].hint);
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter", "next line"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "on an empty line goes back"};
}

// How the customer was told, out of what was written; NULL if it does not say.
static const char *way_told(const char *told)
{
    static const char *const ways[] = {"telephone", "letter", "mail", "present"};
    for (gsize i = 0; i < G_N_ELEMENTS(ways); i++)
        if (strstr(told, ways[i]))
            return ways[i];
    return NULL;
}

static char *concession_line(const Concession *concession)
{
    g_autoptr(GString) words = g_string_new(concession->lines[LINE_WHY]);
    for (guint i = 1; i < LINE_DECIDES; i++)
        if (*concession->lines[i])
            g_string_append_printf(words, " %c%s: %s", g_ascii_toupper(lines[i].word[0]),
                                   lines[i].word + 1, concession->lines[i]);
    g_autofree char *quoted = line_quoted(words->str);
    const char *way = way_told(concession->lines[LINE_TOLD]);
    return g_strdup_printf("concede %s %s%s%s", concession->target, quoted, way ? " customer " : "",
                           way ? way : "");
}

// Entered by who decides, who need not be who types.
static gboolean concede(const Concession *concession, Desk *desk)
{
    g_autofree char *typist = desk->who;
    g_autofree char *line = concession_line(concession);
    desk->who = g_strdup(concession->lines[LINE_DECIDES]);
    gboolean taken = desk_line(desk, line, NULL);
    g_free(desk->who);
    desk->who = g_steal_pointer(&typist);
    if (taken)
        desk_last(desk, "conceded: %s", concession->name);
    return taken;
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Concession *concession = state;
    if (!*typed && (concession->at == LINE_WHY || concession->at == LINE_DECIDES)) {
        desk_warn(desk, "%s: it cannot be left empty", lines[concession->at].word);
        return go(GO_KEEP);
    }
    g_free(concession->lines[concession->at]);
    concession->lines[concession->at] = g_strdup(typed);
    if (concession->at < LINE_DECIDES) {
        concession->at++;
        keep_draft(concession, desk);
        return go(GO_STAY);
    }
    if (!concede(concession, desk))
        return go(GO_KEEP);
    g_hash_table_remove(desk->drafts, concession->name);
    return go(GO_UP);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Concession *concession = state;
    (void)desk;
    if ((action != ACTION_UP && action != ACTION_BACK) || concession->at == 0)
        return go(GO_DEFAULT);
    concession->at--;
    return go(GO_STAY);
}

const ViewOps concede_view = {
    .name = "concession", .open = open, .close = close, .paint = paint, .enter = enter, .act = act};
