// An assessment as JSON, whole and exact, for other programs and for a seal.
#pragma once
#include <jansson.h>
#include <standbook/judge/assess.h>
#include <standbook/sheet/sheet.h>

// {"upto":41, "planned":…, "added":…, "withdrawn":…, "counts":{"open":1,…}, "gates":[{"gate":…,
// "left":0, "counts":{…}, "sealed":40, "since":0, "turned":{}}], "requirements":[{"name":"read main
// clearance[3]", "asked":"read", "of":"main clearance", "place":"main 3", "stage":0, "step":…,
// "gate":…, "verdict":"pass", "reason":"", "own verdict":…, "value":"41/1000000", "shown":"0.041",
// "unit":"mm", "lower":…, "upper":…, "wear":…, "variance":…, "doubt":"±.005", "answer":…,
// "entry":17, "conceded":0, "upheld":0, "amended":0, "decided":0, "optional":false,
// "finding":false, "withdrawn":false, "added":false, "notes":[…]}]}. Exact numbers are text, in
// base units (value/unit.h); what there is not is null. The same assessment has the same bytes when
// dumped with JSON_COMPACT. The caller frees with json_decref.
json_t *assessment_json(const Plan *plan, const Assessment *assessment);

// What certificates claim beside the own readings (work/claim.h): [{"name":"read bore[4, T, mid]",
// "entry":212, "certificate":"BG-2291", "claimed":…, "claimed doubt":…, "difference":…, "doubt":…,
// "E_n":"3.28", "answer":"they do not agree"}]. Exact numbers are text, in base units; E_n is
// rounded to two places; what is not known is null. Not part of what a seal keeps. The caller frees
// with json_decref.
json_t *claims_json(const SheetSource *source);
