// The working of the advice on a setting: how it answers, what tightening does, the chances.
#include "setting_page.h"
#include "setting_tries.h"
#include "setting_words.h"
#include "view.h"

#include <standbook/work/setting_why.h>

enum { HEAD = 1, SAID = 11 }; // columns

typedef struct {
    SettingTries tries;
    char *bolt; // the requirement in hand, if a bolt that holds it is; else NULL
    PageTurn turn;
} Working;

// The argument says which setting (setting_tries_open), and behind it the bolt in hand.
static gpointer open(Desk *desk, const char *argument)
{
    (void)desk;
    Working *working = g_new0(Working, 1);
    working->bolt = g_strdup(setting_tries_open(&working->tries, argument));
    return working;
}

static void close(gpointer state)
{
    Working *working = state;
    setting_tries_clear(&working->tries);
    g_free(working->bolt);
    g_free(working);
}

// What the page of the setting says of it, where that had no room for all. Returns the row behind.
static guint paint_said(const Trials *trials, const NextMove *next, Page *page)
{
    TrialNext asked = next_move_ask(next, trials, trials_next(trials, FALSE));
    if (setting_says_all(trials, &asked, next, page))
        return 0;
    g_auto(Advice) advice = advice_of(trials, next, &asked);
    guint row = 0;
    for (guint i = 0; i < advice.sentences->len; i++)
        row = canvas_wrap(page->body, row, SAID, PAGE_WIDTH - SAID, style_of(0, 0),
                          advice.sentences->pdata[i]);
    if (row)
        canvas_put(page->body, 0, HEAD, SAID - HEAD - 1, style_of(TYPE_BOLD, 0), "says");
    return row;
}

static void paint_lines(const Trials *trials, const NextMove *next, Page *page)
{
    guint row = paint_said(trials, next, page);
    g_autoptr(GArray) lines = setting_why(trials, next);
    for (guint i = 0; i < lines->len; i++) {
        const SettingWhy *line = &g_array_index(lines, SettingWhy, i);
        canvas_put(page->body, row, HEAD, SAID - HEAD - 1, style_of(TYPE_BOLD, 0), line->head);
        row = canvas_wrap(page->body, row, SAID, PAGE_WIDTH - SAID, style_of(0, 0), line->said);
    }
    canvas_wrap(page->body, row + 1, HEAD, PAGE_WIDTH - HEAD, style_of(TYPE_PLAIN, ROLE_FAINT),
                "Give or take is one standard deviation: about two times in three it is nearer. "
                "This only advises; the verdict is the limits' alone.");
}

// What finds no room is an Enter away.
static void turn(Working *working, Page *page)
{
    page_turn(page, &working->turn);
    if (working->turn.rest)
        page_key(page, ACTION_TAKE, "shows the rest");
    page_key(page, ACTION_WHY, NULL);
    page->keys[working->turn.rest ? 2 : 1] = (PageKey){ACTION_UP, "any other key", "goes back"};
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Working *working = state;
    SettingTries *tries = &working->tries;
    g_autofree char *title = desk_title(desk, desk->number);
    const Trials *trials = setting_tries_now(tries, desk);
    (void)typed;
    page_say(&page->status, "%s", title);
    g_autofree char *place = trials ? setting_place(trials) : g_strdup("");
    page_say(&page->head, "Why: the next move of %s", *place ? place : tries->check);
    page->field = ASKS_KEY;
    page_say(&page->next, "w says what %s verdict rests on; any other key goes back",
             working->bolt ? "the bolt's" : "its");
    if (trials)
        paint_lines(trials, &tries->advised, page);
    turn(working, page);
}

// The place whose verdict wants to be explained: the first that fails, else the first in doubt.
static const Requirement *faulty(const Trials *trials)
{
    const Requirement *doubted = NULL;
    for (guint i = 0; i < trials->places; i++) {
        if (trials->made[i]->verdict == VERDICT_FAIL)
            return trials->made[i];
        if (trials->made[i]->verdict == VERDICT_IN_DOUBT && !doubted)
            doubted = trials->made[i];
    }
    return doubted ? doubted : trials->made[0];
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Working *working = state;
    const Trials *trials = setting_tries_now(&working->tries, desk);
    if (action == ACTION_TAKE && page_turn_on(&working->turn))
        return go(GO_STAY);
    if (action != ACTION_WHY || !trials)
        return go(GO_DEFAULT);
    return go_instead(VIEW_WHY, working->bolt ? g_strdup(working->bolt)
                                              : requirement_name(faulty(trials)));
}

const ViewOps working_view = {
    .name = "working", .open = open, .close = close, .paint = paint, .act = act};
