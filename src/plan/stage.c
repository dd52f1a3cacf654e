#include <standbook/plan/stage.h>

#include <standbook/base/error.h>
#include <string.h>

static void stage_free(gpointer data)
{
    Stage *stage = data;
    g_free(stage->text);
    g_free(stage->amount);
    g_free(stage->bare);
    formula_free(stage->formula);
    g_free(stage);
}

// How a stage is told by its first or last words. The first row that fits decides.
static const struct {
    const char *first, *last;
    StageKind kind;
    gboolean amount_needed, amount_allowed;
} shapes[] = {
    {"snug", "", STAGE_SNUG, FALSE, FALSE},
    {"+", "", STAGE_TURN, TRUE, TRUE},
    {"", " from snug", STAGE_ANGLE, TRUE, TRUE},
    {"slacken", "", STAGE_SLACKEN, FALSE, TRUE},
    {"draw", "", STAGE_DRAW, TRUE, TRUE},
    {"until", "", STAGE_UNTIL, TRUE, TRUE},
    {"wait", "", STAGE_WAIT, TRUE, TRUE},
    {"check", "", STAGE_CHECK, TRUE, TRUE},
    {"to slot within", "", STAGE_SLOT, TRUE, TRUE},
    {"to slot", "", STAGE_SLOT, FALSE, FALSE},
    {"", "", STAGE_TORQUE, TRUE, TRUE},
};

gboolean stage_is_torque(StageKind kind)
{
    return kind == STAGE_TORQUE || kind == STAGE_CHECK;
}

gboolean stage_is_angle(StageKind kind)
{
    return kind == STAGE_TURN || kind == STAGE_ANGLE;
}

gboolean stages_turn_past(const GPtrArray *stages, guint done, guint stage)
{
    StageKind kind = ((const Stage *)stages->pdata[done])->kind;
    return done == stage ? kind == STAGE_TURN : done > stage && stage_is_angle(kind);
}

static gboolean ends_word(const char *first, const char *text)
{
    gsize length = strlen(first);
    return length == 0 || first[0] == '+' || text[length] == '\0' || text[length] == ' ';
}

static gboolean shape_fits(gsize row, const char *text)
{
    return g_str_has_prefix(text, shapes[row].first) && ends_word(shapes[row].first, text) &&
           g_str_has_suffix(text, shapes[row].last);
}

static gboolean is_bare_angle(const char *amount)
{
    return g_str_has_suffix(amount, "°") || g_str_has_suffix(amount, "deg") ||
           g_str_has_suffix(amount, " turn");
}

// What parts two figures that are written as one torque: `10/25`, `10 - 25 N·m`, `12,5`; a blank
// where nothing else does, 0 for none. A fraction behind a whole number (`12 1/2`) is one figure.
static char parted_by(const char *amount)
{
    static const char figures[] = "0123456789.";
    gsize first = strspn(amount, figures);
    const char *sign = amount + first + strspn(amount + first, " ");
    gboolean parted = *sign && strchr(",;/-", *sign);
    const char *second = sign + (parted ? 1 : 0);
    second += strspn(second, " ");
    gsize length = strspn(second, figures);
    gboolean runs = first && length && (parted || second[length] != '/');
    if (runs && parted)
        return *sign;
    if (runs)
        return ' ';
    return '\0';
}

static const char *problem_of_two(const char *amount)
{
    switch (parted_by(amount)) {
    case 0:
        return NULL;
    case ',':
        return "a comma can be a decimal or part two stages; write 12.5 with a point, or 12 > 5 "
               "for two stages";
    case '/':
        return "a stroke can be a fraction or part two stages; write 0.5 for a half, or 1 > 2 for "
               "two stages";
    default:
        return "one stage has one torque; write > between stages, as in 10 > 25 N·m";
    }
}

// Whether a comma or semicolon stands in it outside the brackets of a formula: two stages were
// meant. A comma between two digits is a decimal, which the formula tells.
static gboolean has_comma(const char *amount)
{
    gint depth = 0;
    for (const char *at = amount; *at; at++) {
        depth += (strchr("([", *at) != NULL) - (strchr(")]", *at) != NULL);
        gboolean decimal =
            *at == ',' && at > amount && g_ascii_isdigit(at[-1]) && g_ascii_isdigit(at[1]);
        if (depth <= 0 && strchr(",;", *at) && !decimal)
            return TRUE;
    }
    return FALSE;
}

// Whether a torque stands in front of what an angle is added to it by: `30 N·m + 60°`.
static gboolean is_torque_and_angle(const char *amount)
{
    const char *plus = strchr(amount, '+');
    return plus && plus > amount && is_bare_angle(plus);
}

// What is wrong with a stage of this shape, NULL if nothing.
static const char *problem_of(gsize row, const char *amount, gboolean first)
{
    if (!shapes[row].amount_allowed && *amount)
        return "`snug` and `to slot` stand alone; write > before the next stage";
    if (shapes[row].amount_needed && !*amount)
        return "a stage is not finished here; write its torque, angle, check or time";
    if (stage_is_torque(shapes[row].kind) && problem_of_two(amount))
        return problem_of_two(amount);
    if (has_comma(amount))
        return "stages are parted by >, not by a comma; write 30 N·m > +60°, or snug > +90°";
    if (stage_is_torque(shapes[row].kind) && is_torque_and_angle(amount))
        return "stages are parted by >; write > before the angle: 30 N·m > +60°";
    if (stage_is_torque(shapes[row].kind) && is_bare_angle(amount))
        return "an angle says from where: write +90° from where the bolt stands, or 90° from snug";
    if (shapes[row].kind == STAGE_ANGLE && first)
        return "nothing is snug yet; write a snug stage or a torque before this angle";
    return NULL;
}

// Reads one stage, `text` without spaces around it. NULL with an error.
static Stage *stage_read(const char *text, gboolean first, GError **error)
{
    gsize row = 0;
    while (!shape_fits(row, text))
        row++;
    gsize from = strlen(shapes[row].first);
    from += strspn(text + from, " ");
    gsize length = strlen(text) - from - strlen(shapes[row].last);
    g_autofree char *amount = g_strstrip(g_strndup(text + from, length));
    const char *problem = problem_of(row, amount, first);
    if (problem) {
        g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE, problem);
        return NULL;
    }
    Stage *stage = g_new0(Stage, 1);
    stage->kind = shapes[row].kind;
    stage->text = g_strdup(text);
    stage->amount_offset = (gsize)g_utf8_pointer_to_offset(text, text + from);
    stage->amount = *amount ? g_steal_pointer(&amount) : NULL;
    return stage;
}

GPtrArray *stages_read(const char *text, gsize *offset, GError **error)
{
    g_autoptr(GPtrArray) stages = g_ptr_array_new_with_free_func(stage_free);
    g_auto(GStrv) parts = g_strsplit(*text ? text : " ", ">", STAGES_MOST + 1);
    const char *at = text;
    for (guint i = 0; parts[i]; i++) {
        gsize length = strlen(parts[i]);
        const char *start = at + strspn(at, " ");
        *offset = (gsize)g_utf8_pointer_to_offset(text, start);
        if (i == STAGES_MOST) {
            g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                                "there are more than 64 stages; check the > signs");
            return NULL;
        }
        Stage *stage = stage_read(g_strstrip(parts[i]), i == 0, error);
        if (!stage)
            return NULL;
        stage->offset = *offset;
        stage->amount_offset += *offset;
        g_ptr_array_add(stages, stage);
        at += length + 1;
    }
    return g_steal_pointer(&stages);
}
