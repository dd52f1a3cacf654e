// What a tool gave where it was set, as its calibration found it: the texts that an entry keeps of
// it, and what follows for a bolt. Pure.
#pragma once
#include <standbook/record/entry.h>
#include <standbook/rules/tool.h>
#include <standbook/value/reading.h>

// One row of the field `gave` of a calibration: `91 N·m at 100 N·m`. The readings are pure numbers
// as typed. The caller frees with g_free.
char *gave_text(const Reading *gave, const Unit *gave_unit, const Reading *set,
                const Unit *set_unit) G_GNUC_WARN_UNUSED_RESULT;

// What the tool gave where it was set to `set` (base units, as the result), by the body of a
// calibration: rules/tool.h, tool_gave. NULL where it says nothing of that (NULL for NULL too), or
// in units of another kind than `kind`. The caller frees.
Number *gave_at(const json_t *calibration, Kind kind, const Number *set) G_GNUC_WARN_UNUSED_RESULT;

// Whether the build was told what the tool (by id) gave when it was found wrong.
gboolean gave_tells(const Entry *const *entries, gsize count, const char *tool);

// One calibration of a tool, as a build came to know it.
typedef struct {
    ToolCalibration rule;
    const json_t *body; // belongs to the entries
} GaveCalibration;

// Those of the tool (by id) that the build has taken or been told, struck ones apart, by day, then
// seq: GaveCalibration; freed with g_array_unref. `live` is what live_entries filled in.
GArray *gave_calibrations(const Entry *const *entries, gsize count, const gboolean *live,
                          const char *tool) G_GNUC_WARN_UNUSED_RESULT;

// Of these the body of the one that found the tool wrong after that use of it, or had before it;
// NULL if none did.
const json_t *gave_wrong(const GArray *calibrations, const Entry *use);
