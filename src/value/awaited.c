#include "awaited.h"

// A reading, or with `one` and `other` what both wait for. Formulas on formulas make long chains of
// these: nothing here calls itself.
struct Awaited {
    guint references;
    gint source;
    Awaited *one, *other;
};

static Awaited *new_awaited(gint source, Awaited *one, Awaited *other)
{
    Awaited *awaited = g_new(Awaited, 1);
    *awaited = (Awaited){1, source, awaited_copy(one), awaited_copy(other)};
    return awaited;
}

Awaited *awaited_one(gint source)
{
    return new_awaited(source, NULL, NULL);
}

Awaited *awaited_both(Awaited *one, Awaited *other)
{
    if (!one || !other || one == other)
        return awaited_copy(one ? one : other);
    return new_awaited(0, one, other);
}

Awaited *awaited_copy(Awaited *awaited)
{
    if (awaited)
        awaited->references++;
    return awaited;
}

static Awaited *pop(GPtrArray *pending)
{
    return g_ptr_array_steal_index(pending, pending->len - 1);
}

void awaited_free(Awaited *awaited)
{
    if (!awaited || --awaited->references > 0)
        return;
    g_autoptr(GPtrArray) pending = g_ptr_array_new();
    for (Awaited *each = awaited; each; each = pending->len ? pop(pending) : NULL) {
        if (each->one && --each->one->references == 0)
            g_ptr_array_add(pending, each->one);
        if (each->other && --each->other->references == 0)
            g_ptr_array_add(pending, each->other);
        g_free(each);
    }
}

gboolean place_awaited(const Place *place, GArray *sources, guint64 *work)
{
    g_autoptr(GHashTable) seen = g_hash_table_new(NULL, NULL);
    g_autoptr(GPtrArray) pending = g_ptr_array_new();
    for (Awaited *each = place->awaits; each; each = pending->len ? pop(pending) : NULL) {
        if (!g_hash_table_add(seen, each))
            continue;
        if (*work == 0)
            return FALSE;
        (*work)--;
        if (each->one) {
            g_ptr_array_add(pending, each->other);
            g_ptr_array_add(pending, each->one);
        } else {
            g_array_append_val(sources, each->source);
        }
    }
    return TRUE;
}
