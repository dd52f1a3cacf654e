#include <standbook/work/tool_doubt.h>

#include "wrong_tool.h"

#include <standbook/work/ago.h>
#include <standbook/work/bolts_got.h>
#include <standbook/work/subject.h>
#include <standbook/work/tool_cause.h>
#include <string.h>

typedef struct {
    const Agenda *agenda;
    const Taken *taken;
    Moment now;
    const Entry *use;  // the entry that names the tool
    const Entry *news; // that it was found wrong; NULL if it was not
    GArray *lines;
    ToolState state;
} Doubt;

static void line_clear(gpointer data)
{
    g_free(((ToolLine *)data)->said);
}

static void add(const Doubt *doubt, const char *head, char *said) // takes what is said
{
    const ToolLine line = {head, said};
    g_array_append_val(doubt->lines, line);
}

// `30 Jan 2024`, of a certificate always with its year; NULL for no date.
static char *day_said(const char *date)
{
    return date ? ago_day(moment_of_day(date), 0) : NULL;
}

// USED ------------------------------------------------------------------------------------------

// `W2 click wrench, 4 Mar by MO: tighten main caps stage 3 all with W2`
static void add_used(const Doubt *doubt)
{
    const char *tool = entry_tool(doubt->use);
    const char *sort = taken_text(doubt->taken, "tool", tool, "sort");
    g_autofree char *day = ago_day(entry_moment(doubt->use), doubt->now);
    g_autofree char *words = entry_words(doubt->taken, doubt->use);
    add(doubt, "used",
        g_strdup_printf("%s%s%s, %s by %s: %s", taken_tool(doubt->taken, tool), sort ? " " : "",
                        sort ? sort : "", day, taken_initials(doubt->taken, doubt->use->by),
                        words));
}

// CERTIFICATE -----------------------------------------------------------------------------------

static gint64 days_late(const char *due, const Entry *use)
{
    return (entry_moment(use) - moment_of_day(due)) / 86400;
}

// `good 30 Jan 2024 (KF-90), due 31 Jan 2025, 32 days late when used`: of the calibration that was
// in force when it was used.
static void add_certificate(const Doubt *doubt)
{
    const char *id = entry_text(doubt->use, "calibration");
    const char *due = taken_text(doubt->taken, "calibration", id, "due");
    const char *paper = taken_text(doubt->taken, "calibration", id, "certificate");
    g_autofree char *made =
        day_said(id ? taken_text(doubt->taken, "calibration", id, "date") : NULL);
    const char *found = id ? taken_text(doubt->taken, "calibration", id, "found") : NULL;
    g_autofree char *until = day_said(due);
    if (!made) {
        add(doubt, "certificate", g_strdup("none was known when it was used"));
        return;
    }
    GString *said = g_string_new(NULL);
    g_string_append_printf(said, "%s %s%s%s%s%s%s", found ? found : "made", made, paper ? " (" : "",
                           paper ? paper : "", paper ? ")" : "", until ? ", due " : "",
                           until ? until : "");
    if (due && days_late(due, doubt->use) > 0)
        g_string_append_printf(said, ", %" G_GINT64_FORMAT " days late when used",
                               days_late(due, doubt->use));
    if (uses_by_then(doubt->use))
        g_string_append_printf(said, ", used %" G_GINT64_FORMAT " times since",
                               uses_by_then(doubt->use));
    add(doubt, "certificate", g_string_free(said, FALSE));
}

// FOUND -----------------------------------------------------------------------------------------

// `11 Mar (KF-118): set 100 gives 91, about -9 %`
static void add_found(const Doubt *doubt)
{
    const char *paper = calibration_text(doubt->news, "certificate");
    const char *note = calibration_text(doubt->news, "note"),
               *date = calibration_text(doubt->news, "date");
    g_autofree char *day = date ? day_said(date) : ago_day(entry_moment(doubt->news), doubt->now);
    add(doubt, "found wrong",
        g_strdup_printf("%s%s%s%s: %s", day, paper ? " (" : "", paper ? paper : "",
                        paper ? ")" : "", note ? note : "how much was not written down"));
}

// GOT -------------------------------------------------------------------------------------------

// `about 91 N·m of 100`, or `unknown of 100 N·m: …`: what the bolt really got, where the
// calibration says what the tool gave.
static void add_got(const Doubt *doubt, const Requirement *made)
{
    g_autoptr(Unit) unit = NULL;
    g_autofree char *got = bolt_got(doubt->agenda, made, doubt->use,
                                    json_object_get(doubt->news->body, "body"), &unit);
    const char *of = got ? strstr(got, " of ") : NULL;
    if (of && g_str_has_prefix(got, bolt_got_unknown))
        add(doubt, "got",
            g_strdup_printf("%s %s: what the wrench was set to with %s was not known", got,
                            unit_text(unit), entry_text(doubt->use, "adapter")));
    else if (of)
        add(doubt, "got",
            g_strdup_printf("about %.*s %s%s", (int)(of - got), got, unit_text(unit), of));
}

// IN DOUBT --------------------------------------------------------------------------------------

typedef struct {
    const Requirement *made; // whose name it has
    guint count;
} Doubtful;

// What is in doubt for the same tool, check by check and set by set.
static GArray *doubtful_things(const Doubt *doubt)
{
    GArray *things = g_array_new(FALSE, TRUE, sizeof(Doubtful));
    for (guint i = 0; i < doubt->agenda->assessment->requirements->len; i++) {
        const Requirement *made = agenda_made(doubt->agenda, i);
        const Entry *entry = made->entry ? doubt->agenda->entries[made->entry - 1] : NULL;
        if (made->verdict != VERDICT_IN_DOUBT || made->reason != REASON_TOOL || !entry ||
            g_strcmp0(entry_tool(entry), entry_tool(doubt->use)) != 0)
            continue;
        Doubtful *last = things->len ? &g_array_index(things, Doubtful, things->len - 1) : NULL;
        if (last && last->made->step == made->step && strcmp(last->made->name, made->name) == 0)
            last->count++;
        else
            g_array_append_val(things, ((Doubtful){made, 1}));
    }
    return things;
}

// `main caps, S17 (18); cam gear bolt, S25 (1)`
static void add_doubtful(const Doubt *doubt)
{
    g_autoptr(GArray) things = doubtful_things(doubt);
    g_autoptr(GString) said = g_string_new(NULL);
    for (guint i = 0; i < things->len; i++) {
        const Doubtful *thing = &g_array_index(things, Doubtful, i);
        g_string_append_printf(said, "%s%s, S%02u (%u)", i ? "; " : "", thing->made->name,
                               thing->made->step->index + 1, thing->count);
    }
    if (said->len)
        add(doubt, "in doubt", g_strdup(said->str));
}

// SETTLED ---------------------------------------------------------------------------------------

static void add_settles(const Doubt *doubt)
{
    const char *label = taken_tool(doubt->taken, entry_tool(doubt->use));
    if (doubt->news)
        add(doubt, "settles it",
            g_strdup(
                "do it again with another; or uphold it (u): why it stands, and who else says so"));
    else if (doubt->state != TOOL_OUT_OF_RANGE) {
        g_autofree char *good = found_good_words(label, doubt->now);
        add(doubt, "settles it",
            g_strdup_printf(
                "a check of %s: found wrong all stays in doubt, found good it stands, %s", label,
                good));
    } else
        add(doubt, "settles it",
            g_strdup_printf("%s was used outside its range: do it again with one that holds it",
                            label));
}

// The place that was read or the bolt that was tightened when the tool was used.
static const Requirement *used_at(const Agenda *agenda, const Requirement *made)
{
    for (guint i = 0; i < agenda->assessment->requirements->len; i++)
        if (agenda_made(agenda, i)->entry == made->tool.use)
            return agenda_made(agenda, i);
    return made;
}

GArray *tool_doubt(const Agenda *agenda, const Taken *taken, guint index, Moment now)
{
    GArray *lines = g_array_new(FALSE, TRUE, sizeof(ToolLine));
    g_array_set_clear_func(lines, line_clear);
    const Requirement *made = agenda_made(agenda, index);
    gboolean doubted = made->verdict == VERDICT_IN_DOUBT && made->tool.state != TOOL_GOOD &&
                       (made->reason == REASON_TOOL || made->reason == REASON_BASIS);
    const Entry *use = doubted ? agenda->entries[made->tool.use - 1] : NULL;
    if (!use || !entry_tool(use))
        return lines;
    const Doubt doubt = {agenda, taken,           now, use, wrong_tool(agenda, index),
                         lines,  made->tool.state};
    add_used(&doubt);
    add_certificate(&doubt);
    if (doubt.news) {
        add_found(&doubt);
        add_got(&doubt, used_at(agenda, made));
    }
    add_doubtful(&doubt);
    add_settles(&doubt);
    return lines;
}
