#include <standbook/work/ago.h>

enum { A_MINUTE = 60, AN_HOUR = 60 * A_MINUTE, MINUTES_SAID = 90 };

static gboolean is_same_day(GDateTime *one, GDateTime *other)
{
    return g_date_time_get_year(one) == g_date_time_get_year(other) &&
           g_date_time_get_day_of_year(one) == g_date_time_get_day_of_year(other);
}

char *ago_day(Moment moment, Moment now)
{
    static const char *const months[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                         "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
    g_autoptr(GDateTime) time = g_date_time_new_from_unix_utc(moment);
    g_autoptr(GDateTime) present = g_date_time_new_from_unix_utc(now);
    int day = g_date_time_get_day_of_month(time), year = g_date_time_get_year(time);
    const char *month = months[g_date_time_get_month(time) - 1];
    return year == g_date_time_get_year(present) ? g_strdup_printf("%d %s", day, month)
                                                 : g_strdup_printf("%d %s %d", day, month, year);
}

char *ago_words(Moment moment, Moment now)
{
    g_autoptr(GDateTime) time = g_date_time_new_from_unix_utc(moment);
    g_autoptr(GDateTime) present = g_date_time_new_from_unix_utc(now);
    g_autofree char *clock = g_date_time_format(time, "%H:%M");
    gint64 since = now - moment;
    if (since >= 0 && since < A_MINUTE)
        return g_strdup_printf("%s, now", clock);
    if (since > 0 && since < MINUTES_SAID * A_MINUTE)
        return g_strdup_printf("%s, %" G_GINT64_FORMAT " min ago", clock, since / A_MINUTE);
    if (!is_same_day(time, present))
        return ago_day(moment, now);
    if (since < 0)
        return g_steal_pointer(&clock);
    return g_strdup_printf("%s, %" G_GINT64_FORMAT " h ago", clock,
                           (since + AN_HOUR / 2) / AN_HOUR);
}
