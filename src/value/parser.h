// The words of formulas: what the grammar in grammar.c is read with.
#pragma once
#include "node.h"

// Where the parser stands.
typedef struct {
    const char *text;
    const char *at;
    gsize before;      // characters that stand before `text` in what offsets count from
    guint depth;       // open brackets
    guint doubts;      // ± so far
    GArray *materials; // guint: of each material used the number of its ±, from 1; NULL for none
    gsize *offset;
    GError **error;
} Parser;

// What an offset counts for a place in the text: characters.
gsize parser_offset(const Parser *parser, const char *at);
// Sets the error there. Always NULL, so that a rule can return it. Takes `message` over.
Node *parser_refuse(const Parser *parser, const char *at, char *message);
// The same at an offset.
Node *parser_refuse_at(const Parser *parser, gsize offset, char *message);
// Refuses what stands where an operator, a bracket or the end was due.
Node *parser_refuse_rest(const Parser *parser);
void parser_skip_blanks(Parser *parser);
gboolean parser_skip(Parser *parser, const char *mark); // blanks, then the mark if it is there
gboolean parser_letter_at(const char *at);
// The length of the word at `at`: letters, digits, apostrophes, and a hyphen with one of the first
// two right behind it. 0 if no letter starts one.
gsize parser_word_length(const char *at);
gboolean parser_word_is(const char *at, const char *word);
char *parser_character_at(const char *at); // clean; the caller frees
// Brackets, counted against FORMULA_DEPTH.
gboolean parser_open(Parser *parser);
gboolean parser_close(Parser *parser, const char *mark);
// Whether a function of the trade has that name, and its call (NODE_TRADE, taken over) with all its
// arguments. `start` is where the name stands. NULL where it is refused.
gboolean trade_is_function(const char *name);
Node *parse_trade(Parser *parser, const char *start, const char *name, Node *call);
// quantity = number [ "±" number ] [ unit ]
Node *parser_quantity(Parser *parser);
// One or more runs of words with commas between into node->words, up to one of `ends`, which is
// left standing; `signs` may stand among them. `what` is the sentence for anything else.
gboolean parser_list(Parser *parser, Node *node, const char *ends, const char *signs,
                     const char *what);
