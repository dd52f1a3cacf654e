// The loop: paints the uppermost view, waits for a key, and does what the view says.
#include <standbook/screen/screen.h>

#include "term.h"
#include "view.h"

#include <string.h>

enum { POLL = 250, IDLE_POLL = 5 }; // ms

typedef struct {
    const ViewOps *ops;
    gpointer state;
} Opened;

typedef struct {
    Term *term;
    Desk desk;
    GArray *views; // Opened, the uppermost last
    Typing typing;
    Asks field; // of the page that was painted last
    gboolean leave;
    gint64 pressed; // when the last key was, µs
    gboolean slept; // put down for want of keys; the next one picks up
} Screen;

// VIEWS -----------------------------------------------------------------------------------------

static Opened *upper(const Screen *screen, guint below)
{
    return &g_array_index(screen->views, Opened, screen->views->len - 1 - below);
}

static void view_push(Screen *screen, ViewName view, const char *argument)
{
    Opened opened = {.ops = view_ops(view)};
    opened.state = opened.ops->open ? opened.ops->open(&screen->desk, argument) : NULL;
    g_array_append_val(screen->views, opened);
    // A question takes no key pressed before it was painted.
    term_flush(screen->term);
}

static void view_pop(Screen *screen)
{
    Opened *opened = upper(screen, 0);
    if (opened->ops->close)
        opened->ops->close(opened->state);
    g_array_set_size(screen->views, screen->views->len - 1);
}

static void views_pop_to(Screen *screen, guint count)
{
    while (screen->views->len > count)
        view_pop(screen);
}

static void act(Screen *screen, Action action);

static void go_there(Screen *screen, Go there)
{
    // Help keeps a number that is half typed.
    gboolean help = screen->field == ASKS_KEY || (there.kind == GO_OPEN && there.view == VIEW_HELP);
    if (there.kind != GO_KEEP && there.kind != GO_DEFAULT && !help)
        g_string_truncate(screen->typing.text, 0);
    if (there.kind == GO_UP || there.kind == GO_INSTEAD || there.kind == GO_ACT)
        view_pop(screen);
    gboolean under = there.kind == GO_INSTEAD && !there.argument && screen->views->len > 0 &&
                     upper(screen, 0)->ops == view_ops(there.view);
    if ((there.kind == GO_OPEN || there.kind == GO_INSTEAD) && !under)
        view_push(screen, there.view, there.argument);
    if (there.kind == GO_HOME)
        views_pop_to(screen, 1);
    if (there.kind == GO_LEAVE || screen->views->len == 0)
        screen->leave = TRUE;
    g_free(there.argument);
    if (there.kind == GO_ACT && !screen->leave)
        act(screen, there.action);
}

// What every view does with an action that it does not know itself.
static Go act_default(Screen *screen, Action action)
{
    switch (action) {
    case ACTION_HELP:
        return go_open(VIEW_HELP, g_strdup(upper(screen, 0)->ops->name));
    case ACTION_MORE:
        return go_open(VIEW_MORE, NULL);
    case ACTION_FIND:
        return screen->desk.book ? go_open(VIEW_FIND, NULL) : go(GO_DEFAULT);
    case ACTION_PRINT:
        return screen->desk.number ? go_open(VIEW_PRINT, NULL) : go(GO_DEFAULT);
    case ACTION_SHOP:
        return go(GO_HOME);
    case ACTION_STRIKE:
        return screen->desk.last_seq ? go_open(VIEW_STRIKE, NULL) : go(GO_DEFAULT);
    case ACTION_PUT_DOWN:
        return go_open(VIEW_WHO, g_strdup("put down"));
    case ACTION_UP:
        return go(screen->views->len > 1 ? GO_UP : GO_LEAVE);
    default:
        return go(GO_DEFAULT);
    }
}

static void take_unplaced(Screen *screen)
{
    GPtrArray *unplaced = screen->desk.unplaced;
    if (unplaced->len == 0 || !field_takes_burst(screen->field)) {
        desk_warn(&screen->desk,
                  unplaced->len ? "no field is open for it here" : "nothing is unplaced");
        return;
    }
    for (const char *at = unplaced->pdata[0]; *at; at = g_utf8_next_char(at))
        typing_add(&screen->typing, g_utf8_get_char(at));
    g_ptr_array_remove_index(unplaced, 0);
}

static void act(Screen *screen, Action action)
{
    Opened *opened = upper(screen, 0);
    if (action == ACTION_BIG) {
        screen->desk.big = !screen->desk.big;
        return;
    }
    if (action == ACTION_UNPLACED) {
        take_unplaced(screen);
        return;
    }
    Go there =
        opened->ops->act ? opened->ops->act(opened->state, &screen->desk, action) : go(GO_DEFAULT);
    if (there.kind == GO_DEFAULT)
        there = act_default(screen, action);
    if (there.kind == GO_DEFAULT && !screen->desk.warning)
        desk_warn(&screen->desk, "`%s` does nothing here", action_info(action)->keys);
    go_there(screen, there);
}

static void enter(Screen *screen)
{
    Opened *opened = upper(screen, 0);
    if (opened->ops->enter)
        go_there(screen,
                 opened->ops->enter(opened->state, &screen->desk, screen->typing.text->str));
}

static void answer(Screen *screen, guint digit, gint64 at)
{
    Opened *opened = upper(screen, 0);
    if (at - screen->desk.picked_up < PICK_UP_GAP && screen->desk.picked_up)
        g_ptr_array_add(screen->desk.unplaced, g_strdup_printf("%u", digit));
    else if (opened->ops->digit)
        go_there(screen, opened->ops->digit(opened->state, &screen->desk, digit));
}

enum { WANTS_MOST = 8 }; // views that open each other without a key

// Opens what the uppermost view cannot go on without.
static void settle(Screen *screen)
{
    for (guint i = 0; i < WANTS_MOST && !screen->leave; i++) {
        Opened *opened = upper(screen, 0);
        Go there =
            opened->ops->wants ? opened->ops->wants(opened->state, &screen->desk) : go(GO_STAY);
        if (there.kind == GO_STAY)
            return;
        go_there(screen, there);
    }
}

// KEYS ------------------------------------------------------------------------------------------

static void press(Screen *screen, const Key *key)
{
    Press pressed = typing_press(&screen->typing, screen->field, key);
    g_clear_pointer(&screen->desk.warning, g_free);
    switch (pressed.kind) {
    case PRESS_ENTER:
        enter(screen);
        break;
    case PRESS_ACTION:
        act(screen, pressed.action);
        break;
    case PRESS_BEFORE:
        act(screen, ACTION_BACK);
        break;
    case PRESS_BEHIND:
        act(screen, ACTION_ON);
        break;
    case PRESS_DIGIT:
        answer(screen, pressed.digit, key->at);
        break;
    case PRESS_SAY:
        desk_warn(&screen->desk, "%s", pressed.words);
        break;
    default:
        break;
    }
}

static void park(Screen *screen, const char *text)
{
    if (*text)
        g_ptr_array_add(screen->desk.unplaced, g_strdup(text));
}

static void paint(Screen *screen);

// One line of a burst: into the open field and taken there, else parked.
static void burst_line(Screen *screen, GString *line, gboolean ended)
{
    gboolean open = field_takes_burst(screen->field);
    for (const char *at = line->str; open && *at; at = g_utf8_next_char(at))
        open = typing_add(&screen->typing, g_utf8_get_char(at));
    if (!open)
        park(screen, line->str);
    else if (ended && line->len && !typing_command(&screen->typing)) {
        enter(screen);
        if (!screen->leave)
            paint(screen); // the next field may be another
    }
    g_string_truncate(line, 0);
}

static void burst(Screen *screen, const GArray *keys)
{
    g_autoptr(GString) line = g_string_new(NULL);
    g_clear_pointer(&screen->desk.warning, g_free);
    for (guint i = 0; i < keys->len && !screen->leave; i++) {
        const Key *key = &g_array_index(keys, Key, i);
        if (key->kind == PRESSED_CHARACTER && !g_unichar_iscntrl(key->character))
            g_string_append_unichar(line, key->character);
        else if (key->kind == PRESSED_ENTER || key->kind == PRESSED_TAB)
            burst_line(screen, line, TRUE);
    }
    if (!screen->leave)
        burst_line(screen, line, FALSE);
}

enum { FINGERS = 2 }; // keys that fingers press as good as at once

// What no finger types: more keys than two at once, not all of them the ends of a line.
static gboolean is_burst(const GArray *keys)
{
    gboolean line_ends = TRUE;
    for (guint i = 0; i < keys->len; i++)
        line_ends = line_ends && g_array_index(keys, Key, i).kind == PRESSED_ENTER;
    return keys->len > FINGERS && !line_ends;
}

// Keys pressed by fingers, one after the other; a question that one of them opens takes none of the
// others. CR LF is one Enter.
static void press_each(Screen *screen, const GArray *keys)
{
    for (guint i = 0; i < keys->len && !screen->leave; i++) {
        const Key *key = &g_array_index(keys, Key, i);
        if (i && key->kind == PRESSED_ENTER &&
            g_array_index(keys, Key, i - 1).kind == PRESSED_ENTER)
            continue;
        press(screen, key);
        if (i + 1 < keys->len && !screen->leave)
            paint(screen);
        if (screen->field == ASKS_DIGIT)
            return;
    }
}

// The key, and whatever comes with it faster than a finger.
static GArray *gather(Screen *screen, Key key)
{
    GArray *keys = g_array_new(FALSE, FALSE, sizeof(Key));
    while (key.kind != PRESSED_NONE && key.kind != PRESSED_HANGUP) {
        if (key.kind != PRESSED_RESIZE)
            g_array_append_val(keys, key);
        key = term_key(screen->term, BURST_GAP / 1000);
    }
    screen->leave = screen->leave || key.kind == PRESSED_HANGUP;
    return keys;
}

enum { SLEEP_AFTER = 600 }; // s without a key

// Nobody is there: that stands in the record as an interruption.
static void fall_asleep(Screen *screen)
{
    Session *session = screen->desk.who ? desk_build(&screen->desk) : NULL;
    gint64 waited = (g_get_monotonic_time() - screen->pressed) / G_USEC_PER_SEC;
    if (!screen->slept && waited >= SLEEP_AFTER && session && standing_of(session).in_hand)
        screen->slept = desk_line(&screen->desk, "put down \"ten minutes without a key\"", NULL);
}

static void wake_up(Screen *screen)
{
    Session *session = screen->slept ? desk_build(&screen->desk) : NULL;
    const PlanStep *step = session ? standing_of(session).step : NULL;
    g_autofree char *line = step ? g_strdup_printf("pick up %s", step->name) : NULL;
    if (line)
        desk_line(&screen->desk, line, NULL);
    screen->slept = FALSE;
}

static void take_keys(Screen *screen, Key key)
{
    screen->pressed = key.at;
    wake_up(screen);
    g_autoptr(GArray) keys = gather(screen, key);
    if (is_burst(keys))
        burst(screen, keys);
    else
        press_each(screen, keys);
}

// PAINTING --------------------------------------------------------------------------------------

static void status_right(const Desk *desk, Page *page)
{
    g_autofree char *time = moment_text(desk->now);
    g_autofree char *clock = page->status_right;
    page->status_right = g_strdup_printf("%s%s%s  %.5s", clock ? clock : "", clock ? "  " : "",
                                         desk->who ? desk->who : "nobody yet", time + 11);
}

static void paint_views(Screen *screen, Page *page)
{
    guint below = 0;
    while (upper(screen, below)->ops->small && below + 1 < screen->views->len)
        below++;
    for (guint i = below + 1; i-- > 0;) {
        Opened *opened = upper(screen, i);
        opened->ops->paint(opened->state, &screen->desk, screen->typing.text->str, page);
    }
}

// What is the same on every page.
static void paint_desk(const Desk *desk, const char *typed, Page *page)
{
    status_right(desk, page);
    if (desk->unplaced->len)
        page_say(&page->unplaced, "%s", (const char *)desk->unplaced->pdata[0]);
    if (desk->warning) {
        page->warns = TRUE;
        page_say(&page->last, "%s", desk->warning);
    } else if (!page->last)
        page_say(&page->last, "%s", desk->last ? desk->last : "");
    if (strlen(typed) == 1 && strchr("+-.", *typed) && page->field != ASKS_TEXT) {
        Action action = *typed == '+' ? ACTION_ON : *typed == '-' ? ACTION_BACK : ACTION_MORE;
        page->means = TRUE;
        page_say(&page->then, "Enter: %s", action_info(action)->about);
    }
}

static void paint_small(Screen *screen, const Page *page, Canvas *canvas)
{
    canvas_put(canvas, 0, 0, 0, style_of(0, 0),
               "standbook needs 80 columns and 24 rows; make the window larger");
    canvas_put(canvas, 1, 0, 0, style_of(TYPE_BOLD, 0), page->next ? page->next : "");
    canvas_put(canvas, 2, 0, 0, style_of(TYPE_REVERSE, 0), screen->typing.text->str);
}

static void paint(Screen *screen)
{
    guint width, height, row = 0, column = 0;
    settle(screen);
    if (screen->leave)
        return;
    const char *typed = screen->typing.text->str;
    Page page;
    term_size(screen->term, &width, &height);
    page_init(&page, width, screen->desk.ascii);
    screen->desk.now = screen->desk.options->now(screen->desk.options->user);
    paint_views(screen, &page);
    paint_desk(&screen->desk, typed, &page);
    g_autoptr(Canvas) canvas = canvas_new(width, height, screen->desk.ascii);
    if (width >= PAGE_WIDTH && height >= PAGE_HEIGHT)
        page_paint(&page, typed, canvas, &row, &column);
    else
        paint_small(screen, &page, canvas);
    term_show(screen->term, canvas, row, column);
    screen->field = page.field;
    page_clear(&page);
}

// THE LOOP --------------------------------------------------------------------------------------

static gboolean idle(Screen *screen)
{
    gboolean more = FALSE;
    for (guint i = 0; i < screen->views->len && !more; i++) {
        Opened *opened = upper(screen, i);
        more = opened->ops->idle && opened->ops->idle(opened->state, &screen->desk);
    }
    return more;
}

static void loop(Screen *screen)
{
    gboolean more = TRUE, changed = TRUE; // there is more to do while nobody presses a key
    while (!screen->leave) {
        Moment now = screen->desk.options->now(screen->desk.options->user);
        if (changed || now / 60 != screen->desk.now / 60)
            paint(screen);
        if (screen->leave)
            return;
        Key key = term_key(screen->term, more ? IDLE_POLL : POLL);
        if (key.kind == PRESSED_HANGUP)
            return;
        if (key.kind != PRESSED_NONE)
            take_keys(screen, key);
        fall_asleep(screen);
        changed = key.kind != PRESSED_NONE || more;
        if (screen->leave)
            return;
        changed = desk_catch_up(&screen->desk) || changed;
        more = key.kind == PRESSED_NONE && idle(screen);
        more = more || key.kind != PRESSED_NONE;
    }
}

gboolean screen_run(const ScreenOptions *options, GError **error)
{
    Screen screen = {0};
    if (!desk_open(&screen.desk, options, error)) {
        desk_clear(&screen.desk);
        return FALSE;
    }
    screen.term = term_open(options->colours, error);
    if (screen.term) {
        screen.desk.ascii = term_is_ascii(screen.term);
        screen.views = g_array_new(FALSE, TRUE, sizeof(Opened));
        typing_init(&screen.typing);
        screen.pressed = g_get_monotonic_time();
        view_push(&screen, screen.desk.book ? VIEW_SHOP : VIEW_FIRST, NULL);
        loop(&screen);
        views_pop_to(&screen, 0);
        g_array_unref(screen.views);
        typing_clear(&screen.typing);
    }
    gboolean ran = screen.term != NULL;
    term_close(screen.term);
    desk_clear(&screen.desk);
    return ran;
}
