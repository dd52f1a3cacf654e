// Parts that more than one document has.
#pragma once
#include <standbook/sheet/figures.h>

// `TL-0412`, engine, owner, order, plan.
void section_head(Document *document, const SheetSource *source);
// The entries looked at, and the digest that only a printed sheet can hold against a ledger that
// was cut or rewritten.
void section_digest(Document *document, const SheetSource *source);
// The line that stands on every sheet.
void section_precedence(Document *document);

// Every tightening as left: its stages, how many of its bolts are tight, when; bolts that were done
// again because their wrench was found wrong have a footnote.
void section_tightened(Document *document, const SheetSource *source);

// Counts in words, those of nought left out: `143 pass, 2 open`. The caller frees with g_free.
char *counts_words(const guint counts[VERDICTS]) G_GNUC_WARN_UNUSED_RESULT;

// The newest seal that is live at a gate of that name, or at any for NULL; NULL if there is none.
const Entry *newest_seal(const SheetSource *source, const char *gate);
