#include <standbook/record/moment.h>
#include <string.h>

// Reads the digits where `pattern` has 0 and asks for its other characters as they are.
static gboolean fits(const char *text, const char *pattern)
{
    for (; *pattern; text++, pattern++)
        if (*pattern == '0' ? !g_ascii_isdigit(*text) : *text != *pattern)
            return FALSE;
    return TRUE;
}

static int two(const char *text)
{
    return (text[0] - '0') * 10 + (text[1] - '0');
}

static gint64 day_number(const char *text)
{
    GDate date, first;
    g_date_clear(&date, 1);
    g_date_clear(&first, 1);
    int year = two(text) * 100 + two(text + 2);
    if (year < 1970 ||
        !g_date_valid_dmy((GDateDay)two(text + 8), (GDateMonth)two(text + 5), (GDateYear)year))
        return -1;
    g_date_set_dmy(&date, (GDateDay)two(text + 8), (GDateMonth)two(text + 5), (GDateYear)year);
    g_date_set_dmy(&first, 1, G_DATE_JANUARY, 1970);
    return g_date_days_between(&first, &date);
}

gboolean date_is_valid(const char *text)
{
    return fits(text, "0000-00-00") && text[10] == '\0' && day_number(text) >= 0;
}

// Seconds east of Greenwich; FALSE if the text is not "Z" or "+HH:MM" or "-HH:MM".
static gboolean read_offset(const char *text, gint64 *offset)
{
    *offset = 0;
    if (strcmp(text, "Z") == 0)
        return TRUE;
    if ((text[0] != '+' && text[0] != '-') || !fits(text + 1, "00:00") || text[6] != '\0' ||
        two(text + 1) > 23 || two(text + 4) > 59)
        return FALSE;
    *offset = (two(text + 1) * 60 + two(text + 4)) * 60 * (text[0] == '-' ? -1 : 1);
    return TRUE;
}

gboolean moment_read(const char *text, gint64 *seconds)
{
    gint64 offset;
    if (!fits(text, "0000-00-00T00:00:00") || !read_offset(text + 19, &offset))
        return FALSE;
    int hour = two(text + 11), minute = two(text + 14), second = two(text + 17);
    gint64 day = day_number(text);
    if (day < 0 || hour > 23 || minute > 59 || second > 59)
        return FALSE;
    if (seconds)
        *seconds = ((day * 24 + hour) * 60 + minute) * 60 + second - offset;
    return TRUE;
}
