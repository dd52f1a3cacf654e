// The wrench for a bolt at a stage, with its adapter and what it is set to.
#pragma once
#include "tightening.h"
#include "toolbox.h"
#include "view.h"

typedef struct {
    const char *tool;      // label of the one in hand; NULL if none is needed, or none is there
    char *adapter;         // `X1`, `X1 at 90°`; NULL for none
    gboolean asked;        // one is needed and none is there
    gboolean by_mark;      // an angle is turned by a mark, without a gauge
    Need need;             // what it is needed for, where one is
    const Number *ceiling; // of a bolt pulled until a check passes; NULL of all else
    Number *set;           // base units: what it is set to, or turned by; NULL: not known
    char *torque; // `75`: what the bolt gets, in tightening_unit; NULL: no torque, or not known
    gboolean unknown;      // what it is set to is not known: a length is missing
    char *words;           // `W3 set 75`, `W1 with X1 set 18.5`, `g: which wrench?`,
                           // `by a mark`; "" for none
    char *wrong; // what was in use and is passed over (toolbox_wrong_words); NULL: nothing
} BoltTool;

BoltTool bolt_tool(Desk *desk, const Tightening *tightening, const Turn *turn);
void bolt_tool_clear(BoltTool *tool);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(BoltTool, bolt_tool_clear)

// Asks for a wrench; GO_STAY if none is needed.
Go bolt_tool_ask(Desk *desk, const Tightening *tightening, const Turn *turn);
// ` with W1 adapter X1`, as a log line ends; "" for none. The caller frees with g_free.
char *bolt_tool_line(const BoltTool *tool) G_GNUC_WARN_UNUSED_RESULT;
// Whether two bolts of a stage are pulled with the same adapter, by the plan and by hand.
gboolean bolt_tool_same(Desk *desk, const Tightening *tightening, const Turn *one,
                        const Turn *other);
