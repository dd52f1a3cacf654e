// The log line for what is answered at a place.
#include "agenda_inside.h"

#include <string.h>

static gboolean is_said(const char *text)
{
    return text && *text;
}

// Words in quotes; a double quote within them is written twice.
static char *quoted(const char *words)
{
    g_auto(GStrv) parts = g_strsplit(words, "\"", -1);
    g_autofree char *doubled = g_strjoinv("\"\"", parts);
    return g_strdup_printf("\"%s\"", doubled);
}

// A word of letters, digits and what lot numbers have in them needs no quotes.
static char *word(const char *text)
{
    gsize plain = strspn(text, G_CSET_A_2_Z G_CSET_a_2_z G_CSET_DIGITS "-./");
    return text[plain] ? quoted(text) : g_strdup(text);
}

static gboolean is_choice(const AgendaItem *item, const char *typed)
{
    return g_strv_contains((const char *const *)item->choices, typed);
}

// What is answered to yes or no, or to a choice: the word, also where only its digit is typed.
static const char *chosen(const AgendaItem *item, const char *typed)
{
    if (is_choice(item, typed))
        return typed;
    if (item->field == AGENDA_GO_NO_GO)
        return strcmp(typed, "1") == 0 ? "yes" : strcmp(typed, "0") == 0 ? "no" : typed;
    char *end = NULL;
    guint64 number = g_ascii_strtoull(typed, &end, 10);
    gboolean counts = *end == '\0' && number >= 1 && number <= g_strv_length(item->choices);
    return counts ? item->choices[number - 1] : typed;
}

// Digits as they are; all else that a reading may be stands in quotes.
static gboolean is_plain(const char *value)
{
    return value[strspn(value, G_CSET_DIGITS "+-.<>")] == '\0';
}

static char *choice_line(const AgendaItem *item, const char *typed)
{
    g_autofree char *label = word(chosen(item, typed));
    return g_strdup_printf("%s %s %s", item->made->check->choose ? "choose" : "look", item->target,
                           label);
}

static char *check_line(const AgendaItem *item, const AgendaAnswer *answer)
{
    if (!is_said(answer->typed))
        return NULL;
    g_autofree char *words = quoted(answer->typed);
    const char *tool = is_said(answer->tool) ? answer->tool : NULL;
    switch (item->field) {
    case AGENDA_VALUE:
        return g_strdup_printf(
            "read %s %s%s%s%s", item->target, is_plain(answer->typed) ? answer->typed : words,
            answer->loose && item->set ? " loose" : "", tool ? " with " : "", tool ? tool : "");
    case AGENDA_GO_NO_GO:
    case AGENDA_CHOICE:
        return choice_line(item, answer->typed);
    case AGENDA_COUNT:
        return g_strdup_printf("look %s %s", item->target, answer->typed);
    default:
        return g_strdup_printf("look %s %s", item->target, words);
    }
}

static char *bolt_line(const AgendaItem *item, const AgendaAnswer *answer)
{
    const char *set = item->made->name, *step = item->made->step->name;
    guint stage = item->made->stage;
    g_autofree char *with = g_strconcat(is_said(answer->tool) ? " with " : "", answer->tool, NULL);
    g_autofree char *shown = g_strconcat(is_said(answer->typed) ? " " : "", answer->typed, NULL);
    if (item->made->asked == ASKED_WAIT)
        return g_strdup_printf("waited %s stage %u", item->target, stage);
    if (answer->all)
        return item->all_at_once ? g_strdup_printf("tighten %s in %s stage %u all%s%s", set, step,
                                                   stage, shown, with)
                                 : NULL;
    return g_strdup_printf("tighten %s stage %u%s%s", item->target, stage, shown, with);
}

static char *part_line(const AgendaItem *item, const AgendaAnswer *answer)
{
    static const char *const uses[] = {"new", "reused", "reworked"};
    gboolean fresh = answer->use == AGENDA_NEW;
    if (fresh ? item->track && !is_said(answer->typed) : !is_said(answer->why))
        return NULL;
    if (fresh && !item->track && is_said(answer->typed)) // nothing typed is let fall
        return NULL;
    GString *line = g_string_new(NULL);
    g_string_append_printf(line, "fit %s", item->target);
    if (item->track && is_said(answer->typed)) {
        g_autofree char *label = word(answer->typed);
        g_string_append_printf(line, " %s %s", item->track, label);
    }
    if (item->pieces > 1)
        g_string_append_printf(line, " count %u", item->pieces);
    g_string_append_printf(line, " %s", uses[answer->use]);
    if (!fresh) {
        g_autofree char *why = quoted(answer->why);
        g_string_append_printf(line, " %s", why);
    }
    return g_string_free(line, FALSE);
}

static char *sign_line(const AgendaItem *item, const AgendaAnswer *answer)
{
    (void)answer;
    return item->made->stage > 1 ? g_strdup_printf("sign %s, %u", item->target, item->made->stage)
                                 : g_strdup_printf("sign %s", item->target);
}

char *agenda_line(const AgendaItem *item, const AgendaAnswer *answer)
{
    g_autofree char *line = item->field == AGENDA_TICK        ? bolt_line(item, answer)
                            : item->field == AGENDA_PART      ? part_line(item, answer)
                            : item->field == AGENDA_SIGNATURE ? sign_line(item, answer)
                                                              : check_line(item, answer);
    if (!line || !is_said(answer->initials))
        return g_steal_pointer(&line);
    return g_strdup_printf("%s %s", answer->initials, line);
}
