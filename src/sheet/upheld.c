// The footnote to what was upheld.
#include "sections.h"

#include <standbook/judge/assess.h>
#include <standbook/record/live.h>
#include <standbook/value/formula.h>
#include <string.h>

// What was upheld, by name and place.
typedef struct {
    const Plan *plan;
    const char *name;
    const GPtrArray *axes; // of its place; NULL where it has none
    const char **labels;   // NULL for all places
} Subject;

static gboolean is_kind_of(const Entry *entry, const char *kind, const char *field,
                           const char *name)
{
    return strcmp(entry->kind->name, kind) == 0 && strcmp(entry_text(entry, field), name) == 0;
}

static gboolean is_read_there(const Subject *subject, const Entry *entry, const PlanCheck *check)
{
    if (!is_kind_of(entry, "read", "check", check->name))
        return FALSE;
    g_autofree const char **labels = entry_labels(entry, check->places->len);
    return !subject->axes || places_meet(subject->axes, subject->labels, check->places, labels);
}

static gboolean is_bolt_there(const Subject *subject, const Entry *entry, const PlanGroup *group)
{
    if (!is_kind_of(entry, "tick", "tightening", group->name))
        return FALSE;
    for (gsize i = 0; i < entry_list_length(entry, "bolts"); i++) {
        g_auto(GStrv) labels = g_strsplit(entry_list_item(entry, "bolts", i), ", ", -1);
        if (!subject->axes || g_strv_length(labels) != group->axes->len ||
            places_meet(subject->axes, subject->labels, group->axes, (const char *const *)labels))
            return TRUE;
    }
    return FALSE;
}

// Whether a check has its value from that entry: a reading of it or of what goes into its formula,
// or bolts that those are read with.
static gboolean check_stands_on(const Subject *subject, const PlanCheck *check, const Entry *entry)
{
    gboolean stands = is_read_there(subject, entry, check);
    for (guint i = 0; !stands && i < check->with->len; i++) {
        const PlanName *with = check->with->pdata[i];
        stands = with->group && is_bolt_there(subject, entry, with->group);
    }
    for (gsize i = 0; !stands && check->formula && i < formula_name_count(check->formula); i++) {
        const PlanCheck *input = plan_check(subject->plan, formula_name(check->formula, i));
        stands = input && check_stands_on(subject, input, entry);
    }
    return stands;
}

static gboolean stands_on(const Subject *subject, const Entry *entry)
{
    const PlanCheck *check = plan_check(subject->plan, subject->name);
    const PlanGroup *group = check ? NULL : plan_group(subject->plan, subject->name);
    return (check && check_stands_on(subject, check, entry)) ||
           (group && is_bolt_there(subject, entry, group));
}

// The calibration that found the tool of a use wrong, told in the ledger behind entry `from` and
// not behind `to`; NULL if none did.
static const json_t *found_wrong(const SheetSource *source, const Entry *use, gint64 from,
                                 gint64 to)
{
    const char *tool = entry_text(use, "tool");
    for (gint64 i = from; tool && i < to; i++) {
        const Entry *entry = source->entries[i];
        gboolean told = strcmp(entry->kind->name, "news") == 0;
        const json_t *body = told ? json_object_get(entry->body, "body") : NULL;
        if (g_strcmp0(json_string_value(json_object_get(body, "found")), "wrong") == 0 &&
            g_strcmp0(json_string_value(json_object_get(body, "tool")), tool) == 0)
            return body;
    }
    return NULL;
}

// `Click wrench of main caps found wrong 2025-03-11.`; behind it in brackets how far, but of bolts
// that something was read with: theirs stands beside them.
static char *found_words(const SheetSource *source, const Entry *use, const json_t *body,
                         gboolean bolts_below)
{
    gboolean bolts = strcmp(use->kind->name, "tick") == 0;
    const char *sort = taken_text(source->taken, "tool", entry_text(use, "tool"), "sort");
    const char *note =
        bolts && bolts_below ? NULL : json_string_value(json_object_get(body, "note"));
    char *words =
        g_strconcat(sort ? sort : "tool", " of ", entry_text(use, bolts ? "tightening" : "check"),
                    " found wrong ", json_string_value(json_object_get(body, "date")),
                    note ? " (" : ".", note, ").", NULL);
    *words = g_ascii_toupper(*words);
    return words;
}

// The newest reading that was doubted, by its seq: bolts done after it are no evidence of it, and a
// tool found wrong before it is not what came to it later. 0 where bolts were doubted.
static gint64 doubted_reading(const SheetSource *source, const Subject *subject,
                              const Entry *uphold, const gboolean *live)
{
    for (gint64 seq = uphold->seq; seq > 0; seq--)
        if (live[seq - 1] && strcmp(source->entries[seq - 1]->kind->name, "read") == 0 &&
            stands_on(subject, source->entries[seq - 1]))
            return seq;
    return 0;
}

// The newest of that evidence whose tool was found wrong between it and the uphold; NULL without
// any.
static char *wrong_words(const SheetSource *source, const Subject *subject, const Entry *uphold)
{
    g_autofree gboolean *live = g_new0(gboolean, source->count + 1);
    live_entries(source->entries, source->count, live);
    gint64 read = doubted_reading(source, subject, uphold, live);
    for (gint64 seq = read ? read : uphold->seq; seq > 0; seq--) {
        const Entry *use = source->entries[seq - 1];
        const json_t *body = live[seq - 1] && stands_on(subject, use)
                                 ? found_wrong(source, use, MAX(read, seq), uphold->seq)
                                 : NULL;
        if (body)
            return found_words(source, use, body, read > 0);
    }
    return NULL;
}

// How a tool found wrong made that doubtful; NULL where none did.
static char *tool_words(const SheetSource *source, const Entry *uphold, Reason doubt)
{
    const char *name = entry_text(uphold, "name");
    const PlanCheck *check = plan_check(source->plan, name);
    const PlanGroup *group = check ? NULL : plan_group(source->plan, name);
    const GPtrArray *axes = check ? check->places : group ? group->axes : NULL;
    g_autofree const char **labels = entry_labels(uphold, axes ? axes->len : 0);
    const Subject subject = {source->plan, name, axes, labels};
    return doubt == REASON_TOOL || doubt == REASON_BASIS ? wrong_words(source, &subject, uphold)
                                                         : NULL;
}

char *upheld_words(const SheetSource *source, const Entry *uphold)
{
    Reason doubt = reason_of_words(entry_text(uphold, "doubt"));
    const char *second = taken_name(source->taken, entry_text(uphold, "second"));
    g_autofree char *tool = tool_words(source, uphold, doubt);
    gint64 stage = entry_number(uphold, "stage");
    g_autofree char *of = stage > 0 ? g_strdup_printf(", stage %" G_GINT64_FORMAT, stage) : NULL;
    return g_strdup_printf("%s Upheld%s: %s. %s%s%s.", tool ? tool : reason_sentence(doubt),
                           of ? of : "", entry_text(uphold, "why"),
                           taken_name(source->taken, uphold->by), second ? ", " : "",
                           second ? second : "");
}
