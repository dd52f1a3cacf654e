// Whether a move of a setting, or what is read loose behind it, is likely a slip of the fingers: it
// is asked about once and never corrected. Pure.
#pragma once
#include <standbook/work/advice.h>

// What is asked about a move as it was typed; NULL where it is no slip, or cannot be read. It is
// one where how far to move as advised was typed for where the adjuster stands then; a value like
// what was read last, far from what is advised and further from where it stood; where it leads
// ten times, or a tenth, as far as the advised move does, and lies further from there than twice
// that move; beyond the range of the adjuster; further from where the advised move leads than ten
// times that move; or, without a range, so far that by the plan's word it answers by more than 20
// widths of its limits, for it begins at most ten outside of them (slip.h). These are rules of our
// own, no published source. `step`: it was typed as a step, not as where the adjuster stands. The
// caller frees with g_free.
char *move_slip(const Trials *trials, const NextMove *advised, const char *typed,
                gboolean step) G_GNUC_WARN_UNUSED_RESULT;

// What is asked about a loose reading of a place as it was typed; NULL where it is no slip, cannot
// be read, or says nothing alone, as for a formula. It is one where the adviser finds that it does
// not follow from what went before (SETTING_SLIP). `earlier` as for next_move_of. The caller frees
// with g_free.
char *loose_slip(const Trials *trials, const NextMove *advised, const GArray *earlier, guint place,
                 const char *typed) G_GNUC_WARN_UNUSED_RESULT;

// What is asked about a tightened reading of a place behind another shim: where that is thicker,
// and it reads by more than the gauge's graduation the other way than the plan's word has it, or
// thinner likewise. NULL where it does not, where no shim sets it, or for a formula. The caller
// frees with g_free.
char *way_slip(const Trials *trials, const NextMove *advised, guint place,
               const char *typed) G_GNUC_WARN_UNUSED_RESULT;
