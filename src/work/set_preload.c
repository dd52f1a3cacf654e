#include <standbook/work/set_preload.h>

#include <standbook/value/formula.h>

static const char *lubricant_at(const PlanGroup *group, guint position)
{
    for (guint i = 0; i < group->lubricants->len; i++) {
        const PlanLubricant *each = group->lubricants->pdata[i];
        if (each->positions[position])
            return each->words;
    }
    return NULL;
}

// The gasket that the plan fits in the step of the set, or new with its bolts, by its name; NULL
// for none.
static const char *gasket_of(const PlanGroup *group)
{
    for (guint i = 0; i < group->with_new->len; i++)
        if (names_gasket(group->with_new->pdata[i]))
            return group->with_new->pdata[i];
    for (guint i = 0; i < group->step->parts->len; i++) {
        const PlanPart *part = group->step->parts->pdata[i];
        if (names_gasket(part->name))
            return part->name;
    }
    return NULL;
}

static Band sum(Band one, Band other)
{
    return (Band){one.low + other.low, one.high + other.high};
}

// An amount that no reading changes, in N·m or radians; 0 for none. FALSE if a reading does.
static gboolean constant_of(const Stage *stage, double *amount)
{
    g_autoptr(Number) constant = stage->formula ? formula_constant(stage->formula) : NULL;
    double value = constant ? number_double(constant) : 0;
    *amount = stage->kind == STAGE_TORQUE ? value : value * G_PI / 180;
    return constant || !stage->formula;
}

// Snug by feel is a tenth to three tenths of the torque that it stands for (common practice, no
// published source).
static Band snug_by_feel(const PlanGroup *group)
{
    double torque = group->instead_of ? number_double(group->instead_of) : 0;
    return (Band){0.1 * torque, 0.3 * torque};
}

static const double slot = G_PI / 3; // from one slot of six to the next

// What a stage leaves of torque and angle; both are nothing behind what is slackened, drawn, pulled
// until something is read, or by an amount that is worked out from a reading.
static void take_stage(const PlanGroup *group, const Stage *stage, Band *torque, Band *angle)
{
    double amount;
    gboolean known = constant_of(stage, &amount);
    gboolean pulls = stage->kind != STAGE_WAIT && stage->kind != STAGE_CHECK;
    switch (pulls && !known ? STAGE_UNTIL : stage->kind) {
    case STAGE_WAIT:
    case STAGE_CHECK:
        break;
    case STAGE_TURN:
        *angle = sum(*angle, bolt_angle_band(amount));
        break;
    case STAGE_SLOT:
        *angle = sum(*angle, (Band){0, amount > 0 ? amount : slot});
        break;
    case STAGE_ANGLE:
        *angle = bolt_angle_band(amount);
        break;
    case STAGE_TORQUE:
    case STAGE_SNUG:
        *torque = stage->kind == STAGE_SNUG ? snug_by_feel(group) : bolt_torque_band(amount);
        *angle = (Band){0};
        break;
    default:
        *torque = *angle = (Band){0};
    }
}

// The last torque, with the angles behind it. FALSE if that is not known beforehand.
static gboolean take_stages(const PlanTightening *tightening, BoltAsked *asked)
{
    Band torque = {0}, angle = {0};
    for (guint i = 0; i < tightening->stages->len; i++)
        take_stage(tightening->group, tightening->stages->pdata[i], &torque, &angle);
    *(angle.high > 0 ? &asked->snug : &asked->torque) = torque;
    asked->angle = angle;
    return torque.high > 0;
}

// What is said of a bolt: its bands, or what is lacking for them.
typedef struct {
    BoltAsked asked;
    BoltEstimate estimate;
    Band pull;     // upper end 0: not known
    char *lacking; // what the plan would have to say; NULL for nothing
} SetPreload;

static void set_preload_clear(SetPreload *preload)
{
    bolt_estimate_clear(&preload->estimate);
    g_free(preload->lacking);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(SetPreload, set_preload_clear)

static gboolean ask(const PlanTightening *tightening, guint position, SetPreload *preload,
                    GError **error)
{
    const PlanGroup *group = tightening->group;
    BoltAsked *asked = &preload->asked;
    if (!group->thread) {
        preload->lacking = g_strdup("say also the thread");
        return FALSE;
    }
    if (!thread_parse(group->thread->text, &asked->thread, error))
        return FALSE;
    asked->strength = group->strength ? group->strength->text : NULL;
    asked->lubricant = lubricant_at(group, position);
    asked->material = group->clamps ? group->clamps->text : NULL;
    asked->gasket = group->clamps ? NULL : gasket_of(group);
    asked->clamped = group->length ? number_double(group->length) : 0;
    if (take_stages(tightening, asked))
        return TRUE;
    preload->lacking = g_strdup("its last stage is no torque or angle that is known beforehand");
    return FALSE;
}

static void set_preload(const PlanTightening *tightening, guint position, SetPreload *preload)
{
    g_autoptr(GError) error = NULL;
    if (ask(tightening, position, preload, &error) &&
        bolt_estimate(&preload->asked, &preload->estimate, &error))
        preload->pull =
            preload->estimate.pull[preload->asked.angle.high > 0 ? PULL_BY_ANGLE : PULL_BY_TORQUE];
    else if (error)
        preload->lacking = g_strdup(error->message);
}

static char *caution_of(const PlanTightening *tightening, const SetPreload *preload)
{
    return preload->pull.high > 0
               ? proof_caution(&preload->estimate, preload->pull, tightening->group->once)
               : NULL;
}

char *set_caution(const PlanTightening *tightening, guint stage, guint position)
{
    g_auto(SetPreload) preload = {0};
    if (((const Stage *)tightening->stages->pdata[stage - 1])->kind == STAGE_CHECK)
        return g_strdup("A bolt that does not move may still have lost 10 to 15 % of its pull.");
    if (!tightening->group->strength)
        return NULL; // without a class there is no proof load
    set_preload(tightening, position, &preload);
    return caution_of(tightening, &preload);
}

static char *stages_text(const PlanTightening *tightening)
{
    g_autoptr(GString) text = g_string_new(NULL);
    for (guint i = 0; i < tightening->stages->len; i++)
        g_string_append_printf(text, "%s%s", i ? ", " : "",
                               ((const Stage *)tightening->stages->pdata[i])->text);
    return g_string_free(g_steal_pointer(&text), FALSE);
}

static char *substitute_of(const PlanTightening *tightening, const SetPreload *preload)
{
    if (!tightening->group->instead_of || preload->pull.high <= 0)
        return NULL;
    double torque = number_double(tightening->group->instead_of);
    g_autofree char *stages = stages_text(tightening);
    g_autofree char *wanted = g_strdup_printf("%.4g N·m", torque);
    BoltAsked other = preload->asked;
    other.torque = bolt_torque_band(torque);
    other.snug = other.angle = (Band){0};
    g_auto(BoltEstimate) estimate = {0};
    return bolt_estimate(&other, &estimate, NULL)
               ? substitute_words(stages, preload->pull, wanted, estimate.pull[PULL_BY_TORQUE])
               : NULL;
}

char *set_substitute(const PlanTightening *tightening, guint position)
{
    g_auto(SetPreload) preload = {0};
    if (!tightening->group->instead_of)
        return NULL;
    set_preload(tightening, position, &preload);
    return substitute_of(tightening, &preload);
}

GPtrArray *set_preload_told(const PlanTightening *tightening, guint position)
{
    GPtrArray *told = g_ptr_array_new_with_free_func(g_free);
    g_auto(SetPreload) preload = {0};
    set_preload(tightening, position, &preload);
    if (preload.pull.high > 0) {
        char *substitute = substitute_of(tightening, &preload);
        g_autofree char *words = preload_words(preload.pull);
        g_autofree char *share = proof_share_words(&preload.estimate, preload.pull);
        char *caution = caution_of(tightening, &preload);
        g_ptr_array_add(told, g_strconcat("pulled to ", words, share ? ", " : "", share, NULL));
        if (caution)
            g_ptr_array_add(told, caution);
        if (substitute)
            g_ptr_array_add(told, substitute);
    } else
        g_ptr_array_add(told, g_strdup_printf("how far it is pulled cannot be worked out: %s",
                                              preload.lacking));
    for (guint i = 0; preload.pull.high > 0 && i < preload.estimate.assumed->len; i++)
        g_ptr_array_add(told, g_strconcat("assumed: ", preload.estimate.assumed->pdata[i], NULL));
    return told;
}
