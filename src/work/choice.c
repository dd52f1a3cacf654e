#include "session_inside.h"

#include <standbook/work/choice.h>

// THE AIM ---------------------------------------------------------------------------------------

// So much of the tolerance above the lower limit; NULL where there is no tolerance.
static Number *along(const Requirement *made, glong over, glong under)
{
    if (!made->lower || !made->upper)
        return NULL;
    g_autoptr(Number) width = number_subtract(made->upper, made->lower);
    g_autoptr(Number) share = number_from_ratio(over, under);
    g_autoptr(Number) part = number_multiply(width, share);
    return number_add(made->lower, part);
}

static Number *aim_of(const Requirement *made)
{
    switch (made->check->aim) {
    case AIM_VALUE:
    case AIM_SMALLEST:
        return number_copy(made->check->aim_value);
    case AIM_LOW:
        return along(made, 3, 10);
    case AIM_HIGH:
        return along(made, 7, 10);
    case AIM_NONE:
        break;
    }
    return along(made, 1, 2);
}

static SelectionSide side_of(PlanAim aim)
{
    if (aim == AIM_SMALLEST || aim == AIM_LOW)
        return SELECTION_AT_LEAST;
    return aim == AIM_HIGH ? SELECTION_AT_MOST : SELECTION_NEAREST;
}

// THE OFFER -------------------------------------------------------------------------------------

static Selection select_from(const GArray *labels, const Number *aim, PlanAim how)
{
    g_autofree SelectionOffer *offers = g_new0(SelectionOffer, labels->len + 1);
    for (guint i = 0; i < labels->len; i++) {
        const JudgementChoice *choice = &g_array_index(labels, JudgementChoice, i);
        offers[i] = (SelectionOffer){choice->value, choice->verdict == VERDICT_PASS};
    }
    return aim ? selection_of(offers, labels->len, aim, side_of(how)) : (Selection){-1, -1, -1};
}

ChoiceOffer choice_offer(Judgement *judgement, guint index)
{
    const Requirement *made = judgement_now(judgement)->requirements->pdata[index];
    ChoiceOffer offer = {
        .made = made, .labels = judgement_choices(judgement, index), .selection = {-1, -1, -1}};
    if (offer.labels->len) {
        offer.aim = aim_of(made);
        offer.selection = select_from(offer.labels, offer.aim, made->check->aim);
    }
    return offer;
}

ChoiceOffer session_choice(Session *session, guint index)
{
    session_assessment(session); // makes the judgement
    return choice_offer(session->judgement, index);
}

void choice_offer_clear(ChoiceOffer *offer)
{
    g_array_unref(offer->labels);
    number_free(offer->aim);
}

// WORDS -----------------------------------------------------------------------------------------

// ` 0.007 over`; empty inside the limits.
static char *outside_words(const Requirement *made, const Number *value)
{
    gboolean over = made->upper && number_compare(value, made->upper) > 0;
    if (!over && !(made->lower && number_compare(value, made->lower) < 0))
        return g_strdup("");
    g_autoptr(Number) off = number_subtract(value, over ? made->upper : made->lower);
    g_autoptr(Number) size = number_abs(off);
    g_autofree char *width = check_width_words(made->check, size);
    return g_strdup_printf(" %s %s", width, over ? "over" : "under");
}

static const char *mark_of(const JudgementChoice *choice)
{
    if (choice->verdict == VERDICT_PASS)
        return "√";
    if (choice->verdict == VERDICT_IN_DOUBT)
        return "?";
    return choice->reason == REASON_LOW ? "▼" : choice->reason == REASON_NONE ? "=" : "▲";
}

// `1 A 0.072 ▲ 0.007 over`
static void add_label(GString *words, const ChoiceOffer *offer, gssize index)
{
    if (index < 0)
        return;
    const JudgementChoice *choice = &g_array_index(offer->labels, JudgementChoice, index);
    g_autofree char *value = check_value_words(offer->made->check, choice->value);
    g_autofree char *outside = outside_words(offer->made, choice->value);
    gboolean first = !words->len || words->str[words->len - 1] == ' ';
    g_string_append_printf(words, "%s%" G_GSSIZE_FORMAT " %s %s %s%s", first ? "" : "   ",
                           index + 1, choice->label, value, mark_of(choice), outside);
}

char *choice_offer_words(const ChoiceOffer *offer)
{
    const Selection *found = &offer->selection;
    if (found->best < 0 && found->below < 0 && found->above < 0)
        return NULL;
    g_autofree char *aim = check_value_words(offer->made->check, offer->aim);
    g_autoptr(GString) words = g_string_new(found->best < 0 ? "none lands inside; " : NULL);
    add_label(words, offer, found->best);
    if (found->best >= 0)
        g_string_append_printf(words, " nearest the %s %s",
                               offer->made->check->aim == AIM_NONE ? "middle" : "aim", aim);
    add_label(words, offer, found->below);
    add_label(words, offer, found->above);
    return g_string_free(g_steal_pointer(&words), FALSE);
}
