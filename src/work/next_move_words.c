// The advice on a setting in words.
#include "next_move_inside.h"

#include <standbook/work/advice.h>

#include <math.h>
#include <string.h>

static void say(GPtrArray *sentences, const char *format, ...) G_GNUC_PRINTF(2, 3);

static void say(GPtrArray *sentences, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    g_ptr_array_add(sentences, g_strdup_vprintf(format, arguments));
    va_end(arguments);
}

// VALUES ----------------------------------------------------------------------------------------

Number *next_move_shown(const NextMove *next, double value)
{
    enum { MOST = 1000000000 };
    double marks = round(value / number_double(next->graduation));
    if (!(fabs(marks) < MOST))
        return NULL;
    g_autoptr(Number) count = number_from_integer(lround(marks));
    return number_multiply(count, next->graduation);
}

char *next_move_reading(const Trials *trials, const NextMove *next, double value)
{
    g_autoptr(Number) shown = next_move_shown(next, value);
    return shown ? check_value_words(trials->check, shown) : g_strdup("·");
}

// `between 0.08 and 0.12`, `0.10` where both ends read the same.
static char *between_words(const Trials *trials, const NextMove *next,
                           const SettingExpected *expected)
{
    g_autofree char *from = next_move_reading(trials, next, expected->from);
    g_autofree char *to = next_move_reading(trials, next, expected->to);
    return strcmp(from, to) == 0 ? g_steal_pointer(&from)
                                 : g_strdup_printf("between %s and %s", from, to);
}

// `0.09 to 0.11`
static char *span_words(const Trials *trials, const NextMove *next, double least, double most)
{
    g_autofree char *from = next_move_reading(trials, next, least);
    g_autofree char *to = next_move_reading(trials, next, most);
    return strcmp(from, to) == 0 ? g_steal_pointer(&from) : g_strdup_printf("%s to %s", from, to);
}

// MOVES -----------------------------------------------------------------------------------------

Number *next_move_number(double value)
{
    g_autofree char *text = g_strdup_printf("%.12f", value);
    return number_from_text(text, NULL);
}

const char *advice_where(const Trials *trials, gboolean loosest)
{
    return trials->places == 1 ? "" : loosest ? " at the greatest" : " at the smallest";
}

char *advice_aim(const Trials *trials)
{
    gboolean loosest, named = trials->check->aim != AIM_NONE;
    double aim = next_move_aim(trials, &loosest);
    g_autoptr(Number) number = isnan(aim) ? NULL : next_move_number(aim);
    if (!number)
        return NULL;
    g_autofree char *words = check_value_words(trials->check, number);
    return g_strdup_printf("The aim is %s%s%s.", words, advice_where(trials, loosest),
                           named ? "" : ": the plan names none, it is where wear has most room");
}

// How far to move, base units, without its sign: exactly so many steps where it has steps.
static Number *move_size(const PlanSetting *setting, const SettingAdvice *advice)
{
    if (!setting->step || !advice->steps)
        return next_move_number(fabs(advice->move));
    g_autoptr(Number) steps = number_from_integer(labs(advice->steps));
    return number_multiply(steps, setting->step);
}

// Without steps no finer than it is said.
static Number *said_size(const PlanCheck *check, const SettingAdvice *advice)
{
    const PlanSetting *setting = check->setting;
    g_autoptr(Number) size = move_size(setting, advice);
    if (!size || (setting->step && advice->steps))
        return g_steal_pointer(&size);
    g_autofree char *words = trial_position_words(check, size);
    g_autoptr(Number) said = number_from_text(words, NULL);
    return setting->unit ? unit_width_to_base(setting->unit, said) : g_steal_pointer(&said);
}

Number *next_move_by(const Trials *trials, const NextMove *next)
{
    g_autoptr(Number) size = said_size(trials->check, &next->advice);
    return size && next->advice.move < 0 ? number_negate(size) : g_steal_pointer(&size);
}

static Number *stock_near(const GPtrArray *stock, double position)
{
    const Number *nearest = stock->pdata[0];
    for (guint i = 1; i < stock->len; i++)
        if (fabs(number_double(stock->pdata[i]) - position) <
            fabs(number_double(nearest) - position))
            nearest = stock->pdata[i];
    return number_copy(nearest);
}

Number *next_move_position(const Trials *trials, const NextMove *next)
{
    const PlanSetting *setting = trials->check->setting;
    const Trial *last = trials_last(trials);
    if (setting->stock && setting->stock->len)
        return stock_near(setting->stock, next->advice.to);
    g_autoptr(Number) by = last && last->position ? next_move_by(trials, next) : NULL;
    return by ? number_add(last->position, by) : next_move_number(next->advice.to);
}

static gboolean is_turned(const PlanSetting *setting)
{
    const Kind angle = {.angle = 1};
    return setting->unit && kind_equal(unit_kind(setting->unit), angle);
}

// The denominator of the steps, in the unit of the moves: 48 of 1/48 turn; 1 for none.
static gulong step_denominator(const PlanSetting *setting)
{
    if (!setting->step)
        return 1;
    g_autoptr(Number) step = unit_width_from_base(setting->unit, setting->step);
    g_autofree char *text = number_fraction(step);
    const char *below = strchr(text, '/');
    return below ? strtoul(below + 1, NULL, 10) : 1;
}

// `7/24` of what is turned in fractions, as short as it can be said; else `0.05`.
static char *size_words(const PlanCheck *check, const Number *size)
{
    enum { LONGEST = 6 };
    const PlanSetting *setting = check->setting;
    gulong below = is_turned(setting) ? step_denominator(setting) : 1;
    if (below == 1)
        return trial_position_words(check, size);
    g_autoptr(Number) shown = unit_width_from_base(setting->unit, size);
    g_autofree char *mixed = number_mixed(shown, below);
    return strlen(mixed) <= LONGEST ? g_steal_pointer(&mixed) : trial_position_words(check, size);
}

// The way of a move: a screw goes out from its zero, anything else up or down its scale.
static const char *way_words(const PlanSetting *setting, double move)
{
    if (is_turned(setting))
        return move > 0 ? "out" : "in";
    return move > 0 ? "up" : "down";
}

// What is turned is found again to a hundredth at best.
static char *position_words(const Trials *trials, double position)
{
    enum { TURNED = 2 };
    const PlanSetting *setting = trials->check->setting;
    g_autoptr(Number) number = next_move_number(position);
    if (!number || !is_turned(setting))
        return number ? trial_position_words(trials->check, number) : g_strdup("");
    g_autoptr(Number) shown = unit_from_base(setting->unit, number);
    return number_decimal(shown, TURNED);
}

char *next_move_to(const Trials *trials, const NextMove *next)
{
    return position_words(trials, next->advice.to);
}

char *next_move_size(const Trials *trials, const NextMove *next)
{
    const PlanSetting *setting = trials->check->setting;
    if (setting->stock)
        return position_words(trials, next->advice.to);
    g_autoptr(Number) size = move_size(setting, &next->advice);
    return size_words(trials->check, size);
}

char *next_move_words(const Trials *trials, const NextMove *next)
{
    const PlanSetting *setting = trials->check->setting;
    const char *unit = setting->unit_text ? setting->unit_text : "";
    g_autofree char *size = next_move_size(trials, next);
    if (setting->stock)
        return g_strdup_printf("put in the %s of %s%s%s", setting->move, size, *unit ? " " : "",
                               unit);
    const char *way = way_words(setting, next->advice.move);
    return is_turned(setting) && strcmp(unit, "turn") == 0
               ? g_strdup_printf("turn %s %s", way, size)
               : g_strdup_printf("%s %s %s%s%s", setting->move, way, size, *unit ? " " : "", unit);
}

// Beside the figure: `of a turn, 18°, out`, `to 0.13`.
static void say_beside(const Trials *trials, const NextMove *next, GPtrArray *beside)
{
    const PlanSetting *setting = trials->check->setting;
    const SettingAdvice *advice = &next->advice;
    const char *unit = setting->unit_text ? setting->unit_text : "";
    const char *way = way_words(setting, advice->move);
    g_autofree char *to = next_move_to(trials, next);
    if (setting->stock)
        say(beside, "%s of %s", unit, setting->move);
    else if (is_turned(setting) && strcmp(unit, "turn") == 0)
        say(beside, "%s, %.0f°, %s", fabs(advice->move) < 360 ? "of a turn" : "turns",
            fabs(advice->move), way);
    else
        say(beside, "%s %s", unit, way);
    if (!setting->stock)
        say(beside, "to %s", to);
}

// SENTENCES -------------------------------------------------------------------------------------

// `Then expect 0.10, between 0.08 and 0.12, tight.` Over several places what the first of them will
// read and the least and greatest of all.
static void say_expected(const Trials *trials, const NextMove *next, const SettingExpected *first,
                         const SettingExpected *tightest, const SettingExpected *loosest,
                         GPtrArray *sentences)
{
    g_autofree char *mean = next_move_reading(trials, next, first->mean);
    g_autofree char *between = between_words(trials, next, first);
    g_autofree char *all = span_words(trials, next, fmin(tightest->mean, loosest->mean),
                                      fmax(tightest->mean, loosest->mean));
    gboolean apart = g_str_has_prefix(between, "between");
    const char *tight = trials_has_tight(trials) ? ", tight" : "";
    if (trials->places == 1)
        say(sentences, "Then expect %s%s%s%s.", mean, apart ? ", " : "", apart ? between : "",
            tight);
    else
        say(sentences, "Then expect %s at %s%s%s, and %s over the %u%s.", mean,
            trials->made[next_move_place(trials, 0)]->place, apart ? ", " : "",
            apart ? between : "", all, trials->places, tight);
}

static void say_tightest(const Trials *trials, const NextMove *next, const char *before,
                         GPtrArray *sentences)
{
    const SettingExpected *tightest = &next->advice.tightest;
    g_autofree char *span = span_words(trials, next, tightest->from, tightest->to);
    say(sentences, "%s; expect %s%s.", before, span, advice_where(trials, next->loosest));
}

static void say_band(const Trials *trials, const NextMove *next, GPtrArray *sentences)
{
    const SettingBand *band = &next->band;
    if (!next->banded) {
        if (next->advice.leads_loose)
            say(sentences, "Read it loose.");
        return;
    }
    g_autofree char *when = span_words(trials, next, band->from, band->to);
    say(sentences, "%s when loose reads %s.", trials_has_hold(trials) ? "Tighten" : "Read it tight",
        when);
    say_expected(trials, next, &band->first, &band->tightest, &band->loosest, sentences);
}

// Whether the newest reading does not follow from the move.
static gboolean has_slipped(const NextMove *next)
{
    for (guint i = 0; i < next->advice.finding_count; i++)
        if (next->advice.findings[i].kind == SETTING_SLIP)
            return TRUE;
    return FALSE;
}

// What is not held by anything in the plan is not tightened by it either.
static const char *tighten_words(const Trials *trials, const NextMove *next)
{
    const Trial *last = trials_last(trials);
    gboolean read = last && last->read;
    if (trials_is_early(trials))
        return trials_open_hold(trials)
                   ? "It was read before it was tightened: tighten it, then read it again"
                   : "It was read before it was tightened: read it again";
    if (!trials_has_tight(trials))
        return read ? "Leave it where it stands and read it again"
                    : "Leave it where it stands and read it";
    if (!trials_has_hold(trials))
        return read ? "Leave it where it stands and read it again"
                    : "Leave it where it stands and read it tight";
    if (last && last->ended)
        return "Leave it where it stands and tighten it again";
    if (read)
        return "Loosen it, leave it where it stands and tighten it again";
    if (has_slipped(next))
        return "If it was read right, tighten now";
    gboolean learns = next->tight == 0 && next->advice.as_it_is < 0.5;
    return learns ? "Tighten now, to see what tightening changes" : "Tighten now";
}

// Whether bolts of the plan hold it, and are tight.
static gboolean is_held(const Trials *trials)
{
    g_autoptr(GPtrArray) tight = trials_to_slacken(trials);
    return tight->len > 0;
}

// Tightening was begun: what was advised before it is over.
static void say_begun(const Trials *trials, const NextMove *next, const TrialNext *asked,
                      GPtrArray *sentences)
{
    gboolean early = trials_is_early(trials);
    const Requirement *failed = trials_failed_hold(trials);
    if (failed)
        say(sentences, "It is not held: %s %s, %s. Make that good, then read it.", failed->name,
            failed->place, failed->answer);
    else if (early && next->advice.kind != SETTING_TIGHTEN)
        say(sentences, "%s.", tighten_words(trials, next));
    else if (asked->ask == TRIAL_TIGHTEN || !is_held(trials))
        say(sentences, "Another move was advised; it is %s as it stands.",
            trials_has_hold(trials) ? "tightened" : "read");
    else if (next->advice.kind == SETTING_TIGHTEN)
        say_tightest(trials, next, early ? tighten_words(trials, next) : "It is tight: read it",
                     sentences);
    else
        say(sentences, "It is tight as it stands: read it.");
}

static void say_leave(const NextMove *next, GPtrArray *sentences)
{
    double chance = next->advice.as_it_is;
    if (chance >= 0.5)
        say(sentences, "Leave it: a further move is no better than this (chance %.2f).", chance);
    else
        say(sentences, "No move is likely to better it (chance %.2f that it stands as wanted).",
            chance);
}

static void say_kind(const Trials *trials, const NextMove *next, GPtrArray *sentences)
{
    switch (next->advice.kind) {
    case SETTING_MOVE:
        if (next->advice.safe_side)
            say(sentences, "On the safe side: how it answers is not known yet.");
        say_band(trials, next, sentences);
        break;
    case SETTING_MOVE_DIRECTION:
        say(sentences, "To see which way it answers: read it loose.");
        break;
    case SETTING_READ_LOOSE:
        if (next->banded)
            say_band(trials, next, sentences);
        break;
    case SETTING_TIGHTEN:
        say_tightest(trials, next, tighten_words(trials, next), sentences);
        break;
    case SETTING_READ_AGAIN:
        say(sentences, "Read all places once more as they stand: the gauge leaves it in doubt.");
        break;
    case SETTING_LEAVE:
        say_leave(next, sentences);
        break;
    case SETTING_STOP:
        say(sentences, "No further move will do: find the cause first, or have it conceded.");
        break;
    case SETTING_READ_TIGHT:
        break;
    }
}

// THE WHOLE --------------------------------------------------------------------------------------

// Why nothing is advised, once something was done.
static void say_mute(const Trials *trials, const NextMove *next, GPtrArray *sentences)
{
    const char *move = trials->check->setting->move;
    if (next->mute == NEXT_MOVE_MANY_AIMS)
        say(sentences, "No move is advised: one %s moves all places, and their limits differ.",
            move);
    else if (next->mute == NEXT_MOVE_MANY_ADJUSTERS)
        say(sentences,
            "No move is advised: a move names a place, and the plan has one %s for all; it says "
            "`each: yes` where each place has its own.",
            move);
}

char *next_move_earlier(const Trials *trials, const NextMove *next)
{
    const char *plural = next->earlier == 1 ? "" : "s";
    if (trials->labels)
        return g_strdup_printf("%u place%s set before, here or in earlier builds of the family",
                               next->earlier, plural);
    return g_strdup_printf("%u earlier build%s of the family", next->earlier, plural);
}

// Whether what is asked leaves the advice behind: it is being tightened, or is tight.
static gboolean is_begun(const Trials *trials, const NextMove *next, const TrialNext *asked)
{
    gboolean tight = asked && asked->ask == TRIAL_TIGHT;
    gboolean tightens = tight || (asked && asked->ask == TRIAL_TIGHTEN);
    return (tightens && next_move_moves(next)) ||
           (tight && next->advice.kind == SETTING_TIGHTEN && is_held(trials));
}

// What to do about readings of one place that are too far apart.
static void say_disagree(const Trials *trials, GPtrArray *sentences)
{
    const Trial *last = trials_last(trials);
    if (last && last->verdict == VERDICT_IN_DOUBT && last->reason == REASON_DISAGREE)
        say(sentences, "Two readings of one place differ by more than their doubt allows: strike "
                       "the one that was misread; if neither was, uphold.");
}

void next_move_say(const Trials *trials, const NextMove *next, const TrialNext *asked,
                   Advice *advice)
{
    const SettingAdvice *known = &next->advice;
    if (trials->all->len)
        say_mute(trials, next, advice->sentences);
    if (!next->known || !next->told)
        return;
    gboolean begun = is_begun(trials, next, asked);
    if (next_move_moves(next) && !begun) {
        advice->figure = next_move_size(trials, next);
        say_beside(trials, next, advice->beside);
    }
    for (guint i = 0; i < known->finding_count; i++)
        next_move_say_finding(trials, next, &known->findings[i], advice->sentences);
    if (begun)
        say_begun(trials, next, asked, advice->sentences);
    else
        say_kind(trials, next, advice->sentences);
    say_disagree(trials, advice->sentences);
    if (next->doubted)
        say(advice->sentences, "What was read in doubt is left out.");
    if (next->earlier && !next->tight) {
        g_autofree char *earlier = next_move_earlier(trials, next);
        say(advice->sentences, "It begins with %s.", earlier);
    }
}
