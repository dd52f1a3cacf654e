// What the rows of a setting say of what is asked next, and the log line for what is typed there.
#pragma once
#include "desk.h"
#include "supposed.h"

#include <standbook/work/advice.h>

// The requirement that is asked about: the first one where it is about none in particular.
const Requirement *setting_made(const Trials *trials, const TrialNext *next);

// Whether a move is typed as a step, with its sign, and not as where the adjuster stands. Where it
// can stand below its zero, a minus is part of the place.
gboolean setting_is_step(const Trials *trials, const char *typed);

// All texts are freed by the caller with g_free.

// The log line for what is typed; NULL where that says nothing.
char *setting_line(Desk *desk, const Trials *trials, const TrialNext *next,
                   const char *typed) G_GNUC_WARN_UNUSED_RESULT;
// What was in use for the reading asked and is passed over (bench_wrong_gauge); NULL if nothing is,
// or no reading is asked.
char *setting_wrong_gauge(Desk *desk, const Trials *trials,
                          const TrialNext *next) G_GNUC_WARN_UNUSED_RESULT;
// Adds the log lines that slacken a tightening, where each place is set by itself only near that
// one.
void setting_slacken(const Trials *trials, const PlanTightening *tightening, GPtrArray *lines);
// `lash 3`: the place of these trials; empty where all places are set together.
char *setting_place(const Trials *trials) G_GNUC_WARN_UNUSED_RESULT;
// ` at 3`, of what is read for a formula ` chain play 3, forth`; empty where the setting itself is
// read and has no places.
char *setting_at(const Trials *trials, const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;
// What is asked; of a move, that which is advised.
char *setting_next(Desk *desk, const Trials *trials, const TrialNext *next,
                   const NextMove *advised) G_GNUC_WARN_UNUSED_RESULT;
// What comes behind it.
char *setting_then(const Trials *trials, const TrialNext *next,
                   const NextMove *advised) G_GNUC_WARN_UNUSED_RESULT;
// What the digits mean, of which the line was supposed: `0.07 mm ±.01   ▼ FAIL, 0.01 under`; NULL
// behind a point or sign, while more is still to come.
char *setting_meaning(const Supposed *supposed, const Trials *trials, const TrialNext *next,
                      const char *typed) G_GNUC_WARN_UNUSED_RESULT;
// How the place of the setting stands with what is typed; NULL where that is not judged: a move, a
// loose reading, nothing.
const Requirement *setting_typed(const Supposed *supposed, const Trials *trials,
                                 const TrialNext *next);
