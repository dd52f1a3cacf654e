#include "node.h"
#include <standbook/base/error.h>

// One working out: what it is done with, and where a fault is put.
typedef struct {
    const FormulaContext *context;
    gsize *offset;
    GError **error;
} Work;

static gboolean refuse(const Work *work, gsize offset, char *message)
{
    if (work->offset) {
        *work->offset = offset;
    }
    g_set_error_literal(work->error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE, message);
    g_free(message);
    return FALSE;
}

static gboolean node_kind(const Work *work, const Node *node, Kind *kind);

static gboolean name_kind(const Work *work, const Node *node, Kind *kind)
{
    const FormulaContext *context = work->context;
    return context->kind(node->name, kind, context->user) ||
           refuse(work, node->offset, formula_unknown_name(node->name, context->names));
}

// All inner values must have the kind of the first.
static gboolean same_kind(const Work *work, const Node *node, const char *verb, Kind *kind)
{
    for (guint i = 0; i < node_inner_count(node); i++) {
        Kind one;
        const Node *inner = node_inner(node, i);
        if (!node_kind(work, inner, &one)) {
            return FALSE;
        }
        *kind = i == 0 ? one : *kind;
        if (!kind_equal(one, *kind)) {
            g_autofree char *first = kind_text(*kind);
            g_autofree char *second = kind_text(one);
            return refuse(work, inner->offset,
                          g_strdup_printf("%s and %s cannot be %s; give both the same kind of unit",
                                          first, second, verb));
        }
    }
    return TRUE;
}

// 0 °C is no nought.
static gboolean is_nought(const Node *node, Kind kind)
{
    return node->form == NODE_NUMBER && number_sign(node->number) == 0 && kind.temperature == 0;
}

static gboolean product_kind(const Work *work, const Node *node, Kind *kind)
{
    Kind left;
    Kind right;
    const Node *other = node_inner(node, 1);
    if (!node_kind(work, node_inner(node, 0), &left) || !node_kind(work, other, &right)) {
        return FALSE;
    }
    if (node->operation == ARRAY_DIVIDE && is_nought(other, right)) {
        return refuse(work, other->offset, g_strdup("this divides by 0; put another number here"));
    }
    *kind =
        node->operation == ARRAY_MULTIPLY ? kind_multiply(left, right) : kind_divide(left, right);
    return TRUE;
}

static gboolean binary_kind(const Work *work, const Node *node, Kind *kind)
{
    switch (node->operation) {
    case ARRAY_ADD:
        return same_kind(work, node, "added", kind);
    case ARRAY_SUBTRACT:
        return same_kind(work, node, "subtracted", kind);
    case ARRAY_MULTIPLY:
    case ARRAY_DIVIDE:
        break;
    }
    return product_kind(work, node, kind);
}

static gboolean root_kind(const Work *work, const Node *node, Kind *kind)
{
    Kind inner;
    if (!node_kind(work, node_inner(node, 0), &inner)) {
        return FALSE;
    }
    if (kind_root(inner, kind)) {
        return TRUE;
    }
    g_autofree char *text = kind_text(inner);
    return refuse(work, node->offset, g_strdup_printf("%s has no square root", text));
}

// Exponents of a kind that any unit could have; keeps towers of powers from running over.
static gboolean sane(Kind kind)
{
    return ABS(kind.length) <= 12 && ABS(kind.mass) <= 12 && ABS(kind.time) <= 12 &&
           ABS(kind.angle) <= 12 && ABS(kind.temperature) <= 12;
}

static gboolean power_kind(const Work *work, const Node *node, Kind *kind)
{
    Kind inner;
    if (!node_kind(work, node_inner(node, 0), &inner)) {
        return FALSE;
    }
    *kind = kind_power(inner, node->exponent);
    return TRUE;
}

// What a function of the trade is given must be of the kind that it asks for.
static gboolean argument_fits(const Work *work, const Node *call, guint index)
{
    const Node *argument = node_inner(call, index);
    const char *words = call->trade->parameters[index].unit;
    Kind kind;
    if (!words || !node_kind(work, argument, &kind)) {
        return !words;
    }
    g_autoptr(Unit) unit = unit_parse(words, NULL);
    if (kind_equal(kind, unit_kind(unit))) {
        return TRUE;
    }
    g_autofree char *wanted = kind_text(unit_kind(unit));
    g_autofree char *given = kind_text(kind);
    return refuse(work, argument->offset,
                  g_strdup_printf("`%s` takes as its %s %s, in %s or the like, and this is %s",
                                  call->trade->name, call->trade->parameters[index].name, wanted,
                                  words, given));
}

static gboolean trade_kind(const Work *work, const Node *node, Kind *kind)
{
    for (guint i = 0; i < node_inner_count(node); i++) {
        if (!argument_fits(work, node, i)) {
            return FALSE;
        }
    }
    return node_kind(work, node->body, kind);
}

static gboolean plain_kind(const Work *work, const Node *node, Kind *kind)
{
    switch (node->form) {
    case NODE_NUMBER:
        *kind = unit_kind(node->unit);
        return TRUE;
    case NODE_PI:
        *kind = (Kind){0};
        return TRUE;
    case NODE_NAME:
        return name_kind(work, node, kind);
    case NODE_BINARY:
        return binary_kind(work, node, kind);
    case NODE_POWER:
        return power_kind(work, node, kind);
    case NODE_SQRT:
        return root_kind(work, node, kind);
    case NODE_TRADE:
        return trade_kind(work, node, kind);
    case NODE_NEGATE:
    case NODE_ABS:
    case NODE_FOLD:
    case NODE_PICK:
        break;
    }
    return same_kind(work, node, "compared", kind);
}

static gboolean node_kind(const Work *work, const Node *node, Kind *kind)
{
    if (!plain_kind(work, node, kind)) {
        return FALSE;
    }
    return sane(*kind) || refuse(work, node->offset,
                                 g_strdup("this gives a power of a unit beyond any that is "
                                          "measured; check the exponents"));
}

gboolean formula_kind(const Formula *formula, const FormulaContext *context, Kind *kind,
                      gsize *offset, GError **error)
{
    Work work = {context, offset, error};
    return node_kind(&work, formula->root, kind);
}

static Array *node_value(const Work *work, const Node *node);

static Array *number_value(const Work *work, const Node *node)
{
    g_autoptr(Number) value = node->width ? unit_width_to_base(node->unit, node->number)
                                          : unit_to_base(node->unit, node->number);
    g_autoptr(Number) doubt = node->doubt ? unit_width_to_base(node->unit, node->doubt) : NULL;
    Array *array = array_new(NULL, 0);
    array_set_constant(array, 0, value, doubt,
                       work->context->first_doubt - (gint)node->doubt_index);
    return array;
}

static Array *name_value(const Work *work, const Node *node)
{
    const FormulaContext *context = work->context;
    Array *array = context->value(node->name, context->user);
    if (array == NULL) {
        refuse(work, node->offset, formula_unknown_name(node->name, context->names));
    }
    return array;
}

// Puts the offset to an error that an array function made.
static Array *placed(const Work *work, gsize offset, Array *array)
{
    if (array == NULL && work->offset) {
        *work->offset = offset;
    }
    return array;
}

static Array *binary_value(const Work *work, const Node *node)
{
    g_autoptr(Array) left = node_value(work, node_inner(node, 0));
    g_autoptr(Array) right = left ? node_value(work, node_inner(node, 1)) : NULL;
    if (right == NULL) {
        return NULL;
    }
    return placed(work, node_inner(node, 1)->offset,
                  array_combine(node->operation, left, right, work->error));
}

static Array *fold_axes(const Work *work, const Node *node, const Array *array)
{
    guint count = node->words ? node->words->len : 0;
    g_autofree const char **axes = g_new0(const char *, count + 1);
    for (guint i = 0; i < count; i++) {
        axes[i] = g_array_index(node->words, NodeWord, i).text;
    }
    gsize offset = count ? g_array_index(node->words, NodeWord, 0).offset : node->offset;
    for (guint i = 0; i < count; i++) {
        if (array_find_axis(array, axes[i]) < 0) {
            offset = g_array_index(node->words, NodeWord, i).offset;
            break;
        }
    }
    return placed(work, offset,
                  array_fold(node->fold, array, axes, count, work->context->variance,
                             work->context->user, work->error));
}

static Array *fold_value(const Work *work, const Node *node)
{
    guint count = node_inner_count(node);
    g_autoptr(GPtrArray) values = g_ptr_array_new_with_free_func((GDestroyNotify)array_free);
    for (guint i = 0; i < count; i++) {
        Array *one = node_value(work, node_inner(node, i));
        if (one == NULL) {
            return NULL;
        }
        g_ptr_array_add(values, one);
    }
    if (count == 1) {
        return fold_axes(work, node, values->pdata[0]);
    }
    return placed(work, node->offset,
                  array_fold_several(node->fold, (const Array *const *)values->pdata, count,
                                     work->context->variance, work->context->user, work->error));
}

static Array *pick_value(const Work *work, const Node *node)
{
    g_autoptr(Array) array = node_value(work, node_inner(node, 0));
    for (guint i = 0; array && i < node->words->len; i++) {
        const NodeWord *word = &g_array_index(node->words, NodeWord, i);
        g_autoptr(Array) before = array;
        array = placed(work, word->offset, array_pick(before, word->text, work->error));
    }
    return g_steal_pointer(&array);
}

static Array *one_value(const Work *work, const Node *node)
{
    g_autoptr(Array) inner = node_value(work, node_inner(node, 0));
    if (inner == NULL) {
        return NULL;
    }
    switch (node->form) {
    case NODE_NEGATE:
        return array_negate(inner);
    case NODE_ABS:
        return array_abs(inner);
    case NODE_SQRT:
        return array_sqrt(inner);
    default:
        return array_power(inner, node->exponent);
    }
}

static Array *pi_value(void)
{
    g_autoptr(Number) pi = number_pi();
    return array_constant(pi);
}

static Array *node_value(const Work *work, const Node *node)
{
    switch (node->form) {
    case NODE_NUMBER:
        return number_value(work, node);
    case NODE_PI:
        return pi_value();
    case NODE_NAME:
        return name_value(work, node);
    case NODE_BINARY:
        return binary_value(work, node);
    case NODE_FOLD:
        return fold_value(work, node);
    case NODE_PICK:
        return pick_value(work, node);
    case NODE_TRADE:
        return node_value(work, node->body);
    case NODE_NEGATE:
    case NODE_ABS:
    case NODE_SQRT:
    case NODE_POWER:
        break;
    }
    return one_value(work, node);
}

Array *formula_evaluate(const Formula *formula, const FormulaContext *context, gsize *offset,
                        GError **error)
{
    Work work = {context, offset, error};
    return node_value(&work, formula->root);
}

Number *formula_constant(const Formula *formula)
{
    if (formula_name_count(formula) > 0) {
        return NULL;
    }
    FormulaContext none = {.first_doubt = -1};
    g_autoptr(Array) array = formula_evaluate(formula, &none, NULL, NULL);
    const Place *place = array ? array_place(array, 0) : NULL;
    return place && place->value ? number_copy(place->value) : NULL;
}
