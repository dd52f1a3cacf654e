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

static const char *const sheets[] = {"customer", "record", "completion"};

static int no_sheet(const char *kind)
{
    g_autofree char *hint =
        hint_nearest(kind, sheets, G_N_ELEMENTS(sheets), "; write customer, record or completion");
    return fail_saying(2, "there is no sheet `%s`%s", kind, hint);
}

static gboolean is_sheet(const char *kind)
{
    for (gsize i = 0; i < G_N_ELEMENTS(sheets); i++)
        if (strcmp(sheets[i], kind) == 0)
            return TRUE;
    return FALSE;
}

static int say_completion(const SheetSource *source, guint gate, gboolean json)
{
    g_autoptr(Document) document = sheet_completion(source, gate);
    const GateCount *count = g_ptr_array_index(source->assessment->gates, gate);
    say_document(document, json);
    return count->left ? STANDBOOK_ERROR_NO : 0;
}

static int say_sheet(const Opened *opened, const Assessment *assessment, const char *kind,
                     const char *gate_name, gboolean json)
{
    const SheetSource source = opened_source(opened, assessment);
    gint gate = gate_of(opened, assessment, gate_name);
    if (gate < 0)
        return no_gate(opened, gate_name);
    if (strcmp(kind, "completion") == 0)
        return say_completion(&source, (guint)gate, json);
    g_autoptr(Document) document =
        strcmp(kind, "record") == 0 ? sheet_record(&source) : sheet_customer(&source);
    say_document(document, json);
    return 0;
}

static int sheet_build(GStrv words, const char *gate, const char *as_of, Common *common)
{
    GError *error = NULL;
    const char *kind = words[1] ? words[1] : "customer";
    if (!is_sheet(kind))
        return no_sheet(kind);
    if (gate && strcmp(kind, "completion") != 0)
        return fail_saying(2,
                           "--gate is for the completion report: sheet %s completion --gate \"%s\"",
                           words[0], gate);
    g_autoptr(Book) book = store_open(common, BOOK_READ, &error);
    g_autoptr(Opened) opened = book ? opened_new(book, words[0], &error) : NULL;
    if (!opened || !opened_as_of(opened, as_of, &error))
        return fail_with(error);
    g_autoptr(Assessment) assessment = opened_assess(opened, NULL);
    if (!opened_compare_seal(book, opened, assessment, &error))
        return fail_with(error);
    return say_sheet(opened, assessment, kind, gate, common->json);
}

int sheet_run(int argc, char **argv, Common *common)
{
    char *gate = NULL, *as_of = NULL;
    const GOptionEntry entries[] = {{"gate", 0, 0, G_OPTION_ARG_FILENAME, &gate,
                                     "the gate of a completion report; else the first not complete",
                                     "GATE"},
                                    {"as-of", 0, 0, G_OPTION_ARG_FILENAME, &as_of,
                                     "as it was known on that day, or after that entry", "DAY|#N"},
                                    {NULL, 0, 0, G_OPTION_ARG_NONE, NULL, NULL, NULL}};
    int status;
    g_auto(GStrv) words = arguments_read(
        argc, argv, common, "BUILD [customer|record|completion]",
        "Prints a build's sheet: for the customer (the one meant if none is named), the "
        "workshop's\n"
        "whole record, or the gaps that keep a gate from being complete (exit status 1 if there\n"
        "are any). The customer's comes in pages of 80 columns and 60 lines.\n\n"
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
