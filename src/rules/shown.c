#include <standbook/rules/shown.h>

enum { PARTS = 10 }; // of what is asked, one may be missing or too many

Shown shown_against(const Number *shown, const Number *asked)
{
    if (number_sign(asked) <= 0)
        return SHOWN_AS_ASKED;
    g_autoptr(Number) part = number_from_ratio(1, PARTS), most = number_multiply(asked, part);
    g_autoptr(Number) low = number_subtract(asked, most), high = number_add(asked, most);
    return number_compare(shown, low) < 0    ? SHOWN_LOW
           : number_compare(shown, high) > 0 ? SHOWN_HIGH
                                             : SHOWN_AS_ASKED;
}
