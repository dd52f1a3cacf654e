#include "graft.h"

#include "surface.h"
#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <string.h>

// What can be added, and the key of a step (or the plan) under which it stands.
static const struct {
    const char *what, *key;
} sorts[] = {{"step", "steps"}, {"check", "checks"}, {"tightening", "fasteners"}, {"part", "fit"}};

static void free_node(gpointer node)
{
    tree_free(node);
}

static TreeNode *node_new(TreeKind kind, const char *text, guint line, guint column)
{
    TreeNode *node = g_new0(TreeNode, 1);
    node->kind = kind;
    node->text = kind == TREE_SCALAR ? g_strdup(text) : NULL;
    node->line = line;
    node->column = column;
    if (kind != TREE_SCALAR)
        node->children = g_ptr_array_new_with_free_func(free_node);
    return node;
}

TreeNode *tree_copy(const TreeNode *node)
{
    TreeNode *copy = node_new(node->kind, node->text, node->line, node->column);
    copy->quoted = node->quoted;
    copy->flow = node->flow;
    copy->key = node->key ? tree_copy(node->key) : NULL;
    for (guint i = 0; i < tree_count(node); i++)
        g_ptr_array_add(copy->children, tree_copy(tree_at(node, i)));
    return copy;
}

G_GNUC_PRINTF(5, 6)
static gboolean refuse(PlanRefusal *refusal, PlanAdditionField field, gsize offset, GError **error,
                       const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    g_autofree char *message = g_strdup_vprintf(format, arguments);
    va_end(arguments);
    g_autofree char *clean = text_clean(message, -1);
    refusal->field = field;
    refusal->offset = offset;
    g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE, clean);
    return FALSE;
}

static gboolean has_hidden(const char *text)
{
    for (const char *at = text; *at; at = g_utf8_next_char(at))
        if (surface_is_hidden(g_utf8_get_char(at)))
            return TRUE;
    return FALSE;
}

static gboolean check_name(const PlanAddition *addition, PlanRefusal *refusal, GError **error)
{
    const char *name = addition->name;
    if (!g_utf8_validate(name, -1, NULL) || has_hidden(name))
        return refuse(refusal, ADDITION_NAME, 0, error,
                      "there is a line break or a hidden character in the name of this %s; take "
                      "it out",
                      addition->what);
    if (strspn(name, " ") == strlen(name))
        return refuse(refusal, ADDITION_NAME, 0, error, "this %s has no name; write one",
                      addition->what);
    if (g_utf8_strlen(name, -1) > TREE_KEY_LENGTH)
        return refuse(refusal, ADDITION_NAME, TREE_KEY_LENGTH, error,
                      "a name or formula has at most 1,024 characters; name its parts");
    return TRUE;
}

// Gives all nodes of a definition their line, and columns from 1 at its own beginning.
static void place_nodes(TreeNode *node, guint line, guint before)
{
    node->line = line;
    node->column -= MIN(before, node->column - 1);
    if (node->key)
        place_nodes(node->key, line, before);
    for (guint i = 0; i < tree_count(node); i++)
        place_nodes(g_ptr_array_index(node->children, i), line, before);
}

// A text in brackets that are not there is what YAML's own message does not guess.
static gboolean lacks_brackets(const char *definition)
{
    return !strchr("{[\"'", definition[0]) && strstr(definition, ": ");
}

static gboolean refuse_definition(const PlanAddition *addition, const Faults *faults, guint before,
                                  PlanRefusal *refusal, GError **error)
{
    const Fault *fault = faults_at(faults, 0);
    if (lacks_brackets(addition->definition))
        return refuse(refusal, ADDITION_DEFINITION, 0, error,
                      "%s \"%s\": put { } round its keys, or quotes round a text with `: ` in it",
                      addition->what, addition->name);
    return refuse(refusal, ADDITION_DEFINITION, fault->column - MIN(before + 1, fault->column),
                  error, "%s \"%s\": %s", addition->what, addition->name, fault->message);
}

// Reads what follows the name, as the value of a mapping with this one key. NULL if it cannot be.
static TreeNode *read_definition(const PlanAddition *addition, guint line, PlanRefusal *refusal,
                                 GError **error)
{
    static const char key[] = "x: ";
    const guint before = sizeof key - 1;
    const char *definition = addition->definition ? addition->definition : "";
    if (strspn(definition, " ") == strlen(definition))
        return node_new(TREE_SCALAR, "", line, 1);
    if (strpbrk(definition, "\r\n")) {
        refuse(refusal, ADDITION_DEFINITION, strcspn(definition, "\r\n"), error,
               "%s \"%s\": write what follows the name on one line", addition->what,
               addition->name);
        return NULL;
    }
    if (definition[0] == '>') { // `>= 90 %`: no text of YAML's, but limits
        TreeNode *limits = node_new(TREE_SCALAR, definition, line, 1);
        g_strchomp(limits->text);
        limits->quoted = TRUE;
        return limits;
    }
    g_autofree char *text = g_strconcat(key, definition, "\n", NULL);
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(TreeNode) top = tree_read(text, strlen(text), faults);
    faults_sort(faults);
    if (!top || faults_count(faults) || top->kind != TREE_MAP || tree_count(top) != 1) {
        if (!faults_count(faults))
            faults_add(faults, 1, before + 1, "this is no value; write it as a plan does");
        refuse_definition(addition, faults, before, refusal, error);
        return NULL;
    }
    TreeNode *node = g_ptr_array_steal_index(top->children, 0);
    g_clear_pointer(&node->key, tree_free);
    place_nodes(node, line, before);
    return node;
}

// The value under a key, made an empty mapping where there is none; a mapping where it was a name
// or a list of names.
static TreeNode *mapping_under(TreeNode *parent, const char *key, guint line)
{
    TreeNode *found = (TreeNode *)tree_get(parent, key);
    if (!found) {
        found = node_new(TREE_MAP, NULL, line, 1);
        found->key = node_new(TREE_SCALAR, key, line, 1);
        g_ptr_array_add(parent->children, found);
    }
    g_autoptr(GPtrArray) names = g_ptr_array_new();
    if (found->kind == TREE_SCALAR)
        g_ptr_array_add(names, node_new(TREE_SCALAR, found->text, found->line, found->column));
    for (guint i = 0; found->kind == TREE_LIST && i < tree_count(found); i++)
        g_ptr_array_add(names, tree_copy(tree_at(found, i)));
    if (found->kind == TREE_MAP)
        return found;
    g_clear_pointer(&found->text, g_free);
    g_clear_pointer(&found->children, g_ptr_array_unref);
    found->kind = TREE_MAP;
    found->children = g_ptr_array_new_with_free_func(free_node);
    for (guint i = 0; i < names->len; i++) {
        TreeNode *name = names->pdata[i];
        TreeNode *value = node_new(TREE_SCALAR, "", name->line, name->column);
        value->key = name;
        g_ptr_array_add(found->children, value);
    }
    return found;
}

// The index of a step in the tree; -1 if it has none of this name.
static gint find_step(const TreeNode *steps, const char *name)
{
    for (guint i = 0; i < tree_count(steps); i++)
        if (g_str_equal(tree_at(steps, i)->key->text, name))
            return (gint)i;
    return -1;
}

static gboolean refuse_step(const TreeNode *steps, const PlanAddition *addition,
                            PlanRefusal *refusal, GError **error)
{
    g_autofree const char **names = g_new0(const char *, tree_count(steps) + 1);
    for (guint i = 0; i < tree_count(steps); i++)
        names[i] = tree_at(steps, i)->key->text;
    const char *nearest = text_nearest(addition->step, names, tree_count(steps));
    if (nearest)
        return refuse(refusal, ADDITION_STEP, 0, error,
                      "there is no step called `%s`; did you mean `%s`?", addition->step, nearest);
    return refuse(refusal, ADDITION_STEP, 0, error,
                  "there is no step called `%s`; write the name of one", addition->step);
}

// A step without keys is an empty text; it becomes a mapping without any.
static TreeNode *step_mapping(TreeNode *step)
{
    if (step->kind == TREE_SCALAR) {
        g_clear_pointer(&step->text, g_free);
        step->kind = TREE_MAP;
        step->children = g_ptr_array_new_with_free_func(free_node);
    }
    return step;
}

void tree_say(TreeNode *node, const char *key, const char *text)
{
    TreeNode *value = node_new(TREE_SCALAR, text, node->line, node->column);
    GPtrArray *children = step_mapping(node)->children;
    gpointer before = (gpointer)tree_get(node, key);
    guint at = children->len;
    value->key = node_new(TREE_SCALAR, key, node->line, node->column);
    value->quoted = TRUE;
    if (before && g_ptr_array_find(children, before, &at))
        g_ptr_array_remove_index(children, at);
    g_ptr_array_insert(children, (gint)at, value);
}

// The nearest text said under a key by the steps up to `index`; NULL if none does.
static const char *said_until(const TreeNode *steps, gint index, const char *key)
{
    for (gint i = index; i >= 0; i--) {
        const TreeNode *value = tree_get(tree_at(steps, (guint)i), key);
        if (value && value->kind == TREE_SCALAR)
            return value->text;
    }
    return NULL;
}

// What the step behind the new one took from the steps above it is said by itself where the new
// one says something else.
static void keep_next(const TreeNode *gates, TreeNode *steps, gint index, const TreeNode *added)
{
    if ((guint)index + 1 >= tree_count(steps))
        return;
    static const char *const holding[] = {"gate", "phase"};
    const char *const first[] = {tree_at(gates, 0)->text, NULL};
    TreeNode *next = g_ptr_array_index(steps->children, (guint)index + 1);
    for (gsize i = 0; i < G_N_ELEMENTS(holding); i++) {
        const char *said = said_until(steps, index, holding[i]);
        said = said ? said : first[i];
        if (said && tree_get(added, holding[i]) && !tree_get(next, holding[i]))
            tree_say(next, holding[i], said);
    }
    if (tree_get(added, "after") && !tree_get(next, "after"))
        tree_say(next, "after", tree_at(steps, (guint)index)->key->text);
}

static gboolean graft_step(const TreeNode *top, TreeNode *steps, TreeNode *added,
                           const PlanAddition *addition, PlanRefusal *refusal, GError **error)
{
    gint index = addition->step ? find_step(steps, addition->step) : (gint)tree_count(steps) - 1;
    gboolean there = find_step(steps, added->key->text) >= 0;
    if (index < 0 || there) {
        g_autofree char *name = g_strdup(added->key->text);
        tree_free(added);
        return there
                   ? refuse(refusal, ADDITION_NAME, 0, error,
                            "there is a step called `%s` already; give this one another name", name)
                   : refuse_step(steps, addition, refusal, error);
    }
    keep_next(tree_get(top, "gates"), steps, index, added);
    g_ptr_array_insert(steps->children, index + 1, added);
    return TRUE;
}

// `again` behind the name of a check: it is one of an earlier step, read once more.
static gboolean is_again(const TreeNode *added)
{
    return added->kind == TREE_SCALAR && !added->quoted && g_str_equal(added->text, "again");
}

// Whether a check of the tree has that name; behind it may stand its formula.
static gboolean is_check_named(const TreeNode *check, const char *name)
{
    const char *key = check->key ? check->key->text : check->text;
    gsize length = strlen(name);
    return key && strncmp(key, name, length) == 0 &&
           (key[length] == '\0' || g_str_has_prefix(key + length, " ="));
}

static gboolean has_check(const TreeNode *step, const char *name)
{
    const TreeNode *checks = tree_get(step, "checks");
    if (checks && checks->kind == TREE_SCALAR)
        return is_check_named(checks, name);
    for (guint i = 0; checks && i < tree_count(checks); i++)
        if (is_check_named(tree_at(checks, i), name))
            return TRUE;
    return FALSE;
}

// The list under a key of a step, made where there is none or a name alone.
static TreeNode *list_under(TreeNode *step, const char *key, guint line)
{
    TreeNode *found = (TreeNode *)tree_get(step, key);
    if (found && found->kind == TREE_LIST)
        return found;
    TreeNode *list = found ? found : node_new(TREE_LIST, NULL, line, 1);
    if (found) {
        g_autofree char *name = g_steal_pointer(&found->text);
        found->kind = TREE_LIST;
        found->children = g_ptr_array_new_with_free_func(free_node);
        g_ptr_array_add(found->children, node_new(TREE_SCALAR, name, found->line, found->column));
    } else {
        list->key = node_new(TREE_SCALAR, key, line, 1);
        g_ptr_array_add(step->children, list);
    }
    return list;
}

// A check of a step before that one is asked for in it once more.
static gboolean graft_again(const TreeNode *steps, gint index, TreeNode *added,
                            PlanRefusal *refusal, GError **error)
{
    g_autoptr(TreeNode) again = added;
    const char *name = again->key->text;
    TreeNode *step = g_ptr_array_index(steps->children, (guint)index);
    if (has_check(step, name))
        return refuse(refusal, ADDITION_NAME, 0, error,
                      "`%s` is a check of this step itself; only one of an earlier step is read "
                      "again here",
                      name);
    for (gint i = 0; i < index; i++)
        if (has_check(tree_at(steps, (guint)i), name)) {
            TreeNode *list = list_under(step, "read again", again->line);
            for (guint j = 0; j < tree_count(list); j++)
                if (g_str_equal(tree_at(list, j)->text, name))
                    return refuse(refusal, ADDITION_NAME, 0, error,
                                  "`%s` is read again in this step already", name);
            g_ptr_array_add(list->children, node_new(TREE_SCALAR, name, again->line, 1));
            return TRUE;
        }
    return refuse(refusal, ADDITION_NAME, 0, error,
                  "no earlier step has a check called `%s` to be read again", name);
}

// Names that stand without a definition have an empty value; a whole step then says nothing.
static gboolean graft_under_step(TreeNode *steps, const char *key, TreeNode *added,
                                 const PlanAddition *addition, PlanRefusal *refusal, GError **error)
{
    gint index = addition->step ? find_step(steps, addition->step) : -1;
    if (index < 0) {
        tree_free(added);
        if (addition->step)
            return refuse_step(steps, addition, refusal, error);
        return refuse(refusal, ADDITION_STEP, 0, error,
                      "a %s belongs to a step; write the name of one", addition->what);
    }
    TreeNode *step = step_mapping(g_ptr_array_index(steps->children, (guint)index));
    gboolean check = strcmp(key, "checks") == 0;
    if (check && is_again(added))
        return graft_again(steps, index, added, refusal, error);
    const TreeNode *checks = check ? tree_get(step, key) : NULL;
    TreeNode *there = checks ? graft_added_check(checks, added->key->text) : NULL;
    if (there && graft_is_places(added)) {
        g_autoptr(TreeNode) more = added;
        refusal->field = ADDITION_DEFINITION;
        refusal->offset = 0;
        return graft_places(there, more, error);
    }
    g_ptr_array_add(mapping_under(step, key, added->line)->children, added);
    return TRUE;
}

// Where the plan names no gates, those it has are written down, so that an addition that names one
// does not give it others.
void graft_gates(TreeNode *top, const GPtrArray *gates)
{
    const TreeNode *said = tree_get(top, "gates");
    if (said && said->kind == TREE_LIST)
        return;
    TreeNode *list = said ? (TreeNode *)said : node_new(TREE_LIST, NULL, 1, 1);
    if (!said) {
        list->key = node_new(TREE_SCALAR, "gates", 1, 1);
        g_ptr_array_add(top->children, list);
    } else {
        g_clear_pointer(&list->text, g_free);
        list->kind = TREE_LIST;
        list->children = g_ptr_array_new_with_free_func(free_node);
    }
    for (guint i = 0; i < gates->len; i++)
        g_ptr_array_add(list->children, node_new(TREE_SCALAR, gates->pdata[i], 1, 1));
}

gboolean graft(TreeNode *top, const PlanAddition *addition, guint line, PlanRefusal *refusal,
               GError **error)
{
    gsize sort = 0;
    while (sort < G_N_ELEMENTS(sorts) && !g_str_equal(sorts[sort].what, addition->what))
        sort++;
    if (sort == G_N_ELEMENTS(sorts))
        return refuse(refusal, ADDITION_WHAT, 0, error,
                      "`%s` cannot be added; write step, check, tightening or part",
                      addition->what);
    if (!check_name(addition, refusal, error))
        return FALSE;
    TreeNode *added = read_definition(addition, line + 1, refusal, error);
    if (!added)
        return FALSE;
    g_autofree char *name = g_strstrip(g_strdup(addition->name));
    added->key = node_new(TREE_SCALAR, name, line, 1);
    TreeNode *steps = (TreeNode *)tree_get(top, "steps");
    return sort == 0 ? graft_step(top, steps, added, addition, refusal, error)
                     : graft_under_step(steps, sorts[sort].key, added, addition, refusal, error);
}
