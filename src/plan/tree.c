#include <standbook/plan/tree.h>

#include "surface.h"
#include <string.h>
#include <yaml.h>

// The state of one reading.
typedef struct {
    yaml_parser_t parser;
    const char *bytes;
    gsize length;
    TreeNode *top;
    GPtrArray *open; // TreeNode *: the lists and mappings not yet ended, outermost first
    GPtrArray *keys; // GHashTable * per open node: key text → TreeNode * (NULL for a list)
    TreeNode *key;   // read, its value not yet
    GArray *quoted;  // pairs of gsize for surface_find_comments
    guint nodes;
    Faults *faults;
} Reading;

void tree_free(TreeNode *node)
{
    if (!node)
        return;
    tree_free(node->key);
    g_free(node->text);
    if (node->children)
        g_ptr_array_unref(node->children);
    g_free(node);
}

static void free_child(gpointer node)
{
    tree_free(node);
}

guint tree_count(const TreeNode *node)
{
    return node->children ? node->children->len : 0;
}

const TreeNode *tree_at(const TreeNode *node, guint index)
{
    return g_ptr_array_index(node->children, index);
}

const TreeNode *tree_get(const TreeNode *node, const char *key)
{
    for (guint i = 0; node->kind == TREE_MAP && i < tree_count(node); i++)
        if (g_str_equal(tree_at(node, i)->key->text, key))
            return tree_at(node, i);
    return NULL;
}

static gboolean refuse(Reading *reading, yaml_mark_t mark, const char *sentence)
{
    faults_add(reading->faults, (guint)mark.line + 1, (guint)mark.column + 1, "%s", sentence);
    return FALSE;
}

// The character at a mark, as a byte; NUL at the end of the file.
static char character_at(const Reading *reading, yaml_mark_t mark)
{
    const char *at = reading->bytes, *end = at + reading->length;
    for (gsize i = 0; at < end && i < mark.index; i++)
        at = g_utf8_next_char(at);
    if (at >= end)
        return '\0';
    return *at;
}

// What libyaml says, in a builder's words. An entry fits when the problem contains its text and
// the character at the mark is its own ('\0': any).
static const struct {
    const char *problem;
    char character;
    const char *sentence;
} hints[] = {
    {"mapping values are not allowed", '\0',
     "there is a second `: ` in this line; put quotes round a text that has one, or begin a new "
     "line"},
    {"cannot start any token", '>', "a value cannot begin with >; write `at least`"},
    {"cannot start any token", '%', "a value cannot begin with %; write `percent`"},
    {"cannot start any token", '\0',
     "a value cannot begin with this character; put quotes round it"},
    {"expected comment or line break", '\0', "a value cannot begin with >; write `at least`"},
    {"indentation indicator", '\0', "a value cannot begin with >; write `at least`"},
    {"expected alphabetic or numeric character", '\0',
     "a value cannot begin with * or &; put quotes round it"},
    {"unknown directive", '\0', "a line cannot begin with %; write `percent`"},
    {"directive", '\0', "a line cannot begin with %; write `percent`"},
    {"could not find expected ':'", '\0',
     "this line has no `: `, so it says nothing about the lines around it; write `name: value` "
     "(a name has at most 1,024 characters)"},
    {"did not find expected ',' or '}'", '\0',
     "the bracket { opened before is not closed here; write , or }"},
    {"did not find expected ',' or ']'", '\0',
     "the bracket [ opened before is not closed here; write , or ]"},
    {"unexpected end of stream", '\0', "a quote is opened here and never closed; close it"},
    {"unexpected document indicator", '\0', "a quote is opened here and never closed; close it"},
    {"unknown escape character", '\0',
     "a backslash inside \" \" means something else; use ' ' quotes"},
    {"did not find expected key", '}', "this } closes no bracket; take it out"},
    {"did not find expected key", ']', "this ] closes no bracket; take it out"},
    {"did not find expected key", '\0',
     "this line is not in line with those above it, or a quote ends before the text does; check "
     "spaces and quotes"},
    {"did not find expected <document start>", '\0',
     "this line does not belong to anything above it; check the spaces it begins with"},
    {"did not find expected '-' indicator", '\0',
     "this line is not in line with the list above it; check the spaces it begins with"},
    {"block mapping", '\0', "a list or mapping cannot begin here; put it on its own line"},
    {"block sequence entries are not allowed", '\0',
     "a list cannot begin with - here; begin it on its own line"},
};

// Whether a `: ` stands in front of the mark in its own line.
static gboolean has_colon_before(const Reading *reading, yaml_mark_t mark)
{
    const char *end = reading->bytes;
    for (gsize i = 0; i < mark.index && *end; i++)
        end = g_utf8_next_char(end);
    const char *line = end;
    while (line > reading->bytes && line[-1] != '\n')
        line--;
    return g_strstr_len(line, end - line, ": ") != NULL;
}

// The sentence for a problem at a mark; NULL where libyaml's own words must do.
static const char *hint_for(const Reading *reading, const char *problem, yaml_mark_t mark)
{
    char character = character_at(reading, mark);
    if (mark.column > TREE_KEY_LENGTH && strstr(problem, "mapping values"))
        return "a name or formula has at most 1,024 characters; name its parts";
    if (strstr(problem, "mapping values") && !has_colon_before(reading, mark))
        return "this line goes on from the one above: that one has no `: `, or this one stands "
               "too deep; mend the colon there or the spaces here";
    for (gsize i = 0; i < G_N_ELEMENTS(hints); i++) {
        gboolean fits = !hints[i].character || hints[i].character == character;
        if (fits && strstr(problem, hints[i].problem))
            return hints[i].sentence;
    }
    return NULL;
}

// Where what is not closed was opened, if libyaml says so.
static yaml_mark_t opened_at(const yaml_parser_t *parser, const char *problem)
{
    gboolean quote = parser->context && strstr(parser->context, "quoted scalar") &&
                     g_str_has_prefix(problem, "found unexpected");
    return quote ? parser->context_mark : parser->problem_mark;
}

// Where a bracket that is not closed was opened: ` (line 6, column 10)`; "" in the last line, and
// of anything else. The caller frees.
static char *bracket_words(const Reading *reading)
{
    const yaml_parser_t *parser = &reading->parser;
    yaml_mark_t opened = parser->context_mark;
    gboolean bracket = parser->context && strstr(parser->context, "parsing a flow");
    gboolean last = !character_at(reading, parser->problem_mark) &&
                    opened.line + 1 >= parser->problem_mark.line;
    return bracket && !last
               ? g_strdup_printf(" (line %zu, column %zu)", opened.line + 1, opened.column + 1)
               : g_strdup("");
}

// Where the file is no YAML nothing else of it can be checked, which is said.
static void explain_problem(Reading *reading)
{
    const yaml_parser_t *parser = &reading->parser;
    const char *problem = parser->problem ? parser->problem : "the file cannot be read";
    yaml_mark_t mark = opened_at(parser, problem);
    g_autofree char *bracket = bracket_words(reading);
    const char *hint = hint_for(reading, problem, mark);
    g_autofree char *own =
        hint ? NULL
             : g_strdup_printf(
                   "the file cannot be read here: %s; check spaces, quotes and brackets", problem);
    faults_add(reading->faults, (guint)mark.line + 1, (guint)mark.column + 1,
               "%s%s (the rest of the file is checked once this is mended)", hint ? hint : own,
               bracket);
}

static TreeNode *innermost(const Reading *reading)
{
    guint depth = reading->open->len;
    return depth ? g_ptr_array_index(reading->open, depth - 1) : NULL;
}

// Takes the node as a key of the innermost mapping. A key given twice keeps the first.
static gboolean take_key(Reading *reading, TreeNode *node, yaml_mark_t mark)
{
    GHashTable *seen = g_ptr_array_index(reading->keys, reading->keys->len - 1);
    const TreeNode *first = g_hash_table_lookup(seen, node->text);
    reading->key = node;
    if (node->text[0] == '\0')
        return refuse(reading, mark, "a name is missing before the colon; write one");
    if (strchr(node->text, '\n'))
        return refuse(reading, mark, "a name stands on one line; take the line break out");
    if (first)
        faults_add(reading->faults, node->line, node->column,
                   "`%s` stands here for the second time (first in line %u); keep one of them",
                   node->text, first->line);
    else
        g_hash_table_insert(seen, node->text, node);
    return TRUE;
}

// Takes a finished or just opened node into the tree, which owns it from here on.
static gboolean place(Reading *reading, TreeNode *node, yaml_mark_t mark)
{
    TreeNode *parent = innermost(reading);
    if (parent && parent->kind == TREE_MAP && !reading->key && node->kind != TREE_SCALAR) {
        tree_free(node);
        return refuse(reading, mark, "a name cannot be a list or mapping; write words");
    }
    if (parent && parent->kind == TREE_MAP && !reading->key)
        return take_key(reading, node, mark);
    node->key = g_steal_pointer(&reading->key);
    if (parent)
        g_ptr_array_add(parent->children, node);
    else
        reading->top = node;
    return TRUE;
}

static TreeNode *node_new(TreeKind kind, yaml_mark_t mark)
{
    TreeNode *node = g_new0(TreeNode, 1);
    node->kind = kind;
    node->line = (guint)mark.line + 1;
    node->column = (guint)mark.column + 1;
    if (kind != TREE_SCALAR)
        node->children = g_ptr_array_new_with_free_func(free_child);
    return node;
}

static void remember_quoted(Reading *reading, const yaml_event_t *event)
{
    gsize span[2] = {event->start_mark.index, event->end_mark.index};
    g_array_append_vals(reading->quoted, span, 2);
}

// An escape such as \0 brings in what surface_check keeps out.
static gboolean has_hidden(const yaml_event_t *event)
{
    const char *text = (const char *)event->data.scalar.value;
    for (const char *at = text; *at; at = g_utf8_next_char(at))
        if (*at != '\n' && surface_is_hidden(g_utf8_get_char(at)))
            return TRUE;
    return strlen(text) != event->data.scalar.length;
}

static gboolean take_scalar(Reading *reading, const yaml_event_t *event)
{
    yaml_scalar_style_t style = event->data.scalar.style;
    gboolean block = style == YAML_FOLDED_SCALAR_STYLE || style == YAML_LITERAL_SCALAR_STYLE;
    if (has_hidden(event))
        return refuse(reading, event->start_mark,
                      "there is a hidden character in this text; take it out");
    TreeNode *node = node_new(TREE_SCALAR, event->start_mark);
    node->text = g_strdup((const char *)event->data.scalar.value);
    node->quoted = style != YAML_PLAIN_SCALAR_STYLE;
    if (node->quoted)
        remember_quoted(reading, event);
    if (node->quoted && !block)
        node->column++;
    if (block)
        g_strchomp(node->text);
    if (!block || node->text[0] != '\0')
        return place(reading, node, event->start_mark);
    tree_free(node);
    return refuse(reading, event->start_mark,
                  "a value cannot begin with > or |; write `at least`, or the text on the lines "
                  "below");
}

static gboolean begin_branch(Reading *reading, TreeKind kind, gboolean flow,
                             const yaml_event_t *event)
{
    if (reading->open->len == TREE_LEVELS)
        return refuse(reading, event->start_mark,
                      "there are more than 16 levels here; a plan has no more than about 8");
    TreeNode *node = node_new(kind, event->start_mark);
    node->flow = flow;
    if (!place(reading, node, event->start_mark))
        return FALSE;
    g_ptr_array_add(reading->open, node);
    g_ptr_array_add(reading->keys,
                    kind == TREE_MAP ? g_hash_table_new(g_str_hash, g_str_equal) : NULL);
    return TRUE;
}

// A key given twice is already a fault; its second value is dropped so that looking up by name
// finds one.
static void drop_repeated(TreeNode *node)
{
    g_autoptr(GHashTable) seen = g_hash_table_new(g_str_hash, g_str_equal);
    for (guint i = 0; i < node->children->len;) {
        const TreeNode *child = g_ptr_array_index(node->children, i);
        if (!g_hash_table_contains(seen, child->key->text)) {
            g_hash_table_add(seen, child->key->text);
            i++;
        } else {
            g_ptr_array_remove_index(node->children, i);
        }
    }
}

static void end_branch(Reading *reading)
{
    TreeNode *node = innermost(reading);
    if (node->kind == TREE_MAP)
        drop_repeated(node);
    g_ptr_array_remove_index(reading->open, reading->open->len - 1);
    g_ptr_array_remove_index(reading->keys, reading->keys->len - 1);
}

static const yaml_char_t *anchor_of(const yaml_event_t *event)
{
    switch (event->type) {
    case YAML_SCALAR_EVENT:
        return event->data.scalar.anchor;
    case YAML_SEQUENCE_START_EVENT:
        return event->data.sequence_start.anchor;
    case YAML_MAPPING_START_EVENT:
        return event->data.mapping_start.anchor;
    default:
        return NULL;
    }
}

static const yaml_char_t *tag_of(const yaml_event_t *event)
{
    switch (event->type) {
    case YAML_SCALAR_EVENT:
        return event->data.scalar.tag;
    case YAML_SEQUENCE_START_EVENT:
        return event->data.sequence_start.tag;
    case YAML_MAPPING_START_EVENT:
        return event->data.mapping_start.tag;
    default:
        return NULL;
    }
}

// What YAML offers and a plan does not take.
static gboolean is_taken(Reading *reading, const yaml_event_t *event)
{
    if (event->type == YAML_ALIAS_EVENT)
        return refuse(reading, event->start_mark,
                      "a value cannot begin with * (a reference of YAML); put quotes round it");
    if (anchor_of(event))
        return refuse(reading, event->start_mark,
                      "a value cannot begin with & (a mark of YAML); put quotes round it");
    if (tag_of(event))
        return refuse(reading, event->start_mark,
                      "a value cannot begin with ! (a type of YAML); put quotes round it");
    if (event->type == YAML_DOCUMENT_START_EVENT && reading->top)
        return refuse(reading, event->start_mark,
                      "a second document begins here; one file holds one plan");
    return TRUE;
}

static gboolean take_event(Reading *reading, const yaml_event_t *event)
{
    if (!is_taken(reading, event))
        return FALSE;
    if (reading->nodes > TREE_NODES)
        return refuse(reading, event->start_mark,
                      "there are more than 100,000 entries in this file, so it is no plan");
    switch (event->type) {
    case YAML_SCALAR_EVENT:
        reading->nodes++;
        return take_scalar(reading, event);
    case YAML_SEQUENCE_START_EVENT:
        reading->nodes++;
        return begin_branch(reading, TREE_LIST,
                            event->data.sequence_start.style == YAML_FLOW_SEQUENCE_STYLE, event);
    case YAML_MAPPING_START_EVENT:
        reading->nodes++;
        return begin_branch(reading, TREE_MAP,
                            event->data.mapping_start.style == YAML_FLOW_MAPPING_STYLE, event);
    case YAML_SEQUENCE_END_EVENT:
    case YAML_MAPPING_END_EVENT:
        end_branch(reading);
        return TRUE;
    default:
        return TRUE;
    }
}

static gboolean take_events(Reading *reading)
{
    for (;;) {
        yaml_event_t event;
        if (!yaml_parser_parse(&reading->parser, &event)) {
            explain_problem(reading);
            return FALSE;
        }
        gboolean ended = event.type == YAML_STREAM_END_EVENT;
        gboolean good = take_event(reading, &event);
        yaml_event_delete(&event);
        if (!good || ended)
            return good;
    }
}

static void free_keys(gpointer keys)
{
    if (keys)
        g_hash_table_unref(keys);
}

static Reading reading_begin(const char *bytes, gsize length, Faults *faults)
{
    return (Reading){
        .bytes = bytes,
        .length = length,
        .open = g_ptr_array_new(),
        .keys = g_ptr_array_new_with_free_func(free_keys),
        .quoted = g_array_new(FALSE, FALSE, sizeof(gsize)),
        .faults = faults,
    };
}

static void reading_end(Reading *reading)
{
    yaml_parser_delete(&reading->parser);
    tree_free(reading->key);
    g_ptr_array_unref(reading->open);
    g_ptr_array_unref(reading->keys);
    g_array_unref(reading->quoted);
}

TreeNode *tree_read(const char *bytes, gsize length, Faults *faults)
{
    static const char byte_order_mark[] = "\xEF\xBB\xBF";
    if (length >= 3 && memcmp(bytes, byte_order_mark, 3) == 0) {
        bytes += 3;
        length -= 3;
    }
    if (length == 0)
        bytes = ""; // of an empty file there may be no bytes at all, which libyaml will not have
    if (!surface_check(bytes, length, faults))
        return NULL;
    Reading reading = reading_begin(bytes, length, faults);
    if (!yaml_parser_initialize(&reading.parser))
        g_error("out of memory");
    yaml_parser_set_input_string(&reading.parser, (const guchar *)bytes, length);
    yaml_parser_set_encoding(&reading.parser, YAML_UTF8_ENCODING);
    gboolean good = take_events(&reading);
    if (good)
        surface_find_comments(bytes, length, reading.quoted, faults);
    if (good && !reading.top)
        faults_add(faults, 1, 1, "the file is empty; a plan begins with `plan: NAME`");
    if (!good)
        g_clear_pointer(&reading.top, tree_free);
    TreeNode *top = reading.top;
    reading_end(&reading);
    return top;
}
