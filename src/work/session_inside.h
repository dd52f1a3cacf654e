// Inside a session: opened by session.c, its lines taken by session_line.c.
#pragma once
#include <standbook/judge/judgement.h>
#include <standbook/work/session.h>

struct Session {
    Book *book;
    SessionOptions options;
    char *build, *shop_ledger;
    gboolean has_shop; // the shop's ledger is in the store
    Plan *kept;        // as its file says
    Plan *grown;       // with what the build added, NULL if it added nothing
    Shop *shop;
    LineTaker *taker;
    Judgement *judgement; // by the plan in force; NULL before it is asked for
    gint64 version;       // of the store's data, when last looked at
    guint lines, taken;
    guint entered;    // entries of the build by the line taken last
    gint64 seal_told; // seq of the newest seal of which it was said that it does not cover all
    GPtrArray *slips; // char *: of the line taken last; NULL for none
};

// What was judged by a plan that is not in force any more.
typedef struct {
    Plan *plan;           // NULL if it is the one kept
    Judgement *judgement; // NULL if none was asked for, or the plan is still in force
} Outgrown;

void outgrown_clear(Outgrown *outgrown);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Outgrown, outgrown_clear)

// Begins the build's own part of a session, its shop and plan being read: taker, entries, the plan
// in force. FALSE with an error if the ledger is damaged.
gboolean session_begin(Session *session, GError **error);
// Ends that part; shop and plan stay, and it may be begun again.
void session_end(Session *session);

// The plan anew, with all additions that still stand on something. What is over is handed back, to
// be compared with; clear it with outgrown_clear.
Outgrown session_grow(Session *session) G_GNUC_WARN_UNUSED_RESULT;

// Looks for entries of others, but only when somebody has written to the store.
gboolean session_look_around(Session *session, GError **error);
