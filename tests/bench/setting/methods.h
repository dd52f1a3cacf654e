// Ways to set an engine, all meeting the same engines; and what they came to.
#pragma once
#include "engine.h"
#include <standbook/rules/setting.h>

enum { MOST_TRIALS = 6, NEVER = 7 };

typedef struct {
    guint trials;             // tightened trials, NEVER where six were not enough
    guint moves;              // all of them
    guint twice;              // read all places again
    gboolean overran, wrong;  // beyond the far side once; stopped outside the band
    guint covered, intervals; // 95 % intervals of what was tightened, and how many held
    guint outside;            // advices outside the travel
    guint contradictions[SETTING_FINDINGS]; // findings, each kind once
} Outcome;

typedef Outcome Method(const Engine *engine, const Drawing *drawing, Random random);

Outcome method_bisection(const Engine *engine, const Drawing *drawing, Random random);
Outcome method_secant(const Engine *engine, const Drawing *drawing, Random random);
Outcome method_secant_geometry(const Engine *engine, const Drawing *drawing, Random random);
Outcome method_shop(const Engine *engine, const Drawing *drawing, Random random);
Outcome method_adviser(const Engine *engine, const Drawing *drawing, Random random);
Outcome method_adviser_family(const Engine *engine, const Drawing *drawing, Random random);

// What the adviser is told of an engine before anything is read.
SettingModel adviser_model(const Engine *engine, const Drawing *drawing);

// A trial has been tightened, having started at `start`: does it lie beyond the far side?
void outcome_trial(Outcome *outcome, const Stand *stand, double start);
// Stopped here.
void outcome_stop(Outcome *outcome, const Stand *stand);
