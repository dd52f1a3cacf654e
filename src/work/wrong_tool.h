// What the files on tools in doubt share.
#pragma once
#include <standbook/work/agenda.h>

// The place at which the tool was used that puts a place in doubt: itself, a reading that goes into
// it, or a bolt it stands on. AGENDA_NOWHERE: no tool is the reason.
guint tool_use(const Agenda *agenda, guint index);

// How often the wrench had been used since its calibration when all bolts of a tick were through; 0
// where the tick does not say.
gint64 uses_by_then(const Entry *tick);

// A text of the calibration that the shop's news tell of; NULL if it has none.
const char *news_text(const Entry *news, const char *field);

// Where and how a check of that tool is entered that found it good. The caller frees with g_free.
char *found_good_words(const char *label, Moment now) G_GNUC_WARN_UNUSED_RESULT;
