// Inside the room: a formula where it stands in the file.
#pragma once
#include "read.h"

// Where a text stands that is a formula or holds some.
typedef struct {
    Reader *reader;
    const PlanStep *step; // NULL for a constant, which can use only constants
    const char *where;    // begins the messages
    guint line, column;   // of the text
} Site;

Site site_of(Reader *reader, const PlanStep *step, const char *where, const TreeNode *node);

void site_fault(const Site *site, gsize offset, const char *message);

// Finds what the formula names, binding it first: each name is there, is a number, and is read in
// this step or one that comes before. FALSE if one is not, or has a fault of its own; every fault
// is told once.
gboolean site_find_names(const Site *site, const Formula *formula);

// The kind of a formula whose names are found. FALSE with a fault.
gboolean site_kind(const Site *site, const Formula *formula, Kind *kind);

// The places of a formula whose names are found: an array with its axes. NULL with a fault.
Array *site_shape(const Site *site, const Formula *formula);

// The constant of that name, a new reference; NULL if there is none.
Array *site_given(const Plan *plan, const char *name) G_GNUC_WARN_UNUSED_RESULT;

// Whether formulas may still be worked out at so many places times operators: a hostile file must
// not cost much time.
gboolean can_work(Reader *reader, guint64 work);

// Its value where it names constants only. NULL with a fault.
Array *site_value(const Site *site, const Formula *formula, gint first_doubt);
