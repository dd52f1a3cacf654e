// Inside a session: opened by session.c, its lines taken by session_line.c.
#pragma once
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
    Assessment *assessment; // NULL: to be judged anew
    gint64 version;         // of the store's data, when last looked at
    guint lines, taken;
};

// The plan anew, with all additions that still stand on something. The old one is handed back, for
// what still points into it; free it with plan_free.
Plan *session_grow(Session *session) G_GNUC_WARN_UNUSED_RESULT;

// Looks for entries of others, but only when somebody has written to the store.
gboolean session_look_around(Session *session, GError **error);
