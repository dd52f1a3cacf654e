// The tries of a setting as strips in one window, so that they can be compared with one another.
#pragma once
#include <standbook/work/trials.h>

// In the unit of the check; a cell is one step.
typedef struct {
    Number *from, *step; // NULL where there is nothing to be seen
    guint cells;
    guint decimals; // with which its ends are printed
} TrialWindow;

// A window of so many cells that has the limits with room beside them, the aim and every reading
// with its doubt, in steps of 1, 2 or 5 in a decimal place. The caller clears it.
TrialWindow trial_window(const Trials *trials, guint cells);
void trial_window_clear(TrialWindow *window);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(TrialWindow, trial_window_clear)

// Its last cell. The caller frees.
Number *trial_window_end(const TrialWindow *window) G_GNUC_WARN_UNUSED_RESULT;

// The strip of one trial in it (strip.h); empty if the window is. The caller frees with g_free.
char *trial_strip_in(const Trials *trials, const Trial *trial,
                     const TrialWindow *window) G_GNUC_WARN_UNUSED_RESULT;
