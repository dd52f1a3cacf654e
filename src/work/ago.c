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

// Whether it is said by its day: not within the minutes that are counted.
static gboolean is_other_day(Moment moment, Moment now)
{
    g_autoptr(GDateTime) time = g_date_time_new_from_unix_utc(moment);
    g_autoptr(GDateTime) present = g_date_time_new_from_unix_utc(now);
    gboolean counted = now >= moment && now - moment < MINUTES_SAID * A_MINUTE;
    return !counted && !is_same_day(time, present);
}

char *ago_since(Moment moment, Moment now)
{
    gint64 since = now - moment;
    if (is_other_day(moment, now))
        return ago_day(moment, now);
    if (since < 0)
        return NULL;
    if (since < A_MINUTE)
        return g_strdup("now");
    if (since < MINUTES_SAID * A_MINUTE)
        return g_strdup_printf("%" G_GINT64_FORMAT " min ago", since / A_MINUTE);
    return g_strdup_printf("%" G_GINT64_FORMAT " h ago", (since + AN_HOUR / 2) / AN_HOUR);
}

char *ago_words(Moment moment, Moment now)
{
    if (is_other_day(moment, now))
        return ago_day(moment, now);
    g_autoptr(GDateTime) time = g_date_time_new_from_unix_utc(moment);
    g_autofree char *clock = g_date_time_format(time, "%H:%M");
    g_autofree char *since = ago_since(moment, now);
    return g_strconcat(clock, since ? ", " : "", since, NULL);
}
