#include <standbook/base/error.h>
#include <standbook/record/digest.h>
#include <standbook/record/entry.h>
#include <string.h>

enum { DIGEST_LENGTH = 64 };

const char CHAIN_START[65] = "0000000000000000000000000000000000000000000000000000000000000000";

char *chain_next(const char *previous, const char *line)
{
    g_autoptr(GChecksum) sum = g_checksum_new(G_CHECKSUM_SHA256);
    g_checksum_update(sum, (const guchar *)previous, DIGEST_LENGTH);
    g_checksum_update(sum, (const guchar *)"\n", 1);
    g_checksum_update(sum, (const guchar *)line, -1);
    return g_strdup(g_checksum_get_string(sum));
}

static gboolean refuse(GError **error, gsize index, const char *why)
{
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                "entry %" G_GSIZE_FORMAT " of the ledger: %s", index + 1, why);
    return FALSE;
}

// The link's line belongs to the ledger of the first one and has its turn. `ledger` is set by the
// first link.
static gboolean check_entry(const ChainLink *link, gsize index, char **ledger, GError **error)
{
    g_autoptr(GError) why = NULL;
    g_autoptr(Entry) entry = entry_read(link->line, &why);
    if (!entry)
        return refuse(error, index, why->message);
    if (!*ledger)
        *ledger = g_strdup(entry->ledger);
    if (strcmp(*ledger, entry->ledger) != 0)
        return refuse(error, index, "it belongs to another ledger");
    if (entry->seq != (gint64)index + 1)
        return refuse(error, index, "its `seq` is out of turn");
    return TRUE;
}

gboolean chain_check(const ChainLink *links, gsize count, gsize *broken, GError **error)
{
    const char *previous = CHAIN_START;
    g_autofree char *ledger = NULL;
    for (gsize i = 0; i < count; i++) {
        g_autofree char *digest = chain_next(previous, links[i].line);
        gboolean same = strcmp(digest, links[i].digest) == 0;
        if (broken)
            *broken = i;
        if (!same)
            return refuse(error, i,
                          "its digest does not follow from the line; compare it with a backup");
        if (!check_entry(&links[i], i, &ledger, error))
            return FALSE;
        previous = links[i].digest;
    }
    return TRUE;
}

char *chain_row(const char *digest, const char *line)
{
    return g_strconcat(digest, " ", line, NULL);
}

gboolean chain_row_read(const char *row, ChainLink *link, GError **error)
{
    if (strspn(row, "0123456789abcdef") != DIGEST_LENGTH || row[DIGEST_LENGTH] != ' ') {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                    "row of an export: must be 64 hexadecimal digits, one space and a ledger line");
        return FALSE;
    }
    g_strlcpy(link->digest, row, sizeof link->digest);
    link->line = row + DIGEST_LENGTH + 1;
    return TRUE;
}
