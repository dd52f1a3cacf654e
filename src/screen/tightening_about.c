#include "tightening_about.h"

#include "toolbox.h"

#include <standbook/work/ago.h>
#include <standbook/work/clocks.h>
#include <string.h>

Moment tightening_wait_over(Desk *desk, const Turn *turn)
{
    Session *session = desk_build(desk);
    const GPtrArray *entries = session_entries(session);
    return clock_wait_over(session_assessment(session), (const Entry *const *)entries->pdata,
                           entries->len, turn->made);
}

char *until_words(Moment over)
{
    g_autofree char *text = moment_text(over + 59); // never told too soon
    return g_strdup_printf("until %.5s", text + 11);
}

const Turn *tightening_wait(Desk *desk, const Tightening *tightening, Moment *over)
{
    for (guint i = 0; i < tightening->turns->len; i++) {
        const Turn *turn = tightening_turn(tightening, i);
        *over = turn->made->asked == ASKED_WAIT ? tightening_wait_over(desk, turn) : 0;
        if (*over)
            return turn;
    }
    return NULL;
}

static Moment typed_at(const Entry *entry)
{
    Moment at = 0;
    moment_parse(entry->at, &at, NULL);
    return at;
}

// `15:08`; of another day `4 Mar`
static char *time_of(const Entry *entry, Moment now)
{
    Moment at = typed_at(entry);
    g_autofree char *text = moment_text(at), *today = moment_text(now);
    return strncmp(text, today, 10) == 0 ? g_strdup_printf("%.5s", text + 11) : ago_day(at, now);
}

// `46 min`, from 90 min on `3 h`, from two days on `12 days`.
static char *span_words(Moment seconds)
{
    enum { MINUTE = 60, HOUR = 3600, DAY = 86400 };
    if (seconds < 90 * MINUTE)
        return g_strdup_printf("%" G_GINT64_FORMAT " min", seconds / MINUTE);
    if (seconds < 2 * DAY)
        return g_strdup_printf("%" G_GINT64_FORMAT " h", (seconds + HOUR / 2) / HOUR);
    return g_strdup_printf("%" G_GINT64_FORMAT " days", seconds / DAY);
}

// How long work was put down by that entry, in s.
static Moment down_for(Desk *desk, gint64 seq)
{
    const GPtrArray *entries = session_entries(desk_build(desk));
    Moment from = typed_at(entries->pdata[seq - 1]);
    for (guint i = (guint)seq; i < entries->len; i++)
        if (strcmp(((const Entry *)entries->pdata[i])->kind->name, "pick up") == 0)
            return typed_at(entries->pdata[i]) - from;
    return desk->now - from;
}

void tightening_left(Desk *desk, gint64 seq, const char *bolt, Page *page)
{
    enum { COLUMN = 50 };
    const GPtrArray *entries = session_entries(desk_build(desk));
    g_autofree char *time = time_of(entries->pdata[seq - 1], desk->now);
    g_autofree char *first = g_strdup_printf("%s was in hand when", bolt),
                    *second = g_strdup_printf("work was put down, %s", time);
    canvas_put(page->body, 0, COLUMN, 0, style_of(0, 0), first);
    canvas_put(page->body, 1, COLUMN, 0, style_of(0, 0), second);
}

// `W1 click wrench 5-25, with X1 in-line adapter`, and why it is not known what it is set to.
static char *wrench_words(const Desk *desk, const BoltTool *tool)
{
    return g_strconcat(tool->tool, " ", toolbox_words(desk, tool->tool),
                       tool->adapter ? ", with " : "", tool->adapter ? tool->adapter : "",
                       tool->adapter ? " " : "",
                       tool->adapter ? toolbox_words(desk, tool->adapter) : NULL,
                       tool->unknown ? "; nobody has said how long they are (reach)" : "", NULL);
}

void tightening_about(Desk *desk, gint64 seq, const char *bolt, const BoltTool *tool, guint row,
                      Page *page)
{
    g_autofree char *words = tool->tool ? wrench_words(desk, tool) : NULL;
    const GPtrArray *entries = session_entries(desk_build(desk));
    if (words)
        canvas_put(page->body, row++, 1, PAGE_WIDTH - 2, style_of(0, 0), words);
    Moment down = seq ? down_for(desk, seq) : 0;
    if (down < 60) // a change of hands
        return;
    g_autofree char *time = time_of(entries->pdata[seq - 1], desk->now);
    g_autofree char *span = span_words(down);
    g_autofree char *line = g_strdup_printf(
        "PUT DOWN %s for %s; nothing was entered here since. Next is %s.", time, span, bolt);
    canvas_put(page->body, row, 1, PAGE_WIDTH - 2, style_of(TYPE_PLAIN, ROLE_CALM), line);
}
