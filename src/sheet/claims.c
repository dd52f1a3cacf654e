// What certificates claim beside the own readings.
#include "sections.h"

#include <standbook/sheet/assessment_json.h>
#include <standbook/work/claim.h>

static void claim_row(Document *document, const Claim *claim)
{
    g_autofree char *name = requirement_title(claim->made), *own = figure_value(claim->made);
    g_autofree char *claimed =
        claim->claimed ? check_stated_words(claim->made->check, claim->claimed) : g_strdup("");
    g_autofree char *stated = claim_doubt_words(claim, claim->doubt);
    g_autofree char *apart = claim->difference
                                 ? check_stated_width(claim->made->check, claim->difference)
                                 : g_strdup("");
    g_autofree char *doubt = claim_doubt_words(claim, claim->apart),
                    *score = claim_score_words(claim);
    document_row(document,
                 (const char *const[]){name, entry_text(claim->entry, "certificate"), claimed,
                                       stated, own, apart, doubt, score,
                                       claim->difference ? claim_answer_words(claim->answer) : ""});
}

void section_claims(Document *document, const SheetSource *source)
{
    const DocumentColumn columns[] = {
        {"", ALIGN_LEFT}, {"certificate", ALIGN_LEFT}, {"claims", ALIGN_POINT},
        {"", ALIGN_LEFT}, {"own", ALIGN_POINT},        {"own - claim", ALIGN_POINT},
        {"", ALIGN_LEFT}, {"E_n", ALIGN_POINT},        {"", ALIGN_LEFT}};
    g_autoptr(GArray) claims = claims_of(source->assessment, source->entries, source->count);
    if (!claims->len)
        return;
    document_heading(document, 1, "Certificates beside the own readings");
    document_table(document, columns, G_N_ELEMENTS(columns));
    for (guint i = 0; i < claims->len; i++)
        claim_row(document, &g_array_index(claims, Claim, i));
    document_paragraph(document, "E_n is the difference over the doubt of both (ISO/IEC 17043): "
                                 "between -1 and 1 they agree.");
}

static json_t *exact_json(const Number *number)
{
    g_autofree char *text = number ? number_text(number) : NULL;
    return text ? json_string(text) : json_null();
}

static json_t *claim_json(const Claim *claim)
{
    g_autofree char *name = requirement_name(claim->made), *score = claim_score_words(claim);
    return json_pack("{s:s,s:I,s:s,s:o,s:o,s:o,s:o,s:s?,s:s}", "name", name, "entry",
                     (json_int_t)claim->entry->seq, "certificate",
                     entry_text(claim->entry, "certificate"), "claimed", exact_json(claim->claimed),
                     "claimed doubt", exact_json(claim->doubt), "difference",
                     exact_json(claim->difference), "doubt", exact_json(claim->apart), "E_n",
                     *score ? score : NULL, "answer",
                     claim->difference ? claim_answer_words(claim->answer) : "not read yet");
}

json_t *claims_json(const SheetSource *source)
{
    json_t *list = json_array();
    g_autoptr(GArray) claims = claims_of(source->assessment, source->entries, source->count);
    for (guint i = 0; i < claims->len; i++)
        json_array_append_new(list, claim_json(&g_array_index(claims, Claim, i)));
    return list;
}
