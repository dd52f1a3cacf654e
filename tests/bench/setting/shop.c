// What people do without an adviser. Each begins with a loose and a tightened reading, moves in
// 1/48 turns and stops when the least tightened reading lies in the band.
#include "methods.h"
#include <math.h>

void outcome_trial(Outcome *outcome, const Stand *stand, double start)
{
    const Job *job = stand->engine->job;
    outcome->trials++;
    if (start > job_aim(job) ? stand_least(stand) < 0 : stand_most(stand) > job->width)
        outcome->overran = TRUE;
}

void outcome_stop(Outcome *outcome, const Stand *stand)
{
    const Job *job = stand->engine->job;
    outcome->wrong = fabs(stand_least(stand) - job_aim(job)) > job_band(job);
}

typedef struct {
    Stand stand;
    Outcome outcome;
    double start;                               // the true tightest value before any move
    double at;                                  // turns made, as named
    double loose, least, values[ENGINE_PLACES]; // read last
} Person;

static Person person_at(const Engine *engine, Random random)
{
    Person person = {.stand = stand_at(engine, random)};
    person.loose = stand_read(&person.stand, 0, FALSE);
    stand_tighten(&person.stand);
    person.least = stand_read_all(&person.stand, person.values);
    person.start = stand_least(&person.stand);
    return person;
}

static void turn(Person *person, double turns)
{
    double travel = person->stand.engine->travel;
    double named = round((CLAMP(person->at + turns, -travel, travel) - person->at) * 48) / 48;
    stand_turn(&person->stand, named);
    person->at += named;
}

static void tighten(Person *person)
{
    stand_tighten(&person->stand);
    person->least = stand_read_all(&person->stand, person->values);
    outcome_trial(&person->outcome, &person->stand, person->start);
}

static gboolean is_content(const Person *person)
{
    const Job *job = person->stand.engine->job;
    return fabs(person->least - job_aim(job)) <= job_band(job) * (1 + 1e-9);
}

static double missing(const Person *person)
{
    return job_aim(person->stand.engine->job) - person->least;
}

static double geometry(const Engine *engine)
{
    return engine->direction * engine->job->geometry;
}

static Outcome finish(Person *person)
{
    person->outcome.moves = person->stand.moves;
    if (is_content(person))
        outcome_stop(&person->outcome, &person->stand);
    else
        person->outcome.trials = NEVER;
    return person->outcome;
}

// Steps of T/2 by geometry, twice as far each time, until the aim is passed; then halving.
Outcome method_bisection(const Engine *engine, const Drawing *drawing, Random random)
{
    (void)drawing;
    Person person = person_at(engine, random);
    double step = engine->job->width / 2 / fabs(geometry(engine)), ends[2] = {NAN, NAN};
    while (person.outcome.trials < MOST_TRIALS && !is_content(&person)) {
        int sign = missing(&person) * engine->direction > 0 ? 1 : -1;
        ends[sign > 0] = person.at;
        if (isnan(ends[sign < 0])) {
            turn(&person, sign * step);
            step *= 2;
        } else {
            turn(&person, (ends[0] + ends[1]) / 2 - person.at);
        }
        tighten(&person);
    }
    return finish(&person);
}

// By the last two trials, as long as they tell a slope of the right sign and size.
static Outcome secant(const Engine *engine, Random random, double first)
{
    Person person = person_at(engine, random);
    double slope = geometry(engine);
    double next = first > 0 ? copysign(first, missing(&person)) / slope : missing(&person) / slope;
    while (person.outcome.trials < MOST_TRIALS && !is_content(&person)) {
        double before = person.least, at = person.at;
        turn(&person, next);
        tighten(&person);
        double seen = (person.least - before) / (person.at - at), ratio = seen / geometry(engine);
        slope = ratio > 0.25 && ratio < 4 ? seen : geometry(engine);
        next = missing(&person) / slope;
    }
    return finish(&person);
}

Outcome method_secant(const Engine *engine, const Drawing *drawing, Random random)
{
    (void)drawing;
    return secant(engine, random, engine->job->width / 2);
}

Outcome method_secant_geometry(const Engine *engine, const Drawing *drawing, Random random)
{
    (void)drawing;
    return secant(engine, random, 0);
}

// One move with its loose readings: corrected by the slope last seen while the loose reading is
// too far from the wanted one, four times at most.
static void shop_move(Person *person, double *slope)
{
    const Job *job = person->stand.engine->job;
    double doubt = job->difference ? job->graduation : job->graduation / 2;
    double wanted = person->loose + missing(person), next = missing(person);
    for (int i = 0; i < 5; i++) {
        double before = person->loose, at = person->at;
        turn(person, next / *slope);
        person->loose = stand_read(&person->stand, 0, FALSE);
        double seen = (person->loose - before) / (person->at - at);
        if (fabs(person->loose - before) > 2 * doubt && seen / *slope > 0.1)
            *slope = seen;
        next = wanted - person->loose;
        if (fabs(next) <= fmax(doubt, job_band(job) / 2))
            return;
    }
}

Outcome method_shop(const Engine *engine, const Drawing *drawing, Random random)
{
    (void)drawing;
    Person person = person_at(engine, random);
    double slope = geometry(engine);
    while (person.outcome.trials < MOST_TRIALS && !is_content(&person)) {
        shop_move(&person, &slope);
        tighten(&person);
    }
    return finish(&person);
}
