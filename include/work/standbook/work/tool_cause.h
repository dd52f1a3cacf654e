// Which tool is the reason of a doubt, told of a requirement (Requirement.tool). Pure.
#pragma once
#include <standbook/judge/assess.h>
#include <standbook/work/entry_words.h>

// `Click wrench of main caps found wrong 2025-03-11 (9 % low).`, `… had a calibration that
// ran out 2025-10-15.`, `… was used outside its range.`, `… had no calibration on record.`: one
// sentence; NULL where no tool is the reason. What a calibration notes of the wrench of bolts
// stands with these alone, not with what was read in them. The caller frees with g_free.
char *tool_cause_words(const Taken *taken, const Entry *const *entries,
                       const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;

// `click wrench was found wrong on 2025-03-11 (9 % low)`, of the tool that a bolt was done again
// for (Requirement.redone); NULL for none. The caller frees with g_free.
char *tool_redone_words(const Taken *taken, const Entry *const *entries,
                        const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;

// The last day on which its calibration held, `2025-10-15`; NULL unless it had run out by then when
// it was used (not by how often). The caller frees with g_free.
char *tool_ran_out(const Entry *const *entries, const ToolCause *cause) G_GNUC_WARN_UNUSED_RESULT;

// A text of the calibration that an entry of a build takes or tells of; NULL if it has none.
const char *calibration_text(const Entry *entry, const char *field);
