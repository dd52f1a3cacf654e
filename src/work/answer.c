#include <standbook/base/text.h>
#include <standbook/work/answer.h>
#include <standbook/work/finding.h>
#include <string.h>

enum { SHOWN_ONE_BY_ONE = 4, GROUPS_SHOWN = 8 };

// The value or answer with a blank in front; empty if there is none.
static char *value_words(const Requirement *made)
{
    static const char *const bounds[] = {
        [BOUND_NONE] = "", [BOUND_BELOW] = "<", [BOUND_ABOVE] = ">"};
    if (made->value && made->check) {
        g_autofree char *shown = check_typed_shown(made->check, made->value, made->decimals);
        g_autofree char *inches = check_inch_words(made->check, made->value);
        return g_strconcat(" ", bounds[made->bound], shown, inches ? " = " : NULL, inches, NULL);
    }
    // What a stage asks for is not what became of the bolt.
    gboolean says = made->answer && *made->answer &&
                    (made->asked != ASKED_BOLT || made->value_verdict == VERDICT_FAIL);
    return says ? g_strconcat(" ", made->answer, NULL) : g_strdup("");
}

static char *pair_in_words(const Requirement *made, Verdict verdict, Reason reason)
{
    g_autofree char *words = requirement_reasons(made, reason);
    return g_strconcat(verdict_words(verdict), *words ? " · " : "", words, NULL);
}

// What is conceded, or a finding noted, keeps its own verdict beside it.
static char *verdict_of(const Requirement *made)
{
    g_autofree char *own = pair_in_words(made, made->own_verdict, made->own_reason);
    gboolean beside = made->verdict == VERDICT_CONCEDED ||
                      (made->verdict == VERDICT_NOTED && made->own_verdict != VERDICT_NOTED &&
                       made->own_verdict != VERDICT_PASS && made->own_verdict != VERDICT_OPEN);
    if (finding_waits(made))
        return g_strconcat(own, ", open until answered", NULL);
    g_autofree char *verdict = pair_in_words(made, made->verdict, made->reason);
    return beside ? g_strconcat(verdict, " (", own, ")", NULL) : g_steal_pointer(&verdict);
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

static gboolean is_open(const Requirement *made)
{
    return made->verdict == VERDICT_OPEN && !finding_waits(made);
}

static gboolean has_changed(const Requirement *before, const Requirement *after)
{
    if (after->withdrawn)
        return FALSE;
    if (!before)
        return !is_open(after);
    if (before->verdict != after->verdict || before->reason != after->reason ||
        before->own_verdict != after->own_verdict || before->own_reason != after->own_reason ||
        (requirement_is_doubted(after) && before->doubts != after->doubts))
        return TRUE;
    return !is_open(after) && (before->entry != after->entry || !same_value(before, after));
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
           one->reason == other->reason && one->own_verdict == other->own_verdict &&
           one->own_reason == other->own_reason &&
           (!requirement_is_doubted(one) || one->doubts == other->doubts);
}

// ` (1, a; 1, c)`
static void append_labels(GString *text, const GPtrArray *group)
{
    for (guint i = 0; i < group->len; i++) {
        const Requirement *made = group->pdata[i];
        g_autofree char *labels = g_strjoinv(", ", made->labels);
        g_string_append_printf(text, "%s%s", i == 0 ? " (" : made->labels[1] ? "; " : ", ", labels);
    }
    g_string_append_c(text, ')');
}

// `main caps in Crank, stage 1: 6 pass`; a few bolts are named.
static void append_group(GString *text, const GPtrArray *group)
{
    const Requirement *first = group->pdata[0];
    g_autofree char *verdict = verdict_of(first);
    g_string_append(text, first->name);
    if (first->asked == ASKED_BOLT)
        g_string_append_printf(text, " in %s, stage %u", first->step->name, first->stage);
    g_string_append_printf(text, ": %u %s", group->len, verdict);
    if (group->len <= SHOWN_ONE_BY_ONE)
        append_labels(text, group);
}

// Bolts differ in nothing but their place; values do.
static gboolean is_counted(const GPtrArray *group)
{
    const Requirement *first = group->pdata[0];
    return group->len > SHOWN_ONE_BY_ONE || (group->len > 1 && first->asked == ASKED_BOLT);
}

static void append_run(GString *text, const GPtrArray *group)
{
    if (text->len)
        g_string_append(text, "; ");
    if (is_counted(group)) {
        append_group(text, group);
        return;
    }
    for (guint i = 0; i < group->len; i++) {
        g_autofree char *one = answer_requirement(group->pdata[i]);
        g_string_append_printf(text, "%s%s", i ? "; " : "", one);
    }
}

// Takes the first and all of its group out of what changed.
static GPtrArray *take_group(GPtrArray *changed)
{
    GPtrArray *group = g_ptr_array_new();
    g_ptr_array_add(group, g_ptr_array_remove_index(changed, 0));
    for (guint i = 0; i < changed->len;)
        if (is_same_group(group->pdata[0], changed->pdata[i]))
            g_ptr_array_add(group, g_ptr_array_remove_index(changed, i));
        else
            i++;
    return group;
}

static char *changes_in_words(GPtrArray *changed)
{
    GString *text = g_string_new(NULL);
    for (guint shown = 0; changed->len && shown < GROUPS_SHOWN; shown++) {
        g_autoptr(GPtrArray) group = take_group(changed);
        append_run(text, group);
    }
    if (changed->len)
        g_string_append_printf(text, "; and %u more", changed->len);
    return g_string_free(text, FALSE);
}

// What somebody has to do something about.
static gboolean needs_doing(const Requirement *made)
{
    return made->verdict == VERDICT_FAIL || made->verdict == VERDICT_IN_DOUBT ||
           finding_waits(made);
}

// What changed; those somebody has to do something about stand first.
typedef struct {
    GPtrArray *all; // Requirement *
    gint first;     // how many of those there are
} Changed;

static void add_changed(Changed *changed, const Requirement *before, Requirement *after)
{
    if (has_changed(before, after))
        g_ptr_array_insert(changed->all, needs_doing(after) ? changed->first++ : -1, after);
}

static char *changed_in_words(Changed *changed)
{
    char *words = changed->all->len ? changes_in_words(changed->all) : NULL;
    g_ptr_array_unref(changed->all);
    return words;
}

char *answer_changes(const Assessment *before, const Assessment *after)
{
    Finder finder = {before->requirements, NULL};
    gboolean aligned = before->requirements->len == after->requirements->len;
    Changed changed = {g_ptr_array_new(), 0};
    for (guint i = 0; i < after->requirements->len; i++) {
        Requirement *made = after->requirements->pdata[i];
        add_changed(&changed, find_before(&finder, made, i, aligned), made);
    }
    g_clear_pointer(&finder.by_name, g_hash_table_unref);
    return changed_in_words(&changed);
}

char *answer_judged(const GArray *judged, const Assessment *now)
{
    Changed changed = {g_ptr_array_new(), 0};
    for (guint i = 0; i < judged->len; i++) {
        const JudgementChange *one = &g_array_index(judged, JudgementChange, i);
        add_changed(&changed, one->before, now->requirements->pdata[one->index]);
    }
    return changed_in_words(&changed);
}
