#include <standbook/work/move_slip.h>

#include <standbook/rules/slip.h>
#include <standbook/value/reading.h>
#include <string.h>

enum { FAR = 10, OFF = 2, TELLING = 1000, FOUND = 2, WIDTHS = 20 };

// A move typed, in base units of what is moved.
typedef struct {
    const Trials *trials;
    const NextMove *next;
    Number *position; // where it leads
    Number *advised;  // where the advised move leads; NULL if none is advised
    Number *size;     // how far that is, without its sign
    guint decimals;   // typed behind the point
} Typed;

static void typed_clear(Typed *typed)
{
    number_free(typed->position);
    number_free(typed->advised);
    number_free(typed->size);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Typed, typed_clear)

static Number *distance(const Number *one, const Number *other)
{
    g_autoptr(Number) between = number_subtract(one, other);
    return number_abs(between);
}

static Typed typed_of(const Trials *trials, const NextMove *advised, const Number *value,
                      gboolean step)
{
    const Trial *last = trials_last(trials);
    const Number *from = last ? last->position : NULL;
    Typed typed = {.trials = trials, .next = advised};
    if (!step)
        typed.position = number_copy(value);
    else if (from)
        typed.position = number_add(from, value);
    if (from && next_move_moves(advised))
        typed.advised = next_move_position(trials, advised);
    typed.size = typed.advised ? distance(typed.advised, from) : NULL;
    return typed;
}

// Whether it lies further from where the advised move leads than so many times that move.
static gboolean is_off(const Typed *typed, glong times)
{
    g_autoptr(Number) away = distance(typed->position, typed->advised);
    g_autoptr(Number) factor = number_from_integer(times);
    g_autoptr(Number) most = number_multiply(typed->size, factor);
    return number_compare(away, most) > 0;
}

static char *words_of(const Typed *typed, const Number *position)
{
    const char *unit = typed->trials->check->setting->unit_text;
    g_autofree char *words = trial_position_words(typed->trials->check, position);
    return g_strconcat(words, unit ? " " : "", unit, NULL);
}

static char *ask_factor(const Typed *typed)
{
    g_autoptr(Number) size = number_abs(typed->advised);
    g_autoptr(Number) telling = number_from_integer(TELLING);
    g_autoptr(Number) step = number_divide(size, telling), meant = NULL;
    const Number *const others[] = {typed->advised};
    if (number_sign(size) == 0)
        return NULL;
    SlipKind kind = slip_likely(
        &(SlipQuestion){.value = typed->position, .others = others, .count = 1, .step = step},
        &meant);
    if (kind != SLIP_TEN_TIMES && kind != SLIP_A_TENTH)
        return NULL;
    g_autofree char *kept = words_of(typed, typed->position), *without = words_of(typed, meant);
    return g_strdup_printf("%s what is advised? Enter again keeps %s, not %s",
                           kind == SLIP_TEN_TIMES ? "10 times" : "A tenth of", kept, without);
}

static char *ask_range(const Typed *typed)
{
    const PlanSetting *setting = typed->trials->check->setting;
    gboolean below = setting->least && number_compare(typed->position, setting->least) < 0;
    gboolean above = setting->most && number_compare(typed->position, setting->most) > 0;
    if (!below && !above)
        return NULL;
    g_autofree char *there = words_of(typed, typed->position),
                    *end = trial_position_words(typed->trials->check,
                                                below ? setting->least : setting->most);
    return g_strdup_printf("%s? The %s ends at %s; Enter again keeps it", there, setting->move,
                           end);
}

static char *ask_far(const Typed *typed)
{
    g_autofree char *kept = words_of(typed, typed->position),
                    *advised = next_move_to(typed->trials, typed->next);
    return g_strdup_printf("Far from what is advised, %s? Enter again keeps %s", advised, kept);
}

// How many widths of its limits the setting answers by a move, by the plan's word; NULL where that
// is not known. From its zero, where it was not moved yet.
static Number *widths_of(const Typed *typed)
{
    const PlanSetting *setting = typed->trials->check->setting;
    const Requirement *made = typed->trials->made[0];
    const Trial *last = trials_last(typed->trials);
    g_autoptr(Number) zero = number_from_integer(0);
    const Number *from = last ? last->position : setting->zero ? zero : NULL;
    if (!from || !setting->gives || !setting->unit || !made || !made->lower || !made->upper)
        return NULL;
    g_autoptr(Number) travel = distance(typed->position, from);
    g_autoptr(Number) moved = unit_width_from_base(setting->unit, travel);
    g_autoptr(Number) gives = number_abs(setting->gives), by = number_multiply(moved, gives);
    g_autoptr(Number) width = number_subtract(made->upper, made->lower);
    return number_sign(width) > 0 ? number_divide(by, width) : NULL;
}

// Where the plan gives no range, its limits tell that no sensible move goes as far.
static char *ask_widths(const Typed *typed)
{
    const PlanSetting *setting = typed->trials->check->setting;
    gboolean ranged = setting->least || setting->most || setting->stock;
    g_autoptr(Number) widths = ranged ? NULL : widths_of(typed);
    g_autoptr(Number) most = number_from_integer(WIDTHS);
    if (!widths || number_compare(widths, most) <= 0)
        return NULL;
    g_autofree char *kept = words_of(typed, typed->position), *by = number_decimal(widths, 0);
    return g_strdup_printf("Far for its limits, %s times their width? Enter again keeps %s", by,
                           kept);
}

// Whether two lengths of a move, or places, are the same as far as it was typed, at least to what
// is found again on a scale.
static gboolean is_same(const Typed *typed, const Number *one, const Number *other)
{
    const Unit *unit = typed->trials->check->setting->unit;
    guint decimals = MAX(typed->decimals, FOUND);
    g_autofree char *first = unit_show(unit, one, decimals),
                    *second = unit_show(unit, other, decimals);
    return strcmp(first, second) == 0;
}

// Where it stands was asked, and how far to go was typed.
static char *ask_way(const Typed *typed)
{
    g_autoptr(Number) size = number_abs(typed->position);
    if (!is_same(typed, size, typed->size) || is_same(typed, typed->position, typed->advised))
        return NULL;
    g_autofree char *kept = words_of(typed, typed->position),
                    *there = next_move_to(typed->trials, typed->next);
    return g_strdup_printf("That is the way to go: then it stands at %s? Enter again keeps %s",
                           there, kept);
}

// The newest reading of the trials as it was typed, without its unit; NULL for none, or a bound.
static Number *last_reading(const Trials *trials)
{
    for (guint i = trials->all->len; i-- > 0;) {
        const GPtrArray *entries = ((const Trial *)trials->all->pdata[i])->entries;
        for (guint j = entries->len; j-- > 0;)
            if (strcmp(((const Entry *)entries->pdata[j])->kind->name, "read") == 0) {
                const char *value = entry_value(entries->pdata[j], "value", "value");
                return value ? number_from_text(value, NULL) : NULL;
            }
    }
    return NULL;
}

// As far from a reading as the next one may well lie: the width of the limits, or half of it.
static Number *reach_of(const Trials *trials, const Number *reading)
{
    const Requirement *made = trials->made[0];
    g_autoptr(Number) two = number_from_integer(2), size = number_abs(reading);
    g_autoptr(Number) half = number_divide(size, two);
    g_autoptr(Number) base =
        made->lower && made->upper ? number_subtract(made->upper, made->lower) : NULL;
    g_autoptr(Number) width = base ? unit_width_from_base(trials->check->unit, base) : NULL;
    return number_copy(width && number_compare(width, half) > 0 ? width : half);
}

// Where it stands was asked, and what was read there was typed: with decimals, nearer to the last
// reading than to where it stood, and neither where it is advised nor a size that is there.
static char *ask_reading(const Typed *typed)
{
    const Trials *trials = typed->trials;
    const PlanSetting *setting = trials->check->setting;
    g_autoptr(Number) last = last_reading(trials);
    if (!last || !typed->decimals || !trials->check->decimals || !is_off(typed, OFF) ||
        (setting->stock && setting_has_stock(setting, typed->position)))
        return NULL;
    g_autoptr(Number) as_typed = unit_width_from_base(setting->unit, typed->position),
                      stood = unit_width_from_base(setting->unit, trials_last(trials)->position);
    g_autoptr(Number) away = distance(as_typed, last), moved = distance(as_typed, stood),
                      reach = reach_of(trials, last);
    if (number_compare(away, reach) > 0 || number_compare(away, moved) >= 0)
        return NULL;
    g_autofree char *kept = words_of(typed, typed->position);
    return g_strdup_printf("A reading? NEXT asks where it stands; Enter again keeps %s", kept);
}

char *move_slip(const Trials *trials, const NextMove *advised, const char *words, gboolean step)
{
    g_auto(Reading) reading = {0};
    if (!reading_parse(words, trials->check->setting->unit, &reading, NULL, NULL))
        return NULL;
    g_auto(Typed) typed = typed_of(trials, advised, reading.value, step);
    if (!typed.position)
        return NULL;
    typed.decimals = reading.decimals;
    char *asked = typed.advised && !step ? ask_way(&typed) : NULL;
    if (!asked && typed.advised && !step)
        asked = ask_reading(&typed);
    if (!asked && typed.advised && is_off(&typed, OFF))
        asked = ask_factor(&typed);
    if (!asked)
        asked = ask_range(&typed);
    if (!asked && typed.advised && is_off(&typed, FAR))
        asked = ask_far(&typed);
    return asked ? asked : ask_widths(&typed);
}

char *loose_slip(const Trials *trials, const NextMove *advised, const GArray *earlier, guint place,
                 const char *typed)
{
    const PlanCheck *check = trials->check;
    g_auto(Reading) reading = {0};
    if (check->formula || !advised->known || !trials_needs(trials->made[place]) ||
        !reading_parse(typed, check->unit, &reading, NULL, NULL) || reading.bound != BOUND_NONE)
        return NULL;
    SettingFinding finding =
        next_move_finding(trials, earlier, place, number_double(reading.value));
    if (finding.kind != SETTING_SLIP)
        return NULL;
    g_autofree char *expected = next_move_reading(trials, advised, finding.was),
                    *kept = unit_show(check->unit, reading.value, check->decimals);
    return g_strdup_printf("Far from what is expected, %s? Enter again keeps %s", expected, kept);
}

// What a place read last in a trial, tightened, base units; NULL where it was not.
static const Number *value_of(const Trial *trial, guint place)
{
    for (guint i = trial->values->len; i-- > 0;) {
        const TrialValue *value = &g_array_index(trial->values, TrialValue, i);
        if (value->tight && value->place == place && value->value)
            return value->value;
    }
    return NULL;
}

// How it answered the other way: by more than the gauge tells; NULL where it did not.
static char *ask_answer(const Trials *trials, const NextMove *advised, const Number *before,
                        const Number *moved, const Number *value)
{
    const PlanCheck *check = trials->check;
    g_autoptr(Number) answer = number_subtract(value, before), size = number_abs(answer);
    gboolean thicker = number_sign(moved) > 0, more = number_sign(answer) > 0;
    gboolean other = number_sign(answer) * number_sign(moved) * check->setting->direction < 0;
    if (!other || !advised->graduation || number_compare(size, advised->graduation) <= 0)
        return NULL;
    g_autofree char *was = unit_show(check->unit, before, check->decimals),
                    *kept = unit_show(check->unit, value, check->decimals);
    return g_strdup_printf("A %s %s, and it reads %s than %s? Enter again keeps %s",
                           thicker ? "thicker" : "thinner", check->setting->move,
                           more ? "more" : "less", was, kept);
}

char *way_slip(const Trials *trials, const NextMove *advised, guint place, const char *typed)
{
    const PlanCheck *check = trials->check;
    const Trial *last = trials_last(trials);
    const Trial *before = trials->all->len > 1 ? trials->all->pdata[trials->all->len - 2] : NULL;
    const Number *value = before ? value_of(before, place) : NULL;
    g_auto(Reading) reading = {0};
    if (!check->setting->stock || check->formula || !value || last->readings || !last->position ||
        !before->position || !reading_parse(typed, check->unit, &reading, NULL, NULL) ||
        reading.bound != BOUND_NONE)
        return NULL;
    g_autoptr(Number) moved = number_subtract(last->position, before->position);
    return ask_answer(trials, advised, value, moved, reading.value);
}
