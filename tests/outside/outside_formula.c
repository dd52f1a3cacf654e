// Reads lines `UNIT<tab>FORMULA` (UNIT `-` for a pure number) of formulas without names and answers
// each with the exact value in that unit, `= FRACTION`, or with `! what is wrong`. What tables.py
// compares with published figures.
#include <standbook/value/formula.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void work_out(const char *unit_text, const char *text)
{
    g_autoptr(GError) error = NULL;
    g_autoptr(Unit) unit = strcmp(unit_text, "-") == 0 ? NULL : unit_parse(unit_text, NULL);
    g_autoptr(Formula) formula = formula_parse(text, NULL, &error);
    g_autoptr(Number) value = formula ? formula_constant(formula) : NULL;
    if (!value) {
        printf("! %s\n", error ? error->message : "it is no constant");
        return;
    }
    g_autoptr(Number) shown = unit ? unit_from_base(unit, value) : number_copy(value);
    g_autofree char *fraction = number_fraction(shown);
    printf("= %s\n", fraction);
}

int main(void)
{
    char *line = NULL;
    size_t room = 0;
    for (ssize_t length; (length = getline(&line, &room, stdin)) > 0;) {
        line[length - (line[length - 1] == '\n')] = '\0';
        char *tab = strchr(line, '\t');
        if (!tab)
            continue;
        *tab = '\0';
        work_out(line, tab + 1);
    }
    free(line);
    return 0;
}
