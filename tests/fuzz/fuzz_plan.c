// Plan files: each is a plan or has faults; a plan written back is the same plan.
#include "fuzz.h"

#include <standbook/plan/plan.h>
#include <standbook/plan/write.h>

static Plan *read_plan(const char *bytes, gsize length)
{
    g_autoptr(Faults) faults = faults_new();
    Plan *plan = plan_read(bytes, length, faults);
    must(!plan == (faults_count(faults) > 0), "a plan has no faults, and no plan has some");
    for (guint i = 0; i < faults_count(faults); i++) {
        g_autofree char *text = fault_text(faults_at(faults, i), "plan.yaml");
        must(g_utf8_validate(text, -1, NULL), "a fault is whole characters");
        must(faults_at(faults, i)->line > 0 && faults_at(faults, i)->column > 0,
             "a fault has a line and a column");
    }
    return plan;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    g_autoptr(Plan) plan = read_plan((const char *)data, size);
    if (!plan)
        return 0;
    g_autofree char *written = plan_write(plan);
    g_autoptr(Plan) again = read_plan(written, strlen(written));
    if (!again)
        fprintf(stderr, "written:\n%s\n", written);
    must(again != NULL, "a plan written back can be read");
    g_autofree char *twice = plan_write(again);
    if (strcmp(written, twice) != 0)
        fprintf(stderr, "first:\n%s\nsecond:\n%s\n", written, twice);
    must(strcmp(written, twice) == 0, "a plan written back twice is the same");
    return 0;
}
