// assess --suppose TOOL=+0.01mm: which verdicts turn if a tool had read so much high (+) or low
// (-).
#include "suppose.h"

#include <standbook/base/text.h>
#include <standbook/sheet/figures.h>
#include <string.h>

// An error as it was typed: `+0.01mm`.
typedef struct {
    const char *tool; // its id
    gboolean low;     // it read low
    char *size;       // `0.01 mm`
    Unit *unit;       // NULL for a pure number
    Number *width;    // in base units, not negative
} ToolError;

static void tool_error_clear(ToolError *tool_error)
{
    g_free(tool_error->size);
    unit_free(tool_error->unit);
    number_free(tool_error->width);
}

static gboolean refuse(GError **error, const char *format, ...) G_GNUC_PRINTF(2, 3);

static gboolean refuse(GError **error, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    g_autofree char *words = g_strdup_vprintf(format, arguments);
    va_end(arguments);
    g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE, words);
    return FALSE;
}

static gboolean tool_read(const Opened *opened, const char *label, ToolError *read, GError **error)
{
    g_autoptr(GPtrArray) tools = taken_ids(opened->taken, "tool");
    g_autoptr(GPtrArray) labels = g_ptr_array_new();
    for (guint i = 0; i < tools->len; i++) {
        const char *id = g_ptr_array_index(tools, i);
        g_ptr_array_add(labels, (gpointer)taken_tool(opened->taken, id));
        if (strcmp(taken_tool(opened->taken, id), label) == 0)
            read->tool = id;
    }
    if (read->tool)
        return TRUE;
    const char *nearest = text_nearest(label, (const char *const *)labels->pdata, labels->len);
    return refuse(error, "this build used no tool `%s`%s%s%s", label,
                  nearest ? "; did you mean `"
                          : "; standbook sheet BUILD record names those it used",
                  nearest ? nearest : "", nearest ? "`?" : "");
}

static gboolean size_read(const char *words, ToolError *read, GError **error)
{
    const char *digits = words + (*words == '-' || *words == '+');
    NumberTyped typed;
    if (!number_scan(digits, &typed, NULL, error)) {
        g_prefix_error(error, "`%s`: ", words);
        return FALSE;
    }
    g_autofree char *rest = g_strstrip(g_strdup(digits + typed.length));
    g_autofree char *number = g_strndup(digits, typed.length);
    read->low = *words == '-';
    read->unit = *rest ? unit_parse(rest, error) : NULL;
    read->width = *rest && !read->unit ? NULL : unit_width_to_base(read->unit, typed.value);
    read->size = g_strconcat(number, *rest ? " " : "", *rest ? rest : "", NULL);
    number_typed_clear(&typed);
    if (!read->width)
        g_prefix_error(error, "`%s`: ", words);
    return read->width != NULL;
}

static Kind kind_of(const ToolError *read)
{
    return read->unit ? unit_kind(read->unit) : (Kind){0};
}

// The error must be of a kind that the tool read here: of a set that reads lengths and volumes
// either may be supposed.
static gboolean fits_readings(const Opened *opened, const char *label, const ToolError *read,
                              GError **error)
{
    const PlanCheck *other = NULL;
    for (gint64 i = 0; i < opened->upto; i++) {
        const Entry *entry = g_ptr_array_index(opened->entries, (guint)i);
        if (strcmp(entry->kind->name, "read") != 0 ||
            g_strcmp0(entry_text(entry, "tool"), read->tool) != 0)
            continue;
        const PlanCheck *check = plan_check(opened_plan(opened), entry_text(entry, "check"));
        if (!check)
            continue;
        if (kind_equal(kind_of(read), check->kind))
            return TRUE;
        other = other ? other : check;
    }
    if (!other)
        return refuse(error,
                      "nothing was read with %s in this build; a wrench found wrong is "
                      "entered as its calibration, and puts what it tightened in doubt",
                      label);
    return refuse(error, "%s read `%s` in %s; write its error in such a unit, like %s=+1%s", label,
                  other->name, other->unit ? unit_text(other->unit) : "numbers", label,
                  other->unit ? unit_text(other->unit) : "");
}

static gboolean error_read(const Opened *opened, const char *words, ToolError *read, GError **error)
{
    g_auto(GStrv) sides = g_strsplit(words, "=", 2);
    if (!sides[0] || !sides[1])
        return refuse(error, "`%s` says no error; write it like G03=+0.01mm", words);
    return tool_read(opened, sides[0], read, error) && size_read(sides[1], read, error) &&
           fits_readings(opened, sides[0], read, error);
}

// A finding is not noted by anybody and not open to be read: what turns is whether later work, as it
// then stands, answers it.
static char *verdict_then(const Requirement *made)
{
    if (made->finding && made->verdict == VERDICT_NOTED)
        return g_strdup("answered");
    if (made->finding && made->verdict == VERDICT_OPEN && made->value)
        return g_strdup("not answered");
    return figure_verdict(made);
}

static gboolean is_turned(const Requirement *before, const Requirement *after)
{
    return before->verdict != after->verdict || before->reason != after->reason;
}

// The verdicts that would turn, with the figures as read and as they would be. `as` heads the
// verdict as read.
static guint put_turned(Document *document, const char *as, const Assessment *now,
                        const Assessment *then)
{
    const DocumentColumn columns[] = {{"", ALIGN_LEFT},
                                      {"read", ALIGN_POINT},
                                      {as, ALIGN_WHOLE},
                                      {"true", ALIGN_POINT},
                                      {"would be", ALIGN_WHOLE}};
    guint turned = 0;
    for (guint i = 0; i < now->requirements->len; i++) {
        const Requirement *before = g_ptr_array_index(now->requirements, i);
        const Requirement *after = g_ptr_array_index(then->requirements, i);
        if (!is_turned(before, after))
            continue;
        if (turned++ == 0)
            document_table(document, columns, G_N_ELEMENTS(columns));
        g_autofree char *name = requirement_name(before);
        g_autofree char *was = figure_value(before), *is = figure_value(after);
        g_autofree char *verdict = verdict_then(before), *other = verdict_then(after);
        document_row(document, (const char *const[]){name, was, verdict, is, other});
    }
    return turned;
}

// How many verdicts differ in two assessments of one build.
static guint count_turned(const Assessment *one, const Assessment *other)
{
    guint turned = 0;
    for (guint i = 0; i < one->requirements->len; i++)
        turned += (guint)is_turned(g_ptr_array_index(one->requirements, i),
                                   g_ptr_array_index(other->requirements, i));
    return turned;
}

// That what stands in doubt for the tool is judged by its value here, where any does.
static gboolean put_laid_aside(Document *document, const char *label, guint doubted)
{
    g_autofree char *said = g_strdup_printf(
        "%u verdict%s in doubt for %s now; here that doubt is laid aside, and what was read is "
        "judged by its value.",
        doubted, doubted > 1 ? "s stand" : " stands", label);
    if (doubted)
        document_line(document, said);
    return doubted > 0;
}

// `by_value`: as it stands now, but with the doubt of the tool laid aside, as it is in `then`.
static void say_turned(const Opened *opened, const ToolError *read, const Assessment *by_value,
                       const Assessment *then, guint doubted, gboolean json)
{
    const char *label = taken_tool(opened->taken, read->tool);
    g_autofree char *title =
        g_strdup_printf("If %s read %s %s", label, read->size, read->low ? "low" : "high");
    g_autofree char *meaning =
        g_strdup_printf("Each true value would then be %s %s than %s showed.", read->size,
                        read->low ? "greater" : "smaller", label);
    g_autoptr(Document) document = document_new("suppose", title);
    document_line(document, meaning);
    gboolean aside = put_laid_aside(document, label, doubted);
    guint turned = put_turned(document, aside ? "as read" : "now", by_value, then);
    g_autofree char *count =
        turned == 0 ? g_strdup("No verdict would turn.")
                    : g_strdup_printf("%u verdict%s would turn.", turned, turned > 1 ? "s" : "");
    document_paragraph(document, count);
    say_document(document, json);
}

int suppose(const Opened *opened, const Assessment *now, const char *words, gboolean json)
{
    ToolError read = {0};
    GError *error = NULL;
    if (!error_read(opened, words, &read, &error)) {
        tool_error_clear(&read);
        return fail_with(error);
    }
    // A tool that read high showed too much: what is added to its readings is the other way round.
    g_autoptr(Number) added = read.low ? number_copy(read.width) : number_negate(read.width);
    g_autoptr(Number) nothing = number_from_integer(0);
    const Hypothesis as_read = {.tool = read.tool, .offset = nothing, .kind = kind_of(&read)};
    const Hypothesis hypothesis = {.tool = read.tool, .offset = added, .kind = kind_of(&read)};
    g_autoptr(Assessment) by_value = opened_assess(opened, &as_read);
    g_autoptr(Assessment) then = opened_assess(opened, &hypothesis);
    say_turned(opened, &read, by_value, then, count_turned(now, by_value), json);
    tool_error_clear(&read);
    return 0;
}
