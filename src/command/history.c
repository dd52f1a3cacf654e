#include "answer.h"
#include "subcommands.h"

#include <standbook/base/text.h>
#include <standbook/sheet/figures.h>
#include <standbook/work/claim.h>
#include <standbook/work/over.h>
#include <standbook/work/parts_at.h>
#include <string.h>

typedef struct {
    const char *check, *place, *engine;
    GPtrArray *known; // char *: names of checks that there are
    Document *document;
    GPtrArray *opened, *assessments; // of all builds that were looked at
    GArray *rows;                    // Over: those of the check itself
    guint count;
} Query;

// Whether the requirement stands at that label, of that axis unless `axis` is empty.
static gboolean has_label(const Requirement *requirement, const char *axis, const char *label)
{
    const GPtrArray *axes = requirement->check->places;
    for (guint i = 0; requirement->labels[i]; i++) {
        const char *name = i < axes->len ? axis_name(g_ptr_array_index(axes, i)) : "";
        if (strcmp(requirement->labels[i], label) == 0 && (!*axis || strcmp(name, axis) == 0))
            return TRUE;
    }
    return FALSE;
}

// Whether a place is meant: each pick, `3` or `main 3`, must be one of its labels.
static gboolean is_meant(const Requirement *requirement, const char *place)
{
    g_auto(GStrv) picks = g_strsplit(place ? place : "", ",", -1);
    for (guint i = 0; picks[i]; i++) {
        g_strstrip(picks[i]);
        char *blank = strrchr(picks[i], ' ');
        const char *label = blank ? blank + 1 : picks[i];
        if (blank)
            *blank = '\0';
        if (*label && !has_label(requirement, blank ? g_strchomp(picks[i]) : "", label))
            return FALSE;
    }
    return TRUE;
}

static gboolean is_asked(const Requirement *requirement, const Query *asked)
{
    const PlanCheck *check = requirement->check;
    return check && (requirement->value || requirement->answer) &&
           (strcmp(check->name, asked->check) == 0 || strcmp(check->feature, asked->check) == 0) &&
           is_meant(requirement, asked->place);
}

// `Fitted there: main shells lot MB-2417-C grade A.`: of the parts that it has to do with; empty
// where no lot is known.
static char *fitted_words(const Opened *opened, const SheetSource *source,
                          const Requirement *requirement)
{
    const Agenda agenda = {source->plan, source->assessment, source->entries, source->count};
    g_autoptr(GPtrArray) parts = parts_at(&agenda, requirement);
    g_autoptr(GPtrArray) words = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; i < parts->len; i++) {
        const Requirement *part = parts->pdata[i];
        const char *id = entry_text(source_entry(source, part->entry), "lot");
        const char *lot = taken_text(opened->taken, "lot", id, "label");
        const char *grade = taken_text(opened->taken, "lot", id, "grade");
        g_autofree char *text = g_strconcat(part->name, " lot ", lot, grade ? " grade " : "",
                                            grade ? grade : "", NULL);
        if (lot && !g_ptr_array_find_with_equal_func(words, text, g_str_equal, NULL))
            g_ptr_array_add(words, g_steal_pointer(&text));
    }
    g_ptr_array_add(words, NULL);
    g_autofree char *all = g_strjoinv(", ", (GStrv)words->pdata);
    return *all ? g_strconcat("Fitted there: ", all, ".", NULL) : g_strdup("");
}

static void gauge_add(GPtrArray *gauges, const SheetSource *source, const Requirement *requirement)
{
    const Entry *entry = source_entry(source, requirement->entry);
    const char *tool =
        entry && strcmp(entry->kind->name, "read") == 0 ? entry_text(entry, "tool") : NULL;
    const char *sort = taken_text(source->taken, "tool", tool, "sort");
    g_autofree char *text =
        tool ? g_strconcat(sort ? sort : "", sort ? " " : "", taken_tool(source->taken, tool), NULL)
             : NULL;
    if (text && !g_ptr_array_find_with_equal_func(gauges, text, g_str_equal, NULL))
        g_ptr_array_add(gauges, g_steal_pointer(&text));
}

// `Read with bore gauge G03, micrometer G01.`: the gauges of a reading, or of what a figure is
// worked out from; empty where none is known.
static char *gauges_words(const SheetSource *source, const Requirement *requirement)
{
    g_autoptr(GPtrArray) gauges = g_ptr_array_new_with_free_func(g_free);
    const Formula *formula = requirement->check->formula;
    const GPtrArray *all = source->assessment->requirements;
    if (!formula)
        gauge_add(gauges, source, requirement);
    for (guint i = 0; formula && i < all->len; i++) {
        const Requirement *input = g_ptr_array_index(all, i);
        if (input->check && input->value && formula_uses(formula, input->name) &&
            places_meet(requirement->check->places, (const char *const *)requirement->labels,
                        input->check->places, (const char *const *)input->labels))
            gauge_add(gauges, source, input);
    }
    if (gauges->len == 0)
        return g_strdup("");
    g_ptr_array_add(gauges, NULL);
    g_autofree char *words = g_strjoinv(", ", (GStrv)gauges->pdata);
    return g_strconcat("Read with ", words, ".", NULL);
}

// The number of a footnote, with a blank behind it; empty for empty words.
static char *footnote_number(Document *document, const char *words)
{
    return *words ? g_strdup_printf("%u ", document_footnote(document, words)) : g_strdup("");
}

// What certificates claim there, a sentence each; empty without a claim.
static char *claims_words(const SheetSource *source, const Requirement *requirement)
{
    g_autoptr(GArray) claims = claims_of(source->assessment, source->entries, source->count);
    g_autoptr(GString) words = g_string_new(NULL);
    for (guint i = 0; i < claims->len; i++) {
        const Claim *claim = &g_array_index(claims, Claim, i);
        g_autofree char *said = claim->made == requirement ? claim_words(claim) : g_strdup("");
        g_string_append_printf(words, "%s%s", words->len && *said ? " " : "", said);
    }
    return g_string_free(g_steal_pointer(&words), FALSE);
}

static void tell_requirement(Query *asked, const Opened *opened, const SheetSource *source,
                             const Requirement *requirement)
{
    const Entry *entry = source_entry(source, requirement->entry);
    g_autofree char *when = entry ? entry_when(entry) : g_strdup("");
    g_autofree char *value = figure_value(requirement), *doubt = figure_doubt(requirement);
    g_autofree char *limits = figure_limits(requirement), *verdict = figure_verdict(requirement);
    g_autofree char *figure = g_strconcat(value, " ", figure_unit(requirement), NULL);
    g_autofree char *name = strcmp(requirement->name, asked->check) == 0
                                ? g_strdup(requirement->place)
                                : requirement_title(requirement);
    g_autofree char *judged = g_strconcat(requirement->finding ? "found, " : "", verdict, NULL);
    g_autofree char *upheld = footnotes_of(asked->document, source, requirement);
    g_autofree char *fitted = fitted_words(opened, source, requirement);
    g_autofree char *gauges = gauges_words(source, requirement);
    g_autofree char *gauge = footnote_number(asked->document, gauges);
    g_autofree char *lot = footnote_number(asked->document, fitted);
    g_autofree char *claimed = claims_words(source, requirement);
    g_autofree char *claim = footnote_number(asked->document, claimed);
    g_autofree char *notes = g_strconcat(gauge, lot, claim, upheld, NULL);
    when[MIN(strlen(when), 10)] = '\0';
    document_row(asked->document, (const char *const[]){opened->number, when, name, figure, doubt,
                                                        limits, judged, notes});
    asked->count++;
}

static void note_names(Query *asked, const Plan *plan)
{
    GHashTableIter iter;
    gpointer name;
    g_hash_table_iter_init(&iter, plan->checks);
    while (g_hash_table_iter_next(&iter, &name, NULL))
        g_ptr_array_add(asked->known, g_strdup(name));
}

static gboolean tell_build(Query *asked, Book *book, const char *number, GError **error)
{
    Opened *opened = opened_new(book, number, error);
    if (!opened)
        return FALSE;
    g_ptr_array_add(asked->opened, opened);
    note_names(asked, opened_plan(opened));
    const char *serial = taken_only(opened->taken, "engine", "serial");
    if (asked->engine && (!serial || strcmp(serial, asked->engine) != 0))
        return TRUE;
    Assessment *assessment = opened_assess(opened, NULL);
    g_ptr_array_add(asked->assessments, assessment);
    guint before = asked->rows->len;
    over_add(asked->rows, opened->number, assessment, asked->check);
    for (guint i = asked->rows->len; i-- > before;)
        if (!is_meant(g_array_index(asked->rows, Over, i).made, asked->place))
            g_array_remove_index(asked->rows, i);
    const SheetSource source = opened_source(opened, assessment);
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *each = g_ptr_array_index(assessment->requirements, i);
        if (is_asked(each, asked))
            tell_requirement(asked, opened, &source, each);
    }
    return TRUE;
}

// What all of them come to, as the screen that shows one check over the engines says it.
static void tell_sum(const Query *asked)
{
    g_autofree char *words = over_words(asked->rows);
    g_auto(GStrv) lines = g_strsplit(words, "\n", -1);
    for (guint i = 0; asked->rows->len > 1 && lines[i]; i++)
        (i ? document_line : document_paragraph)(asked->document, lines[i]);
}

static gboolean is_known(const Query *asked)
{
    return g_ptr_array_find_with_equal_func(asked->known, asked->check, g_str_equal, NULL);
}

static int nothing_known(const Query *asked, Book *book)
{
    const char *const *names = (const char *const *)asked->known->pdata;
    if (!is_known(asked)) {
        g_autofree char *hint = hint_nearest(asked->check, names, asked->known->len,
                                             "; standbook plan show names those of a plan");
        return fail_saying(2, "no plan has a check `%s`%s", asked->check, hint);
    }
    g_autoptr(Shop) shop = asked->engine ? shop_open(book, NULL) : NULL;
    if (shop && !shop_find(shop, "engine", asked->engine)) {
        const char *nearest = shop_nearest(shop, "engine", asked->engine);
        return fail_saying(STANDBOOK_ERROR_NO,
                           "nothing was read of `%s`; the shop has no engine `%s`%s%s%s",
                           asked->check, asked->engine, nearest ? "; did you mean `" : "",
                           nearest ? nearest : "", nearest ? "`?" : "");
    }
    return fail_saying(STANDBOOK_ERROR_NO, "nothing was read of `%s`%s%s%s", asked->check,
                       asked->place ? " at `" : " there", asked->place ? asked->place : "",
                       asked->place ? "`" : "");
}

static int history(Query *asked, Common *common)
{
    GError *error = NULL;
    g_autoptr(Book) book = store_open(common, BOOK_READ, &error);
    g_autoptr(GPtrArray) numbers = book ? build_numbers(book, &error) : NULL;
    if (!numbers)
        return fail_with(error);
    const DocumentColumn columns[] = {
        {"build", ALIGN_WHOLE}, {"", ALIGN_WHOLE},       {"", ALIGN_LEFT}, {"", ALIGN_POINT},
        {"", ALIGN_WHOLE},      {"limits", ALIGN_WHOLE}, {"", ALIGN_LEFT}, {"see", ALIGN_NOTES}};
    document_table(asked->document, columns, G_N_ELEMENTS(columns));
    for (guint i = 0; i < numbers->len; i++)
        if (!tell_build(asked, book, g_ptr_array_index(numbers, i), &error))
            return fail_with(error);
    if (asked->count == 0)
        return nothing_known(asked, book);
    tell_sum(asked);
    document_footnotes(asked->document);
    say_document(asked->document, common->json);
    return 0;
}

int history_run(int argc, char **argv, Common *common)
{
    char *engine = NULL;
    const GOptionEntry entries[] = {
        {"engine", 0, 0, G_OPTION_ARG_FILENAME, &engine, "only of this engine", "SERIAL"},
        {NULL, 0, 0, G_OPTION_ARG_NONE, NULL, NULL, NULL}};
    int status;
    g_auto(GStrv) words = arguments_read(
        argc, argv, common, "CHECK [PLACE]",
        "One check over all builds, as judged, with what is fitted there and what they\n"
        "come to:\n\n"
        "  standbook history \"main clearance\" 3\n"
        "  standbook history \"main journal\" \"main 3, front\"",
        entries, &status);
    if (words && arguments_fit(words, 1, 2, "history CHECK [PLACE]")) {
        Query asked = {.check = words[0], .place = words[1], .engine = engine};
        g_autofree char *title =
            g_strjoin(" ", "History of", words[0], words[1] ? words[1] : NULL, NULL);
        asked.document = document_new("history", title);
        asked.known = g_ptr_array_new_with_free_func(g_free);
        asked.opened = g_ptr_array_new_with_free_func((GDestroyNotify)opened_free);
        asked.assessments = g_ptr_array_new_with_free_func((GDestroyNotify)assessment_free);
        asked.rows = g_array_new(FALSE, FALSE, sizeof(Over));
        status = history(&asked, common);
        document_free(asked.document);
        g_array_unref(asked.rows);
        g_ptr_array_unref(asked.assessments);
        g_ptr_array_unref(asked.opened);
        g_ptr_array_unref(asked.known);
    } else if (words) {
        status = STANDBOOK_ERROR_MISUSE;
    }
    g_free(engine);
    return status;
}
