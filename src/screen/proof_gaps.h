// What a gate still lacks, and what can be done about it on the page before that gate.
#pragma once
#include "telling.h"

typedef struct {
    Told told;
    guint gate;   // index in the plan's gates
    GArray *gaps; // Subject, in the order of the work
} Gaps;

// Of a gate by its name, NULL or any other: the next of the build. FALSE if no build is in hand. It
// holds until the next line.
gboolean gaps_init(Gaps *gaps, Desk *desk, const char *gate);
void gaps_clear(Gaps *gaps);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Gaps, gaps_clear)

const GateCount *gaps_gate(const Gaps *gaps);
const Requirement *gaps_made(const Gaps *gaps, guint index); // of the assessment
const Subject *gaps_gap(const Gaps *gaps, guint at);         // NULL behind the last
// The first place of a gap that is not settled; AGENDA_NOWHERE where there is none, or no such gap.
guint gaps_first_left(const Gaps *gaps, guint at);

typedef enum {
    DO_NOTHING, // there is no such gap
    DO_WAIT,    // a finding that later work answers
    DO_DECIDE,  // a finding that only a decision answers
    DO_OPEN,    // on the page that its step has for it
    DO_HERE,
} Doing;

// What can be done about a gap, and where first (`*place`, an index in the assessment): of bolts at
// the next in their order, of what is worked out at a reading that goes into it. Nothing that
// another page asks something about before or with it is done here.
Doing gaps_doing(const Gaps *gaps, guint at, guint *place);
