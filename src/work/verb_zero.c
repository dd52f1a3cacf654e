// zero: a gauge set to zero on a known size; its readings are then typed as they stand on the dial.
#include "take.h"

#include <standbook/work/entry_words.h>
#include <string.h>

// The unit in which the tool is divided; NULL if nothing is known of it.
static Unit *tool_unit(const Entry *tool)
{
    const char *text = entry_value(tool, "graduation", "unit");
    text = text ? text : entry_value(tool, "greatest", "unit");
    return text ? unit_parse(text, NULL) : NULL;
}

// Whether what follows is `90.000 in G02`: a size without its unit, and what it was set in; no size
// in inches.
static gboolean begins_bare(const Words *words)
{
    Words ahead = *words;
    g_auto(Reading) size = {0};
    return words_number(&ahead, &size, NULL) && words_skip(&ahead, "in") && !words_ended(&ahead) &&
           !words_skip(&ahead, "in");
}

gboolean verb_zero(Take *take, GError **error)
{
    const Entry *tool = NULL;
    const char *calibration = NULL;
    const char *at = take->words.at;
    if (!take_tool(take, &tool, &calibration, error))
        return FALSE;
    g_autoptr(Unit) unit = tool_unit(tool);
    if (!unit)
        return words_refuse(&take->words, at, error,
                            "nothing says how this gauge is divided, so it cannot be set to zero; "
                            "enter it again with its step");
    if (!words_skip(&take->words, "at"))
        return words_refuse(&take->words, take->words.at, error,
                            "the size is missing here; write `at` and what its zero stands for");
    g_auto(Reading) size = {0};
    if (!(begins_bare(&take->words) ? words_bare_value(&take->words, unit, &size, error)
                                    : words_value(&take->words, unit, &size, error)))
        return FALSE;
    g_autofree char *master = NULL;
    if (words_skip(&take->words, "in") &&
        !(master = words_text(&take->words, "the ring or block", error)))
        return FALSE;
    Entry *entry = take_entry(take, "zero");
    entry_set_text(entry, "tool", entry_text(tool, "id"));
    entry_set_text(entry, "calibration", calibration);
    entry_set_reading(entry, "value", &size);
    entry_set_text(entry, "master", master);
    return TRUE;
}

// The last zero of the tool that was not struck; NULL for none.
static const Entry *zero_of(const Take *take, const Entry *tool)
{
    g_autofree gboolean *live = take_live(take);
    for (guint i = take->taker->entries->len; i > 0; i--) {
        const Entry *entry = take->taker->entries->pdata[i - 1];
        if (live[i - 1] && strcmp(entry->kind->name, "zero") == 0 &&
            g_strcmp0(entry_text(entry, "tool"), entry_text(tool, "id")) == 0)
            return entry;
    }
    return NULL;
}

// Whether the text is a sign and digits alone: marks of the dial. With a point, a stroke or a unit
// it is a difference in that unit.
static gboolean counts_marks(const char *typed)
{
    typed += g_str_has_prefix(typed, "−") ? strlen("−") : 1;
    typed += strspn(typed, " ");
    return *typed && typed[strspn(typed, "0123456789")] == '\0';
}

// Digits behind the point of an exact decimal; 0 for a fraction.
static guint decimals_of(const Number *number)
{
    g_autofree char *text = number_text(number);
    const char *point = strchr(text, '.');
    return point ? (guint)strlen(point + 1) : 0;
}

// The reading becomes the size itself, written to the last mark of the dial.
static void set_size(Reading *reading, const Unit *unit, Number *size, const Number *mark)
{
    g_autoptr(Number) place = unit_width_from_base(unit, mark);
    reading_clear(reading);
    reading->value = size;
    reading->unit = unit ? unit_copy(unit) : NULL;
    reading->number = unit_from_base(unit, size);
    reading->place = number_copy(mark);
    reading->decimals = MAX(decimals_of(place), decimals_of(reading->number));
    reading->typed = number_decimal(reading->number, reading->decimals);
}

char *read_from_zero(const Take *take, const Entry *tool, const Unit *unit, Reading *reading)
{
    gboolean sign = strchr("+-", *reading->typed) || g_str_has_prefix(reading->typed, "−");
    const Entry *zero = sign && !reading->bound ? zero_of(take, tool) : NULL;
    g_autoptr(Number) mark = zero ? entry_amount(tool, "graduation") : NULL;
    g_autoptr(Number) size = zero ? entry_amount(zero, "value") : NULL;
    if (!mark || !size)
        return NULL;
    g_autoptr(Number) off = counts_marks(reading->typed) ? number_multiply(reading->number, mark)
                                                         : number_copy(reading->value);
    g_autofree char *from = value_words(json_object_get(zero->body, "value"));
    char *note = g_strdup_printf("%s on the dial, from %s", reading->typed, from);
    set_size(reading, unit, number_add(size, off), mark);
    return note;
}
