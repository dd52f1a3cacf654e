// The tool that was found wrong, as the reason of a doubt.
#include "wrong_tool.h"

#include <standbook/work/ago.h>
#include <standbook/work/subject.h>
#include <string.h>

static const json_t *calibration_of(const Entry *entry)
{
    gboolean news = strcmp(entry->kind->name, "news") == 0 &&
                    g_strcmp0(entry_text(entry, "what"), "calibration") == 0;
    return news ? json_object_get(entry->body, "body") : NULL;
}

const char *news_text(const Entry *news, const char *field)
{
    return json_string_value(json_object_get(calibration_of(news), field));
}

// The newest news that says this tool (NULL: any) was found wrong.
static const Entry *newest_wrong(const Agenda *agenda, const char *tool)
{
    for (gsize i = agenda->count; i-- > 0;) {
        const Entry *entry = agenda->entries[i];
        if (calibration_of(entry) && g_strcmp0(news_text(entry, "found"), "wrong") == 0 &&
            (!tool || g_strcmp0(news_text(entry, "tool"), tool) == 0))
            return entry;
    }
    return NULL;
}

// A bolt of one of these groups that is in doubt for its tool, at the last stage that is;
// AGENDA_NOWHERE: there is none.
static guint doubtful_bolt(const Agenda *agenda, const GPtrArray *names)
{
    guint found = AGENDA_NOWHERE;
    for (guint i = 0; i < names->len; i++) {
        const PlanName *name = names->pdata[i];
        for (guint j = 0; name->group && j < agenda->assessment->requirements->len; j++) {
            const Requirement *made = agenda_made(agenda, j);
            if (made->asked == ASKED_BOLT && made->reason == REASON_TOOL &&
                strcmp(made->name, name->group->name) == 0 &&
                (found == AGENDA_NOWHERE || made->stage > agenda_made(agenda, found)->stage))
                found = j;
        }
    }
    return found;
}

// Of what is worked out the reading that is in doubt for its tool; itself of anything else.
static guint doubtful_input(const Agenda *agenda, guint index)
{
    const Requirement *made = agenda_made(agenda, index);
    gboolean formula = made->check && made->check->formula;
    for (guint i = 0; formula && i < agenda->assessment->requirements->len; i++)
        if (agenda_made(agenda, i)->reason == REASON_TOOL &&
            agenda_goes_into(agenda_made(agenda, i), made))
            return i;
    return index;
}

guint tool_use(const Agenda *agenda, guint index)
{
    const Requirement *made = agenda_made(agenda, index);
    if (made->reason == REASON_TOOL)
        return doubtful_input(agenda, index);
    guint input = made->reason == REASON_BASIS ? agenda_input(agenda, index) : AGENDA_NOWHERE;
    const PlanCheck *check = input == AGENDA_NOWHERE ? NULL : agenda_made(agenda, input)->check;
    guint bolt = check ? doubtful_bolt(agenda, check->with) : AGENDA_NOWHERE;
    return check && bolt == AGENDA_NOWHERE ? doubtful_bolt(agenda, check->rests_on) : bolt;
}

const Entry *wrong_tool(const Agenda *agenda, guint index)
{
    guint use = tool_use(agenda, index);
    if (use == AGENDA_NOWHERE)
        return NULL;
    gint64 seq = agenda_made(agenda, use)->entry;
    return newest_wrong(agenda, seq ? entry_text(agenda->entries[seq - 1], "tool") : NULL);
}

const char *wrong_tool_label(const Taken *taken, const Entry *news)
{
    return taken_tool(taken, news_text(news, "tool"));
}

char *wrong_tool_words(const Taken *taken, const Entry *news, Moment now)
{
    g_autofree char *day = ago_day(entry_moment(news), now);
    const char *certificate = news_text(news, "certificate"), *note = news_text(news, "note");
    return g_strdup_printf("%s %s (%s%s%s).", wrong_tool_label(taken, news),
                           note ? note : "was found wrong", certificate ? certificate : "",
                           certificate ? ", " : "", day);
}

char *found_good_words(const char *label, Moment now)
{
    g_autofree char *today = moment_text(now);
    return g_strdup_printf("in standbook log --shop: INITIALS calibration %s %.10s good", label,
                           today);
}

gint64 uses_by_then(const Entry *tick)
{
    gint64 before = entry_number(tick, "uses");
    return before ? before + (gint64)entry_list_length(tick, "bolts") : 0;
}

// `was due 15 Oct 2025` of a calibration that had run out on the day of use; NULL if it had not.
static char *late_words(const Taken *taken, const Entry *entry, Moment now)
{
    const char *calibration = entry_text(entry, "calibration");
    if (!calibration)
        return g_strdup("has no calibration");
    gint64 uses = uses_by_then(entry);
    if (uses)
        return g_strdup_printf("was used %" G_GINT64_FORMAT " times since its calibration", uses);
    const char *due = taken_text(taken, "calibration", calibration, "due");
    const char *used = entry_done(entry);
    Moment day = moment_of_day(due);
    if (!day || strncmp(due, used, strlen(due)) >= 0)
        return NULL;
    g_autofree char *words = ago_day(day, now);
    return g_strdup_printf("was due %s", words);
}

char *late_tool_words(const Agenda *agenda, const Taken *taken, guint index, Moment now)
{
    const Requirement *made = agenda_made(agenda, index);
    const Entry *entry = made->verdict == VERDICT_IN_DOUBT && made->reason == REASON_TOOL &&
                                 made->entry && !wrong_tool(agenda, index)
                             ? agenda->entries[made->entry - 1]
                             : NULL;
    const char *label = entry ? taken_tool(taken, entry_text(entry, "tool")) : NULL;
    g_autofree char *late = label ? late_words(taken, entry, now) : NULL;
    g_autofree char *good = late ? found_good_words(label, now) : NULL;
    return late ? g_strdup_printf("%s %s: what it was used for since is in doubt.\n"
                                  "Found good it stands, %s",
                                  label, late, good)
                : NULL;
}
