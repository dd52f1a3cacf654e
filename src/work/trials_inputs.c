#include "trials_inside.h"

#include <standbook/record/order.h>
#include <standbook/work/words.h>
#include <string.h>

static const PlanInput *input_at(const Trials *trials, guint index)
{
    return &g_array_index(trials->reads, PlanInput, index);
}

static guint input_count(const Trials *trials)
{
    return trials->reads->len;
}

static GArray *reads_of(const Trials *trials)
{
    const GArray *all = trials->check->setting->inputs;
    GArray *reads = g_array_new(FALSE, FALSE, sizeof(PlanInput));
    for (guint i = 0; i < all->len; i++) {
        PlanInput input = g_array_index(all, PlanInput, i);
        input.of -= trials->first;
        if (input.of < trials->places) // below 0 it wraps
            g_array_append_val(reads, input);
    }
    return reads;
}

static const Requirement *find_input(const Trials *trials, const PlanInput *input)
{
    g_auto(GStrv) labels = places_labels(input->check->axes, input->place);
    for (guint i = 0; i < trials->assessment->requirements->len; i++) {
        const Requirement *each = trials->assessment->requirements->pdata[i];
        if (each->check == input->check && each->step == trials->step &&
            each->asked == ASKED_READ &&
            g_strv_equal((const char *const *)each->labels, (const char *const *)labels))
            return each;
    }
    return NULL;
}

void trials_find_inputs(Trials *trials)
{
    trials->reads = reads_of(trials);
    trials->inputs = g_new0(const Requirement *, input_count(trials) + 1);
    for (guint i = 0; i < input_count(trials); i++)
        trials->inputs[i] = find_input(trials, input_at(trials, i));
}

gboolean trials_reads(const Trials *trials, const char *check)
{
    for (guint i = 0; i < input_count(trials); i++)
        if (g_strcmp0(input_at(trials, i)->check->name, check) == 0)
            return TRUE;
    return FALSE;
}

static gboolean is_of_input(const Trials *trials, const Entry *entry, guint index)
{
    const Requirement *made = trials->inputs[index];
    return made && g_strcmp0(entry_text(entry, "check"), made->check->name) == 0 &&
           entry_is_at(entry, (const char *const *)made->labels);
}

gint trials_input(const Trials *trials, const Entry *entry)
{
    for (guint i = 0; i < input_count(trials); i++)
        if (is_of_input(trials, entry, i))
            return (gint)i;
    return -1;
}

void trials_put(const Trials *trials, const Entry *entry, const Entry **read)
{
    for (guint i = 0; i < input_count(trials); i++)
        if (is_of_input(trials, entry, i))
            read[i] = entry;
}

gboolean trials_needs(const Requirement *made)
{
    return made && !made->withdrawn && made->verdict != VERDICT_NOT_NEEDED;
}

gint trials_missing(const Trials *trials, const Entry *const *read, guint place)
{
    for (guint i = 0; i < input_count(trials); i++)
        if (input_at(trials, i)->of == place && !read[i] && trials_needs(trials->inputs[i]))
            return (gint)i;
    return -1;
}

const Entry *trials_whole(const Trials *trials, const Entry *const *read, guint place)
{
    const Entry *newest = NULL;
    if (trials_missing(trials, read, place) >= 0)
        return NULL;
    for (guint i = 0; i < input_count(trials); i++)
        if (input_at(trials, i)->of == place && read[i] && (!newest || read[i]->seq > newest->seq))
            newest = read[i];
    return newest;
}

// VALUES ----------------------------------------------------------------------------------------

// Whether a reading serves the place of a value; *counts: as one of those that made it.
static gboolean serves(const Trials *trials, const TrialValue *value, const Entry *entry,
                       gboolean *counts)
{
    gboolean found = FALSE;
    *counts = FALSE;
    for (guint i = 0; i < input_count(trials); i++) {
        if (input_at(trials, i)->of != value->place || !is_of_input(trials, entry, i))
            continue;
        found = TRUE;
        *counts = *counts || value->read[i] == entry;
    }
    return found;
}

gboolean trial_values_share(const Trials *trials, const TrialValue *one, const TrialValue *other)
{
    for (guint i = 0; i < input_count(trials); i++)
        if (input_at(trials, i)->of == one->place && one->read[i] == other->read[i])
            return one->read[i] != NULL;
    return FALSE;
}

static Entry *read_as(const Entry *entry, const char *state)
{
    Entry *copy = g_memdup2(entry, sizeof *entry);
    copy->body = json_copy(entry->body);
    entry_set_text(copy, "state", state);
    return copy;
}

static void free_read_as(gpointer data)
{
    Entry *copy = data;
    json_decref(copy->body);
    g_free(copy);
}

// The entries with the readings that made a value as the tightened ones of that place, and the
// trial's others there as loose. What is changed is in `copies`.
static const Entry **swapped(const Trials *trials, const Trial *trial, const TrialValue *value,
                             GPtrArray *copies)
{
    const Entry **entries = g_memdup2(trials->entries, trials->count * sizeof *entries);
    for (guint i = 0; i < trial->entries->len; i++) {
        const Entry *entry = trial->entries->pdata[i];
        gboolean counts = FALSE;
        if (strcmp(entry->kind->name, "read") != 0 || !serves(trials, value, entry, &counts))
            continue;
        Entry *copy = read_as(entry, counts ? "tightened" : "loose");
        g_ptr_array_add(copies, copy);
        entries[entry->seq - 1] = copy;
    }
    return entries;
}

Number *trials_value(const Trials *trials, const Trial *trial, const TrialValue *value)
{
    g_autoptr(GPtrArray) copies = g_ptr_array_new_with_free_func(free_read_as);
    g_autofree const Entry **entries = swapped(trials, trial, value, copies);
    g_autoptr(Assessment) then =
        trial->ended ? assess_before(trials->plan, entries, trials->count, trial->ended)
                     : assess(trials->plan, entries, trials->count, 0, NULL);
    g_autofree const Requirement **made = g_new0(const Requirement *, trials->places);
    trials_find_made(trials, then, made);
    const Requirement *there = made[value->place];
    return there && there->value ? number_copy(there->value) : NULL;
}
