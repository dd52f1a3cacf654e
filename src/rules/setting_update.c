#include "setting_state.h"
#include <math.h>
#include <string.h>

static const double slight = 1e-12; // weights below it tell nothing of a reading

static double square(double x)
{
    return x * x;
}

// Forgets one component: nought, and with nothing in common with the others.
static void reset(const SettingState *state, SettingNode *node, guint at, double variance)
{
    for (guint i = 0; i < state->size; i++)
        node->cov[at * state->size + i] = node->cov[i * state->size + at] = 0;
    node->mean[at] = 0;
    node->cov[at * state->size + at] = variance;
}

static void add_to_levels(const SettingState *state, SettingNode *node, double variance)
{
    for (guint i = 0; i < state->places; i++)
        for (guint j = 0; j < state->places; j++)
            node->cov[i * state->size + j] += variance;
}

// Over a path the shift grows by the share that tight answers more than loose.
static void grow_shift(const SettingState *state, SettingNode *node, double path)
{
    guint shift = setting_shift_at(state), ratio = setting_ratio_at(state), size = state->size;
    node->mean[shift] += path * node->mean[ratio];
    for (guint i = 0; i < size; i++)
        node->cov[shift * size + i] += path * node->cov[ratio * size + i];
    for (guint i = 0; i < size; i++)
        node->cov[i * size + shift] += path * node->cov[i * size + ratio];
    node->cov[shift * size + shift] += square(state->constants->drift * path);
}

void setting_state_move(SettingState *state, double move, double hand, double lost)
{
    double own = state->absolute || move == 0 ? 0 : square(hand);
    double noise = own + square(state->constants->curve * move) + square(lost) / 3;
    for (guint k = 0; k < state->count; k++) {
        SettingNode *node = &state->nodes[k];
        double path = node->slope * move;
        for (guint i = 0; i < state->places; i++)
            node->mean[i] += path;
        add_to_levels(state, node, square(node->slope) * noise);
        grow_shift(state, node, path);
        if (state->absolute && move != 0)
            reset(state, node, setting_hand_at(state), square(hand));
    }
}

double setting_repeat_variance(const SettingState *state, const SettingNode *node)
{
    guint shift = setting_shift_at(state);
    double size = square(node->mean[shift]) + node->cov[shift * state->size + shift];
    return square(state->constants->repeat_least) + square(state->constants->repeat) * size;
}

void setting_state_tighten(SettingState *state)
{
    for (guint k = 0; k < state->count; k++)
        reset(state, &state->nodes[k], setting_repeat_at(state),
              setting_repeat_variance(state, &state->nodes[k]));
}

void setting_state_doubt(SettingState *state, SettingFindingKind kind, guint place)
{
    guint shift = setting_shift_at(state), repeat = setting_repeat_at(state);
    for (guint k = 0; k < state->count; k++) {
        SettingNode *node = &state->nodes[k];
        if (kind == SETTING_SLIP)
            add_to_levels(state, node, 1);
        if (kind == SETTING_PLACE)
            node->cov[place * state->size + place] += 1;
        if (kind == SETTING_SHIFT) {
            node->cov[shift * state->size + shift] += 1;
            node->cov[repeat * state->size + repeat] += 1;
        }
    }
}

// What a reading is the sum of: components, each times a factor.
typedef struct {
    guint count, at[4];
    double times[4];
} Sum;

static Sum sum_of(const SettingState *state, const SettingNode *node, guint place, gboolean tight)
{
    Sum sum = {1, {place}, {1}};
    if (tight) {
        sum.at[sum.count] = setting_shift_at(state);
        sum.times[sum.count++] = 1;
        sum.at[sum.count] = setting_repeat_at(state);
        sum.times[sum.count++] = 1;
    }
    if (state->absolute) {
        sum.at[sum.count] = setting_hand_at(state);
        sum.times[sum.count++] = node->slope;
    }
    return sum;
}

// Covariance of the sum with each component; returns its variance and sets its mean.
static double sum_with(const SettingState *state, const SettingNode *node, const Sum *sum,
                       double *restrict with, double *mean)
{
    double variance = 0;
    *mean = 0;
    memset(with, 0, state->size * sizeof *with);
    for (guint j = 0; j < sum->count; j++) {
        const double *row = node->cov + (gsize)sum->at[j] * state->size;
        for (guint i = 0; i < state->size; i++)
            with[i] += sum->times[j] * row[i];
    }
    for (guint j = 0; j < sum->count; j++) {
        variance += sum->times[j] * with[sum->at[j]];
        *mean += sum->times[j] * node->mean[sum->at[j]];
    }
    return fmax(variance, 1e-18);
}

SettingPart setting_node_value(const SettingState *state, const SettingNode *node, guint place,
                               gboolean tight)
{
    Sum sum = sum_of(state, node, place, tight);
    SettingPart part = {1, 0, 0};
    for (guint i = 0; i < sum.count; i++) {
        part.mean += sum.times[i] * node->mean[sum.at[i]];
        for (guint j = 0; j < sum.count; j++)
            part.variance +=
                sum.times[i] * sum.times[j] * node->cov[sum.at[i] * state->size + sum.at[j]];
    }
    part.variance = fmax(part.variance, 1e-18);
    return part;
}

SettingForecast setting_state_forecast(const SettingAdviser *adviser, guint place, gboolean tight,
                                       double value)
{
    const SettingState *state = adviser->state;
    g_autofree double *weights = setting_weights(state);
    double own = setting_window_variance(adviser->graduation, adviser->model.difference);
    double below = 0, above = 0;
    SettingForecast forecast = {0, 0};
    for (guint k = 0; k < state->count; k++) {
        if (weights[k] < slight)
            continue;
        SettingPart part = setting_node_value(state, &state->nodes[k], place, tight);
        double z = (value - part.mean) / sqrt(part.variance + own);
        below += weights[k] * setting_normal(z);
        above += weights[k] * setting_normal(-z);
        forecast.mean += weights[k] * part.mean;
    }
    forecast.tail = fmin(1, 2 * fmin(below, above));
    return forecast;
}

// C -= u uᵀ gain.
static void take_from(double *restrict cov, const double *restrict with, guint size, double gain)
{
    for (guint i = 0; i < size; i++) {
        double share = with[i] * gain;
        double *row = cov + (gsize)i * size;
        for (guint j = 0; j < size; j++)
            row[j] -= share * with[j];
    }
}

// Takes one reading at one node: µ += u (m - f)/V, C -= u uᵀ (V - V')/V².
static gboolean read_node(const SettingAdviser *adviser, SettingNode *node, guint place,
                          gboolean tight, double value, double *with)
{
    const SettingState *state = adviser->state;
    Sum sum = sum_of(state, node, place, tight);
    double mean, variance = sum_with(state, node, &sum, with, &mean);
    SettingWindow window = setting_window(&state->quadrature, mean, variance, value,
                                          adviser->graduation, adviser->model.difference);
    double shift = (window.mean - mean) / variance;
    for (guint i = 0; i < state->size; i++)
        node->mean[i] += with[i] * shift;
    take_from(node->cov, with, state->size, (variance - window.variance) / variance / variance);
    node->ln_weight += window.ln_weight;
    return !window.missed;
}

gboolean setting_state_read(const SettingAdviser *adviser, guint place, gboolean tight,
                            double value)
{
    SettingState *state = adviser->state;
    g_autofree double *with = g_new(double, state->size);
    gboolean met = FALSE;
    for (guint k = 0; k < state->count; k++)
        if (!setting_is_given_up(&state->nodes[k]))
            met = read_node(adviser, &state->nodes[k], place, tight, value, with) || met;
    setting_give_up(state);
    return met;
}
