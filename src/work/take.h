// Inside the taking of one line: what the verbs share.
#pragma once
#include <standbook/work/line.h>
#include <standbook/work/words.h>

struct LineCarry {
    char *date; // `2025-03-13`, NULL before the first
    char *time; // `11:36`
    char *by;   // id of the person
};

// The names of one sort, as words_name takes them.
typedef struct {
    GPtrArray *checks, *groups, *parts, *steps, *consumables;
} PlanNames;

struct LineTaker {
    const Plan *plan;
    PlanNames names;
    Shop *shop;
    char *shop_ledger, *build;
    LineHelp help;
    GPtrArray *entries; // Entry *
    GHashTable *known;  // `what id` of all that was taken or learnt
    GHashTable *told;   // id of a person or owner → name: of the lines taken so far
    LineCarry carry;
    const char *step; // name of the step in hand: belongs to its entry; NULL if none
    gboolean trust_times;
};

// One line being taken.
typedef struct {
    LineTaker *taker;
    Words words;
    LineCarry carry;
    char *at, *done;    // as entries have them
    char *day;          // on which it was done
    gint64 after;       // 0 if it stands where it was typed
    gboolean paper;     // from paper
    gboolean correct;   // what is said of a thing of the shop takes the place of what was said
    const Entry *said_before; // that thing
    GPtrArray *takes;   // Entry *: what the build relies on from now on
    GPtrArray *made;    // Entry *: what the line says
    GPtrArray *shop;    // Entry *: for the shop's ledger
    GPtrArray *news;    // Entry *: for builds, this one among them
    GPtrArray *names;   // LineName *
    GPtrArray *remarks; // char *: as LineTaken has them
    GBytes *kept;       // the assessment of a seal
    GHashTable *known;  // `what id` taken by this line
} Take;

typedef gboolean (*Verb)(Take *take, GError **error);

// line.c
// A new entry of this build, or of the shop, by the person of the line.
Entry *take_entry(Take *take, const char *kind);
Entry *take_shop_entry(Take *take, const char *kind);
// Its step: the one given, else the one in hand.
void entry_set_step(const Take *take, Entry *entry, const PlanStep *step);
void entry_set_labels(Entry *entry, const GPtrArray *axes, guint place);
void entry_set_reading(Entry *entry, const char *field, const Reading *reading);
const PlanStep *take_step_in_hand(const Take *take);
const Entry *take_entry_at(const Take *take, gint64 seq);
// Which of the build's entries count. The caller frees with g_free.
gboolean *take_live(const Take *take) G_GNUC_WARN_UNUSED_RESULT;
// Adds a sentence to the answer, made clean text: what the person may want to know though the line
// is taken.
void take_remark(Take *take, const char *format, ...) G_GNUC_PRINTF(2, 3);

// line_when.c: the front of a line and its endings.
// The date and time, if they are written.
gboolean read_when(Take *take, GError **error);
// Whether a word can stand for a person in front of a verb: two to four capitals.
gboolean is_initials(const char *word);
// The initials, if they are written.
gboolean read_who(Take *take, GError **error);
// The moment of the line: its own date and time, of the day of `now` where only a time is said.
// Refused, at the place `at` of the line, if that is still to come.
gboolean work_out_times(Take *take, Moment now, const char *at, GError **error);
// Takes `from paper` and `after #41` off the end of a copy of the line: they are read first,
// because some verbs take all that is left.
gboolean cut_endings(Take *take, char *line, GError **error);

// taken.c: what the build relies on.
// Takes an entry of the shop into the build, unless it is there already.
void take_in(Take *take, const Entry *entry);
void take_in_build(Take *take); // build, plan, engine, owner, rules of the shop
// Reads `with TOOL` of a tool's label; takes the tool, the calibration in force and later ones.
gboolean take_tool(Take *take, const Entry **tool, const char **calibration, GError **error);
// A person by initials, NULL with an error.
const Entry *take_person(Take *take, GError **error);
const Entry *take_lot(Take *take, GError **error);
const Entry *take_consumable(Take *take, GError **error);
// The `what id` of a take or news, NULL for others. The caller frees with g_free.
char *taken_key(const Entry *entry) G_GNUC_WARN_UNUSED_RESULT;
// Tells every build that took `what` `id` about an entry of the shop made by this line.
void take_news(Take *take, const Entry *entry, const char *what, const char *id);
// The build as it stands, NULL where nobody judges it.
const Assessment *take_assessment(const Take *take);
// A label of the shop that must be there: refused with the nearest.
const Entry *take_shop_label(Take *take, const char *kind, const char *what, GError **error);

// verb_tool.c
// A unit, one word or as `lbf ft` two (unit_span). NULL with an error; the caller frees.
Unit *take_unit(Take *take, GError **error);

// verb_gave.c
// Reads `gave` and what the tool gave at which settings, if they are there, into a calibration.
// `range` is the unit of the tool's range, NULL if it has none.
gboolean take_gave(Take *take, Entry *entry, const Unit *range, GError **error);

// verb_zero.c
// A signed reading of a gauge that stands at zero on a known size becomes the size read: `+27` is
// that many marks of its dial beyond, `+0.027` so much. Returns the words on it, for the caller to
// free; NULL, and nothing changed, if it is none.
char *read_from_zero(const Take *take, const Entry *tool, const Unit *unit, Reading *reading);

// target.c: what a line is about.
enum { TARGET_CHECKS = 1, TARGET_GROUPS = 2, TARGET_PARTS = 4, TARGET_STEPS = 8 };

typedef struct {
    const char *at, *end; // where it stands in the line
    const char *name;
    const PlanCheck *check; // one of these four
    const PlanGroup *group;
    const PlanPart *part;
    const PlanStep *itself;
    const PlanStep *step;             // where it is done; NULL if that is not known and not needed
    const PlanTightening *tightening; // of a group in that step
    const GPtrArray *axes;            // its places
    gssize *picked;                   // for each axis the label, -1 where left out
    gboolean said;                    // a place is written
    gboolean says_asked;              // `read`, `bolt` … stands in front, as it is printed
    Asked asked;                      // likewise
    guint number;                     // `, stage 2` or the signature; 0 if it is not said
    const char *number_at;            // likewise
    GArray *places;                   // guint: those meant
} Target;

// Reads a target of one of the sorts, as a line has it or as a requirement is printed: `main
// caps[4] in Crank` or `bolt main caps in Crank[4], stage 2`. Without `need_step`, a group stands
// without a step where it is not clear. Clear it with target_clear also when refused.
gboolean take_target(Take *take, unsigned sorts, gboolean need_step, Target *target,
                     GError **error);
void target_clear(Target *target);
// Refuses a single stage or signature, for verbs that know none.
gboolean target_is_whole(const Take *take, const Target *target, GError **error);
// Whether a requirement is of the sort and the stage or signature that the target says, if it does.
gboolean target_fits(const Target *target, guint asked, guint number);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Target, target_clear)
const PlanStep *take_step(Take *take, GError **error);
guint target_place(const Target *target, guint index);
// The target as it was typed. The caller frees with g_free.
char *target_typed(const Target *target) G_GNUC_WARN_UNUSED_RESULT;
// `40 > 75 > 100`. The caller frees with g_free.
char *stages_in_words(const PlanTightening *tightening) G_GNUC_WARN_UNUSED_RESULT;

// take_wrench.c: what stands behind the bolts of a line: what the wrench showed, the wrench, its
// adapter.
typedef struct {
    Reading shown;
    const Entry *tool;
    const char *calibration;
    const Entry *adapter;
    char *angle; // of the adapter, as typed; NULL if it is not said
} TakenWrench;

gboolean take_wrench(Take *take, const Stage *stage, TakenWrench *wrench, GError **error);
void taken_wrench_clear(TakenWrench *wrench);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(TakenWrench, taken_wrench_clear)
// How many of the bolts (positions) from the one at index `first` on share a tick: those reached
// with one adapter at one angle, for which the wrench is set to the same. At least 1.
guint taken_wrench_alike(const Take *take, const Target *target, const GArray *bolts, guint first,
                         const TakenWrench *wrench);
// Enters it into the tick of this bolt (a position) and those alike, with what the wrench is set to
// through the adapter.
void taken_wrench_set(Take *take, const Target *target, guint bolt, const TakenWrench *wrench,
                      Entry *tick);

// The verbs.
gboolean verb_read(Take *take, GError **error);
gboolean verb_look(Take *take, GError **error);
gboolean verb_choose(Take *take, GError **error);
gboolean verb_claim(Take *take, GError **error);
gboolean verb_zero(Take *take, GError **error);
gboolean verb_move(Take *take, GError **error);
gboolean verb_tighten(Take *take, GError **error);
gboolean verb_slacken(Take *take, GError **error);
gboolean verb_waited(Take *take, GError **error);
gboolean verb_fit(Take *take, GError **error);
gboolean verb_rework(Take *take, GError **error);
gboolean verb_lay(Take *take, GError **error);
gboolean verb_pick_up(Take *take, GError **error);
gboolean verb_put_down(Take *take, GError **error);
gboolean verb_sign(Take *take, GError **error);
gboolean verb_reopen(Take *take, GError **error);
gboolean verb_close(Take *take, GError **error);
gboolean verb_note(Take *take, GError **error);
gboolean verb_photo(Take *take, GError **error);
gboolean verb_cost(Take *take, GError **error);
gboolean verb_strike(Take *take, GError **error);
gboolean verb_decide(Take *take, GError **error);
gboolean verb_add(Take *take, GError **error);
gboolean verb_amend(Take *take, GError **error);
gboolean verb_withdraw(Take *take, GError **error);
gboolean verb_not_needed(Take *take, GError **error);
gboolean verb_concede(Take *take, GError **error);
gboolean verb_uphold(Take *take, GError **error);
gboolean verb_seal(Take *take, GError **error);
gboolean verb_shop(Take *take, GError **error);

// verb_strike.c
// Why something is struck: one of the words for it, or words in quotes. NULL with an error; the
// caller frees.
char *take_cause(Take *take, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// A verb and what reads it; the longest phrase stands first.
typedef struct {
    const char *phrase;
    Verb take;
} VerbRow;

gboolean take_verb(Take *take, const VerbRow *rows, gsize count, GError **error);
// `customer telephone`: how the customer was asked; NULL if nothing is said. FALSE if wrong.
gboolean take_customer(Take *take, const char **how, GError **error);
