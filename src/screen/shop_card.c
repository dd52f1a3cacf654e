#include "shop_card.h"

#include "step_next.h"
#include "words.h"

#include <standbook/work/summary.h>
#include <string.h>

Card *card_new(const char *number)
{
    Card *card = g_new0(Card, 1);
    card->number = g_strdup(number);
    return card;
}

// What is told of the build itself, and not of its engine.
static void forget(Card *card)
{
    g_clear_pointer(&card->tally, g_free);
    g_clear_pointer(&card->next, g_free);
    g_clear_pointer(&card->progress, g_free);
    waits_clear(&card->waits);
    g_clear_pointer(&card->dues, g_array_unref);
}

void card_free(gpointer data)
{
    Card *card = data;
    forget(card);
    g_free(card->number);
    g_free(card->engine);
    g_free(card);
}

static void tell(Card *card, Session *session, Moment now)
{
    const Agenda agenda = session_agenda(session);
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    const Telling telling = {&agenda, taken, now};
    guint place;
    forget(card);
    card->entries = (guint)agenda.count;
    card->tally = build_tally_words(agenda.assessment);
    card->next = step_next_words(&agenda, step_next(&agenda), &place);
    card->progress = place == AGENDA_NOWHERE ? NULL : summary_progress(&agenda, place);
    card->waits = waits_of(&telling);
    card->dues = dues_of_build(&telling);
}

void card_fill(Card *card, Desk *desk)
{
    Session *session = desk_session(desk, card->number);
    g_autofree char *title = desk_title(desk, card->number);
    card->known = TRUE;
    gsize behind = strlen(card->number) + 1;
    g_auto(GStrv) parts = g_strsplit(strlen(title) > behind ? title + behind : "", "  ", 2);
    const char *name = parts[0] ? parts[0] : ""; // without its serial, and what follows a comma
    card->engine = g_strstrip(g_strndup(name, strcspn(name, ",")));
    if (session)
        tell(card, session, desk->now);
}

void card_refresh(Card *card, Desk *desk)
{
    Session *session = card->dues ? desk_session(desk, card->number) : NULL;
    if (session && session_entries(session)->len != card->entries)
        tell(card, session, desk->now);
}
