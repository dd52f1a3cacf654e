// Settings: the figures of `set:`.
#include "bind.h"

#include <string.h>

enum { STOCK_MOST = 1000 }; // shims of one setting

static const TreeNode *set_says(const PlanCheck *check, const char *key)
{
    return schema_get(&schema_of_set, check_says_itself(check, "set"), key);
}

static Kind kind_of_moves(const PlanSetting *setting)
{
    const Kind pure = {0};
    return setting->unit ? unit_kind(setting->unit) : pure;
}

// One end of `range:`, NULL where it is open or no constant.
static Number *range_end(const Formula *end)
{
    return end ? formula_constant(end) : NULL;
}

// `0..3`: its two ends, NULL where there is none. FALSE with a fault.
static gboolean read_range(Reader *reader, const PlanSetting *setting, const TreeNode *node,
                           Number **least, Number **most, const char *where)
{
    gsize offset = 0;
    g_autoptr(GError) error = NULL;
    g_autoptr(Limits) range = limits_parse(node->text, setting->unit, &offset, &error);
    if (!range) {
        fault_at(reader, node, offset, where, error->message);
        return FALSE;
    }
    const Unit *unit = limits_unit(range);
    if (unit && (!setting->unit || !kind_equal(unit_kind(unit), unit_kind(setting->unit)))) {
        fault_at(reader, node, 0, where, "the range is in another kind of unit than the moves");
        return FALSE;
    }
    *least = range_end(limits_lower(range));
    *most = range_end(limits_upper(range));
    return TRUE;
}

static void bind_range(Reader *reader, PlanSetting *setting, const TreeNode *node,
                       const char *where)
{
    if (read_range(reader, setting, node, &setting->least, &setting->most, where) &&
        !setting->least && !setting->most)
        fault_at(reader, node, 0, where, "a range is two numbers such as 0..3");
}

// STOCK -----------------------------------------------------------------------------------------

static void free_number(gpointer number)
{
    number_free(number);
}

static gint compare_numbers(gconstpointer one, gconstpointer other)
{
    return number_compare(*(Number *const *)one, *(Number *const *)other);
}

static gboolean is_beyond(const PlanSetting *setting, const Number *position)
{
    return (setting->least && number_compare(position, setting->least) < 0) ||
           (setting->most && number_compare(position, setting->most) > 0);
}

// Takes over the size; NULL adds nothing.
static void add_size(Reader *reader, PlanSetting *setting, const TreeNode *node, Number *size,
                     const char *where)
{
    if (!size)
        return;
    gboolean twice = FALSE;
    for (guint i = 0; i < setting->stock->len && !twice; i++)
        twice = number_equal(setting->stock->pdata[i], size);
    if (twice)
        fault_at(reader, node, 0, where, "this size stands in `stock` twice; leave one out");
    else if (is_beyond(setting, size))
        fault_at(reader, node, 0, where,
                 "this size lies beyond `range`; leave it out, or widen the range");
    g_ptr_array_add(setting->stock, size);
}

// All sizes from the least to the most, one step apart.
static void add_sizes(Reader *reader, PlanSetting *setting, const TreeNode *node,
                      const Number *least, const Number *most, const Number *step,
                      const char *where)
{
    g_autoptr(Number) size = number_copy(least);
    while (number_compare(size, most) <= 0 && setting->stock->len <= STOCK_MOST) {
        Number *next = number_add(size, step);
        add_size(reader, setting, node, size, where);
        size = next;
    }
    if (setting->stock->len <= STOCK_MOST &&
        !number_equal(setting->stock->pdata[setting->stock->len - 1], most))
        fault_at(reader, node, 0, where,
                 "its steps do not come to its end; write an end that they come to");
}

// `2.40..2.80 in 0.05`, cut before its last ` in `.
static void bind_series(Reader *reader, PlanSetting *setting, const TreeNode *node, gsize cut,
                        const char *where)
{
    g_autofree char *ends = g_strndup(node->text, cut);
    TreeNode range = *node, step = *node;
    range.text = ends;
    step.text += cut + strlen(" in ");
    step.column += (guint)g_utf8_pointer_to_offset(node->text, step.text);
    g_autoptr(Number) least = NULL, most = NULL;
    gboolean good = read_range(reader, setting, &range, &least, &most, where);
    g_autoptr(Number) by = read_amount(reader, &step, setting->unit, kind_of_moves(setting), where);
    if (!good || !by)
        return;
    if (!least || !most || number_compare(least, most) > 0)
        fault_at(reader, node, 0, where,
                 "sizes in a row have a least and a greatest, such as 2.40..2.80 in 0.05");
    else if (number_sign(by) <= 0)
        fault_at(reader, &step, 0, where, "the step from one size to the next is above 0");
    else
        add_sizes(reader, setting, node, least, most, by, where);
}

static void bind_size(Reader *reader, PlanSetting *setting, const TreeNode *node, const char *where)
{
    const char *in = node->kind == TREE_SCALAR ? g_strrstr(node->text, " in ") : NULL;
    if (node->kind != TREE_SCALAR)
        fault_at(reader, node, 0, where, "a size is a number such as 2.45");
    else if (in)
        bind_series(reader, setting, node, (gsize)(in - node->text), where);
    else
        add_size(reader, setting, node,
                 read_amount(reader, node, setting->unit, kind_of_moves(setting), where), where);
}

static void bind_stock(Reader *reader, PlanSetting *setting, const PlanCheck *check,
                       const char *where)
{
    const TreeNode *set = check_says_itself(check, "set"), *stock = set_says(check, "stock");
    g_autoptr(GPtrArray) nodes = nodes_of(&schema_of_set, set, "stock");
    setting->stock = g_ptr_array_new_with_free_func(free_number);
    for (guint i = 0; i < nodes->len && setting->stock->len <= STOCK_MOST; i++) {
        TreeNode size = *(const TreeNode *)nodes->pdata[i];
        size.key = stock->key; // what a fault of a list's member calls it
        bind_size(reader, setting, &size, where);
    }
    if (setting->stock->len > STOCK_MOST)
        fault_at(reader, stock, 0, where, "these are more than 1,000 sizes; write fewer");
    if (set_says(check, "step"))
        fault_at(reader, stock, 0, where,
                 "`stock` says where it can stand, `step` how finely it moves; write one of them");
    g_ptr_array_sort(setting->stock, compare_numbers);
}

// GEOMETRY --------------------------------------------------------------------------------------

// `0.546 mm either way`, cut before its last two words: the size is known, not the direction.
static void bind_size_alone(Reader *reader, PlanCheck *check, const TreeNode *node, gsize length,
                            const char *where)
{
    g_autofree char *size = g_strchomp(g_strndup(node->text, length));
    TreeNode number = *node;
    number.text = size;
    if (!*size || g_str_equal(size, "more") || g_str_equal(size, "less")) {
        fault_at(reader, node, 0, where,
                 "`either way` leaves the direction open; write the size before it, such as "
                 "`0.5 mm either way`");
        return;
    }
    check->setting->gives = read_amount(reader, &number, check->unit, check->kind, where);
    if (check->setting->gives && number_sign(check->setting->gives) < 0)
        fault_at(reader, node, 0, where,
                 "`either way` leaves the direction open; write the size without a sign");
}

// A geometry of 0 says nothing.
static void drop_nothing(Reader *reader, PlanSetting *setting, const TreeNode *node,
                         const char *where)
{
    if (!setting->gives || number_sign(setting->gives))
        return;
    g_clear_pointer(&setting->gives, number_free);
    faults_add(reader->plan->notices, node->line, node->column,
               "%s`gives` 0 says nothing of how it answers; leave it out", where);
}

static void bind_gives(Reader *reader, PlanCheck *check, const TreeNode *node, const char *where)
{
    static const char either_way[] = "either way";
    PlanSetting *setting = check->setting;
    if (g_str_equal(node->text, "more") || g_str_equal(node->text, "less")) {
        setting->direction = g_str_equal(node->text, "more") ? 1 : -1;
        return;
    }
    if (g_str_has_suffix(node->text, either_way)) {
        bind_size_alone(reader, check, node, strlen(node->text) - strlen(either_way), where);
    } else {
        setting->gives = read_amount(reader, node, check->unit, check->kind, where);
        setting->direction = setting->gives ? number_sign(setting->gives) : 0;
    }
    drop_nothing(reader, setting, node, where);
}

void bind_setting(Reader *reader, PlanCheck *check, const char *where)
{
    PlanSetting *setting = check->setting;
    if (!setting)
        return;
    setting->unit = setting->unit_text ? unit_parse(setting->unit_text, NULL) : NULL;
    const TreeNode *range = set_says(check, "range"), *step = set_says(check, "step");
    const TreeNode *gives = set_says(check, "gives");
    if (range)
        bind_range(reader, setting, range, where);
    if (step)
        setting->step = read_amount(reader, step, setting->unit, kind_of_moves(setting), where);
    if (set_says(check, "stock"))
        bind_stock(reader, setting, check, where);
    if (gives)
        bind_gives(reader, check, gives, where);
}
