// Typed readings: the first line is the unit asked for (empty: a pure number), the rest is typed.
#include "fuzz.h"

#include <standbook/value/reading.h>

// What was typed, typed again, is the same value.
static void must_be_stable(const Reading *reading, const Unit *unit)
{
    Reading again;
    must(reading_parse(reading->typed, unit, &again, NULL, NULL), "what was read can be typed");
    must(number_equal(reading->value, again.value), "typed again it is the same value");
    must(reading->bound == again.bound, "typed again it is the same bound");
    must(!reading->doubt == !again.doubt, "typed again it has a doubt or none");
    reading_clear(&again);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    g_autofree char *text = fuzz_text(data, size);
    char *typed = strchr(text, '\n');
    if (typed)
        *typed++ = '\0';
    else
        typed = text + strlen(text);
    g_autoptr(Unit) unit = *text ? unit_parse(text, NULL) : NULL;
    gsize offset = 0, length = 0;
    GError *error = NULL;
    Reading reading;
    if (reading_parse(typed, unit, &reading, &offset, &error)) {
        must(number_sign(reading.place) > 0, "the last place typed is above nought");
        must(!reading.doubt || number_sign(reading.doubt) >= 0, "a doubt is not below nought");
        must_be_stable(&reading, unit);
        reading_clear(&reading);
    } else {
        must(offset <= strlen(typed), "the column lies in the text");
        must_say(error);
    }
    // Inside a line only whole characters come this far.
    if (g_utf8_validate(typed, -1, NULL) && reading_begins(typed) &&
        reading_span(typed, &length, &offset, NULL))
        must(length > 0 && length <= strlen(typed), "a number's span lies in the text");
    return 0;
}
