#include "people.h"

GPtrArray *people_listed(const Desk *desk)
{
    GPtrArray *people = g_ptr_array_new();
    g_autoptr(GPtrArray) entries =
        desk->shop ? shop_all(session_shop(desk->shop), "person", NULL) : g_ptr_array_new();
    for (guint i = 0; i < entries->len; i++)
        g_ptr_array_add(people, (gpointer)shop_label(entries->pdata[i]));
    for (guint i = PEOPLE_DIGITS; i < people->len; i++)
        if (g_strcmp0(people->pdata[i], desk->called) == 0)
            g_ptr_array_insert(people, PEOPLE_DIGITS - 1, g_ptr_array_steal_index(people, i));
    return people;
}

const char *people_others(const GPtrArray *people)
{
    return people->len > PEOPLE_DIGITS ? "0 another" : "0 new";
}

gboolean people_call(Desk *desk, const char *initials)
{
    if (!shop_find(session_shop(desk->shop), "person", initials))
        return FALSE;
    g_free(desk->called);
    desk->called = g_strdup(initials);
    return TRUE;
}
