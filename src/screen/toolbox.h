// The shop's tools as a place needs them, and which are in hand at this terminal.
#pragma once
#include "desk.h"

typedef enum { NEED_GAUGE, NEED_TORQUE, NEED_ANGLE } Need;

typedef struct {
    Need need;
    const char *sort;      // of a gauge: `bore gauge`; NULL for any. Of a wrench the label of the
                           // adapter that the plan names, with its angle; NULL for none
    const Number *value;   // base units, what it must be able to show; NULL if not known
    const Number *ceiling; // likewise of a bolt pulled until a check passes, what it must not pass:
                           // its tool is judged as a gauge; NULL of all else
    const Number *least, *greatest; // likewise of a gauge: what may be read there, as long as no
                                    // value is known; NULL for an end that is not known
    const PlanCheck *check;         // of a gauge: what is read; NULL if nobody said
} ToolNeed;

// What a need is of, as questions say it: `gauge`, `wrench`, `angle gauge`. Static.
const char *need_words(Need need);

// The labels (const char *) of all that can serve. First those in calibration whose range holds the
// value, then what would leave its work in doubt; of either the one in hand, then the one used last
// in this build. The caller frees with g_ptr_array_unref.
GPtrArray *toolbox_all(Desk *desk, const ToolNeed *need) G_GNUC_WARN_UNUSED_RESULT;

// Whether the shop has a tool of that label in use; whether it is of the sort that is needed.
gboolean toolbox_has(const Desk *desk, const char *label);
gboolean toolbox_serves(const Desk *desk, const ToolNeed *need, const char *label);

// The one to use without asking; NULL if a person must say. A gauge is the one in hand, the one
// used last for this in this build, or the only one of its sort, of those that hold the value if
// any does, else of those that reach what may be read there; for a check that names no sort the one
// in hand alone, if it measures such and reaches that. A wrench must have been taken in hand at
// this terminal and hold the value. What does not reach, or was found wrong and not put right
// since, is passed over until a person takes it for that all the same.
const char *toolbox_for(Desk *desk, const ToolNeed *need);

// `G03 was found wrong on 11 Mar; G05 is taken, g takes another`, `G03 reads 0-25 mm; g takes
// another`, `G03 is out of use (put aside 14:02, 3 min ago): g takes another`: why what was in use is passed over, and what is taken instead (`taken`, by toolbox_for;
// NULL: nothing), until that was used once. NULL if nothing is passed over. The caller frees with
// g_free.
char *toolbox_wrong_words(Desk *desk, const ToolNeed *need,
                          const char *taken) G_GNUC_WARN_UNUSED_RESULT;

// The wrenches for a torque, and each adapter with those that hold it and with which the setting is
// known: `W1`, `W1 with X1` (char *); with the adapter that the plan names first, in any case. The
// caller frees with g_ptr_array_unref.
GPtrArray *toolbox_wrenches(Desk *desk, const ToolNeed *need) G_GNUC_WARN_UNUSED_RESULT;

// The adapter chosen by hand for the bolt in hand: its label, "" for none; NULL if nobody chose,
// and the plan counts.
const char *toolbox_adapter(const Desk *desk);
// The next bolt is in hand.
void toolbox_forget_adapter(Desk *desk);

// Takes a tool in hand, by a label as above.
void toolbox_take(Desk *desk, const ToolNeed *need, const char *label);

// The same of what does not reach: a wrench is then used for that value, a gauge for that check all
// the same.
void toolbox_take_beyond(Desk *desk, const ToolNeed *need, const char *label);

// No gauge is in hand for such a need, till one is taken: an angle is turned by a mark, and what is
// read is read with none. And whether none is.
void toolbox_take_none(Desk *desk, const ToolNeed *need);
gboolean toolbox_is_none(const Desk *desk, const ToolNeed *need);

// The label of a tool with what the plan puts on it here: `W9 with X1`. The caller frees with
// g_free.
char *toolbox_as_planned(const ToolNeed *need, const char *label) G_GNUC_WARN_UNUSED_RESULT;

// `bore gauge 50-150, set in the micrometer`; "" if there is no such tool.
const char *toolbox_words(const Desk *desk, const char *label);
// What NEXT says of the gauge to read with: `G03 bore gauge, zeroed in G02`; for NULL which sort is
// to be taken in hand. `sort` NULL: the gauge's own. The caller frees with g_free.
char *toolbox_gauge_words(Desk *desk, const char *sort,
                          const char *label) G_GNUC_WARN_UNUSED_RESULT;
// What stands against using a tool today, or when its calibration runs out, by
// work/tool_standing.h; `set` is what it is set to or turned by, NULL for a gauge or where that is
// not known; where there is a ceiling, whether it reaches that. `adapter` NULL for none.
// The uses since its calibration are told where nearly all are over.
// "" for nothing. The caller frees with g_free.
char *toolbox_standing(const Desk *desk, const ToolNeed *need, const char *label,
                       const char *adapter, const Number *set) G_GNUC_WARN_UNUSED_RESULT;
// What of that stands against its range alone, for what is needed: `5-25 N·m: 100 is outside`.
// Likewise.
char *toolbox_outside(const Desk *desk, const ToolNeed *need,
                      const char *label) G_GNUC_WARN_UNUSED_RESULT;
// `G03 reads 50-75 mm`: why a gauge does not serve. The caller frees with g_free.
char *toolbox_reads(const Entry *tool) G_GNUC_WARN_UNUSED_RESULT;
// A line for each wrench or angle gauge of a list, by their digits: a mark if it is fit, what it is
// and how it stands: ` √ 1   W3 click wrench 60-300   due 15 Oct √, 214 uses since`. The caller
// frees with g_free.
char *toolbox_lines(const Desk *desk, const ToolNeed *need, const GPtrArray *labels,
                    guint most) G_GNUC_WARN_UNUSED_RESULT;
