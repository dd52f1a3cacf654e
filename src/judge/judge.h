// Inside the room: what is made of what the walk gathers (judge_state.h), file by file.
#pragma once
#include "judge_state.h"

// assess.c
// All that is live, walked through and decided.
void judge_all(Judge *judge);
// Decides what judge_follow found stale.
void judge_decide(Judge *judge);
// The counts and seals as they are now.
void assessment_count(Assessment *assessment, const Judge *judge);
Assessment *assessment_new(const Judge *judge) G_GNUC_WARN_UNUSED_RESULT;

// requirement.c
// A requirement with nothing done yet. Labels and place are shared with `like`, if that is not
// NULL.
Requirement *requirement_new(const PlanRequirement *asked, const Requirement *like);
// Several assessments may share one.
Requirement *requirement_ref(Requirement *made);
void requirement_free(gpointer made);

// stale.c: what entries touch, and what must be decided anew for it
// From here on what is touched is noted; nothing is yet.
void judge_begin_touching(Judge *judge);
// Marks a PlanCheck, PlanGroup, PlanPart or PlanStep.
void judge_touch(Judge *judge, const void *subject);
// Something came over a subject on which readings rest: marks them.
void judge_touch_resting(Judge *judge, const void *subject);
gboolean judge_is_touched(const Judge *judge, const void *subject);
// Judges the ticks of what was touched, follows all that is worked out from what was touched, and
// fills in `stale`.
void judge_follow(Judge *judge);
// Forgets the values of the checks that were touched.
void judge_forget_touched(Judge *judge);
void links_free(Links *links); // NULL is allowed

// entries.c: the entries as a ledger
// Reads all of them; those of rank `below` and above do not count (0: all do), and make nothing
// known unless it is judged in hindsight.
void judge_read_entries(Judge *judge, guint below, gboolean hindsight);
// Reads the next; it has the highest rank.
void judge_read_next(Judge *judge, const Entry *entry);
// Takes back the last of judge_read_next.
void judge_unread_last(Judge *judge);
// Whether the next entry changes nothing in how those before it were walked through, so that it can
// be walked through by itself.
gboolean judge_goes_on(const Judge *judge, const Entry *entry);
void judge_entries_clear(Judge *judge);

// The verdict of a requirement when only live entries below that rank were there; of a finding its
// own. Whole judgements, each made once and kept.
Verdict judge_verdict_before(Judge *judge, guint requirement, guint rank);

// state.c: everything the plan asks for, with nothing done yet. `below` and `hindsight` as
// judge_read_entries has them.
void judge_init(Judge *judge, const Plan *plan, const Entry *const *entries, gsize count,
                const Hypothesis *hypothesis, guint below, gboolean hindsight);
void judge_clear(Judge *judge);
const Entry *judge_entry(const Judge *judge, gint64 seq);
// The unit of these words, kept by the judge; NULL for a pure number.
const Unit *judge_unit(const Judge *judge, const char *words);
guint judge_rank(const Judge *judge, gint64 seq);
Requirement *judge_requirement(const Judge *judge, guint index);
CheckState *judge_check(const Judge *judge, const char *name, const char *step);
// The state of a check as its formulas see it from a step: the last one asked for up to there.
CheckState *judge_check_for(const Judge *judge, const PlanCheck *check, const PlanStep *step);
SetState *judge_set(const Judge *judge, const char *name);
PartState *judge_part(const Judge *judge, const char *name);

// places.c: the places that an entry's `place` means; no place means all of them.
typedef void (*PlaceVisitor)(Judge *judge, guint place, gpointer user);
void judge_each_place(Judge *judge, const GPtrArray *axes, const Entry *entry, const char *field,
                      PlaceVisitor visit, gpointer user);
gssize judge_place(const GPtrArray *axes, const char *const *labels, gsize count);
// The labels of the place at `index`, which belong to the axes, ending in NULL; the caller frees
// the list with g_free.
const char **judge_labels(const GPtrArray *axes, guint index) G_GNUC_WARN_UNUSED_RESULT;

// evidence.c: what the ledger knows of tools, lots and consumables.
// One use of the tool an entry names.
typedef struct {
    gboolean torque;     // a torque tool is needed
    const Number *value; // at which it was used, in base units; NULL: none
    guint turn;          // which use of that entry it is, from 0
} ToolUsed;

// The doubt on that use, the rank of the news that brought it in *evidence, and its cause in
// *cause.
guint32 judge_tool_doubt(const Judge *judge, const Entry *entry, const ToolUsed *used,
                         guint *evidence, gint64 *cause);
// The doubt on what a fit or laid entry put in: lot expired on that day, or recalled since.
// A recall raises *evidence to its rank.
guint32 judge_lot_doubt(const Judge *judge, const Entry *entry, guint *evidence);
// The grade of the lot a fit entry names, or NULL.
const char *judge_lot_grade(const Judge *judge, const Entry *entry);
void judge_tool_free(gpointer tool);
// What a `take` or `news` entry is about: the tool of a calibration, the lot of a recall, else the
// thing itself; NULL for another entry.
const char *judge_subject_id(const Entry *entry);
// Fills in what is known of the gauge of a reading.
void judge_gauge(const Judge *judge, const Entry *entry, ReadingState *reading);
// The newest body about an id (`tool`, `lot`, …) taken or learnt, or NULL.
json_t *judge_known(const Judge *judge, const char *what, const char *id);
// Window between two entries: WINDOW or CLOCK doubt, or 0. `within`: at most `limit` seconds may
// pass, else at least.
guint32 judge_window(const Judge *judge, gint64 from, gint64 to, gboolean within,
                     const Number *limit);

// cause.c: which tool is the reason of a doubt, in one number that travels with it (Place.cause):
// the greater is the heavier cause. 0 where it is none.
gint64 cause_pack(const ToolCause *cause);
// What it stands for goes into the requirement, if that is in doubt for it, or it was upheld.
void requirement_set_tool(Requirement *made, gint64 cause);
ToolCause cause_unpack(gint64 cause);

// walk.c: every live entry in its rank, or one that is next.
void judge_walk(Judge *judge);
void judge_walk_entry(Judge *judge, const Entry *entry);
// bolts.c, parts.c
void walk_tick(Judge *judge, const Entry *entry);
void walk_slacken(Judge *judge, const Entry *entry);
void walk_waited(Judge *judge, const Entry *entry);
void walk_fit(Judge *judge, const Entry *entry);
void walk_rework(Judge *judge, const Entry *entry);
void walk_laid(Judge *judge, const Entry *entry);
// Takes the labels.
void judge_disturb(Judge *judge, const Entry *entry, const void *subject, const GPtrArray *axes,
                   const char **labels);
// Whether every aligned bolt of a set is final now; those ticks are added to `ticks` (BasisTick).
gboolean set_is_final(const Judge *judge, SetState *set, const PlanStep *step,
                      const GPtrArray *axes, const char *const *labels, GArray *ticks);
// A bolt comes loose: what it had been through is open again, unless the plan foresees it.
void judge_slacken_bolt(Judge *judge, SetState *set, guint bolt, const Entry *entry);
TighteningState *tightening_at(const SetState *set, guint index);
const Stage *stage_at(const TighteningState *state, guint stage);
TickState *tick_at(const Judge *judge, guint index);
// Whether a bolt is not there at all: no stage of the tightening asks for it.
gboolean bolt_is_left_out(const Judge *judge, const SetState *set, const TighteningState *state,
                          guint bolt);
// Whether a bolt has been through a stage, or need not be.
gboolean stage_is_past(const Judge *judge, const SetState *set, const TighteningState *state,
                       guint stage, guint bolt);
void judge_fit_requirement(Judge *judge, guint index);

// What the wrench was set to, else the torque or angle that the stage asks for at one bolt; NULL if
// neither is known. Base units; the caller frees.
Number *judge_wrench_amount(Judge *judge, const Entry *entry, const TighteningState *state,
                            guint stage, guint bolt);

// shown.c
// Why what was shown at a bolt makes its stage fail, REASON_NONE if it does not; *note (note may be
// NULL) says it in words that the caller frees, NULL for none.
Reason judge_shown(Judge *judge, const TighteningState *state, const TickState *tick, char **note);

// order.c: what the ticks come to
// For each stage and bolt of a tightening, whether it is out of order as things stand now. Belongs
// to the state.
const gboolean *order_now(const Judge *judge, const SetState *set, TighteningState *state);
void judge_bolt_requirement(Judge *judge, guint index);

// basis.c: what readings and answers stand on
// What is taken at this place at this moment of the walk. Cleared with basis_clear.
Basis basis_at(const Judge *judge, const PlanCheck *check, const GPtrArray *axes, guint place);
void basis_clear(Basis *basis);
// The doubt of the bolts it was taken with, once these are judged; raises *evidence to its rank,
// and *cause to that of their tool.
guint32 basis_doubt(const Judge *judge, const Basis *basis, guint *evidence, gint64 *cause);
// The rank of the newest disturbance of a place of check->axes behind `after`, or of the first one;
// 0 if there is none.
guint basis_fell(const Judge *judge, const CheckState *state, guint place, guint after);
guint basis_fell_first(const Judge *judge, const CheckState *state, guint place, guint after);
// The newest behind `after` that happened in the step in which the check is asked for; 0 if none.
guint basis_undone(const Judge *judge, const CheckState *state, guint place, guint after);
// The newest below `before` that parts readings from those earlier, which no longer compete: a
// disturbance, or a slackening of what the check is `with`.
guint basis_parted(const Judge *judge, const CheckState *state, guint place, guint before);

// reading.c
void walk_read(Judge *judge, const Entry *entry);
void walk_move(Judge *judge, const Entry *entry);
void walk_struck_move(Judge *judge, const Entry *entry);
// Takes back all readings but the first `count`.
void judge_drop_readings(Judge *judge, guint count);

// compete.c: which reading counts
ReadingState *reading_at(const Judge *judge, guint index);
// u² of a single reading with the doubt of its method; it belongs to the reading.
const Number *reading_variance(ReadingState *reading);
// A variance with what is independent of the gauge added: the doubt of the check's method and the ±
// typed with the reading, each times the weight of the reading. The caller frees.
Number *reading_add_doubts(const ReadingState *reading, const Number *weight,
                           const Number *variance);
// u² of any reading of a gauge. The caller frees.
Number *doubt_variance(const ReadingDoubt *doubt) G_GNUC_WARN_UNUSED_RESULT;
// The value of a check that is read. `as_found`: before later work first disturbed it. `evidence`
// has room for its places: rank that an uphold must stand behind.
Array *judge_read_value(const Judge *judge, const CheckState *state, gboolean as_found,
                        guint *evidence);

// What was read beside the reading that counts (Requirement.beside) at a place of a check that has
// a value; the caller frees with g_array_unref.
GArray *judge_beside(const Judge *judge, const CheckState *state,
                     guint place) G_GNUC_WARN_UNUSED_RESULT;

// value.c: what formulas come to
// The value of a check, worked out once. It belongs to the state.
const Array *judge_value(Judge *judge, CheckState *state);
// Forgets what was worked out of a check.
void judge_forget_value(CheckState *state);
const ReadingDoubt *judge_doubt_of(gint source, gpointer judge);
// u² of a place; the caller frees.
Number *judge_variance(const Place *place, gpointer judge);
// What the check's value array has at a place of check->places: NULL where nothing is chosen.
const Place *judge_value_at(const CheckState *state, const Array *value, guint place);
// The same if the label of that index were chosen.
const Place *judge_value_chosen(const CheckState *state, const Array *value, guint place,
                                gssize chosen);
// What the formula of a check comes to in a view. The caller frees.
Array *judge_formula_value(const View *view, const CheckState *state) G_GNUC_WARN_UNUSED_RESULT;
// The doubts of a formula's place (of check->axes) that came to it after a rank.
guint32 judge_newer_doubts(Judge *judge, CheckState *state, guint place, guint rank);
// A formula that is no check: a limit, a stage. The caller frees the value.
AtPlace judge_formula_at(const View *view, const Formula *formula, gint first_doubt,
                         const GPtrArray *axes, const char *const *labels);
// The torque or angle of a stage at one bolt as it stands at this moment of the walk, or once all
// is walked through; NULL if it is not known. The caller frees.
Number *judge_amount(Judge *judge, const PlanTightening *tightening, const Stage *stage,
                     guint bolt);

// other_gauge.c: what would be if it was read with another gauge
// The value of a check in such a view; what is not read yet stands in with a size that is likely.
Array *other_gauge_value(const View *view, CheckState *state) G_GNUC_WARN_UNUSED_RESULT;
// u² of a place in such a view. The caller frees.
Number *other_gauge_variance(const View *view, const Place *place) G_GNUC_WARN_UNUSED_RESULT;
// As judgement_variance_with (judge/other_gauge.h) says.
Number *judge_variance_with(Judge *judge, guint index, const GaugeTrial *trial,
                            gboolean *whole) G_GNUC_WARN_UNUSED_RESULT;

// choices.c: as judgement_choices (judge/choices.h) says.
GArray *judge_choices(Judge *judge, guint index) G_GNUC_WARN_UNUSED_RESULT;

// decide.c: values against limits
// What a value of that u² would get by the limits in force of a requirement.
void judge_against(const Requirement *made, Bound bound, const Number *value,
                   const Number *variance, Verdict *verdict, Reason *reason);
void judge_check_requirement(Judge *judge, guint index);
// The plan's limits at a place; NULL where there are none.
const Limits *judge_limits(const PlanCheck *check, const char *const *labels);
// Amended limits make this requirement pass: conceded, if they turn what stood as a fault then and
// would be one (`before`, for `reason`) without them.
void judge_concede_amended(Judge *judge, guint index, const Entry *entry, Verdict before,
                           Reason reason);
// Whether the value passes when the limit on one side is left out.
gboolean decided_apart_from(const Requirement *made, gboolean low);

// said.c: what entries say about requirements
// Gathers the entries about requirements, once.
void judge_gather_said(Judge *judge);
// What an entry says, and about which requirement. The caller frees its `labels` with g_free.
Said said_read(const Entry *entry, SaidKind kind);
gboolean said_means(const Said *said, const PlanRequirement *asked, const Requirement *made);
void judge_said_clear(Judge *judge);
// Marks what is not needed, withdrawn or added, before anything is worked out.
void judge_mark(Judge *judge, guint index);
gboolean judge_is_left_out(const Judge *judge, guint index);
// Calls `said` for each entry of that kind about each requirement to be decided, by rank.
typedef void (*SaidVisitor)(Judge *judge, const Entry *entry, guint index);
void judge_each_said(Judge *judge, SaidKind kind, SaidVisitor said);
// The next entry of that kind about a requirement, *at counting from 0; NULL if there is none left.
const Entry *judge_said_next(const Judge *judge, guint index, SaidKind kind, guint *at);
// What an uphold argues away, as a reason bit.
guint32 doubt_upheld(const Entry *entry);
// The newest entry of that kind about a requirement that has this field; NULL if there is none.
const Entry *judge_said_last(const Judge *judge, guint index, SaidKind kind, const char *field);
// Argues away what is upheld of ticks, once all were walked through.
void judge_uphold_ticks(Judge *judge);
void judge_uphold_value(Judge *judge, CheckState *state, Array *value, const guint *evidence);
void judge_uphold_rest(Judge *judge);

// since.c: how many entries stand since the seal of that gate (assess.h)
guint judge_since(const Judge *judge, guint gate);

// settle.c: what people decided about it
void judge_settle(Judge *judge);
// Whether a concession about a requirement accepts all these reasons (bits).
gboolean judge_is_accepted(const Judge *judge, guint index, guint32 reasons);

// looks.c: looks and signatures
void walk_look(Judge *judge, const Entry *entry);
void walk_choose(Judge *judge, const Entry *entry);
void walk_sign(Judge *judge, const Entry *entry);
void walk_reopen(Judge *judge, const Entry *entry);
// What a step asks for and what was done at rank `stood` is undone, or done again, at `rank`: the
// signatures given between are in doubt.
void judge_undo(Judge *judge, const PlanStep *step, guint stood, guint rank);
void judge_look_requirement(Judge *judge, guint index);
void judge_sign_requirement(Judge *judge, guint index);

// The heaviest of the reasons to doubt evidence, REASON_NONE if there is none.
Reason first_doubt(guint32 doubts);
// Sets verdict and reason where evidence is in doubt: the heaviest reason first in the closed list.
void requirement_doubt(Requirement *requirement, guint32 doubts);
void requirement_note(Requirement *requirement, char *note); // takes the note
