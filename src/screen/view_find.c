// Any words: the place that they name answers at once, what else they name and all entries that
// hold them follow.
#include "about.h"
#include "print_list.h"
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
enum { PLACES_HERE = 6, LINES_TOLD = 6, MORE_LINES = 5 };

// A place that the words name.
typedef struct {
    char *number; // of its build
    char *name;   // requirement_name
} Hit;

// What is told of a place, as it stood when the build had so many entries.
typedef struct {
    Hit hit;
    guint entries;
    GPtrArray *lines; // char *; NULL: nothing yet
} Telling;

typedef struct {
    GPtrArray *numbers; // of all builds, newest first
    guint builds;       // of them that are open by now
    Telling told;       // of the best place
    char *asked;        // the words for which `hits` stand; NULL for none
    gboolean others;    // `hits` are of the first build only; those of the others are still to come
    GArray *hits;       // Hit, the best first
    GPtrArray *found;   // Found *; NULL before Enter
    gboolean asking;    // words are typed; else a line is chosen
    guint at, seen;     // the line chosen; the last one that must be seen
} Find;

static void hit_clear(gpointer data)
{
    g_free(((Hit *)data)->number);
    g_free(((Hit *)data)->name);
}

static void telling_clear(Telling *told)
{
    hit_clear(&told->hit);
    g_clear_pointer(&told->lines, g_ptr_array_unref);
}

static gpointer open(Desk *desk, const char *argument)
{
    Find *find = g_new0(Find, 1);
    (void)argument;
    find->numbers = desk_numbers(desk);
    find->asking = TRUE;
    find->hits = g_array_new(FALSE, FALSE, sizeof(Hit));
    g_array_set_clear_func(find->hits, hit_clear);
    return find;
}

static void close(gpointer state)
{
    Find *find = state;
    g_clear_pointer(&find->found, g_ptr_array_unref);
    telling_clear(&find->told);
    g_ptr_array_unref(find->numbers);
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

// The build that answers first: the one in hand, else the newest.
static const char *first_build(const Find *find, const Desk *desk)
{
    return desk->number ? desk->number : find->numbers->len ? find->numbers->pdata[0] : NULL;
}

// Looks for the words among the places of the first build; the others follow while nobody presses
// a key.
static void ask(Find *find, Desk *desk, const char *words)
{
    if (g_strcmp0(find->asked, words) == 0)
        return;
    g_free(find->asked);
    find->asked = g_strdup(words);
    g_array_set_size(find->hits, 0);
    const char *first = first_build(find, desk);
    if (first)
        ask_build(find, desk, first, PLACES_HERE);
    find->others = TRUE;
}

static void ask_others(Find *find, Desk *desk)
{
    if (!find->others)
        return;
    const char *first = first_build(find, desk);
    for (guint i = 0; i < find->numbers->len; i++)
        if (strcmp(find->numbers->pdata[i], first) != 0)
            ask_build(find, desk, find->numbers->pdata[i], 1);
    find->others = FALSE;
}

// Opens the builds one after the other, so that they answer too.
static gboolean idle(gpointer state, Desk *desk)
{
    Find *find = state;
    if (desk_open_next(desk, &find->builds)) {
        g_clear_pointer(&find->asked, g_free); // to be asked again
        return TRUE;
    }
    guint before = find->hits->len;
    if (find->asking)
        ask_others(find, desk);
    return find->hits->len > before; // to be painted
}

// What is no entry first, then the newest entry first: it is what is asked for most.
static const Found *found_at(const Find *find, guint line)
{
    guint all = find->found ? find->found->len : 0, names = 0;
    while (names < all && !((const Found *)find->found->pdata[names])->when)
        names++;
    return line < names ? find->found->pdata[line]
           : line < all ? find->found->pdata[all - 1 - (line - names)]
                        : NULL;
}

static char *day_of_entry(const Session *session, const Requirement *made, const Desk *desk)
{
    const GPtrArray *entries = session_entries(session);
    if (made->entry < 1 || made->entry > (gint64)entries->len)
        return g_strdup("");
    return ago_day(entry_moment(entries->pdata[made->entry - 1]), desk->now);
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
    // A limit stands beside its post, unless a mark stands there.
    gboolean below = !g_str_has_prefix(strip, "    "), above = !g_str_has_suffix(strip, "    ");
    if (*strip)
        strip_paint(page->body, row, 36, strip, made->verdict);
    canvas_put_right(page->body, row, below ? 35 : 39, style_of(0, 0), low);
    canvas_put(page->body, row, above ? 62 : 58, 0, style_of(0, 0), high);
    canvas_put_right(page->body, row, 79, style_of(0, 0), service);
}

// As many rows of them as leave room for the list.
static guint paint_lines(const GPtrArray *lines, Page *page, guint row)
{
    g_autoptr(Canvas) all = canvas_new_growing(PAGE_WIDTH, page->body->ascii);
    guint rows = 0;
    for (guint i = 0; i < lines->len; i++)
        rows = canvas_wrap(all, rows, 4, 74, style_of(0, 0), lines->pdata[i]);
    canvas_copy(page->body, row, 0, all, 0, MIN(rows, LINES_TOLD));
    if (rows > LINES_TOLD)
        canvas_put(page->body, row + LINES_TOLD - 1, 78, 0, style_of(0, 0), "…");
    return row + MIN(rows, LINES_TOLD);
}

// Worked out anew only when something was entered, or another place is meant.
static const GPtrArray *told_of(Find *find, const Hit *hit, Session *session,
                                const Requirement *made)
{
    Telling *told = &find->told;
    const GPtrArray *entries = session_entries(session);
    if (told->lines && told->entries == entries->len &&
        strcmp(told->hit.number, hit->number) == 0 && strcmp(told->hit.name, hit->name) == 0)
        return told->lines;
    const Agenda agenda = {session_plan(session), session_assessment(session),
                           (const Entry *const *)entries->pdata, entries->len};
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    telling_clear(told);
    *told = (Telling){{g_strdup(hit->number), g_strdup(hit->name)},
                      entries->len,
                      told_lines(&agenda, taken, made)};
    return told->lines;
}

// The place that the words name best. Returns the row behind.
static guint paint_answer(Find *find, const Desk *desk, Page *page)
{
    const Hit *hit = find->hits->len ? &g_array_index(find->hits, Hit, 0) : NULL;
    Session *session = hit ? g_hash_table_lookup(desk->sessions, hit->number) : NULL;
    const Requirement *made =
        session ? requirement_of_name(session_assessment(session), hit->name) : NULL;
    if (!made)
        return 0;
    g_autofree char *name = requirement_title(made), *day = day_of_entry(session, made, desk);
    g_autofree char *where = g_strconcat(hit->number, *day ? ", " : "", day, NULL);
    canvas_put(page->body, 0, 1, 50, style_of(TYPE_BOLD, 0), name);
    canvas_put_right(page->body, 0, 79, style_of(0, 0), where);
    paint_value(made, page, 2);
    return paint_lines(told_of(find, hit, session, made), page, 4) + 1;
}

static const Requirement *made_at(const Hit *hit, const Desk *desk)
{
    Session *session = g_hash_table_lookup(desk->sessions, hit->number);
    return session ? requirement_of_name(session_assessment(session), hit->name) : NULL;
}

static void paint_hit(const Hit *hit, const Desk *desk, Page *page, guint row)
{
    const Requirement *made = made_at(hit, desk);
    if (!made)
        return;
    g_autofree char *name = requirement_title(made), *value = figure_value(made);
    g_autofree char *doubt = figure_doubt(made);
    g_autofree char *day =
        day_of_entry(g_hash_table_lookup(desk->sessions, hit->number), made, desk);
    g_autofree char *figures = g_strconcat(value, *doubt ? " " : "", doubt, NULL);
    const char *mark = verdict_mark(made->verdict, made->reason);
    g_autofree char *step = g_strdup_printf("S%02u", made->step ? made->step->index + 1 : 0);
    static const Style plain = {0, 0};
    canvas_put(page->body, row, 4, 27, plain, name);
    canvas_put(page->body, row, 32, 14, plain, figures);
    canvas_put(page->body, row, 47, 7, verdict_style(made->verdict), mark);
    canvas_put(page->body, row, 55, 8, plain, hit->number);
    canvas_put(page->body, row, 64, 3, plain, step);
    canvas_put(page->body, row, 69, 0, plain, day);
}

// Of what is no entry: `lot MB-2417-C  TL-0412  main shells 2`, `owner harrow  Ines Harrow`.
static void paint_found(const Found *found, Page *page, guint row)
{
    Style style = style_of(TYPE_PLAIN, found->struck ? ROLE_FAINT : ROLE_CALM);
    if (!found->when) {
        gboolean named = strcmp(found->kind, found->label) == 0 || !*found->by;
        g_autofree char *line =
            g_strconcat(found->kind, " ", *found->by ? found->by : found->label, "  ",
                        named ? "" : found->label, named ? "" : "  ", found->words, NULL);
        canvas_put(page->body, row, 4, 0, style, line);
        return;
    }
    canvas_put(page->body, row, 4, 8, style, found->label);
    g_autofree char *day = g_strndup(found->when, 10);
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
    guint lines = lines_in(find), hits = find->hits->len;
    for (guint i = 0; i < lines; i++) {
        g_autofree char *number = g_strdup_printf("%2u", i + 1);
        gboolean chosen = !find->asking && i == find->at;
        canvas_put(page->body, row + i, 0, 3, style_of(chosen ? TYPE_REVERSE : TYPE_PLAIN, 0),
                   number);
        if (i < hits)
            paint_hit(&g_array_index(find->hits, Hit, i), desk, page, row + i);
        else
            paint_found(found_at(find, i - hits), page, row + i);
    }
    page->focus = find->seen >= MORE_LINES ? row + find->seen : 0;
    page->heads = row;
    if (lines)
        page_say(&page->count, "%u found in %u", lines, builds_in(find));
}

// At the right of a wide screen: what is known of the line chosen.
static void paint_detail(const Find *find, const Desk *desk, Page *page)
{
    guint width = page_detail_width(page->width);
    if (!width || lines_in(find) == 0)
        return;
    page->detail = canvas_new_growing(width, page->body->ascii);
    const Style bold = style_of(TYPE_BOLD, 0);
    if (find->at < find->hits->len) {
        const Hit *hit = &g_array_index(find->hits, Hit, find->at);
        const Requirement *made = made_at(hit, desk);
        g_autofree char *title = desk_title(desk, hit->number);
        canvas_put(page->detail, 0, 1, 0, bold, title);
        if (made)
            about_entries(page->detail, about_figures(page->detail, 2, made),
                          g_hash_table_lookup(desk->sessions, hit->number), made);
        return;
    }
    const Found *found = found_at(find, find->at - find->hits->len);
    g_autofree char *title = g_strjoin(" ", found->label, found->when, found->by, NULL);
    canvas_put(page->detail, 0, 1, 0, bold, title);
    canvas_wrap(page->detail, 2, 1, width - 2, style_of(0, 0), found->words);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Find *find = state;
    const char *name = desk->shop ? shop_name(session_shop(desk->shop)) : NULL;
    if (find->asking)
        ask(find, desk, typed ? typed : "");
    page_say(&page->status, "%s", name ? name : "The shop");
    page_say(&page->head, "Find%s%s", find->asking ? "" : ": ", find->asking ? "" : find->asked);
    page->field = find->asking ? ASKS_TEXT : ASKS_LINE;
    page_say(&page->unit, find->asking ? " " : "no.");
    page_say(&page->next, find->asking ? "what was said?" : "which one?");
    page_say(&page->then, find->asking
                              ? "any words: 3 main, MB-2417-C, W2 since 2024, a name, noisy cold"
                              : "number Enter opens it; 0 Enter more; Backspace asks anew");
    page->keys[0] = (PageKey){ACTION_TAKE, find->asking ? "Enter" : "number Enter",
                              find->asking ? "keeps these, and all entries" : "opens"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", find->asking ? "leaves" : "asks anew"};
    if (!find->asking) {
        page_key(page, ACTION_OVER, NULL);
        page_key(page, ACTION_PRINT, NULL);
    }
    page_key(page, ACTION_HELP, NULL);
    paint_list(find, desk, page, paint_answer(find, desk, page));
    paint_detail(find, desk, page);
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
    ask_others(find, desk);
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
    find->at = find->seen = 0;
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

static void choose(Find *find, guint line)
{
    find->at = line;
    find->seen = CLAMP(find->seen, line, line + MORE_LINES - 1);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Find *find = state;
    if (find->asking)
        return *typed ? keep(find, desk, typed) : go(GO_UP);
    guint64 line = g_ascii_strtoull(typed, NULL, 10);
    if (strcmp(typed, "0") == 0) {
        guint next = MAX(find->seen + 1, MORE_LINES);
        choose(find, next < lines_in(find) ? next : 0);
        find->seen = MIN(find->at + MORE_LINES, lines_in(find)) - 1;
        return go(GO_STAY);
    }
    if (line >= 1 && line <= lines_in(find))
        return open_line(find, desk, (guint)line - 1);
    desk_warn(desk, "there is no line %s; the list has 1 to %u", typed, lines_in(find));
    return go(GO_KEEP);
}

static Go move(gpointer state, Desk *desk, gint direction)
{
    Find *find = state;
    gint last = (gint)lines_in(find) - 1;
    (void)desk;
    if (!find->asking)
        choose(find, (guint)CLAMP((gint)find->at + direction, 0, MAX(last, 0)));
    return go(GO_STAY);
}

// The check of the line chosen over all engines.
static Go over(const Find *find, const Desk *desk)
{
    const Requirement *made = find->at < find->hits->len
                                  ? made_at(&g_array_index(find->hits, Hit, find->at), desk)
                                  : NULL;
    return made && made->check ? go_open(VIEW_OVER, g_strdup(made->check->name)) : go(GO_DEFAULT);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Find *find = state;
    if (find->asking)
        return go(GO_DEFAULT);
    switch (action) {
    case ACTION_UP:
        find->asking = TRUE;
        find->at = find->seen = 0;
        g_clear_pointer(&find->found, g_ptr_array_unref);
        return go(GO_STAY);
    case ACTION_OVER:
        return over(find, desk);
    case ACTION_PRINT:
        print_list(desk, "find", find->asked, paint, find);
        return go(GO_STAY);
    default:
        return go(GO_DEFAULT);
    }
}

const ViewOps find_view = {.name = "find",
                           .open = open,
                           .close = close,
                           .paint = paint,
                           .enter = enter,
                           .move = move,
                           .act = act,
                           .idle = idle};
