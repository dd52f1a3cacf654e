// What the bolts of a planned set are pulled to by its stages, and what a substitute comes to
// against the torque it stands for. Pure.
#pragma once
#include <standbook/plan/plan.h>
#include <standbook/work/bolt_estimate.h>

// The lines told of the bolt at a position (places_label of the set's axes): its band and share of
// the proof load, a caution, the substitute's sentence, and what is assumed; what the plan would
// have to say if nothing can be worked out. Elements are char *; the caller frees with
// g_ptr_array_unref.
GPtrArray *set_preload_told(const PlanTightening *tightening,
                            guint position) G_GNUC_WARN_UNUSED_RESULT;

// The caution at a stage (from 1): what a check to torque does not show; of any other that the
// upper end passes the proof load of a bolt that is not for one use. NULL for none. The caller
// frees with g_free.
char *set_caution(const PlanTightening *tightening, guint stage,
                  guint position) G_GNUC_WARN_UNUSED_RESULT;

// The sentence of a set whose plan says `instead of`; NULL for any other, and where the two cannot
// be compared. The caller frees with g_free.
char *set_substitute(const PlanTightening *tightening, guint position) G_GNUC_WARN_UNUSED_RESULT;
