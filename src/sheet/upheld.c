// The footnote to what was upheld.
#include "sections.h"

#include <standbook/work/too_soon.h>
#include <string.h>

char *signed_too_soon(const SheetSource *source, const Requirement *made, Reason doubt)
{
    const Entry *sign = source_entry(source, made->entry);
    if (doubt != REASON_WINDOW || made->asked != ASKED_SIGN || !sign)
        return NULL;
    const Agenda agenda = {source->plan, source->assessment, source->entries, source->count};
    g_autofree char *soon = too_soon_words(&agenda, made->step, entry_moment(sign));
    g_autofree char *when = entry_when(sign);
    return soon ? g_strdup_printf("%s was signed %.16s; %s.", made->step->name, when, soon) : NULL;
}

static char *doubted_words(const SheetSource *source, const Requirement *made, Reason doubt)
{
    char *soon = signed_too_soon(source, made, doubt);
    return soon ? soon : figure_doubted(made, doubt, source->taken, source->entries);
}

// Why that was in doubt which the entry upholds, each reason once: of several bolts one may have
// been pulled with another wrench. Of several upholds at one bolt, `made`, it keeps the last.
static char *doubts_words(const SheetSource *source, const Requirement *made, const Entry *uphold,
                          Reason doubt)
{
    const GPtrArray *all = source->assessment->requirements;
    GString *words = g_string_new(NULL);
    for (guint i = 0; i < all->len; i++) {
        const Requirement *each = g_ptr_array_index(all, i);
        if (each->upheld != uphold->seq)
            continue;
        g_autofree char *why = doubted_words(source, each, doubt);
        if (!strstr(words->str, why))
            g_string_append_printf(words, "%s%s", words->len ? " " : "", why);
    }
    if (words->len)
        return g_string_free(words, FALSE);
    g_string_free(words, TRUE);
    return made->check ? g_strdup(reason_sentence(doubt)) : doubted_words(source, made, doubt);
}

// Whether another uphold says the same of the same stage: a footnote is told once of all its bolts.
static gboolean says_the_same(const Entry *one, const Entry *other)
{
    static const char *const fields[] = {"name", "step", "doubt", "why", "second"};
    for (gsize i = 0; i < G_N_ELEMENTS(fields); i++)
        if (g_strcmp0(entry_text(one, fields[i]), entry_text(other, fields[i])) != 0)
            return FALSE;
    return strcmp(one->by, other->by) == 0 &&
           entry_number(one, "stage") == entry_number(other, "stage");
}

// The bolts of that stage for which it is said; `every` where no other one was tightened there.
static GPtrArray *bolts_upheld(const SheetSource *source, const Requirement *made,
                               const Entry *uphold, gboolean *every)
{
    const GPtrArray *all = source->assessment->requirements;
    GPtrArray *places = g_ptr_array_new();
    guint asked = 0;
    for (guint i = 0; i < all->len; i++) {
        const Requirement *each = g_ptr_array_index(all, i);
        if (each->asked != ASKED_BOLT || each->step != made->step ||
            each->stage != entry_number(uphold, "stage") || strcmp(each->name, made->name) != 0)
            continue;
        asked++;
        const Entry *other = source_entry(source, each->upheld);
        if (g_strcmp0(each->place, entry_text(uphold, "place")) == 0 ||
            (other && says_the_same(uphold, other)))
            g_ptr_array_add(places, each->place);
    }
    *every = places->len == asked;
    return places;
}

// `, bolt 4, stage 1`: what of a bolt set it holds for; "" of all else.
static char *upheld_of(const SheetSource *source, const Requirement *made, const Entry *uphold)
{
    const PlanTightening *tightening =
        made->asked == ASKED_BOLT ? plan_tightening(made->step, made->name) : NULL;
    gint64 stage = entry_number(uphold, "stage");
    if (!tightening || stage <= 0)
        return g_strdup("");
    gboolean every;
    g_autoptr(GPtrArray) places = bolts_upheld(source, made, uphold, &every);
    g_autofree char *runs = places_runs(tightening->group->axes, places);
    return g_strdup_printf(", %s%s%sstage %" G_GINT64_FORMAT,
                           every              ? ""
                           : places->len == 1 ? "bolt "
                                              : "bolts ",
                           every ? "" : runs, every ? "" : ", ", stage);
}

char *upheld_words(const SheetSource *source, const Requirement *made, const Entry *uphold)
{
    Reason doubt = reason_of_words(entry_text(uphold, "doubt"));
    const char *second = taken_name(source->taken, entry_text(uphold, "second"));
    g_autofree char *doubted = doubts_words(source, made, uphold, doubt);
    g_autofree char *of = upheld_of(source, made, uphold);
    return g_strdup_printf("%s Upheld%s: %s. %s%s%s.", doubted, of, entry_text(uphold, "why"),
                           taken_name(source->taken, uphold->by), second ? ", " : "",
                           second ? second : "");
}
