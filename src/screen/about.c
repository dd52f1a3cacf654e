#include "about.h"

#include "widget_groups.h"
#include "words.h"

#include <standbook/record/live.h>
#include <standbook/sheet/figures.h>
#include <standbook/work/ago.h>
#include <standbook/work/entry_words.h>
#include <standbook/work/finding.h>
#include <standbook/work/named.h>
#include <string.h>

static guint put(Canvas *canvas, guint row, Style style, const char *text)
{
    return canvas_wrap(canvas, row, 1, canvas->width - 1, style, text);
}

// What was read and its limits; of anything else what was answered.
static char *figures_said(const Requirement *made)
{
    if (made->asked != ASKED_READ)
        return g_strdup(made->answer ? made->answer : "");
    g_autofree char *value = figure_value(made), *doubt = figure_doubt(made);
    g_autofree char *limits = figure_limits(made);
    return *value ? g_strdup_printf("%s %s %s   %s%s", value, doubt, figure_unit(made),
                                    *limits ? "limits " : "no limit known", limits)
                  : g_strdup_printf("%s%s", *limits ? "limits " : "no limit known", limits);
}

// What a finding that is open waits for.
static guint put_waiting(Canvas *canvas, guint row, const Requirement *made)
{
    g_autofree char *answer = finding_waits_for(made);
    if (!answer)
        return row;
    g_autofree char *outside = figure_far(made);
    const char *found = *outside ? outside : reason_said(made->own_reason);
    g_autofree char *words =
        g_strdup_printf("As found: %s, %s. It waits for %s%s.", verdict_words(made->own_verdict),
                        found, answer, made->check->by_decision ? "" : ", or a decision");
    return put(canvas, row, style_of(0, 0), words);
}

// Why it is undecided or outside; "" where it is neither. The caller frees with g_free.
static char *reason_of(const Session *session, const Requirement *made)
{
    if (made->reason == REASON_NONE)
        return g_strdup("");
    const GPtrArray *entries = session_entries(session);
    const Entry *const *all = (const Entry *const *)entries->pdata;
    g_autoptr(Taken) taken = taken_new(all, entries->len, NULL);
    return figure_reason(made, taken, all);
}

guint about_figures(Canvas *canvas, guint row, const Session *session, const Requirement *made)
{
    g_autofree char *line = figures_said(made), *verdict = figure_verdict(made);
    if (*line)
        row = put(canvas, row, style_of(TYPE_BOLD, 0), line);
    row = put(canvas, row, verdict_style(made->verdict), verdict);
    row = put_waiting(canvas, row, made);
    const char *by_plan = requirement_by_plan_said(made);
    if (by_plan)
        row = put(canvas, row, style_of(0, 0), by_plan);
    g_autofree char *reason = reason_of(session, made);
    if (*reason)
        row = put(canvas, row, style_of(0, 0), reason);
    if (made->check && made->check->formula_text) {
        g_autofree char *formula =
            g_strdup_printf("%s = %s", made->check->name, made->check->formula_text);
        row = put(canvas, row, style_of(0, 0), formula);
    }
    for (guint i = 0; i < made->notes->len; i++)
        if (!strstr(reason, made->notes->pdata[i])) // which the reason says
            row = put(canvas, row, style_of(0, 0), made->notes->pdata[i]);
    return row + 1;
}

// The entries of a build as they are listed: what was struck stands where it stood, marked.
typedef struct {
    const GPtrArray *entries;
    const char **causes;
    Taken *taken;
} Listed;

static Listed listed_of(const Session *session)
{
    const GPtrArray *entries = session_entries(session);
    const Entry *const *all = (const Entry *const *)entries->pdata;
    Listed listed = {entries, g_new(const char *, entries->len + 1),
                     taken_new(all, entries->len, NULL)};
    live_causes(all, entries->len, listed.causes);
    return listed;
}

static void listed_clear(Listed *listed)
{
    g_free(listed->causes);
    taken_free(listed->taken);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Listed, listed_clear)

// Entry i in those words, behind those that say when it was; the style is that of the line.
static char *listed_line(const Listed *listed, guint i, const char *when, const char *words,
                         Style *style)
{
    const Entry *entry = listed->entries->pdata[i];
    const char *cause = listed->causes[i];
    *style = style_of(0, cause ? ROLE_FAINT : 0);
    return g_strdup_printf(cause ? "%s  %s  ──%s──  struck: %s" : "%s  %s  %s", when,
                           taken_initials(listed->taken, entry->by), words, cause);
}

guint about_entries(Canvas *canvas, guint row, const Session *session, const Requirement *made)
{
    g_auto(Listed) listed = listed_of(session);
    for (guint i = 0; i < listed.entries->len; i++) {
        const Entry *entry = listed.entries->pdata[i];
        if (!entry_is_about(entry, made))
            continue;
        Style style;
        g_autofree char *when = entry_when(entry);
        g_autofree char *from = g_strdup_printf("#%" G_GINT64_FORMAT " %s", entry->seq, when);
        g_autofree char *words = entry_words(listed.taken, entry);
        g_autofree char *line = listed_line(&listed, i, from, words, &style);
        row = put(canvas, row, style, line);
    }
    return row;
}

// Housekeeping of a ledger says nothing at the bench.
static gboolean is_told(const Entry *entry)
{
    return strcmp(entry->kind->name, "take") != 0 && strcmp(entry->kind->name, "news") != 0;
}

// The clock today, else the day: six columns, as many as a day of this year takes.
static char *when_in_build(const Entry *entry, Moment now)
{
    static const gint64 day = 86400;
    Moment moment = entry_moment(entry);
    gboolean today = moment / day == now / day;
    g_autofree char *when = today ? moment_text(moment) : ago_day(moment, now);
    return today ? g_strdup_printf("%.5s ", when + 11) : g_strdup_printf("%-6s", when);
}

void about_build(Canvas *canvas, guint row, guint column, guint count, const Session *session,
                 Moment now)
{
    g_auto(Listed) listed = listed_of(session);
    for (guint i = listed.entries->len; i-- > 0 && count > 0;) {
        const Entry *entry = listed.entries->pdata[i];
        if (!is_told(entry))
            continue;
        Style style;
        g_autofree char *when = when_in_build(entry, now);
        g_autofree char *words = entry_said(session_plan(session), listed.taken, entry);
        g_autofree char *line = listed_line(&listed, i, when, words, &style);
        canvas_put(canvas, row++, column, 0, style, line);
        count--;
    }
}
