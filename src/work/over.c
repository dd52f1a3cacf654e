#include <standbook/work/over.h>

#include <standbook/value/formula.h>
#include <string.h>

Verdict over_verdict(const Requirement *made)
{
    return made->finding ? made->own_verdict : made->verdict;
}

Reason over_reason(const Requirement *made)
{
    Reason reason = made->finding ? made->own_reason : made->reason;
    if (reason != REASON_BEYOND_WEAR || !made->check)
        return reason;
    return made->check->wear_above ? REASON_HIGH : REASON_LOW;
}

static gboolean is_read(const Requirement *made)
{
    return made->check && made->value && !made->withdrawn && (made->lower || made->upper);
}

GPtrArray *over_checks(const Assessment *assessment)
{
    GPtrArray *checks = g_ptr_array_new();
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        if (is_read(made) && !g_ptr_array_find(checks, made->check, NULL))
            g_ptr_array_add(checks, (gpointer)made->check);
    }
    return checks;
}

const char *over_about(const Assessment *assessment, const char *check)
{
    const char *worked_out = NULL;
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        if (!is_read(made))
            continue;
        if (strcmp(made->check->name, check) == 0)
            return made->check->name;
        if (!worked_out && made->check->formula && formula_uses(made->check->formula, check))
            worked_out = made->check->name;
    }
    return worked_out;
}

void over_add(GArray *rows, const char *number, const Assessment *assessment, const char *check)
{
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Over row = {number, assessment->requirements->pdata[i]};
        if (is_read(row.made) && strcmp(row.made->check->name, check) == 0)
            g_array_append_val(rows, row);
    }
}

static void widen(Number **least, Number **greatest, const Number *value)
{
    if (!value)
        return;
    if (!*least || number_compare(value, *least) < 0) {
        number_free(*least);
        *least = number_copy(value);
    }
    if (!*greatest || number_compare(value, *greatest) > 0) {
        number_free(*greatest);
        *greatest = number_copy(value);
    }
}

gboolean over_window(const GArray *rows, Number **least, Number **greatest)
{
    g_autoptr(Number) none = number_from_integer(0);
    *least = *greatest = NULL;
    for (guint i = 0; i < rows->len; i++) {
        const Requirement *made = g_array_index(rows, Over, i).made;
        widen(least, greatest, made->value);
        widen(least, greatest, made->lower);
        widen(least, greatest, made->upper);
        widen(least, greatest, made->wear);
        if (!made->lower)
            widen(least, greatest, none);
    }
    return *least != NULL;
}

// How far a value lies past its wear limit: 0 on it; NULL if it does not reach it.
static Number *past_wear(const Requirement *made)
{
    if (!made->wear)
        return NULL;
    g_autoptr(Number) beyond = made->check->wear_above ? number_subtract(made->value, made->wear)
                                                       : number_subtract(made->wear, made->value);
    return number_sign(beyond) >= 0 ? g_steal_pointer(&beyond) : NULL;
}

// How much a place needs a person.
static guint need_of(const Requirement *made)
{
    g_autoptr(Number) beyond = past_wear(made);
    if (beyond && number_sign(beyond) > 0)
        return 3;
    Verdict verdict = over_verdict(made);
    return verdict == VERDICT_FAIL ? 2 : verdict == VERDICT_IN_DOUBT ? 1 : 0;
}

const Over *over_worst(const GArray *rows, const char *number)
{
    const Over *worst = NULL;
    for (guint i = 0; i < rows->len; i++) {
        const Over *row = &g_array_index(rows, Over, i);
        if (strcmp(row->number, number) == 0 &&
            (!worst || need_of(row->made) > need_of(worst->made)))
            worst = row;
    }
    return worst;
}

// `TL-0412: 3 is 0.061 past the wear limit, 2 stands on it`.
static void tell_past(GString *words, const Over *row, const Number *beyond, const char **number)
{
    g_autofree char *by = check_width_words(row->made->check, beyond);
    gboolean again = g_strcmp0(*number, row->number) == 0, on = number_sign(beyond) == 0;
    const char *place = *row->made->place ? row->made->place : "it";
    if (*number)
        g_string_append(words, again ? ", " : "; ");
    if (!again)
        g_string_append_printf(words, "%s: ", row->number);
    if (on)
        g_string_append_printf(words, "%s stands on %s", place, *number ? "it" : "the wear limit");
    else
        g_string_append_printf(words, *number ? "%s is %s past it" : "%s is %s past the wear limit",
                               place, by);
    *number = row->number;
}

static void tell_others(GString *words, const guint counts[VERDICTS], gboolean some_past)
{
    static const struct {
        Verdict verdict;
        const char *word;
    } order[] = {{VERDICT_PASS, "within the limits"},
                 {VERDICT_IN_DOUBT, "in doubt"},
                 {VERDICT_FAIL, "outside"},
                 {VERDICT_CONCEDED, "conceded"},
                 {VERDICT_NOTED, "noted"}};
    guint all = 0;
    for (guint i = 0; i < VERDICTS; i++)
        all += counts[i];
    if (!all)
        return;
    g_string_append_printf(words, some_past ? "\nOf the other %u:" : "Of %u:", all);
    const char *joint = " ";
    for (gsize i = 0; i < G_N_ELEMENTS(order); i++)
        if (counts[order[i].verdict]) {
            g_string_append_printf(words, "%s%u %s", joint, counts[order[i].verdict],
                                   order[i].word);
            joint = ", ";
        }
    g_string_append_c(words, '.');
}

char *over_words(const GArray *rows)
{
    GString *words = g_string_new(NULL);
    guint counts[VERDICTS] = {0};
    const char *number = NULL;
    for (guint i = 0; i < rows->len; i++) {
        const Over *row = &g_array_index(rows, Over, i);
        g_autoptr(Number) beyond = past_wear(row->made);
        if (beyond)
            tell_past(words, row, beyond, &number);
        else
            counts[over_verdict(row->made)]++;
    }
    if (number)
        g_string_append_c(words, '.');
    tell_others(words, counts, number != NULL);
    return g_string_free(words, FALSE);
}
