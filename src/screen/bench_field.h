// What a place of the bench asks for: how its field looks, and the log line for what is typed.
#pragma once
#include "page.h"
#include "toolbox.h"

#include <standbook/work/agenda.h>

typedef enum {
    STATE_ASKED, // not said yet; one that is fitted stands as it is
    STATE_NEW,
    STATE_REUSED,
    STATE_REWORKED,
    STATE_AGAIN, // not said yet, and asked also of one that is fitted
} PartState;

typedef struct {
    Asks field;
    char *unit;   // behind the field, or what a tick says in it
    char *hint;   // what can be typed, for row 22; NULL for nothing to say
    char *prompt; // for NEXT, behind the place
} BenchField;

void bench_field_clear(BenchField *field);

// What is asked at a place of the agenda. `state` is what was said of a part.
BenchField bench_field(Desk *desk, const Agenda *agenda, guint index, PartState state);

// How the place is called: `top ring gap 3`; `big-end shells 1` where a packet fits both halves.
// The caller frees.
char *bench_place(const Agenda *agenda, guint index, PartState state) G_GNUC_WARN_UNUSED_RESULT;
// The lots that fit a part, a line each with the digit it is taken with; NULL where no lot is
// asked. The caller frees.
char *bench_lots(Desk *desk, const Agenda *agenda, guint index,
                 PartState state) G_GNUC_WARN_UNUSED_RESULT;

// The log line for what is typed there, read with that gauge (bench_gauge); NULL where that says
// nothing yet. The caller frees.
char *bench_line(Desk *desk, const Agenda *agenda, guint index, PartState state, const char *typed,
                 const char *gauge) G_GNUC_WARN_UNUSED_RESULT;

// The line that enters the lot typed there in the shop, of that part; NULL where no lot is asked,
// or the shop has it. The caller frees.
char *bench_new_lot(Desk *desk, const Agenda *agenda, guint index, PartState state,
                    const char *typed) G_GNUC_WARN_UNUSED_RESULT;
// What is asked before that: of a lot written nearly as one that the shop has, of whatever part,
// whether it is that one. The caller frees.
char *bench_new_lot_words(Desk *desk, const Agenda *agenda, guint index,
                          const char *typed) G_GNUC_WARN_UNUSED_RESULT;

// What is asked where the lot typed there is one of another part; NULL where it is not. The caller
// frees.
char *bench_other_lot(Desk *desk, const Agenda *agenda, guint index, PartState state,
                      const char *typed) G_GNUC_WARN_UNUSED_RESULT;

// What is asked before another new part is entered where a good one is fitted: `fitted new 10:41, 2
// min ago already; …`; NULL where none is. The caller frees.
char *bench_second(Desk *desk, const Agenda *agenda, guint index) G_GNUC_WARN_UNUSED_RESULT;

// The gauge this place is read with, if any: it is to reach what was read there, else the limits;
// at a place of the agenda also what was read at another place of the check.
ToolNeed bench_need(const Requirement *made);
ToolNeed bench_need_at(const Agenda *agenda, guint index);
// Its label (toolbox_for). NULL if a person must say, or none is needed.
const char *bench_gauge_for(Desk *desk, const Requirement *made, const ToolNeed *need);
// Likewise at a place of the agenda, for what is typed.
const char *bench_gauge(Desk *desk, const Agenda *agenda, guint index, const char *typed);
// What was in use there and is passed over, as it was found wrong or does not reach
// (toolbox_wrong_words), for the gauge above; NULL if nothing is. The caller frees with g_free.
char *bench_wrong_gauge(Desk *desk, const Requirement *made, const ToolNeed *need,
                        const char *gauge) G_GNUC_WARN_UNUSED_RESULT;
// `G03 reads 50-150 mm`: what is typed is not what that gauge reads; NULL if it is.
// Likewise.
char *bench_outside(Desk *desk, const Requirement *made, const char *gauge,
                    const char *typed) G_GNUC_WARN_UNUSED_RESULT;
