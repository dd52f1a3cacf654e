// The checks of a step as tables and lines with strips. Pure.
#pragma once
#include "cells.h"

#include <standbook/judge/assess.h>

// What is painted: the assessment as it stands, and what it would be with the reading in the field.
typedef struct {
    const Assessment *now;
    const Assessment *supposed; // NULL: nothing readable stands in the field
    const PlanStep *step;
    const Requirement *here; // of `now`: the place in hand, or NULL
    const char *typed;       // what stands in the field
} Checks;

// The requirement at an index as it would be; `*differs` (may be NULL) says whether it does.
const Requirement *checks_at(const Checks *checks, guint index, gboolean *differs);

// Paints the check in hand, the checks worked out from it, and a line for each other check of the
// step, from `row` on. Returns the row behind; `*focus` is the row of the place in hand.
guint checks_paint(Canvas *canvas, guint row, const Checks *checks, guint *focus);
