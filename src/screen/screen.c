// The loop: paints the uppermost view, waits for a key, and does what the view says.
#include <standbook/screen/screen.h>

#include "burst.h"
#include "clock_line.h"
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
    Asks field;      // of the page that was painted last
    gboolean opened; // a view that was not painted yet
    gboolean rung;   // the bell, for the warning that stands
    gboolean stale;  // what is painted; to be painted again
    gboolean leave;
    gint64 parked_for; // the pick-up whose digits the newest burst unplaced is of
    gint64 went_up;    // when the last key that goes up one screen was pressed, µs
    Moment looked;     // when the clocks of all builds were last looked at
    guint known;       // how many entries stood in them then
    char *soonest;     // the clock that runs out first, in words; NULL if none runs
    Moment idled;      // when the views were last asked what they do by themselves
    gint64 caught_up;  // when others' entries were looked for last, µs
    gint64 pressed;    // when the last key was, µs
    gboolean slept;    // put down for want of keys; the next one picks up
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
    screen->opened = TRUE;
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

enum { LEAVE_GAP = 1000000 }; // µs

// Up one screen; who goes up many, or holds the key down, does not fall out of the program.
static Go go_up(Screen *screen)
{
    gint64 before = screen->went_up;
    screen->went_up = screen->pressed;
    if (screen->views->len > 1)
        return go(GO_UP);
    if (!before || screen->pressed - before >= LEAVE_GAP)
        return go(GO_LEAVE);
    desk_warn(&screen->desk, "this is the first screen; the same key again leaves the program");
    return go(GO_STAY);
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
    case ACTION_OVER:
        return screen->desk.book ? go_open(VIEW_OVER, NULL) : go(GO_DEFAULT);
    case ACTION_PRINT:
        return screen->desk.number && upper(screen, 0)->ops != view_ops(VIEW_PRINT)
                   ? go_open(VIEW_PRINT, NULL)
                   : go(GO_DEFAULT);
    case ACTION_SHOP:
        return go(GO_HOME);
    case ACTION_STRIKE:
        return screen->desk.last_seq ? go_open(VIEW_STRIKE, NULL) : go(GO_DEFAULT);
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
    if (unplaced->len == 0 || !field_takes_burst(screen->field)) {
        desk_warn(&screen->desk,
                  unplaced->len ? "no field is open for it here" : "nothing is unplaced");
        return;
    }
    char **first = (char **)&unplaced->pdata[0];
    gsize taken = typing_add_text(&screen->typing, *first);
    char *rest = g_strdup(*first + taken);
    g_free(*first);
    *first = rest;
    if (!*rest)
        g_ptr_array_remove_index(unplaced, 0);
    screen->parked_for = 0;
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

static void answer(Screen *screen, guint digit)
{
    Opened *opened = upper(screen, 0);
    if (opened->ops->digit)
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

static void clear_warning(Screen *screen)
{
    g_clear_pointer(&screen->desk.warning, g_free);
    screen->rung = FALSE;
}

// Digits right behind a pick-up were meant for what stood there before: they are parked as one,
// until another key shows that the person has seen what stands there now.
static gboolean is_parked(Screen *screen, const Key *key)
{
    gint64 picked_up = screen->desk.picked_up;
    GPtrArray *unplaced = screen->desk.unplaced;
    gboolean digit = key->kind == PRESSED_CHARACTER && g_unichar_isdigit(key->character);
    if (!digit || key->at - picked_up >= PICK_UP_GAP)
        screen->desk.picked_up = 0;
    if (!screen->desk.picked_up)
        return FALSE;
    gboolean more = screen->parked_for == picked_up && unplaced->len;
    g_autoptr(GString) digits = g_string_new(more ? unplaced->pdata[unplaced->len - 1] : NULL);
    if (more)
        g_ptr_array_set_size(unplaced, (gint)unplaced->len - 1);
    g_string_append_unichar(digits, key->character);
    g_ptr_array_add(unplaced, g_strdup(digits->str));
    screen->parked_for = picked_up;
    return TRUE;
}

// Tab and arrows move among places or lines; a list that cannot scroll stays as it is.
static void move(Screen *screen, gint direction)
{
    Opened *opened = upper(screen, 0);
    if (opened->ops->move)
        go_there(screen, opened->ops->move(opened->state, &screen->desk, direction));
    else if (screen->field != ASKS_LINE)
        act(screen, direction < 0 ? ACTION_BACK : ACTION_ON);
}

static void do_pressed(Screen *screen, const Press *pressed)
{
    switch (pressed->kind) {
    case PRESS_ENTER:
        enter(screen);
        break;
    case PRESS_ACTION:
        act(screen, pressed->action);
        break;
    case PRESS_BEFORE:
        move(screen, -1);
        break;
    case PRESS_BEHIND:
        move(screen, 1);
        break;
    case PRESS_DIGIT:
        answer(screen, pressed->digit);
        break;
    case PRESS_SAY:
        desk_warn(&screen->desk, "%s", pressed->words);
        break;
    default:
        break;
    }
}

// Whether a key does more than to change what stands in the field, or to take it.
static gboolean is_command(const Screen *screen, const Press *pressed)
{
    gboolean whole = screen->field != ASKS_LINE && screen->typing.text->len;
    return pressed->kind == PRESS_ACTION || pressed->kind == PRESS_DIGIT ||
           (pressed->kind == PRESS_ENTER && !whole);
}

// A key that came `alone`, or with another one closer than a person means it.
static void press(Screen *screen, const Key *key, gboolean alone)
{
    clear_warning(screen);
    if (key->kind == PRESSED_BREAK)
        screen->leave = TRUE;
    else if (key->kind == PRESSED_STOP)
        term_stop(screen->term);
    else if (!is_parked(screen, key)) {
        Press pressed = typing_press(&screen->typing, screen->field, key);
        if (alone || !is_command(screen, &pressed))
            do_pressed(screen, &pressed);
        else
            desk_warn(&screen->desk, "two keys at once are no command; press it again");
    }
}

static void paint(Screen *screen);

// The key, and whatever comes with it faster than a finger.
static GArray *gather(Screen *screen, Key key)
{
    GArray *keys = g_array_new(FALSE, FALSE, sizeof(Key));
    g_array_append_val(keys, key);
    while (keys->len < BURST_MOST && !keys_are_held(keys)) {
        key = term_key(screen->term, BURST_GAP / 1000);
        if (key.kind == PRESSED_NONE || key.kind == PRESSED_HANGUP)
            break;
        if (key.kind != PRESSED_RESIZE)
            g_array_append_val(keys, key);
    }
    screen->leave = screen->leave || key.kind == PRESSED_HANGUP;
    return keys;
}

static void park(Screen *screen, const GArray *keys)
{
    g_autoptr(GArray) lines = burst_lines(keys);
    for (guint i = 0; i < lines->len; i++)
        g_ptr_array_add(screen->desk.unplaced, g_strdup(g_array_index(lines, BurstLine, i).text));
}

// A burst goes into the open field, and its lines on into the fields behind as long as they are of
// the same sort on the same screen; what finds none is parked.
static void burst(Screen *screen, const GArray *keys)
{
    g_autoptr(GArray) lines = burst_lines(keys);
    const ViewOps *ops = upper(screen, 0)->ops;
    Asks field = screen->field;
    gboolean ended = FALSE; // the one that was put in last, by Enter
    clear_warning(screen);
    for (guint i = 0; i < lines->len && !screen->leave; i++) {
        const BurstLine *line = &g_array_index(lines, BurstLine, i);
        if (screen->field != field || upper(screen, 0)->ops != ops ||
            !typing_fits_burst(&screen->typing, field, line->text)) {
            g_ptr_array_add(screen->desk.unplaced, g_strdup(line->text));
            continue;
        }
        typing_add_burst(&screen->typing, line->text);
        ended = line->ended;
        if (!ended || typing_command(&screen->typing))
            continue;
        enter(screen);
        if (!screen->leave)
            paint(screen); // the next field may be another
    }
    screen->typing.sent = ended;
    // What a scanner sends behind its Enter comes late.
    screen->typing.entered = g_array_index(keys, Key, keys->len - 1).at;
    screen->parked_for = 0;
}

// Keys pressed by fingers, one after the other; a question that one of them opens takes none of the
// others. CR LF is one Enter.
static void press_each(Screen *screen, const GArray *keys)
{
    gboolean alone = keys->len == 1 || keys_are_one(keys);
    for (guint i = 0; i < keys->len && !screen->leave; i++) {
        const Key *key = &g_array_index(keys, Key, i);
        if (i && key->kind == PRESSED_ENTER &&
            g_array_index(keys, Key, i - 1).kind == PRESSED_ENTER)
            continue;
        press(screen, key, alone);
        if (i + 1 < keys->len && !screen->leave)
            paint(screen);
        if (screen->field == ASKS_DIGIT)
            return;
    }
}

enum { SLEEP_AFTER = 600 }; // s without a key

static void fall_asleep(Screen *screen)
{
    gint64 now = g_get_monotonic_time();
    if (screen->slept || (now - screen->pressed) / G_USEC_PER_SEC < SLEEP_AFTER)
        return;
    screen->pressed = now; // if it cannot be stored, it is tried again as long from now
    screen->slept = desk_fall_asleep(&screen->desk);
}

// Two keys together may be fingers in a field; none answers a question or turns a page so.
static gboolean is_burst(const Screen *screen, const GArray *keys)
{
    gboolean field = field_takes_burst(screen->field) || screen->field == ASKS_LINE;
    return keys_are_burst(keys) || (keys->len == FINGERS && !field && !keys_are_one(keys));
}

static void take_keys(Screen *screen, Key key)
{
    screen->pressed = key.at;
    if (screen->slept)
        desk_wake_up(&screen->desk);
    screen->slept = FALSE;
    g_autoptr(GArray) keys = gather(screen, key);
    if (is_burst(screen, keys))
        burst(screen, keys);
    else
        press_each(screen, keys);
}

// PAINTING --------------------------------------------------------------------------------------

static gboolean is_late(const char *clock)
{
    return clock && strstr(clock, "LATE");
}

// The clocks stand as they were a second ago, unless something was entered. One that runs out rings
// once.
static void look_at_clocks(Screen *screen)
{
    guint known = desk_entries_known(&screen->desk);
    if (screen->desk.now == screen->looked && known == screen->known)
        return;
    g_autofree char *before = screen->soonest;
    screen->soonest = clock_line_of_all(&screen->desk);
    if (screen->looked && is_late(screen->soonest) && !is_late(before))
        term_bell(screen->term);
    screen->looked = screen->desk.now;
    screen->known = known;
}

// The page's own clock, else the soonest of all.
static void status_right(const Screen *screen, Page *page)
{
    const Desk *desk = &screen->desk;
    g_autofree char *time = moment_text(desk->now);
    g_autofree char *own = page->status_right;
    const char *clock = own ? own : screen->soonest;
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
        // What is typed is for the uppermost view alone, or for the one that it stands over.
        guint owner = upper(screen, 0)->ops->over && below > 0 ? 1 : 0;
        const char *typed = i == owner ? screen->typing.text->str : "";
        opened->ops->paint(opened->state, &screen->desk, typed, page);
    }
}

// The oldest burst, and how many there are.
static void paint_unplaced(const GPtrArray *unplaced, Page *page)
{
    enum { SHOWN = 40 }; // characters
    if (unplaced->len == 0)
        return;
    const char *first = unplaced->pdata[0];
    gboolean whole = g_utf8_strlen(first, -1) <= SHOWN;
    g_autofree char *begins = g_utf8_substring(first, 0, whole ? -1 : SHOWN);
    g_autofree char *more =
        unplaced->len > 1 ? g_strdup_printf(" and %u more", unplaced->len - 1) : g_strdup("");
    page_say(&page->unplaced, "%s%s%s", begins, whole ? "" : "…", more);
}

// What is the same on every page.
static void paint_desk(const Screen *screen, const char *typed, Page *page)
{
    const Desk *desk = &screen->desk;
    status_right(screen, page);
    paint_unplaced(desk->unplaced, page);
    if (desk->warning) {
        page->warns = TRUE;
        page_say(&page->last, "%s", desk->warning);
    } else if (!page->last)
        page->last = desk_last_words(desk);
    if (strlen(typed) == 1 && strchr("+-.", *typed) && page->field != ASKS_TEXT) {
        Action action = *typed == '+' ? ACTION_ON : *typed == '-' ? ACTION_BACK : ACTION_MORE;
        page->means = TRUE;
        page_say(&page->then, "Enter: %s", action_info(action)->about);
    }
}

// Under the least size: what is asked, what can be answered and what was typed.
static void paint_small(const Page *page, const char *typed, Canvas *canvas, guint *row,
                        guint *column)
{
    static const Style plain = {0, 0}, bold = {TYPE_BOLD, 0}, here = {TYPE_REVERSE, ROLE_HERE};
    gboolean words = page->field == ASKS_DIGIT || (page->field == ASKS_TICK && !*typed);
    canvas_put(canvas, 0, 0, 0, plain, "Make the window larger: 80 columns, 24 rows.");
    guint behind = canvas_put(canvas, 1, 0, 0, bold, page->ask ? "ASK   " : "NEXT  ");
    canvas_put(canvas, 1, behind, 0, bold, page->next ? page->next : "");
    *row = 2;
    *column = canvas_put(canvas, 2, 0, 0, here, words && page->unit ? page->unit : typed);
    canvas_put(canvas, 3, 0, 0, plain, page->then ? page->then : "");
    canvas_put(canvas, 4, 0, 0, bold, page->warns ? page->last : "");
}

// A question takes no key pressed before it was painted; a burst is parked all the same.
static void drop_earlier_keys(Screen *screen)
{
    Key key = term_key(screen->term, 0);
    screen->leave = screen->leave || key.kind == PRESSED_HANGUP;
    screen->stale = key.kind != PRESSED_NONE;
    if (screen->leave || key.kind == PRESSED_NONE || key.kind == PRESSED_RESIZE)
        return;
    g_autoptr(GArray) keys = gather(screen, key);
    if (keys_are_burst(keys))
        park(screen, keys);
}

// A warning rings once.
static void begin_question(Screen *screen, Asks field)
{
    if (field == ASKS_DIGIT && (screen->opened || screen->field != ASKS_DIGIT))
        drop_earlier_keys(screen);
    if (screen->desk.warning && !screen->rung)
        term_bell(screen->term);
    screen->rung = screen->desk.warning != NULL;
    screen->opened = FALSE;
    screen->field = field;
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
    look_at_clocks(screen);
    desk_watch_clock(&screen->desk);
    paint_desk(screen, typed, &page);
    g_autoptr(Canvas) canvas = canvas_new(width, height, screen->desk.ascii);
    if (width >= PAGE_WIDTH && height >= PAGE_HEIGHT)
        page_paint(&page, typed, canvas, &row, &column);
    else
        paint_small(&page, typed, canvas, &row, &column);
    term_show(screen->term, canvas, row, column);
    begin_question(screen, page.any_key ? ASKS_KEY : page.field);
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

enum { CATCH_UP_GAP = 200000 }; // µs

// What others entered is looked for now and then, whether somebody types here or not.
static gboolean catch_up(Screen *screen, gint64 now)
{
    if (now - screen->caught_up < CATCH_UP_GAP)
        return FALSE;
    screen->caught_up = now;
    return desk_catch_up(&screen->desk);
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
        gboolean pressed = key.kind != PRESSED_NONE && key.kind != PRESSED_RESIZE;
        if (key.kind == PRESSED_HANGUP)
            return;
        if (pressed)
            take_keys(screen, key);
        else
            fall_asleep(screen);
        if (screen->leave)
            return;
        gboolean quiet = key.kind == PRESSED_NONE;
        gboolean did = quiet && (more || now != screen->idled) && idle(screen);
        screen->idled = now;
        changed = catch_up(screen, key.at) || !quiet || screen->stale || did;
        screen->stale = FALSE;
        more = did || !quiet;
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
    g_free(screen.soonest);
    gboolean ran = screen.term != NULL;
    term_close(screen.term);
    desk_clear(&screen.desk);
    return ran;
}
