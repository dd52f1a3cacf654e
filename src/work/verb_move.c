// move: a setting is adjusted.
#include "take.h"

#include <standbook/record/order.h>
#include <string.h>

enum { DIGITS_MOST = 6 }; // a longer amount is rounded for show

// A move in the unit of its setting, which may be a word of its own: `3 notch`.
static gboolean read_move(Take *take, const PlanSetting *setting, Reading *reading, GError **error)
{
    if (setting->unit || !setting->unit_text)
        return words_value(&take->words, setting->unit, reading, error);
    const char *start = take->words.at;
    if (!words_number(&take->words, reading, error))
        return FALSE;
    const char *at = take->words.at;
    if (!words_skip(&take->words, setting->unit_text) && !words_ended(&take->words)) {
        g_autofree char *word = words_peek(&take->words);
        return words_refuse(&take->words, at, error, "the %s is not moved in `%s`; write it in %s",
                            setting->move, word, setting->unit_text);
    }
    g_free(reading->typed);
    reading->typed = g_strchomp(g_strndup(start, (gsize)(take->words.at - start)));
    return TRUE;
}

// `1/48 turn`. The caller frees.
static char *amount_words(const PlanSetting *setting, const Number *base)
{
    g_autoptr(Number) number =
        setting->unit ? unit_from_base(setting->unit, base) : number_copy(base);
    g_autofree char *exact = number_text(number);
    g_autofree char *text =
        strlen(exact) > DIGITS_MOST ? number_decimal(number, 3) : g_steal_pointer(&exact);
    return g_strconcat(text, setting->unit_text ? " " : "", setting->unit_text, NULL);
}

// Whether the amount is a whole number of steps, as closely as it was typed: 0.13 turn is 6 of 1/48
// turn.
static gboolean is_of_steps(const PlanSetting *setting, const Reading *reading)
{
    g_autoptr(Number) steps = number_divide(reading->value, setting->step);
    g_autofree char *nearest = number_decimal(steps, 0);
    g_autoptr(Number) whole = number_from_text(nearest, NULL);
    g_autoptr(Number) there = number_multiply(whole, setting->step);
    g_autoptr(Number) off = number_subtract(reading->value, there);
    g_autoptr(Number) distance = number_abs(off);
    g_autoptr(Number) two = number_from_integer(2);
    g_autoptr(Number) twice = number_multiply(distance, two);
    return reading->decimals ? number_compare(twice, reading->place) <= 0
                             : number_sign(distance) == 0;
}

static gboolean is_at(const Entry *entry, const Target *target)
{
    g_auto(GStrv) labels = places_labels(target->axes, target_place(target, 0));
    return strcmp(entry->kind->name, "move") == 0 &&
           strcmp(entry_text(entry, "check"), target->name) == 0 &&
           entry_reaches(entry, (const char *const *)labels);
}

// Whether a move typed now stands behind that entry; one that corrects another stands where that
// stood.
static gboolean comes_before(const Take *take, const Entry *entry)
{
    return !take->after || entry->seq <= take->after || entry->after == take->after;
}

// Where the setting stands by the moves that count, in base units; NULL where none says a place.
static Number *position_of(const Take *take, const Target *target)
{
    g_autofree gboolean *live = take_live(take);
    const GPtrArray *entries = take->taker->entries;
    g_autofree gint64 *ranked = g_new(gint64, entries->len + 1);
    rank_order((const Entry *const *)entries->pdata, entries->len, ranked);
    Number *position = NULL;
    for (guint i = 0; i < entries->len; i++) {
        const Entry *entry = entries->pdata[ranked[i] - 1];
        if (!live[entry->seq - 1] || !is_at(entry, target) || !comes_before(take, entry))
            continue;
        g_autoptr(Number) to = entry_amount(entry, "to"), by = entry_amount(entry, "moved");
        g_autoptr(Number) before = position;
        position = to ? g_steal_pointer(&to) : before && by ? number_add(before, by) : NULL;
    }
    return position;
}

static char *range_words(const PlanSetting *setting)
{
    g_autofree char *least = setting->least ? amount_words(setting, setting->least) : NULL;
    g_autofree char *most = setting->most ? amount_words(setting, setting->most) : NULL;
    if (!least || !most)
        return g_strconcat(least ? "at least " : "at most ", least ? least : most, NULL);
    return g_strconcat(least, " to ", most, NULL);
}

static void remark_range(Take *take, const Target *target, const Number *position)
{
    const PlanSetting *setting = target->check->setting;
    gboolean low = setting->least && number_compare(position, setting->least) < 0;
    gboolean high = setting->most && number_compare(position, setting->most) > 0;
    if (!low && !high)
        return;
    g_autofree char *range = range_words(setting), *there = amount_words(setting, position);
    take_remark(take, "%s lies beyond the range of the %s, %s", there, setting->move, range);
}

// Where a shim that is not in stock lies among those that are: `nearest is 2.6 mm`.
static char *nearest_words(const PlanSetting *setting, const Number *position)
{
    const GPtrArray *stock = setting->stock;
    guint above = 0;
    while (above < stock->len && number_compare(stock->pdata[above], position) < 0)
        above++;
    g_autofree char *low = above ? amount_words(setting, stock->pdata[above - 1]) : NULL;
    g_autofree char *high = above < stock->len ? amount_words(setting, stock->pdata[above]) : NULL;
    return g_strconcat(low && high ? "nearest are " : "nearest is ", low ? low : "",
                       low && high ? " and " : "", high ? high : "", NULL);
}

static void remark_stock(Take *take, const Target *target, const Number *position)
{
    const PlanSetting *setting = target->check->setting;
    if (!setting->stock || setting_has_stock(setting, position))
        return;
    g_autofree char *there = amount_words(setting, position);
    g_autofree char *nearest = nearest_words(setting, position);
    take_remark(take, "%s is not in stock; %s", there, nearest);
}

// What the adjuster cannot do: taken all the same, for it is what was typed.
static void remark_move(Take *take, const Target *target, const Reading *reading, gboolean to)
{
    const PlanSetting *setting = target->check->setting;
    g_autoptr(Number) before = to ? NULL : position_of(take, target);
    g_autoptr(Number) position = to       ? number_copy(reading->value)
                                 : before ? number_add(before, reading->value)
                                          : NULL;
    if (position) {
        remark_range(take, target, position);
        remark_stock(take, target, position);
    }
    if (!setting->step || number_sign(setting->step) == 0 || is_of_steps(setting, reading))
        return;
    g_autofree char *step = amount_words(setting, setting->step);
    take_remark(take, "%s is no multiple of its step, %s", reading->typed, step);
}

// Which of the adjusters was moved must be said.
static gboolean refuse_nowhere(Take *take, const Target *target, GError **error)
{
    g_autofree char *first = places_label(target->axes, 0);
    return words_refuse(&take->words, take->words.at, error,
                        "each place of `%s` has a %s of its own; say which was moved, such as "
                        "`%s[%s]`",
                        target->name, target->check->setting->move, target->name, first);
}

gboolean verb_move(Take *take, GError **error)
{
    g_auto(Target) target = {0};
    g_auto(Reading) reading = {0};
    if (!take_target(take, TARGET_CHECKS, TRUE, &target, error))
        return FALSE;
    const PlanSetting *setting = target.check->setting;
    if (!setting)
        return words_refuse(&take->words, target.at, error,
                            "`%s` is no setting, so nothing is moved; write a note", target.name);
    if (setting->each && !target.said)
        return refuse_nowhere(take, &target, error);
    gboolean to = words_skip(&take->words, "to");
    if (!to && !words_skip(&take->words, "by"))
        return words_refuse(&take->words, take->words.at, error,
                            "how far? write `to` and where it stands now, or `by` and the step");
    if (!read_move(take, setting, &reading, error))
        return FALSE;
    remark_move(take, &target, &reading, to);
    for (guint i = 0; i < (target.said ? target.places->len : 1); i++) {
        Entry *entry = take_entry(take, "move");
        entry_set_text(entry, "check", target.check->name);
        if (target.said)
            entry_set_labels(entry, target.axes, target_place(&target, i));
        entry_set_step(take, entry, target.step);
        entry_set_reading(entry, to ? "to" : "moved", &reading);
    }
    return TRUE;
}
