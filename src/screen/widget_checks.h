// The checks of a step as tables and lines with strips. Pure.
#pragma once
#include "cells.h"

#include <standbook/work/entry_words.h>
#include <standbook/work/working.h>

// What is painted: the assessment as it stands, and what it would be with the reading in the field.
typedef struct {
    const Agenda *agenda;       // as it stands
    const Assessment *now;      // of it
    const Assessment *supposed; // NULL: nothing readable stands in the field
    const PlanStep *step;
    const Requirement *here; // of `now`: the place in hand, or NULL
    const char *typed;       // what stands in the field
    const Taken *taken;      // of the build, to name tools; or NULL
    const GArray *struck;    // StruckReading of the step, or NULL
    const char *gauge;       // the gauge that it is read with, by its label; or NULL
    const char *gauges;      // what each gauge can tell here, in lines; or NULL
    const char *apart;       // what is said of a value that stands apart, or NULL
} Checks;

// The requirement at an index as it would be; `*differs` (may be NULL) says whether it does.
const Requirement *checks_at(const Checks *checks, guint index, gboolean *differs);

// The agenda as it would be with the reading in the field.
Agenda checks_agenda(const Checks *checks);

// Paints the check in hand, the checks worked out from it, and a line for each other check of the
// step, from `row` on. Returns the row behind; `*focus` is the row of the place in hand.
guint checks_paint(Canvas *canvas, guint row, const Checks *checks, guint *focus);
