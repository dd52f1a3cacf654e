#include <standbook/plan/adapter.h>

#include <standbook/base/error.h>
#include <standbook/value/reading.h>
#include <string.h>

char *adapter_front(const char *words, const char **bolts)
{
    static const char *const between[] = {" on bolts ", " on bolt "};
    *bolts = NULL;
    for (gsize i = 0; i < G_N_ELEMENTS(between); i++) {
        const char *at = strstr(words, between[i]);
        if (!at)
            continue;
        *bolts = at + strlen(between[i]);
        return g_strndup(words, (gsize)(at - words));
    }
    return g_strdup(words);
}

static Number *angle_read(const char *text)
{
    g_auto(Reading) reading = {0};
    g_autoptr(Unit) degree = unit_parse("°", NULL);
    g_autoptr(Number) straight = number_from_integer(180);
    gboolean fits = reading_parse(text, degree, &reading, NULL, NULL) && !reading.doubt &&
                    reading.bound == BOUND_NONE && number_sign(reading.value) >= 0 &&
                    number_compare(reading.value, straight) <= 0;
    return fits ? number_copy(reading.value) : NULL;
}

gboolean adapter_read(const char *words, char **label, Number **angle, GError **error)
{
    const char *at = strstr(words, " at ");
    const char *text = at ? at + strlen(" at ") : "";
    gboolean figure = g_ascii_isdigit(*text) || *text == '-' || *text == '<' || *text == '>';
    *label = figure ? g_strndup(words, (gsize)(at - words)) : g_strdup(words);
    *angle = figure ? angle_read(text) : NULL;
    if (!figure || *angle)
        return TRUE;
    g_clear_pointer(label, g_free);
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                "`%s` is no angle of an adapter; write 0° in line with the wrench, 90° square to "
                "it, up to 180° pointing back",
                text);
    return FALSE;
}
