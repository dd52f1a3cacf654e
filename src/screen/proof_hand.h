// The gap in hand on the page before a gate, where it is worked off on that page: its rows at the
// foot, and the log line that its Enter enters.
#pragma once
#include "bench_work.h"
#include "bolt_tool.h"
#include "proof_gaps.h"
#include "slip.h"
#include "supposed.h"

typedef struct {
    BenchWork work;
    guint place; // index in the assessment
    const Requirement *made;
    Tightening *tightening; // of a bolt; else NULL
    guint turn;             // in that
} ProofHand;

// A place for which gaps_doing says DO_HERE; the gaps outlive it.
ProofHand proof_hand(const Gaps *gaps, guint place);
void proof_hand_clear(ProofHand *hand);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(ProofHand, proof_hand_clear)

// The rows NEXT and then; what is typed is supposed, and said to be a slip if it was asked about.
void proof_hand_rows(const ProofHand *hand, Desk *desk, const char *typed, Supposed *supposed,
                     const Slip *slip, Page *page);

// The line that enters what is typed; NULL where that says nothing yet. The caller frees.
char *proof_hand_line(const ProofHand *hand, Desk *desk,
                      const char *typed) G_GNUC_WARN_UNUSED_RESULT;

// Whether a wrench is to be taken in hand first.
gboolean proof_hand_needs_wrench(const ProofHand *hand, Desk *desk);
// Asks for a wrench or gauge; GO_STAY if none is needed.
Go proof_hand_ask_tool(const ProofHand *hand, Desk *desk);

// How it is called behind the work: `mount nuts bolt 4 · 69 N·m`, `run-down torque 3`, `Crank
// signed`. The caller frees.
char *proof_hand_said(const ProofHand *hand, Desk *desk,
                      const char *typed) G_GNUC_WARN_UNUSED_RESULT;
