#include <standbook/work/part_cause.h>

#include <string.h>

static const char *space(const GString *words)
{
    return words->len ? " " : "";
}

// The day it could be used on last, where that had passed when it was used; NULL else.
static const char *expired(const Entry *use, const char *expires)
{
    g_autofree char *when = entry_when(use);
    return expires && strncmp(when, expires, strlen(expires)) > 0 ? expires : NULL;
}

// A lot or tin: `Lot FB-9`, `Silicone S-14`; without a label on record by what it is for.
static char *called(const Taken *taken, const char *what, const char *id, const Entry *use)
{
    gboolean lot = strcmp(what, "lot") == 0;
    const char *label = taken_text(taken, what, id, "label");
    label = label ? label : entry_text(use, lot ? "label" : "consumable");
    char *words = g_strconcat(lot ? "lot " : "", label ? label : "used", NULL);
    *words = g_ascii_toupper(*words);
    return words;
}

static void say_lot(GString *words, const Taken *taken, const char *what, const Entry *use)
{
    const char *id = entry_text(use, strcmp(what, "lot") == 0 ? "lot" : "item");
    g_autofree char *label = called(taken, what, id, use);
    const char *why = taken_text(taken, "recall", id, "why");
    const char *day = expired(use, taken_text(taken, what, id, "expires"));
    if (!day && strcmp(what, "consumable") == 0)
        day = expired(use, entry_text(use, "expires"));
    if (why)
        g_string_append_printf(words, "%s%s is recalled: %s.", space(words), label, why);
    if (day)
        g_string_append_printf(words, "%s%s expired %s.", space(words), label, day);
}

// Where neither is it, it is what the part is: used again, or of a grade that was not chosen.
static void say_fit(GString *words, const Taken *taken, const Entry *fit)
{
    say_lot(words, taken, "lot", fit);
    if (words->len)
        return;
    const char *grade = taken_text(taken, "lot", entry_text(fit, "lot"), "grade");
    const char *use = entry_text(fit, "use");
    if (g_strcmp0(use, "new") != 0)
        g_string_append_printf(words, "It was %s where a new one is asked for.",
                               g_strcmp0(use, "reworked") == 0 ? use : "used again");
    else if (grade)
        g_string_append_printf(words, "It is of grade %s, not of the one chosen.", grade);
}

char *part_cause_words(const Taken *taken, const Requirement *made)
{
    const char *const *labels = (const char *const *)made->labels;
    const Entry *fit = taken_newest(taken, "fit", made->name, labels);
    const Entry *laid = taken_newest(taken, "laid", made->name, labels);
    GString *words = g_string_new(NULL);
    if (laid)
        say_lot(words, taken, "consumable", laid);
    if (fit)
        say_fit(words, taken, fit);
    return g_string_free(words, words->len == 0);
}
