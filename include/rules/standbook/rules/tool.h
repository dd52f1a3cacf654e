// Whether a use of a wrench or gauge can be relied on: range, calibration interval, and what a
// later calibration says of the uses before it.
#pragma once
#include <glib.h>
#include <gmp.h>
#include <standbook/value/number.h>

// Torque tools follow ISO 6789. A gauge without a calibration is not doubtful for that: its doubt
// then comes from its graduation (JCGM 100:2008, 4.3.7), which is not this room's business.
typedef enum { TOOL_TORQUE, TOOL_GAUGE } ToolSort;

// What a calibration says of the tool as it came in; ADJUSTED says only that it left right.
typedef enum { TOOL_FOUND_GOOD, TOOL_FOUND_WRONG, TOOL_ADJUSTED } ToolFound;

// In rising weight: of several the heaviest counts.
typedef enum {
    TOOL_GOOD,
    TOOL_OVERDUE,      // its calibration had run out
    TOOL_UNKNOWN,      // a torque tool without a calibration, or of unknown full scale
    TOOL_OUT_OF_RANGE, // used where it is not meant to be used; no calibration settles that
    TOOL_WRONG, // found wrong by the next calibration, or used after one and before adjusting
} ToolState;

// Words for a state: "good", "overdue", … Never NULL.
const char *tool_state_words(ToolState state);

// Range as marked, both ends included; an end not marked is NULL. All numbers in one unit.
// A torque tool without a marked lower end begins at 20 % of its full scale (ISO 6789:2003; from
// ISO 6789-1:2017, 5.1.3 on the lowest marked value begins the range). Returns TOOL_GOOD,
// TOOL_OUT_OF_RANGE, or TOOL_UNKNOWN for a torque tool whose `greatest` is NULL.
ToolState tool_range_state(ToolSort sort, mpq_srcptr least, mpq_srcptr greatest,
                           mpq_srcptr used_at);

// Days are counted from 1970-01-01, day 0, by the calendar on the wall; they are handed in.
// The last day on which a torque tool calibrated on `day` is not overdue, where its paper says
// nothing: 12 months (ISO 6789-1:2017: 12 months or 5,000 cycles, whichever comes first). The same
// day of the month a year later, or the last of February. `day` is in years 1 to 9998.
gint64 tool_default_due(gint64 day);

typedef struct {
    gint64 day;
    gint64 seq; // place in the ledger: decides between entries of one day
    gint64 due; // the last day on which it holds; used only if has_due
    gboolean has_due;
    ToolFound found;
} ToolCalibration;

// The last day on which a calibration holds: as its paper says, of a torque tool whose paper says
// nothing and which was not found wrong, tool_default_due; FALSE where none is set.
gboolean tool_last_day(ToolSort sort, const ToolCalibration *calibration, gint64 *day);

// How many uses a calibration of a torque tool lasts (ISO 6789-1:2017).
enum { TOOL_USES_MOST = 5000 };

typedef struct {
    gint64 day, seq;
    guint count;     // uses since that calibration, this one included; 0 where nobody counts
    ToolState range; // from tool_range_state
} ToolUse;

typedef struct {
    ToolState state;
    gssize before; // index of the calibration in force at the use, -1 if none
    gssize after;  // index of the next one, -1 if there is none yet
} ToolStanding;

// Judges one use against all calibrations of the tool known today, `count` of them in order of day,
// then seq. The later calibration decides over the span since the one before it:
// - found good clears an overdue or unknown use, found wrong keeps every use in the span in doubt,
//   also those that were in date; adjusted settles nothing backwards (the tool was not looked at as
//   found), so that a use keeps the state it had.
// - a use after found wrong and before the next calibration is TOOL_WRONG whatever comes next: the
//   fault was known, and a tool found good unadjusted contradicts it.
// - overdue: after `due`; a torque tool without one after tool_default_due, or from the 5,001st use
//   on, whichever is first. A gauge without a due day does not run out.
ToolStanding tool_use_standing(ToolSort sort, const ToolCalibration *calibrations, gsize count,
                               const ToolUse *use);

// What a wrench is set to so that it pulls `torque` through an adapter: W = T·L / (L + E), L from
// the middle of the grip to the wrench's square, E from there to the middle of the bolt along the
// wrench (tool_reach_along). All in base units. NULL if L or L + E is not above
// 0. The caller frees.
Number *tool_setting(const Number *torque, const Number *length,
                     const Number *reach) G_GNUC_WARN_UNUSED_RESULT;

// How far an adapter reaches along the wrench: reach · cos angle, the angle from the wrench's own
// line in degrees; NULL: in line. Below 0 where it points back. The cosine is good to 12 decimals; a
// wrench is set to a tenth, and that rounded setting is what a tick keeps and its range is judged by.
// The caller frees.
Number *tool_reach_along(const Number *reach, const Number *angle) G_GNUC_WARN_UNUSED_RESULT;

// What a calibration found a tool to give at a setting. All in one unit, base units or not; `set`
// is above 0.
typedef struct {
    const Number *set, *gave;
} ToolGave;

// What the tool gave where it was set to `set`, by what it gave at `count` settings, each but once
// and in any order: the ratio of gave to set runs in a straight line between the two settings
// beside it, and stays that of the nearest outside them (common practice, no published source).
// NULL where nothing is known. The caller frees.
Number *tool_gave(const ToolGave *rows, gsize count, const Number *set) G_GNUC_WARN_UNUSED_RESULT;
