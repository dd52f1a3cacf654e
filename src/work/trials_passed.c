// What a trial was before it was moved on, or read loose again.
#include "trials_inside.h"

static void passed_clear(gpointer data)
{
    TrialPassed *passed = data;
    number_free(passed->position);
}

GArray *trial_passed_new(void)
{
    GArray *all = g_array_new(FALSE, FALSE, sizeof(TrialPassed));
    g_array_set_clear_func(all, passed_clear);
    return all;
}

static const TrialValue *value_at(const Trial *trial, gint index)
{
    return index < 0 ? NULL : &g_array_index(trial->values, TrialValue, index);
}

// Which of its values is the loose one; -1 if it was not read loose where it stands.
static gint loose_at(const Trial *trial)
{
    gint index = trial->loose ? (gint)trial->values->len - 1 : -1;
    while (index >= 0 && value_at(trial, index)->entry != trial->loose)
        index--;
    return index;
}

void trial_pass(Trial *trial)
{
    Number *position = trial->position ? number_copy(trial->position) : NULL;
    TrialPassed passed = {position, loose_at(trial)};
    g_array_append_val(trial->passed, passed);
}

const TrialValue *trial_passed_value(const Trial *trial, const TrialPassed *passed)
{
    return value_at(trial, passed->value);
}
