#include "setting_state.h"
#include <math.h>
#include <string.h>

void setting_model_init(SettingModel *model)
{
    *model = (SettingModel){.least = NAN,
                            .most = NAN,
                            .aim = NAN,
                            .places = 1,
                            .geometry = NAN,
                            .geometry_within = 2,
                            .direction_doubt = 0.01,
                            .travel_least = NAN,
                            .travel_most = NAN,
                            .hand = 1.0 / 48,
                            .loose = TRUE,
                            .floor = NAN};
}

// T: between both limits, or twice from the only one to the aim; NAN without either.
static double width_of(const SettingModel *model)
{
    if (!isnan(model->least) && !isnan(model->most))
        return model->most - model->least;
    return 2 * fabs(model->aim - (isnan(model->least) ? model->most : model->least));
}

static void see_limits(SettingAdviser *adviser)
{
    const SettingModel *model = &adviser->model;
    double least = model->least / adviser->width, most = model->most / adviser->width;
    double lo = model->closes ? -most : least, hi = model->closes ? -least : most;
    adviser->lo = isnan(lo) ? -INFINITY : lo;
    adviser->hi = isnan(hi) ? INFINITY : hi;
    adviser->aim = adviser->sign * model->aim / adviser->width;
    adviser->half = 0.25;
    adviser->graduation = fmax(model->graduation / adviser->width, 1e-6);
}

// T per unit moved. Not known: T over a quarter of the travel, or over twelve times what the hand
// can do (a quarter turn for 1/48), or over a unit.
static double geometry_of(const SettingAdviser *adviser)
{
    const SettingModel *model = &adviser->model;
    if (!isnan(model->geometry))
        return fabs(model->geometry) / adviser->width;
    double travel = model->travel_most - model->travel_least;
    if (!isnan(travel) && travel > 0)
        return 4 / travel;
    return model->hand > 0 ? 1 / (12 * model->hand) : 1;
}

static void keep_arrays(SettingModel *model)
{
    model->stock = g_memdup2(model->stock, model->stock_count * sizeof *model->stock);
    model->earlier = g_memdup2(model->earlier, model->earlier_count * sizeof *model->earlier);
}

static gboolean is_exact(const SettingModel *model)
{
    return !isnan(model->geometry) && model->geometry_within <= 1;
}

// Where the geometry is exact a move answers by it, hardly curved, tight as loose.
static SettingConstants own_constants(const SettingModel *model, const SettingConstants *constants)
{
    SettingConstants own = *constants;
    if (is_exact(model))
        own.geometry_edge = own.geometry_flat = own.curve = own.ratio = own.drift = own.exact;
    return own;
}

SettingAdviser *setting_adviser_new_by(const SettingModel *model, const SettingConstants *constants)
{
    double width = width_of(model);
    if (!(width > 0) || isnan(model->aim) || !(model->graduation > 0) || model->places < 1 ||
        model->geometry == 0)
        return NULL;
    SettingAdviser *adviser = g_new0(SettingAdviser, 1);
    adviser->own = own_constants(model, constants);
    adviser->constants = &adviser->own;
    adviser->model = *model;
    if (is_exact(model)) // and it hardly answers the other way
        adviser->model.direction_doubt /= 10;
    keep_arrays(&adviser->model);
    adviser->width = width;
    adviser->sign = model->closes ? -1 : 1;
    see_limits(adviser);
    adviser->geometry = geometry_of(adviser);
    adviser->position = model->start;
    adviser->read = g_new0(gboolean, model->places);
    adviser->state = setting_state_new(adviser);
    return adviser;
}

SettingAdviser *setting_adviser_new(const SettingModel *model)
{
    return setting_adviser_new_by(model, &setting_constants);
}

void setting_adviser_free(SettingAdviser *adviser)
{
    if (!adviser)
        return;
    setting_state_free(adviser->state);
    g_free((double *)adviser->model.stock);
    g_free((SettingLearned *)adviser->model.earlier);
    g_free(adviser->read);
    g_free(adviser);
}

double setting_outward(const SettingAdviser *adviser, double inside)
{
    return adviser->sign * inside * adviser->width;
}

static double inward(const SettingAdviser *adviser, double value)
{
    return adviser->sign * value / adviser->width;
}

static SettingExpected above_floor(const SettingAdviser *adviser, SettingExpected expected)
{
    double floor = adviser->model.floor;
    if (isnan(floor))
        return expected;
    return (SettingExpected){fmax(expected.mean, floor), fmax(expected.from, floor),
                             fmax(expected.to, floor)};
}

SettingExpected setting_expected_outward(const SettingAdviser *adviser, SettingExpected inside)
{
    double one = setting_outward(adviser, inside.from), other = setting_outward(adviser, inside.to);
    SettingExpected out = {setting_outward(adviser, inside.mean), fmin(one, other),
                           fmax(one, other)};
    return above_floor(adviser, out);
}

SettingExpected setting_as_read(const SettingAdviser *adviser, SettingExpected expected)
{
    double g = adviser->model.graduation, wider = adviser->model.difference ? g / 2 : 0;
    return above_floor(adviser, (SettingExpected){g * round(expected.mean / g),
                                                  g * round((expected.from - wider) / g),
                                                  g * round((expected.to + wider) / g)});
}

static void move_state(SettingAdviser *adviser, double move, gboolean same_side)
{
    setting_state_move(adviser->state, move, adviser->model.hand,
                       same_side ? 0 : adviser->model.lost);
    if (adviser->turns == 0)
        adviser->moves++;
    adviser->turns++;
}

void setting_moved(SettingAdviser *adviser, double move, gboolean same_side)
{
    adviser->events++;
    adviser->position += move;
    if (adviser->started) // before, there is nothing that a move could have changed
        move_state(adviser, move, same_side);
    adviser->loose_reads = 0;
    adviser->tight = adviser->loose_odd = FALSE;
    adviser->here_count = 0;
}

void setting_moved_to(SettingAdviser *adviser, double position, gboolean same_side)
{
    setting_moved(adviser, position - adviser->position, same_side);
    adviser->position = position;
}

void setting_tightened(SettingAdviser *adviser)
{
    adviser->events++;
    setting_state_tighten(adviser->state);
    adviser->tight = TRUE;
    adviser->turns = 0;
    adviser->read_count = adviser->tight_reads = 0;
    adviser->tight_least = INFINITY;
    adviser->tight_most = -INFINITY;
    adviser->read_enough = FALSE;
    memset(adviser->read, 0, adviser->model.places * sizeof *adviser->read);
}

void setting_read_enough(SettingAdviser *adviser)
{
    adviser->read_enough = TRUE;
}

// What a reading so unlikely says; loose, or tightened before any other was: a slip.
static SettingFindingKind contradiction_of(const SettingAdviser *adviser, gboolean tight)
{
    if (!tight || adviser->trials == 0)
        return SETTING_SLIP;
    if (adviser->read_count > 0)
        return adviser->trials > 1 ? SETTING_PLACE : SETTING_SLIP;
    gboolean in_order = adviser->loose_reads > 0 && !adviser->loose_odd;
    return in_order ? SETTING_SHIFT : SETTING_SLIP;
}

// The shift expected, and the one seen when `value` is read tightened at a place.
static void see_shift(const SettingAdviser *adviser, guint place, double value, double *was,
                      double *is)
{
    const SettingState *state = adviser->state;
    g_autofree double *weights = setting_weights(state);
    double loose = 0;
    *was = 0;
    for (guint k = 0; k < state->count; k++) {
        loose += weights[k] * setting_node_value(state, &state->nodes[k], place, FALSE).mean;
        *was += weights[k] * state->nodes[k].mean[state->places];
    }
    *is = value - loose;
}

static SettingFinding judge_reading(const SettingAdviser *adviser, guint place, double value,
                                    gboolean tight)
{
    SettingForecast forecast = setting_state_forecast(adviser, place, tight, value);
    SettingFinding finding = {SETTING_NOTHING,
                              adviser->events,
                              place,
                              forecast.tail,
                              setting_outward(adviser, forecast.mean),
                              setting_outward(adviser, value)};
    if (!adviser->started)
        finding.tail = 1;
    gboolean within_first = tight && adviser->trials == 1 && adviser->read_count > 0;
    if (finding.tail >= adviser->constants->contradiction || within_first)
        return finding;
    finding.kind = contradiction_of(adviser, tight);
    if (finding.kind == SETTING_SHIFT) {
        see_shift(adviser, place, value, &finding.was, &finding.is);
        finding.was = setting_outward(adviser, finding.was);
        finding.is = setting_outward(adviser, finding.is);
    }
    return finding;
}

static void note_reading(SettingAdviser *adviser, const SettingFinding *finding, double value,
                         gboolean tight)
{
    if (finding->kind != SETTING_NOTHING && adviser->here_count < SETTING_HERE)
        adviser->here[adviser->here_count++] = *finding;
    if (!tight) {
        adviser->loose_reads++;
        adviser->loose_odd = finding->kind != SETTING_NOTHING;
        return;
    }
    adviser->tight_reads++;
    adviser->tight_least = fmin(adviser->tight_least, value);
    adviser->tight_most = fmax(adviser->tight_most, value);
    if (!adviser->read[finding->place]) {
        adviser->read[finding->place] = TRUE;
        adviser->trials += adviser->read_count == 0 ? 1 : 0;
        adviser->read_count++;
    }
}

SettingFinding setting_read(SettingAdviser *adviser, guint place, double value, gboolean tight)
{
    g_assert(place < adviser->model.places);
    adviser->events++;
    value = inward(adviser, value);
    if (!adviser->started)
        setting_state_start(adviser, value);
    SettingFinding finding = judge_reading(adviser, place, value, tight);
    adviser->started = TRUE;
    if (finding.kind != SETTING_NOTHING) {
        setting_state_doubt(adviser->state, finding.kind, place);
        setting_smooth(adviser->state);
    }
    // In the window of no slope at all: a contradiction, however wide the tail.
    if (!setting_state_read(adviser, place, tight, value) && finding.kind == SETTING_NOTHING &&
        finding.tail < 1)
        finding.kind = contradiction_of(adviser, tight);
    note_reading(adviser, &finding, value, tight);
    return finding;
}

SettingExpected setting_expected(const SettingAdviser *adviser, guint place)
{
    const SettingState *state = adviser->state;
    g_autofree double *weights = setting_weights(state);
    g_autofree SettingPart *parts = g_new(SettingPart, state->count);
    for (guint k = 0; k < state->count; k++) {
        parts[k] = setting_node_value(state, &state->nodes[k], place, TRUE);
        parts[k].weight = weights[k];
    }
    return setting_expected_outward(adviser, setting_mixture(parts, state->count));
}

SettingLearned setting_learned(const SettingAdviser *adviser)
{
    const SettingState *state = adviser->state;
    SettingSlopes slopes = setting_slopes(adviser);
    g_autofree double *weights = setting_weights(state);
    double mean = 0, square = 0;
    guint at = state->places;
    for (guint k = 0; k < state->count; k++) {
        const SettingNode *node = &state->nodes[k];
        mean += weights[k] * node->mean[at];
        square += weights[k] * (node->mean[at] * node->mean[at] + node->cov[at * state->size + at]);
    }
    return (SettingLearned){slopes.mean + log(adviser->geometry * adviser->width), slopes.sd,
                            setting_outward(adviser, mean),
                            adviser->width * sqrt(fmax(square - mean * mean, 0)),
                            adviser->sign > 0 ? slopes.rises : 1 - slopes.rises};
}
