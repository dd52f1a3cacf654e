// Accepts what is outside its requirement: seven lines, the last of which makes the entry.
#include "beside.h"
#include "line_words.h"
#include "people.h"
#include "view.h"
#include "widget_groups.h"
#include "widget_strip.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <standbook/sheet/strip.h>
#include <standbook/work/concession.h>
#include <string.h>

enum { LINES = 7, LINE_WHY = 0, LINE_TOLD = 4, LINE_DECIDES = 6 };

typedef struct {
    char *name;         // of the requirement
    char *draft;        // and of what is written so far: that of the build too
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
    concession->draft = g_strconcat(desk->number, " ", parts[0], NULL);
    GStrv draft = g_hash_table_lookup(desk->drafts, concession->draft);
    for (guint i = 0; draft && draft[i]; i++)
        concession->lines[concession->at++] = g_strdup(draft[i]);
    return concession;
}

// What is written so far stays for the next time.
static void keep_draft(const Concession *concession, Desk *desk)
{
    g_autoptr(GStrvBuilder) draft = g_strv_builder_new();
    for (guint i = 0; i < LINE_DECIDES && concession->lines[i]; i++)
        g_strv_builder_add(draft, concession->lines[i]);
    g_hash_table_insert(desk->drafts, g_strdup(concession->draft), g_strv_builder_end(draft));
}

static void close(gpointer state)
{
    Concession *concession = state;
    for (guint i = 0; i < LINES; i++)
        g_free(concession->lines[i]);
    g_free(concession->name);
    g_free(concession->draft);
    g_free(concession->target);
    g_free(concession);
}

static const Requirement *conceded(const Concession *concession, Desk *desk)
{
    Session *session = desk_build(desk);
    return session ? requirement_of_name(session_assessment(session), concession->name) : NULL;
}

// `top ring gap 1   0.90 ±.01 mm   ▲ FAIL   0.40 over`, its strip and limits below.
static void paint_figures(const Requirement *made, Page *page)
{
    g_autofree char *name = requirement_title(made), *value = figure_value(made);
    g_autofree char *doubt = figure_doubt(made), *limits = figure_limits(made);
    g_autofree char *fault = fault_words(made), *strip = made->value ? strip_text(made) : NULL;
    g_autofree char *wear =
        made->wear && made->check ? figure_number(made, made->wear) : g_strdup("");
    g_autofree char *line = g_strdup_printf("%s %s %s%s%s%s", value, doubt, figure_unit(made),
                                            fault, *wear ? "   wear " : "", wear);
    g_autofree char *within = g_strdup_printf("   limits %s", limits);
    canvas_put(page->body, 0, 1, 23, style_of(TYPE_BOLD, 0), name);
    canvas_put(page->body, 0, 25, 0, verdict_style(made->verdict), line);
    guint column = strip && *strip ? strip_paint(page->body, 1, 21, strip, made->verdict) : 22;
    if (*limits)
        canvas_put(page->body, 1, column, 0, style_of(0, 0), within);
}

enum { WORDS_COLUMN = 13, WORDS_WIDE = 66, ROW_LINES = 3 };

static guint written(const Concession *concession)
{
    guint count = 0;
    for (guint i = 0; i < LINES; i++)
        count += concession->lines[i] && *concession->lines[i] ? 1 : 0;
    return count;
}

static void paint_lines(const Concession *concession, Page *page)
{
    guint row = ROW_LINES;
    for (guint i = 0; i < LINES; i++) {
        g_autofree char *number = g_strdup_printf("%u %s", i + 1, lines[i].word);
        Style style = style_of(i == concession->at ? TYPE_BOLD : TYPE_PLAIN, ROLE_CALM);
        canvas_put(page->body, row, 1, 11, style, number);
        if (i == concession->at)
            page->focus = row + 1;
        row = canvas_wrap(page->body, row, WORDS_COLUMN, WORDS_WIDE, style_of(0, 0),
                          concession->lines[i] ? concession->lines[i] : "·");
    }
    canvas_put(page->body, row + 1, 1, 0, style_of(0, 0),
               "It will read ◆ conceded wherever it stands, beside its value, and never pass.");
    canvas_put(page->body, row + 2, 1, 0, style_of(0, 0),
               "Lines 1 to 6 print on the customer's sheet as they are written here.");
}

// What a lone digit means on this line: the sentences said on it before, newest first, or who can
// decide. The caller frees with g_ptr_array_unref.
static GPtrArray *offered(const Concession *concession, Desk *desk)
{
    if (concession->at == LINE_DECIDES)
        return people_listed(desk);
    Session *session = desk_build(desk);
    const GPtrArray *entries = session ? session_entries(session) : NULL;
    return entries ? concession_before((const Entry *const *)entries->pdata, entries->len,
                                       concession->at)
                   : g_ptr_array_new();
}

enum { OFFER_SHOWN = 30 }; // characters of a sentence

static void say_then(const Concession *concession, Desk *desk, Page *page)
{
    g_autoptr(GPtrArray) sentences = offered(concession, desk);
    g_autoptr(GString) words = g_string_new(lines[concession->at].hint);
    for (guint i = 0; i < sentences->len && i < 9; i++) {
        const char *sentence = sentences->pdata[i];
        gboolean whole = g_utf8_strlen(sentence, -1) <= OFFER_SHOWN;
        g_autofree char *begins = g_utf8_substring(sentence, 0, whole ? -1 : OFFER_SHOWN);
        g_string_append_printf(words, "%s%u %s%s", i ? "   " : "     ", i + 1, begins,
                               whole ? "" : "…");
    }
    page_say(&page->then, "%s", words->str);
}

// From the first line there is no line back: it is left, and what was written stays.
static void paint_keys(const Concession *concession, Page *page)
{
    gboolean first = concession->at == 0, last = concession->at == LINE_DECIDES;
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter", last ? "makes the entry" : "next line"};
    page->keys[1] = (PageKey){ACTION_BACK, "-Enter", first ? "leaves" : "line back"};
    page->keys[2] = (PageKey){ACTION_UP, "Backspace",
                              first ? "on an empty line leaves, kept" : "on an empty line too"};
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Concession *concession = state;
    const Requirement *made = conceded(concession, desk);
    g_autofree char *name = made ? requirement_title(made) : g_strdup(concession->name);
    g_autofree char *title = desk_title(desk, desk->number);
    (void)typed;
    page_say(&page->status, "%s", title);
    page_say(&page->head, "Concession: %s", name);
    page_say(&page->count, "%u of %u lines written", written(concession), LINES);
    if (made)
        paint_figures(made, page);
    paint_lines(concession, page);
    beside_entries(desk, name, page);
    page->field = ASKS_TEXT;
    page_say(&page->unit, " ");
    page_say(&page->next, "%u %s", concession->at + 1, lines[concession->at].word);
    say_then(concession, desk, page);
    paint_keys(concession, page);
}

static char *concession_line(const Concession *concession)
{
    g_autofree char *reason = concession_reason((const char *const *)concession->lines);
    g_autofree char *quoted = line_quoted(reason);
    return g_strdup_printf("concede %s %s", concession->target, quoted);
}

// Entered by who decides, who need not be who types.
static gboolean concede(const Concession *concession, Desk *desk)
{
    g_autofree char *line = concession_line(concession);
    gboolean taken = desk_line_as(desk, concession->lines[LINE_DECIDES], line);
    if (taken)
        desk_last(desk, "conceded: %s", concession->name);
    return taken;
}

// What the field says: a lone digit is a sentence said before, initials are in capitals, and an
// empty field leaves what was written.
static char *said(const Concession *concession, Desk *desk, const char *typed)
{
    g_autoptr(GPtrArray) sentences = offered(concession, desk);
    gboolean digit = g_ascii_isdigit(*typed) && !typed[1];
    guint which = digit ? (guint)(*typed - '0') : 0;
    if (which && which <= sentences->len)
        return g_strdup(sentences->pdata[which - 1]);
    if (!*typed && concession->lines[concession->at])
        return g_strdup(concession->lines[concession->at]);
    return concession->at == LINE_DECIDES ? initials_typed(typed) : g_strdup(typed);
}

// Whether a lone digit stands for nothing here; then a warning says so.
static gboolean is_empty_digit(const Concession *concession, Desk *desk, const char *typed)
{
    g_autoptr(GPtrArray) sentences = offered(concession, desk);
    if (!g_ascii_isdigit(*typed) || typed[1] ||
        (*typed != '0' && (guint)(*typed - '0') <= sentences->len))
        return FALSE;
    desk_warn(desk, "nothing has the digit %s on this line; write it in words", typed);
    return TRUE;
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Concession *concession = state;
    if (is_empty_digit(concession, desk, typed))
        return go(GO_KEEP);
    g_autofree char *words = said(concession, desk, typed);
    if (!*words && (concession->at == LINE_WHY || concession->at == LINE_DECIDES)) {
        desk_warn(desk, "%s: it cannot be left empty", lines[concession->at].word);
        return go(GO_KEEP);
    }
    g_free(concession->lines[concession->at]);
    concession->lines[concession->at] = g_steal_pointer(&words);
    if (concession->at < LINE_DECIDES) {
        g_autofree char *time = moment_text(desk->now);
        desk_last(desk, "%u %s · %s %.5s %s", concession->at + 1, lines[concession->at].word,
                  *concession->lines[concession->at] ? "written" : "left empty", time + 11,
                  desk->who ? desk->who : "");
        concession->at++;
        keep_draft(concession, desk);
        return go(GO_STAY);
    }
    if (!concede(concession, desk))
        return go(GO_KEEP);
    g_hash_table_remove(desk->drafts, concession->draft);
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
