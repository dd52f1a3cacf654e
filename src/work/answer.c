#include <standbook/base/text.h>
#include <standbook/work/answer.h>
#include <string.h>

enum { SHOWN_ONE_BY_ONE = 4, GROUPS_SHOWN = 8 };

// The value or answer with a blank in front; empty if there is none.
static char *value_words(const Requirement *made)
{
    static const char *const bounds[] = {
        [BOUND_NONE] = "", [BOUND_BELOW] = "<", [BOUND_ABOVE] = ">"};
    if (made->value && made->check) {
        g_autofree char *shown = unit_show(made->check->unit, made->value, made->check->decimals);
        return g_strconcat(" ", bounds[made->bound], shown, NULL);
    }
    return made->answer && *made->answer ? g_strconcat(" ", made->answer, NULL) : g_strdup("");
}

static char *verdict_of(const Requirement *made)
{
    const char *reason = reason_words(made->reason);
    return g_strconcat(verdict_words(made->verdict), *reason ? " · " : "", reason, NULL);
}

// `main bore[1, front]`; only bolts, waits and signatures keep the word in front.
static char *name_of(const Requirement *made)
{
    g_autofree char *name = requirement_name(made);
    const char *behind = strchr(name, ' ');
    gboolean cut = behind && (made->asked == ASKED_READ || made->asked == ASKED_LOOK);
    return g_strdup(cut ? behind + 1 : name);
}

char *answer_requirement(const Requirement *made)
{
    g_autofree char *name = name_of(made), *value = value_words(made), *verdict = verdict_of(made);
    g_autofree char *text = g_strconcat(name, value, ": ", verdict, NULL);
    return text_clean(text, -1);
}

static gboolean same_value(const Requirement *one, const Requirement *other)
{
    if (!one->value || !other->value)
        return one->value == other->value;
    return number_equal(one->value, other->value);
}

static gboolean has_changed(const Requirement *before, const Requirement *after)
{
    if (after->withdrawn || (after->verdict == VERDICT_OPEN && !before))
        return FALSE;
    if (!before || before->verdict != after->verdict || before->reason != after->reason)
        return TRUE;
    return after->verdict != VERDICT_OPEN &&
           (before->entry != after->entry || !same_value(before, after));
}

// Finds the requirement of the same name: mostly at the same index.
typedef struct {
    const GPtrArray *requirements;
    GHashTable *by_name; // made when first needed
} Finder;

static GHashTable *index_by_name(const GPtrArray *requirements)
{
    GHashTable *by_name = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
    for (guint i = 0; i < requirements->len; i++)
        g_hash_table_insert(by_name, requirement_name(requirements->pdata[i]),
                            requirements->pdata[i]);
    return by_name;
}

static const Requirement *find_before(Finder *finder, const Requirement *after, guint index,
                                      gboolean aligned)
{
    if (aligned)
        return finder->requirements->pdata[index];
    if (!finder->by_name)
        finder->by_name = index_by_name(finder->requirements);
    g_autofree char *name = requirement_name(after);
    return g_hash_table_lookup(finder->by_name, name);
}

static gboolean is_same_group(const Requirement *one, const Requirement *other)
{
    return one->asked == other->asked && one->step == other->step && one->stage == other->stage &&
           strcmp(one->name, other->name) == 0 && one->verdict == other->verdict &&
           one->reason == other->reason;
}

// `main caps in Crank, stage 1: 6 pass`
static void append_group(GString *text, const Requirement *first, guint count)
{
    g_autofree char *verdict = verdict_of(first);
    g_string_append(text, first->name);
    if (first->asked == ASKED_BOLT)
        g_string_append_printf(text, " in %s, stage %u", first->step->name, first->stage);
    g_string_append_printf(text, ": %u %s", count, verdict);
}

static void append_run(GString *text, const GPtrArray *changed, guint from, guint count)
{
    if (count > SHOWN_ONE_BY_ONE) {
        append_group(text, changed->pdata[from], count);
        return;
    }
    for (guint i = from; i < from + count; i++) {
        g_autofree char *one = answer_requirement(changed->pdata[i]);
        g_string_append_printf(text, "%s%s", i > from ? "; " : "", one);
    }
}

static char *changes_in_words(const GPtrArray *changed)
{
    GString *text = g_string_new(NULL);
    guint shown = 0;
    for (guint i = 0, count; i < changed->len; i += count, shown++) {
        for (count = 1; i + count < changed->len &&
                        is_same_group(changed->pdata[i], changed->pdata[i + count]);)
            count++;
        if (shown == GROUPS_SHOWN) {
            g_string_append_printf(text, "; and %u more", changed->len - i);
            break;
        }
        if (text->len)
            g_string_append(text, "; ");
        append_run(text, changed, i, count);
    }
    return g_string_free(text, FALSE);
}

static gint by_group(gconstpointer one, gconstpointer other)
{
    const Requirement *a = *(const Requirement *const *)one;
    const Requirement *b = *(const Requirement *const *)other;
    if (a->step != b->step)
        return a->step->index < b->step->index ? -1 : 1;
    int name = strcmp(a->name, b->name);
    if (name)
        return name;
    if (a->stage != b->stage)
        return a->stage < b->stage ? -1 : 1;
    return a->verdict != b->verdict ? (gint)a->verdict - (gint)b->verdict
                                    : (gint)a->reason - (gint)b->reason;
}

char *answer_changes(const Assessment *before, const Assessment *after)
{
    Finder finder = {before->requirements, NULL};
    gboolean aligned = before->requirements->len == after->requirements->len;
    g_autoptr(GPtrArray) changed = g_ptr_array_new();
    for (guint i = 0; i < after->requirements->len; i++) {
        Requirement *made = after->requirements->pdata[i];
        if (has_changed(find_before(&finder, made, i, aligned), made))
            g_ptr_array_add(changed, made);
    }
    g_clear_pointer(&finder.by_name, g_hash_table_unref);
    g_ptr_array_sort(changed, by_group);
    return changed->len ? changes_in_words(changed) : NULL;
}
