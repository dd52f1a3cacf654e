// The lines of tools and their calibrations.
#include "shop_line.h"

#include <string.h>

// Whether `in` stands behind a unit that would be a torque with it: elsewhere a step follows that
// word, so that it is not read as an inch here either.
static gboolean is_parted_inch(const Take *take, const char *word)
{
    Words here = take->words;
    g_autofree char *whole = g_strconcat(word, "-in", NULL);
    g_autoptr(Unit) unit = words_skip(&here, "in") ? unit_parse(whole, NULL) : NULL;
    return unit != NULL;
}

// A unit of one word, or as `lbf ft` of two.
Unit *take_unit(Take *take, GError **error)
{
    const char *at = take->words.at;
    gsize span = unit_span(at);
    g_autofree char *word = memchr(at, ' ', span) ? words_up_to(&take->words, at + span)
                                                  : words_word(&take->words, "the unit", error);
    g_autoptr(GError) why = NULL;
    g_autoptr(Unit) unit = word ? unit_parse(word, &why) : NULL;
    if (word && !unit)
        words_refuse(&take->words, at, error, "%s", why->message);
    else if (unit && is_parted_inch(take, word))
        words_refuse(&take->words, at, error, "write this torque in one word: %s-in", word);
    else
        return g_steal_pointer(&unit);
    return NULL;
}

static void set_amount(Entry *entry, const char *field, const Reading *reading, const Unit *unit)
{
    g_autofree char *value = number_fraction(reading->number);
    entry_set_value(entry, field, value, unit_text(unit), reading->typed);
}

// What parts the ends of a range: `..`, `to` or a dash.
static gboolean skip_between(Words *words)
{
    static const char *const signs[] = {"..", "–", "-"};
    for (gsize i = 0; i < G_N_ELEMENTS(signs); i++)
        if (g_str_has_prefix(words->at, signs[i])) {
            words->at += strlen(signs[i]);
            words->at += strspn(words->at, " \t");
            return TRUE;
        }
    return words_skip(words, "to");
}

static gsize decimal_length(const char *at)
{
    return strspn(at, "0123456789.,");
}

// The length of a decimal with a dash between it and another one: elsewhere a tight hyphen is that
// of a mixed number. 0 for anything else.
static gsize length_to_dash(const char *at)
{
    const char *start = at;
    at += *at == '-' || *at == '+';
    gsize length = decimal_length(at);
    at += length;
    if (!length || at[-1] == '.')
        return 0;
    gsize front = (gsize)(at - start);
    at += strspn(at, " \t");
    gsize dash = *at == '-' ? 1 : g_str_has_prefix(at, "–") ? strlen("–") : 0;
    at += dash + strspn(at + dash, " \t");
    length = dash ? decimal_length(at) : 0;
    return length && at[length] != '/' ? front : 0;
}

static gboolean read_least(Take *take, Reading *least, GError **error)
{
    gsize length = length_to_dash(take->words.at);
    if (!length)
        return words_number(&take->words, least, error);
    const char *at = take->words.at;
    g_autofree char *figure = words_up_to(&take->words, at + length);
    g_autoptr(GError) why = NULL;
    return reading_parse(figure, NULL, least, NULL, &why) ||
           words_refuse(&take->words, at, error, "%s", why->message);
}

// `range -10..10 mm`, `range 10 to 100 ft-lb`, `range 10-100 Nm`: an end may be written `0.03` as
// well as `1.00`.
static gboolean set_range(Take *take, Entry *entry, Unit **unit, GError **error)
{
    g_auto(Reading) least = {0}, greatest = {0};
    const char *at = take->words.at;
    if (!words_skip(&take->words, "range"))
        return TRUE;
    if (!read_least(take, &least, error))
        return FALSE;
    if (!skip_between(&take->words))
        return words_refuse(&take->words, take->words.at, error,
                            "write a range like 0..25 mm or 0 to 25 mm");
    if (!words_number(&take->words, &greatest, error) || !(*unit = take_unit(take, error)))
        return FALSE;
    if (number_compare(least.number, greatest.number) >= 0)
        return words_refuse(&take->words, at, error, "the range is upside down");
    set_amount(entry, "least", &least, *unit);
    set_amount(entry, "greatest", &greatest, *unit);
    return TRUE;
}

static gboolean set_value(Take *take, Entry *entry, const char *phrase, const char *field,
                          const Unit *unit, GError **error)
{
    g_auto(Reading) reading = {0};
    if (!words_skip(&take->words, phrase))
        return TRUE;
    if (!words_value(&take->words, unit, &reading, error))
        return FALSE;
    entry_set_reading(entry, field, &reading);
    return TRUE;
}

gboolean shop_tool(Take *take, GError **error)
{
    static const char *const fixed[] = {"range", "step", "reach", NULL};
    g_autoptr(Unit) unit = NULL, length = unit_parse("mm", NULL);
    g_autofree char *words = NULL;
    Entry *entry = shop_begin_thing(take, "tool", "the tool's number", "what it is", &words, error);
    if (!entry)
        return FALSE;
    if (!words_skip(&take->words, "kind"))
        return words_refuse(&take->words, take->words.at, error,
                            "write `kind` and the word that plans use after `gauge`; what it is "
                            "stands in quotes if it is more than one word");
    g_autofree char *sort = shop_read_kind(take, fixed, "the kind", error);
    if (!sort)
        return FALSE;
    entry_set_text(entry, "sort", sort);
    entry_set_text(entry, "note", words);
    return set_range(take, entry, &unit, error) &&
           set_value(take, entry, "step", "graduation", unit, error) &&
           set_value(take, entry, "reach", "reach", length, error);
}

static void set_found(Take *take, Entry *entry)
{
    static const char *const found[] = {"good", "wrong", "adjusted"};
    entry_set_text(entry, "found", words_name(&take->words, found, G_N_ELEMENTS(found)));
}

// A remark in quotes, or as older sheets print it at the end in brackets.
static gboolean set_remark(Take *take, Entry *entry, GError **error)
{
    const char *end = *take->words.at == '(' ? strrchr(take->words.at, ')') : NULL;
    if (!end)
        return shop_set_quoted(take, entry, "note", error);
    take->words.at++;
    g_autofree char *text = words_up_to(&take->words, end);
    take->words.at = end + 1 + strspn(end + 1, " \t");
    entry_set_text(entry, "note", text);
    return TRUE;
}

static gboolean is_unsaid(const Entry *entry, const char *field)
{
    return !json_object_get(entry->body, field);
}

// Whether a doubt in percent follows, of a tool that does not measure any.
static gboolean is_share(const Take *take, const char *phrase, const Unit *unit, Reading *share)
{
    static const char percent[] = "%";
    Words here = take->words;
    return words_skip(&here, phrase) && words_value(&here, NULL, share, NULL) && share->unit &&
           strcmp(unit_text(share->unit), percent) == 0 &&
           !(unit && strcmp(unit_text(unit), percent) == 0);
}

// An entry has a doubt in the unit of the tool, so that a share of what is shown is refused with
// what it comes to at most.
static gboolean refuse_share(const Take *take, const Entry *tool, const Reading *share,
                             GError **error)
{
    const char *end = entry_value(tool, "greatest", "value");
    const char *unit = entry_value(tool, "greatest", "unit");
    g_autoptr(Number) greatest = end ? number_from_text(end, NULL) : NULL;
    if (!greatest || !unit)
        return words_refuse(&take->words, take->words.at, error,
                            "write it in the unit of what is read, not in percent: 0.01 mm");
    g_autoptr(Number) most = number_multiply(share->value, greatest);
    g_autofree char *shown = number_short(greatest), *comes = number_short(most);
    return words_refuse(&take->words, take->words.at, error,
                        "write it in %s: %s of %s %s, the end of its range, is %s %s", unit,
                        share->typed, shown, unit, comes, unit);
}

static gboolean set_doubt(Take *take, Entry *entry, const char *phrase, const char *field,
                          const Entry *tool, const Unit *unit, GError **error)
{
    g_auto(Reading) share = {0};
    return is_share(take, phrase, unit, &share)
               ? refuse_share(take, tool, &share, error)
               : set_value(take, entry, phrase, field, unit, error);
}

// What is said of a calibration behind its day, each once and in any order.
static gboolean set_calibration(Take *take, Entry *entry, const Entry *tool, const Unit *unit,
                                GError **error)
{
    const char *before = NULL;
    while (before != take->words.at) {
        before = take->words.at;
        if (is_unsaid(entry, "found"))
            set_found(take, entry);
        if ((is_unsaid(entry, "due") && !shop_set_date(take, entry, "due", "due", error)) ||
            (is_unsaid(entry, "certificate") &&
             !shop_set_optional(take, entry, "certificate", "certificate", error)) ||
            (is_unsaid(entry, "note") && !set_remark(take, entry, error)) ||
            (is_unsaid(entry, "uncertainty") &&
             !set_doubt(take, entry, "U", "uncertainty", tool, unit, error)) ||
            (is_unsaid(entry, "repeat") &&
             !set_doubt(take, entry, "repeats", "repeat", tool, unit, error)) ||
            (is_unsaid(entry, "gave") && !take_gave(take, entry, unit, error)))
            return FALSE;
    }
    return TRUE;
}

// The unit of the tool's range, in which its uncertainty is said too.
static Unit *unit_of_tool(const Entry *tool)
{
    const char *unit = entry_value(tool, "greatest", "unit");
    return unit ? unit_parse(unit, NULL) : NULL;
}

static gboolean check_calibration(const Take *take, const Entry *entry, const char *at,
                                  GError **error)
{
    const char *date = entry_text(entry, "date"), *due = entry_text(entry, "due");
    const char *found = entry_text(entry, "found");
    if (!found)
        return words_refuse(&take->words, take->words.at, error,
                            "how was it found? write good, wrong or adjusted");
    if (strcmp(found, "wrong") == 0 && !entry_text(entry, "note"))
        return words_refuse(&take->words, take->words.at, error,
                            "what was wrong? write it in quotes");
    if (due && strcmp(due, date) < 0)
        return words_refuse(&take->words, at, error, "it would run out before it was made");
    if (strcmp(date, take->day) > 0)
        return words_refuse(&take->words, at, error,
                            "this calibration is still to come; the line is of %s", take->day);
    return TRUE;
}

// `calibration W2 2025-03-11 …`; as the ledger of a build has it `calibration of W2 …`.
gboolean shop_calibration(Take *take, GError **error)
{
    words_skip(&take->words, "of");
    const Entry *tool = take_shop_label(take, "tool", "the tool", error);
    if (!tool)
        return FALSE;
    const char *at = take->words.at;
    g_autofree char *date = NULL;
    if (!words_date(&take->words, &date, error))
        return FALSE;
    if (!date)
        return words_refuse(&take->words, at, error,
                            "the day it was made is missing here; write it like %s", take->day);
    g_autoptr(Unit) unit = unit_of_tool(tool);
    Entry *entry = take_shop_entry(take, "calibration");
    shop_set_new_id(take, entry);
    entry_set_text(entry, "tool", entry_text(tool, "id"));
    entry_set_text(entry, "date", date);
    if (!set_calibration(take, entry, tool, unit, error) ||
        !check_calibration(take, entry, at, error))
        return FALSE;
    take_news(take, entry, "tool", entry_text(tool, "id"));
    return TRUE;
}
