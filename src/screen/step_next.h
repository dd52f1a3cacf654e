// Which step of a build is to be gone on with, and what is asked first in it. Pure.
#pragma once
#include <standbook/work/agenda.h>

// Where the build stands, if something is left there, else the first that is neither done nor held,
// else the first that is not done; NULL: nothing is left.
const PlanStep *step_next(const Agenda *agenda);
// `S18 main caps · bolt 3 · 40 N·m`: what is next in a step; `nothing is left` for NULL. `*place`
// is where that is, AGENDA_NOWHERE if nothing is left there. The caller frees with g_free.
char *step_next_words(const Agenda *agenda, const PlanStep *here,
                      guint *place) G_GNUC_WARN_UNUSED_RESULT;
// The name of what is next in a step (requirement_name) where that is to be done again; NULL where
// it is open, or nothing is left. The caller frees with g_free.
char *step_again(const Agenda *agenda, const PlanStep *step) G_GNUC_WARN_UNUSED_RESULT;
