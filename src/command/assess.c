#include "answer.h"
#include "subcommands.h"

#include <standbook/base/text.h>
#include <standbook/sheet/assessment_json.h>
#include <string.h>

typedef struct {
    char *gate, *as_of, *suppose;
    gboolean all;
} Asking;

// `+0.01mm` as a width in base units. NULL with an error (MISUSE).
static Number *width_read(const char *words, GError **error)
{
    gboolean negative = *words == '-';
    const char *digits = words + (negative || *words == '+');
    NumberTyped typed;
    if (!number_scan(digits, &typed, NULL, error))
        return NULL;
    g_autofree char *rest = g_strstrip(g_strdup(digits + typed.length));
    g_autoptr(Unit) unit = *rest ? unit_parse(rest, error) : NULL;
    g_autoptr(Number) number = negative ? number_negate(typed.value) : number_copy(typed.value);
    number_typed_clear(&typed);
    return *rest && !unit ? NULL : unit_width_to_base(unit, number);
}

// `W2=+0.01mm`: the tool by its label, and its error. FALSE with an error (MISUSE).
static gboolean suppose_read(const Opened *opened, const char *words, Hypothesis *hypothesis,
                             GError **error)
{
    g_auto(GStrv) sides = g_strsplit(words, "=", 2);
    g_autoptr(GPtrArray) tools = taken_ids(opened->taken, "tool");
    for (guint i = 0; sides[0] && i < tools->len; i++) {
        const char *id = g_ptr_array_index(tools, i);
        if (strcmp(taken_tool(opened->taken, id), sides[0]) == 0)
            hypothesis->tool = id;
    }
    if (!hypothesis->tool || !sides[1]) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    hypothesis->tool ? "`%s` says no error; write it like G03=+0.01mm"
                                     : "this build used no tool as in `%s`; write it like "
                                       "G03=+0.01mm",
                    words);
        return FALSE;
    }
    hypothesis->offset = width_read(sides[1], error);
    if (!hypothesis->offset)
        g_prefix_error(error, "`%s`: ", words);
    return hypothesis->offset != NULL;
}

// The verdicts that would turn, in a table; says so if none would.
static void say_turned(const Assessment *now, const Assessment *then, const char *words,
                       gboolean json)
{
    g_autofree char *title = g_strconcat("If ", words, NULL);
    g_autoptr(Document) document = document_new("suppose", title);
    const DocumentColumn columns[] = {
        {"", ALIGN_LEFT}, {"now", ALIGN_WHOLE}, {"", ALIGN_WHOLE}, {"then", ALIGN_WHOLE}};
    guint turned = 0;
    for (guint i = 0; i < now->requirements->len; i++) {
        const Requirement *before = g_ptr_array_index(now->requirements, i);
        const Requirement *after = g_ptr_array_index(then->requirements, i);
        if (before->verdict == after->verdict && before->reason == after->reason)
            continue;
        if (turned++ == 0)
            document_table(document, columns, G_N_ELEMENTS(columns));
        g_autofree char *name = requirement_name(before);
        document_row(document, (const char *const[]){name, verdict_words(before->verdict),
                                                     "would be", verdict_words(after->verdict)});
    }
    g_autofree char *count = turned ? g_strdup_printf("%u verdicts would turn.", turned)
                                    : g_strdup("No verdict would turn.");
    document_paragraph(document, count);
    say_document(document, json);
}

static int suppose(const Opened *opened, const Assessment *assessment, const Asking *asking,
                   gboolean json)
{
    Hypothesis hypothesis = {0};
    GError *error = NULL;
    if (!suppose_read(opened, asking->suppose, &hypothesis, &error))
        return fail_with(error);
    g_autoptr(Assessment) then = opened_assess(opened, &hypothesis);
    say_turned(assessment, then, asking->suppose, json);
    number_free((Number *)hypothesis.offset);
    return 0;
}

// The status is that of the gate asked for; without one the answer itself is enough.
static int say_assessment(const Opened *opened, const Assessment *assessment, const Asking *asking,
                          gboolean json)
{
    gint gate = asking->gate ? plan_gate(opened_plan(opened), asking->gate) : -1;
    if (asking->gate && gate < 0) {
        g_autofree char *gates = gates_words(opened_plan(opened));
        return fail_saying(2, "the plan has no gate `%s`; it has %s", asking->gate, gates);
    }
    const SheetSource source = opened_source(opened, assessment);
    if (json) {
        json_t *whole = assessment_json(opened_plan(opened), assessment);
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
    g_autoptr(Book) book = store_open(common, BOOK_READ, &error);
    g_autoptr(Opened) opened = book ? opened_new(book, number, &error) : NULL;
    if (!opened || !opened_as_of(opened, asking->as_of, &error))
        return fail_with(error);
    g_autoptr(Assessment) assessment = opened_assess(opened, NULL);
    return asking->suppose ? suppose(opened, assessment, asking, common->json)
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
         "which verdicts turn if this tool was out by so much", "TOOL=+0.01mm"},
        {"all", 0, 0, G_OPTION_ARG_NONE, &asking.all, "every requirement, not only what is left",
         NULL},
        {NULL, 0, 0, G_OPTION_ARG_NONE, NULL, NULL, NULL}};
    int status;
    g_auto(GStrv) words =
        arguments_read(argc, argv, common, "BUILD",
                       "Judges a build: what is left, conceded or upheld.", entries, &status);
    if (words)
        status = arguments_fit(words, 1, 1, "assess BUILD")
                     ? assess_build(words[0], &asking, common)
                     : STANDBOOK_ERROR_MISUSE;
    g_free(asking.gate);
    g_free(asking.as_of);
    g_free(asking.suppose);
    return status;
}
