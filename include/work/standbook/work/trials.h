// A setting by trials: a check with `set:`, its moves, loose and tight readings as the ledger has
// them. Pure: everything comes in. Where the setting is a formula, what is read are its inputs
// (PlanInput): a place is read once all of its inputs were in this trial.
//
// The first move after a tightened reading opens the next trial; a trial has any number of moves
// before it is tightened. A struck move opens none: what was read behind it joins the trial before,
// in doubt. Moves are counted for the setting as a whole, whatever places they name; where each
// place has an adjuster of its own (`each`), the trials are those of one place, and all else is
// left out.
#pragma once
#include <standbook/judge/assess.h>

// One place of a trial, tightened.
typedef struct {
    const Entry *entry;      // its newest live reading; NULL: not, or not all, read in this trial
    const Requirement *made; // as the trial left it; NULL likewise, or before trials_judge
} TrialPlace;

// What one place of a trial came to when it was read.
typedef struct {
    const Entry *entry; // of a formula the last of all that it needs there
    gboolean tight;     // read tightened, else loose
    guint place;
    const Entry **read; // by input of the setting: what counted then
    gboolean joined;    // read behind a struck move
    gboolean later;     // read in a step that asks for it once more: no part of the try
    Number *value;      // base units; of a formula NULL before trials_judge, and where it cannot be
                        // worked out
} TrialValue;

// A move or reading that was struck.
typedef struct {
    const Entry *entry;
    guint input; // of a reading, into the setting's inputs
    const char *cause;
} TrialStruck;

// What is told of a trial in lines: how it stood before, what was struck, how it stands, what was
// read later and does not count, as in a step that reads the check again.
typedef enum { TRIAL_BEFORE, TRIAL_STRUCK, TRIAL_STANDS, TRIAL_LATER } TrialLineKind;

typedef struct {
    TrialLineKind kind;
    const Number *position;   // before: where the setting stood until it was moved on or read loose
                              // again, base units; NULL where no move says a place
    const TrialValue *loose;  // before: how it read there, loose; NULL: it was not read
    const TrialValue **tight; // before: by place, tightened readings beside which it was read again
                              // and that do not count, NULL at the others; NULL: it is no such line
    const TrialStruck *struck;
} TrialLine;

typedef struct {
    guint number;          // from 1
    GPtrArray *entries;    // const Entry *: live moves and readings, by rank
    GArray *values;        // TrialValue: what was read, loose and tightened, by rank
    const Entry *move;     // the last move, NULL if there is none
    Number *position;      // where that left the setting, base units; NULL if no move says a place
    const Entry *loose;    // the newest live loose reading behind that move, or NULL; of a formula
                           // the last of a place of which all was read loose
    Number *loose_value;   // of that, base units; of a formula NULL before trials_judge, and where
                           // it cannot be worked out
    guint loose_place;     // likewise
    TrialPlace *places;    // by place of the check
    guint read;            // how many of those are read
    const Entry **tight;   // by input of the setting: its newest live tightened reading, or NULL
    const Entry **since;   // of those, what was read since its hold was last tightened
    const Entry **loosely; // likewise loose, behind the last move
    guint readings;        // how many live tightened readings there are, of whatever input
    GArray *rows;          // what becomes its lines, by rank (trial_lines)
    guint above;           // how many of those stand before its newest live entry,
    guint stood;           // and before the newest live move or loose reading
    GPtrArray *notes;      // const char *: remarks on the check meanwhile
    gboolean joined;       // readings of a struck move stand here
    gint64 ended;          // seq of what loosened or moved it after its last tightened reading; 0
    Verdict verdict;       // of all its places; in doubt by evidence before fail
    Reason reason;         // of the first place that has it
    gboolean fails;        // a value lies outside its limits, not conceded, whatever is in doubt
    Reason side;           // then low, high or beyond wear, of the first such place
    Assessment *then;      // as it stood when it ended; NULL while it has not
} Trial;

typedef struct {
    const PlanCheck *check;
    const PlanStep *step;
    const Assessment *assessment;
    const Plan *plan;
    const Entry *const *entries;
    gsize count;
    guint first;                // the place of the check that is the first of these
    guint places;               // 1 where each place is set by itself
    GStrv labels;               // then the labels of that place; NULL: all places are set together
    GArray *reads;              // PlanInput: what is read in a trial, `of` counted in these places
    const Requirement **made;   // by place, as it is now
    const Requirement **inputs; // by what is read, likewise; NULL where it is not asked
    GHashTable *near;           // inside the room: by name, what of it is at the place
    GPtrArray *all;             // Trial *
} Trials;

// The trials of a setting in a step; where each place is set by itself, those of `place` (of the
// check's places), which else says nothing. Of those that have ended the verdicts are open until
// trials_judge. Plan, assessment and entries outlive them. The caller frees.
Trials *trials_new(const Plan *plan, const PlanStep *step, const PlanCheck *check, guint place,
                   const Assessment *assessment, const Entry *const *entries,
                   gsize count) G_GNUC_WARN_UNUSED_RESULT;
void trials_free(Trials *trials); // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Trials, trials_free)

// Judges the trials that have ended as they stood then, by what is known now: the whole build once
// for each.
void trials_judge(Trials *trials);

// From the first move to the newest reading, interruptions left out.
guint trials_minutes(const Trials *trials);

const Trial *trials_last(const Trials *trials); // NULL before the first

// The lines of a judged trial (TrialLine) in the order of entry, how it stands (TRIAL_STANDS, once)
// where its newest entry that counts was made, behind it what was read later. The caller frees with
// g_array_unref; the trials outlive it.
GArray *trial_lines(const Trials *trials, const Trial *trial) G_GNUC_WARN_UNUSED_RESULT;

// Whether what is read there is asked for at all: it is there, not withdrawn, and needed.
gboolean trials_needs(const Requirement *made);

// The first input of the setting that a reading is of; -1 if it is of none.
gint trials_input(const Trials *trials, const Entry *entry);
// Whether what was read there tightened (it has `made`) says nothing of how the setting answers:
// its bolts were tightened with a wrench found wrong, or not at all, its gauge was found wrong, or
// it follows a struck move. A wrench that is only overdue still tells; an uphold counts.
gboolean trial_place_misleads(const Trial *trial, guint place);

// NEXT ------------------------------------------------------------------------------------------

typedef enum { TRIAL_DONE, TRIAL_MOVE, TRIAL_LOOSE, TRIAL_TIGHTEN, TRIAL_TIGHT } TrialAsk;

// What a move is asked for.
typedef enum {
    TRIAL_FURTHER, // to bring it nearer
    TRIAL_STAY,    // none: it is loosened and tightened again where it stands
    TRIAL_STOP     // none serves: a cause is to be found first
} TrialMove;

typedef struct {
    TrialAsk ask;
    TrialMove move;                   // of a move
    guint place;                      // of a reading
    guint input;                      // likewise, into the setting's inputs
    const PlanTightening *tightening; // what is to be tightened
} TrialNext;

// What is asked next. A trial whose first tightened reading is outside is over at once; else all
// places are read, for their spread tells how far to move. What was read before its hold was
// tightened is tightened and read again. After one that fails comes a move; after one that does
// not, nothing. `again`: one that ended in doubt is followed by a move too.
TrialNext trials_next(const Trials *trials, gboolean again);
// What is read next where all places are read once more, tightened as they stand: the first that
// was not, this time round.
TrialNext trials_next_again(const Trials *trials);

// Whether the plan names anything in its step that holds the setting.
gboolean trials_has_hold(const Trials *trials);
// Whether it is tight or loose when it is read: the plan holds it, or reads it loose too. What a
// shim alone sets is neither.
gboolean trials_has_tight(const Trials *trials);
// Whether it is set by what is put in, a shim alone.
gboolean trials_is_put_in(const Trials *trials);
// What a reading of it is: `loose`, `tight`, or `read` where that is neither. Static.
const char *trials_read_word(const Trials *trials, gboolean loose);
// Whether the newest try was read tight before its hold was tightened, is in doubt for it, and was
// not all read again since. As long as a bolt that holds it stands from a wrench found wrong, it
// is not: that bolt comes first.
gboolean trials_is_early(const Trials *trials);
// What holds the setting in its step and is still open: the first such tightening; NULL if it is
// held.
const PlanTightening *trials_open_hold(const Trials *trials);

// A bolt of what holds it at a stage that it failed; NULL if there is none.
const Requirement *trials_failed_hold(const Trials *trials);
// The tightenings (const PlanTightening *) that must be slackened before the setting can be moved,
// the one tightened last first. The caller frees with g_ptr_array_unref.
GPtrArray *trials_to_slacken(const Trials *trials) G_GNUC_WARN_UNUSED_RESULT;

// The seq of a struck move that the next move stands for: what was read behind it stands, only the
// figure was typed wrong (misread, typo). 0 if there is none.
gint64 trials_mistyped(const Trials *trials);

// A setting to be worked at.
typedef struct {
    const PlanCheck *check; // NULL: there is none
    guint place;            // where each place is set by itself: which of the check's
    gboolean again;         // it was done and is in doubt or fails
} SettingDue;

// The setting to be worked at where the step comes to a place (NULL: none is left): its own, what
// holds it, or its signature while the setting asks for something.
SettingDue trials_setting(const Plan *plan, const PlanStep *step, const Requirement *made,
                          const Assessment *assessment, const Entry *const *entries, gsize count);

// What is read first for that setting, where the step comes to one of the bolts that hold it: they
// are tightened behind its move. NULL for any other place.
const Requirement *trials_behind_bolt(const Plan *plan, const PlanStep *step,
                                      const Requirement *bolt, const Assessment *assessment,
                                      const Entry *const *entries, gsize count);

// Of the settings of a step whose places are set each by itself the one that was worked at last:
// what is read there first, if something is still asked of it; NULL if nothing is, or there is
// none.
const Requirement *trials_left_off(const Plan *plan, const PlanStep *step,
                                   const Assessment *assessment, const Entry *const *entries,
                                   gsize count);

// How many settings a check with `set:` is: one for each of its places where each has an adjuster
// of its own, else 1; 0 where nothing is read for it.
guint setting_count(const PlanCheck *check);

// WORDS: the caller frees with g_free -----------------------------------------------------------

// `0.50`: where the adjuster stands, base units, without its unit; "" for NULL.
char *trial_position_words(const PlanCheck *check,
                           const Number *position) G_GNUC_WARN_UNUSED_RESULT;
// `0.07`, `<0.05`: what a place came to, in the unit of the check; "" for NULL or what cannot be
// worked out.
char *trial_value_words(const Trials *trials, const TrialValue *value) G_GNUC_WARN_UNUSED_RESULT;
// `0.10 to 0.16`: the least and the greatest of a line's tightened readings; "" if it has none.
char *trial_line_span(const Trials *trials, const TrialLine *line) G_GNUC_WARN_UNUSED_RESULT;
// `0.9 mm`: what was typed and struck.
char *trial_struck_typed(const TrialStruck *struck) G_GNUC_WARN_UNUSED_RESULT;
