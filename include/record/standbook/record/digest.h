// The chain over the lines of one ledger: digest = SHA-256(previous digest in hexadecimal, line
// feed, line), the first continuing 64 zeros. Whoever changes, removes, adds or swaps a line
// changes every digest from there on. What the chain cannot show: a ledger cut at its end, or
// rewritten whole; only a digest printed elsewhere (a seal on paper) shows that.
#pragma once
#include <glib.h>

// The 64 zeros that the first entry of a ledger continues.
extern const char CHAIN_START[65];

// The digest of a line behind `previous` (64 hexadecimal digits), in lower case; freed with g_free.
char *chain_next(const char *previous, const char *line) G_GNUC_WARN_UNUSED_RESULT;

typedef struct {
    char digest[65];
    const char *line; // without line feed
} ChainLink;

// Whether each link's digest follows from the one before and its own line, each line is an entry
// (entry_read) of the one ledger, and seq counts 1, 2, 3, … If not, FALSE with an error (NO) that
// names the first link broken, whose index (from 0) is then in `broken` (may be NULL).
gboolean chain_check(const ChainLink *links, gsize count, gsize *broken, GError **error);

// One row of an export in JSON Lines form: DIGEST, one space, LINE, freed with g_free; and the
// reverse: reads a row (without line feed) into a link whose line points into the row. FALSE with
// an error (NO) if it has not that form; the digest itself is checked by chain_check.
char *chain_row(const char *digest, const char *line) G_GNUC_WARN_UNUSED_RESULT;
gboolean chain_row_read(const char *row, ChainLink *link, GError **error);
