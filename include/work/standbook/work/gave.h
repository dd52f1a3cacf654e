// What a tool gave where it was set, as its calibration found it: the texts that an entry keeps of
// it, and what follows for a bolt. Pure.
#pragma once
#include <standbook/record/entry.h>
#include <standbook/value/reading.h>

// One row of the field `gave` of a calibration: `91 N·m at 100 N·m`. The readings are pure numbers
// as typed. The caller frees with g_free.
char *gave_text(const Reading *gave, const Unit *gave_unit, const Reading *set,
                const Unit *set_unit) G_GNUC_WARN_UNUSED_RESULT;

// What the tool gave where it was set to `set` (base units, as the result), by the body of a
// calibration: rules/tool.h, tool_gave. NULL where it says nothing of that (NULL for NULL too), or
// in units of another kind than `kind`. The caller frees.
Number *gave_at(const json_t *calibration, Kind kind, const Number *set) G_GNUC_WARN_UNUSED_RESULT;

// The body of the calibration that found a tool wrong after that use of it, or before it and was in
// force then; NULL if none did. `entries` are those of the build, in turn. It belongs to them.
const json_t *gave_found_wrong(const Entry *const *entries, gsize count, const Entry *use);
