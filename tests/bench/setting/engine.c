#include "engine.h"
#include <math.h>

const Drawing engine_usual = {.name = "as the model has it",
                              .slope_factor = 2,
                              .curve = 0.10,
                              .repeat = 0.05,
                              .ratio_sd = 0.03,
                              .spread = 0.4,
                              .hand = 1.0 / 48};

static const double family_slope = 0.05, family_shift = 0.10;

static uint64_t next_bits(Random *random)
{
    uint64_t z = random->state += 0x9e3779b97f4a7c15U;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9U;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebU;
    return z ^ (z >> 31);
}

Random random_of(uint64_t seed, uint64_t number)
{
    Random random = {seed};
    random.state = next_bits(&random) ^ (number * 0xd1342543de82ef95U);
    next_bits(&random);
    return random;
}

double random_uniform(Random *random, double from, double to)
{
    return from + (to - from) * ((double)(next_bits(random) >> 11) * 0x1p-53);
}

// Box and Muller (1958).
double random_normal(Random *random)
{
    double length = sqrt(-2 * log(1 - random_uniform(random, 0, 1)));
    return length * cos(6.28318530717958647693 * random_uniform(random, 0, 1));
}

double job_aim(const Job *job)
{
    return 0.30 * job->width;
}

double job_band(const Job *job)
{
    return job->width / 4;
}

// Places that lie anyhow within a spread.
static void draw_places(Engine *engine, double spread, Random *random)
{
    double least = INFINITY, most = -INFINITY;
    for (int i = 0; i < ENGINE_PLACES; i++) {
        engine->places[i] = random_uniform(random, 0, 1);
        least = fmin(least, engine->places[i]);
        most = fmax(most, engine->places[i]);
    }
    for (int i = 0; i < ENGINE_PLACES; i++)
        engine->places[i] = (engine->places[i] - least) / (most - least) * spread;
}

static double draw_slope(const Job *job, const Drawing *drawing, Random *random)
{
    double reach = log(drawing->slope_factor);
    double ln_slope = random_uniform(random, -reach, reach);
    if (drawing->slope_off)
        ln_slope = copysign(reach, ln_slope);
    return job->geometry * exp(ln_slope);
}

Engine engine_draw(const Job *job, const Drawing *drawing, Random *random)
{
    double width = job->width;
    Engine engine = {.job = job, .hand = drawing->hand, .lost = drawing->lost};
    engine.repeat = drawing->repeat;
    engine.direction = random_uniform(random, 0, 1) < 0.5 ? 1 : -1;
    engine.slope = engine.direction * draw_slope(job, drawing, random);
    if (drawing->backward)
        engine.direction = -engine.direction;
    engine.curve = random_uniform(random, -drawing->curve, drawing->curve);
    engine.shift = random_uniform(random, -width, width);
    engine.ratio = 1 + drawing->ratio + drawing->ratio_sd * random_normal(random);
    draw_places(&engine, width * random_uniform(random, 0, drawing->spread), random);
    double off = random_uniform(random, 0.3, 3) * width;
    double start = job_aim(job) + (random_uniform(random, 0, 1) < 0.5 ? off : -off);
    engine.level = start - engine.shift;
    engine.travel = 3.5 * drawing->slope_factor * width / job->geometry;
    return engine;
}

Engine engine_sister(const Engine *engine, const Drawing *drawing, Random *random)
{
    Engine sister = engine_draw(engine->job, drawing, random);
    double apart = sqrt(2), start = sister.level + sister.shift;
    sister.direction = engine->direction;
    sister.slope = engine->slope * exp(apart * family_slope * random_normal(random));
    sister.shift =
        engine->shift + apart * family_shift * engine->job->width * random_normal(random);
    sister.level = start - sister.shift;
    return sister;
}

Stand stand_at(const Engine *engine, Random random)
{
    return (Stand){.engine = engine, .random = random};
}

// Of a turn the lost motion is taken up first, between -lost/2 and lost/2.
static double effective_turn(Stand *stand, double turns)
{
    double half = stand->engine->lost / 2, slack = stand->slack + turns;
    stand->slack = CLAMP(slack, -half, half);
    return slack - stand->slack;
}

void stand_turn(Stand *stand, double turns)
{
    turns += turns == 0 ? 0 : stand->engine->hand * random_normal(&stand->random);
    stand->turned += stand->engine->lost > 0 ? effective_turn(stand, turns) : turns;
    stand->moves++;
}

void stand_tighten(Stand *stand)
{
    stand->repeat = stand->engine->repeat * random_normal(&stand->random);
}

// The value itself.
static double value_of(const Stand *stand, guint place, gboolean tight)
{
    const Engine *engine = stand->engine;
    double turned = stand->turned;
    double path = engine->slope * turned * (1 + engine->curve * turned / engine->travel / 2);
    double loose = engine->level + engine->places[place];
    return tight ? loose + engine->ratio * path + engine->shift * (1 + stand->repeat)
                 : loose + path;
}

double stand_read(Stand *stand, guint place, gboolean tight)
{
    const Job *job = stand->engine->job;
    double value = value_of(stand, place, tight), g = job->graduation;
    double under = job->difference ? random_uniform(&stand->random, 0, g) : 0;
    return g * (round((value + under) / g) - round(under / g));
}

double stand_least(const Stand *stand)
{
    double least = INFINITY;
    for (guint i = 0; i < ENGINE_PLACES; i++)
        least = fmin(least, value_of(stand, i, TRUE));
    return least;
}

double stand_most(const Stand *stand)
{
    double most = -INFINITY;
    for (guint i = 0; i < ENGINE_PLACES; i++)
        most = fmax(most, value_of(stand, i, TRUE));
    return most;
}

double stand_read_all(Stand *stand, double values[ENGINE_PLACES])
{
    double least = INFINITY;
    for (guint i = 0; i < ENGINE_PLACES; i++) {
        values[i] = stand_read(stand, i, TRUE);
        least = fmin(least, values[i]);
    }
    return least;
}
