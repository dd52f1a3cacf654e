// More places for a check that the build added itself.
#include "graft.h"

#include <standbook/base/error.h>
#include <string.h>

// The text of places written in place: `1..3`, alone or in a list of one; NULL for anything else.
static TreeNode *places_in_place(const TreeNode *check)
{
    const TreeNode *at = check->kind == TREE_MAP ? tree_get(check, "at") : NULL;
    if (at && at->kind == TREE_LIST)
        at = tree_count(at) == 1 ? tree_at(at, 0) : NULL;
    gboolean in_place =
        at && at->kind == TREE_SCALAR && (strchr(at->text, '/') || strstr(at->text, ".."));
    return in_place ? (TreeNode *)at : NULL;
}

TreeNode *graft_added_check(const TreeNode *checks, const char *name)
{
    const TreeNode *check = checks->kind == TREE_MAP ? tree_get(checks, name) : NULL;
    return check && check->key->line >= GRAFT_LINE ? (TreeNode *)check : NULL;
}

gboolean graft_is_places(const TreeNode *definition)
{
    if (definition->kind != TREE_MAP || !tree_get(definition, "at"))
        return FALSE;
    for (guint i = 0; i < tree_count(definition); i++) {
        const TreeNode *said = tree_at(definition, i);
        gboolean limits = strcmp(said->key->text, "limits") == 0 && said->kind == TREE_SCALAR;
        if (strcmp(said->key->text, "at") != 0 && !limits)
            return FALSE;
    }
    return TRUE;
}

// Of the limits that fit a place those said first count.
static void put_first(TreeNode *mapping, const char *key)
{
    guint at = 0;
    if (g_ptr_array_find(mapping->children, tree_get(mapping, key), &at))
        g_ptr_array_insert(mapping->children, 0, g_ptr_array_steal_index(mapping->children, at));
}

void tree_say_limits(TreeNode *check, const char *const *labels, const char *label,
                     const char *limits)
{
    const TreeNode *said = tree_get(check, "limits");
    g_autofree char *all = said && said->kind == TREE_SCALAR ? g_strdup(said->text) : NULL;
    if (!said || all)
        tree_say(check, "limits", "");
    TreeNode *by_label = (TreeNode *)tree_get(check, "limits");
    for (gsize i = 0; all && labels[i]; i++)
        tree_say(by_label, labels[i], all);
    tree_say(by_label, label, limits);
    if (strstr(label, ", "))
        put_first(by_label, label);
}

// Whether the check may have these places too; what is said for each place says nothing of others.
static gboolean may_follow(const TreeNode *check, const char *added, GStrv before, GStrv labels,
                           const TreeNode *limits, GError **error)
{
    const char *name = check->key->text;
    const TreeNode *has = tree_get(check, "limits");
    for (gsize i = 0; labels[i]; i++)
        if (g_strv_contains((const char *const *)before, labels[i])) {
            g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                        "`%s` has a place `%s` already; name one that it has not", name, labels[i]);
            return FALSE;
        }
    if (limits || !has || has->kind == TREE_SCALAR)
        return TRUE;
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                "`%s` has limits of their own for its places; say which these have, as in "
                "{at: %s, limits: %s}",
                name, added, tree_at(has, tree_count(has) - 1)->text);
    return FALSE;
}

gboolean graft_places(TreeNode *check, const TreeNode *more, GError **error)
{
    gsize offset = 0;
    TreeNode *at = places_in_place(check);
    const TreeNode *added = tree_get(more, "at"), *limits = tree_get(more, "limits");
    added = added->kind == TREE_LIST && tree_count(added) == 1 ? tree_at(added, 0) : added;
    if (!at || added->kind != TREE_SCALAR) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "`%s` has no numbered places of its own that more could follow; give this "
                    "check another name",
                    check->key->text);
        return FALSE;
    }
    g_auto(GStrv) before = labels_read(at->text, &offset, error);
    g_auto(GStrv) labels = before ? labels_read(added->text, &offset, error) : NULL;
    if (!labels || !may_follow(check, added->text, before, labels, limits, error))
        return FALSE;
    char *text = g_strconcat(at->text, "/", labels[1] ? added->text : labels[0], NULL);
    g_free(at->text);
    at->text = text;
    for (gsize i = 0; limits && labels[i]; i++) {
        tree_say_limits(check, (const char *const *)before, labels[i], limits->text);
        TreeNode *said = (TreeNode *)tree_get(tree_get(check, "limits"), labels[i]);
        said->line = limits->line;
        said->column = limits->column;
    }
    return TRUE;
}
