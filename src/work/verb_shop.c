// The lines of the shop: people, owners, engines, builds, tools, calibrations, lots, consumables.
#include "take.h"

#include <standbook/base/text.h>
#include <string.h>

static void add_name(Take *take, const Entry *entry, const char *name)
{
    LineName *named = g_new0(LineName, 1);
    named->id = g_strdup(entry_text(entry, "id"));
    named->name = g_strdup(name);
    g_ptr_array_add(take->names, named);
}

static void set_new_id(Take *take, Entry *entry)
{
    const LineHelp *help = &take->taker->help;
    g_autofree char *id = help->new_id(help->user);
    entry_set_text(entry, "id", id);
}

// A label that the shop does not have yet.
static char *read_new_label(Take *take, const char *kind, const char *what, GError **error)
{
    const char *at = take->words.at;
    g_autofree char *label = words_word(&take->words, what, error);
    if (!label || !shop_find(take->taker->shop, kind, label))
        return g_steal_pointer(&label);
    words_refuse(&take->words, at, error,
                 "`%s` is the name of another %s already; choose another one", label, kind);
    return NULL;
}

// Reads the phrase that must follow, and the text behind it.
static char *read_behind(Take *take, const char *phrase, const char *what, GError **error)
{
    if (words_skip(&take->words, phrase))
        return words_text(&take->words, what, error);
    words_refuse(&take->words, take->words.at, error, "write `%s` and %s here", phrase, what);
    return NULL;
}

// Sets a field from the text behind an optional phrase.
static gboolean set_optional(Take *take, Entry *entry, const char *phrase, const char *field,
                             GError **error)
{
    if (!words_skip(&take->words, phrase))
        return TRUE;
    g_autofree char *text = words_text(&take->words, phrase, error);
    entry_set_text(entry, field, text);
    return text != NULL;
}

static gboolean set_quoted(Take *take, Entry *entry, const char *field, GError **error)
{
    if (!words_are_quoted(&take->words))
        return TRUE;
    g_autofree char *text = words_text(&take->words, "the remark", error);
    entry_set_text(entry, field, text);
    return text != NULL;
}

static gboolean set_date(Take *take, Entry *entry, const char *phrase, const char *field,
                         GError **error)
{
    if (!words_skip(&take->words, phrase))
        return TRUE;
    g_autofree char *date = NULL;
    if (!words_date(&take->words, &date, error))
        return FALSE;
    entry_set_text(entry, field, date);
    return date || words_refuse(&take->words, take->words.at, error,
                                "`%s` needs a date like 2025-03-13", phrase);
}

static gboolean shop_person(Take *take, GError **error)
{
    const char *at = take->words.at;
    g_autofree char *initials = read_new_label(take, "person", "the initials", error);
    if (initials && !is_initials(initials))
        return words_refuse(&take->words, at, error,
                            "`%s` could not be told from a verb; initials are two to four capitals",
                            initials);
    g_autofree char *name = initials ? words_text(&take->words, "the name", error) : NULL;
    if (!name)
        return FALSE;
    // The first person of a shop signs their own entry.
    gboolean own = !shop_by_id(take->taker->shop, "person", take->carry.by);
    Entry *entry = take_shop_entry(take, "person");
    if (own)
        entry_set_text(entry, "id", take->carry.by);
    else
        set_new_id(take, entry);
    entry_set_text(entry, "initials", initials);
    add_name(take, entry, name);
    return set_optional(take, entry, "role", "role", error);
}

static gboolean shop_owner(Take *take, GError **error)
{
    g_autofree char *label = read_new_label(take, "owner", "a short word for the owner", error);
    g_autofree char *name = label ? words_text(&take->words, "the name", error) : NULL;
    if (!name)
        return FALSE;
    Entry *entry = take_shop_entry(take, "owner");
    set_new_id(take, entry);
    entry_set_text(entry, "label", label);
    add_name(take, entry, name);
    return TRUE;
}

// The owner's id; where none is said, the one known so far, NULL if nobody is.
static gboolean read_owner(Take *take, const Entry *known, const char **owner, GError **error)
{
    *owner = known ? entry_text(known, "owner") : NULL;
    if (!words_skip(&take->words, "owner"))
        return TRUE;
    const Entry *owning = take_shop_label(take, "owner", "the owner", error);
    *owner = owning ? entry_text(owning, "id") : NULL;
    return owning != NULL;
}

// A serial that is known already is the same engine, with what changed about it.
static gboolean shop_engine(Take *take, GError **error)
{
    g_autofree char *serial = words_text(&take->words, "the serial", error);
    g_autofree char *family =
        serial ? read_behind(take, "family", "the engine family", error) : NULL;
    if (!family)
        return FALSE;
    const Entry *known = shop_find(take->taker->shop, "engine", serial);
    const char *owner = NULL;
    if (!read_owner(take, known, &owner, error))
        return FALSE;
    Entry *entry = take_shop_entry(take, "engine");
    if (known)
        entry_set_text(entry, "id", entry_text(known, "id"));
    else
        set_new_id(take, entry);
    entry_set_text(entry, "family", family);
    entry_set_text(entry, "serial", serial);
    entry_set_text(entry, "owner", owner);
    if (!set_quoted(take, entry, "note", error))
        return FALSE;
    if (known)
        take_news(take, entry, "engine", entry_text(entry, "id"));
    return TRUE;
}

static const Entry *read_plan(Take *take, GError **error)
{
    const char *at = take->words.at;
    g_autofree char *name = read_behind(take, "plan", "the plan's name in quotes", error);
    const Entry *plan = name ? shop_find(take->taker->shop, "plan", name) : NULL;
    if (!name || plan)
        return plan;
    const char *near = shop_nearest(take->taker->shop, "plan", name);
    if (near)
        words_refuse(&take->words, at, error, "the store has no plan `%s`; did you mean `%s`?",
                     name, near);
    else
        words_refuse(&take->words, at, error,
                     "the store has no plan `%s`; add it first with `standbook plan add`", name);
    return NULL;
}

static gboolean shop_build(Take *take, GError **error)
{
    g_autofree char *number = read_new_label(take, "build", "the build's number", error);
    if (!number)
        return FALSE;
    if (!words_skip(&take->words, "engine"))
        return words_refuse(&take->words, take->words.at, error,
                            "write `engine` and its serial here");
    const Entry *engine = take_shop_label(take, "engine", "the serial", error);
    const Entry *plan = engine ? read_plan(take, error) : NULL;
    if (!plan)
        return FALSE;
    Entry *entry = take_shop_entry(take, "build");
    set_new_id(take, entry);
    entry_set_text(entry, "number", number);
    entry_set_text(entry, "engine", entry_text(engine, "id"));
    entry_set_text(entry, "plan", entry_text(plan, "digest"));
    return set_quoted(take, entry, "order", error);
}

// The words up to the next of the phrases, or the end.
static char *read_kind(Take *take, const char *const *phrases, const char *what, GError **error)
{
    Words words = take->words;
    for (;;) {
        Words here = words;
        for (gsize i = 0; phrases[i]; i++)
            if (words_skip(&here, phrases[i]))
                goto found;
        g_autofree char *word = words_peek(&words);
        if (!word)
            break;
        words.at += strlen(word);
        words.at += strspn(words.at, " \t");
    }
found:
    if (words.at > take->words.at)
        return words_up_to(&take->words, words.at);
    words_refuse(&take->words, take->words.at, error, "%s is missing here", what);
    return NULL;
}

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

// Between the ends of a range, `..` or `to`.
static gboolean skip_between(Words *words)
{
    gboolean dots = g_str_has_prefix(words->at, "..");
    words->at += dots ? strlen("..") : 0;
    return dots || words_skip(words, "to");
}

// `range -10..10 mm`, `range 10 to 100 ft-lb`: an end may be written `0.03` as well as `1.00`.
static gboolean set_range(Take *take, Entry *entry, Unit **unit, GError **error)
{
    g_auto(Reading) least = {0}, greatest = {0};
    const char *at = take->words.at;
    if (!words_skip(&take->words, "range"))
        return TRUE;
    if (!words_number(&take->words, &least, error))
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

static gboolean shop_tool(Take *take, GError **error)
{
    static const char *const fixed[] = {"range", "step", "reach", NULL};
    g_autoptr(Unit) unit = NULL, length = unit_parse("mm", NULL);
    g_autofree char *label = read_new_label(take, "tool", "the tool's number", error);
    g_autofree char *words = label ? words_text(&take->words, "what it is", error) : NULL;
    if (!words)
        return FALSE;
    if (!words_skip(&take->words, "kind"))
        return words_refuse(&take->words, take->words.at, error,
                            "write `kind` and the word that plans use after `gauge`; what it is "
                            "stands in quotes if it is more than one word");
    g_autofree char *sort = read_kind(take, fixed, "the kind", error);
    if (!sort)
        return FALSE;
    Entry *entry = take_shop_entry(take, "tool");
    set_new_id(take, entry);
    entry_set_text(entry, "label", label);
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
        return set_quoted(take, entry, "note", error);
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

// What is said of a calibration behind its day, each once and in any order.
static gboolean set_calibration(Take *take, Entry *entry, const Unit *unit, GError **error)
{
    const char *before = NULL;
    while (before != take->words.at) {
        before = take->words.at;
        if (is_unsaid(entry, "found"))
            set_found(take, entry);
        if ((is_unsaid(entry, "due") && !set_date(take, entry, "due", "due", error)) ||
            (is_unsaid(entry, "certificate") &&
             !set_optional(take, entry, "certificate", "certificate", error)) ||
            (is_unsaid(entry, "note") && !set_remark(take, entry, error)) ||
            (is_unsaid(entry, "uncertainty") &&
             !set_value(take, entry, "U", "uncertainty", unit, error)) ||
            (is_unsaid(entry, "repeat") &&
             !set_value(take, entry, "repeats", "repeat", unit, error)) ||
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
static gboolean shop_calibration(Take *take, GError **error)
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
    set_new_id(take, entry);
    entry_set_text(entry, "tool", entry_text(tool, "id"));
    entry_set_text(entry, "date", date);
    if (!set_calibration(take, entry, unit, error) || !check_calibration(take, entry, at, error))
        return FALSE;
    take_news(take, entry, "tool", entry_text(tool, "id"));
    return TRUE;
}

static gboolean set_quantity(Take *take, Entry *entry, GError **error)
{
    guint quantity = 0;
    if (!words_skip(&take->words, "quantity"))
        return TRUE;
    if (!words_whole(&take->words, "the quantity", 1, &quantity, error))
        return FALSE;
    entry_set_number(entry, "quantity", quantity);
    return TRUE;
}

// What may be said of a lot or a tube, in any order.
static gboolean set_in_any_order(Take *take, Entry *entry, GError **error)
{
    const char *before = NULL;
    while (before != take->words.at) {
        before = take->words.at;
        if ((kind_field(entry->kind, "quantity") && !set_quantity(take, entry, error)) ||
            (kind_field(entry->kind, "grade") &&
             !set_optional(take, entry, "grade", "grade", error)) ||
            !set_optional(take, entry, "supplier", "supplier", error) ||
            !set_date(take, entry, "expires", "expires", error))
            return FALSE;
    }
    return TRUE;
}

static gboolean shop_lot(Take *take, GError **error)
{
    g_autofree char *label = read_new_label(take, "lot", "the lot as the packet names it", error);
    g_autofree char *part = label ? words_text(&take->words, "what it is", error) : NULL;
    if (!part)
        return FALSE;
    Entry *entry = take_shop_entry(take, "lot");
    set_new_id(take, entry);
    entry_set_text(entry, "label", label);
    entry_set_text(entry, "part", part);
    return set_in_any_order(take, entry, error);
}

static gboolean shop_consumable(Take *take, GError **error)
{
    static const char *const fixed[] = {"lot", NULL};
    g_autofree char *sort = read_kind(take, fixed, "what it is", error);
    if (!sort)
        return FALSE;
    if (!words_skip(&take->words, "lot"))
        return words_refuse(&take->words, take->words.at, error, "write `lot` and its lot here");
    g_autofree char *lot = read_new_label(take, "consumable", "the lot", error);
    if (!lot)
        return FALSE;
    g_autofree char *label = g_strconcat(sort, " ", lot, NULL);
    Entry *entry = take_shop_entry(take, "consumable");
    set_new_id(take, entry);
    entry_set_text(entry, "label", label);
    entry_set_text(entry, "sort", sort);
    entry_set_text(entry, "lot", lot);
    return set_in_any_order(take, entry, error);
}

static gboolean shop_recall_lot(Take *take, GError **error)
{
    if (!words_skip(&take->words, "lot"))
        return words_refuse(&take->words, take->words.at, error, "write `lot` and its name here");
    const Entry *lot = take_shop_label(take, "lot", "the lot", error);
    g_autofree char *why = lot ? words_text(&take->words, "the reason", error) : NULL;
    if (!why)
        return FALSE;
    Entry *entry = take_shop_entry(take, "recall");
    entry_set_text(entry, "lot", entry_text(lot, "id"));
    entry_set_text(entry, "why", why);
    take_news(take, entry, "lot", entry_text(lot, "id"));
    return TRUE;
}

// What sheets and screens print as the shop's own name; said again, the newest counts.
static gboolean shop_called(Take *take, GError **error)
{
    g_autofree char *name = words_text(&take->words, "the shop's name", error);
    if (!name)
        return FALSE;
    Entry *entry = take_shop_entry(take, "default");
    entry_set_text(entry, "name", "shop name");
    entry_set_text(entry, "setting", name);
    return TRUE;
}

gboolean verb_shop(Take *take, GError **error)
{
    static const VerbRow rows[] = {
        {"person", shop_person},     {"owner", shop_owner},
        {"engine", shop_engine},     {"build", shop_build},
        {"tool", shop_tool},         {"calibration", shop_calibration},
        {"lot", shop_lot},           {"consumable", shop_consumable},
        {"recall", shop_recall_lot}, {"name", shop_called},
    };
    return take_verb(take, rows, G_N_ELEMENTS(rows), error);
}
