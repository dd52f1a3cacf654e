// What is to be laid is asked for where it comes in the work (work/laying.h).
#pragma once
#include "view.h"

#include <standbook/work/laying.h>

// The question, over the view, of what comes before that place of its step; GO_STAY where nothing
// does, or it was put off.
Go go_to_lay(Desk *desk, const Agenda *agenda, guint index);
// The same of what is asked there, in the build in hand.
Go go_to_lay_for(Desk *desk, const Requirement *made);
// That of one laying.
Go go_lay(const Laying *laying);
// `sump paste`, and of a lubricant on what: `locker on flywheel bolts`. The caller frees.
char *laying_words(const Laying *laying) G_GNUC_WARN_UNUSED_RESULT;
