// A call of a function of the trade: its formula with the arguments in place of its parameters.
#include "parser.h"

#include <standbook/base/text.h>
#include <string.h>

static const TradeFunction *any_of_name(const char *name)
{
    for (gsize i = 0; trade_function(i); i++)
        if (strcmp(trade_function(i)->name, name) == 0)
            return trade_function(i);
    return NULL;
}

gboolean trade_is_function(const char *name)
{
    return any_of_name(name) != NULL;
}

// `at20(length, temperature, material)`
static void add_form(GString *words, const TradeFunction *function)
{
    g_string_append_printf(words, "%s`%s(", words->len ? " or " : "", function->name);
    for (guint i = 0; i < trade_parameters(function); i++)
        g_string_append_printf(words, "%s%s", i ? ", " : "", function->parameters[i].name);
    g_string_append(words, ")`");
}

static char *forms_of(const char *name)
{
    g_autoptr(GString) words = g_string_new(NULL);
    for (gsize i = 0; trade_function(i); i++)
        if (strcmp(trade_function(i)->name, name) == 0)
            add_form(words, trade_function(i));
    return g_string_free(g_steal_pointer(&words), FALSE);
}

// MATERIALS -------------------------------------------------------------------------------------

static gssize material_of(const char *name)
{
    for (gsize i = 0; trade_material(i); i++)
        if (strcmp(trade_material(i)->name, name) == 0)
            return (gssize)i;
    return -1;
}

static char *materials_listed(void)
{
    g_autoptr(GString) words = g_string_new(NULL);
    for (gsize i = 0; trade_material(i); i++)
        g_string_append_printf(words, "%s%s",
                               !i                      ? ""
                               : trade_material(i + 1) ? ", "
                                                       : " or ",
                               trade_material(i)->name);
    return g_string_free(g_steal_pointer(&words), FALSE);
}

// One material is one source of doubt in a formula, however often it is named.
static guint doubt_index_of(Parser *parser, gsize material)
{
    if (!parser->materials)
        parser->materials = g_array_new(FALSE, TRUE, sizeof(guint));
    if (parser->materials->len <= material)
        g_array_set_size(parser->materials, (guint)material + 1);
    guint *index = &g_array_index(parser->materials, guint, material);
    if (!*index)
        *index = ++parser->doubts;
    return *index - 1;
}

// The expansion of a material in place of its name.
static Node *material_node(Parser *parser, const Node *argument)
{
    gssize found = argument->form == NODE_NAME ? material_of(argument->name) : -1;
    if (found < 0) {
        g_autofree char *listed = materials_listed();
        return parser_refuse_at(parser, argument->offset,
                                g_strdup_printf("a material stands here: %s", listed));
    }
    const TradeMaterial *material = trade_material((gsize)found);
    Node *node = node_new(NODE_NUMBER, argument->offset);
    node->number = number_from_text(material->expansion, NULL);
    node->place = number_from_text(material->expansion, NULL);
    node->doubt = number_from_text(material->doubt, NULL);
    node->doubt_index = doubt_index_of(parser, (gsize)found);
    return node;
}

// BODY ------------------------------------------------------------------------------------------

// Puts the arguments in place of the names of the parameters.
static void substitute(Node *tree, const TradeFunction *function, const Node *call)
{
    for (guint i = 0; i < node_inner_count(tree); i++) {
        Node *inner = node_inner(tree, i);
        substitute(inner, function, call);
        for (guint j = 0; inner->form == NODE_NAME && j < node_inner_count(call); j++) {
            if (strcmp(inner->name, function->parameters[j].name) != 0)
                continue;
            tree->inner->pdata[i] = node_copy(node_inner(call, j));
            node_free(inner);
            break;
        }
    }
}

static Node *body_of(const TradeFunction *function, const Node *call)
{
    guint doubts = 0;
    Node *body = parse_formula(function->formula, 0, &doubts, NULL, NULL);
    substitute(body, function, call);
    return body;
}

static gboolean put_materials(Parser *parser, const TradeFunction *function, Node *call)
{
    for (guint i = 0; i < node_inner_count(call); i++) {
        Node *argument = node_inner(call, i);
        if (function->parameters[i].unit)
            continue;
        Node *material = material_node(parser, argument);
        if (!material)
            return FALSE;
        call->inner->pdata[i] = material;
        node_free(argument);
    }
    return TRUE;
}

Node *parse_trade(Parser *parser, const char *start, const char *name, Node *call)
{
    g_autoptr(Node) node = call;
    const TradeFunction *function = trade_find(name, node_inner_count(node));
    if (!function) {
        g_autofree char *forms = forms_of(name);
        return parser_refuse(parser, start, g_strdup_printf("write %s", forms));
    }
    if (!put_materials(parser, function, node))
        return NULL;
    node->trade = function;
    node->body = body_of(function, node);
    return g_steal_pointer(&node);
}
