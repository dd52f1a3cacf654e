// The loop: paints the uppermost view, waits for a key, and does what the view says.
#include "screen_inside.h"

#include "burst.h"
#include "clock_line.h"

#include <string.h>

enum { POLL = 250, IDLE_POLL = 5 }; // ms

static gboolean is_late(const char *clock)
{
    return clock && strstr(clock, " LATE ");
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
    while (screen_upper(screen, below)->ops->small && below + 1 < screen->views->len)
        below++;
    for (guint i = below + 1; i-- > 0;) {
        Opened *opened = screen_upper(screen, i);
        // What is typed is for the uppermost view alone, or for the one that it stands over.
        guint owner = screen_upper(screen, 0)->ops->over && below > 0 ? 1 : 0;
        const char *typed = i == owner ? screen->typing.text->str : "";
        opened->ops->paint(opened->state, &screen->desk, typed, page);
    }
}

// The oldest burst, and how many there are.
static void paint_unplaced(const GPtrArray *unplaced, Moment now, Page *page)
{
    if (unplaced->len == 0)
        return;
    page_say(&page->unplaced, "%s", unplaced_text(unplaced, 0));
    page->unplaced_how = unplaced_how(unplaced, 0, now);
    page->unplaced_more = unplaced->len - 1;
}

// What is the same on every page.
static void paint_desk(const Screen *screen, const char *typed, Page *page)
{
    const Desk *desk = &screen->desk;
    status_right(screen, page);
    paint_unplaced(desk->unplaced, desk->now, page);
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

// A digit that answered nothing begins a number: what follows it is no answer either.
static void heed_tried(Screen *screen, const Painted *now)
{
    const Painted *before = &screen->painted;
    if (screen->tried < 0)
        return;
    gboolean same = now->view == before->view && now->known == before->known &&
                    now->field == before->field && g_strcmp0(now->next, before->next) == 0;
    if (same && !screen->desk.warning)
        screen->desk.unseen = screen->pressed + ASKED_GAP;
    else
        screen->tried = -1;
}

// A warning is of the page that it was said about. Where another one came by itself since it was
// seen, it ends; where one came with it, it does not stand over what can be answered there.
static void heed_page(Screen *screen, Page *page)
{
    Desk *desk = &screen->desk;
    Painted *before = &screen->painted;
    Painted now = {screen_upper(screen, 0)->state, g_strdup(page->next), page->field,
                   desk_entries_known(desk)};
    gboolean same = now.view == before->view &&
                    (now.known == before->known || g_strcmp0(now.next, before->next) == 0);
    gboolean seen = screen->rung == desk->warnings;
    screen->other = !same;
    heed_tried(screen, &now);
    if (!same && seen)
        g_clear_pointer(&desk->warning, g_free);
    screen->brief = seen ? screen->brief : !same && page->ask;
    page->brief = screen->brief;
    g_free(before->next);
    *before = now;
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

// A question takes no key pressed before it was painted, which is said; a burst is parked all the
// same.
static void drop_earlier_keys(Screen *screen)
{
    Key key = term_key(screen->term, 0);
    screen->leave = screen->leave || key.kind == PRESSED_HANGUP;
    screen->stale = key.kind != PRESSED_NONE;
    if (screen->leave || key.kind == PRESSED_NONE || key.kind == PRESSED_RESIZE)
        return;
    g_autoptr(GArray) keys = screen_gather(screen, key);
    if (keys_are_burst(keys))
        screen_park(screen, keys);
    else if (!screen->desk.warning)
        desk_warn(&screen->desk, "a key pressed before this was asked is dropped; press it again");
}

// A question that nobody asked for takes no digits that are being typed for what stood there
// before; the one at the launch comes before any.
static void guard_question(Screen *screen)
{
    if (!screen->wished && screen->typing.before.kind != PRESSED_NONE)
        screen->desk.unseen = g_get_monotonic_time() + ASKED_GAP;
}

// A warning rings once.
static void begin_question(Screen *screen, Asks field)
{
    if (field == ASKS_DIGIT && (screen->opened || screen->other || screen->field != ASKS_DIGIT))
        guard_question(screen);
    screen->wished = FALSE;
    if (field == ASKS_DIGIT && (screen->opened || screen->field != ASKS_DIGIT))
        drop_earlier_keys(screen);
    if (screen->desk.warning && screen->rung != screen->desk.warnings)
        term_bell(screen->term);
    screen->rung = screen->desk.warnings;
    screen->opened = FALSE;
    screen->field = field;
}

void screen_paint(Screen *screen)
{
    guint width, height, row = 0, column = 0;
    screen->desk.typed = screen->typing.text->len > 0;
    screen_settle(screen);
    if (screen->leave)
        return;
    const char *typed = screen->typing.text->str;
    Page page;
    term_size(screen->term, &width, &height);
    page_init(&page, width, screen->desk.ascii);
    page.height = height;
    screen->desk.now = screen->desk.options->now(screen->desk.options->user);
    paint_views(screen, &page);
    heed_page(screen, &page);
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
    screen->typing.offered = page_offers(&page);
    page_clear(&page);
    screen_keep(screen);
}

// THE LOOP --------------------------------------------------------------------------------------

static gboolean idle(Screen *screen)
{
    gboolean more = FALSE;
    for (guint i = 0; i < screen->views->len && !more; i++) {
        Opened *opened = screen_upper(screen, i);
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
            screen_paint(screen);
        if (screen->leave)
            return;
        Key key = term_key(screen->term, more ? IDLE_POLL : POLL);
        gboolean pressed = key.kind != PRESSED_NONE && key.kind != PRESSED_RESIZE;
        if (key.kind == PRESSED_HANGUP)
            return;
        if (pressed)
            screen_take_keys(screen, key);
        else
            screen_fall_asleep(screen);
        if (screen->leave)
            return;
        gboolean quiet = key.kind == PRESSED_NONE;
        gboolean did = quiet && (more || now != screen->idled) && idle(screen);
        screen->idled = now;
        changed = catch_up(screen, key.at) || !quiet || screen->stale || did;
        changed = screen_ask_who(screen) || changed;
        screen->stale = FALSE;
        more = did || !quiet;
    }
}

// What was pressed last, what stands in fields and what was begun is kept for the next start.
static void end(Screen *screen)
{
    g_autoptr(GArray) rest = term_rest(screen->term, BURST_MOST);
    screen_save_keys(screen, rest);
    screen_park_typed(screen);
    screen_park_waiting(screen);
    screen_close_to(screen, 0);
    screen_keep(screen);
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
        screen.digit = screen.tried = -1;
        screen_take_up(&screen);
        screen_open(&screen, screen.desk.book ? VIEW_SHOP : VIEW_FIRST, NULL);
        loop(&screen);
        end(&screen);
        g_array_unref(screen.views);
        typing_clear(&screen.typing);
    }
    g_free(screen.soonest);
    g_free(screen.painted.next);
    aside_close(screen.aside);
    gboolean ran = screen.term != NULL;
    term_close(screen.term);
    desk_clear(&screen.desk);
    return ran;
}
