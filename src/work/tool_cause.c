#include <standbook/work/tool_cause.h>

#include <standbook/judge/tool_rule.h>
#include <string.h>

typedef struct {
    const Entry *use, *entry; // as of the ToolCause
    const char *sort;         // of the tool; NULL if none was named
    const char *note;         // of its calibration, or NULL
    const char *ran_out;      // the day on which that did, or NULL
} Cause;

static gboolean is_tick(const Entry *use)
{
    return strcmp(use->kind->name, "tick") == 0;
}

static const json_t *calibration_body(const Entry *entry)
{
    const char *what = kind_field(entry->kind, "what") ? entry_text(entry, "what") : NULL;
    return g_strcmp0(what, "calibration") == 0 ? json_object_get(entry->body, "body") : NULL;
}

const char *calibration_text(const Entry *entry, const char *field)
{
    return json_string_value(json_object_get(calibration_body(entry), field));
}

static Cause cause_of(const Taken *taken, const Entry *const *entries, const ToolCause *cause)
{
    const Entry *use = entries[cause->use - 1], *entry = entries[cause->entry - 1];
    const char *tool = entry_tool(use), *sort = taken_text(taken, "tool", tool, "sort");
    return (Cause){.use = use,
                   .entry = entry,
                   .sort = !tool || sort ? sort : "tool",
                   .note = calibration_text(entry, "note")};
}

static char *found_words(const Cause *cause, const char *found)
{
    const char *note = cause->note;
    return g_strconcat(found, calibration_text(cause->entry, "date"), note ? " (" : "",
                       note ? note : "", note ? ")" : "", NULL);
}

static char *wrong_words(const Cause *cause)
{
    return found_words(cause, "found wrong ");
}

char *tool_ran_out(const Entry *const *entries, const ToolCause *cause)
{
    if (cause->state != TOOL_OVERDUE)
        return NULL;
    const Entry *use = entries[cause->use - 1], *entry = entries[cause->entry - 1];
    const ToolCalibration rule = tool_calibration(calibration_body(entry), entry->seq);
    gint64 day = 0;
    gboolean by_uses = is_tick(use) && entry_number(use, "uses");
    gboolean ends = tool_last_day(is_tick(use) ? TOOL_TORQUE : TOOL_GAUGE, &rule, &day);
    return ends && !by_uses ? tool_day_text(day) : NULL;
}

static char *overdue_words(const Cause *cause)
{
    return cause->ran_out ? g_strconcat("had a calibration that ran out ", cause->ran_out, NULL)
                          : g_strdup_printf("was used more than %d times since its calibration",
                                            TOOL_USES_MOST);
}

static char *unknown_words(const Cause *cause)
{
    if (!cause->sort)
        return g_strdup("was not named");
    return g_strdup(entry_text(cause->use, "calibration") ? "has no range on record"
                                                          : "had no calibration on record");
}

static char *range_words(const Cause *cause)
{
    (void)cause;
    return g_strdup("was used outside its range");
}

char *tool_cause_words(const Taken *taken, const Entry *const *entries, const Requirement *made)
{
    static char *(*const states[])(const Cause *) = {
        [TOOL_OVERDUE] = overdue_words,
        [TOOL_UNKNOWN] = unknown_words,
        [TOOL_OUT_OF_RANGE] = range_words,
        [TOOL_WRONG] = wrong_words,
    };
    if (made->tool.state == TOOL_GOOD)
        return NULL;
    Cause cause = cause_of(taken, entries, &made->tool);
    g_autofree char *ran_out = tool_ran_out(entries, &made->tool);
    gboolean bolts = is_tick(cause.use);
    cause.ran_out = ran_out;
    if (bolts && !requirement_is_bolted(made))
        cause.note = NULL;
    g_autofree char *why = states[made->tool.state](&cause);
    char *words =
        g_strconcat(cause.sort ? cause.sort : "the tool", " of ",
                    entry_text(cause.use, bolts ? "tightening" : "check"), " ", why, ".", NULL);
    *words = g_ascii_toupper(*words);
    return words;
}

char *tool_redone_words(const Taken *taken, const Entry *const *entries, const Requirement *made)
{
    if (made->redone.state == TOOL_GOOD)
        return NULL;
    const Cause cause = cause_of(taken, entries, &made->redone);
    g_autofree char *found = found_words(&cause, "was found wrong on ");
    return g_strconcat(cause.sort, " ", found, NULL);
}
