// What the lines of the shop share, and the verbs of each of their files. Those that read return
// NULL or FALSE with an error, and what they return is freed by the caller.
#pragma once
#include "take.h"

void shop_set_new_id(Take *take, Entry *entry);
// A label that the shop does not have yet for things of that kind; behind `correct` one that it
// has, and with `to` a new one behind it.
char *shop_read_new_label(Take *take, const char *kind, const char *what,
                          GError **error) G_GNUC_WARN_UNUSED_RESULT;
// An entry of that kind under a new id, with the label and the text that every such line begins
// with; `label` and `said` say what they are. NULL with an error. The caller frees *text.
Entry *shop_begin_thing(Take *take, const char *kind, const char *label, const char *said,
                        char **text, GError **error);
// The words up to the next of the phrases (NULL-terminated), or the end; those in quotes without
// them.
char *shop_read_kind(Take *take, const char *const *phrases, const char *what,
                     GError **error) G_GNUC_WARN_UNUSED_RESULT;
// Sets a field, if that is said: from the text behind a phrase, from a remark in quotes, from the
// day behind a phrase.
gboolean shop_set_optional(Take *take, Entry *entry, const char *phrase, const char *field,
                           GError **error);
gboolean shop_set_quoted(Take *take, Entry *entry, const char *field, GError **error);
gboolean shop_set_date(Take *take, Entry *entry, const char *phrase, const char *field,
                       GError **error);

// verb_use.c
// `tool G05`, `lot L-9`, `consumable SS-9921`, whose sort is then in `sort`. NULL with an error.
const Entry *shop_read_thing(Take *take, const char **sort, GError **error);
gboolean shop_out_of_use(Take *take, GError **error);
gboolean shop_back_in_use(Take *take, GError **error);

// shop_strike.c
gboolean shop_strike(Take *take, GError **error);

// verb_tool.c
gboolean shop_tool(Take *take, GError **error);
gboolean shop_calibration(Take *take, GError **error);

// verb_stock.c
gboolean shop_lot(Take *take, GError **error);
gboolean shop_consumable(Take *take, GError **error);
gboolean shop_recall_lot(Take *take, GError **error);
