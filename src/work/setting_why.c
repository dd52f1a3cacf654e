#include <standbook/work/setting_why.h>

#include <math.h>
#include <standbook/rules/line.h>
#include <standbook/work/advice.h>

// One tightened reading at the place that the tries are compared at, in the units shown.
typedef struct {
    guint number; // of its try
    double position, value;
} Seen;

typedef struct {
    const Trials *trials;
    const NextMove *next;
    GArray *lines;
    double value, move; // one base unit in the unit of the check, and in that of the moves
} Why;

static void say(Why *why, const char *head, const char *format, ...) G_GNUC_PRINTF(3, 4);

static void say(Why *why, const char *head, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    SettingWhy line = {head, g_strdup_vprintf(format, arguments)};
    va_end(arguments);
    g_array_append_val(why->lines, line);
}

static void clear_line(gpointer line)
{
    g_free(((SettingWhy *)line)->said);
}

static double of_base(const Unit *unit)
{
    g_autoptr(Number) one = number_from_integer(1);
    g_autoptr(Number) shown = unit ? unit_width_from_base(unit, one) : NULL;
    return shown ? number_double(shown) : 1;
}

// With one place more than the check is read to.
static char *number_words(const Why *why, double number)
{
    return g_strdup_printf("%.*f", (int)why->trials->check->decimals + 1, number);
}

// `0.546 mm a turn`
static char *slope_words(const Why *why, double slope)
{
    const PlanCheck *check = why->trials->check;
    const char *unit = check->setting->unit_text;
    g_autofree char *number = number_words(why, slope);
    return g_strdup_printf("%s%s%s a %s", number, check->unit ? " " : "",
                           check->unit ? unit_text(check->unit) : "",
                           unit ? unit : check->setting->move);
}

// `, give or take 0.010`; "" where that is not known.
static char *sure_words(const Why *why, double sd)
{
    g_autofree char *number = number_words(why, fabs(sd));
    return isnan(sd) ? g_strdup("") : g_strdup_printf(", give or take %s", number);
}

// WHAT WAS SEEN ---------------------------------------------------------------------------------

static gboolean is_seen(const Trial *trial, guint place)
{
    const Requirement *made = trial->places[place].made;
    return made && made->value && made->bound == BOUND_NONE && trial->position &&
           !trial_place_misleads(trial, place);
}

// The place that most tries have read.
static guint best_place(const Trials *trials)
{
    guint best = 0, most = 0;
    for (guint place = 0; place < trials->places; place++) {
        guint count = 0;
        for (guint i = 0; i < trials->all->len; i++)
            count += is_seen(trials->all->pdata[i], place) ? 1 : 0;
        best = count > most ? place : best;
        most = MAX(most, count);
    }
    return best;
}

static GArray *seen_at(const Why *why, guint place)
{
    GArray *all = g_array_new(FALSE, FALSE, sizeof(Seen));
    for (guint i = 0; i < why->trials->all->len; i++) {
        const Trial *trial = why->trials->all->pdata[i];
        if (!is_seen(trial, place))
            continue;
        Seen seen = {trial->number, number_double(trial->position) * why->move,
                     number_double(trial->places[place].made->value) * why->value};
        g_array_append_val(all, seen);
    }
    return all;
}

// From try to try, the newest.
static void say_steps(Why *why, const GArray *seen, const char *at)
{
    enum { MOST = 2 };
    guint first = seen->len > MOST + 1 ? seen->len - MOST : 1;
    for (guint i = first; i < seen->len; i++) {
        const Seen *was = &g_array_index(seen, Seen, i - 1), *is = &g_array_index(seen, Seen, i);
        if (was->position == is->position)
            continue;
        g_autofree char *slope =
            slope_words(why, (is->value - was->value) / (is->position - was->position));
        say(why, i == first ? "seen" : "", "From try %u to %u%s%s%s: %s.", was->number, is->number,
            trials_has_tight(why->trials) ? ", tight" : "", *at ? " at " : "", at, slope);
    }
}

static void say_line(Why *why, const GArray *seen)
{
    g_autofree double *x = g_new0(double, seen->len + 1), *y = g_new0(double, seen->len + 1);
    Line line;
    for (guint i = 0; i < seen->len; i++) {
        x[i] = g_array_index(seen, Seen, i).position;
        y[i] = g_array_index(seen, Seen, i).value;
    }
    if (!line_fit(x, y, seen->len, FALSE, &line))
        return;
    g_autofree char *slope = slope_words(why, line.slope), *sure = sure_words(why, line.slope_sd);
    say(why, "", "A straight line through %u tries: %s%s.", seen->len, slope, sure);
}

static void say_seen(Why *why)
{
    guint place = best_place(why->trials);
    g_autoptr(GArray) seen = seen_at(why, place);
    if (seen->len < 2) {
        say(why, "seen", "No two tries were read%s yet.",
            trials_has_tight(why->trials) ? " tight" : "");
        return;
    }
    say_steps(why, seen, why->trials->made[place]->place);
    say_line(why, seen);
}

// WHAT IS MADE OF IT ----------------------------------------------------------------------------

static void say_plan(Why *why)
{
    const PlanSetting *setting = why->trials->check->setting;
    if (!setting->gives) {
        say(why, "plan", "It does not say how far it answers.");
        return;
    }
    double gives = number_double(setting->gives) * why->value;
    g_autofree char *slope = slope_words(why, gives);
    const char *either = setting->direction ? "" : ", either way";
    g_autofree char *sure = sure_words(why, gives * next_move_supposed(why->trials, why->next));
    say(why, "plan", "%s%s%s.", slope, either, sure);
}

static void say_aim(Why *why)
{
    g_autofree char *aim = advice_aim(why->trials);
    if (aim)
        say(why, "", "%s", aim);
}

static void say_slope(Why *why)
{
    const SettingLearned *learned = &why->next->learned;
    double slope = exp(learned->ln_slope) * why->value / why->move;
    g_autofree char *words = slope_words(why, learned->rises < 0.5 ? -slope : slope);
    g_autofree char *sure = sure_words(why, slope * learned->ln_slope_sd);
    g_autofree char *rises =
        learned->rises > 0.005 && learned->rises < 0.995
            ? g_strdup_printf(" Chance %.2f that it rises with the move.", learned->rises)
            : g_strdup("");
    say(why, "reckoned", "It answers %s%s.%s", words, sure, rises);
}

static void say_shift(Why *why)
{
    if (!trials_has_hold(why->trials))
        return;
    const SettingLearned *learned = &why->next->learned;
    const Unit *unit = why->trials->check->unit;
    g_autofree char *shift = number_words(why, fabs(learned->shift) * why->value);
    g_autofree char *sure = sure_words(why, learned->shift_sd * why->value);
    say(why, "", "Tightening %s %s%s%s%s.", learned->shift < 0 ? "takes off" : "adds", shift,
        unit ? " " : "", unit ? unit_text(unit) : "", sure);
}

static void say_chances(Why *why)
{
    const SettingAdvice *advice = &why->next->advice;
    say(why, "chance", "Of ending where it is wanted, %sas it stands: %.2f.",
        trials_has_hold(why->trials) ? "tightened " : "", advice->as_it_is);
    if (next_move_moves(why->next))
        say(why, "", "After the move: %.2f; beyond the far limit: %.2f.", advice->chance,
            advice->overrun);
    say(why, "", "With as many moves as it takes: %.2f.", advice->could);
}

// WHAT IT RESTS ON ------------------------------------------------------------------------------

static void say_rests(Why *why)
{
    const NextMove *next = why->next;
    if (!next->told)
        say(why, "rests on", "Nothing is read yet.");
    else if (trials_has_tight(why->trials))
        say(why, "rests on", "%u %s, %u of them tightened.", next->told,
            next->told == 1 ? "reading" : "readings", next->tight);
    else
        say(why, "rests on", "%u %s.", next->told, next->told == 1 ? "reading" : "readings");
    g_autofree char *earlier = next_move_earlier(why->trials, next);
    if (next->earlier)
        say(why, "", "It began with %s.", earlier);
    else
        say(why, "", "No %s has shown anything.",
            why->trials->labels ? "other place, here or in an earlier build of the family,"
                                : "earlier build of the family");
    if (next->doubted)
        say(why, "", "%u %s%s left out as doubtful.", next->doubted,
            trials_has_tight(why->trials) ? "tightened " : "",
            next->doubted == 1 ? "reading is" : "readings are");
}

GArray *setting_why(const Trials *trials, const NextMove *next)
{
    Why why = {.trials = trials,
               .next = next,
               .lines = g_array_new(FALSE, FALSE, sizeof(SettingWhy)),
               .value = of_base(trials->check->unit),
               .move = of_base(trials->check->setting->unit)};
    g_array_set_clear_func(why.lines, clear_line);
    say_plan(&why);
    say_aim(&why);
    say_seen(&why);
    if (next->known && next->told) {
        say_slope(&why);
        say_shift(&why);
        say_chances(&why);
    }
    if (next->known)
        say_rests(&why);
    return why.lines;
}
