#include <standbook/work/as_done.h>

#include <standbook/base/error.h>
#include <standbook/plan/restate.h>
#include <standbook/plan/write.h>
#include <standbook/record/live.h>
#include <string.h>

static void amendment_clear(gpointer data)
{
    PlanAmendment *amendment = data;
    g_free((gpointer)amendment->place);
}

// The live amendments (PlanAmendment), whose texts belong to their entries.
static GArray *amendments_of(const Opened *opened, guint *left_out)
{
    const Entry *const *entries = (const Entry *const *)opened->entries->pdata;
    gsize count = (gsize)opened->upto;
    g_autofree gboolean *live = g_new0(gboolean, count + 1);
    GArray *amendments = g_array_new(FALSE, FALSE, sizeof(PlanAmendment));
    g_array_set_clear_func(amendments, amendment_clear);
    live_entries(entries, count, live);
    *left_out = 0;
    for (gsize i = 0; i < count; i++) {
        if (!live[i] || strcmp(entries[i]->kind->name, "amend") != 0)
            continue;
        const PlanAmendment amendment = {
            entry_text(entries[i], "check"),
            entry_labels(entries[i], entry_list_length(entries[i], "place")),
            entry_text(entries[i], "limits"), entry_text(entries[i], "wear"),
            entry_text(entries[i], "source")};
        *left_out += amendment.place && amendment.wear ? 1 : 0;
        g_array_append_val(amendments, amendment);
    }
    return amendments;
}

// What a card is called as a plan; NULL for a plan that asks for something itself.
static char *name_of_card(const Opened *opened)
{
    gboolean card = !g_hash_table_size(opened->kept->checks) &&
                    !g_hash_table_size(opened->kept->groups) && opened->kept->steps->len == 1;
    return card ? g_strdup_printf("Work of %s", opened->number) : NULL;
}

char *plan_as_done(const Opened *opened, guint *left_out, GError **error)
{
    g_autoptr(GArray) amendments = amendments_of(opened, left_out);
    if (!opened->grown && !amendments->len)
        return plan_write(opened->kept);
    g_autofree char *name = name_of_card(opened);
    g_autofree char *revision = g_strdup_printf("as done in %s", opened->number);
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(Plan) plan =
        plan_restate(opened_plan(opened), name, revision,
                     (const PlanAmendment *)(gpointer)amendments->data, amendments->len, faults);
    if (plan)
        return plan_write(plan);
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO, "the work of `%s` is no plan: %s",
                opened->number, faults_at(faults, 0)->message);
    return NULL;
}
