// The pile of views: opens and closes them, and gives the uppermost what was pressed.
#include "screen_inside.h"

Opened *screen_upper(const Screen *screen, guint below)
{
    return &g_array_index(screen->views, Opened, screen->views->len - 1 - below);
}

// `build` (may be NULL) is in hand as long as the view is open.
static void view_push(Screen *screen, ViewName view, const char *argument, const char *build)
{
    Opened opened = {.ops = view_ops(view)};
    if (build) {
        opened.before = g_strdup(screen->desk.number);
        desk_take_up(&screen->desk, build);
    }
    opened.state = opened.ops->open ? opened.ops->open(&screen->desk, argument) : NULL;
    g_array_append_val(screen->views, opened);
    screen->opened = TRUE;
}

void screen_open(Screen *screen, ViewName view, const char *argument)
{
    view_push(screen, view, argument, NULL);
}

static void view_pop(Screen *screen)
{
    Opened *opened = screen_upper(screen, 0);
    if (opened->ops->close)
        opened->ops->close(opened->state);
    if (opened->before)
        desk_take_up(&screen->desk, opened->before);
    g_free(opened->before);
    g_free(opened->typed);
    g_array_set_size(screen->views, screen->views->len - 1);
}

void screen_close_to(Screen *screen, guint count)
{
    while (screen->views->len > count)
        view_pop(screen);
}

// What waited under a view that closed waits on under what comes instead, or stands again.
static void bring_back(Screen *screen, char *waited, gboolean pushed)
{
    if (pushed)
        screen_upper(screen, 0)->typed = waited;
    else if (waited)
        g_string_assign(screen->typing.text, waited);
    if (!pushed)
        g_free(waited);
}

// Over the first screen the build in hand alone, whichever pages one came by.
static void close_to_build(Screen *screen)
{
    g_autofree char *number = g_strdup(screen->desk.number);
    screen_close_to(screen, 1);
    if (g_strcmp0(screen->desk.number, number) != 0)
        desk_take_up(&screen->desk, number);
    if (screen_upper(screen, 0)->ops != view_ops(VIEW_STEPS))
        screen_open(screen, VIEW_STEPS, NULL);
}

void screen_go(Screen *screen, Go there)
{
    char *waits = there.keeps ? g_strdup(screen->typing.text->str) : NULL;
    // Help keeps a number that is half typed.
    gboolean help = screen->field == ASKS_KEY || (there.kind == GO_OPEN && there.view == VIEW_HELP);
    if (there.kind != GO_KEEP && there.kind != GO_DEFAULT && (!help || there.keeps))
        g_string_truncate(screen->typing.text, 0);
    // What comes instead of a view looks at the same build.
    gboolean looks = !there.build && screen_upper(screen, 0)->before;
    if (there.kind == GO_INSTEAD && looks)
        there.build = g_strdup(screen->desk.number);
    if (there.kind == GO_UP || there.kind == GO_INSTEAD || there.kind == GO_ACT) {
        waits = g_steal_pointer(&screen_upper(screen, 0)->typed);
        view_pop(screen);
    }
    if (there.kind == GO_WORK)
        close_to_build(screen);
    gboolean under = there.kind == GO_INSTEAD && !there.argument && screen->views->len > 0 &&
                     screen_upper(screen, 0)->ops == view_ops(there.view);
    gboolean pushed =
        (there.kind == GO_OPEN || there.kind == GO_INSTEAD || there.kind == GO_WORK) && !under;
    if (pushed)
        view_push(screen, there.view, there.argument, there.build);
    bring_back(screen, waits, pushed);
    if (there.kind == GO_HOME)
        screen_close_to(screen, 1);
    if (there.kind == GO_LEAVE || screen->views->len == 0)
        screen->leave = TRUE;
    g_free(there.argument);
    g_free(there.build);
    if (there.kind == GO_ACT && !screen->leave)
        screen_act(screen, there.action);
}

enum { LEAVE_GAP = 1000000, AGAIN_GAP = 400000 }; // µs; behind the warning a key held down is known

// What is unplaced waits until it is taken or struck, for the next program too: who leaves with it
// is told so once.
static Go leave(Screen *screen)
{
    guint unplaced = screen->desk.unplaced->len;
    if (unplaced == 0 || unplaced == screen->told_left)
        return go(GO_LEAVE);
    screen->told_left = unplaced;
    desk_warn(&screen->desk,
              "UNPLACED waits for the next start; t at a field takes it, * 6 strikes it, q leaves");
    return go(GO_STAY);
}

// Up one screen; who goes up many, or holds the key down, does not fall out of the program, nor who
// has nothing more to erase.
static Go go_up(Screen *screen)
{
    gint64 before = screen->went_up;
    screen->went_up = screen->pressed;
    if (screen->views->len > 1)
        return go(GO_UP);
    if (screen->typing.before.kind == PRESSED_BACKSPACE) {
        desk_warn(&screen->desk, "this is the first screen; q leaves the program");
        return go(GO_STAY);
    }
    gint64 gap = before == screen->told_first ? AGAIN_GAP : LEAVE_GAP;
    if (!before || screen->pressed - before >= gap)
        return leave(screen);
    screen->told_first = screen->pressed;
    desk_warn(&screen->desk, "this is the first screen; the same key again leaves the program");
    return go(GO_STAY);
}

// What every view does with an action that it does not know itself.
static Go act_default(Screen *screen, Action action)
{
    switch (action) {
    case ACTION_HELP:
        return go_open(VIEW_HELP, g_strdup(screen_upper(screen, 0)->ops->name));
    case ACTION_MORE:
        return go_open(VIEW_MORE, g_strdup(screen_upper(screen, 0)->ops->name));
    case ACTION_FIND:
        return screen->desk.book ? go_open(VIEW_FIND, NULL) : go(GO_DEFAULT);
    case ACTION_OVER:
        return screen->desk.book ? go_open(VIEW_OVER, NULL) : go(GO_DEFAULT);
    case ACTION_PRINT:
        return screen->desk.number && screen_upper(screen, 0)->ops != view_ops(VIEW_PRINT)
                   ? go_open(VIEW_PRINT, NULL)
                   : go(GO_DEFAULT);
    case ACTION_SHOP:
        return go(GO_HOME);
    case ACTION_STRIKE:
        return (screen->desk.last_seq && screen->desk.who) || screen->desk.unplaced->len
                   ? go_open(VIEW_STRIKE, NULL)
                   : go(GO_DEFAULT);
    case ACTION_PUT_DOWN:
        return go_open(VIEW_WHO, g_strdup("put down"));
    case ACTION_UP:
        return go_up(screen);
    case ACTION_BACK:
        return go(screen->views->len > 1 ? GO_UP : GO_DEFAULT);
    default:
        return go(GO_DEFAULT);
    }
}

// What finds no room in the field stays unplaced.
static void take_unplaced(Screen *screen)
{
    GPtrArray *unplaced = screen->desk.unplaced;
    if (screen->field == ASKS_DIGIT) // asked for by the page of the words behind `.` Enter
        screen_paint(screen);
    if (screen->leave)
        return;
    if (unplaced->len == 0 || !field_takes_burst(screen->field)) {
        desk_warn(&screen->desk,
                  unplaced->len ? "no field is open for it here" : "nothing is unplaced");
        return;
    }
    unplaced_shorten(unplaced, 0, typing_add_text(&screen->typing, unplaced_text(unplaced, 0)));
    screen->parking = FALSE;
}

// What stood there is said: over a slow line an arrow may come as Escape, and by nobody's wish.
static void empty_field(Screen *screen)
{
    desk_warn(&screen->desk, "emptied: %s", screen->typing.text->str);
    g_string_truncate(screen->typing.text, 0);
    screen->typing.sent = FALSE;
}

void screen_act(Screen *screen, Action action)
{
    Opened *opened = screen_upper(screen, 0);
    if (action == ACTION_BIG) {
        screen->desk.big = !screen->desk.big;
        return;
    }
    if (action == ACTION_CLEAR) {
        empty_field(screen);
        return;
    }
    if (action == ACTION_UNPLACED) {
        take_unplaced(screen);
        return;
    }
    Go there =
        opened->ops->act ? opened->ops->act(opened->state, &screen->desk, action) : go(GO_DEFAULT);
    if (there.kind == GO_DEFAULT && screen->field == ASKS_KEY)
        action = ACTION_UP;
    if (there.kind == GO_DEFAULT)
        there = act_default(screen, action);
    if (there.kind == GO_DEFAULT && !screen->desk.warning)
        desk_warn(&screen->desk, "`%s` does nothing here", action_info(action)->keys);
    screen_go(screen, there);
}

void screen_enter(Screen *screen)
{
    Opened *opened = screen_upper(screen, 0);
    if (!opened->ops->enter)
        return;
    const char *typed = screen->typing.text->str;
    Go there = opened->ops->enter(opened->state, &screen->desk, typed);
    gboolean words = screen->field == ASKS_TEXT || screen->field == ASKS_LINE;
    if (there.kind == GO_KEEP && words && !*typed && !screen->desk.warning)
        desk_warn(&screen->desk, "an answer is needed here: write it, then Enter; or Backspace "
                                 "goes back");
    screen_go(screen, there);
}

// What others entered since it was painted may have made another question of it, which that digit
// does not answer.
static gboolean is_another_question(Screen *screen)
{
    gconstpointer view = screen->painted.view;
    g_autofree char *next = g_strdup(screen->painted.next);
    if (!desk_catch_up(&screen->desk))
        return FALSE;
    gboolean wished = screen->wished; // what comes of the answer
    screen_paint(screen);
    screen->wished = wished;
    if (screen->leave ||
        (screen->painted.view == view && g_strcmp0(screen->painted.next, next) == 0))
        return screen->leave;
    if (!screen->desk.warning)
        desk_warn(&screen->desk, "another terminal entered something meanwhile; nothing was taken");
    return TRUE;
}

void screen_answer(Screen *screen, guint digit)
{
    if (is_another_question(screen))
        return;
    Opened *opened = screen_upper(screen, 0);
    if (opened->ops->digit)
        screen_go(screen, opened->ops->digit(opened->state, &screen->desk, digit));
}

enum { WANTS_MOST = 8 }; // views that open each other without a key

// Another person's entry may open a question in front of what is typed here, or do away with the
// field that it stands in: it stays unplaced then.
static Go keep_typed(Screen *screen, Go there)
{
    const char *typed = screen->typing.text->str;
    if (!*typed)
        return there;
    if (there.kind != GO_OPEN)
        screen_park_typed(screen);
    return there.kind == GO_OPEN ? go_first(there) : there;
}

// Opens what the uppermost view cannot go on without.
void screen_settle(Screen *screen)
{
    for (guint i = 0; i < WANTS_MOST && !screen->leave; i++) {
        Opened *opened = screen_upper(screen, 0);
        Go there =
            opened->ops->wants ? opened->ops->wants(opened->state, &screen->desk) : go(GO_STAY);
        if (there.kind == GO_STAY)
            return;
        screen_go(screen, keep_typed(screen, there));
    }
}

// Tab and arrows move among places or lines; a list that cannot scroll stays as it is.
void screen_move(Screen *screen, gint direction)
{
    Opened *opened = screen_upper(screen, 0);
    if (opened->ops->move)
        screen_go(screen, opened->ops->move(opened->state, &screen->desk, direction));
    else if (screen->field != ASKS_LINE)
        screen_act(screen, direction < 0 ? ACTION_BACK : ACTION_ON);
}
