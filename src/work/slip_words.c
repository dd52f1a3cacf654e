#include "reading_place.h"
#include "session_inside.h"
#include "take.h"

#include <standbook/rules/slip.h>
#include <standbook/work/slip_words.h>
#include <string.h>

// What was read at the other places of the check, in base units.
static GPtrArray *others_of(const Assessment *assessment, const Requirement *made)
{
    GPtrArray *others = g_ptr_array_new();
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *other = assessment->requirements->pdata[i];
        if (other != made && other->check == made->check && other->step == made->step &&
            other->value && other->bound == BOUND_NONE && !other->withdrawn)
            g_ptr_array_add(others, other->value);
    }
    return others;
}

static gboolean read_entry(const Entry *entry, Reading *reading)
{
    const char *typed = entry_value(entry, "value", "typed");
    const char *name = entry_value(entry, "value", "unit");
    g_autoptr(Unit) unit = name && *name ? unit_parse(name, NULL) : NULL;
    return typed && reading_parse(typed, unit, reading, NULL, NULL) && reading->bound == BOUND_NONE;
}

// With all the decimals that were typed.
static char *keeps_in_words(const Requirement *made, const Reading *reading, const Number *meant,
                            gboolean ask)
{
    guint decimals = MAX(made->check->decimals, reading->decimals);
    g_autofree char *kept = unit_show(made->check->unit, reading->value, decimals);
    g_autofree char *without =
        meant ? unit_show(made->check->unit, meant, made->check->decimals) : NULL;
    return g_strconcat(ask ? "Enter again keeps " : "", kept, ask ? "" : " is kept",
                       without ? ", not " : "", without, NULL);
}

static char *others_in_words(guint count)
{
    return count == 0   ? g_strdup("its limits")
           : count == 1 ? g_strdup("the other one")
                        : g_strdup_printf("the other %u", count);
}

static char *slip_in_words(const Assessment *before, const Entry *entry, gboolean ask)
{
    static const char *const slips[] = {
        [SLIP_TEN_TIMES] = "10 times",    [SLIP_A_TENTH] = "A tenth of",
        [SLIP_INCH_TIMES] = "25.4 times", [SLIP_INCH_PART] = "1/25.4 of",
        [SLIP_SIGN] = "Sign unlike",      [SLIP_FAR] = "Far from"};
    g_auto(Reading) reading = {0};
    const Requirement *made =
        strcmp(entry->kind->name, "read") == 0 ? reading_place(before, entry) : NULL;
    if (!made || !read_entry(entry, &reading))
        return NULL;
    g_autoptr(GPtrArray) others = others_of(before, made);
    g_autoptr(Number) step = check_step(made->check), meant = NULL;
    const SlipQuestion question = {reading.value, (const Number *const *)others->pdata,
                                   others->len,   made->lower,
                                   made->upper,   step};
    SlipKind kind = step ? slip_likely(&question, &meant) : SLIP_NONE;
    if (kind == SLIP_NONE)
        return NULL;
    g_autofree char *than = others_in_words(others->len);
    g_autofree char *keeps = keeps_in_words(made, &reading, meant, ask);
    return g_strdup_printf("%s %s? %s", slips[kind], than, keeps);
}

char *slip_answer(const Assessment *before, const Entry *entry)
{
    return slip_in_words(before, entry, FALSE);
}

static const Entry *only_reading(const LineTaken *taken)
{
    const Entry *found = NULL;
    for (guint i = 0; taken && i < taken->entries->len; i++) {
        const Entry *entry = taken->entries->pdata[i];
        if (strcmp(entry->kind->name, "read") != 0)
            continue;
        if (found)
            return NULL;
        found = entry;
    }
    return found;
}

char *session_slip(Session *session, const char *line)
{
    Moment now = session->options.now(session->options.user);
    g_autoptr(LineTaken) taken = session->build ? line_take(session->taker, line, now, NULL) : NULL;
    const Entry *entry = only_reading(taken);
    return entry ? slip_in_words(session_assessment(session), entry, TRUE) : NULL;
}
