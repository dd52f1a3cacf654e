#include <standbook/base/error.h>
#include <standbook/plan/extend.h>
#include <standbook/record/live.h>
#include <standbook/work/grown.h>
#include <string.h>

Plan *plan_kept(Book *book, const char *digest, GError **error)
{
    g_autoptr(GBytes) bytes = book_kept(book, digest, error);
    if (!bytes)
        return NULL;
    gsize length = 0;
    const char *start = g_bytes_get_data(bytes, &length);
    g_autoptr(Faults) faults = faults_new();
    Plan *plan = plan_read_kept(start, length, faults);
    if (!plan)
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE,
                    "the plan kept for this build has faults: %s", faults_at(faults, 0)->message);
    return plan;
}

// The live additions (PlanAddition), whose texts belong to their entries.
static GArray *additions_of(const Entry *const *entries, gsize count)
{
    g_autofree gboolean *live = g_new0(gboolean, count + 1);
    live_entries(entries, count, live);
    GArray *additions = g_array_new(FALSE, FALSE, sizeof(PlanAddition));
    for (gsize i = 0; i < count; i++) {
        const Entry *entry = entries[i];
        if (!live[i] || strcmp(entry->kind->name, "add") != 0)
            continue;
        const PlanAddition addition = {entry_text(entry, "what"), entry_text(entry, "name"),
                                       entry_text(entry, "step"), entry_text(entry, "definition")};
        g_array_append_val(additions, addition);
    }
    return additions;
}

Plan *plan_grown(const Plan *plan, const Entry *const *entries, gsize count)
{
    g_autoptr(GArray) additions = additions_of(entries, count);
    g_autofree gboolean *taken = g_new0(gboolean, additions->len + 1);
    return plan_extend_as_far(plan, (const PlanAddition *)(gpointer)additions->data, additions->len,
                              taken);
}
