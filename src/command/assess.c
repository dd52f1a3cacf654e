#include "answer.h"
#include "subcommands.h"
#include "suppose.h"

#include <standbook/sheet/assessment_json.h>
#include <string.h>

typedef struct {
    char *gate, *as_of, *suppose;
    gboolean all;
} Asking;

// The status is that of the gate asked for; without one the answer itself is enough.
static int say_assessment(const Opened *opened, const Assessment *assessment, const Asking *asking,
                          gboolean json)
{
    gint gate = asking->gate ? plan_gate(opened_plan(opened), asking->gate) : -1;
    if (asking->gate && gate < 0)
        return no_gate(opened, asking->gate);
    const SheetSource source = opened_source(opened, assessment);
    if (json) {
        json_t *whole = assessment_json(opened_plan(opened), assessment);
        json_object_set_new(whole, "claims", claims_json(&source));
        say_json(whole);
        json_decref(whole);
    } else {
        g_autoptr(Document) document = gate >= 0 ? sheet_completion(&source, (guint)gate)
                                                 : sheet_assessment(&source, asking->all);
        say_document(document, FALSE);
    }
    const GateCount *count = gate >= 0 ? g_ptr_array_index(assessment->gates, (guint)gate) : NULL;
    return count && count->left ? STANDBOOK_ERROR_NO : 0;
}

static int assess_build(const char *number, const Asking *asking, Common *common)
{
    GError *error = NULL;
    if ((asking->gate != NULL) + (asking->suppose != NULL) + asking->all > 1)
        return fail_saying(2,
                           "--gate, --suppose and --all ask different things; ask one at a time");
    g_autoptr(Book) book = store_open(common, BOOK_READ, &error);
    g_autoptr(Opened) opened = book ? opened_new(book, number, &error) : NULL;
    if (!opened || !opened_as_of(opened, asking->as_of, &error))
        return fail_with(error);
    g_autoptr(Assessment) assessment = opened_assess(opened, NULL);
    return asking->suppose ? suppose(opened, assessment, asking->suppose, common->json)
                           : say_assessment(opened, assessment, asking, common->json);
}

int assess_run(int argc, char **argv, Common *common)
{
    Asking asking = {0};
    const GOptionEntry entries[] = {
        {"gate", 0, 0, G_OPTION_ARG_FILENAME, &asking.gate,
         "whether it is complete for this gate (exit status 1 if not)", "GATE"},
        {"as-of", 0, 0, G_OPTION_ARG_FILENAME, &asking.as_of,
         "as it was known on that day, or after that entry", "DAY|#N"},
        {"suppose", 0, 0, G_OPTION_ARG_FILENAME, &asking.suppose,
         "which verdicts turn if this tool read 0.01 mm high (-: low)", "TOOL=+0.01mm"},
        {"all", 0, 0, G_OPTION_ARG_NONE, &asking.all,
         "every requirement by itself, not only what is left", NULL},
        {NULL, 0, 0, G_OPTION_ARG_NONE, NULL, NULL, NULL}};
    int status;
    g_auto(GStrv) words =
        arguments_read(argc, argv, common, "BUILD",
                       "Judges a build: what is left, conceded or upheld. BUILD is its number, as "
                       "standbook build\nlist shows it. --json tells every requirement.",
                       entries, &status);
    if (words)
        status = arguments_fit(words, 1, 1, "assess BUILD")
                     ? assess_build(words[0], &asking, common)
                     : STANDBOOK_ERROR_MISUSE;
    g_free(asking.gate);
    g_free(asking.as_of);
    g_free(asking.suppose);
    return status;
}
