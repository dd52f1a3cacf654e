#include "setting_state.h"
#include <math.h>

static const double slight = 1e-10; // weights below it are left out

// Variance of a value with the covariances of its own with shift, repeat and hand: the sum of it
// and what tightening adds.
typedef struct {
    const SettingState *state;
    const SettingNode *node;
    const double *with; // covariance of the value with every component
} Tight;

static double cov_of(const Tight *tight, guint one, guint other)
{
    return tight->node->cov[one * tight->state->size + other];
}

// With the hand's error at this position, seen through the slope.
static double hand_share(const Tight *tight, gboolean with_repeat)
{
    if (!tight->state->absolute)
        return 0;
    guint shift = setting_shift_at(tight->state), hand = setting_hand_at(tight->state);
    double slope = tight->node->slope;
    double common = tight->with[hand] + cov_of(tight, shift, hand) +
                    (with_repeat ? cov_of(tight, setting_repeat_at(tight->state), hand) : 0);
    return slope * slope * cov_of(tight, hand, hand) + 2 * slope * common;
}

static double shift_share(const Tight *tight)
{
    guint shift = setting_shift_at(tight->state);
    return cov_of(tight, shift, shift) + 2 * tight->with[shift];
}

static double repeat_share(const Tight *tight)
{
    guint shift = setting_shift_at(tight->state), repeat = setting_repeat_at(tight->state);
    return cov_of(tight, repeat, repeat) + 2 * tight->with[repeat] +
           2 * cov_of(tight, shift, repeat);
}

// The tightest place at one node, or the loosest.
static SettingView view_of(const SettingState *state, const SettingNode *node, double weight,
                           double *with, gboolean loosest)
{
    double sign = loosest ? -1 : 1, again = setting_repeat_variance(state, node);
    SettingSmallest end =
        setting_smallest(node->mean, node->cov, state->places, state->size, sign, with);
    Tight tight = {state, node, with};
    guint shift = setting_shift_at(state), ratio = setting_ratio_at(state);
    double loose = end.variance + shift_share(&tight), mean = sign * end.mean + node->mean[shift];
    double hand = state->absolute ? node->slope * node->mean[setting_hand_at(state)] : 0;
    return (SettingView){.weight = weight,
                         .slope = node->slope,
                         .lambda = node->lambda,
                         .now_mean = mean + node->mean[setting_repeat_at(state)] + hand,
                         .now_variance = loose + repeat_share(&tight) + hand_share(&tight, TRUE),
                         .next_mean = mean + hand,
                         .next_variance = loose + again + hand_share(&tight, FALSE),
                         .moved_mean = mean,
                         .moved_variance = loose + again,
                         .ratio = node->mean[ratio],
                         .ratio_variance = cov_of(&tight, ratio, ratio),
                         .ratio_with = with[ratio] + cov_of(&tight, shift, ratio)};
}

// The tightest place at each node with weight, or the loosest.
static SettingView *views_of(const SettingState *state, gboolean loosest, guint *count)
{
    g_autofree double *weights = setting_weights(state), *with = g_new(double, state->size);
    SettingView *views = g_new(SettingView, state->count);
    *count = 0;
    for (guint k = 0; k < state->count; k++)
        if (weights[k] > slight)
            views[(*count)++] = view_of(state, &state->nodes[k], weights[k], with, loosest);
    return views;
}

static void see_slope(SettingOutlook *outlook)
{
    double square = 0;
    for (guint i = 0; i < outlook->count; i++) {
        const SettingView *view = &outlook->views[i];
        double ln_slope = log(fabs(view->slope));
        outlook->ln_slope += view->weight * ln_slope;
        square += view->weight * ln_slope * ln_slope;
        outlook->mean += view->weight * view->moved_mean;
    }
    outlook->ln_slope_sd = sqrt(fmax(square - outlook->ln_slope * outlook->ln_slope, 0));
}

// The window of the tightest place; where the spread leaves less than half of it, as much as there
// is from the low limit.
static void see_window(SettingOutlook *outlook, double half)
{
    outlook->to = fmin(outlook->aim + half, outlook->hi - outlook->spread);
    outlook->from = fmax(outlook->lo, fmin(outlook->aim - half, outlook->to - half));
}

SettingOutlook setting_outlook(const SettingAdviser *adviser)
{
    const SettingState *state = adviser->state;
    SettingOutlook outlook = {.lo = adviser->lo, .hi = adviser->hi, .aim = adviser->aim};
    outlook.views = views_of(state, FALSE, &outlook.count);
    guint count;
    g_autofree SettingView *loosest = views_of(state, TRUE, &count);
    for (guint i = 0; i < count; i++)
        outlook.spread += loosest[i].weight * (loosest[i].now_mean - outlook.views[i].now_mean);
    outlook.hand = adviser->model.hand;
    const SettingConstants *constants = adviser->constants;
    outlook.noise = constants->curve * constants->curve + constants->drift * constants->drift;
    see_slope(&outlook);
    see_window(&outlook, adviser->half);
    return outlook;
}

void setting_outlook_clear(SettingOutlook *outlook)
{
    g_free(outlook->views);
    outlook->views = NULL;
}

static SettingPart part_of(const SettingOutlook *outlook, const SettingView *view, SettingWhen when,
                           double move)
{
    if (when == SETTING_NOW)
        return (SettingPart){view->weight, view->now_mean, view->now_variance};
    if (when == SETTING_NEXT || move == 0)
        return (SettingPart){view->weight, view->next_mean, view->next_variance};
    double path = view->slope * move;
    double own =
        view->slope * view->slope * outlook->hand * outlook->hand + outlook->noise * path * path;
    return (SettingPart){view->weight, view->moved_mean + path * (1 + view->ratio),
                         view->moved_variance + own + path * path * view->ratio_variance +
                             2 * path * view->ratio_with};
}

static void add_chance(const SettingOutlook *outlook, const SettingPart *part,
                       SettingChance *chance)
{
    double sd = sqrt(fmax(part->variance, 1e-18)), off = part->mean - outlook->aim;
    double below = setting_normal((outlook->lo - part->mean) / sd);
    double above = setting_normal((part->mean + outlook->spread - outlook->hi) / sd);
    chance->inside += part->weight * (setting_normal((outlook->to - part->mean) / sd) -
                                      setting_normal((outlook->from - part->mean) / sd));
    // The far limit lies behind the aim as one comes to it.
    chance->overrun += part->weight * (outlook->mean > outlook->aim ? below : above);
    chance->outside += part->weight * (below + above);
    chance->miss += part->weight * (2 * sd * setting_normal_density(off / sd) +
                                    off * (1 - 2 * setting_normal(-off / sd)));
}

SettingChance setting_chance(const SettingOutlook *outlook, SettingWhen when, double move)
{
    SettingChance chance = {0, 0, 0, 0};
    for (guint i = 0; i < outlook->count; i++) {
        SettingPart part = part_of(outlook, &outlook->views[i], when, move);
        add_chance(outlook, &part, &chance);
    }
    chance.inside = fmax(chance.inside, 0);
    return chance;
}

double setting_merit(const SettingAdviser *adviser, SettingChance chance)
{
    return chance.inside - adviser->constants->passing * chance.outside;
}

// How far from the middle of the window the nearest position leaves it that can be named, the slope
// of this node known. Steps no wider than the hand's error leave no gaps: it is tried again.
static double off_at_best(const SettingAdviser *adviser, const SettingView *view, double middle)
{
    const SettingModel *model = &adviser->model;
    double wanted = middle - view->moved_mean, slope = view->slope * (1 + view->ratio);
    if (!model->stock && model->step <= 2 * model->hand)
        return 0;
    double move = setting_choice_near(adviser, wanted / slope);
    return fmin(fabs(wanted), fabs(wanted - slope * move));
}

double setting_could(const SettingAdviser *adviser, const SettingOutlook *outlook)
{
    double sum = 0, half = fmax(outlook->to - outlook->from, 0) / 2;
    for (guint i = 0; i < outlook->count; i++) {
        const SettingView *view = &outlook->views[i];
        double sd = sqrt(fmax(view->next_variance, 1e-18));
        double off = off_at_best(adviser, view, (outlook->to + outlook->from) / 2);
        sum +=
            view->weight * (setting_normal((half - off) / sd) - setting_normal(-(half + off) / sd));
    }
    return sum;
}

SettingExpected setting_expect_end(const SettingAdviser *adviser, const SettingOutlook *outlook,
                                   SettingWhen when, double move, gboolean loosest)
{
    guint count = outlook->count;
    g_autofree SettingView *views = loosest ? views_of(adviser->state, TRUE, &count) : NULL;
    g_autofree SettingPart *parts = g_new(SettingPart, count);
    for (guint i = 0; i < count; i++)
        parts[i] = part_of(outlook, views ? &views[i] : &outlook->views[i], when, move);
    return setting_mixture(parts, count);
}
