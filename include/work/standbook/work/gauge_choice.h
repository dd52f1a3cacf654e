// Which gauges of the shop can settle what is about to be read, or was read and is in doubt.
#pragma once
#include <standbook/judge/judgement.h>
#include <standbook/rules/gauge.h>
#include <standbook/work/session.h>

// One gauge, for the place in hand.
typedef struct {
    const char *label;      // `G06`; it belongs to the shop
    const char *words;      // what it is: `caliper 150`; likewise
    gboolean in_hand, used; // `used`: what is read there was read with it
    gboolean as_planned;    // of the kind that the plan names, or it names none
    gboolean out_of_range;  // it measures another thing, or its range has nothing of what may be
                            // read there
    Number
        *doubt; // U (k = 2) of what is to be settled, base units; NULL: not known, or out of range
    gboolean least; // it is that at the least: something else is still to be read
    Number *inside; // how far inside a limit that must lie to pass; NULL: it is believed as read
    char *fault;    // what its calibration says against it: `OVERDUE since 31 Jan`; NULL: nothing
    GaugeOutlook outlook; // GAUGE_CANNOT where the doubt is not known
} GaugeChoice;

typedef struct {
    const Requirement *settled; // what has the limits: the place itself, or what is worked out from
                                // it; NULL: nothing
    gboolean read;              // it has a value
    Number *wanted;             // the widest U (k = 2) that would settle that value, or NULL
    GArray *gauges;             // GaugeChoice: those in calibration first; of these what settles
                                // it, then the plan's kind, then the finest
} GaugeChoices;

// The gauges for the place of that index in the assessment (a reading), with the calibrations in
// force on `day` (`2025-03-13`) in the shop. A gauge is taken to read all that goes into the result
// in the same step and for which the plan names the same kind. They are: the one in hand, the one
// it was read with (labels; NULL: none) and those of the kind that the plan names, or where it
// names none all that measure the same; of these those whose range holds what was read there or at
// another place of the check, else something of its limits. Without either, none but the plan's
// kind: what a gauge gets at nobody has said. Assessment, shop and judgement outlive the result.
// The caller clears it.
GaugeChoices gauge_choices(Judgement *judgement, const Shop *shop, const char *day, guint index,
                           const char *in_hand, const char *used);
// The same for a build at the bench, today.
GaugeChoices session_gauges(Session *session, guint index, const char *in_hand);
void gauge_choices_clear(GaugeChoices *choices);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(GaugeChoices, gauge_choices_clear)

// `±0.7`, of the result, rounded up, in the decimals of its value (before it is read, of its
// check); `±?` if it is not known, "" of a gauge out of its range. The caller frees with g_free.
char *gauge_doubt_words(const GaugeChoices *choices,
                        const GaugeChoice *choice) G_GNUC_WARN_UNUSED_RESULT;
// `settles it`, `passes only .7 inside`, `cannot`,
// `doubt not known`, `out of its range`, `in doubt` of one that is overdue or found wrong and would
// tell else; of the gauge in hand with ` (in hand)` or ` (used)` behind
// it. The caller frees with g_free.
char *gauge_outlook_said(const GaugeChoices *choices,
                         const GaugeChoice *choice) G_GNUC_WARN_UNUSED_RESULT;
// What the value read needs: `Inside by 0.5; with G07 a pass needs .7. A doubt of ±.6 settles it.`
// NULL where the gauge that was used is not in doubt about it, or nothing is read. The caller
// frees.
char *gauge_choices_sentence(const GaugeChoices *choices) G_GNUC_WARN_UNUSED_RESULT;
