// The places of a step in the order of the work: which are asked for, which is next, what is left.
#pragma once
#include "desk.h"

#include <standbook/work/agenda.h>

typedef struct {
    Agenda agenda;
    const PlanStep *step;
} BenchWork;

enum { NOWHERE = G_MAXUINT }; // no place; else an index in the assessment

// A step of the build in hand as it stands; FALSE if there is none of that name.
gboolean bench_work(Desk *desk, const char *step, BenchWork *work);

const Requirement *bench_requirement(const BenchWork *work, guint index); // NULL for NOWHERE

// Whether something is typed for a place in this step; whether it is still open.
gboolean bench_asks(const BenchWork *work, guint index);
gboolean bench_is_open(const BenchWork *work, guint index);
// All but the signature: it stands for what is behind the last place.
gboolean bench_is_work(const BenchWork *work, guint index);

typedef gboolean (*BenchWanted)(const BenchWork *work, guint index);
// The first wanted place from that one on, in a direction (1, -1).
guint bench_search(const BenchWork *work, guint from, gint direction, BenchWanted wanted);

// Where to begin with what is left: the first place that is open, fails or is in doubt, or what it
// is worked out from.
guint bench_first_left(const BenchWork *work);
// Where to begin with the requirement of that name: itself, or what it is worked out from; with any
// other name where to begin with what is left.
guint bench_to_settle(const BenchWork *work, const char *name);
// Where the newest entry of the step was made: the work goes on behind it.
guint bench_newest(const BenchWork *work);

// The place that stands on the entry of that seq, and comes back when it is struck; NOWHERE if none
// of the step does.
guint bench_place_of(const BenchWork *work, gint64 seq);
// What is meant: the place in hand, or where nothing is left to read the one read last. NULL: none.
const Requirement *bench_in_question(const BenchWork *work, guint here, guint last);

// The requirement of that name (NULL: none), else NOWHERE.
guint bench_named(const BenchWork *work, const char *name);
// The same if it is open in this step, else NOWHERE.
guint bench_open_named(const BenchWork *work, const char *name);
// The first open place of the step of the check or part that the entry of that seq added, else
// NOWHERE: bolts wait for who has a wrench in hand.
guint bench_added(const BenchWork *work, gint64 seq);

// What is outside or in doubt because of the place in hand (`made`, may be NULL) or of the one read
// last (NOWHERE: none): the first itself, else the heaviest in this step that either is or goes
// into; NULL if nothing is.
const Requirement *bench_fault(const BenchWork *work, const Requirement *made, guint last);
// The first of the step that is outside or in doubt, wherever; NULL if none is.
const Requirement *bench_any_fault(const BenchWork *work);
// The finding of the step that is meant by whoever decides one there: what the place in hand or the
// one read last goes into, else as decide_meant; NULL if none waits.
const Requirement *bench_to_decide(const BenchWork *work, const Requirement *made, guint last);
// What `w` is about there: that, else a finding that waits for its answer and has to do with it, or
// of the step where there is nothing there yet, else the place itself.
const Requirement *bench_asked_why(const BenchWork *work, const Requirement *made, guint last);

// Where to go back to when what is worked out from the place just read cannot be told by its gauge:
// its first input, to be read with a better one. NOWHERE if it can be told, or where either is one
// of several places: the value that is typed next is for the place beside.
guint bench_to_read_again(const BenchWork *work, guint index);

// What the setting that the place in hand (NULL: none) leads to is opened with; NULL if it leads to
// none. The caller frees with g_free.
char *bench_setting(const BenchWork *work, const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;
