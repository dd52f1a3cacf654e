#include <standbook/base/error.h>
#include <standbook/record/order.h>

gboolean ledger_in_turn(const Entry *const *entries, gsize count, GError **error)
{
    for (gsize i = 0; i < count; i++) {
        const Entry *entry = entries[i];
        if (entry->seq == (gint64)i + 1 && entry->after >= 0 && entry->after < entry->seq)
            continue;
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                    "entry %" G_GSIZE_FORMAT " of the ledger: its `seq` or `after` is out of turn",
                    i + 1);
        return FALSE;
    }
    return TRUE;
}

// The entries as a tree by seq: those placed behind another are its children, oldest first. Number
// 0 is the root, whose children are the entries without `after`.
typedef struct {
    gint64 first, last, next, parent;
} Node;

static Node *tree_new(const Entry *const *entries, gsize count)
{
    Node *nodes = g_new0(Node, count + 1);
    for (gsize i = 0; i < count; i++) {
        gint64 seq = entries[i]->seq;
        Node *parent = &nodes[entries[i]->after];
        nodes[seq].parent = entries[i]->after;
        if (parent->last)
            nodes[parent->last].next = seq;
        else
            parent->first = seq;
        parent->last = seq;
    }
    return nodes;
}

// The next in rank: the first child, else the next sibling of the nearest one up that has one.
static gint64 step(const Node *nodes, gint64 seq)
{
    if (nodes[seq].first)
        return nodes[seq].first;
    while (seq && !nodes[seq].next)
        seq = nodes[seq].parent;
    return nodes[seq].next;
}

void rank_order(const Entry *const *entries, gsize count, gint64 *ranked)
{
    g_autofree Node *nodes = tree_new(entries, count);
    gint64 seq = 0;
    for (gsize i = 0; i < count; i++) {
        seq = step(nodes, seq);
        ranked[i] = seq;
    }
}
