#include <standbook/work/advice.h>

void advice_clear(Advice *advice)
{
    g_free(advice->figure);
    g_ptr_array_unref(advice->beside);
    g_ptr_array_unref(advice->sentences);
}

static void say(GPtrArray *sentences, const char *format, ...) G_GNUC_PRINTF(2, 3);

static void say(GPtrArray *sentences, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    g_ptr_array_add(sentences, g_strdup_vprintf(format, arguments));
    va_end(arguments);
}

// The least and the greatest of some numbers.
typedef struct {
    Number *least, *most;
    guint count;
} Span;

static void span_clear(Span *span)
{
    number_free(span->least);
    number_free(span->most);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Span, span_clear)

static void span_add(Span *span, const Number *number)
{
    if (!span->least || number_compare(number, span->least) < 0) {
        number_free(span->least);
        span->least = number_copy(number);
    }
    if (!span->most || number_compare(number, span->most) > 0) {
        number_free(span->most);
        span->most = number_copy(number);
    }
    span->count++;
}

static Span tight_span(const Trials *trials, const Trial *trial)
{
    Span span = {0};
    for (guint i = 0; i < trials->places; i++)
        if (trial->places[i].made && trial->places[i].made->value)
            span_add(&span, trial->places[i].made->value);
    return span;
}

// OUTCOME ---------------------------------------------------------------------------------------

static char *place_words(const Requirement *made)
{
    return *made->place ? g_strdup_printf(" at %s", made->place) : g_strdup("");
}

// `▼ FAIL at 3: 0.07, 0.01 under`
static char *fault_words(const PlanCheck *check, const Requirement *made)
{
    gboolean under = made->lower && number_compare(made->value, made->lower) < 0;
    const Number *limit = under ? made->lower : made->upper;
    g_autofree char *value = check_value_words(check, made->value), *at = place_words(made);
    if (!limit)
        return g_strdup_printf("× FAIL%s: %s", at, value);
    g_autoptr(Number) off = number_subtract(made->value, limit);
    g_autoptr(Number) by = number_abs(off);
    g_autofree char *width = check_width_words(check, by);
    return g_strdup_printf("%s FAIL%s: %s, %s %s", under ? "▼" : "▲", at, value, width,
                           under ? "under" : "over");
}

static char *values_words(const Trials *trials, const Trial *trial)
{
    g_auto(Span) span = tight_span(trials, trial);
    if (!span.count)
        return g_strdup("");
    g_autofree char *least = check_value_words(trials->check, span.least);
    g_autofree char *most = check_value_words(trials->check, span.most);
    return span.count > 1 ? g_strdup_printf(": %s to %s", least, most)
                          : g_strdup_printf(": %s", least);
}

static char *faults_words(const Trials *trials, const Trial *trial)
{
    g_autoptr(GString) words = g_string_new(NULL);
    for (guint i = 0; i < trials->places; i++) {
        const Requirement *made = trial->places[i].made;
        if (!made || made->value_verdict != VERDICT_FAIL || made->conceded || !made->value)
            continue;
        g_autofree char *fault = fault_words(trials->check, made);
        g_string_append_printf(words, "%s%s", words->len ? "; " : "", fault);
    }
    return g_string_free(g_steal_pointer(&words), FALSE);
}

char *trial_outcome(const Trials *trials, const Trial *trial)
{
    g_autofree char *faults = faults_words(trials, trial);
    g_autofree char *values = values_words(trials, trial);
    gboolean doubted = trial->verdict == VERDICT_IN_DOUBT;
    g_autofree char *doubt =
        doubted ? g_strdup_printf("? in doubt, %s", reason_words(trial->reason)) : g_strdup("");
    if (trial->fails)
        return g_strdup_printf("%s%s%s", faults, doubted ? "; " : "", doubt);
    if (doubted)
        return g_strdup_printf("%s%s", doubt, values);
    if (trial->verdict == VERDICT_OPEN)
        return g_strdup_printf("%u of %u read%s", trial->read, trials->places, values);
    return g_strdup_printf("%s%s%s", trial->verdict == VERDICT_PASS ? "√ " : "",
                           verdict_words(trial->verdict), values);
}

// WHAT THE TRIALS SAY ---------------------------------------------------------------------------

// What tightening added where a place was read loose and tight.
static Span added_span(const Trials *trials)
{
    Span span = {0};
    for (guint i = 0; i < trials->all->len; i++) {
        const Trial *trial = trials->all->pdata[i];
        const TrialPlace *place = &trial->places[trial->loose_place];
        if (!trial->loose_value || !place->made || !place->made->value ||
            trial_place_misleads(trial, trial->loose_place))
            continue;
        g_autoptr(Number) added = number_subtract(place->made->value, trial->loose_value);
        span_add(&span, added);
    }
    return span;
}

// Where the plan names nothing that holds the setting, nothing was tightened.
static void say_added(const Trials *trials, GPtrArray *sentences)
{
    g_auto(Span) span = added_span(trials);
    if (!span.count || !trials_has_hold(trials))
        return;
    gboolean less = number_sign(span.most) <= 0 && number_sign(span.least) < 0;
    gboolean both = number_sign(span.least) < 0 && number_sign(span.most) > 0;
    g_autoptr(Number) low = less ? number_negate(span.most) : number_copy(span.least);
    g_autoptr(Number) high = less ? number_negate(span.least) : number_copy(span.most);
    g_autofree char *from = check_width_words(trials->check, low);
    g_autofree char *to = check_width_words(trials->check, high);
    const char *does = both ? "changed it by" : less ? "taken off" : "added";
    if (number_equal(low, high))
        say(sentences, "Tightening has %s %s%s.", does, from, span.count > 1 ? " each time" : "");
    else
        say(sentences, "Tightening has %s %s to %s.", does, from, to);
}

// The first place that both trials read; NULL if there is none.
static const Requirement *shared_place(const Trials *trials, const Trial *one, const Trial *other,
                                       const Requirement **before)
{
    for (guint i = 0; i < trials->places; i++) {
        *before = one->places[i].made;
        const Requirement *after = other->places[i].made;
        if (*before && after && (*before)->value && after->value)
            return after;
    }
    return NULL;
}

// How the newest move was answered: `From 0.00 to 0.08 turn it rose by 0.05 at 1, tight.`
static void say_answer(const Trials *trials, const Trial *before, const Trial *trial,
                       GPtrArray *sentences)
{
    const Requirement *was = NULL, *is = shared_place(trials, before, trial, &was);
    if (!is || before->joined || trial->joined || !before->position || !trial->position ||
        number_equal(before->position, trial->position))
        return;
    const PlanSetting *setting = trials->check->setting;
    g_autofree char *from = trial_position_words(trials->check, before->position);
    g_autofree char *to = trial_position_words(trials->check, trial->position);
    g_autoptr(Number) change = number_subtract(is->value, was->value);
    g_autoptr(Number) size = number_abs(change);
    g_autofree char *width = check_width_words(trials->check, size), *at = place_words(is);
    say(sentences, "From %s to %s%s%s it %s by %s%s%s.", from, to, setting->unit_text ? " " : "",
        setting->unit_text ? setting->unit_text : "", number_sign(change) < 0 ? "fell" : "rose",
        width, at, trials_has_tight(trials) ? ", tight" : "");
}

static void say_spread(const Trials *trials, const Trial *trial, GPtrArray *sentences)
{
    g_auto(Span) span = tight_span(trials, trial);
    if (span.count < 2)
        return;
    g_autoptr(Number) spread = number_subtract(span.most, span.least);
    g_autofree char *width = check_width_words(trials->check, spread);
    say(sentences, "Over %u places it spreads %s.", span.count, width);
}

// How the plan says that it answers.
static void say_geometry(const PlanCheck *check, GPtrArray *sentences)
{
    const PlanSetting *setting = check->setting;
    if (!setting->gives && setting->direction)
        say(sentences, "By the plan it reads %s the further the %s goes.",
            setting->direction > 0 ? "more" : "less", setting->move);
    if (!setting->gives)
        return;
    g_autoptr(Unit) unit = check->unit ? unit_of_difference(check->unit) : NULL;
    g_autofree char *gives = unit_show(unit, setting->gives, check->decimals + 1);
    say(sentences, "By the plan 1 %s of the %s gives %s%s.",
        setting->unit_text ? setting->unit_text : "step", setting->move, gives,
        setting->direction ? "" : ", it is not said which way");
}

// `The jackscrew goes from 0.00 to 3.00, counted from mesh just solid.`
static void say_range(const PlanCheck *check, GPtrArray *sentences)
{
    const PlanSetting *setting = check->setting;
    if (!setting->least || !setting->most)
        return;
    g_autofree char *least = trial_position_words(check, setting->least);
    g_autofree char *most = trial_position_words(check, setting->most);
    say(sentences, "The %s goes from %s to %s%s%s.", setting->move, least, most,
        setting->zero ? ", counted from " : "", setting->zero ? setting->zero : "");
}

// A position that may well be typed: of a stock its first, else the middle of the range, else one.
static Number *example_of(const PlanSetting *setting)
{
    if (setting->stock && setting->stock->len)
        return number_copy(setting->stock->pdata[0]);
    g_autoptr(Number) one = number_from_integer(1), two = number_from_integer(2);
    if (!setting->least || !setting->most)
        return setting->unit ? unit_to_base(setting->unit, one) : g_steal_pointer(&one);
    g_autoptr(Number) sum = number_add(setting->least, setting->most);
    return number_divide(sum, two);
}

// `First type where the jackscrew stands, not a reading: 1.50 for 1.50 turn from mesh just solid.`
static void say_first(const Trials *trials, GPtrArray *sentences)
{
    const PlanCheck *check = trials->check;
    const PlanSetting *setting = check->setting;
    gboolean put_in = trials_is_put_in(trials);
    const char *unit = setting->unit_text ? setting->unit_text : "";
    g_autoptr(Number) example = example_of(setting);
    g_autofree char *there = trial_position_words(check, example);
    say(sentences, "First type %s %s %s, not a reading: %s for %s%s%s%s%s.",
        put_in ? "which" : "where the", setting->move, put_in ? "is in" : "stands", there, there,
        *unit ? " " : "", unit, setting->zero ? " from " : "", setting->zero ? setting->zero : "");
}

static void say_stock(const Trials *trials, const NextMove *next, GPtrArray *sentences)
{
    char *stock = advice_stock(trials, next);
    if (stock)
        g_ptr_array_add(sentences, stock);
}

// What the plan says before anything is read.
static void say_plan(const Trials *trials, GPtrArray *sentences)
{
    const PlanCheck *check = trials->check;
    if (!trials->all->len)
        say_first(trials, sentences);
    say_geometry(check, sentences);
    say_range(check, sentences);
    say_stock(trials, NULL, sentences);
    g_autofree char *aim = advice_aim(trials);
    if (aim)
        g_ptr_array_add(sentences, g_steal_pointer(&aim));
}

// The newest trial that was read tightened from that one back; NULL if there is none.
static const Trial *read_trial(const Trials *trials, guint below)
{
    for (guint i = below; i-- > 0;)
        if (((const Trial *)trials->all->pdata[i])->read)
            return trials->all->pdata[i];
    return NULL;
}

Advice advice_of(const Trials *trials, const NextMove *next, const TrialNext *asked)
{
    Advice advice = {.beside = g_ptr_array_new_with_free_func(g_free),
                     .sentences = g_ptr_array_new_with_free_func(g_free)};
    const Trial *trial = read_trial(trials, trials->all->len);
    if (next)
        next_move_say(trials, next, asked, &advice);
    if (!trial) {
        say_plan(trials, advice.sentences);
        return advice;
    }
    const Trial *before = read_trial(trials, trial->number - 1);
    g_autofree char *outcome = trial_outcome(trials, trial);
    say(advice.sentences, "Try %u %s.", trial->number, outcome);
    say_added(trials, advice.sentences);
    if (before)
        say_answer(trials, before, trial, advice.sentences);
    say_spread(trials, trial, advice.sentences);
    say_stock(trials, next, advice.sentences);
    return advice;
}
