// What the adviser found odd, in words.
#include "next_move_inside.h"

#include <standbook/work/advice.h>

#include <math.h>
#include <string.h>

typedef struct {
    const Trials *trials;
    const NextMove *next;
    const SettingFinding *finding;
    char *was, *is; // as the gauge shows them
} Found;

static char *slip_words(const Found *found)
{
    return g_strdup_printf("%s does not follow from the move, %s was expected: slipped, misread, "
                           "or the zero was lost. Read again, or strike.",
                           found->is, found->was);
}

static char *shift_words(const Found *found)
{
    return g_strdup_printf("It moved %s on tightening, %s before: other torque, other wrench, not "
                           "seated?",
                           found->is, found->was);
}

static char *place_words(const Found *found)
{
    const Requirement *const *made = (const Requirement *const *)found->trials->made;
    return g_strdup_printf("Place %s no longer stands as it did to place %s.",
                           made[next_move_place(found->trials, found->finding->place)]->place,
                           made[next_move_place(found->trials, 0)]->place);
}

static char *wrong_way_words(const Found *found)
{
    (void)found;
    return g_strdup("It answers the other way: check direction, or the zero.");
}

static char *slope_words(const Found *found)
{
    return g_strdup_printf("It answers %.1f times as much as the geometry says: wrong pitch, or "
                           "something slips.",
                           found->finding->is);
}

static char *cannot_words(const Found *found)
{
    const Requirement *made = found->trials->made[next_move_place(found->trials, 0)];
    g_autoptr(Number) width = number_subtract(made->upper, made->lower);
    g_autofree char *room = check_width_words(found->trials->check, width);
    return g_strdup_printf("Spread over rotation %s and the gauge's %s leave no room in %s: no "
                           "setting can be shown to be inside; look at the part.",
                           found->was, found->is, room);
}

static char *coarse_words(const Found *found)
{
    g_autoptr(Number) finer = next_move_number(found->finding->is);
    const Unit *unit = found->trials->check->unit;
    g_autofree char *gauge = unit_show(unit, finer, found->trials->check->decimals + 1);
    return g_strdup_printf("As near as this gauge can tell; %.0f in 10. A gauge of %s would settle "
                           "it.",
                           fmin(10 * found->finding->was, 10), gauge);
}

static char *reach_words(const Found *found)
{
    return g_strdup_printf("The %s ends before the aim: at its stop expect %s.",
                           found->trials->check->setting->move, found->is);
}

static char *many_words(const Found *found)
{
    return g_strdup_printf("%.0f moves: stop adjusting, look for a burr, a bent bracket, a moving "
                           "datum.",
                           found->finding->is);
}

void next_move_say_finding(const Trials *trials, const NextMove *next,
                           const SettingFinding *finding, GPtrArray *sentences)
{
    static char *(*const words[SETTING_FINDINGS])(const Found *) = {
        [SETTING_SLIP] = slip_words,       [SETTING_SHIFT] = shift_words,
        [SETTING_PLACE] = place_words,     [SETTING_WRONG_WAY] = wrong_way_words,
        [SETTING_SLOPE_OFF] = slope_words, [SETTING_CANNOT] = cannot_words,
        [SETTING_COARSE] = coarse_words,   [SETTING_OUT_OF_REACH] = reach_words,
        [SETTING_TOO_MANY] = many_words,
    };
    if (!words[finding->kind])
        return;
    Found found = {trials, next, finding, next_move_reading(trials, next, finding->was),
                   next_move_reading(trials, next, finding->is)};
    g_ptr_array_add(sentences, words[finding->kind](&found));
    g_free(found.was);
    g_free(found.is);
}
