// Any words: the place that they name answers at once, what else they name and all entries that
// hold them follow.
#include "view.h"
#include "widget_groups.h"
#include "widget_strip.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <standbook/sheet/strip.h>
#include <standbook/work/ago.h>
#include <standbook/work/found.h>
#include <standbook/work/named.h>
#include <standbook/work/told.h>
#include <string.h>

// Of the build in hand so many places, of every other build one.
enum { PLACES_HERE = 6, LINES_TOLD = 6 };

// A place that the words name.
typedef struct {
    char *number; // of its build
    char *name;   // requirement_name
} Hit;

typedef struct {
    guint builds;     // of all builds, newest first, that are open by now
    char *asked;      // the words for which `hits` stand; NULL for none
    GArray *hits;     // Hit, the best first
    GPtrArray *found; // Found *; NULL before Enter
    gboolean asking;  // words are typed; else a line is chosen
    guint from;       // the first line that must be seen
} Find;

static void hit_clear(gpointer data)
{
    g_free(((Hit *)data)->number);
    g_free(((Hit *)data)->name);
}

static gpointer open(Desk *desk, const char *argument)
{
    Find *find = g_new0(Find, 1);
    (void)desk;
    (void)argument;
    find->asking = TRUE;
    find->hits = g_array_new(FALSE, FALSE, sizeof(Hit));
    g_array_set_clear_func(find->hits, hit_clear);
    return find;
}

static void close(gpointer state)
{
    Find *find = state;
    g_clear_pointer(&find->found, g_ptr_array_unref);
    g_array_unref(find->hits);
    g_free(find->asked);
    g_free(find);
}

static void ask_build(Find *find, const Desk *desk, const char *number, guint most)
{
    Session *session = g_hash_table_lookup(desk->sessions, number);
    if (!session)
        return;
    g_autoptr(GPtrArray) named = requirements_named(session_assessment(session), find->asked, most);
    for (guint i = 0; i < named->len; i++) {
        const Hit hit = {g_strdup(number), requirement_name(named->pdata[i])};
        g_array_append_val(find->hits, hit);
    }
}

// Looks for the words among the places of the builds that are open by now, the one in hand first.
static void ask(Find *find, Desk *desk, const char *words)
{
    if (g_strcmp0(find->asked, words) == 0)
        return;
    g_free(find->asked);
    find->asked = g_strdup(words);
    g_array_set_size(find->hits, 0);
    g_autoptr(GPtrArray) numbers = desk_numbers(desk);
    if (desk->number)
        ask_build(find, desk, desk->number, PLACES_HERE);
    for (guint i = 0; i < numbers->len; i++)
        if (g_strcmp0(numbers->pdata[i], desk->number) != 0)
            ask_build(find, desk, numbers->pdata[i], 1);
}

// Opens the builds one after the other, so that they answer too.
static gboolean idle(gpointer state, Desk *desk)
{
    Find *find = state;
    if (!desk_open_next(desk, &find->builds))
        return FALSE;
    g_clear_pointer(&find->asked, g_free); // to be asked again
    return TRUE;
}

// The newest entry first: it is what is asked for most.
static const Found *found_at(const Find *find, guint line)
{
    guint all = find->found ? find->found->len : 0;
    return line < all ? find->found->pdata[all - 1 - line] : NULL;
}

static char *day_of_entry(const Session *session, const Requirement *made, const Desk *desk)
{
    const GPtrArray *entries = session_entries(session);
    if (made->entry < 1 || made->entry > (gint64)entries->len)
        return g_strdup("");
    const Entry *entry = entries->pdata[made->entry - 1];
    Moment moment;
    return moment_parse(entry->done ? entry->done : entry->at, &moment, NULL)
               ? ago_day(moment, desk->now)
               : g_strdup("");
}

// `0.041 ±.005 mm   √ pass   0.030 ├──▒▒█▒▒────────┤ 0.065   wear 0.090`
static void paint_value(const Requirement *made, Page *page, guint row)
{
    g_autofree char *value = figure_value(made), *doubt = figure_doubt(made);
    const char *mark = verdict_mark(made->verdict, made->reason);
    g_autofree char *figures = g_strdup_printf("%s %s %s", value, doubt, figure_unit(made));
    g_autofree char *strip = strip_text(made);
    canvas_put(page->body, row, 4, 18, style_of(TYPE_BOLD, 0), *value ? figures : "not yet");
    canvas_put(page->body, row, 23, 7, verdict_style(made->verdict), mark);
    if (!made->check)
        return;
    g_autofree char *low = made->lower ? figure_number(made, made->lower) : g_strdup("");
    g_autofree char *high = made->upper ? figure_number(made, made->upper) : g_strdup("");
    g_autofree char *wear = made->wear ? figure_number(made, made->wear) : NULL;
    g_autofree char *service = g_strconcat(wear ? "wear " : "", wear, NULL);
    canvas_put_right(page->body, row, 36, style_of(0, 0), low);
    if (*strip)
        strip_paint(page->body, row, 36, strip, made->verdict);
    canvas_put(page->body, row, 61, 7, style_of(0, 0), high);
    canvas_put(page->body, row, 69, 0, style_of(0, 0), service);
}

static guint paint_lines(const GPtrArray *lines, Page *page, guint row)
{
    guint last = row + LINES_TOLD;
    for (guint i = 0; i < lines->len && row < last; i++)
        row = canvas_wrap(page->body, row, 4, 74, style_of(0, 0), lines->pdata[i]);
    return row;
}

// The place that the words name best. Returns the row behind.
static guint paint_answer(const Find *find, const Desk *desk, Page *page)
{
    const Hit *hit = find->hits->len ? &g_array_index(find->hits, Hit, 0) : NULL;
    Session *session = hit ? g_hash_table_lookup(desk->sessions, hit->number) : NULL;
    const Requirement *made =
        session ? requirement_of_name(session_assessment(session), hit->name) : NULL;
    if (!made)
        return 0;
    g_autofree char *name = figure_name(made), *day = day_of_entry(session, made, desk);
    g_autofree char *where = g_strconcat(hit->number, *day ? ", " : "", day, NULL);
    canvas_put(page->body, 0, 1, 50, style_of(TYPE_BOLD, 0), name);
    canvas_put_right(page->body, 0, 79, style_of(0, 0), where);
    paint_value(made, page, 2);
    const GPtrArray *entries = session_entries(session);
    const Agenda agenda = {session_plan(session), session_assessment(session),
                           (const Entry *const *)entries->pdata, entries->len};
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    g_autoptr(GPtrArray) lines = told_lines(&agenda, taken, made);
    return paint_lines(lines, page, 4) + 1;
}

static void paint_hit(const Hit *hit, guint line, const Desk *desk, Page *page, guint row)
{
    Session *session = g_hash_table_lookup(desk->sessions, hit->number);
    const Requirement *made =
        session ? requirement_of_name(session_assessment(session), hit->name) : NULL;
    if (!made)
        return;
    g_autofree char *number = g_strdup_printf("%2u", line);
    g_autofree char *name = figure_name(made), *value = figure_value(made);
    g_autofree char *doubt = figure_doubt(made), *day = day_of_entry(session, made, desk);
    g_autofree char *figures = g_strconcat(value, *doubt ? " " : "", doubt, NULL);
    const char *mark = verdict_mark(made->verdict, made->reason);
    g_autofree char *step = g_strdup_printf("S%02u", made->step ? made->step->index + 1 : 0);
    static const Style plain = {0, 0};
    canvas_put(page->body, row, 0, 3, plain, number);
    canvas_put(page->body, row, 4, 27, plain, name);
    canvas_put(page->body, row, 32, 14, plain, figures);
    canvas_put(page->body, row, 47, 7, verdict_style(made->verdict), mark);
    canvas_put(page->body, row, 55, 8, plain, hit->number);
    canvas_put(page->body, row, 64, 3, plain, step);
    canvas_put(page->body, row, 69, 0, plain, day);
}

static void paint_found(const Found *found, guint line, Page *page, guint row)
{
    g_autofree char *number = g_strdup_printf("%2u", line);
    Style style = style_of(TYPE_PLAIN, found->struck ? ROLE_FAINT : ROLE_CALM);
    canvas_put(page->body, row, 0, 3, style, number);
    canvas_put(page->body, row, 4, 8, style, found->label);
    g_autofree char *day = g_strndup(found->when ? found->when : "", 10);
    canvas_put(page->body, row, 13, 0, style, day);
    canvas_put(page->body, row, 24, 3, style, found->by);
    g_autofree char *words = g_strconcat(found->words, found->struck ? "  (struck)" : "", NULL);
    canvas_put(page->body, row, 28, 0, style, words);
}

static guint lines_in(const Find *find)
{
    return find->hits->len + (find->found ? find->found->len : 0);
}

static guint builds_in(const Find *find)
{
    g_autoptr(GHashTable) labels = g_hash_table_new(g_str_hash, g_str_equal);
    for (guint i = 0; i < find->hits->len; i++)
        g_hash_table_add(labels, g_array_index(find->hits, Hit, i).number);
    for (guint i = 0; find->found && i < find->found->len; i++)
        g_hash_table_add(labels, ((Found *)find->found->pdata[i])->label);
    return g_hash_table_size(labels);
}

static void paint_list(const Find *find, const Desk *desk, Page *page, guint row)
{
    for (guint i = 0; i < find->hits->len; i++)
        paint_hit(&g_array_index(find->hits, Hit, i), i + 1, desk, page, row + i);
    for (guint i = 0; find->found && i < find->found->len; i++)
        paint_found(found_at(find, i), find->hits->len + i + 1, page, row + find->hits->len + i);
    page->focus = find->from ? row + find->from : 0;
    page->heads = row;
    if (lines_in(find))
        page_say(&page->count, "%u found in %u", lines_in(find), builds_in(find));
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Find *find = state;
    if (find->asking)
        ask(find, desk, typed ? typed : "");
    page_say(&page->status, "The shop");
    page_say(&page->head, "Find%s%s", find->asking ? "" : ": ", find->asking ? "" : find->asked);
    page->field = find->asking ? ASKS_TEXT : ASKS_LINE;
    page_say(&page->unit, find->asking ? " " : "no.");
    page_say(&page->next, find->asking ? "what was said?" : "which one?");
    page_say(&page->then, find->asking
                              ? "any words: 3 main, MB-2417-C, a tool, a name, noisy cold"
                              : "number Enter opens it; 0 Enter more; Backspace asks anew");
    page->keys[0] = (PageKey){ACTION_TAKE, find->asking ? "Enter" : "number Enter",
                              find->asking ? "keeps these, and all entries" : "opens"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", find->asking ? "leaves" : "asks anew"};
    page_key(page, ACTION_HELP, NULL);
    paint_list(find, desk, page, paint_answer(find, desk, page));
}

// Where no place has that name: the place that the newest of the entries found is about.
static void add_place_of_entry(Find *find, Desk *desk)
{
    for (guint i = 0; i < find->found->len && find->hits->len == 0; i++) {
        const Found *found = found_at(find, i);
        Session *session = found->when ? g_hash_table_lookup(desk->sessions, found->label) : NULL;
        const GPtrArray *entries = session ? session_entries(session) : NULL;
        if (!entries || found->seq < 1 || found->seq > (gint64)entries->len)
            continue;
        const Requirement *made =
            requirement_about(session_assessment(session), entries->pdata[found->seq - 1]);
        const Hit hit = {made ? g_strdup(found->label) : NULL,
                         made ? requirement_name(made) : NULL};
        if (made)
            g_array_append_val(find->hits, hit);
    }
}

static Go keep(Find *find, Desk *desk, const char *typed)
{
    GError *error = NULL;
    ask(find, desk, typed);
    g_clear_pointer(&find->found, g_ptr_array_unref);
    find->found = found_words(desk->book, typed, &error);
    if (!find->found) {
        desk_warn_error(desk, error);
        return go(GO_KEEP);
    }
    add_place_of_entry(find, desk);
    if (lines_in(find) == 0) {
        desk_warn(desk, "all these words stand nowhere together; ask with fewer, as 3 main");
        return go(GO_KEEP);
    }
    find->asking = FALSE;
    find->from = 0;
    return go(GO_STAY);
}

static Go open_line(Find *find, Desk *desk, guint line)
{
    if (line < find->hits->len) {
        const Hit *hit = &g_array_index(find->hits, Hit, line);
        desk_take_up(desk, hit->number);
        return go_open(VIEW_WHY, g_strdup(hit->name));
    }
    const Found *found = found_at(find, line - find->hits->len);
    gboolean build = found->when || strcmp(found->kind, "build") == 0;
    if (!build || strcmp(found->label, "shop") == 0) {
        desk_warn(desk, "that stands in the shop's ledger, in no build");
        return go(GO_KEEP);
    }
    desk_take_up(desk, found->label);
    return go_instead(VIEW_STEPS, NULL);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Find *find = state;
    if (find->asking)
        return *typed ? keep(find, desk, typed) : go(GO_UP);
    guint64 line = g_ascii_strtoull(typed, NULL, 10);
    if (strcmp(typed, "0") == 0) {
        find->from = find->from + 10 < lines_in(find) ? find->from + 10 : 0;
        return go(GO_STAY);
    }
    if (line >= 1 && line <= lines_in(find))
        return open_line(find, desk, (guint)line - 1);
    desk_warn(desk, "there is no line %s; the list has 1 to %u", typed, lines_in(find));
    return go(GO_KEEP);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Find *find = state;
    (void)desk;
    if (action != ACTION_UP || find->asking)
        return go(GO_DEFAULT);
    find->asking = TRUE;
    g_clear_pointer(&find->found, g_ptr_array_unref);
    return go(GO_STAY);
}

const ViewOps find_view = {.name = "find",
                           .open = open,
                           .close = close,
                           .paint = paint,
                           .enter = enter,
                           .act = act,
                           .idle = idle};
