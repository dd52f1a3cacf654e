// The three documents of a build, each made from its plan, its entries and their assessment and
// from nothing else. All sheets say that the maker's current service data, local codes and licensed
// practice come first. The caller frees a document with document_free.
#pragma once
#include <standbook/judge/assess.h>
#include <standbook/sheet/document.h>
#include <standbook/work/opened.h>

typedef struct {
    const Plan *plan; // in force, with what the build added
    const Entry *const *entries;
    gsize count;
    const Assessment *assessment; // of these entries and this plan
    const Taken *taken;           // of these entries
    const char *build;            // its number
    const char *shop;             // the workshop's name, NULL if it is not known
    const char *digest;     // of the ledger's last entry, NULL if that is not what is looked at
    const char *since_seal; // what is judged differently since the newest seal, NULL if nothing
} SheetSource;

// A source made of a build and its assessment; all of it belongs to the two.
SheetSource opened_source(const Opened *opened, const Assessment *assessment);

// For the customer: what was measured, tightened, fitted, conceded and left undecided, in plain
// words beside the figure. Nothing of the workshop's own talk: no notes, prices, struck entries,
// other builds.
Document *sheet_customer(const SheetSource *source) G_GNUC_WARN_UNUSED_RESULT;

// Everything: each entry in its order, struck ones with their cause; each requirement with its
// verdict; settings try by try; tools with their calibrations, lots, interruptions, notes, costs.
Document *sheet_record(const SheetSource *source) G_GNUC_WARN_UNUSED_RESULT;

// Whether the build is complete for a gate (its index in the plan): prints its own gaps; an empty
// list of gaps is the proof.
Document *sheet_completion(const SheetSource *source, guint gate) G_GNUC_WARN_UNUSED_RESULT;

// The assessment alone, to be read: counts by gate, then what is left, and what was conceded,
// upheld or amended, bolts of a stage and places of a check with the same verdict in one row; with
// `all` every requirement by itself.
Document *sheet_assessment(const SheetSource *source, gboolean all) G_GNUC_WARN_UNUSED_RESULT;
