// The builder who does what the adviser says, and types nothing but readings.
#include "methods.h"
#include <math.h>

SettingModel adviser_model(const Engine *engine, const Drawing *drawing)
{
    const Job *job = engine->job;
    SettingModel model;
    setting_model_init(&model);
    model.least = 0;
    model.most = job->width;
    model.aim = job_aim(job);
    model.graduation = job->graduation;
    model.difference = job->difference;
    model.places = ENGINE_PLACES;
    model.geometry = drawing->no_geometry ? NAN : job->geometry;
    model.direction = drawing->no_direction ? 0 : engine->direction;
    model.travel_least = -engine->travel;
    model.travel_most = engine->travel;
    model.step = 1.0 / 48;
    return model;
}

typedef struct {
    Stand stand;
    SettingAdviser *adviser;
    Outcome outcome;
    double at, start;
} Builder;

static void note(Builder *builder, SettingFindingKind kind)
{
    if (kind != SETTING_NOTHING)
        builder->outcome.contradictions[kind] = 1;
}

static void read_loose(Builder *builder)
{
    double value = stand_read(&builder->stand, 0, FALSE);
    note(builder, setting_read(builder->adviser, 0, value, FALSE).kind);
}

static void read_all(Builder *builder)
{
    double values[ENGINE_PLACES];
    stand_read_all(&builder->stand, values);
    for (guint i = 0; i < ENGINE_PLACES; i++)
        note(builder, setting_read(builder->adviser, i, values[i], TRUE).kind);
}

static void tighten(Builder *builder)
{
    stand_tighten(&builder->stand);
    setting_tightened(builder->adviser);
    read_all(builder);
}

static Builder builder_at(const Engine *engine, const SettingModel *model, Random random)
{
    Builder builder = {.stand = stand_at(engine, random)};
    builder.adviser = setting_adviser_new(model);
    read_loose(&builder);
    tighten(&builder);
    builder.start = stand_least(&builder.stand);
    return builder;
}

static void move(Builder *builder, double turns)
{
    stand_turn(&builder->stand, turns);
    builder->at += turns;
    if (fabs(builder->at) > builder->stand.engine->travel + 1e-9)
        builder->outcome.outside++;
    setting_moved(builder->adviser, turns, TRUE);
    read_loose(builder);
}

// Tightens, and sees whether the interval given before holds.
static void tighten_trial(Builder *builder, SettingExpected expected)
{
    tighten(builder);
    outcome_trial(&builder->outcome, &builder->stand, builder->start);
    double least = stand_least(&builder->stand);
    builder->outcome.intervals++;
    builder->outcome.covered += least >= expected.from && least <= expected.to ? 1 : 0;
}

// Follows one advice; FALSE when there is nothing more to do.
static gboolean follow(Builder *builder)
{
    SettingAdvice advice = setting_advice(builder->adviser);
    for (guint i = 0; i < advice.finding_count; i++)
        note(builder, advice.findings[i].kind);
    switch (advice.kind) {
    case SETTING_MOVE:
    case SETTING_MOVE_DIRECTION:
        if (builder->outcome.trials == MOST_TRIALS)
            return FALSE;
        move(builder, advice.move);
        return TRUE;
    case SETTING_TIGHTEN:
        tighten_trial(builder, advice.tightest);
        return TRUE;
    case SETTING_READ_AGAIN:
        builder->outcome.twice++;
        read_all(builder);
        return TRUE;
    case SETTING_LEAVE:
        outcome_stop(&builder->outcome, &builder->stand);
        return FALSE;
    default:
        builder->outcome.trials = NEVER;
        return FALSE;
    }
}

static Builder set_engine(const Engine *engine, const SettingModel *model, Random random)
{
    Builder builder = builder_at(engine, model, random);
    while (follow(&builder))
        ;
    if (builder.outcome.trials == MOST_TRIALS &&
        setting_advice(builder.adviser).kind != SETTING_LEAVE)
        builder.outcome.trials = NEVER;
    builder.outcome.moves = builder.stand.moves;
    return builder;
}

Outcome method_adviser(const Engine *engine, const Drawing *drawing, Random random)
{
    SettingModel model = adviser_model(engine, drawing);
    Builder builder = set_engine(engine, &model, random);
    setting_adviser_free(builder.adviser);
    return builder.outcome;
}

Outcome method_adviser_family(const Engine *engine, const Drawing *drawing, Random random)
{
    Random other = random_of(random.state, 1);
    Engine sister = engine_sister(engine, drawing, &other);
    SettingModel model = adviser_model(&sister, drawing);
    Builder before = set_engine(&sister, &model, other);
    SettingLearned learned = setting_learned(before.adviser);
    setting_adviser_free(before.adviser);
    model = adviser_model(engine, drawing);
    model.earlier = &learned;
    model.earlier_count = 1;
    Builder builder = set_engine(engine, &model, random);
    setting_adviser_free(builder.adviser);
    return builder.outcome;
}
