#include <standbook/base/moment.h>

#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <string.h>

// Whether the text has the shape of the pattern, in which 0 stands for any digit and T for a T or
// a space.
static gboolean has_shape(const char *text, const char *pattern)
{
    if (strlen(text) != strlen(pattern))
        return FALSE;
    for (gsize i = 0; pattern[i]; i++) {
        gboolean fits = pattern[i] == '0'   ? g_ascii_isdigit(text[i])
                        : pattern[i] == 'T' ? text[i] == 'T' || text[i] == ' '
                                            : text[i] == pattern[i];
        if (!fits)
            return FALSE;
    }
    return TRUE;
}

static int digits(const char *text, gsize from, gsize count)
{
    int number = 0;
    for (gsize i = from; i < from + count; i++)
        number = 10 * number + g_ascii_digit_value(text[i]);
    return number;
}

gboolean moment_parse(const char *text, Moment *moment, GError **error)
{
    gboolean with_seconds = has_shape(text, "0000-00-00T00:00:00");
    g_autoptr(GDateTime) time = NULL;
    if ((with_seconds || has_shape(text, "0000-00-00T00:00")) && digits(text, 0, 4) >= 1900)
        time = g_date_time_new_utc(digits(text, 0, 4), digits(text, 5, 2), digits(text, 8, 2),
                                   digits(text, 11, 2), digits(text, 14, 2),
                                   with_seconds ? digits(text, 17, 2) : 0);
    if (!time) {
        g_autofree char *clean = text_clean(text, -1);
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "`%s` is no date and time; write it like 2025-03-13 11:36", clean);
        return FALSE;
    }
    *moment = g_date_time_to_unix(time);
    return TRUE;
}

Moment moment_of_day(const char *day)
{
    g_autofree char *midnight = g_strconcat(day ? day : "", "T00:00", NULL);
    Moment moment = 0;
    return moment_parse(midnight, &moment, NULL) ? moment : 0;
}

char *moment_text(Moment moment)
{
    g_autoptr(GDateTime) time = g_date_time_new_from_unix_utc(moment);
    return g_date_time_format(time, "%Y-%m-%dT%H:%M:%S");
}
