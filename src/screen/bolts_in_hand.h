// Which bolt of a set is in hand on the page of a tightening: the first that is open, or the one it
// was opened for or walked to; which are done once more, and whether it is asked how one was left.
#pragma once
#include "desk.h"
#include "slip.h"
#include "supposed.h"
#include "tightening.h"

typedef struct {
    char *number; // of the build
    char *set, *step;
    guint here;    // the turn in hand
    char *first;   // the requirement to begin with, done or not; NULL for what is open
    gboolean over; // opened over a setting, which goes on behind it
    char *check;   // then its check and place
    guint place;
    guint opened;        // how many entries there were then
    gboolean placed;     // by -Enter or +Enter: it stays there though it is done
    guint asked;         // the stage for which the wrench was asked, 0: none, or one is in hand
    Moment tried;        // the end of the wait that was entered last as waited
    gint64 answered;     // seq of the interruption whose question was answered
    gint64 loosened;     // seq of the loosening that was heeded last
    gboolean asks_again; // whether to begin the stage again, or to loosen a bolt
    gboolean only_again; // opened for that question alone
    gint64 again;      // seq of the note that began a stage again, 0 for none: its bolts are taken
    guint again_stage; // once more, as far as they were not ticked behind it
    gint64 mends;      // seq up to which bolts in doubt are done again, 0: none is,
    Reason reason;     // and why they are in doubt: that of the bolt with which it began
    Slip slip;         // a line that was asked about once
    Supposed supposed; // by what is typed
    // With so many entries nothing had to be closed before the turn `ready_at`:
    guint ready;
    guint ready_at;
} BoltsInHand;

// By the argument of the page: the set, the step, then `over`, a check and its place, or the
// requirement to begin with and perhaps `again`, a line each. Freed with bolts_in_hand_close.
BoltsInHand *bolts_in_hand_open(Desk *desk, const char *argument) G_GNUC_WARN_UNUSED_RESULT;
void bolts_in_hand_close(BoltsInHand *bolts);

// The tightening as it stands now, by the bolts that are done once more; NULL where the build has
// none of it. The caller frees with tightening_free.
Tightening *bolts_tightening(const BoltsInHand *bolts, Desk *desk) G_GNUC_WARN_UNUSED_RESULT;
// The turn in hand; NULL when all are done.
const Turn *bolts_turn(BoltsInHand *bolts, const Tightening *tightening);

// Once bolts of this set are loosened, what is open again comes first, wherever one was.
void bolts_heed_loosened(BoltsInHand *bolts, Desk *desk);
// Mends no more where the bolt that was done again, the turn `here`, is in doubt as before.
void bolts_heed_mended(BoltsInHand *bolts, Desk *desk, guint here);

// Whether nobody knows how the bolt in hand was left: a pull by angle does not tell whether it was
// begun. A pull to a torque may be done twice. Of one that is ticked nothing is asked, also where
// it is walked back to; nor is who has not picked it up yet.
gboolean bolts_ask_how_left(const BoltsInHand *bolts, Desk *desk, const Tightening *tightening,
                            const Turn *turn);
