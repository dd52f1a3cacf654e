#include <standbook/judge/tool_rule.h>

#include <standbook/base/moment.h>
#include <string.h>

enum { SECONDS_OF_A_DAY = 86400 };

gint64 tool_day(const char *date)
{
    g_autofree char *text = g_strdup_printf("%s 00:00", date ? date : "");
    Moment moment = 0;
    return moment_parse(text, &moment, NULL) ? moment / SECONDS_OF_A_DAY : G_MININT64;
}

char *tool_day_text(gint64 day)
{
    g_autofree char *moment = moment_text(day * SECONDS_OF_A_DAY);
    return g_strndup(moment, strlen("2025-03-13"));
}

static ToolFound found_of(const char *words)
{
    if (g_strcmp0(words, "wrong") == 0)
        return TOOL_FOUND_WRONG;
    return g_strcmp0(words, "adjusted") == 0 ? TOOL_ADJUSTED : TOOL_FOUND_GOOD;
}

ToolCalibration tool_calibration(const json_t *body, gint64 seq)
{
    const char *due = json_string_value(json_object_get(body, "due"));
    return (ToolCalibration){.day = tool_day(json_string_value(json_object_get(body, "date"))),
                             .seq = seq,
                             .due = due ? tool_day(due) : 0,
                             .has_due = due != NULL,
                             .found = found_of(json_string_value(json_object_get(body, "found")))};
}

ToolState tool_range(ToolSort sort, const Number *least, const Number *greatest,
                     const Number *value)
{
    if (!value || (!least && !greatest))
        return TOOL_GOOD;
    return tool_range_state(sort, number_rational(least), number_rational(greatest),
                            number_rational(value));
}
