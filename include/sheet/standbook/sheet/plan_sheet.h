// A plan as a whole, to be reviewed at the bench without its file: each step with its words, parts,
// checks, bolt sets and holds.
#pragma once
#include <jansson.h>
#include <standbook/plan/plan.h>
#include <standbook/sheet/document.h>

// The caller frees with document_free.
Document *sheet_plan(const Plan *plan) G_GNUC_WARN_UNUSED_RESULT;

// {"plan":…, "revision":…, "family":…, "source":…, "numbering":…, "note":…, "gates":[…],
// "units":[…], "asked":932, "given":{name: as written}, "consumables":{likewise},
// "steps":[{"number":1, "name":…, "phase":…, "gate":…, "minutes":60, "after":[…], "do":[…],
// "cautions":[…], "begins":…, "uses":[…], "hides":[…], "closes":[…], "read again":[…],
// "holds":[{"words":…, "persons":1}], "parts":[{"name":…, "places":[…], "count":1,
// "use":"new", "track":…}], "checks":[{"name":…, "formula":…, "places":[…], "limits":{"": …},
// "unit":…, "gauge":…, "written":{its other keys}}], "tightenings":[{"bolts":"main caps",
// "again":false, "positions":[…], "stages":[…], "order":[…], "written":{…}}]}]}. What is not said
// is null; `limits` has a label as key where each label has its own. The caller frees.
json_t *plan_json(const Plan *plan);
