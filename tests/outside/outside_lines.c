// Reads lines `UNIT<tab>TEXT` (UNIT `-` for a pure number) and answers each in a line: `= VALUE`,
// with
// `<` or `>` for a bound and `± DOUBT` where one was typed, all exact fractions in base units; or
// `! COLUMN what is wrong`. What the scripts of this folder compare with sources outside the
// project.
//   outside_lines [time]    `time`: instead of the answers the CPU time of a line, in µs
#include <standbook/value/reading.h>
#include <stdio.h>
#include <string.h>
#include <time.h>

static void answer(const Reading *reading)
{
    static const char *const bounds[] = {"", "<", ">"};
    g_autofree char *value = number_fraction(reading->value);
    g_autofree char *doubt = reading->doubt ? number_fraction(reading->doubt) : NULL;
    printf("= %s%s%s%s\n", bounds[reading->bound], value, doubt ? " ± " : "", doubt ? doubt : "");
}

static void read_line(const char *unit_text, const char *text, gboolean quiet)
{
    g_autoptr(Unit) unit = strcmp(unit_text, "-") == 0 ? NULL : unit_parse(unit_text, NULL);
    Reading reading;
    gsize column = 0;
    g_autoptr(GError) error = NULL;
    if (!reading_parse(text, unit, &reading, &column, &error)) {
        if (!quiet)
            printf("! %zu %s\n", column, error->message);
        return;
    }
    if (!quiet)
        answer(&reading);
    reading_clear(&reading);
}

int main(int argc, char **argv)
{
    gboolean quiet = argc > 1 && strcmp(argv[1], "time") == 0;
    char *line = NULL;
    size_t room = 0;
    gulong count = 0;
    clock_t spent = 0;
    for (ssize_t length; (length = getline(&line, &room, stdin)) > 0;) {
        line[length - (line[length - 1] == '\n')] = '\0';
        char *tab = strchr(line, '\t');
        if (!tab)
            continue;
        *tab = '\0';
        clock_t before = clock();
        read_line(line, tab + 1, quiet);
        spent += clock() - before;
        count++;
    }
    if (quiet && count)
        printf("%.2f µs a line, %lu lines\n", (double)spent / CLOCKS_PER_SEC * 1e6 / (double)count,
               count);
    free(line);
    return 0;
}
