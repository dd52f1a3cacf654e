#include "setting_state.h"
#include <math.h>

static guint shift_of(const SettingState *state)
{
    return state->places;
}

static guint repeat_of(const SettingState *state)
{
    return state->places + 1;
}

static guint hand_of(const SettingState *state)
{
    return state->places + 2;
}

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

void setting_state_move(SettingState *state, double move, double hand, double lost)
{
    double own = state->absolute || move == 0 ? 0 : square(hand);
    double noise = own + square(setting_constants.curve * move) + square(lost) / 3;
    guint shift = shift_of(state);
    for (guint k = 0; k < state->count; k++) {
        SettingNode *node = &state->nodes[k];
        for (guint i = 0; i < state->places; i++)
            node->mean[i] += node->slope * move;
        add_to_levels(state, node, square(node->slope) * noise);
        node->cov[shift * state->size + shift] +=
            square(setting_constants.drift * node->slope * move);
        if (state->absolute && move != 0)
            reset(state, node, hand_of(state), square(hand));
    }
}

void setting_state_tighten(SettingState *state)
{
    guint shift = shift_of(state);
    for (guint k = 0; k < state->count; k++) {
        SettingNode *node = &state->nodes[k];
        double size = square(node->mean[shift]) + node->cov[shift * state->size + shift];
        reset(state, node, repeat_of(state),
              square(setting_constants.repeat_least) + square(setting_constants.repeat) * size);
    }
}

void setting_state_doubt(SettingState *state, SettingFindingKind kind, guint place)
{
    guint shift = shift_of(state), repeat = repeat_of(state);
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
        sum.at[sum.count] = shift_of(state);
        sum.times[sum.count++] = 1;
        sum.at[sum.count] = repeat_of(state);
        sum.times[sum.count++] = 1;
    }
    if (state->absolute) {
        sum.at[sum.count] = hand_of(state);
        sum.times[sum.count++] = node->slope;
    }
    return sum;
}

// Covariance of the sum with each component; returns its variance and sets its mean.
static double sum_with(const SettingState *state, const SettingNode *node, const Sum *sum,
                       double *with, double *mean)
{
    double variance = 0;
    *mean = 0;
    for (guint i = 0; i < state->size; i++) {
        with[i] = 0;
        for (guint j = 0; j < sum->count; j++)
            with[i] += sum->times[j] * node->cov[sum->at[j] * state->size + i];
    }
    for (guint j = 0; j < sum->count; j++) {
        variance += sum->times[j] * with[sum->at[j]];
        *mean += sum->times[j] * node->mean[sum->at[j]];
    }
    return fmax(variance, 1e-18);
}

void setting_node_value(const SettingState *state, const SettingNode *node, guint place,
                        gboolean tight, double *mean, double *variance)
{
    g_autofree double *with = g_new(double, state->size);
    Sum sum = sum_of(state, node, place, tight);
    *variance = sum_with(state, node, &sum, with, mean);
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
        double mean, variance;
        setting_node_value(state, &state->nodes[k], place, tight, &mean, &variance);
        double z = (value - mean) / sqrt(variance + own);
        below += weights[k] * setting_normal(z);
        above += weights[k] * setting_normal(-z);
        forecast.mean += weights[k] * mean;
    }
    forecast.tail = fmin(1, 2 * fmin(below, above));
    return forecast;
}

// Takes one reading at one node: C -= u uᵀ (V - V')/V², µ += u (m - f)/V.
static gboolean read_node(const SettingAdviser *adviser, SettingNode *node, guint place,
                          gboolean tight, double value, double *with)
{
    const SettingState *state = adviser->state;
    Sum sum = sum_of(state, node, place, tight);
    double mean, variance = sum_with(state, node, &sum, with, &mean);
    SettingWindow window = setting_window(state->quadrature, mean, variance, value,
                                          adviser->graduation, adviser->model.difference);
    double shift = (window.mean - mean) / variance;
    double gain = (variance - window.variance) / variance / variance;
    for (guint i = 0; i < state->size; i++) {
        node->mean[i] += with[i] * shift;
        for (guint j = 0; j < state->size; j++)
            node->cov[i * state->size + j] -= with[i] * with[j] * gain;
    }
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
        met = read_node(adviser, &state->nodes[k], place, tight, value, with) || met;
    return met;
}
