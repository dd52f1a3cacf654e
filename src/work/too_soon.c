#include <standbook/work/clocks.h>
#include <standbook/work/too_soon.h>
#include <string.h>

char *too_soon_words(const Agenda *agenda, const PlanStep *step, Moment now)
{
    Clock clock;
    if (!clock_forbids(agenda->plan, step, agenda->entries, agenda->count, now, &clock))
        return NULL;
    g_autofree char *until = clock_until(&clock, now);
    return g_strdup_printf("%s: %s", clock.subject, until);
}

// Whether nothing was entered of what the step asks for.
static gboolean is_untouched(const Assessment *assessment, const PlanStep *step)
{
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        if (made->step == step && made->asked != ASKED_SIGN && made->entry > 0)
            return FALSE;
    }
    return TRUE;
}

// Whether it is the work of its step, which is asked about where it begins.
static gboolean is_work(const Entry *entry)
{
    static const char *const works[] = {"read", "look", "fit", "tick", NULL};
    return g_strv_contains(works, entry->kind->name);
}

char *too_soon(const Agenda *agenda, const Entry *entry, gboolean ask)
{
    const char *name = entry_text(entry, "step");
    const PlanStep *step = name ? plan_step(agenda->plan, name) : NULL;
    gboolean sign = strcmp(entry->kind->name, "sign") == 0;
    if (!step || (sign ? entry_number(entry, "signature") > 1
                       : !is_work(entry) || !is_untouched(agenda->assessment, step)))
        return NULL;
    g_autofree char *words = too_soon_words(agenda, step, entry_moment(entry));
    const char *end = !ask   ? sign ? ": signed in doubt" : ""
                      : sign ? "; again: signed in doubt"
                             : "; Enter again takes it all the same";
    return words ? g_strconcat(words, end, NULL) : NULL;
}
