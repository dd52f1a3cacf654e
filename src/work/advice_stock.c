// What there is to put in where a setting has a stock, and what stands in.
#include <standbook/work/advice.h>

enum { SHOWN = 7 }; // of a longer stock those about the one in question

// The size nearest to a position.
static guint nearest(const GPtrArray *stock, const Number *position)
{
    guint best = 0;
    g_autoptr(Number) least = NULL;
    for (guint i = 0; i < stock->len; i++) {
        g_autoptr(Number) between = number_subtract(stock->pdata[i], position);
        g_autoptr(Number) away = number_abs(between);
        if (least && number_compare(away, least) >= 0)
            continue;
        best = i;
        number_free(least);
        least = g_steal_pointer(&away);
    }
    return best;
}

// The first size that is shown: the one advised, else the one that stands in, in the middle.
static guint first_shown(const Trials *trials, const NextMove *next)
{
    const GPtrArray *stock = trials->check->setting->stock;
    const Trial *last = trials_last(trials);
    gboolean advised = next && next_move_moves(next) && next->told;
    g_autoptr(Number) about = advised                  ? next_move_position(trials, next)
                              : last && last->position ? number_copy(last->position)
                                                       : NULL;
    guint middle = about ? nearest(stock, about) : 0;
    return stock->len <= SHOWN || middle < SHOWN / 2 ? 0
                                                     : MIN(middle - SHOWN / 2, stock->len - SHOWN);
}

char *advice_stock(const Trials *trials, const NextMove *next)
{
    const PlanSetting *setting = trials->check->setting;
    const Trial *last = trials_last(trials);
    const Number *in = last ? last->position : NULL;
    if (!setting->stock || !setting->stock->len)
        return NULL;
    GString *words = g_string_new("In stock");
    guint first = first_shown(trials, next), count = MIN(setting->stock->len, SHOWN);
    if (count < setting->stock->len)
        g_string_append_printf(words, ", %u of %u", count, setting->stock->len);
    for (guint i = first; i < first + count; i++) {
        g_autofree char *size = trial_position_words(trials->check, setting->stock->pdata[i]);
        g_string_append_printf(words, "%s %s", i == first ? ":" : ",", size);
    }
    g_string_append_printf(words, "%s%s; ", setting->unit_text ? " " : "",
                           setting->unit_text ? setting->unit_text : "");
    g_autofree char *there = trial_position_words(trials->check, in);
    g_string_append_printf(words, "%s stands in%s.", in ? there : "none",
                           in && !setting_has_stock(setting, in) ? ", which is none of them" : "");
    return g_string_free(words, FALSE);
}
