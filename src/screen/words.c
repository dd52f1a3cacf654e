#include "words.h"

#include "cells.h"

#include <standbook/sheet/figures.h>
#include <standbook/work/gate.h>
#include <string.h>

char *step_words(const PlanStep *step)
{
    return g_strdup_printf("S%02u  %s", step->index + 1, step->name);
}

char *tally_words(const guint counts[VERDICTS], guint optional)
{
    // What needs a person is in capitals.
    static const struct {
        Verdict verdict;
        const char *word;
    } order[] = {{VERDICT_FAIL, "FAIL"},     {VERDICT_IN_DOUBT, "DOUBT"}, {VERDICT_PASS, "pass"},
                 {VERDICT_NOTED, "noted"},   {VERDICT_CONCEDED, "conc."}, {VERDICT_OPEN, "open"},
                 {VERDICT_NOT_NEEDED, "n/a"}};
    GString *words = g_string_new(NULL);
    for (gsize i = 0; i < G_N_ELEMENTS(order); i++) {
        if (counts[order[i].verdict])
            g_string_append_printf(words, "%s%u %s", words->len ? "  " : "",
                                   counts[order[i].verdict], order[i].word);
        if (order[i].verdict == VERDICT_OPEN && optional)
            g_string_append_printf(words, " (%u optional)", optional);
    }
    return g_string_free(words, FALSE);
}

char *build_tally_words(const Assessment *assessment)
{
    return tally_words(assessment->counts, gate_all_optional(assessment));
}

char *initials_typed(const char *typed)
{
    gsize small = strspn(typed, G_CSET_a_2_z);
    char *words = g_strdup(typed);
    for (gsize i = 0; small >= 2 && small <= 4 && strchr(" ", typed[small]) && i < small; i++)
        words[i] = g_ascii_toupper(words[i]);
    return words;
}

char *day_words(Moment moment)
{
    static const char *const days[] = {"Monday", "Tuesday",  "Wednesday", "Thursday",
                                       "Friday", "Saturday", "Sunday"};
    static const char *const months[] = {"January",   "February", "March",    "April",
                                         "May",       "June",     "July",     "August",
                                         "September", "October",  "November", "December"};
    g_autoptr(GDateTime) time = g_date_time_new_from_unix_utc(moment);
    return g_strdup_printf("%s %d %s %d", days[g_date_time_get_day_of_week(time) - 1],
                           g_date_time_get_day_of_month(time),
                           months[g_date_time_get_month(time) - 1], g_date_time_get_year(time));
}

const char *verdict_mark(Verdict verdict, Reason reason, const PlanCheck *check)
{
    static const char *const marks[VERDICTS] = {
        [VERDICT_OPEN] = "· open ",       [VERDICT_PASS] = "√ pass ",
        [VERDICT_FAIL] = "× FAIL ",       [VERDICT_IN_DOUBT] = "? DOUBT",
        [VERDICT_CONCEDED] = "◆ conc.",   [VERDICT_NOTED] = "= noted",
        [VERDICT_NOT_NEEDED] = "− n/a  ",
    };
    gboolean worn = reason == REASON_BEYOND_WEAR && check;
    if (verdict == VERDICT_FAIL && (reason == REASON_HIGH || (worn && check->wear_above)))
        return "▲ FAIL ";
    if (verdict == VERDICT_FAIL && (reason == REASON_LOW || worn))
        return "▼ FAIL ";
    return marks[verdict];
}

Verdict verdict_found(const Requirement *made)
{
    return made->finding ? made->own_verdict : made->verdict;
}

char *fault_mark(const Requirement *made)
{
    Verdict verdict = verdict_found(made);
    if (verdict != VERDICT_FAIL && verdict != VERDICT_IN_DOUBT && verdict != VERDICT_CONCEDED)
        return g_strdup("");
    Reason reason = made->finding ? made->own_reason : made->reason;
    return g_utf8_substring(verdict_mark(verdict, reason, made->check), 0, 1);
}

char *fault_words(const Requirement *made)
{
    if (made->verdict != VERDICT_FAIL && made->verdict != VERDICT_IN_DOUBT)
        return g_strdup("");
    g_autofree char *mark =
        g_strstrip(g_strdup(verdict_mark(made->verdict, made->reason, made->check)));
    g_autofree char *outside = figure_outside(made);
    const char *why =
        made->verdict == VERDICT_FAIL && *outside ? outside : reason_said(made->reason);
    return g_strdup_printf(" · %s, %s", mark, why);
}

char *front_words(const char *text, glong room)
{
    if (g_utf8_strlen(text, -1) <= room)
        return g_strdup(text);
    g_autofree char *front = g_utf8_substring(text, 0, MAX(room - 1, 0));
    return g_strconcat(g_strchomp(front), "…", NULL);
}

char *whole_words(const char *text, glong room)
{
    g_autofree char *front = front_words(text, room);
    const char *blank = strrchr(front, ' ');
    gboolean cut = strcmp(front, text) != 0 && blank && blank > front + strlen(front) / 2;
    return cut ? g_strdup_printf("%.*s …", (int)(blank - front), front) : g_steal_pointer(&front);
}
