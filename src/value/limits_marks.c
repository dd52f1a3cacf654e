#include "limits_marks.h"
#include <standbook/value/number.h>
#include <standbook/value/unit.h>
#include <string.h>

static const char DIGITS[] = "0123456789.,";
static const char BLANKS[] = " \t";

Mark mark_find(const char *text, const char *const marks[])
{
    for (gsize i = 0; marks[i]; i++) {
        const char *at = strstr(text, marks[i]);
        if (at) {
            return (Mark){at, strlen(marks[i])};
        }
    }
    return (Mark){NULL, 0};
}

Mark mark_dots(const char *text, gboolean *doubtful)
{
    static const char *const DOTS[] = {"…", "..", NULL};
    Mark dots = mark_find(text, DOTS);
    if (dots.at == NULL || dots.at[0] != '.' || dots.at[2] != '.') {
        return dots;
    }
    const char *behind = dots.at + strlen("...");
    gsize whole = strspn(behind, "0123456789");
    gboolean apart = whole == 0 || behind[whole] == '.' || behind[whole] == ',';
    *doubtful = !apart && text[strspn(text, " +-")] != '.';
    return (Mark){dots.at, apart ? strlen("...") : strlen("..")};
}

Mark mark_dash(const char *text)
{
    const char *first = text + strspn(text, "+-");
    const char *behind = first + strspn(first, DIGITS);
    const char *dash = behind + strcspn(behind, "-+*/()[]");
    const char *wide = strstr(behind, "–");
    Mark mark = wide ? (Mark){wide, strlen("–")} : (Mark){*dash == '-' ? dash : NULL, 1};
    if (first == behind || mark.at == NULL) {
        return (Mark){NULL, 0};
    }
    const char *second = mark.at + mark.length;
    second += strspn(second, " ");
    second += strspn(second, "-");
    const char *end = second + strspn(second, DIGITS);
    gboolean fraction = *end == '/' && g_ascii_isdigit(end[1]);
    return end == second || fraction ? (Mark){NULL, 0} : mark;
}

static gsize sign_length(const char *at)
{
    static const char *const SIGNS[] = {"+", "-", "−"};
    for (gsize i = 0; i < G_N_ELEMENTS(SIGNS); i++) {
        if (g_str_has_prefix(at, SIGNS[i])) {
            return strlen(SIGNS[i]);
        }
    }
    return 0;
}

static gboolean begins_deviation(const char *text, const char *at)
{
    gsize sign = sign_length(at);
    gsize digits = strspn(at + sign, DIGITS);
    gboolean zero = at[0] == '0' && strspn(at, "0.,") == digits;
    gboolean apart = at > text && strchr(" \t/", at[-1]) != NULL;
    return apart && digits > 0 && (sign > 0 || zero);
}

// From where a deviation begins, without its plus, to where the blanks and slash before `end` do.
static Mark deviation_mark(const char *at, const char *end)
{
    at += *at == '+' ? 1 : 0;
    while (end > at && strchr(" \t/", end[-1])) {
        end--;
    }
    return (Mark){at, (gsize)(end - at)};
}

gboolean mark_deviations(const char *text, const char *end, Deviations *deviations)
{
    const char *starts[2] = {NULL, NULL};
    gsize count = 0, signs = 0;
    for (const char *at = text; at < end; at++) {
        if (!begins_deviation(text, at)) {
            continue;
        }
        if (count == G_N_ELEMENTS(starts)) {
            return FALSE;
        }
        starts[count++] = at;
        signs += sign_length(at) > 0 ? 1 : 0;
    }
    gboolean unit = FALSE;
    if (count < G_N_ELEMENTS(starts) || signs == 0 || !mark_quantity(text, starts[0], &unit)) {
        return FALSE;
    }
    *deviations = (Deviations){.middle = {text, (gsize)(starts[0] - text)},
                               .one = deviation_mark(starts[0], starts[1]),
                               .other = {starts[1] + (*starts[1] == '+' ? 1 : 0), 0}};
    deviations->other.length = (gsize)(end - deviations->other.at);
    return TRUE;
}

gboolean mark_quantity(const char *start, const char *end, gboolean *unit)
{
    g_autofree char *points = mark_points(start, end);
    const char *text = g_strstrip(points);
    text += sign_length(text);
    NumberTyped typed;
    if (!number_scan(text, &typed, NULL, NULL)) {
        return FALSE;
    }
    const char *rest = text + typed.length;
    number_typed_clear(&typed);
    rest += strspn(rest, BLANKS);
    *unit = *rest != '\0';
    return unit_span(rest) == strlen(rest);
}

Mark mark_between(const char *start, const char *end)
{
    static const char *const DASHES[] = {" - ", " – ", " − "};
    for (gsize i = 0; i < G_N_ELEMENTS(DASHES); i++) {
        const char *at = g_strstr_len(start, end - start, DASHES[i]);
        const char *behind = at ? at + strlen(DASHES[i]) : NULL;
        gboolean unit = FALSE;
        if (at && mark_quantity(start, at, &unit) && mark_quantity(behind, end, &unit)) {
            return (Mark){at, (gsize)(behind - at)};
        }
    }
    return (Mark){NULL, 0};
}

static gboolean begins_with(const char *text, const char *words)
{
    return g_ascii_strncasecmp(text, words, strlen(words)) == 0;
}

Mark mark_words(const char **start)
{
    static const struct {
        const char *front, *between;
    } WORDS[] = {{"between ", " and "}, {"from ", " to "}, {"", " to "}};
    for (gsize i = 0; i < G_N_ELEMENTS(WORDS); i++) {
        const char *at = strstr(*start, WORDS[i].between);
        if (at && begins_with(*start, WORDS[i].front)) {
            *start += strlen(WORDS[i].front);
            return (Mark){at, strlen(WORDS[i].between)};
        }
    }
    return (Mark){NULL, 0};
}

Mark mark_both(const char **start)
{
    static const struct {
        const char *front, *between;
    } WORDS[] = {{"min ", " max "}, {"min. ", " max. "}, {"at least ", " at most "}};
    for (gsize i = 0; i < G_N_ELEMENTS(WORDS); i++) {
        const char *at =
            begins_with(*start, WORDS[i].front) ? strstr(*start, WORDS[i].between) : NULL;
        gboolean unit = FALSE;
        if (at && mark_quantity(*start + strlen(WORDS[i].front), at, &unit)) {
            *start += strlen(WORDS[i].front);
            return (Mark){at, strlen(WORDS[i].between)};
        }
    }
    return (Mark){NULL, 0};
}

char *mark_points(const char *start, const char *end)
{
    char *text = g_strndup(start, (gsize)(end - start));
    gint depth = 0;
    for (char *at = text; *at; at++) {
        depth += *at == '(' || *at == '[' ? 1 : *at == ')' || *at == ']' ? -1 : 0;
        gsize run = strspn(at, DIGITS), whole = strcspn(at, ".,");
        gboolean only = whole < run && at[whole] == ',' && g_ascii_isdigit(at[whole + 1]) &&
                        strcspn(at + whole + 1, ".,") + whole + 1 >= run;
        if (depth == 0 && only) {
            at[whole] = '.';
        }
        at += run > 0 ? run - 1 : 0;
    }
    return text;
}
