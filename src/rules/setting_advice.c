#include "setting_state.h"
#include <math.h>

enum { MOST_AGAIN = 4, MOST_MOVES = 5 };

// The move the rule would have, whatever comes after it.
typedef struct {
    double move;
    gboolean for_direction, safe_side;
    SettingChoice choice;
} Plan;

static gboolean direction_known(const SettingSlopes *slopes)
{
    return slopes->rises <= 0.05 || slopes->rises >= 0.95;
}

// As far as tells the direction, to the side that has more room.
static double move_for_direction(const SettingAdviser *adviser, const SettingOutlook *outlook)
{
    double least, most;
    setting_travel(adviser, &least, &most);
    double size = fmax(0.5, 2 * adviser->graduation) / exp(outlook->ln_slope);
    return setting_choice_near(adviser, most >= -least ? size : -size);
}

// Slope hardly known: far enough to tell something of it.
static double move_to_tell(const SettingAdviser *adviser, const SettingOutlook *outlook,
                           double move)
{
    double size = fmax(adviser->graduation, 0.1) / exp(outlook->ln_slope);
    if (outlook->ln_slope_sd <= 0.5 || fabs(move) >= size || move == 0)
        return move;
    return setting_choice_near(adviser, copysign(size, move));
}

static double cap_of(const SettingAdviser *adviser)
{
    return adviser->model.loose && adviser->trials > 0 ? adviser->constants->far_cap_read
                                                       : adviser->constants->far_cap;
}

// The slope hardly known, the move ends well before the aim if it is as expected.
static gboolean stops_short(const SettingOutlook *outlook, double move)
{
    double path = exp(outlook->ln_slope) * fabs(move);
    return outlook->ln_slope_sd > 0.3 && path < 0.9 * fabs(outlook->aim - outlook->mean);
}

static Plan plan_move(const SettingAdviser *adviser, const SettingOutlook *outlook)
{
    SettingSlopes slopes = setting_slopes(adviser);
    Plan plan = {.choice = setting_choice(adviser, outlook, cap_of(adviser))};
    plan.for_direction = !direction_known(&slopes);
    plan.safe_side = stops_short(outlook, plan.choice.move) && !plan.for_direction;
    plan.move = plan.for_direction ? move_for_direction(adviser, outlook)
                                   : move_to_tell(adviser, outlook, plan.choice.move);
    if (plan.move != plan.choice.move)
        plan.choice.chance = setting_chance(outlook, SETTING_MOVED, plan.move);
    return plan;
}

// Whether moving gains as much, now or as far as moves can come to. A move that is read before it
// is tightened is not yet an overrun.
static gboolean is_worth_moving(const SettingAdviser *adviser, const SettingOutlook *outlook,
                                const Plan *plan, SettingChance as_it_is, double gain)
{
    double now = setting_merit(adviser, as_it_is);
    return plan->move != 0 &&
           (setting_merit(adviser, plan->choice.chance) - now >= gain ||
            setting_could(adviser, outlook) - as_it_is.inside >= gain || plan->for_direction);
}

// After a loose reading: move on, or tighten.
static SettingKind after_loose(const SettingAdviser *adviser, const SettingOutlook *outlook,
                               const Plan *plan, SettingChance as_it_is)
{
    if (adviser->turns > MOST_AGAIN)
        return SETTING_TIGHTEN;
    if (adviser->trials == 0 && !plan->for_direction)
        return plan->choice.chance.inside - as_it_is.inside > adviser->constants->worth_tightening
                   ? SETTING_MOVE
                   : SETTING_TIGHTEN;
    return is_worth_moving(adviser, outlook, plan, as_it_is, adviser->constants->worth_turning)
               ? SETTING_MOVE
               : SETTING_TIGHTEN;
}

// A difference of two readings is rounded anew each time, so that reading it twice tells more; one
// reading rounds as it did.
static gboolean is_worth_reading_again(const SettingAdviser *adviser, SettingChance as_it_is)
{
    return adviser->model.difference && adviser->tight_reads < 2 * adviser->model.places &&
           as_it_is.inside < adviser->constants->left_at_once;
}

static SettingKind after_tight(const SettingAdviser *adviser, const SettingOutlook *outlook,
                               const Plan *plan, SettingChance as_it_is)
{
    if (is_worth_moving(adviser, outlook, plan, as_it_is, adviser->constants->worth_again))
        return SETTING_MOVE;
    return is_worth_reading_again(adviser, as_it_is) ? SETTING_READ_AGAIN : SETTING_LEAVE;
}

gboolean setting_says_tighten(const SettingAdviser *adviser, double *chance)
{
    SettingOutlook outlook = setting_outlook(adviser);
    SettingChance as_it_is = setting_chance(&outlook, SETTING_NEXT, 0);
    *chance = as_it_is.inside;
    gboolean tighten = FALSE;
    if (*chance >= 0.5) {
        Plan plan = plan_move(adviser, &outlook);
        tighten = after_loose(adviser, &outlook, &plan, as_it_is) == SETTING_TIGHTEN;
    }
    setting_outlook_clear(&outlook);
    return tighten;
}

// What comes before any advice can be given, or SETTING_MOVE.
static SettingKind missing(const SettingAdviser *adviser)
{
    gboolean whole = adviser->read_enough || adviser->read_count == adviser->model.places;
    if (adviser->tight)
        return whole ? SETTING_MOVE : SETTING_READ_TIGHT;
    if (adviser->model.loose)
        return adviser->loose_reads == 0 ? SETTING_READ_LOOSE : SETTING_MOVE;
    return SETTING_TIGHTEN;
}

static void find(SettingAdvice *advice, SettingFindingKind kind, double was, double is)
{
    advice->findings[advice->finding_count++] = (SettingFinding){kind, 0, 0, 1, was, is};
}

// Whether the same is said again of a later reading there.
static gboolean is_said_later(const SettingAdviser *adviser, guint index)
{
    for (guint i = index + 1; i < adviser->here_count; i++)
        if (adviser->here[i].kind == adviser->here[index].kind &&
            adviser->here[i].place == adviser->here[index].place)
            return TRUE;
    return FALSE;
}

static void find_here(const SettingAdviser *adviser, SettingAdvice *advice)
{
    for (guint i = 0; i < adviser->here_count && advice->finding_count < SETTING_FINDINGS; i++)
        if (!is_said_later(adviser, i))
            advice->findings[advice->finding_count++] = adviser->here[i];
}

static void find_slopes(const SettingAdviser *adviser, SettingAdvice *advice)
{
    SettingSlopes slopes = setting_slopes(adviser);
    double wrong = adviser->model.direction * adviser->sign > 0 ? 1 - slopes.rises : slopes.rises;
    if (adviser->model.direction != 0 && wrong > adviser->constants->sure)
        find(advice, SETTING_WRONG_WAY, 0, wrong);
    if (!isnan(adviser->model.geometry) && slopes.outside > adviser->constants->sure)
        find(advice, SETTING_SLOPE_OFF, 1, exp(slopes.mean));
}

// No room between both limits for the spread and the doubt of the gauge on either side. The spread
// must have been read, and be believed, and take more than the gauge does: else it is the gauge
// that cannot, which is said where it is chosen, and not the part.
static void find_room(const SettingAdviser *adviser, const SettingOutlook *outlook,
                      SettingAdvice *advice)
{
    double doubt = adviser->graduation * (adviser->model.difference ? 2 : 1);
    double spread = fmin(outlook->spread, adviser->tight_most - adviser->tight_least);
    gboolean both = !isinf(adviser->lo) && !isinf(adviser->hi);
    if (both && adviser->trials > 0 && spread > doubt && spread + doubt > 1)
        find(advice, SETTING_CANNOT, spread * adviser->width, doubt * adviser->width);
}

static gboolean is_odd_here(const SettingAdviser *adviser, SettingFindingKind kind)
{
    for (guint i = 0; i < adviser->here_count; i++)
        if (adviser->here[i].kind == kind)
            return TRUE;
    return FALSE;
}

// The travel ends before the aim; of what slipped, or was misread, nobody knows where it stands.
static void find_end(const SettingAdviser *adviser, const SettingOutlook *outlook, const Plan *plan,
                     SettingAdvice *advice)
{
    SettingExpected there =
        setting_expect_end(adviser, outlook, SETTING_MOVED, plan->choice.move, FALSE);
    gboolean outside = there.mean < outlook->from || there.mean > outlook->to;
    if (!plan->choice.at_end || plan->choice.chance.inside >= 0.05 || !outside ||
        plan->for_direction || is_odd_here(adviser, SETTING_SLIP))
        return;
    find(advice, SETTING_OUT_OF_REACH, 0, setting_outward(adviser, there.mean));
    advice->kind = SETTING_STOP;
}

static void find_rest(const SettingAdviser *adviser, const SettingOutlook *outlook,
                      const Plan *plan, SettingAdvice *advice)
{
    find_room(adviser, outlook, advice);
    if (advice->kind == SETTING_MOVE || advice->kind == SETTING_LEAVE)
        find_end(adviser, outlook, plan, advice);
    if (advice->kind == SETTING_LEAVE && advice->could < 0.8 && adviser->graduation > 0.1)
        find(advice, SETTING_COARSE, advice->could, adviser->width / 10);
    if (advice->kind == SETTING_MOVE && adviser->moves > MOST_MOVES && adviser->tight) {
        find(advice, SETTING_TOO_MANY, 0, adviser->moves);
        advice->kind = SETTING_STOP;
    }
}

static void tell_move(const SettingAdviser *adviser, const Plan *plan, SettingAdvice *advice)
{
    advice->move = plan->move;
    advice->to += plan->move;
    if (adviser->model.step > 0)
        advice->steps = lround(plan->move / adviser->model.step);
    advice->safe_side = plan->safe_side;
    advice->leads_loose = adviser->model.loose;
    advice->chance = plan->choice.chance.inside;
    advice->overrun = plan->choice.chance.overrun;
    if (plan->for_direction)
        advice->kind = SETTING_MOVE_DIRECTION;
}

static void tell_expected(const SettingAdviser *adviser, const SettingOutlook *outlook,
                          SettingWhen when, SettingAdvice *advice)
{
    advice->spread = outlook->spread * adviser->width;
    SettingExpected least =
        setting_expect_end(adviser, outlook, when, advice->move, adviser->sign < 0);
    SettingExpected most =
        setting_expect_end(adviser, outlook, when, advice->move, adviser->sign > 0);
    gboolean closes = adviser->model.closes;
    advice->tightest = setting_expected_outward(adviser, closes ? most : least);
    advice->loosest = setting_expected_outward(adviser, closes ? least : most);
}

SettingAdvice setting_advice(const SettingAdviser *adviser)
{
    SettingAdvice advice = {.kind = missing(adviser), .to = adviser->position};
    find_here(adviser, &advice);
    if (!adviser->started)
        return advice;
    find_slopes(adviser, &advice);
    SettingOutlook outlook = setting_outlook(adviser);
    SettingWhen when = adviser->tight ? SETTING_NOW : SETTING_NEXT;
    SettingChance as_it_is = setting_chance(&outlook, when, 0);
    advice.chance = advice.as_it_is = as_it_is.inside;
    advice.overrun = as_it_is.overrun;
    advice.could = setting_could(adviser, &outlook);
    if (advice.kind == SETTING_MOVE) {
        Plan plan = plan_move(adviser, &outlook);
        advice.kind = adviser->tight ? after_tight(adviser, &outlook, &plan, as_it_is)
                                     : after_loose(adviser, &outlook, &plan, as_it_is);
        find_rest(adviser, &outlook, &plan, &advice);
        if (advice.kind == SETTING_MOVE)
            tell_move(adviser, &plan, &advice);
    }
    tell_expected(adviser, &outlook, advice.move != 0 ? SETTING_MOVED : when, &advice);
    setting_outlook_clear(&outlook);
    return advice;
}
