// Work that was said of one place of a check, and is likely that of the next one too.
#pragma once
#include <standbook/work/agenda.h>

// What was done at another place of the check, as it was said last in that step and within the
// hour: `honed`; NULL for nothing. It belongs to the entries.
const char *reworked_words(const Agenda *agenda, const Requirement *made, Moment now);
