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

gboolean over_was_read(const Assessment *assessment, const char *check)
{
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        if (made->check && made->value && !made->withdrawn && strcmp(made->check->name, check) == 0)
            return TRUE;
    }
    return FALSE;
}

void over_add(GArray *rows, const char *number, const Assessment *assessment, const char *check)
{
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Over row = {number, assessment->requirements->pdata[i]};
        if (is_read(row.made) && strcmp(row.made->check->name, check) == 0)
            g_array_append_val(rows, row);
    }
}

gboolean over_wears_away(const Requirement *made)
{
    return !made->lower && made->wear;
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

// `cylinder 3`, `main 3, front`; `it` of the only place.
static char *place_words(const Requirement *made)
{
    return *made->place
               ? g_strconcat(axis_name(made->check->places->pdata[0]), " ", made->place, NULL)
               : g_strdup("it");
}

// What is said so far of places at the wear limit.
typedef struct {
    GString *words;
    const char *number; // of the build said last
    guint said, more;   // places that are named, and that are only counted
} Past;

// `TL-0412: cylinder 3 is 0.061 past the wear limit`, behind it `, cylinder 2 stands on it`
static void tell_past(Past *past, const Over *row, const Number *beyond)
{
    enum { NAMED = 4 };
    gboolean again = g_strcmp0(past->number, row->number) == 0;
    const char *limit = past->said ? "it" : "the wear limit";
    if (past->said == NAMED) {
        past->more++;
        return;
    }
    g_autofree char *place = place_words(row->made);
    g_autofree char *by = check_width_words(row->made->check, beyond);
    if (past->said++)
        g_string_append(past->words, again ? ", " : "; ");
    if (!again)
        g_string_append_printf(past->words, "%s: ", row->number);
    if (number_sign(beyond) == 0)
        g_string_append_printf(past->words, "%s stands on %s", place, limit);
    else
        g_string_append_printf(past->words, "%s is %s past %s", place, by, limit);
    past->number = row->number;
}

// Those of one build that are past it (1) or stand on it (0).
static void tell_build(Past *past, const GArray *rows, const char *number, int sign)
{
    for (guint i = 0; i < rows->len; i++) {
        const Over *row = &g_array_index(rows, Over, i);
        g_autoptr(Number) beyond = strcmp(row->number, number) == 0 ? past_wear(row->made) : NULL;
        if (beyond && number_sign(beyond) == sign)
            tell_past(past, row, beyond);
    }
}

// FALSE if none is there.
static gboolean tell_all_past(GString *words, const GArray *rows)
{
    Past past = {.words = words};
    for (guint i = 0; i < rows->len; i++) {
        const char *number = g_array_index(rows, Over, i).number;
        if (i > 0 && strcmp(number, g_array_index(rows, Over, i - 1).number) == 0)
            continue;
        tell_build(&past, rows, number, 1);
        tell_build(&past, rows, number, 0);
    }
    if (past.more)
        g_string_append_printf(words, "; and %u more", past.more);
    if (past.said)
        g_string_append_c(words, '.');
    return past.said > 0;
}

// How the places that do not reach the wear limit are judged.
typedef struct {
    guint verdicts[VERDICTS], high, all; // of those that fail, so many are above
    gboolean two;                        // some have two limits
} Tally;

static Tally tally_of(const GArray *rows)
{
    Tally tally = {0};
    for (guint i = 0; i < rows->len; i++) {
        const Requirement *made = g_array_index(rows, Over, i).made;
        g_autoptr(Number) beyond = past_wear(made);
        if (beyond)
            continue;
        tally.all++;
        tally.verdicts[over_verdict(made)]++;
        tally.high += over_verdict(made) == VERDICT_FAIL && over_reason(made) == REASON_HIGH;
        tally.two = tally.two || (made->lower && made->upper);
    }
    return tally;
}

static void tell_others(GString *words, const Tally *tally, gboolean some_past)
{
    guint failed = tally->verdicts[VERDICT_FAIL];
    const struct {
        Verdict verdict;
        const char *word;
    } order[] = {{VERDICT_PASS, tally->two ? "within the limits" : "within the limit"},
                 {VERDICT_IN_DOUBT, "in doubt"},
                 {VERDICT_FAIL, tally->high == failed ? "over the limit"
                                : tally->high == 0    ? "under the limit"
                                                      : "outside"},
                 {VERDICT_CONCEDED, "conceded"},
                 {VERDICT_NOTED, "noted"}};
    if (!tally->all)
        return;
    g_string_append_printf(words, some_past ? "\nOf the other %u:" : "Of %u:", tally->all);
    const char *joint = " ";
    for (gsize i = 0; i < G_N_ELEMENTS(order); i++)
        if (tally->verdicts[order[i].verdict]) {
            g_string_append_printf(words, "%s%u %s", joint, tally->verdicts[order[i].verdict],
                                   order[i].word);
            joint = ", ";
        }
    g_string_append_c(words, '.');
}

// Of those shown as they were found: how many count otherwise where they are asked for.
static void tell_findings(GString *words, const GArray *rows)
{
    guint waiting = 0, answered = 0;
    for (guint i = 0; i < rows->len; i++) {
        const Requirement *made = g_array_index(rows, Over, i).made;
        gboolean differs = made->finding && made->verdict != made->own_verdict;
        waiting += differs && made->verdict == VERDICT_OPEN ? 1 : 0;
        answered += differs && made->verdict == VERDICT_NOTED ? 1 : 0;
    }
    if (!waiting && !answered)
        return;
    g_string_append(words, "\nAs found. In the step:");
    if (waiting)
        g_string_append_printf(words, " %u open until answered", waiting);
    if (answered)
        g_string_append_printf(words, "%s %u noted as answered", waiting ? "," : "", answered);
    g_string_append_c(words, '.');
}

char *over_words(const GArray *rows)
{
    GString *words = g_string_new(NULL);
    const Tally tally = tally_of(rows);
    gboolean some_past = tell_all_past(words, rows);
    tell_others(words, &tally, some_past);
    tell_findings(words, rows);
    return g_string_free(words, FALSE);
}
