// What the rows at the foot of the bench say of the place in hand.
#pragma once
#include "bench_field.h"
#include "bench_work.h"
#include "widget_checks.h"

// What the value typed for the place means, and the verdict that it changes most, its own if that
// is judged: `90.026 mm   piston clearance 4 becomes 0.086 ±.005   ▲ FAIL, 0.006 over`. Freed by
// the caller, as all of these.
char *bench_meaning(const Checks *checks, guint here);

// The place and the gauge that it is read with, or what its field asks. `gauge` may be NULL.
char *bench_next_words(Desk *desk, const BenchWork *work, guint here, PartState part,
                       const BenchField *field, const char *gauge);

// `carrier play has 3 to 6 mm now`: the limits in force there.
char *bench_has_limits(const Requirement *made);

// A place that comes after.
char *bench_then_words(const Requirement *made);

// How much of what the step asks is done; signatures do not count.
void bench_say_counts(const BenchWork *work, Page *page);

// Keeps as the newest entry of this terminal what was typed for the place. `made` may be NULL.
void bench_say_last(Desk *desk, const char *place, const char *typed, const Requirement *made);
