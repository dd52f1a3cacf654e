// How long it takes to make sense of what stands in a field after each key, for lines a person
// types: of all beginnings of each line the slowest one counts. Measures only, and never fails on
// time.
#include <standbook/value/reading.h>
#include <stdio.h>
#include <string.h>
#include <time.h>

enum { TIMES = 400, ROUNDS = 5, AIM = 50 };

static const struct {
    const char *unit, *typed;
} lines[] = {
    {"mm", "59.790"},
    {"mm", "-0.02"},
    {"mm", "<0.03"},
    {"mm", "59.790 ± 0.002"},
    {"mm", "2-5/8\""},
    {"in", "2 5/8 + .010"},
    {"mm", "(59.79 + 59.80 + 59.81 + 59.79) / 4"},
    {"mm", "3.5 in - 2 × 0.0125 in"},
    {"N·m", "65 ft-lb"},
    {"°", "12° 30' 15\""},
    {"°C", "68.5 °F"},
    {"kPa", "150 psi + 2 bar / 3"},
    {"cc", "4 * 3.1416 / 4 * 8.6^2 * 8.6 cc"},
    {"mm", "((59.79 + 0.01) * 2 - (3 + 11/64)) / 6 + 7 × 8 - 10^2 / 3"},
    // what is wrong is worked out as often
    {"mm", "59,790,1"},
    {"mm", "2-40/32"},
    {"mm", "12 milimetres"},
};

static double seconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

// Microseconds of CPU of one text; the best of a few rounds, as others work beside.
static double time_of(const char *text, const Unit *unit)
{
    double best = 0;
    for (int round = 0; round < ROUNDS; round++) {
        double before = seconds();
        for (int i = 0; i < TIMES; i++) {
            Reading reading;
            if (reading_parse(text, unit, &reading, NULL, NULL))
                reading_clear(&reading);
        }
        double each = 1e6 * (seconds() - before) / TIMES;
        best = round == 0 || each < best ? each : best;
    }
    return best;
}

static void measure(const char *unit_text, const char *typed)
{
    g_autoptr(Unit) unit = unit_parse(unit_text, NULL);
    double slowest = 0;
    for (const char *end = typed; *end;) {
        end = g_utf8_next_char(end);
        g_autofree char *beginning = g_strndup(typed, (gsize)(end - typed));
        double each = time_of(beginning, unit);
        slowest = each > slowest ? each : slowest;
    }
    glong width = 50 - g_utf8_strlen(typed, -1);
    printf("a key of %s%*s %9.3f µs  aim %d%s\n", typed, (int)MAX(width, 1), "", slowest, AIM,
           slowest > AIM ? "  MISSED" : "");
}

int main(void)
{
    for (gsize i = 0; i < G_N_ELEMENTS(lines); i++)
        measure(lines[i].unit, lines[i].typed);
    return 0;
}
