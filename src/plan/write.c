#include <standbook/plan/write.h>

#include <standbook/plan/schema.h>
#include <string.h>

// YAML 1.2.2, 7.3.3: what a text cannot begin with, unquoted. A hyphen may stand before a letter or
// digit.
static gboolean begins_safely(const char *text)
{
    if (text[0] == '-')
        return g_ascii_isalnum(text[1]);
    return text[0] && !strchr("?:,[]{}#&*!|>'\"%@` ", text[0]) && !g_str_has_prefix(text, "...");
}

static gboolean is_plain(const char *text)
{
    gsize length = strlen(text);
    return begins_safely(text) && !strpbrk(text, ",[]{}\n\"\\") && !strstr(text, ": ") &&
           !strstr(text, " #") && text[length - 1] != ':' && text[length - 1] != ' ';
}

static void write_double_quoted(GString *out, const char *text)
{
    g_string_append_c(out, '"');
    for (const char *at = text; *at; at++) {
        if (*at == '\n')
            g_string_append(out, "\\n");
        else if (*at == '"' || *at == '\\')
            g_string_append_printf(out, "\\%c", *at);
        else
            g_string_append_c(out, *at);
    }
    g_string_append_c(out, '"');
}

// Single quotes where they come out shorter: a key of 1,024 characters must not grow past that.
static void write_text(GString *out, const char *text)
{
    if (is_plain(text)) {
        g_string_append(out, text);
    } else if (strpbrk(text, "\"\\") && !strpbrk(text, "\n'")) {
        g_string_append_printf(out, "'%s'", text);
    } else {
        write_double_quoted(out, text);
    }
}

// On one line, in brackets. The keys of a mapping with a table stand in its order.
static void write_flow(GString *out, const TreeNode *node, const SchemaMapping *mapping);

static void write_flow_entry(GString *out, const TreeNode *value, const SchemaMapping *inside,
                             gboolean *first)
{
    if (!*first)
        g_string_append(out, ", ");
    *first = FALSE;
    if (value->key) {
        write_text(out, value->key->text);
        g_string_append(out, ": ");
    }
    write_flow(out, value, inside);
}

static void write_flow(GString *out, const TreeNode *node, const SchemaMapping *mapping)
{
    if (node->kind == TREE_SCALAR) {
        if (node->text[0])
            write_text(out, node->text);
        return;
    }
    gboolean first = TRUE;
    g_string_append_c(out, node->kind == TREE_MAP ? '{' : '[');
    for (gsize i = 0; mapping && i < mapping->count; i++) {
        const TreeNode *value = tree_get(node, mapping->keys[i].key);
        if (value)
            write_flow_entry(out, value, mapping->keys[i].inside, &first);
    }
    for (guint i = 0; !mapping && i < tree_count(node); i++)
        write_flow_entry(out, tree_at(node, i), NULL, &first);
    g_string_append_c(out, node->kind == TREE_MAP ? '}' : ']');
}

static void indent(GString *out, guint depth)
{
    g_string_append_printf(out, "%*s", (int)(2 * depth), "");
}

// A text of several lines can stand as a block if no line needs its spaces kept.
static gboolean is_block(const TreeNode *node)
{
    gboolean lines = node->kind == TREE_SCALAR && strchr(node->text, '\n');
    return lines && !strstr(node->text, "\n ") && !strstr(node->text, " \n") &&
           node->text[0] != ' ' && node->text[0] != '\n' &&
           !strchr(" \n", node->text[strlen(node->text) - 1]);
}

static void write_block(GString *out, const TreeNode *node, guint depth)
{
    g_auto(GStrv) lines = g_strsplit(node->text, "\n", -1);
    g_string_append(out, " |-\n");
    for (gsize i = 0; lines[i]; i++) {
        if (*lines[i])
            indent(out, depth + 1);
        g_string_append_printf(out, "%s\n", lines[i]);
    }
}

static void write_key(GString *out, const TreeNode *value, guint depth)
{
    indent(out, depth);
    write_text(out, value->key->text);
    g_string_append_c(out, ':');
}

static void write_line(GString *out, const TreeNode *value, const SchemaMapping *inside,
                       guint depth)
{
    write_key(out, value, depth);
    if (is_block(value)) {
        write_block(out, value, depth);
        return;
    }
    if (value->kind != TREE_SCALAR || value->text[0])
        g_string_append_c(out, ' ');
    write_flow(out, value, inside);
    g_string_append_c(out, '\n');
}

static void write_mapping(GString *out, const TreeNode *node, const SchemaMapping *mapping,
                          guint depth);

// Names, each on lines of its own; steps go further down, all else stands on one line.
static void write_names(GString *out, const TreeNode *node, const SchemaMapping *inside,
                        guint depth)
{
    for (guint i = 0; i < tree_count(node); i++) {
        const TreeNode *value = tree_at(node, i);
        if (inside != &schema_of_step || tree_count(value) == 0) {
            write_line(out, value, inside, depth);
            continue;
        }
        write_key(out, value, depth);
        g_string_append_c(out, '\n');
        write_mapping(out, value, inside, depth + 1);
    }
}

static void write_value(GString *out, const TreeNode *value, const SchemaKey *key, guint depth)
{
    gboolean names = key->type == SCHEMA_NAMED || key->type == SCHEMA_NAMES;
    if (!names || value->kind != TREE_MAP || tree_count(value) == 0) {
        write_line(out, value, key->inside, depth);
        return;
    }
    write_key(out, value, depth);
    g_string_append_c(out, '\n');
    write_names(out, value, key->inside, depth + 1);
}

// The order of a step's keys is the order of its work, so it stays; others stand as in the table.
static void write_mapping(GString *out, const TreeNode *node, const SchemaMapping *mapping,
                          guint depth)
{
    gboolean as_read = mapping == &schema_of_step;
    for (guint i = 0; as_read && i < tree_count(node); i++) {
        const TreeNode *value = tree_at(node, i);
        write_value(out, value, schema_find(mapping, value->key->text), depth);
    }
    for (gsize i = 0; !as_read && i < mapping->count; i++) {
        const TreeNode *value = tree_get(node, mapping->keys[i].key);
        if (value)
            write_value(out, value, &mapping->keys[i], depth);
    }
}

char *plan_write(const Plan *plan)
{
    GString *out = g_string_new(NULL);
    write_mapping(out, plan->tree, &schema_of_plan, 0);
    return g_string_free(out, FALSE);
}
