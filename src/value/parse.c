#include "node.h"
#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <string.h>

// The parser of formulas: one function per rule of the grammar, one character of lookahead.
typedef struct {
    const char *text;
    const char *at;
    gsize before; // characters that stand before `text` in what offsets count from
    guint depth;  // open brackets
    guint doubts; // ± so far
    gsize *offset;
    GError **error;
} Parser;

static Node *parse_sum(Parser *parser);

static gsize offset_of(const Parser *parser, const char *at)
{
    return parser->before + (gsize)g_utf8_pointer_to_offset(parser->text, at);
}

// Always NULL, so that a rule can return it. Takes `message` over.
static Node *refuse(const Parser *parser, const char *at, char *message)
{
    if (parser->offset) {
        *parser->offset = offset_of(parser, at);
    }
    g_set_error_literal(parser->error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE, message);
    g_free(message);
    return NULL;
}

static void skip_blanks(Parser *parser)
{
    parser->at += strspn(parser->at, " \t");
}

static gboolean skip(Parser *parser, const char *mark)
{
    skip_blanks(parser);
    gboolean there = g_str_has_prefix(parser->at, mark);
    parser->at += there ? strlen(mark) : 0;
    return there;
}

static gboolean letter_at(const char *at)
{
    return g_unichar_isalpha(g_utf8_get_char(at));
}

// The length of the word at `at`: letters, digits, apostrophes, and a hyphen with one of the first
// two right behind it. 0 if no letter starts one.
static gsize word_length(const char *at)
{
    if (!letter_at(at)) {
        return 0;
    }
    const char *end = at;
    for (;;) {
        gunichar letter = g_utf8_get_char(end);
        const char *next = *end ? g_utf8_next_char(end) : end;
        gboolean tight = letter == '-' && g_unichar_isalnum(g_utf8_get_char(next));
        if (!g_unichar_isalnum(letter) && letter != '\'' && letter != 0x2019 && !tight) {
            return (gsize)(end - at);
        }
        end = next;
    }
}

static gboolean word_is(const char *at, const char *word)
{
    return word_length(at) == strlen(word) && g_str_has_prefix(at, word);
}

static char *character_at(const char *at)
{
    gsize length = (gsize)(g_utf8_next_char(at) - at);
    g_autofree char *one = g_strndup(at, length);
    return text_clean(one, -1);
}

// What stands where an operator, a bracket or the end was due.
static Node *refuse_rest(const Parser *parser)
{
    const char *at = parser->at;
    if (*at == '\0') {
        return refuse(parser, at, g_strdup("a `)` or `]` is missing at the end"));
    }
    g_autofree char *one = character_at(at);
    if (*at == '-' || g_str_has_prefix(at, "−")) {
        return refuse(parser, at, g_strdup("a minus has spaces round it; write ` - ` to subtract"));
    }
    if (letter_at(at) || g_ascii_isdigit(*at) || *at == '(') {
        return refuse(parser, at,
                      g_strdup("two values stand side by side; put `+`, `-`, `*` or `/` between "
                               "them"));
    }
    if (*at == ')' || *at == ']') {
        return refuse(parser, at, g_strdup_printf("this `%s` closes nothing; take it out", one));
    }
    return refuse(parser, at,
                  g_strdup_printf("`%s` cannot stand here; write `+`, `-`, `*` or `/`", one));
}

static gboolean open_bracket(Parser *parser)
{
    if (++parser->depth <= FORMULA_DEPTH) {
        return TRUE;
    }
    refuse(parser, parser->at,
           g_strdup_printf("more than %d brackets stand inside one another; name the parts of a "
                           "long formula",
                           FORMULA_DEPTH));
    return FALSE;
}

static gboolean close_bracket(Parser *parser, const char *mark)
{
    parser->depth--;
    if (skip(parser, mark)) {
        return TRUE;
    }
    refuse_rest(parser);
    return FALSE;
}

static gboolean scan(Parser *parser, NumberTyped *typed)
{
    skip_blanks(parser);
    gsize fault = 0;
    if (!number_scan(parser->at, typed, &fault, parser->error)) {
        if (parser->offset) {
            *parser->offset = offset_of(parser, parser->at + fault);
        }
        return FALSE;
    }
    parser->at += typed->length;
    return TRUE;
}

static gboolean read_unit(Parser *parser, Node *node)
{
    skip_blanks(parser);
    gsize span = word_is(parser->at, "over") ? 0 : unit_span(parser->at);
    if (span == 0) {
        return TRUE;
    }
    g_autofree char *text = g_strndup(parser->at, span);
    g_autoptr(GError) fault = NULL;
    node->unit = unit_parse(text, &fault);
    if (node->unit == NULL) {
        refuse(parser, parser->at,
               g_strdup_printf("%s (before a name, put an operator with spaces)", fault->message));
        return FALSE;
    }
    parser->at += span;
    skip_blanks(parser);
    if (letter_at(parser->at) && !word_is(parser->at, "over")) {
        refuse(parser, parser->at,
               g_strdup_printf("two words stand behind a number; `%s` is its unit, so put an "
                               "operator before the next",
                               text));
        return FALSE;
    }
    return TRUE;
}

static gboolean read_doubt(Parser *parser, Node *node)
{
    if (!skip(parser, "±") && !skip(parser, "+/-")) {
        return TRUE;
    }
    NumberTyped typed;
    if (!scan(parser, &typed)) {
        return FALSE;
    }
    node->doubt = number_copy(typed.value);
    node->doubt_index = parser->doubts++;
    node->decimals = MAX(node->decimals, typed.decimals);
    number_typed_clear(&typed);
    return TRUE;
}

// quantity = number [ "±" number ] [ unit ]
static Node *parse_quantity(Parser *parser)
{
    g_autoptr(Node) node = node_new(NODE_NUMBER, offset_of(parser, parser->at));
    NumberTyped typed;
    if (!scan(parser, &typed)) {
        return NULL;
    }
    node->number = number_copy(typed.value);
    node->decimals = typed.decimals;
    number_typed_clear(&typed);
    return read_doubt(parser, node) && read_unit(parser, node) ? g_steal_pointer(&node) : NULL;
}

// The words up to one of `ends`, blanks run together; "" if there are none, or something else.
static char *read_words(Parser *parser, const char *ends, const char *signs)
{
    skip_blanks(parser);
    const char *start = parser->at;
    while (*parser->at && strchr(ends, *parser->at) == NULL) {
        gunichar letter = g_utf8_get_char(parser->at);
        gboolean word = g_unichar_isalnum(letter) || letter == ' ' || letter == '\'';
        if (!word && g_utf8_strchr(signs, -1, letter) == NULL) {
            return g_strdup("");
        }
        parser->at = g_utf8_next_char(parser->at);
    }
    g_autofree char *raw = g_strndup(start, (gsize)(parser->at - start));
    GString *words = g_string_new(NULL);
    g_auto(GStrv) parts = g_strsplit(raw, " ", -1);
    for (gsize i = 0; parts[i]; i++) {
        if (*parts[i]) {
            g_string_append_printf(words, "%s%s", words->len ? " " : "", parts[i]);
        }
    }
    return g_string_free(words, FALSE);
}

// One or more words with commas between, up to `end`, which is left standing.
static gboolean read_list(Parser *parser, Node *node, const char *ends, const char *signs,
                          const char *what)
{
    do {
        skip_blanks(parser);
        const char *start = parser->at;
        char *words = read_words(parser, ends, signs);
        if (*words == '\0') {
            g_free(words);
            refuse(parser, parser->at, g_strdup(what));
            return FALSE;
        }
        node_add_word(node, words, offset_of(parser, start));
    } while (skip(parser, ","));
    return TRUE;
}

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
    if (!open_bracket(parser)) {
        return FALSE;
    }
    do {
        Node *argument = parse_sum(parser);
        if (argument == NULL) {
            return FALSE;
        }
        node_add(node, argument);
    } while (skip(parser, ","));
    skip_blanks(parser);
    if (word_is(parser->at, "over")) {
        if (node_inner_count(node) > 1 || node->form != NODE_FOLD) {
            refuse(parser, parser->at,
                   g_strdup("`over` folds the axes of one value; use min, max, mean, range or sum "
                            "of one value"));
            return FALSE;
        }
        parser->at += strlen("over");
        if (!read_list(parser, node, ",)", "-/", "behind `over` stands the name of an axis")) {
            return FALSE;
        }
    }
    return close_bracket(parser, ")");
}

static Node *parse_call(Parser *parser, const char *start, const char *name)
{
    for (gsize i = 0; i < G_N_ELEMENTS(FUNCTIONS); i++) {
        if (strcmp(FUNCTIONS[i].name, name) != 0) {
            continue;
        }
        g_autoptr(Node) node = node_new(FUNCTIONS[i].form, offset_of(parser, start));
        node->fold = FUNCTIONS[i].fold;
        if (!parse_arguments(parser, node)) {
            return NULL;
        }
        if (node->form != NODE_FOLD && node_inner_count(node) > 1) {
            return refuse(parser, start, g_strdup_printf("`%s` takes one value", name));
        }
        return g_steal_pointer(&node);
    }
    return refuse(parser, start,
                  g_strdup_printf("there is no function `%s`; the functions are min, max, mean, "
                                  "range, sum, abs and sqrt, and a product needs `*`",
                                  name));
}

// name = word { word }, a function before `(`, or pi
static Node *parse_name(Parser *parser)
{
    const char *start = parser->at;
    g_autoptr(GString) name = g_string_new(NULL);
    while (letter_at(parser->at) && !word_is(parser->at, "over")) {
        gsize length = word_length(parser->at);
        g_string_append(name, name->len ? " " : "");
        g_string_append_len(name, parser->at, (gssize)length);
        parser->at += length;
        skip_blanks(parser);
    }
    if (name->len == 0) {
        return refuse(parser, start,
                      g_strdup("`over` is no name; it stands before the axes of a "
                               "fold, as in `max(x over height)`"));
    }
    if (skip(parser, "(")) {
        return parse_call(parser, start, name->str);
    }
    gboolean pi = strcmp(name->str, "pi") == 0;
    Node *node = node_new(pi ? NODE_PI : NODE_NAME, offset_of(parser, start));
    node->name = pi ? NULL : g_strdup(name->str);
    return node;
}

static Node *parse_group(Parser *parser)
{
    if (!open_bracket(parser)) {
        return NULL;
    }
    g_autoptr(Node) node = parse_sum(parser);
    return node && close_bracket(parser, ")") ? g_steal_pointer(&node) : NULL;
}

static Node *parse_primary(Parser *parser)
{
    skip_blanks(parser);
    if (skip(parser, "(")) {
        return parse_group(parser);
    }
    if (g_ascii_isdigit(*parser->at) || *parser->at == '.') {
        return parse_quantity(parser);
    }
    if (letter_at(parser->at)) {
        return parse_name(parser);
    }
    if (*parser->at == '\0') {
        return refuse(parser, parser->at, g_strdup("a value is missing at the end"));
    }
    g_autofree char *one = character_at(parser->at);
    return refuse(
        parser, parser->at,
        g_strdup_printf("a value is missing before `%s`; write a name, a number or `(`", one));
}

// postfix = primary { "[" pick { "," pick } "]" }
static Node *parse_postfix(Parser *parser)
{
    g_autoptr(Node) node = parse_primary(parser);
    while (node && skip(parser, "[")) {
        Node *pick = node_new(NODE_PICK, node->offset);
        node_add(pick, g_steal_pointer(&node));
        node = pick;
        parser->depth++;
        if (!read_list(parser, node, ",]", "+-−/",
                       "inside `[ ]` stands a place, as in `[T, mid]`") ||
            !close_bracket(parser, "]")) {
            return NULL;
        }
    }
    return g_steal_pointer(&node);
}

// The exponent behind a value: 1 if there is none, 100 for a fault.
static gint parse_exponent(Parser *parser)
{
    if (skip(parser, "²")) {
        return 2;
    }
    if (skip(parser, "³")) {
        return 3;
    }
    if (!skip(parser, "^")) {
        return 1;
    }
    gint sign = skip(parser, "-") || skip(parser, "−") ? -1 : 1;
    skip_blanks(parser);
    if (!g_ascii_isdigit(parser->at[0]) || g_ascii_isdigit(parser->at[1]) || parser->at[1] == '.') {
        refuse(parser, parser->at, g_strdup("a power is one whole digit, as in `x^3`"));
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

static Node *parse_unary(Parser *parser)
{
    skip_blanks(parser);
    const char *start = parser->at;
    if (!skip(parser, "-") && !skip(parser, "−")) {
        return parse_power(parser);
    }
    Node *inner = parse_power(parser);
    if (inner == NULL) {
        return NULL;
    }
    Node *node = node_new(NODE_NEGATE, offset_of(parser, start));
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
        if (skip(parser, one->mark)) {
            return one;
        }
    }
    return NULL;
}

static Node *parse_chain(Parser *parser, Node *(*operand)(Parser *), const Operator *operators)
{
    g_autoptr(Node) left = operand(parser);
    const Operator *found = left ? read_operator(parser, operators) : NULL;
    while (found) {
        Node *right = operand(parser);
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
        refuse(parser, end, g_strdup("this is not UTF-8; type it again"));
        return FALSE;
    }
    if (g_utf8_strlen(parser->text, -1) <= FORMULA_LENGTH) {
        return TRUE;
    }
    refuse(parser, g_utf8_offset_to_pointer(parser->text, FORMULA_LENGTH),
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
    if (root == NULL) {
        return NULL;
    }
    skip_blanks(&parser);
    if (*parser.at) {
        return refuse_rest(&parser);
    }
    *doubts = parser.doubts;
    return g_steal_pointer(&root);
}
