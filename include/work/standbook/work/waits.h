// What a build waits for, and what falls due, as the shop's own list of its builds says them. Only
// what the record says. Pure: everything comes in.
#pragma once
#include <standbook/work/shop.h>
#include <standbook/work/subject.h>

typedef struct {
    char *stands; // `S17 main caps: bolt 2`, `hand over, sealed 26 Mar`
    guint turn;   // and of a bolt which turn that is, from 1,
    guint turns;  // of how many; 0: it is no bolt
    char *waits;  // for whom or what: `JT, in hand 11:41`, `W2, found wrong`, `inlet lash 1`
    char *since;  // `6 DOUBT since 11 Mar`, `nobody since 10 Jan`; "" if there is no more to say
} Waits;

// The first that is so: somebody has it in hand; a tool it was done with was found wrong; a
// customer was told of a concession and has not answered; a finding waits for a decision; a second
// person is to sign; it is to be sealed anew; it was put down; it is sealed and its next gate not
// begun; else what is to be done next. The caller clears it with waits_clear.
Waits waits_of(const Telling *telling);
void waits_clear(Waits *waits);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Waits, waits_clear)

// One thing that falls due.
typedef struct {
    char *what; // `head nuts`, `W2 click wrench`
    char *why;  // `retighten in S40`, `calibration due 31 Jan`
    char *when; // `10 left, after S39`, `55 days past`
} Due;

// Those of a build (Due), in the order of the work: bolts that were begun and left half tightened;
// bolts that are through and are to be retightened at a later gate; what was done with a tool found
// wrong later; what a concession says is to be watched. The caller frees with g_array_unref.
GArray *dues_of_build(const Telling *telling) G_GNUC_WARN_UNUSED_RESULT;

// Those of the shop's tools: the last calibration found it wrong and none has followed; or, of those
// that builds use (`used`, a set of ids, const char *), it is past or has no more than 30 days to
// go; or, of the others, it is past, or a wrench never had one: a line each for one or two, one line
// for more (`5 tools overdue`, `B1 D1 F1 W2 …`). The caller frees with g_array_unref.
GArray *dues_of_tools(const Shop *shop, GHashTable *used, Moment now) G_GNUC_WARN_UNUSED_RESULT;
