// A formula that is a sum, term by term.
#include "node.h"

static void term_clear(gpointer data)
{
    formula_free(((FormulaTerm *)data)->formula);
}

static gboolean is_sum(const Node *node)
{
    return node->form == NODE_BINARY &&
           (node->operation == ARRAY_ADD || node->operation == ARRAY_SUBTRACT);
}

// The left side of a sum may be a sum itself, in parentheses or not: its terms stand for it.
static void add_terms(const Formula *formula, Node *node, GArray *terms)
{
    Node *last = node;
    gboolean subtracted = FALSE;
    if (is_sum(node)) {
        add_terms(formula, node_inner(node, 0), terms);
        last = node_inner(node, 1);
        subtracted = node->operation == ARRAY_SUBTRACT;
    }
    char *text = g_strdup(last->text ? last->text : formula->text);
    FormulaTerm term = {subtracted, formula_new(text, node_copy(last), formula->doubts)};
    g_array_append_val(terms, term);
}

GArray *formula_terms(const Formula *formula)
{
    GArray *terms = g_array_new(FALSE, FALSE, sizeof(FormulaTerm));
    g_array_set_clear_func(terms, term_clear);
    add_terms(formula, formula->root, terms);
    return terms;
}
