// A step, a phase or a build on one line: its verdict, counts, who signed, what stands in the way;
// and where a build stands. Pure: everything comes in.
#pragma once
#include <standbook/work/agenda.h>
#include <standbook/work/entry_words.h>

enum { SIGNERS_MOST = 3 };

typedef struct {
    const char *name;     // of the step, the phase or the plan; belongs to the plan
    const PlanStep *step; // of a step, else NULL
    guint steps, done;    // how many steps, and how many have nothing needed left
    guint all, left;      // requirements that are not withdrawn; those in the way of the gate
    guint counts[VERDICTS];
    Verdict verdict;  // the heaviest: fail, in doubt, open, conceded, pass, noted, not needed
    guint first;      // the first place that has it; AGENDA_NOWHERE if nothing is asked
    guint signatures; // asked for and needed
    guint given;      // of those
    // The signatures that stand, in the order they are asked for, as many as there is room for.
    const Entry *signing[SIGNERS_MOST];
    const PlanStep *held; // of a step with something left: by which it is held; else NULL
} Summary;

Summary summary_step(const Agenda *agenda, const PlanStep *step);
// The steps under one heading, wherever they stand in the plan.
Summary summary_phase(const Agenda *agenda, const char *phase);
Summary summary_build(const Agenda *agenda);

// The headings of the plan (const char *), each once, in order of appearance. The caller frees with
// g_ptr_array_unref.
GPtrArray *summary_phases(const Plan *plan) G_GNUC_WARN_UNUSED_RESULT;

// How one says that it was done, whatever became of it: `read`, `answered`, `ticked`, `waited`,
// `fitted`, `signed`. Static.
const char *summary_did(Asked asked);
// `2 FAIL, 1 DOUBT`: how many need a person; "" for none. The caller frees with g_free.
char *summary_faults(const guint counts[VERDICTS]) G_GNUC_WARN_UNUSED_RESULT;
// How many of so many are left, and how many of those done need a person: `3 of 94 ticks left, 1
// DOUBT`, `1 DOUBT of 94`. `some` says the first, a format for two numbers; `counts`: of those that
// are not settled. The caller frees with g_free.
char *summary_left(const char *some, const guint counts[VERDICTS],
                   guint all) G_GNUC_WARN_UNUSED_RESULT;
// How far something has come that is asked at several places, and how many of those done need a
// person: `4 of 6 ticked`, `1 FAIL, 4 of 6 ticked`; once all are done `2 FAIL, 1 DOUBT of 6`. The
// caller frees with g_free.
char *summary_come(Asked asked, guint done, guint all,
                   const guint counts[VERDICTS]) G_GNUC_WARN_UNUSED_RESULT;

// `19 of 24`: so many of all that is asked have the verdict, where that is open, needs a person or
// was conceded; "" where all is well. The caller frees with g_free.
char *summary_count(const Summary *summary) G_GNUC_WARN_UNUSED_RESULT;

// `MO JT 19 Mar`: who signed, and when the last of them did; "" if nobody has. The caller frees
// with g_free.
char *summary_signed(const Summary *summary, const Taken *taken,
                     Moment now) G_GNUC_WARN_UNUSED_RESULT;

// Why it is not well, in a few words, the weightiest first, for a column that may cut them: `high:
// piston clearance 4`, `tool: main caps 3`, `conceded: …`; `after S05` if a step in front
// is not signed, `HELD: S25` if something fails or is in doubt there; "" if it is well or only not
// done yet. The caller frees with g_free.
char *summary_why(const Agenda *agenda, const Summary *summary) G_GNUC_WARN_UNUSED_RESULT;

// What it means that a step is held, in a sentence of one row: `S04 comes after S03, which is
// not signed. Work can go on; the record shows the order.` NULL if it is not. The caller frees with
// g_free.
char *summary_held(const Agenda *agenda, const PlanStep *step) G_GNUC_WARN_UNUSED_RESULT;

// How far the check or stage has come that a place of it belongs to: `bore: 19 of 24 read`, `main
// caps, stage 2: 1 FAIL, 4 of 6 ticked`, `main shells: 2 of 6 fitted`, `signed 1 of 2`. The caller
// frees with g_free.
char *summary_progress(const Agenda *agenda, guint index) G_GNUC_WARN_UNUSED_RESULT;

// Where a setting of the step was left half done (trials_left_off): what is read there first;
// AGENDA_NOWHERE if none was.
guint summary_left_off(const Agenda *agenda, const PlanStep *step);

// The place at which work on a step goes on, as the bench opens it: where a setting was left half
// done, else the next behind the one of its newest entry, for a bolt that holds a setting what is
// read of that first (trials_behind_bolt); AGENDA_NOWHERE if nothing is left there.
guint summary_place(const Agenda *agenda, const PlanStep *step);

// Where a build stands.
typedef struct {
    const PlanStep *step; // in hand, else put down last and not done, else the one to go on with;
                          // NULL: nothing is left
    guint place;          // next in it behind the newest entry; AGENDA_NOWHERE: nothing is left
    gboolean in_hand;
    const Entry *since; // the pick-up or put-down that says so; NULL if it is neither
    const Entry *last;  // the newest entry of the build, NULL if there is none
} Standpoint;

Standpoint summary_standpoint(const Agenda *agenda);
