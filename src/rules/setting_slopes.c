#include "setting_state.h"
#include <math.h>
#include <string.h>

enum { NODES = 49, NODES_BLIND = 81 };
static const double reach = 1.2, reach_blind = 2;

static gboolean is_blind(const SettingAdviser *adviser)
{
    return isnan(adviser->model.geometry);
}

static void state_allocate(SettingState *state)
{
    gsize each = (gsize)state->size * (state->size + 1);
    state->numbers = g_new0(double, each * state->count);
    state->nodes = g_new0(SettingNode, state->count);
    for (guint i = 0; i < state->count; i++) {
        state->nodes[i].mean = state->numbers + each * i;
        state->nodes[i].cov = state->nodes[i].mean + state->size;
    }
    state->quadrature = setting_quadrature_new();
}

SettingState *setting_state_copy(const SettingState *state)
{
    SettingState *copy = g_new(SettingState, 1);
    *copy = *state;
    state_allocate(copy);
    memcpy(copy->numbers, state->numbers,
           (gsize)state->size * (state->size + 1) * state->count * sizeof *state->numbers);
    for (guint i = 0; i < state->count; i++) {
        copy->nodes[i].lambda = state->nodes[i].lambda;
        copy->nodes[i].slope = state->nodes[i].slope;
        copy->nodes[i].ln_weight = state->nodes[i].ln_weight;
    }
    return copy;
}

void setting_state_free(SettingState *state)
{
    if (!state)
        return;
    setting_quadrature_free(state->quadrature);
    g_free(state->numbers);
    g_free(state->nodes);
    g_free(state);
}

// Flat to the factor the geometry is good to, falling off beyond it.
static double geometry_density(double lambda, double flat_to, double edge)
{
    double beyond = fmax(0, fabs(lambda) - flat_to) / edge;
    return exp(-0.5 * beyond * beyond);
}

static void normalise(double *weights, guint count)
{
    double sum = 0;
    for (guint i = 0; i < count; i++)
        sum += weights[i];
    for (guint i = 0; i < count; i++)
        weights[i] /= sum;
}

// The precision-weighted mean of earlier builds, each blurred by what engines of a family differ,
// and the variance of one more. FALSE without any.
static gboolean family_of(const double *values, const double *sds, gsize count, double between,
                          double *mean, double *variance)
{
    double precision = 0, sum = 0;
    for (gsize i = 0; i < count; i++) {
        double each = 1 / (sds[i] * sds[i] + between * between);
        precision += each;
        sum += each * values[i];
    }
    *mean = count ? sum / precision : 0;
    *variance = count ? 1 / precision + between * between : 0;
    return count > 0;
}

static gboolean family_slope(const SettingAdviser *adviser, double *mean, double *variance)
{
    gsize count = adviser->model.earlier_count;
    g_autofree double *values = g_new(double, count + 1), *sds = g_new(double, count + 1);
    for (gsize i = 0; i < count; i++) {
        const SettingLearned *earlier = &adviser->model.earlier[i];
        values[i] = earlier->ln_slope - log(adviser->geometry * adviser->width);
        sds[i] = earlier->ln_slope_sd;
    }
    return family_of(values, sds, count, adviser->constants->family_slope, mean, variance);
}

static gboolean family_shift(const SettingAdviser *adviser, double *mean, double *variance)
{
    gsize count = adviser->model.earlier_count;
    g_autofree double *values = g_new(double, count + 1), *sds = g_new(double, count + 1);
    for (gsize i = 0; i < count; i++) {
        const SettingLearned *earlier = &adviser->model.earlier[i];
        values[i] = adviser->sign * earlier->shift / adviser->width;
        sds[i] = earlier->shift_sd / adviser->width;
    }
    return family_of(values, sds, count, adviser->constants->family_shift, mean, variance);
}

// Weights of the nodes of one sign.
static void slope_prior(const SettingAdviser *adviser, const double *lambdas, double *weights,
                        guint count)
{
    double flat_to = is_blind(adviser) ? adviser->constants->blind_reach
                                       : log(fmax(adviser->model.geometry_within, 1));
    double flat = adviser->constants->geometry_flat;
    for (guint i = 0; i < count; i++)
        weights[i] = geometry_density(lambdas[i], flat_to, adviser->constants->geometry_edge);
    normalise(weights, count);
    for (guint i = 0; i < count; i++)
        weights[i] = (1 - flat) * weights[i] + flat / count;
    double mean, variance;
    if (!family_slope(adviser, &mean, &variance))
        return;
    g_autofree double *family = g_new(double, count);
    for (guint i = 0; i < count; i++)
        family[i] = exp(-0.5 * (lambdas[i] - mean) * (lambdas[i] - mean) / variance);
    normalise(family, count);
    for (guint i = 0; i < count; i++)
        weights[i] = adviser->constants->family_weight * family[i] +
                     (1 - adviser->constants->family_weight) * weights[i];
}

// Chance that the reading, inside, rises with the move.
static double rising_prior(const SettingAdviser *adviser)
{
    const SettingModel *model = &adviser->model;
    double rises = 0.5, wrong = model->direction ? model->direction_doubt : 0.01;
    for (gsize i = 0; i < model->earlier_count; i++)
        rises += (model->earlier[i].rises - 0.5) / (double)model->earlier_count;
    if (model->direction)
        rises = model->direction > 0 ? 1 : 0;
    rises = CLAMP(rises, wrong, 1 - wrong);
    return adviser->sign > 0 ? rises : 1 - rises;
}

SettingState *setting_state_new(const SettingAdviser *adviser)
{
    guint half = is_blind(adviser) ? NODES_BLIND : NODES;
    double ends = is_blind(adviser) ? reach_blind : reach;
    g_autofree double *lambdas = g_new(double, half), *weights = g_new(double, half);
    for (guint i = 0; i < half; i++)
        lambdas[i] = ends * (2.0 * i / (half - 1) - 1);
    slope_prior(adviser, lambdas, weights, half);
    SettingState *state = g_new0(SettingState, 1);
    state->places = adviser->model.places;
    state->absolute = adviser->model.absolute;
    state->constants = adviser->constants;
    state->size = state->places + 3 + (state->absolute ? 1 : 0);
    state->count = 2 * half;
    state_allocate(state);
    double rising = rising_prior(adviser);
    for (guint i = 0; i < state->count; i++) {
        SettingNode *node = &state->nodes[i];
        node->lambda = lambdas[i % half];
        node->slope = (i < half ? 1 : -1) * adviser->geometry * exp(node->lambda);
        node->ln_weight = log(weights[i % half] * (i < half ? rising : 1 - rising));
    }
    return state;
}

static void shift_prior(const SettingAdviser *adviser, double *mean, double *variance)
{
    if (family_shift(adviser, mean, variance))
        return;
    int sign = adviser->model.shift_sign;
    double sd = sign ? adviser->constants->shift_signed : adviser->constants->shift;
    *mean = 0.5 * sign * adviser->sign;
    *variance = sd * sd;
}

static void set_variance(const SettingState *state, SettingNode *node, guint at, double variance)
{
    node->cov[at * state->size + at] = variance;
}

void setting_state_start(SettingAdviser *adviser, double value)
{
    SettingState *state = adviser->state;
    const SettingConstants *constants = adviser->constants;
    double level = constants->level * constants->level, own = constants->own * constants->own;
    double shift, variance, hand = adviser->model.hand;
    shift_prior(adviser, &shift, &variance);
    for (guint i = 0; i < state->count; i++) {
        SettingNode *node = &state->nodes[i];
        for (guint p = 0; p < state->places; p++) {
            node->mean[p] += value;
            for (guint r = 0; r < state->places; r++)
                node->cov[p * state->size + r] += level + (p == r ? own : 0);
        }
        node->mean[setting_shift_at(state)] = shift;
        set_variance(state, node, setting_shift_at(state), variance);
        set_variance(state, node, setting_ratio_at(state), constants->ratio * constants->ratio);
        if (state->absolute)
            set_variance(state, node, setting_hand_at(state), hand * hand);
    }
}

double *setting_weights(const SettingState *state)
{
    double *weights = g_new(double, state->count), most = -INFINITY;
    for (guint i = 0; i < state->count; i++)
        most = fmax(most, state->nodes[i].ln_weight);
    for (guint i = 0; i < state->count; i++)
        weights[i] =
            setting_is_given_up(&state->nodes[i]) ? 0 : exp(state->nodes[i].ln_weight - most);
    normalise(weights, state->count);
    return weights;
}

gboolean setting_is_given_up(const SettingNode *node)
{
    return isinf(node->ln_weight);
}

void setting_give_up(SettingState *state)
{
    double most = -INFINITY;
    for (guint i = 0; i < state->count; i++)
        most = fmax(most, state->nodes[i].ln_weight);
    for (guint i = 0; i < state->count; i++)
        if (state->nodes[i].ln_weight < most - 60)
            state->nodes[i].ln_weight = -INFINITY;
}

// What was read tells nearly the same at the next slope that was followed.
static void take_up(const SettingState *state, SettingNode *nodes, guint half, guint at)
{
    guint nearest = half;
    for (guint i = 0; i < half; i++)
        if (!setting_is_given_up(&nodes[i]) &&
            (nearest == half || ABS((int)i - (int)at) < ABS((int)nearest - (int)at)))
            nearest = i;
    if (nearest == half || nearest == at)
        return;
    memcpy(nodes[at].mean, nodes[nearest].mean,
           (gsize)state->size * (state->size + 1) * sizeof *nodes->mean);
}

// The `half` nodes of one sign.
static void smooth_half(const SettingState *state, SettingNode *nodes, const double *weights,
                        guint half)
{
    for (guint i = 0; i < half; i++)
        take_up(state, nodes, half, i);
    for (guint i = 0; i < half; i++) {
        double sum = 0;
        for (guint j = 0; j < half; j++) {
            double z = (nodes[i].lambda - nodes[j].lambda) / state->constants->smoothing;
            sum += weights[j] * exp(-0.5 * z * z);
        }
        nodes[i].ln_weight = log(sum);
    }
}

void setting_smooth(SettingState *state)
{
    g_autofree double *weights = setting_weights(state);
    guint half = state->count / 2;
    smooth_half(state, state->nodes, weights, half);
    smooth_half(state, state->nodes + half, weights + half, half);
    setting_give_up(state);
}

SettingSlopes setting_slopes(const SettingAdviser *adviser)
{
    const SettingState *state = adviser->state;
    g_autofree double *weights = setting_weights(state);
    double edge = log(fmax(adviser->model.geometry_within, 1)) + adviser->constants->slope_off;
    SettingSlopes slopes = {0, 0, 0, 0};
    double square = 0;
    for (guint i = 0; i < state->count; i++) {
        double lambda = state->nodes[i].lambda;
        slopes.mean += weights[i] * lambda;
        square += weights[i] * lambda * lambda;
        slopes.rises += state->nodes[i].slope > 0 ? weights[i] : 0;
        slopes.outside += fabs(lambda) > edge ? weights[i] : 0;
    }
    slopes.sd = sqrt(fmax(square - slopes.mean * slopes.mean, 0));
    return slopes;
}
