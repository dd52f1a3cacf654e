#include "bind.h"

#include <string.h>

enum {
    BINDING_DEPTH = 64,          // formulas that rest on one another and are written further down
    FORMULA_PLACES_MOST = 10000, // places that the axes of one formula may make
    WORK_MOST = 5000000,         // places times operators, roughly, of all formulas
};

Site site_of(Reader *reader, const PlanStep *step, const char *where, const TreeNode *node)
{
    return (Site){reader, step, where, node->line, node->column};
}

void site_fault(const Site *site, gsize offset, const char *message)
{
    faults_add(site->reader->faults, site->line, site->column + (guint)offset, "%s%s", site->where,
               message);
}

gboolean can_work(Reader *reader, guint64 work)
{
    reader->work += work;
    return reader->work <= WORK_MOST;
}

static PlanGiven *given_of(const Plan *plan, const char *name)
{
    for (guint i = 0; i < plan->given->len; i++) {
        PlanGiven *given = g_ptr_array_index(plan->given, i);
        if (g_str_equal(given->name, name))
            return given;
    }
    return NULL;
}

// The sentence for a name with a hyphen that may have been meant as a minus; NULL if not so.
static char *meant_minus(const Site *site, const char *name, const char *const *names, guint count)
{
    gsize hyphens = 0;
    for (const char *at = name; *at; at++)
        hyphens += *at == '-';
    if (!hyphens || count == 0 || !can_compare(site->reader, name, hyphens * count))
        return NULL;
    g_autofree const char **ended = g_new0(const char *, count + 1);
    memcpy(ended, names, count * sizeof *names);
    return formula_unknown_name(name, ended);
}

static void fault_nothing(const Site *site, const char *name, gsize offset)
{
    const GPtrArray *names = names_of(site->reader, 0);
    const char *const *all = (const char *const *)names->pdata;
    guint count = site->step ? names->len : site->reader->plan->given->len;
    g_autofree char *minus = meant_minus(site, name, all, count);
    const char *nearest = minus ? NULL : suggest(site->reader, name, all, count);
    g_autofree char *message =
        nearest ? g_strdup_printf("there is nothing called `%s`; did you mean `%s`?", name, nearest)
                : g_strdup_printf("there is nothing called `%s`; write the name of a %s", name,
                                  site->step ? "check or a constant" : "constant above");
    site_fault(site, offset, minus ? minus : message);
}

// Binds a check that a formula names. FALSE with a fault if that goes round in a circle.
static gboolean bind_named(const Site *site, PlanCheck *check, gsize offset)
{
    if (check->state == BINDING_NOW || site->reader->depth >= BINDING_DEPTH) {
        g_autofree char *message = g_strdup_printf(
            check->state == BINDING_NOW
                ? "`%s` is worked out from this formula itself; use another value"
                : "more than 64 formulas rest on one another here; write `%s` further up",
            check->name);
        site_fault(site, offset, message);
        return FALSE;
    }
    if (check->state == BINDING_NOT_YET)
        bind_check(site->reader, check);
    return check->state == BINDING_DONE;
}

static gboolean is_number(const PlanCheck *check)
{
    return check->asks == LIMITS_VALUE || check->asks == LIMITS_ANY || check->asks == LIMITS_COUNT;
}

static gboolean find_check(const Site *site, PlanCheck *check, gsize offset)
{
    check->used = TRUE;
    gboolean before = check->step == site->step || plan_step_follows(site->step, check->step);
    if (!before) {
        g_autofree char *message = g_strdup_printf(
            "`%s` is read in step \"%s\", which need not come before this one; add it to `after`",
            check->name, check->step->name);
        site_fault(site, offset, message);
    }
    if (!bind_named(site, check, offset))
        return FALSE;
    if (!is_number(check)) {
        g_autofree char *message =
            g_strdup_printf("`%s` is answered in words, so a formula cannot use it", check->name);
        site_fault(site, offset, message);
        return FALSE;
    }
    return before;
}

static gboolean find_name(const Site *site, const char *name, gsize offset)
{
    const PlanGiven *given = given_of(site->reader->plan, name);
    PlanCheck *check = site->step ? g_hash_table_lookup(site->reader->plan->checks, name) : NULL;
    if (check)
        return find_check(site, check, offset);
    if (!given) {
        fault_nothing(site, name, offset);
        return FALSE;
    }
    if (given->state == BINDING_NOT_YET || given->state == BINDING_NOW) {
        g_autofree char *message = g_strdup_printf(
            "a constant uses only constants written above it, which `%s` is not", name);
        site_fault(site, offset, message);
    }
    return given->state == BINDING_DONE;
}

static void widest(gpointer data, gpointer user)
{
    const Axis *axis = data;
    GHashTable *sizes = user;
    guint size =
        MAX((guint)axis_size(axis), GPOINTER_TO_UINT(g_hash_table_lookup(sizes, axis_name(axis))));
    g_hash_table_insert(sizes, (gpointer)axis_name(axis), GUINT_TO_POINTER(size));
}

// Whether all axes of the names together make no more places than can be worked out at once.
static gboolean is_bounded(const Site *site, const Formula *formula)
{
    g_autoptr(GHashTable) sizes = g_hash_table_new(g_str_hash, g_str_equal);
    for (gsize i = 0; i < formula_name_count(formula); i++) {
        const PlanCheck *check = plan_check(site->reader->plan, formula_name(formula, i));
        const PlanGiven *given = given_of(site->reader->plan, formula_name(formula, i));
        if (check && site->step)
            g_ptr_array_foreach(check->axes, widest, sizes);
        else if (given && given->axis)
            widest((gpointer)given->axis, sizes);
    }
    GHashTableIter iter;
    gpointer size;
    guint64 places = 1;
    g_hash_table_iter_init(&iter, sizes);
    while (g_hash_table_iter_next(&iter, NULL, &size))
        places = MIN(places * GPOINTER_TO_UINT(size), G_MAXUINT32);
    if (places > FORMULA_PLACES_MOST) {
        site_fault(site, 0, "the axes of this formula make more than 10,000 places; fold some");
        return FALSE;
    }
    if (can_work(site->reader, places * (1 + strlen(formula_text(formula)) / 8)))
        return TRUE;
    if (tell_once(site->reader, &site->reader->work))
        site_fault(site, 0, "the formulas of this plan have too many places in all; fold some");
    return FALSE;
}

gboolean site_find_names(const Site *site, const Formula *formula)
{
    gboolean good = TRUE;
    for (gsize i = 0; i < formula_name_count(formula); i++)
        good = find_name(site, formula_name(formula, i), formula_name_offset(formula, i)) && good;
    return good && is_bounded(site, formula);
}

static gboolean kind_of(const char *name, Kind *kind, gpointer user)
{
    const Site *site = user;
    const PlanCheck *check = site->step ? plan_check(site->reader->plan, name) : NULL;
    const PlanGiven *given = given_of(site->reader->plan, name);
    if (check)
        *kind = check->kind;
    else if (given)
        *kind = given->kind;
    return check || given;
}

Array *site_given(const Plan *plan, const char *name)
{
    const PlanGiven *given = given_of(plan, name);
    return given ? array_copy(given->value) : NULL;
}

static Array *value_of(const char *name, gpointer user)
{
    const Site *site = user;
    const PlanCheck *check = site->step ? plan_check(site->reader->plan, name) : NULL;
    return check ? array_new((const Axis *const *)check->axes->pdata, check->axes->len)
                 : site_given(site->reader->plan, name);
}

static FormulaContext context_of(const Site *site, gint first_doubt)
{
    return (FormulaContext){
        .kind = kind_of, .value = value_of, .first_doubt = first_doubt, .user = (gpointer)site};
}

gboolean site_kind(const Site *site, const Formula *formula, Kind *kind)
{
    FormulaContext context = context_of(site, -1);
    gsize offset = 0;
    g_autoptr(GError) error = NULL;
    gboolean good = formula_kind(formula, &context, kind, &offset, &error);
    if (!good)
        site_fault(site, offset, error->message);
    return good;
}

Array *site_value(const Site *site, const Formula *formula, gint first_doubt)
{
    FormulaContext context = context_of(site, first_doubt);
    gsize offset = 0;
    g_autoptr(GError) error = NULL;
    Array *value = formula_evaluate(formula, &context, &offset, &error);
    if (!value)
        site_fault(site, offset, error->message);
    return value;
}

Array *site_shape(const Site *site, const Formula *formula)
{
    Array *shape = site_value(site, formula, -1);
    const char *dropped = shape ? array_dropped(shape) : NULL;
    if (dropped)
        faults_add(site->reader->plan->notices, site->line, site->column,
                   "%sthe formula leaves out %s, which not all its values have", site->where,
                   dropped);
    return shape;
}

Number *read_amount(Reader *reader, const TreeNode *node, const Unit *unit, Kind kind,
                    const char *where)
{
    Site site = site_of(reader, NULL, where, node);
    gsize offset = 0;
    g_autoptr(GError) error = NULL;
    g_autoptr(Formula) formula = formula_parse(node->text, &offset, &error);
    if (!formula) {
        site_fault(&site, offset, error->message);
        return NULL;
    }
    if (limits_could_be_two(node->text)) {
        g_autofree char *message =
            g_strdup_printf("`%s` is one number; write what `%s` leaves over, or both numbers as "
                            "limits",
                            node->key->text, node->text);
        site_fault(&site, 0, message);
        return NULL;
    }
    if (unit)
        formula_give_unit(formula, unit);
    Kind found;
    if (!site_find_names(&site, formula) || !site_kind(&site, formula, &found))
        return NULL;
    Number *number = formula_constant(formula);
    if (number && kind_equal(found, kind))
        return number;
    g_autofree char *asked = kind_text(kind), *said = kind_text(found);
    g_autofree char *message = g_strdup_printf("`%s` is %s here, not %s", node->key->text, asked,
                                               number ? said : "a formula");
    site_fault(&site, 0, message);
    number_free(number);
    return NULL;
}
