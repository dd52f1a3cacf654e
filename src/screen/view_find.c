// Any words: the place that they name answers at once, what else they name and all entries that
// hold them follow.
#include "find_list.h"
#include "find_page.h"
#include "print_list.h"
#include "to_place.h"
#include "view.h"

#include <string.h>

typedef struct {
    FindList *list;
    gboolean asking; // words are typed; else a line is chosen
    ListPart part;   // of the lines, that are seen
    GPtrArray *meant; // char *: what each line was when the number was begun; NULL: none is typed
} Find;

static gpointer open(Desk *desk, const char *argument)
{
    Find *find = g_new0(Find, 1);
    (void)argument;
    find->list = find_list_new(desk);
    find->asking = TRUE;
    return find;
}

static void close(gpointer state)
{
    Find *find = state;
    find_list_free(find->list);
    g_clear_pointer(&find->meant, g_ptr_array_unref);
    g_free(find);
}

// Opens the builds one after the other, so that they answer too.
static gboolean idle(gpointer state, Desk *desk)
{
    Find *find = state;
    return find_list_open_next(find->list, desk);
}

static guint lines_in(const Find *find)
{
    return find->list->lines->len;
}

static const FindLine *line_at(const Find *find, guint line)
{
    return &g_array_index(find->list->lines, FindLine, line);
}

// What a line is about, to be told from any other.
static char *meaning_of(const FindLine *line)
{
    g_autofree char *name = line->made ? requirement_name(line->made) : NULL;
    return g_strdup_printf("%s\n%s\n%p", line->build ? line->build->number : "", name ? name : "",
                           (const void *)line->found);
}

// A number means the lines that stood there when it was begun.
static void know_lines(Find *find, const char *typed)
{
    if (!*typed || find->asking)
        g_clear_pointer(&find->meant, g_ptr_array_unref);
    if (!*typed || find->asking || find->meant)
        return;
    find->meant = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; i < lines_in(find); i++)
        g_ptr_array_add(find->meant, meaning_of(line_at(find, i)));
}

// Whether another one stands there since.
static gboolean has_moved(const Find *find, guint line)
{
    g_autofree char *now = line < lines_in(find) ? meaning_of(line_at(find, line)) : NULL;
    const char *then = find->meant && line < find->meant->len ? find->meant->pdata[line] : NULL;
    return find->meant && g_strcmp0(now, then) != 0;
}

// PAINTING ---------------------------------------------------------------------------------------

static void say_asking(const Find *find, const char *typed, Page *page)
{
    page_say(&page->head, "Find");
    page->field = ASKS_TEXT;
    page_say(&page->unit, " ");
    page->explains = TRUE;
    page_say(&page->next, "what was said?");
    page_say(&page->then, "any words: 3 main, MB-2417-C, W2 since 2024, a name, noisy cold");
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter", "keeps these, and all entries"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "leaves"};
    if (strspn(typed, " ") < strlen(typed) && lines_in(find) == 0)
        page->remark = g_strdup("No place is called that. Enter looks for it in all entries, names "
                                "and notes.");
}

static void say_kept(const Find *find, Page *page)
{
    page_say(&page->head, "Find: %s", find->list->asked);
    page->field = ASKS_LINE;
    page_say(&page->unit, "no.");
    page_say(&page->next, "which one?");
    page_say(&page->then, "number Enter says why; there Enter goes to its place; 0 Enter more");
    page->keys[0] = (PageKey){ACTION_TAKE, "number Enter", "why"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "asks anew"};
    page_key(page, ACTION_OVER, NULL);
    page_key(page, ACTION_PRINT, NULL);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Find *find = state;
    const char *name = desk->shop ? shop_name(session_shop(desk->shop)) : NULL;
    g_autofree char *words = g_strdup(find->asking ? typed : find->list->asked);
    know_lines(find, typed); // as they were painted before
    find_list_ask(find->list, desk, words);
    page_say(&page->status, "%s", name ? name : "The shop");
    if (find->asking)
        say_asking(find, typed, page);
    else
        say_kept(find, page);
    page_key(page, ACTION_HELP, NULL);
    guint row = find_paint_answer(find->list, desk, page);
    find_paint_lines(find->list, desk, &find->part, !find->asking, page, row);
    find_paint_detail(find->list, desk, find->part.at, page);
}

// KEYS -------------------------------------------------------------------------------------------

static Go keep(Find *find, Desk *desk, const char *typed)
{
    GError *error = NULL;
    if (!find_list_keep(find->list, desk, typed, &error)) {
        desk_warn_error(desk, error);
        return go(GO_KEEP);
    }
    if (lines_in(find) == 0) {
        find_list_let_go(find->list);
        desk_warn(desk, "all these words stand nowhere together; ask with fewer, as 3 main");
        return go(GO_KEEP);
    }
    find->asking = FALSE;
    find->part.at = find->part.from = 0;
    return go(GO_STAY);
}

// The build and the place that a line is about, as far as it is about one.
static FindLine place_of(const Find *find, const FindLine *line)
{
    const Found *found = line->found;
    if (!found)
        return *line;
    const FindBuild *build = find_list_build(find->list, found->label);
    return (FindLine){.build = build,
                      .made = build && found->when ? find_list_about(build, found) : NULL};
}

// The place that an entry is about, else its build; of what is used in builds all that is known.
static Go open_found(const Find *find, Desk *desk, const FindLine *line)
{
    const FindLine place = place_of(find, line);
    if (!place.build) {
        desk_warn(desk, "that stands in the shop's ledger, in no build");
        return go(GO_KEEP);
    }
    return place.made ? go_tell(place.build->number, place.made)
                      : go_look(place.build->number, VIEW_STEPS, NULL);
}

static Go open_line(Find *find, Desk *desk, const FindLine *line)
{
    if (line->found)
        return open_found(find, desk, line);
    if (!line->made) {
        g_autofree char *lot = g_strdup(find->list->lot);
        return keep(find, desk, lot);
    }
    return go_tell(line->build->number, line->made);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Find *find = state;
    if (find->asking)
        return *typed ? keep(find, desk, typed) : go(GO_UP);
    guint64 line = g_ascii_strtoull(typed, NULL, 10);
    if (strcmp(typed, "0") == 0) {
        list_part_turn(&find->part, lines_in(find));
        return go(GO_STAY);
    }
    if (line >= 1 && has_moved(find, (guint)line - 1)) {
        desk_warn(desk,
                  "another entry moved the lines meanwhile; look again, then type the number");
        return go(GO_STAY);
    }
    if (line >= 1 && line <= lines_in(find))
        return open_line(find, desk, line_at(find, (guint)line - 1));
    desk_warn(desk, "there is no line %s; the list has 1 to %u", typed, lines_in(find));
    return go(GO_KEEP);
}

static Go move(gpointer state, Desk *desk, gint direction)
{
    Find *find = state;
    (void)desk;
    if (!find->asking)
        list_part_move(&find->part, lines_in(find), direction);
    return go(GO_STAY);
}

// The check of the line chosen over all engines of its family, whichever build is in hand.
static Go over(const Find *find)
{
    const FindLine *line = find->part.at < lines_in(find) ? line_at(find, find->part.at) : NULL;
    const FindLine place = line ? place_of(find, line) : (FindLine){.build = NULL};
    return place.made && place.made->check
               ? go_look(place.build->number, VIEW_OVER, g_strdup(place.made->check->name))
               : go(GO_DEFAULT);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Find *find = state;
    if (find->asking)
        return go(GO_DEFAULT);
    switch (action) {
    case ACTION_UP:
        find->asking = TRUE;
        find->part.at = find->part.from = 0;
        find_list_let_go(find->list);
        return go(GO_STAY);
    case ACTION_OVER:
        return over(find);
    case ACTION_PRINT:
        print_list(desk, "find", find->list->asked, paint, find);
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
