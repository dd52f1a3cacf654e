// Settings: the figures of `set:`.
#include "bind.h"

static const TreeNode *set_says(const PlanCheck *check, const char *key)
{
    return schema_get(&schema_of_set, check_says_itself(check, "set"), key);
}

// One end of `range:`, NULL where it is open or no constant.
static Number *range_end(const Formula *end)
{
    return end ? formula_constant(end) : NULL;
}

static void bind_range(Reader *reader, PlanSetting *setting, const TreeNode *node,
                       const char *where)
{
    gsize offset = 0;
    g_autoptr(GError) error = NULL;
    g_autoptr(Limits) range = limits_parse(node->text, setting->unit, &offset, &error);
    if (!range) {
        fault_at(reader, node, offset, where, error->message);
        return;
    }
    const Unit *unit = limits_unit(range);
    if (unit && (!setting->unit || !kind_equal(unit_kind(unit), unit_kind(setting->unit))))
        fault_at(reader, node, 0, where, "the range is in another kind of unit than the moves");
    setting->least = range_end(limits_lower(range));
    setting->most = range_end(limits_upper(range));
    if (!setting->least && !setting->most)
        fault_at(reader, node, 0, where, "a range is two numbers such as 0..3");
}

void bind_setting(Reader *reader, PlanCheck *check, const char *where)
{
    PlanSetting *setting = check->setting;
    if (!setting)
        return;
    setting->unit = setting->unit_text ? unit_parse(setting->unit_text, NULL) : NULL;
    const Kind pure = {0};
    Kind moved = setting->unit ? unit_kind(setting->unit) : pure;
    const TreeNode *range = set_says(check, "range"), *step = set_says(check, "step");
    const TreeNode *gives = set_says(check, "gives");
    if (range)
        bind_range(reader, setting, range, where);
    if (step)
        setting->step = read_amount(reader, step, setting->unit, moved, where);
    if (gives)
        setting->gives = read_amount(reader, gives, check->unit, check->kind, where);
}
