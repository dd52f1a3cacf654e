#include "parser.h"
#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <string.h>

gsize parser_offset(const Parser *parser, const char *at)
{
    return parser->before + (gsize)g_utf8_pointer_to_offset(parser->text, at);
}

Node *parser_refuse(const Parser *parser, const char *at, char *message)
{
    return parser_refuse_at(parser, parser_offset(parser, at), message);
}

Node *parser_refuse_at(const Parser *parser, gsize offset, char *message)
{
    if (parser->offset) {
        *parser->offset = offset;
    }
    g_set_error_literal(parser->error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE, message);
    g_free(message);
    return NULL;
}

void parser_skip_blanks(Parser *parser)
{
    parser->at += strspn(parser->at, " \t");
}

gboolean parser_skip(Parser *parser, const char *mark)
{
    parser_skip_blanks(parser);
    gboolean there = g_str_has_prefix(parser->at, mark);
    parser->at += there ? strlen(mark) : 0;
    return there;
}

gboolean parser_letter_at(const char *at)
{
    return g_unichar_isalpha(g_utf8_get_char(at));
}

gsize parser_word_length(const char *at)
{
    if (!parser_letter_at(at)) {
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

gboolean parser_word_is(const char *at, const char *word)
{
    return parser_word_length(at) == strlen(word) && g_str_has_prefix(at, word);
}

char *parser_character_at(const char *at)
{
    gsize length = (gsize)(g_utf8_next_char(at) - at);
    g_autofree char *one = g_strndup(at, length);
    return text_clean(one, -1);
}

Node *parser_refuse_rest(const Parser *parser)
{
    const char *at = parser->at;
    if (*at == '\0') {
        return parser_refuse(parser, at, g_strdup("a `)` or `]` is missing at the end"));
    }
    g_autofree char *one = parser_character_at(at);
    if (*at == '-' || g_str_has_prefix(at, "−")) {
        return parser_refuse(parser, at,
                             g_strdup("a minus has spaces round it; write ` - ` to subtract"));
    }
    if (parser_letter_at(at) || g_ascii_isdigit(*at) || *at == '(') {
        return parser_refuse(
            parser, at,
            g_strdup("two values stand side by side; put `+`, `-`, `*` or `/` between "
                     "them"));
    }
    if (*at == ')' || *at == ']') {
        return parser_refuse(parser, at,
                             g_strdup_printf("this `%s` closes nothing; take it out", one));
    }
    return parser_refuse(
        parser, at, g_strdup_printf("`%s` cannot stand here; write `+`, `-`, `*` or `/`", one));
}

gboolean parser_open(Parser *parser)
{
    if (++parser->depth <= FORMULA_DEPTH) {
        return TRUE;
    }
    parser_refuse(
        parser, parser->at,
        g_strdup_printf("more than %d brackets stand inside one another; name the parts of a "
                        "long formula",
                        FORMULA_DEPTH));
    return FALSE;
}

gboolean parser_close(Parser *parser, const char *mark)
{
    parser->depth--;
    if (parser_skip(parser, mark)) {
        return TRUE;
    }
    parser_refuse_rest(parser);
    return FALSE;
}

static gboolean scan(Parser *parser, NumberTyped *typed)
{
    parser_skip_blanks(parser);
    gsize fault = 0;
    if (!number_scan(parser->at, typed, &fault, parser->error)) {
        if (parser->offset) {
            *parser->offset = parser_offset(parser, parser->at + fault);
        }
        return FALSE;
    }
    parser->at += typed->length;
    return TRUE;
}

static gboolean read_unit(Parser *parser, Node *node)
{
    parser_skip_blanks(parser);
    gsize span = parser_word_is(parser->at, "over") ? 0 : unit_span(parser->at);
    if (span == 0) {
        return TRUE;
    }
    g_autofree char *text = g_strndup(parser->at, span);
    g_autoptr(GError) fault = NULL;
    node->unit = unit_parse(text, &fault);
    if (node->unit == NULL) {
        parser_refuse(
            parser, parser->at,
            g_strdup_printf("%s (before a name, put an operator with spaces)", fault->message));
        return FALSE;
    }
    parser->at += span;
    parser_skip_blanks(parser);
    if (parser_letter_at(parser->at) && !parser_word_is(parser->at, "over")) {
        parser_refuse(
            parser, parser->at,
            g_strdup_printf("two words stand behind a number; `%s` is its unit, so put an "
                            "operator before the next",
                            text));
        return FALSE;
    }
    return TRUE;
}

static gboolean read_doubt(Parser *parser, Node *node)
{
    if (!parser_skip(parser, "±") && !parser_skip(parser, "+/-")) {
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

Node *parser_quantity(Parser *parser)
{
    g_autoptr(Node) node = node_new(NODE_NUMBER, parser_offset(parser, parser->at));
    NumberTyped typed;
    if (!scan(parser, &typed)) {
        return NULL;
    }
    node->number = number_copy(typed.value);
    node->place = number_copy(typed.place);
    node->decimals = typed.decimals;
    number_typed_clear(&typed);
    return read_doubt(parser, node) && read_unit(parser, node) ? g_steal_pointer(&node) : NULL;
}

// The words up to one of `ends`, blanks run together; "" if there are none, or something else.
static char *read_words(Parser *parser, const char *ends, const char *signs)
{
    parser_skip_blanks(parser);
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

gboolean parser_list(Parser *parser, Node *node, const char *ends, const char *signs,
                     const char *what)
{
    do {
        parser_skip_blanks(parser);
        const char *start = parser->at;
        char *words = read_words(parser, ends, signs);
        if (*words == '\0') {
            g_free(words);
            parser_refuse(parser, parser->at, g_strdup(what));
            return FALSE;
        }
        node_add_word(node, words, parser_offset(parser, start));
    } while (parser_skip(parser, ","));
    return TRUE;
}
