// The kept form of an assessment: what a seal fixes. The same assessment always gives the same
// bytes, so that its SHA-256 can stand in the seal and on paper; it says of every requirement the
// verdict, its reason, the exact value and the entry it rests on.
#pragma once
#include <standbook/judge/assess.h>

// The edition of the rules by which verdicts are reached: record.md §3 to §5 as this program has
// them. A change of any rule that can turn a verdict gets a new one.
extern const char EDITION[];

// JSON, one line: {"edition":…,"upto":…,"counts":{…},"requirements":[{"name":…,"verdict":…,
// "reason":…,"value":…,"entry":…},…]}. The caller frees with g_free.
char *assessment_keep(const Assessment *assessment) G_GNUC_WARN_UNUSED_RESULT;

// Sentences (char *) on what a kept form and today's assessment judge differently: `read main
// clearance[3]: pass then, in doubt · basis today`, those of one check or of one set at a stage
// that changed alike as one, `[1 to 4]`; where there are any and the rules had another edition
// then, the last says so. NULL with an error (NO) if the bytes are no kept form. The caller frees
// with g_ptr_array_unref.
GPtrArray *assessment_differences(const char *kept, const Assessment *today,
                                  GError **error) G_GNUC_WARN_UNUSED_RESULT;
