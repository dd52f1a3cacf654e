#include "tool_for.h"

#include "answer.h"

#include <standbook/sheet/figures.h>
#include <standbook/work/agenda.h>
#include <standbook/work/gauge_choice.h>
#include <standbook/work/shop.h>
#include <string.h>

static Judgement *judged(const Opened *opened)
{
    Judgement *judgement = judgement_new(opened_plan(opened));
    for (guint i = 0; i < opened->entries->len; i++)
        judgement_add(judgement, opened->entries->pdata[i]);
    return judgement;
}

// The place of that name, with `read ` in front or without; -1 and *near, the name of a reading
// that is like it or NULL, if there is none.
static gint place_of(const Assessment *assessment, const char *name, char **near)
{
    g_autofree char *whole = g_strconcat("read ", name, NULL);
    g_autoptr(GPtrArray) names = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; i < assessment->requirements->len; i++) {
        char *each = requirement_name(assessment->requirements->pdata[i]);
        g_ptr_array_add(names, each);
        if (strcmp(each, whole) == 0 || strcmp(each, name) == 0)
            return (gint)i;
    }
    *near = hint_nearest(whole, (const char *const *)names->pdata, names->len,
                         "; write it as standbook assess --all prints it");
    return -1;
}

// The gauge that the newest reading of a place was taken with, NULL if none.
static const char *used_at(const Opened *opened, const Requirement *made)
{
    const Entry *entry = made->entry > 0 && (guint)made->entry <= opened->entries->len
                             ? opened->entries->pdata[made->entry - 1]
                             : NULL;
    return entry ? taken_tool(opened->taken, entry_tool(entry)) : NULL;
}

static void tell(Document *document, const GaugeChoices *choices)
{
    const DocumentColumn columns[] = {{"gauge", ALIGN_LEFT},
                                      {"", ALIGN_LEFT},
                                      {"", ALIGN_LEFT},
                                      {"", ALIGN_LEFT},
                                      {"", ALIGN_LEFT}};
    g_autofree char *name = requirement_title(choices->settled);
    g_autofree char *limits = figure_limits(choices->settled);
    g_autofree char *asked = g_strdup_printf("%s: %s", name, limits);
    g_autofree char *sentence = gauge_choices_sentence(choices);
    document_paragraph(document, asked);
    if (sentence)
        document_line(document, sentence);
    document_table(document, columns, G_N_ELEMENTS(columns));
    for (guint i = 0; i < choices->gauges->len; i++) {
        const GaugeChoice *choice = &g_array_index(choices->gauges, GaugeChoice, i);
        g_autofree char *doubt = gauge_doubt_words(choices, choice);
        g_autofree char *outlook = gauge_outlook_said(choices, choice);
        document_row(document, (const char *const[]){choice->label, choice->words, doubt, outlook,
                                                     choice->fault ? choice->fault : ""});
    }
}

static gboolean is_settled(const GaugeChoices *choices)
{
    for (guint i = 0; i < choices->gauges->len; i++) {
        const GaugeChoice *choice = &g_array_index(choices->gauges, GaugeChoice, i);
        if (choice->outlook == GAUGE_SETTLES && !choice->fault)
            return TRUE;
    }
    return FALSE;
}

// Nothing is read at what is worked out: the gauges are those of its parts.
static int refuse_worked_out(const Assessment *assessment, const Requirement *made,
                             const char *build, const char *name)
{
    enum { NAMED = 3 };
    g_autoptr(GString) parts = g_string_new(NULL);
    g_autofree char *first = NULL;
    guint count = 0;
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *part = assessment->requirements->pdata[i];
        if (!agenda_goes_into(part, made))
            continue;
        g_autofree char *each = requirement_name(part);
        if (count++ < NAMED)
            g_string_append_printf(parts, "%s`%s`", count > 1 ? ", " : "", each);
        first = first ? first : g_strdup(each);
    }
    if (count > NAMED)
        g_string_append_printf(parts, " and %u more", count - NAMED);
    if (!first)
        return fail_saying(2, "`%s` is worked out: no gauge reads it", name);
    return fail_saying(2,
                       "`%s` is worked out from %s; ask for a part: standbook tool for %s \"%s\"",
                       name, parts->str, build, first);
}

int tool_for(GStrv words, Common *common)
{
    GError *error = NULL;
    g_autoptr(Book) book = store_open(common, BOOK_READ, &error);
    g_autoptr(Opened) opened = book ? opened_new(book, words[0], &error) : NULL;
    g_autoptr(Shop) shop = opened ? shop_open(book, &error) : NULL;
    if (!shop)
        return fail_with(error);
    g_autoptr(Judgement) judgement = judged(opened);
    const Assessment *assessment = judgement_now(judgement);
    g_autofree char *near = NULL;
    gint index = place_of(assessment, words[1], &near);
    if (index < 0)
        return fail_saying(2, "nothing is read at `%s`%s", words[1], near);
    g_autofree char *day = moment_text(moment_now());
    day[strlen("2025-03-13")] = '\0';
    const Requirement *made = assessment->requirements->pdata[index];
    if (made->check && made->check->formula)
        return refuse_worked_out(assessment, made, words[0], words[1]);
    g_auto(GaugeChoices) choices =
        gauge_choices(judgement, shop, day, (guint)index, NULL, used_at(opened, made));
    if (!choices.settled)
        return fail_saying(2, "no limit rests on `%s`; any gauge will do", words[1]);
    g_autofree char *title = g_strconcat("Gauges for ", words[1], NULL);
    g_autoptr(Document) document = document_new("gauges", title);
    tell(document, &choices);
    say_document(document, common->json);
    return is_settled(&choices) ? 0 : STANDBOOK_ERROR_NO;
}
