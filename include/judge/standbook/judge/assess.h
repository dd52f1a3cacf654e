// The one judgement. Screen, sheet, command line and JSON all read what stands here. Pure: the plan
// and the entries come in, an assessment goes out; nothing else is asked.
#pragma once
#include <standbook/base/moment.h>
#include <standbook/plan/plan.h>
#include <standbook/record/entry.h>
#include <standbook/rules/tool.h>
#include <standbook/value/array.h>

typedef enum {
    VERDICT_OPEN,
    VERDICT_PASS,
    VERDICT_FAIL,
    VERDICT_IN_DOUBT,
    VERDICT_CONCEDED,
    VERDICT_NOTED,
    VERDICT_NOT_NEEDED,
} Verdict; // in the order of verdict_names (record/kind.h)

enum { VERDICTS = 7 };

// The closed list of reasons. A doubt about the evidence travels through formulas as the bit
// reason_bit(reason) of Place.doubts.
typedef enum {
    REASON_NONE,
    REASON_LOW,
    REASON_HIGH,
    REASON_BEYOND_WEAR,
    REASON_LOOK,
    REASON_GAUGE, // the gauge cannot tell
    REASON_TOOL,
    REASON_ORDER,
    REASON_BASIS,
    REASON_SPENT,
    REASON_PART,
    REASON_WINDOW,
    REASON_DISAGREE,
    REASON_CLOCK,
} Reason;

enum { REASONS = 14 };

// `pass`, `in doubt`; `beyond wear`, `gauge`; "" for REASON_NONE. Static.
const char *verdict_words(Verdict verdict);
const char *reason_words(Reason reason);
// The same as a person at a screen is told it: what was seen is `not as asked`, not `look`. Static.
const char *reason_said(Reason reason);
// The reason of these words (REASON_NONE if there is none).
Reason reason_of_words(const char *words);
guint32 reason_bit(Reason reason);

// The sort of a requirement, in the order of the choices of `asked` in the table of kinds.
typedef enum { ASKED_READ, ASKED_LOOK, ASKED_BOLT, ASKED_WAIT, ASKED_FIT, ASKED_SIGN } Asked;

const char *asked_words(Asked asked); // `read`, `look`, … Static.

// Which tool put something in doubt, and how. Of several the heaviest state counts, then the newest
// use.
typedef struct {
    ToolState state; // TOOL_GOOD: none did, and the rest is 0
    gint64 use;      // seq of the entry in which it was used, or in which none was named
    gint64 entry;    // seq of the calibration that found it wrong or had run out, else the same
} ToolCause;

// Why another reading of the same place does not count: the one that counts has less u, or is the
// later of two with the same; or the other was in doubt and was read again later without.
typedef enum { BESIDE_COARSER, BESIDE_EARLIER, BESIDE_DOUBTED } WhyBeside;

typedef struct {
    gint64 entry; // seq
    WhyBeside why;
    ToolState gauge; // how its gauge stood; good where it is doubted for what it was read with
} ReadingBeside;

// One thing asked for, and what became of it. All texts and numbers belong to the assessment.
typedef struct {
    Asked asked;
    const char *name;     // of the check, bolt set, part or step
    const PlanStep *step; // where it is asked
    GStrv labels;         // its place: labels in the order of the axes; empty for one place
    char *place;          // the same labels as words: `3, front`; "" for one place
    guint stage;          // from 1: the stage, or which signature; else 0
    guint gate;           // index in the plan's gates
    gboolean added;       // work the plan did not have
    gboolean optional;    // may be left open
    gboolean finding;     // as found, before work
    gboolean withdrawn;   // counted neither open nor otherwise

    Verdict verdict;
    Reason reason;
    guint32 doubts;         // bits of all the evidence doubts that stand
    Verdict own_verdict;    // as judged, before finding, concession, read again took it over
    Reason own_reason;      // likewise
    Number *value;          // base units; NULL if there is none
    guint decimals;         // it was typed with, in the check's unit; 0 if it is worked out
    Bound bound;            // of the value
    Number *variance;       // u² in base units; NULL without value
    Number *lower, *upper;  // limits in force, base units; NULL where there is none
    Number *wear;           // service limit, base units, or NULL
    const PlanCheck *check; // of a read or look, else NULL: unit, decimals, source
    char *answer;           // to a look, the grade chosen, a part's lot or serial; else NULL
    guint read, asked_for;  // of a formula: `3 of 6 read`
    GArray *beside;         // ReadingBeside: of a read, those since its basis was last disturbed
                            // that do not count, by rank; NULL for none
    gint64 entry;           // seq of the newest entry that it rests on; 0: none yet
    gint64 conceded, upheld, amended, decided; // seq of the entry, 0 if none counts
    GPtrArray *notes;                          // char *: footnotes in words, in order
    ToolCause tool;   // of a doubt for a tool, or for bolts it stands on: stands or was upheld
    ToolCause redone; // of a bolt tightened again with another tool: that found wrong since or then
    gboolean pulled_again; // of a bolt: once more after it was turned, without being loosened
    gboolean spent; // of the fit of a single-use bolt: it was slackened after it was used up, and
                    // no new one has been fitted since

    Verdict value_verdict; // of the value or the answer alone, any doubt about its evidence apart
    Reason value_reason;   // likewise
    Number *plan_lower, *plan_upper, *plan_wear; // where amended: what the plan asks, or NULL
} Requirement;

typedef struct {
    GPtrArray *requirements; // Requirement *, in the plan's order, withdrawn ones among them
    guint planned, added, withdrawn;
    guint counts[VERDICTS]; // of all that are not withdrawn; planned + added - withdrawn in sum
    GPtrArray *gates;       // GateCount *, one for each gate of the plan
    gint64 upto;            // the last entry judged
} Assessment;

// A gate asks for its own requirements and those of the gates before it.
typedef struct {
    const char *name;
    guint counts[VERDICTS]; // of this gate and those before
    guint left;             // requirements that keep it from being complete
    gint64 sealed;          // seq of its newest live seal, 0 if none
    // Live entries since that seal that can change what the gate asks for: it does not cover them and
    // is to be renewed; 0 where a later gate was sealed, which covers all.
    guint since;
    // How many more than its seal recorded are open, have failed or are in doubt; 0 of all other
    // verdicts, and where it is not sealed.
    guint turned[VERDICTS];
} GateCount;

// Which verdicts turn if this tool was out by so much? Its readings are judged by their value then:
// the doubt of that tool itself (found wrong, overdue, …) is laid aside, with an offset of 0 too.
typedef struct {
    const char *tool;     // its id
    const Number *offset; // added to each of its readings of that kind, base units
    Kind kind;
} Hypothesis;

// Judges entries 1 to `upto` (0: all; `count` at most) of one build's ledger, which are in turn
// (record/order.h). `plan` is the plan in force with what the build added to it
// (judge/extend.h) and outlives the assessment. `hypothesis` may be NULL. The caller frees.
Assessment *assess(const Plan *plan, const Entry *const *entries, gsize count, gint64 upto,
                   const Hypothesis *hypothesis) G_GNUC_WARN_UNUSED_RESULT;
// The build as it stood just before the entry of that seq, by all that is known now: what was done
// from there on does not count, but what was struck since is out, and what was learnt since of
// tools and lots is known. The same owners as for `assess`.
Assessment *assess_before(const Plan *plan, const Entry *const *entries, gsize count,
                          gint64 seq) G_GNUC_WARN_UNUSED_RESULT;
void assessment_free(Assessment *assessment); // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Assessment, assessment_free)

// Whether entries of its kind change no verdict by themselves.
gboolean entry_is_idle(const Entry *entry);

// Whether this requirement keeps its gate from being complete: open (unless optional), fail or in
// doubt.
gboolean requirement_is_left(const Requirement *requirement);
// Whether its value is worked out from what the plan says alone: it is judged like any other, but
// nothing of it was measured.
gboolean requirement_is_by_plan(const Requirement *requirement);
// The sentence that says so; NULL where it is not.
const char *requirement_by_plan_said(const Requirement *requirement);
// What happened to a bolt that was pulled again: `pulled once more after it was turned, …`. Static.
const char *requirement_pulled_said(void);
// The words for a signature over work that was undone, or done again, behind it: `what it was …`.
const char *requirement_undone_said(void);
// Whether it is a bolt at a stage, or the wait of one.
gboolean requirement_is_bolted(const Requirement *requirement);
// Whether a doubt is what it stands for, in its verdict or its own beside it: then each doubt about
// its evidence is told of, and can be upheld.
gboolean requirement_is_doubted(const Requirement *requirement);
// `tool, order`: of doubts (reason_bit), the heaviest first; "" of none. The caller frees with
// g_free.
char *reasons_words(guint32 doubts) G_GNUC_WARN_UNUSED_RESULT;
// The words of its reason, or own reason; where that is a doubt about the evidence, of each such
// doubt that stands, the heaviest first: `tool, order`. The caller frees with g_free.
char *requirement_reasons(const Requirement *requirement, Reason reason) G_GNUC_WARN_UNUSED_RESULT;
// `main clearance 3`: what people call it. The caller frees with g_free.
char *requirement_title(const Requirement *requirement) G_GNUC_WARN_UNUSED_RESULT;
// `read main clearance[3]`, `bolt main caps in Crank[4], stage 2`, `sign Crank, 1`. The caller
// frees with g_free.
char *requirement_name(const Requirement *requirement) G_GNUC_WARN_UNUSED_RESULT;
// The requirement of that name; NULL if there is none.
const Requirement *requirement_of_name(const Assessment *assessment, const char *name);
// The index of the gate, -1 if the plan has none of that name.
gint plan_gate(const Plan *plan, const char *name);
