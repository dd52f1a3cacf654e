// The workshop's record: when work on a step broke off, put down or without a word, and who took it
// up again when.
#include "sections.h"

#include <standbook/record/live.h>
#include <standbook/work/agenda.h>
#include <string.h>

static gboolean is_kind(const Entry *entry, const char *kind)
{
    return strcmp(entry->kind->name, kind) == 0;
}

static gboolean is_by(const Entry *entry, const char *who)
{
    return strcmp(entry->by, who) == 0;
}

static gboolean is_of_step(const Entry *entry, const char *step)
{
    return kind_field(entry->kind, "step") && g_strcmp0(entry_text(entry, "step"), step) == 0;
}

// What hands do, which shows that somebody is there; not what is said or signed of it later.
static gboolean is_work(const Entry *entry)
{
    static const char *const work[] = {"read", "look", "tick",   "slacken",  "move",
                                       "fit",  "laid", "rework", "put down", NULL};
    return g_strv_contains(work, entry->kind->name);
}

// Whether who had a step in hand when another came to it was still at it: worked on before picking
// anything up again.
static gboolean goes_on(const SheetSource *source, const gboolean *live, gsize from,
                        const char *who)
{
    for (gsize i = from; i < source->count; i++) {
        const Entry *entry = source->entries[i];
        if (!live[i] || !is_by(entry, who))
            continue;
        if (is_kind(entry, "pick up"))
            return FALSE;
        if (is_work(entry))
            return TRUE;
    }
    return FALSE;
}

// Who had the step of that pick-up in hand and left it without a word: who picks it up himself, or
// another; NULL if nobody did.
static const char *left_by(const SheetSource *source, const gboolean *live, gsize i)
{
    const Entry *up = source->entries[i];
    const Agenda agenda = {source->plan, source->assessment, source->entries, i};
    const char *other = NULL;
    if (!is_kind(up, "pick up"))
        return NULL;
    g_autoptr(GArray) hands = agenda_hands(&agenda);
    for (guint h = 0; h < hands->len; h++) {
        const AgendaHand *hand = &g_array_index(hands, AgendaHand, h);
        const char *who = hand->since->by;
        if (g_strcmp0(hand->step->name, entry_text(up, "step")) != 0)
            continue;
        if (is_by(up, who))
            return who;
        if (!other && !goes_on(source, live, i + 1, who))
            other = who;
    }
    return other;
}

// The words given behind the putting down, as its reason.
static gboolean is_reason(const SheetSource *source, const gboolean *live, gsize i)
{
    const Entry *entry = source->entries[i], *down = i ? source->entries[i - 1] : NULL;
    return is_kind(entry, "note") && !entry_text(entry, "about") && down && live[i - 1] &&
           is_kind(down, "put down") && is_by(down, entry->by);
}

gboolean is_interruption(const SheetSource *source, const gboolean *live, gsize i)
{
    return live[i] && (is_kind(source->entries[i], "put down") || is_reason(source, live, i) ||
                       left_by(source, live, i));
}

// The entry that picked the step up again after it was put down; NULL if none did.
static const Entry *again_after(const SheetSource *source, const gboolean *live, gsize down)
{
    const char *step = entry_text(source->entries[down], "step");
    for (gsize i = down + 1; i < source->count; i++)
        if (live[i] && is_kind(source->entries[i], "pick up") &&
            is_of_step(source->entries[i], step))
            return source->entries[i];
    return NULL;
}

// `taken up again 2025-03-13 15:31, MO`.
static char *again_words(const SheetSource *source, const gboolean *live, gsize down)
{
    const Entry *up = again_after(source, live, down);
    if (!up)
        return g_strdup("not taken up again");
    g_autofree char *when = entry_when(up);
    return g_strdup_printf("taken up again %s, %s", when, taken_initials(source->taken, up->by));
}

// `broken off without a word: JT had it in hand, up to #437 2025-03-13 14:12 tick …`.
static char *left_words(const SheetSource *source, const gboolean *live, gsize up, const char *who)
{
    gsize last = up;
    while (last-- > 0 && !(live[last] && is_by(source->entries[last], who) &&
                           !is_kind(source->entries[last], "take")))
        ;
    const Entry *entry = source->entries[last];
    g_autofree char *when = entry_when(entry), *words = entry_words(source->taken, entry);
    return g_strdup_printf("broken off without a word: %s had it in hand, up to #%" G_GINT64_FORMAT
                           " %s %s",
                           taken_initials(source->taken, who), entry->seq, when, words);
}

char *interruption_words(const SheetSource *source, const gboolean *live, gsize i)
{
    const char *who = left_by(source, live, i);
    return who                                       ? left_words(source, live, i, who)
           : is_kind(source->entries[i], "put down") ? again_words(source, live, i)
                                                     : NULL;
}
