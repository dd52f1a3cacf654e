#include "node.h"
#include <standbook/base/text.h>
#include <string.h>

static void word_clear(gpointer data)
{
    g_free(((NodeWord *)data)->text);
}

static GArray *words_new(void)
{
    GArray *words = g_array_new(FALSE, FALSE, sizeof(NodeWord));
    g_array_set_clear_func(words, word_clear);
    return words;
}

Node *node_new(NodeForm form, gsize offset)
{
    Node *node = g_new0(Node, 1);
    node->form = form;
    node->offset = offset;
    node->references = 1;
    return node;
}

Node *node_copy(Node *node)
{
    node->references++;
    return node;
}

void node_free(Node *node)
{
    if (node == NULL || --node->references > 0) {
        return;
    }
    g_clear_pointer(&node->inner, g_ptr_array_unref);
    g_clear_pointer(&node->words, g_array_unref);
    g_free(node->name);
    g_free(node->text);
    number_free(node->number);
    number_free(node->place);
    number_free(node->doubt);
    unit_free(node->unit);
    node_free(node->body);
    g_free(node);
}

void node_add(Node *node, Node *inner)
{
    if (node->inner == NULL) {
        node->inner = g_ptr_array_new_with_free_func((GDestroyNotify)node_free);
    }
    g_ptr_array_add(node->inner, inner);
}

void node_add_word(Node *node, char *text, gsize offset)
{
    node->words = node->words ? node->words : words_new();
    NodeWord word = {text, offset};
    g_array_append_val(node->words, word);
}

Node *node_inner(const Node *node, guint index)
{
    return g_ptr_array_index(node->inner, index);
}

guint node_inner_count(const Node *node)
{
    return node->inner ? node->inner->len : 0;
}

void node_each_term(Node *node, void (*visit)(Node *, gpointer), gpointer user)
{
    gboolean product = node->form == NODE_BINARY &&
                       (node->operation == ARRAY_MULTIPLY || node->operation == ARRAY_DIVIDE);
    if (node->form == NODE_NUMBER) {
        visit(node, user);
    } else if (!product && node->form != NODE_POWER && node->form != NODE_SQRT &&
               node->form != NODE_TRADE) {
        for (guint i = 0; i < node_inner_count(node); i++) {
            node_each_term(node_inner(node, i), visit, user);
        }
    }
}

static void collect_names(const Node *node, Formula *formula)
{
    if (node->form == NODE_NAME && !formula_uses(formula, node->name)) {
        NodeWord word = {g_strdup(node->name), node->offset};
        g_array_append_val(formula->names, word);
    }
    for (guint i = 0; i < node_inner_count(node); i++) {
        collect_names(node_inner(node, i), formula);
    }
}

Formula *formula_new(char *text, Node *root, guint doubts)
{
    Formula *formula = g_new0(Formula, 1);
    *formula = (Formula){text, root, words_new(), doubts, 1};
    collect_names(root, formula);
    return formula;
}

Formula *formula_parse_part(const char *text, gsize length, gsize before, gsize *offset,
                            GError **error)
{
    g_autofree char *part = g_strndup(text, length);
    guint doubts = 0;
    Node *root = parse_formula(part, before, &doubts, offset, error);
    return root ? formula_new(g_strstrip(g_steal_pointer(&part)), root, doubts) : NULL;
}

Formula *formula_parse(const char *text, gsize *offset, GError **error)
{
    return formula_parse_part(text, strlen(text), 0, offset, error);
}

Formula *formula_join(ArrayOperation operation, const Formula *one, const Formula *other)
{
    Node *root = node_new(NODE_BINARY, one->root->offset);
    root->operation = operation;
    node_add(root, node_copy(one->root));
    node_add(root, node_copy(other->root));
    const char *sign = operation == ARRAY_ADD ? " + " : " - ";
    char *text = g_strconcat(one->text, sign, "(", other->text, ")", NULL);
    return formula_new(text, root, one->doubts + other->doubts);
}

Formula *formula_copy(const Formula *formula)
{
    Formula *shared = (Formula *)formula; // only the count is written
    shared->references++;
    return shared;
}

void formula_free(Formula *formula)
{
    if (formula == NULL || --formula->references > 0) {
        return;
    }
    g_free(formula->text);
    node_free(formula->root);
    g_array_unref(formula->names);
    g_free(formula);
}

const char *formula_text(const Formula *formula)
{
    return formula->text;
}

static void give_unit(Node *number, gpointer unit)
{
    if (number->unit == NULL) {
        number->unit = unit_copy(unit);
    }
}

void formula_give_unit(Formula *formula, const Unit *unit)
{
    if (unit) {
        node_each_term(formula->root, give_unit, (gpointer)unit);
    }
}

static void make_width(Node *number, gpointer unused)
{
    (void)unused;
    number->width = TRUE;
}

void formula_make_width(Formula *formula)
{
    node_each_term(formula->root, make_width, NULL);
}

// The numbers at the terms of the result that have a unit, but this one, or those that have none.
typedef struct {
    gboolean with_unit;
    const Unit *but;          // NULL: none is passed over
    const Node *first, *last; // NULL: there are none
} TermsSeen;

static void see_term(Node *number, gpointer user)
{
    TermsSeen *seen = user;
    gboolean but = number->unit && seen->but && unit_equal(number->unit, seen->but);
    if ((number->unit != NULL) != seen->with_unit || but) {
        return;
    }
    seen->first = seen->first ? seen->first : number;
    seen->last = number;
}

static TermsSeen terms_seen(const Formula *formula, gboolean with_unit, const Unit *but)
{
    TermsSeen seen = {.with_unit = with_unit, .but = but};
    node_each_term(formula->root, see_term, &seen);
    return seen;
}

const Unit *formula_term_unit(const Formula *formula, const Unit *but)
{
    const Node *last = terms_seen(formula, TRUE, but).last;
    return last ? last->unit : NULL;
}

const Unit *formula_first_unit(const Formula *formula)
{
    const Node *first = terms_seen(formula, TRUE, NULL).first;
    return first ? first->unit : NULL;
}

char *formula_bare_term(const Formula *formula, gsize *offset)
{
    const Node *bare = terms_seen(formula, FALSE, NULL).first;
    if (bare == NULL) {
        return NULL;
    }
    *offset = bare->offset;
    return number_text(bare->number);
}

static void see_decimals(Node *number, gpointer most)
{
    guint *decimals = most;
    *decimals = MAX(*decimals, number->decimals);
}

guint formula_term_decimals(const Formula *formula)
{
    guint decimals = 0;
    node_each_term(formula->root, see_decimals, &decimals);
    return decimals;
}

// The numbers of a tree, in the order written.
static void each_number(const Node *node, void (*visit)(const Node *, gpointer), gpointer user)
{
    if (node->form == NODE_NUMBER) {
        visit(node, user);
    }
    for (guint i = 0; i < node_inner_count(node); i++) {
        each_number(node_inner(node, i), visit, user);
    }
}

static void see_any_unit(const Node *number, gpointer found)
{
    gboolean *any = found;
    *any |= number->unit != NULL;
}

gboolean formula_has_unit(const Formula *formula)
{
    gboolean any = FALSE;
    each_number(formula->root, see_any_unit, &any);
    return any;
}

// The coarsest place so far, and the place of a whole number to fall back on; of the numbers with
// a unit alone if there are any.
typedef struct {
    gboolean units;
    Number *coarsest;
    Number *whole;
} Places;

static void keep_coarser(Number **kept, const Node *number)
{
    g_autoptr(Number) place = unit_width_to_base(number->unit, number->place);
    if (*kept == NULL || number_compare(place, *kept) > 0) {
        number_free(*kept);
        *kept = g_steal_pointer(&place);
    }
}

static void see_place(const Node *number, gpointer seen)
{
    Places *places = seen;
    g_autoptr(Number) one = number_from_integer(1);
    if (!places->units || number->unit) {
        gboolean whole = number_equal(number->place, one);
        keep_coarser(whole ? &places->whole : &places->coarsest, number);
    }
}

Number *formula_place(const Formula *formula)
{
    Places places = {.units = formula_has_unit(formula)};
    each_number(formula->root, see_place, &places);
    if (!places.coarsest) {
        return places.whole ? places.whole : number_from_integer(1);
    }
    number_free(places.whole);
    return places.coarsest;
}

gsize formula_name_count(const Formula *formula)
{
    return formula->names->len;
}

const char *formula_name(const Formula *formula, gsize index)
{
    return g_array_index(formula->names, NodeWord, index).text;
}

gsize formula_name_offset(const Formula *formula, gsize index)
{
    return g_array_index(formula->names, NodeWord, index).offset;
}

gboolean formula_uses(const Formula *formula, const char *name)
{
    for (gsize i = 0; i < formula_name_count(formula); i++) {
        if (strcmp(formula_name(formula, i), name) == 0) {
            return TRUE;
        }
    }
    return FALSE;
}

// `tight`, or with its axis `state tight`.
static gboolean is_pick_of(const char *words, const char *label)
{
    const char *space = strrchr(words, ' ');
    return strcmp(words, label) == 0 || (space && strcmp(space + 1, label) == 0);
}

static gboolean node_picks(const Node *node, const char *name, const char *label)
{
    gboolean picks = FALSE;
    gboolean named = node->form == NODE_PICK && node_inner(node, 0)->form == NODE_NAME &&
                     strcmp(node_inner(node, 0)->name, name) == 0;
    for (guint i = 0; named && node->words && i < node->words->len && !picks; i++)
        picks = is_pick_of(g_array_index(node->words, NodeWord, i).text, label);
    for (guint i = 0; i < node_inner_count(node) && !picks; i++)
        picks = node_picks(node_inner(node, i), name, label);
    return picks;
}

gboolean formula_picks(const Formula *formula, const char *name, const char *label)
{
    return node_picks(formula->root, name, label);
}

guint formula_doubt_count(const Formula *formula)
{
    return formula->doubts;
}

static gboolean listed(const char *const *names, const char *name)
{
    return names && g_strv_contains(names, name);
}

// `bore-skirt` where `bore` and `skirt` are names: the subtraction meant; else NULL.
static char *meant_minus(const char *name, const char *const *names)
{
    for (const char *hyphen = strchr(name, '-'); hyphen; hyphen = strchr(hyphen + 1, '-')) {
        g_autofree char *left = g_strndup(name, (gsize)(hyphen - name));
        if (listed(names, left) && listed(names, hyphen + 1)) {
            return g_strconcat(left, " - ", hyphen + 1, NULL);
        }
    }
    return NULL;
}

char *formula_unknown_name(const char *name, const char *const *names)
{
    g_autofree char *minus = meant_minus(name, names);
    if (minus) {
        return g_strdup_printf("there is nothing called `%s`; to subtract, put spaces round the "
                               "minus: `%s`",
                               name, minus);
    }
    gsize count = names ? g_strv_length((char **)names) : 0;
    const char *near = count ? text_nearest(name, names, count) : NULL;
    if (near) {
        return g_strdup_printf("there is nothing called `%s`; did you mean `%s`?", name, near);
    }
    const char *hint = strchr(name, '-') ? "; to subtract, put spaces round the minus"
                                         : "; name a check or a given value of this plan";
    return g_strdup_printf("there is nothing called `%s`%s", name, hint);
}
