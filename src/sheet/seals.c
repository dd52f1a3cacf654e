// Every seal of a build, on every sheet: when, by whom, which entries it covers, and its digests.
#include "sections.h"

#include <standbook/record/live.h>
#include <string.h>

// The live seals in their order (const Entry *).
static GPtrArray *live_seals(const SheetSource *source)
{
    GPtrArray *seals = g_ptr_array_new();
    g_autofree gboolean *live = g_new0(gboolean, source->count + 1);
    live_entries(source->entries, source->count, live);
    for (gsize i = 0; i < source->count; i++)
        if (live[i] && strcmp(source->entries[i]->kind->name, "seal") == 0)
            g_ptr_array_add(seals, (gpointer)source->entries[i]);
    return seals;
}

const Entry *newest_seal(const SheetSource *source)
{
    g_autoptr(GPtrArray) seals = live_seals(source);
    return seals->len ? seals->pdata[seals->len - 1] : NULL;
}

const Entry *first_seal(const SheetSource *source)
{
    g_autoptr(GPtrArray) seals = live_seals(source);
    const Entry *newest = seals->len ? seals->pdata[seals->len - 1] : NULL;
    for (guint i = 0; i < seals->len; i++)
        if (strcmp(entry_text(newest, "gate"), entry_text(seals->pdata[i], "gate")) == 0)
            return seals->pdata[i];
    return NULL;
}

static void line_kept(Document *document, const char *line)
{
    document_line(document, line);
    document_keep(document);
}

// ` (supplement 1)`; "" of the first seal of its gate.
static char *supplement_words(const Entry *seal)
{
    gint64 number = entry_number(seal, "supplement");
    return number > 0 ? g_strdup_printf(" (supplement %" G_GINT64_FORMAT ")", number)
                      : g_strdup("");
}

// `Sealed for hand over (supplement 1) on 30 November 2025 by Mab Orrin: assessment 7f3a90c1e25d.`
static void line_seal(Document *document, const SheetSource *source, const Entry *seal)
{
    g_autofree char *day = date_words(seal), *number = supplement_words(seal);
    g_autofree char *line =
        g_strdup_printf("Sealed for %s%s on %s by %s: assessment %.12s.", entry_text(seal, "gate"),
                        number, day, taken_name(source->taken, seal->by),
                        entry_text(seal, "assessment"));
    line_kept(document, line);
}

// One before the newest: `first start sealed 19 November 2025: entries 1 to 846, assessment
// 7f3a90c1e25d.`
static void line_earlier(Document *document, const Entry *seal)
{
    g_autofree char *day = date_words(seal), *number = supplement_words(seal);
    g_autofree char *line = g_strdup_printf(
        "%s%s sealed %s: entries 1 to %" G_GINT64_FORMAT ", assessment %.12s.",
        entry_text(seal, "gate"), number, day, entry_number(seal, "covers"),
        entry_text(seal, "assessment"));
    line_kept(document, line);
}

// `Judged then: 1 open, 31 pass, 16 in doubt.`: told where it was sealed with something left.
static void line_counts(Document *document, const Entry *seal)
{
    const json_t *sealed = json_object_get(seal->body, "counts");
    guint counts[VERDICTS];
    for (guint i = 0; i < VERDICTS; i++)
        counts[i] = (guint)json_integer_value(json_object_get(sealed, verdict_words((Verdict)i)));
    if (counts[VERDICT_OPEN] + counts[VERDICT_FAIL] + counts[VERDICT_IN_DOUBT] == 0)
        return;
    g_autofree char *words = counts_words(counts, 0);
    g_autofree char *line = g_strdup_printf("Judged then: %s.", words);
    line_kept(document, line);
}

// What a seal covers, and that it is itself the entry behind; `digest` is put behind it where it is
// the last.
static void line_covered(Document *document, const Entry *seal, const char *digest)
{
    g_autofree char *line = g_strdup_printf(
        "Sealed are entries 1 to %" G_GINT64_FORMAT "; the seal is entry %" G_GINT64_FORMAT "%s%s.",
        entry_number(seal, "covers"), seal->seq, digest ? ", digest " : "", digest ? digest : "");
    line_kept(document, line);
}

void section_digest(Document *document, const SheetSource *source)
{
    g_autoptr(GPtrArray) seals = live_seals(source);
    g_autofree char *digest = source->digest ? g_strndup(source->digest, 16) : NULL;
    const Entry *seal = newest_seal(source);
    gboolean last = digest && seal && (gsize)seal->seq == source->count;
    for (guint i = 0; i + 1 < seals->len; i++)
        line_earlier(document, seals->pdata[i]);
    if (seal) {
        line_seal(document, source, seal);
        line_counts(document, seal);
        line_covered(document, seal, last ? digest : NULL);
    }
    g_autofree char *line =
        digest ? g_strdup_printf("Entries 1 to %" G_GSIZE_FORMAT ", the last with digest %s.",
                                 source->count, digest)
               : g_strdup_printf("Entries 1 to %" G_GSIZE_FORMAT "; later ones are left out.",
                                 source->count);
    if (!last)
        document_line(document, line);
}
