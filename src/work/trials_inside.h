// Inside the room: what is read for a setting in its trials.
#pragma once
#include <standbook/work/trials.h>

// What becomes a line of a trial, as it was entered.
typedef struct {
    TrialLineKind kind;
    Number *position;   // as of the line
    gint value;         // into the trial's values: loose, or tightened; -1: none
    TrialStruck struck; // of what was struck
} TrialRow;

// Fills in `made`, by place: the requirements of the setting in that assessment.
void trials_find_made(const Trials *trials, const Assessment *assessment, const Requirement **made);

// Fills in `reads`, and `inputs`: the requirements of what is read, as they are now.
void trials_find_inputs(Trials *trials);

// Whether a place of these axes is, or holds, what these trials set: TRUE where all places are set
// together. `labels` in the order of the axes; NULL for all places.
gboolean trials_meet(const Trials *trials, const GPtrArray *axes, const char *const *labels);

// Whether a move of the setting moves what these trials set.
gboolean trials_is_moved(const Trials *trials, const Entry *entry);

// Whether what was slackened, fitted or reworked of that name is at what these trials set.
gboolean trials_is_near(const Trials *trials, const Entry *entry, const char *name);

// What `near` of the trials begins with.
GHashTable *trials_near_new(void) G_GNUC_WARN_UNUSED_RESULT;

// Whether a check of that name is read for the setting.
gboolean trials_reads(const Trials *trials, const char *check);

// Whether it tightens what holds these trials.
gboolean trials_is_tightening(const Trials *trials, const Entry *entry);

// Whether an entry is a reading that was not taken loose.
gboolean trials_is_tight(const Entry *entry);

// Puts a reading where it belongs among those of a trial, `read` by input.
void trials_put(const Trials *trials, const Entry *entry, const Entry **read);

// The first input of a place that is needed and not among those read; -1 if there is none.
gint trials_missing(const Trials *trials, const Entry *const *read, guint place);

// The newest that was read for a place, if all that it needs is among those read; else NULL.
const Entry *trials_whole(const Trials *trials, const Entry *const *read, guint place);

// What the formula gives at the place of a value with the readings that made it in place of the
// trial's newest tightened ones. NULL if that cannot be worked out. The caller frees.
Number *trials_value(const Trials *trials, const Trial *trial,
                     const TrialValue *value) G_GNUC_WARN_UNUSED_RESULT;

// An empty array of TrialRow.
GArray *trial_rows_new(void) G_GNUC_WARN_UNUSED_RESULT;

// Keeps in its rows where a trial stands, and how it reads loose there, before that gives way to
// what follows; its newest value, tightened; what was struck.
void trial_pass(Trial *trial);
void trial_read_tight(Trial *trial);
void trial_strike(Trial *trial, TrialStruck struck);

// Whether one reading went into both values.
gboolean trial_values_share(const Trials *trials, const TrialValue *one, const TrialValue *other);
