// The bench as its files share it: what is in hand there, and what its keys do.
#pragma once
#include "bench_field.h"
#include "bench_work.h"
#include "slip.h"
#include "supposed.h"
#include "view.h"

#include <standbook/work/entry_words.h>

typedef struct {
    char *step;
    guint here;            // the place in hand: index in the assessment; NOWHERE if all is done
    char *named;           // what that was called when it was looked at; NULL: not yet, or none
    guint last;            // the place of the newest entry made here, NOWHERE if none
    gboolean offered;      // to add a check, where the step has none
    gboolean begun;        // `here` was set once
    gint64 strikes;        // the entry of which it was asked why it is struck; 0: it was not
    guint stricken;        // the place that stood on it
    gboolean asked_to_add; // what is added, when the build had `known_then` entries
    gsize known_then;
    char *aside;       // the place then in hand: after what was added it goes on there; NULL: none
    char *settle;      // begin with this requirement, or with what is left ("left"): in doubt or
                       // failed, not only open; NULL with what is open
    gboolean beside;   // that was only walked to
    gboolean settles;  // what is done was done before: it goes on place by place, not to the close
    PartState part;    // what was said of the part in hand
    Supposed supposed; // by what is typed
    Slip slip;         // a line that was asked about once
    // As long as the build has `known` entries:
    GArray *struck; // StruckReading of the step
    Taken *taken;
    gsize known;
    char *gauges; // what each gauge can tell at `looked`; NULL if it is not asked
    guint looked;
    char *held; // the gauge in hand then
    // With so many entries nothing had to be opened before the place `ready_at` is asked:
    gsize ready;
    guint ready_at;
} Bench;

// To another place, or to none.
Go bench_go_to(Bench *bench, guint here);
// Where the bolts begin: with what is open, or at one that was done. The caller frees.
char *bench_bolts_argument(const Requirement *made);
// Whether that one, which was done, is done again: asked first; who leaves it so is back at the
// bench. The caller frees.
char *bench_again_argument(const Requirement *made);
// Whether the place was worked on since it was read: of a reading that stands (`line` NULL), or
// where `line`, which reads it once more as `typed`, makes two that disagree. GO_STAY if there is
// nothing to ask, or it was answered that both stand.
Go bench_ask_rework(Bench *bench, Desk *desk, const BenchWork *work, const char *line,
                    const char *typed);
// `0.20 stands, they disagree`, of what is typed where that will be asked about; else NULL. The
// caller frees.
char *bench_disagree_words(const Bench *bench, const BenchWork *work) G_GNUC_WARN_UNUSED_RESULT;
// `0.20 before; Enter again keeps both, in doubt`, once that was answered of what is typed; else
// NULL. The caller frees.
char *bench_both_words(const Bench *bench, const Desk *desk, const BenchWork *work,
                       const char *typed) G_GNUC_WARN_UNUSED_RESULT;
// Remembers that something is being added, and when.
void bench_ask_to_add(Bench *bench, const BenchWork *work);
// What a key does at the bench (`state`: Bench), as ViewOps has it.
Go bench_act(gpointer state, Desk *desk, Action action);
