// The customer's sheet: what was laid as sealant, locker or paste, from which lot, and whether the
// joint was closed in time.
#include "sections.h"

#include <standbook/record/live.h>
#include <standbook/record/order.h>
#include <standbook/work/laying.h>
#include <string.h>

static gboolean is_of_kind(const Entry *entry, const char *kind)
{
    return strcmp(entry->kind->name, kind) == 0;
}

static gboolean is_same_text(const Entry *one, const Entry *other, const char *field)
{
    return g_strcmp0(entry_text(one, field), entry_text(other, field)) == 0;
}

// All that counts of what was laid, of the same thing on the same joint the last, in the order of
// the work (const Entry *).
static GPtrArray *laid_last(const GPtrArray *ranked)
{
    GPtrArray *last = g_ptr_array_new();
    for (guint i = 0; i < ranked->len; i++) {
        const Entry *entry = ranked->pdata[i];
        if (!is_of_kind(entry, "laid"))
            continue;
        for (guint j = last->len; j-- > 0;)
            if (is_same_text(last->pdata[j], entry, "tightening") &&
                is_same_text(last->pdata[j], entry, "consumable"))
                g_ptr_array_remove_index(last, j);
        g_ptr_array_add(last, (gpointer)entry);
    }
    return last;
}

// The live entries in the order of the work (const Entry *).
static GPtrArray *live_ranked(const SheetSource *source)
{
    g_autofree gboolean *live = g_new0(gboolean, source->count + 1);
    g_autofree gint64 *ranked = g_new0(gint64, source->count + 1);
    GPtrArray *entries = g_ptr_array_new();
    live_entries(source->entries, source->count, live);
    rank_order(source->entries, source->count, ranked);
    for (gsize i = 0; i < source->count; i++)
        if (live[ranked[i] - 1])
            g_ptr_array_add(entries, (gpointer)source->entries[ranked[i] - 1]);
    return entries;
}

// Whether what is asked there closes the joint: the first stage of its bolts, or the part put in.
static gboolean closes(const Requirement *made, const Entry *laid)
{
    const char *step = entry_text(laid, "step");
    return !made->withdrawn && made->verdict != VERDICT_NOT_NEEDED &&
           ((made->asked == ASKED_BOLT && made->stage == 1) || made->asked == ASKED_FIT) &&
           g_strcmp0(made->name, entry_text(laid, "tightening")) == 0 &&
           (made->asked == ASKED_FIT || !step || strcmp(made->step->name, step) == 0);
}

// Whether that entry did it: the pull of the first stage, or the fitting.
static gboolean is_closing(const Entry *entry, const Entry *laid)
{
    const char *joint = entry_text(laid, "tightening");
    gboolean pulled = is_of_kind(entry, "tick") && entry_number(entry, "stage") == 1 &&
                      g_strcmp0(entry_text(entry, "tightening"), joint) == 0 &&
                      (!entry_text(laid, "step") || is_same_text(entry, laid, "step"));
    return pulled || (is_of_kind(entry, "fit") && g_strcmp0(entry_text(entry, "part"), joint) == 0);
}

// How many seconds after the laying the last of it was closed; -1 where something is still open.
static gint64 closed_after(const SheetSource *source, const GPtrArray *ranked, const Entry *laid)
{
    const GPtrArray *all = source->assessment->requirements;
    gboolean behind = FALSE;
    Moment last = -1;
    for (guint i = 0; i < all->len; i++)
        if (closes(all->pdata[i], laid) &&
            ((const Requirement *)all->pdata[i])->verdict == VERDICT_OPEN)
            return -1;
    for (guint i = 0; i < ranked->len; i++) {
        const Entry *entry = ranked->pdata[i];
        if (behind && is_closing(entry, laid))
            last = MAX(last, entry_moment(entry));
        behind |= entry == laid;
    }
    return last < 0 ? -1 : MAX(last - entry_moment(laid), 0);
}

// `7 min`, `12 min 30 s`.
static char *span_words(gint64 seconds)
{
    g_autofree char *minutes = g_strdup_printf("%" G_GINT64_FORMAT " min", seconds / 60);
    return seconds % 60 ? g_strdup_printf("%s %d s", minutes, (int)(seconds % 60))
                        : g_steal_pointer(&minutes);
}

// `in 7 of 12 min`, `late: 14 of 12 min`, `in 1 min of 1 min 30 s`: how long it took of what the
// plan allows.
static char *took_words(gint64 seconds, const Number *within, gboolean late)
{
    g_autofree char *whole = number_decimal_up(within, 0);
    gint64 most = g_ascii_strtoll(whole, NULL, 10);
    gboolean minutes = seconds % 60 == 0 && most % 60 == 0;
    g_autofree char *took =
        minutes ? g_strdup_printf("%" G_GINT64_FORMAT, seconds / 60) : span_words(seconds);
    g_autofree char *allowed = span_words(most);
    return g_strdup_printf("%s %s of %s", late ? "late:" : "in", took, allowed);
}

// Nothing where the plan gives no time for it. `late` is whether it took longer.
static char *closed_words(const SheetSource *source, const GPtrArray *ranked, const Entry *laid,
                          gboolean *late)
{
    const PlanConsumable *consumable =
        plan_consumable(source->plan, entry_text(laid, "consumable"));
    const Number *within = consumable ? consumable->fit_within : NULL;
    gint64 seconds = within ? closed_after(source, ranked, laid) : -1;
    g_autoptr(Number) after = number_from_integer((glong)seconds);
    *late = within && seconds >= 0 && number_compare(after, within) > 0;
    if (!within)
        return g_strdup("");
    return seconds < 0 ? g_strdup("not yet") : took_words(seconds, within, *late);
}

// What is to be known of a joint closed too late.
static char *late_notes(Document *document, const SheetSource *source, const Entry *laid)
{
    const GPtrArray *all = source->assessment->requirements;
    GString *numbers = g_string_new(NULL);
    for (guint i = 0; i < all->len; i++)
        if (closes(all->pdata[i], laid))
            footnotes_add(numbers, document, source, all->pdata[i]);
    return g_string_free(numbers, FALSE);
}

static void laid_row(Document *document, const SheetSource *source, const GPtrArray *ranked,
                     const Entry *laid)
{
    gboolean late;
    const char *lot = entry_text(laid, "lot");
    g_autofree char *closed = closed_words(source, ranked, laid, &late);
    g_autofree char *notes = late ? late_notes(document, source, laid) : NULL;
    g_autofree char *full = entry_when(laid), *when = g_strndup(full, strlen("2025-03-12 08:50"));
    document_row(document, (const char *const[]){entry_text(laid, "tightening"),
                                                 entry_text(laid, "consumable"),
                                                 lot ? lot : "not known", when, closed, notes});
}

// What the plan asks to be laid in steps that were signed without it.
static void missed_rows(Document *document, const GArray *missed)
{
    for (guint i = 0; i < missed->len; i++) {
        const Laying *each = &g_array_index(missed, Laying, i);
        const char *on = each->group ? each->group->name : each->step->name;
        document_row(document,
                     (const char *const[]){on, each->consumable->name, "", "not laid", "", ""});
    }
}

void section_laid(Document *document, const SheetSource *source)
{
    const DocumentColumn columns[] = {{"", ALIGN_LEFT},       {"", ALIGN_LEFT},
                                      {"lot", ALIGN_LEFT},    {"when", ALIGN_WHOLE},
                                      {"closed", ALIGN_LEFT}, {"", ALIGN_NOTES}};
    const Agenda agenda = {source->plan, source->assessment, source->entries, source->count};
    g_autoptr(GPtrArray) ranked = live_ranked(source);
    g_autoptr(GPtrArray) laid = laid_last(ranked);
    g_autoptr(GArray) missed = layings_passed_over(&agenda, source->plan->gates->len);
    if (laid->len + missed->len == 0)
        return;
    document_heading(document, 1, "Laid");
    document_table(document, columns, G_N_ELEMENTS(columns));
    document_tight(document);
    for (guint i = 0; i < laid->len; i++)
        laid_row(document, source, ranked, laid->pdata[i]);
    missed_rows(document, missed);
    document_footnotes(document);
}
