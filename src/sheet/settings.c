// What was set by trials, on the sheets.
#include "sections.h"

#include <standbook/sheet/setting_sheet.h>
#include <string.h>

static Trials *trials_of(const SheetSource *source, const PlanCheck *check, guint place)
{
    return trials_new(source->plan, check->step, check, place, source->assessment, source->entries,
                      source->count);
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

// What was read for a formula in a try and gave way to what was read there later, loose or tight.
static void put_passed(Document *document, const Trials *trials, const Trial *trial)
{
    for (guint i = 0; i < trial->entries->len; i++) {
        const Entry *entry = trial->entries->pdata[i];
        gint input = trials_input(trials, entry);
        if (input < 0 || !trials->inputs[input] || trial->tight[input] == entry ||
            trial->loosely[input] == entry)
            continue;
        g_autofree char *name = requirement_title(trials->inputs[input]);
        g_autofree char *value = read_words(entry);
        gboolean loose = g_strcmp0(entry_text(entry, "state"), "loose") == 0;
        document_row(document,
                     (const char *const[]){"", name, loose ? value : "", loose ? "" : value});
    }
}

static void put_read(Document *document, const Trials *trials, const Trial *trial)
{
    const GArray *inputs = trials->reads;
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

// The readings that a setting is worked out from, as each try had them last; what they followed
// stands above them without a number.
static void section_read(Document *document, const Trials *trials)
{
    const DocumentColumn columns[] = {
        {"try", ALIGN_RIGHT}, {"read", ALIGN_LEFT}, {"loose", ALIGN_POINT}, {"tight", ALIGN_POINT}};
    document_table(document, columns, G_N_ELEMENTS(columns));
    for (guint i = 0; i < trials->all->len; i++) {
        put_passed(document, trials, trials->all->pdata[i]);
        put_read(document, trials, trials->all->pdata[i]);
    }
}

static void section_setting(Document *document, const SheetSource *source, Trials *trials,
                            gboolean *begun)
{
    if (!*begun)
        document_heading(document, 1, "Settings, try by try");
    *begun = TRUE;
    trials_judge(trials);
    g_autofree char *title = setting_title(trials);
    document_heading(document, 2, title);
    section_tries(document, trials, source->taken);
    if (trials->check->formula)
        section_read(document, trials);
}

void section_settings(Document *document, const SheetSource *source)
{
    gboolean begun = FALSE;
    for (guint i = 0; i < source->plan->steps->len; i++) {
        const PlanStep *step = source->plan->steps->pdata[i];
        for (guint j = 0; j < step->checks->len; j++) {
            const PlanCheck *check = step->checks->pdata[j];
            for (guint place = 0; place < setting_count(check); place++) {
                g_autoptr(Trials) trials = trials_of(source, check, place);
                if (trials->all->len)
                    section_setting(document, source, trials, &begun);
            }
        }
    }
}

// CUSTOMER --------------------------------------------------------------------------------------

// How the places of a setting stand, and how often those that are set were tightened and read.
typedef struct {
    guint asked, set;
    guint least, most; // tries of one that is set
    GString *fitted;   // `2.45 at 1; 2.50 at 2`: of a stock what stands in where it is set
} Tries;

// How many tries were read tightened.
static guint tries_read(const Trials *trials)
{
    guint count = 0;
    for (guint i = 0; i < trials->all->len; i++)
        count += ((const Trial *)trials->all->pdata[i])->readings > 0;
    return count;
}

// Whether nothing that is asked there is open, outside or in doubt.
static gboolean is_set(const Trials *trials)
{
    for (guint i = 0; i < trials->places; i++) {
        const Requirement *made = trials->made[i];
        gboolean stands =
            made && (made->verdict == VERDICT_PASS || made->verdict == VERDICT_NOTED ||
                     made->verdict == VERDICT_CONCEDED);
        if (!stands && trials_needs(made))
            return FALSE;
    }
    return TRUE;
}

// What was put in out of a stock, a shim say, is a size of the engine as it is now.
static void fitted_add(GString *fitted, const Trials *trials)
{
    const Trial *last = trials_last(trials);
    if (!trials->check->setting->stock || !last || !last->position)
        return;
    const Requirement *made = trials->made[0];
    gboolean one = trials->check->setting->each && made && *made->place;
    g_autofree char *size = trial_position_words(trials->check, last->position);
    g_string_append_printf(fitted, "%s%s%s%s", fitted->len ? "; " : "", size, one ? " at " : "",
                           one ? made->place : "");
}

static void tries_add(Tries *tries, const Trials *trials)
{
    guint count = tries_read(trials);
    gboolean asked = FALSE;
    for (guint i = 0; i < trials->places; i++)
        asked = asked || trials_needs(trials->made[i]);
    tries->asked += asked ? 1 : 0;
    if (!asked || !count || !is_set(trials))
        return;
    tries->set++;
    tries->least = MIN(tries->least, count);
    tries->most = MAX(tries->most, count);
    fitted_add(tries->fitted, trials);
}

// ` The shim, in mm: 2.45 at 1; 2.50 at 2.`
static char *fitted_words(const PlanSetting *setting, const GString *fitted)
{
    const char *unit = setting->unit_text;
    return fitted->len ? g_strdup_printf(" The %s%s%s: %s.", setting->move, unit ? ", in " : "",
                                         unit ? unit : "", fitted->str)
                       : g_strdup("");
}

char *tries_words(const SheetSource *source, const PlanCheck *check)
{
    g_autoptr(GString) fitted = g_string_new(NULL);
    Tries tries = {.least = G_MAXUINT, .fitted = fitted};
    for (guint place = 0; check && place < setting_count(check); place++) {
        g_autoptr(Trials) trials = trials_of(source, check, place);
        tries_add(&tries, trials);
    }
    if (tries.set == 0)
        return NULL;
    g_autofree char *set = tries.set < tries.asked
                               ? g_strdup_printf("%u of %u places set,", tries.set, tries.asked)
                               : g_strdup(check->setting->each ? "Each place set" : "Set");
    g_autofree char *put = fitted_words(check->setting, fitted);
    if (tries.least < tries.most)
        return g_strdup_printf("%s in %u to %u tries.%s", set, tries.least, tries.most, put);
    return tries.most == 1 ? g_strdup_printf("%s in one try.%s", set, put)
                           : g_strdup_printf("%s in %u tries.%s", set, tries.most, put);
}
