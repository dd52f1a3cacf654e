#include "parser.h"
#include <string.h>

// One function per rule of the grammar, one character of lookahead.
static Node *parse_sum(Parser *parser);

static const struct {
    const char *name;
    NodeForm form;
    Fold fold;
} FUNCTIONS[] = {
    {"min", NODE_FOLD, FOLD_MIN},     {"max", NODE_FOLD, FOLD_MAX}, {"mean", NODE_FOLD, FOLD_MEAN},
    {"range", NODE_FOLD, FOLD_RANGE}, {"sum", NODE_FOLD, FOLD_SUM}, {"abs", NODE_ABS, FOLD_MIN},
    {"sqrt", NODE_SQRT, FOLD_MIN},
};

// The arguments and the axes behind `over`, from behind the `(` to behind the `)`.
static gboolean parse_arguments(Parser *parser, Node *node)
{
    if (!parser_open(parser)) {
        return FALSE;
    }
    do {
        Node *argument = parse_sum(parser);
        if (argument == NULL) {
            return FALSE;
        }
        node_add(node, argument);
    } while (parser_skip(parser, ","));
    parser_skip_blanks(parser);
    if (parser_word_is(parser->at, "over")) {
        if (node_inner_count(node) > 1 || node->form != NODE_FOLD) {
            parser_refuse(
                parser, parser->at,
                g_strdup("`over` folds the axes of one value; use min, max, mean, range or sum "
                         "of one value"));
            return FALSE;
        }
        parser->at += strlen("over");
        if (!parser_list(parser, node, ",)", "-/", "behind `over` stands the name of an axis")) {
            return FALSE;
        }
    }
    return parser_close(parser, ")");
}

static Node *parse_call(Parser *parser, const char *start, const char *name)
{
    for (gsize i = 0; i < G_N_ELEMENTS(FUNCTIONS); i++) {
        if (strcmp(FUNCTIONS[i].name, name) != 0) {
            continue;
        }
        g_autoptr(Node) node = node_new(FUNCTIONS[i].form, parser_offset(parser, start));
        node->fold = FUNCTIONS[i].fold;
        if (!parse_arguments(parser, node)) {
            return NULL;
        }
        if (node->form != NODE_FOLD && node_inner_count(node) > 1) {
            return parser_refuse(parser, start, g_strdup_printf("`%s` takes one value", name));
        }
        return g_steal_pointer(&node);
    }
    if (trade_is_function(name)) {
        g_autoptr(Node) call = node_new(NODE_TRADE, parser_offset(parser, start));
        return parse_arguments(parser, call)
                   ? parse_trade(parser, start, name, g_steal_pointer(&call))
                   : NULL;
    }
    return parser_refuse(
        parser, start,
        g_strdup_printf("there is no function `%s`; the functions are min, max, mean, "
                        "range, sum, abs and sqrt, those of the trade stand in "
                        "standbook-plan(5), and a product needs `*`",
                        name));
}

// name = word { word }, a function before `(`, or pi
static Node *parse_name(Parser *parser)
{
    const char *start = parser->at;
    g_autoptr(GString) name = g_string_new(NULL);
    while (parser_letter_at(parser->at) && !parser_word_is(parser->at, "over")) {
        gsize length = parser_word_length(parser->at);
        g_string_append(name, name->len ? " " : "");
        g_string_append_len(name, parser->at, (gssize)length);
        parser->at += length;
        parser_skip_blanks(parser);
    }
    if (name->len == 0) {
        return parser_refuse(parser, start,
                             g_strdup("`over` is no name; it stands before the axes of a "
                                      "fold, as in `max(x over height)`"));
    }
    if (parser_skip(parser, "(")) {
        return parse_call(parser, start, name->str);
    }
    gboolean pi = strcmp(name->str, "pi") == 0;
    Node *node = node_new(pi ? NODE_PI : NODE_NAME, parser_offset(parser, start));
    node->name = pi ? NULL : g_strdup(name->str);
    return node;
}

static Node *parse_group(Parser *parser)
{
    if (!parser_open(parser)) {
        return NULL;
    }
    g_autoptr(Node) node = parse_sum(parser);
    return node && parser_close(parser, ")") ? g_steal_pointer(&node) : NULL;
}

static Node *parse_primary(Parser *parser)
{
    parser_skip_blanks(parser);
    if (parser_skip(parser, "(")) {
        return parse_group(parser);
    }
    if (g_ascii_isdigit(*parser->at) || *parser->at == '.') {
        return parser_quantity(parser);
    }
    if (parser_letter_at(parser->at)) {
        return parse_name(parser);
    }
    if (*parser->at == '\0') {
        return parser_refuse(parser, parser->at, g_strdup("a value is missing at the end"));
    }
    g_autofree char *one = parser_character_at(parser->at);
    return parser_refuse(
        parser, parser->at,
        g_strdup_printf("a value is missing before `%s`; write a name, a number or `(`", one));
}

// postfix = primary { "[" pick { "," pick } "]" }
static Node *parse_postfix(Parser *parser)
{
    g_autoptr(Node) node = parse_primary(parser);
    while (node && parser_skip(parser, "[")) {
        Node *pick = node_new(NODE_PICK, node->offset);
        node_add(pick, g_steal_pointer(&node));
        node = pick;
        parser->depth++;
        if (!parser_list(parser, node, ",]", "+-−/",
                         "inside `[ ]` stands a place, as in `[T, mid]`") ||
            !parser_close(parser, "]")) {
            return NULL;
        }
    }
    return g_steal_pointer(&node);
}

// The exponent behind a value: 1 if there is none, 100 for a fault.
static gint parse_exponent(Parser *parser)
{
    if (parser_skip(parser, "²")) {
        return 2;
    }
    if (parser_skip(parser, "³")) {
        return 3;
    }
    if (!parser_skip(parser, "^")) {
        return 1;
    }
    gint sign = parser_skip(parser, "-") || parser_skip(parser, "−") ? -1 : 1;
    parser_skip_blanks(parser);
    if (!g_ascii_isdigit(parser->at[0]) || g_ascii_isdigit(parser->at[1]) || parser->at[1] == '.') {
        parser_refuse(parser, parser->at, g_strdup("a power is one whole digit, as in `x^3`"));
        return 100;
    }
    return sign * (*parser->at++ - '0');
}

static Node *parse_power(Parser *parser)
{
    g_autoptr(Node) base = parse_postfix(parser);
    gint exponent = base ? parse_exponent(parser) : 100;
    if (exponent == 100) {
        return NULL;
    }
    if (exponent == 1) {
        return g_steal_pointer(&base);
    }
    Node *node = node_new(NODE_POWER, base->offset);
    node->exponent = exponent;
    node_add(node, g_steal_pointer(&base));
    return node;
}

// The sign of a number is its own: `-5 °C` is five below zero, not 278.15 K taken away from nothing.
static Node *number_below_zero(Node *number)
{
    Number *opposite = number_negate(number->number);
    number_free(number->number);
    number->number = opposite;
    return number;
}

static Node *parse_unary(Parser *parser)
{
    parser_skip_blanks(parser);
    const char *start = parser->at;
    if (!parser_skip(parser, "-") && !parser_skip(parser, "−")) {
        return parse_power(parser);
    }
    Node *inner = parse_power(parser);
    if (inner == NULL || inner->form == NODE_NUMBER) {
        return inner ? number_below_zero(inner) : NULL;
    }
    Node *node = node_new(NODE_NEGATE, parser_offset(parser, start));
    node_add(node, inner);
    return node;
}

typedef struct {
    const char *mark;
    ArrayOperation operation;
} Operator;

static const Operator PRODUCTS[] = {
    {"*", ARRAY_MULTIPLY}, {"×", ARRAY_MULTIPLY}, {"/", ARRAY_DIVIDE}, {"÷", ARRAY_DIVIDE}, {NULL}};
static const Operator SUMS[] = {
    {"+", ARRAY_ADD}, {"-", ARRAY_SUBTRACT}, {"−", ARRAY_SUBTRACT}, {NULL}};

// A hyphen with no blank on either side is a minus only behind `)` and `]`.
static gboolean tight_minus(const Parser *parser)
{
    const char *at = parser->at;
    return *at == '-' && at > parser->text && strchr(" \t)]", at[-1]) == NULL && at[1] != ' ';
}

static const Operator *read_operator(Parser *parser, const Operator *operators)
{
    if (tight_minus(parser)) {
        return NULL;
    }
    for (const Operator *one = operators; one->mark; one++) {
        if (parser_skip(parser, one->mark)) {
            return one;
        }
    }
    return NULL;
}

// An operand keeps what was written of it.
static Node *parse_operand(Parser *parser, Node *(*operand)(Parser *))
{
    parser_skip_blanks(parser);
    const char *start = parser->at;
    Node *node = operand(parser);
    if (node == NULL) {
        return NULL;
    }
    g_free(node->text);
    node->text = g_strchomp(g_strndup(start, (gsize)(parser->at - start)));
    return node;
}

static Node *parse_chain(Parser *parser, Node *(*operand)(Parser *), const Operator *operators)
{
    g_autoptr(Node) left = parse_operand(parser, operand);
    const Operator *found = left ? read_operator(parser, operators) : NULL;
    while (found) {
        Node *right = parse_operand(parser, operand);
        if (right == NULL) {
            return NULL;
        }
        Node *node = node_new(NODE_BINARY, left->offset);
        node->operation = found->operation;
        node_add(node, g_steal_pointer(&left));
        node_add(node, right);
        left = node;
        found = read_operator(parser, operators);
    }
    return g_steal_pointer(&left);
}

static Node *parse_product(Parser *parser)
{
    return parse_chain(parser, parse_unary, PRODUCTS);
}

static Node *parse_sum(Parser *parser)
{
    return parse_chain(parser, parse_product, SUMS);
}

static gboolean check_text(Parser *parser)
{
    const char *end = parser->text;
    if (!g_utf8_validate(parser->text, -1, &end)) {
        parser_refuse(parser, end, g_strdup("this is not UTF-8; type it again"));
        return FALSE;
    }
    if (g_utf8_strlen(parser->text, -1) <= FORMULA_LENGTH) {
        return TRUE;
    }
    parser_refuse(
        parser, g_utf8_offset_to_pointer(parser->text, FORMULA_LENGTH),
        g_strdup_printf("a formula has at most %d characters; name the parts of a long formula",
                        FORMULA_LENGTH));
    return FALSE;
}

Node *parse_formula(const char *text, gsize before, guint *doubts, gsize *offset, GError **error)
{
    Parser parser = {.text = text, .at = text, .before = before, .offset = offset, .error = error};
    if (!check_text(&parser)) {
        return NULL;
    }
    g_autoptr(Node) root = parse_sum(&parser);
    g_clear_pointer(&parser.materials, g_array_unref);
    if (root == NULL) {
        return NULL;
    }
    parser_skip_blanks(&parser);
    if (*parser.at) {
        return parser_refuse_rest(&parser);
    }
    *doubts = parser.doubts;
    return g_steal_pointer(&root);
}
