// The arithmetic of kinds: exponent by exponent.
#include <standbook/value/unit.h>

#include <string.h>

gboolean kind_equal(Kind one, Kind other)
{
    return memcmp(&one, &other, sizeof one) == 0;
}

gboolean kind_is_pure(Kind kind)
{
    return kind_equal(kind, (Kind){0});
}

// one + times × other, exponent by exponent.
static Kind kind_sum(Kind one, Kind other, gint times)
{
    return (Kind){
        .length = (gint8)(one.length + times * other.length),
        .mass = (gint8)(one.mass + times * other.mass),
        .time = (gint8)(one.time + times * other.time),
        .angle = (gint8)(one.angle + times * other.angle),
        .temperature = (gint8)(one.temperature + times * other.temperature),
    };
}

Kind kind_multiply(Kind one, Kind other)
{
    return kind_sum(one, other, 1);
}

Kind kind_divide(Kind one, Kind other)
{
    return kind_sum(one, other, -1);
}

Kind kind_power(Kind kind, gint exponent)
{
    return kind_sum((Kind){0}, kind, exponent);
}

gboolean kind_root(Kind kind, Kind *root)
{
    if ((kind.length | kind.mass | kind.time | kind.angle | kind.temperature) & 1) {
        return FALSE;
    }
    *root =
        (Kind){kind.length / 2, kind.mass / 2, kind.time / 2, kind.angle / 2, kind.temperature / 2};
    return TRUE;
}
