// A tool as rules/tool.h judges it: its range and its calibrations, from what is written of them.
#pragma once
#include <jansson.h>
#include <standbook/rules/tool.h>
#include <standbook/value/number.h>

// The day of a date (`2025-03-13`), counted as rules/tool.h does; G_MININT64 for none.
gint64 tool_day(const char *date);
// The date of a day. The caller frees with g_free.
char *tool_day_text(gint64 day) G_GNUC_WARN_UNUSED_RESULT;
// What the body of a calibration says; `seq` is the place in the ledger where it is known.
ToolCalibration tool_calibration(const json_t *body, gint64 seq);
// Whether a range holds a value, by tool_range_state; TOOL_GOOD also where neither end is marked or
// the value (NULL) is not known.
ToolState tool_range(ToolSort sort, const Number *least, const Number *greatest,
                     const Number *value);
