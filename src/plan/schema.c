#include <standbook/plan/schema.h>

#include <standbook/base/text.h>
#include <string.h>

enum { SCALAR = 1, LIST = 2, MAP = 4 }; // shapes of nodes, as bits

// Indexed by SchemaType.
static const struct {
    unsigned shapes;
    const char *words;
} types[] = {
    [SCHEMA_WORDS] = {SCALAR, "words"},
    [SCHEMA_TEXTS] = {SCALAR | LIST, "words, or a list of them"},
    [SCHEMA_LIST] = {SCALAR | LIST, "a list such as [one, other]"},
    [SCHEMA_CHOICE] = {SCALAR, "one of its words"},
    [SCHEMA_YES] = {SCALAR, "yes or no"},
    [SCHEMA_COUNT] = {SCALAR, "a whole number"},
    [SCHEMA_AMOUNT] = {SCALAR, "a number with its unit"},
    [SCHEMA_PLACES] = {SCALAR | LIST, "an axis, or a list of axes such as [main, end]"},
    [SCHEMA_LIMITS] = {SCALAR | MAP, "limits, or {label: limits}"},
    [SCHEMA_BY_LABEL] = {SCALAR | MAP, "words, or {label: words}"},
    [SCHEMA_MAPPING] = {MAP, "a mapping such as {key: value}"},
    [SCHEMA_NAMED] = {MAP, "names, each with its own value"},
    [SCHEMA_NAMES] = {SCALAR | LIST | MAP, "names, each with its own value where it has one"},
};

const SchemaKey *schema_find(const SchemaMapping *mapping, const char *key)
{
    for (gsize i = 0; i < mapping->count; i++)
        if (g_str_equal(mapping->keys[i].key, key))
            return &mapping->keys[i];
    return NULL;
}

const char *schema_type_words(SchemaType type)
{
    return types[type].words;
}

static gboolean is_empty(const TreeNode *node)
{
    return node->kind == TREE_SCALAR && node->text[0] == '\0';
}

static gboolean all_scalars(const TreeNode *node)
{
    for (guint i = 0; i < tree_count(node); i++)
        if (tree_at(node, i)->kind != TREE_SCALAR || is_empty(tree_at(node, i)))
            return FALSE;
    return TRUE;
}

// Lists hold words, and mappings without a table of their own too.
static gboolean inside_fits(const SchemaKey *key, const TreeNode *node)
{
    gboolean words =
        node->kind == TREE_LIST || key->type == SCHEMA_LIMITS || key->type == SCHEMA_BY_LABEL;
    return !words || all_scalars(node);
}

static gboolean shape_fits(const SchemaKey *key, const TreeNode *node)
{
    unsigned shape = node->kind == TREE_SCALAR ? SCALAR : node->kind == TREE_LIST ? LIST : MAP;
    return (types[key->type].shapes & shape) && !is_empty(node) && inside_fits(key, node);
}

static gboolean is_whole(const char *text)
{
    gsize length = strlen(text);
    return length > 0 && length <= 6 && strspn(text, "0123456789") == length;
}

static gboolean is_chosen(const char *choices, const char *text)
{
    g_auto(GStrv) words = g_strsplit(choices, "/", -1);
    return g_strv_contains((const char *const *)words, text);
}

static gboolean content_fits(const SchemaKey *key, const TreeNode *node)
{
    switch (key->type) {
    case SCHEMA_COUNT:
        return is_whole(node->text);
    case SCHEMA_YES:
        return is_chosen("yes/no", node->text);
    case SCHEMA_CHOICE:
        return is_chosen(key->choices, node->text);
    default:
        return TRUE;
    }
}

const TreeNode *schema_get(const SchemaMapping *mapping, const TreeNode *node, const char *key)
{
    const SchemaKey *row = schema_find(mapping, key);
    g_assert(row);
    const TreeNode *value = tree_get(node, key);
    return value && shape_fits(row, value) && content_fits(row, value) ? value : NULL;
}

// A fault at the key, for values that are missing have no place of their own.
static void check_value(const SchemaKey *key, const TreeNode *value, const char *where,
                        Faults *faults)
{
    const TreeNode *place = is_empty(value) ? value->key : value;
    const char *words = types[key->type].words;
    if (is_empty(value))
        faults_add(faults, place->line, place->column, "%snothing stands behind `%s`; write %s",
                   where, key->key, key->choices ? key->choices : words);
    else if (!shape_fits(key, value))
        faults_add(faults, place->line, place->column, "%s`%s` does not fit here; write %s%s",
                   where, key->key, words,
                   value->kind == TREE_SCALAR && strchr(value->text, ':')
                       ? ", and a blank behind each colon"
                       : "");
    else if (!content_fits(key, value))
        faults_add(faults, place->line, place->column, "%s`%s` cannot be `%s`; write %s", where,
                   key->key, value->text, key->choices ? key->choices : words);
}

static const char *nearest_key(const SchemaMapping *mapping, const char *word)
{
    g_autofree const char **keys = g_new0(const char *, mapping->count);
    for (gsize i = 0; i < mapping->count; i++)
        keys[i] = mapping->keys[i].key;
    return text_nearest(word, keys, mapping->count);
}

static char *all_keys(const SchemaMapping *mapping)
{
    GString *keys = g_string_new(NULL);
    for (gsize i = 0; i < mapping->count; i++)
        g_string_append_printf(keys, "%s%s", i ? ", " : "", mapping->keys[i].key);
    return g_string_free(keys, FALSE);
}

static void unknown_key(const SchemaMapping *mapping, const TreeNode *node, const TreeNode *value,
                        const char *where, Faults *faults)
{
    const TreeNode *key = value->key;
    const char *nearest = nearest_key(mapping, key->text);
    g_autofree char *keys = all_keys(mapping);
    if (nearest)
        faults_add(faults, key->line, key->column, "%s%s has no `%s`; did you mean `%s`?", where,
                   mapping->name, key->text, nearest);
    else if (node->flow && is_empty(value))
        faults_add(faults, key->line, key->column,
                   "%sa comma inside { } ends the value, so `%s` stands alone; put quotes round "
                   "the value or give it its own lines",
                   where, key->text);
    else
        faults_add(faults, key->line, key->column, "%s%s has no `%s`; it has %s", where,
                   mapping->name, key->text, keys);
}

// Whether an unknown key of the node may have been meant as this one: then it is not missing too.
static gboolean is_meant(const SchemaMapping *mapping, const TreeNode *node, const char *key)
{
    for (guint i = 0; i < tree_count(node); i++) {
        const char *text = tree_at(node, i)->key->text;
        if (!schema_find(mapping, text) && g_strcmp0(nearest_key(mapping, text), key) == 0)
            return TRUE;
    }
    return FALSE;
}

static void check_missing(const SchemaMapping *mapping, const TreeNode *node, const char *where,
                          Faults *faults)
{
    const TreeNode *place = node->key ? node->key : node;
    for (gsize i = 0; i < mapping->count; i++) {
        const SchemaKey *key = &mapping->keys[i];
        if (key->needed && !tree_get(node, key->key) && !is_meant(mapping, node, key->key))
            faults_add(faults, place->line, place->column, "%s`%s` is missing: %s", where, key->key,
                       key->help);
    }
}

void schema_check(const SchemaMapping *mapping, const TreeNode *node, const char *where,
                  Faults *faults)
{
    if (node->kind != TREE_MAP) {
        const TreeNode *place = is_empty(node) && node->key ? node->key : node;
        faults_add(faults, place->line, place->column,
                   "%s%s is written as a mapping; write its keys, such as `%s: `", where,
                   mapping->name, mapping->keys[0].key);
        return;
    }
    for (guint i = 0; i < tree_count(node); i++) {
        const TreeNode *value = tree_at(node, i);
        const SchemaKey *key = schema_find(mapping, value->key->text);
        if (key)
            check_value(key, value, where, faults);
        else
            unknown_key(mapping, node, value, where, faults);
    }
    check_missing(mapping, node, where, faults);
}
