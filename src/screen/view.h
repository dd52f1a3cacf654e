// A view: what is shown and asked on one screen. A view knows no other; it says what is to be
// opened, and the loop does it.
#pragma once
#include "desk.h"
#include "page.h"

typedef enum {
    VIEW_FIRST,      // an empty logbook
    VIEW_SHOP,       // all builds
    VIEW_STEPS,      // one build and its steps
    VIEW_BENCH,      // readings, looks, parts, signatures of a step
    VIEW_TIGHTENING, // bolts of a step
    VIEW_SETTING,    // a setting by trials
    VIEW_CLOSING,    // before a step is signed
    VIEW_WHO,        // small: who picks up
    VIEW_STRIKE,     // small: why the last entry is struck
    VIEW_MORE,       // small: the words behind `.` Enter
    VIEW_GAUGE,      // which gauge or wrench
    VIEW_NOTE,       // small: words on the place in hand
    VIEW_ENTER,      // small: a person who is new, what a gauge was zeroed on
    VIEW_TOOL,       // a tool that is new
    VIEW_END,        // small: what became of a tool that is worked with no more
    VIEW_LOOSEN,     // small: why a bolt is loosened
    VIEW_CAUTION,    // what may hurt in this step
    VIEW_CONCEDE,    // accepts what is outside, with its reasons
    VIEW_DECIDE,     // small: what is done about a finding
    VIEW_ACCEPT,     // small: whether a doubt is conceded or upheld
    VIEW_LAY,        // small: a sealant is laid, on what, out of which lot
    VIEW_REWORK,     // small: a place that was worked on since it was read
    VIEW_UPHOLD,     // small: a doubt that does not count
    VIEW_WHY,        // what a verdict rests on
    VIEW_WORKING,    // what the advice on a setting rests on
    VIEW_ADD,        // small: work that the plan does not have
    VIEW_FIND,       // any words, over all builds
    VIEW_OVER,       // one check over all engines
    VIEW_PRINT,      // the sheets
    VIEW_SEAL,       // small: fixes the assessment at a gate
    VIEW_PROOF,      // what a gate still lacks, and what stands
    VIEW_HELP,
} ViewName;

enum { VIEWS = VIEW_HELP + 1 };

typedef enum {
    GO_STAY,    // taken; the field is emptied
    GO_KEEP,    // not taken: what was typed stays in the field
    GO_DEFAULT, // the view has nothing to say to this: what every view does
    GO_OPEN,    // open `view` over this one
    GO_INSTEAD, // open `view` in place of this one, or go back to it if it is right under this one
    GO_WORK,    // open `view` over the build in hand; the pages one came by are closed
    GO_UP,      // back to what was under this one
    GO_ACT,     // back, and do `action` there
    GO_HOME,    // back to the first screen
    GO_LEAVE,   // out of the program
} GoKind;

typedef struct {
    GoKind kind;
    ViewName view;
    char *argument; // for its open; freed with g_free
    char *build;    // that it looks at: in hand until it closes; NULL: the one in hand. Likewise
    Action action;
    gboolean keeps; // what is typed waits while it is open, and stands again once it closes
} Go;

static inline Go go(GoKind kind)
{
    return (Go){.kind = kind};
}

static inline Go go_open(ViewName view, char *argument)
{
    return (Go){.kind = GO_OPEN, .view = view, .argument = argument};
}

// Over this one, with another build in hand as long as it is open.
static inline Go go_look(const char *build, ViewName view, char *argument)
{
    return (Go){.kind = GO_OPEN, .view = view, .argument = argument, .build = g_strdup(build)};
}

// A question in front of what is typed: that waits, and stands again behind the answer.
static inline Go go_first(Go question)
{
    question.keeps = TRUE;
    return question;
}

static inline Go go_instead(ViewName view, char *argument)
{
    return (Go){.kind = GO_INSTEAD, .view = view, .argument = argument};
}

typedef struct {
    const char *name;
    // Whether it paints only the four last rows, over the view under it.
    gboolean small;
    // Whether what is typed stays that of the view under it, to be seen and gone on with.
    gboolean over;
    // Its private state; `argument` may be NULL. NULL for a view without any.
    gpointer (*open)(Desk *desk, const char *argument);
    void (*close)(gpointer state);
    // Puts what it shows on a page: empty, or, if small, the page of the view under it. `typed` is
    // what stands in the field.
    void (*paint)(gpointer state, Desk *desk, const char *typed, Page *page);
    // What must be opened before it goes on, asked for each time before it is painted: GO_STAY for
    // nothing. NULL: never anything.
    Go (*wants)(gpointer state, Desk *desk);
    // Enter on what was typed.
    Go (*enter)(gpointer state, Desk *desk, const char *typed);
    // An answer to its question.
    Go (*digit)(gpointer state, Desk *desk, guint digit);
    // A letter at its question: whether words are asked for from now on, which begin with it. NULL:
    // letters act there as they do everywhere.
    gboolean (*letter)(gpointer state);
    // Tab and the arrows: down (1) and up (-1) a list. NULL: as on and back.
    Go (*move)(gpointer state, Desk *desk, gint direction);
    // Any other action. NULL: as every view does.
    Go (*act)(gpointer state, Desk *desk, Action action);
    // Which actions it knows by itself, where not every view does: its help lists them beside
    // these.
    Action acts[ACTIONS]; // up to the first ACTION_NONE
    // What it does while nobody presses a key, a little at a time; TRUE if there is more to do.
    // NULL for nothing.
    gboolean (*idle)(gpointer state, Desk *desk);
} ViewOps;

const ViewOps *view_ops(ViewName view);
// The actions that something is done at: of the view of that name, and those that every view knows.
// Without a store (FALSE) nothing is found, printed, struck or put down.
Actions view_actions(const char *name, gboolean store);
