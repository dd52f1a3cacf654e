// The shop's ledger, looked up by what is written on things: initials, serials, labels, lots. Holds
// entries in memory; pure. What a later entry of the same label says replaces the earlier one, and
// what a strike takes back is not found.
#pragma once
#include <standbook/record/entry.h>

typedef struct Shop Shop;

// An empty shop. The caller frees with shop_free.
Shop *shop_new(void) G_GNUC_WARN_UNUSED_RESULT;
void shop_free(Shop *shop); // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Shop, shop_free)

// Adds the next entry of the shop's ledger and owns it from then on, also when it is refused: FALSE
// with an error (NO) if its seq is not one more than the last.
gboolean shop_add(Shop *shop, Entry *entry, GError **error);

// The seq of the last entry, 0 if there is none.
gint64 shop_last(const Shop *shop);

// The entry of that seq, struck or not; NULL if there is none. Belongs to the shop, as all below.
const Entry *shop_entry(const Shop *shop, gint64 seq);

// The newest entry of a kind with this label: a person by initials, an engine by serial, a build by
// number, a consumable by lot, a plan or default by name, an owner, tool or lot by label. NULL if
// there is none.
const Entry *shop_find(const Shop *shop, const char *kind, const char *label);

// The label itself, as shop_find reads it in an entry; NULL for kinds without one.
const char *shop_label(const Entry *entry);

// What the shop is called, the head of its sheets; NULL if nobody has said.
const char *shop_name(const Shop *shop);

// The newest entry of a kind with this id (a plan: with this digest); NULL if there is none.
const Entry *shop_by_id(const Shop *shop, const char *kind, const char *id);

// Those of a tool, lot or consumable (its entry) that put it out of use and back, in order of when
// that was (const Entry *). The caller frees with g_ptr_array_unref.
GPtrArray *shop_uses_of(const Shop *shop, const Entry *thing) G_GNUC_WARN_UNUSED_RESULT;

// What put it out of use at a moment (as entries have it; NULL: by now); NULL while it is in use.
const Entry *shop_end(const Shop *shop, const Entry *thing, const char *moment);

// `scrapped 2025-03-11, spindle bent`: freed with g_free.
char *shop_end_words(const Entry *end) G_GNUC_WARN_UNUSED_RESULT;

// shop_all without what is out of use: what can be offered for new work.
GPtrArray *shop_in_use(const Shop *shop, const char *kind,
                       const char *sort) G_GNUC_WARN_UNUSED_RESULT;

// The label of that kind nearest to a wrong one (base/text.h); NULL if none is near.
const char *shop_nearest(const Shop *shop, const char *kind, const char *label);

// All of a kind (const Entry *), newest entry of each label, in order of seq. The caller frees with
// g_ptr_array_unref. `sort` keeps only those whose field `sort` is so; NULL for all.
GPtrArray *shop_all(const Shop *shop, const char *kind, const char *sort) G_GNUC_WARN_UNUSED_RESULT;

// The calibrations of a tool, by id, in order of day, then seq (const Entry *). The caller frees
// with g_ptr_array_unref.
GPtrArray *shop_calibrations(const Shop *shop, const char *tool) G_GNUC_WARN_UNUSED_RESULT;

// The calibration in force on a day (`2025-03-13`): the last one made on it or before. NULL if
// there is none.
const Entry *shop_calibration_on(const Shop *shop, const char *tool, const char *day);

// Whether a tool of the shop measures such values, whether its range, both ends included, holds one
// (base units; NULL: any), and whether it has anything of what lies between two; an end that is not
// known, of the range or of what is asked, bounds nothing.
gboolean tool_measures(const Entry *tool, Kind kind);
// Whether its range is known, and of another kind.
gboolean tool_reads_otherwise(const Entry *tool, Kind kind);
gboolean tool_holds(const Entry *tool, const Number *value);
gboolean tool_reaches(const Entry *tool, const Number *least, const Number *greatest);

// The newest recall of a lot, by its id; NULL if it is not recalled.
const Entry *shop_recall(const Shop *shop, const char *lot);
