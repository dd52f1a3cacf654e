// What was set by trials, on the sheets.
#include "sections.h"

#include <standbook/sheet/setting_sheet.h>
#include <string.h>

static Trials *trials_of(const SheetSource *source, const PlanCheck *check)
{
    return trials_new(source->plan, check->step, check, source->assessment, source->entries,
                      source->count);
}

static gboolean is_set(const PlanCheck *check)
{
    return check->setting && check->setting->inputs->len;
}

// RECORD ----------------------------------------------------------------------------------------

static char *read_words(const Entry *entry)
{
    return entry ? value_words(json_object_get(entry->body, "value")) : g_strdup("");
}

// Whether an input before it is the same reading, which then serves several places.
static gboolean stands_before(const Trials *trials, guint index)
{
    for (guint i = 0; i < index; i++)
        if (trials->inputs[i] == trials->inputs[index])
            return TRUE;
    return FALSE;
}

static void put_read(Document *document, const Trials *trials, const Trial *trial)
{
    const GArray *inputs = trials->check->setting->inputs;
    for (guint i = 0; i < inputs->len; i++) {
        const Requirement *made = trials->inputs[i];
        if (!made || stands_before(trials, i) || (!trial->loosely[i] && !trial->tight[i]))
            continue;
        g_autofree char *number = g_strdup_printf("%u", trial->number);
        g_autofree char *name = requirement_title(made);
        g_autofree char *loose = read_words(trial->loosely[i]);
        g_autofree char *tight = read_words(trial->tight[i]);
        document_row(document, (const char *const[]){number, name, loose, tight});
    }
}

// The readings that a setting is worked out from, as each try had them last.
static void section_read(Document *document, const Trials *trials)
{
    const DocumentColumn columns[] = {
        {"try", ALIGN_RIGHT}, {"read", ALIGN_LEFT}, {"loose", ALIGN_POINT}, {"tight", ALIGN_POINT}};
    document_table(document, columns, G_N_ELEMENTS(columns));
    for (guint i = 0; i < trials->all->len; i++)
        put_read(document, trials, trials->all->pdata[i]);
}

void section_settings(Document *document, const SheetSource *source)
{
    gboolean begun = FALSE;
    for (guint i = 0; i < source->plan->steps->len; i++) {
        const PlanStep *step = source->plan->steps->pdata[i];
        for (guint j = 0; j < step->checks->len; j++) {
            const PlanCheck *check = step->checks->pdata[j];
            g_autoptr(Trials) trials = is_set(check) ? trials_of(source, check) : NULL;
            if (!trials || !trials->all->len)
                continue;
            if (!begun)
                document_heading(document, 1, "Settings, try by try");
            begun = TRUE;
            trials_judge(trials);
            g_autofree char *title = setting_title(trials);
            document_heading(document, 2, title);
            section_tries(document, trials, source->taken);
            if (check->formula)
                section_read(document, trials);
        }
    }
}

// CUSTOMER --------------------------------------------------------------------------------------

char *tries_words(const SheetSource *source, const PlanCheck *check)
{
    guint count = 0;
    g_autoptr(Trials) trials = check && is_set(check) ? trials_of(source, check) : NULL;
    for (guint i = 0; trials && i < trials->all->len; i++)
        count += ((const Trial *)trials->all->pdata[i])->readings > 0;
    return count == 0   ? NULL
           : count == 1 ? g_strdup("Set in one try.")
                        : g_strdup_printf("Set in %u tries.", count);
}
