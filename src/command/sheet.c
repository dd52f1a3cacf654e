#include "answer.h"
#include "subcommands.h"

#include <string.h>

// The gate a completion report speaks of: the one named, else the first that is not complete.
static gint gate_of(const Opened *opened, const Assessment *assessment, const char *name)
{
    if (name)
        return plan_gate(opened_plan(opened), name);
    for (guint i = 0; i < assessment->gates->len; i++)
        if (((const GateCount *)g_ptr_array_index(assessment->gates, i))->left)
            return (gint)i;
    return (gint)assessment->gates->len - 1;
}

static int say_sheet(const Opened *opened, const Assessment *assessment, const char *kind,
                     const char *gate_name, gboolean json)
{
    const SheetSource source = opened_source(opened, assessment);
    gint gate = gate_of(opened, assessment, gate_name);
    if (gate < 0) {
        g_autofree char *gates = gates_words(opened_plan(opened));
        return fail_saying(2, "the plan has no gate `%s`; it has %s", gate_name, gates);
    }
    g_autoptr(Document) document = strcmp(kind, "customer") == 0 ? sheet_customer(&source)
                                   : strcmp(kind, "record") == 0 ? sheet_record(&source)
                                   : strcmp(kind, "completion") == 0
                                       ? sheet_completion(&source, (guint)gate)
                                       : NULL;
    if (!document)
        return fail_saying(2, "there is no sheet `%s`; write customer, record or completion", kind);
    say_document(document, json);
    const GateCount *count = g_ptr_array_index(assessment->gates, (guint)gate);
    return strcmp(kind, "completion") == 0 && count->left ? STANDBOOK_ERROR_NO : 0;
}

static int sheet_build(GStrv words, const char *gate, const char *as_of, Common *common)
{
    GError *error = NULL;
    g_autoptr(Book) book = store_open(common, BOOK_READ, &error);
    g_autoptr(Opened) opened = book ? opened_new(book, words[0], &error) : NULL;
    if (!opened || !opened_as_of(opened, as_of, &error))
        return fail_with(error);
    g_autoptr(Assessment) assessment = opened_assess(opened, NULL);
    if (!opened_compare_seal(book, opened, assessment, &error))
        return fail_with(error);
    return say_sheet(opened, assessment, words[1] ? words[1] : "customer", gate, common->json);
}

int sheet_run(int argc, char **argv, Common *common)
{
    char *gate = NULL, *as_of = NULL;
    const GOptionEntry entries[] = {
        {"gate", 0, 0, G_OPTION_ARG_FILENAME, &gate, "of a completion report", "GATE"},
        {"as-of", 0, 0, G_OPTION_ARG_FILENAME, &as_of,
         "as it was known on that day, or after that entry", "DAY|#N"},
        {NULL, 0, 0, G_OPTION_ARG_NONE, NULL, NULL, NULL}};
    int status;
    g_auto(GStrv) words = arguments_read(
        argc, argv, common, "BUILD [customer|record|completion]",
        "Prints a build's sheet: for the customer, the workshop's whole record, or the gaps that "
        "keep\na gate from being complete (exit status 1 if there are any).\n\n"
        "The maker's current service data, local codes and licensed practice come first.",
        entries, &status);
    if (words)
        status = arguments_fit(words, 1, 2, "sheet BUILD [customer|record|completion]")
                     ? sheet_build(words, gate, as_of, common)
                     : STANDBOOK_ERROR_MISUSE;
    g_free(gate);
    g_free(as_of);
    return status;
}
