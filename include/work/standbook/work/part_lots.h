// Parts that are fitted by lot: which lots of the shop fit, how far one packet goes, and what an
// answer means.
#pragma once
#include <standbook/work/agenda.h>
#include <standbook/work/session.h>

// The lots of the shop (const Entry *, which belong to it) whose words begin with the part's name
// (`big-end shells -0.25`), the one entered last first; behind all of them those that the build had
// only where it was struck again. The caller frees with g_ptr_array_unref.
GPtrArray *part_lots(const Session *session, const char *part) G_GNUC_WARN_UNUSED_RESULT;

// The label of the lot that is meant: `typed` may be a label, however it is spelled, or a line of
// that list, from 1. What is neither comes back as it is. The caller frees with g_free.
char *part_answer(const GPtrArray *lots, const char *typed) G_GNUC_WARN_UNUSED_RESULT;

// The lot of the shop (it belongs to it) with that label, spelled as it is, if its words are those
// of another part and none of it was fitted as this part in the build; NULL if there is none.
const Entry *part_other_lot(const Session *session, const char *part, const char *label);

// The lot of the shop (it belongs to it) whose label `typed` may be with a slip of the keys: of
// this part, else of another; NULL if none is near.
const Entry *part_lot_meant(const Session *session, const char *part, const char *typed);

// What one packet fits: the place itself, or, of a part that is tracked by lot along several axes,
// all that share its labels but the last (both halves of a bearing), if all of those are open.
typedef struct {
    char *target; // as a log line writes it: `big-end shells[1] in Fit pistons`
    char *place;  // as people say it: `1`; "" for one place
    char *shared; // `upper, lower`; NULL if it is the place itself
} PartPacket;

// `index` is a place where a part is fitted. The caller clears it with part_packet_clear.
PartPacket part_packet(const Agenda *agenda, guint index);
void part_packet_clear(PartPacket *packet);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(PartPacket, part_packet_clear)

// Why the place would be in doubt with that lot in it, entered by `initials` now: `expired
// 2024-11-02`, `recalled`, `grade B`; NULL if it would not, or that cannot be entered. The caller
// frees with g_free.
char *part_lot_doubt(Session *session, const char *initials, guint index, const Entry *lot,
                     Moment now) G_GNUC_WARN_UNUSED_RESULT;

// How many of a lot are left: those received, without what was fitted new over all builds; below 0
// where more were fitted. FALSE if it was not said how many came.
gboolean part_lot_left(const Session *session, const Entry *lot, gint64 *left);

// `big-end shells -0.25 · 8 of Hollin Bearing Stores · until 2025-08-01`, once some are fitted
// `· 2 left of 8 of …`: what is known of a lot. The caller frees with g_free.
char *part_lot_words(const Session *session, const Entry *lot) G_GNUC_WARN_UNUSED_RESULT;
