// The requirements of a step gathered by what they are about: a check, a part, a bolt set's stages,
// the signatures; each a line. Pure.
#pragma once
#include "cells.h"

#include <standbook/judge/assess.h>

typedef struct {
    const Requirement *first; // whose name it has
    guint index;              // of that, in the assessment
    guint count;              // requirements, withdrawn ones apart
    guint counts[VERDICTS];
    guint waiting;   // of the open ones: found, and to be answered later
    Verdict verdict; // the heaviest
    Reason reason;   // of the first that has it
} Group;

// The groups of a step in the plan's order (Group). The caller frees with g_array_unref.
GArray *groups_of(const Assessment *assessment, const PlanStep *step) G_GNUC_WARN_UNUSED_RESULT;

// The heaviest verdict of some counts: fail, in doubt, open, conceded, pass, noted, not needed.
Verdict heaviest_verdict(const guint counts[VERDICTS]);

// A line: name, what is there, verdict, and what it is or why not.
void group_paint(Canvas *canvas, guint row, const Assessment *assessment, const Group *group);

// The style of a verdict's mark.
Style verdict_style(Verdict verdict);
