#include "tightening_about.h"

#include "left.h"
#include "tightening_rows.h"
#include "toolbox.h"

#include <standbook/work/ago.h>
#include <standbook/work/clocks.h>
#include <standbook/work/set_preload.h>
#include <standbook/work/wrench.h>
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
    const Clock wait = {.sort = CLOCK_WAIT, .at = over};
    g_autofree char *text = moment_text(clock_minute(&wait));
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
                    *second = g_strdup_printf(
                        "work %s, %s", left_put_down(desk, seq) ? "was put down" : "broke off",
                        time);
    canvas_put(page->body, 0, COLUMN, 0, style_of(0, 0), first);
    canvas_put(page->body, 1, COLUMN, 0, style_of(0, 0), second);
}

// `, with X1 in-line adapter`, `, with X1 swivel head at 90°`; "" for none.
static char *adapter_words(const Desk *desk, const char *adapter)
{
    const Entry *tool = adapter ? wrench_adapter_tool(session_shop(desk->shop), adapter) : NULL;
    if (!adapter)
        return g_strdup("");
    const char *label = tool ? shop_label(tool) : adapter;
    return g_strconcat(", with ", label, " ", toolbox_words(desk, label),
                       tool ? adapter + strlen(label) : "", NULL);
}

// `W1 click wrench 5-25, with X1 in-line adapter, due 15 Oct √`, or what stands against it, and why
// it is not known what it is set to. Turned by a mark: how good that is (common practice, no
// published source).
static char *wrench_words(const Desk *desk, const BoltTool *tool)
{
    if (!tool->tool)
        return g_strdup(tool->by_mark ? "No angle gauge: by a mark, good to some 5°." : "");
    const ToolNeed need = {.need = tool->need, .ceiling = tool->ceiling};
    g_autofree char *due = toolbox_standing(desk, &need, tool->tool, tool->adapter, tool->set);
    g_autofree char *adapter = adapter_words(desk, tool->adapter);
    return g_strconcat(tool->tool, " ", toolbox_words(desk, tool->tool), adapter, *due ? ", " : "",
                       due, tool->unknown ? "; nobody has said how long they are (reach)" : "",
                       NULL);
}

// What the plan notes of the set, in one line; "" for nothing.
static char *note_words(const Tightening *tightening)
{
    const TreeNode *note = tree_get(tightening->plan->group->node, "note");
    if (!note || note->children)
        return g_strdup("");
    return g_strdup(note->text);
}

// The wrench, and at the right what the plan notes; below it where there is no room beside it.
// Returns the row behind.
static guint put_wrench(const Desk *desk, const Tightening *tightening, const BoltTool *tool,
                        guint row, Page *page)
{
    enum { LEFT = 1, RIGHT = PAGE_WIDTH - 1 };
    g_autofree char *words = wrench_words(desk, tool);
    g_autofree char *note = note_words(tightening);
    guint width = canvas_text_width(page->body, note);
    guint behind = canvas_put(page->body, row, LEFT, RIGHT - LEFT, style_of(0, 0), words);
    row += *words ? 1 : 0;
    if (!*note)
        return row;
    if (*words && behind + 2 + width <= RIGHT)
        canvas_put_right(page->body, row - 1, RIGHT, style_of(0, 0), note);
    else
        canvas_put(page->body, row++, LEFT, RIGHT - LEFT, style_of(0, 0), note);
    return row;
}

// `PUT DOWN 14:13 for 46 min. Bolt 7 was entered, bolt 2 was not.`; nothing for a change of hands.
// Returns the row behind.
static guint put_down(Desk *desk, gint64 seq, const char *before, const char *bolt, guint row,
                      Page *page)
{
    const GPtrArray *entries = session_entries(desk_build(desk));
    Moment down = left_put_down(desk, seq) ? down_for(desk, seq) : 0;
    if (down < 60)
        return row;
    g_autofree char *time = time_of(entries->pdata[seq - 1], desk->now);
    g_autofree char *span = span_words(down);
    g_autofree char *line =
        before ? g_strdup_printf("PUT DOWN %s for %s. B%s was entered, %s was not.", time, span,
                                 before + 1, bolt)
               : g_strdup_printf("PUT DOWN %s for %s. Nothing was entered at this stage yet.", time,
                                 span);
    canvas_put(page->body, row, 1, PAGE_WIDTH - 2, style_of(TYPE_PLAIN, ROLE_CALM), line);
    return row + 1;
}

// What to heed at this stage.
static void put_caution(const Tightening *tightening, const Turn *turn, guint row, Page *page)
{
    g_autofree char *caution = set_caution(tightening->plan, turn->stage, turn->position);
    if (caution)
        canvas_put(page->body, row, 1, PAGE_WIDTH - 2, style_of(TYPE_BOLD, ROLE_UNSURE), caution);
}

void tightening_about(Desk *desk, const Tightening *tightening, guint here, gint64 seq,
                      const BoltTool *tool, guint row, Page *page)
{
    const Turn *turn = tightening_turn(tightening, here);
    row = put_wrench(desk, tightening, tool, row, page);
    if (!turn)
        return;
    const Turn *first = tightening_again(tightening, here),
               *last = tightening_before(tightening, here);
    g_autofree char *bolt = bolt_words(turn), *before = last ? bolt_words(last) : NULL;
    guint behind = put_down(desk, seq, before, bolt, row, page);
    put_caution(tightening, turn, behind + (behind > row && first ? 1 : 0), page);
    if (behind == row || !first)
        return;
    g_autofree char *at = bolt_words(first);
    g_autofree char *line =
        g_strdup_printf("Not sure? .Enter 6 starts %s again at %s: a second pull does no harm.",
                        tightening_stage(tightening, first->stage)->text, at);
    canvas_put(page->body, behind, 1, PAGE_WIDTH - 2, style_of(0, 0), line);
}
