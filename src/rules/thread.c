#include <standbook/rules/thread.h>

#include <math.h>
#include <standbook/base/error.h>
#include <string.h>

static const double millimetre = 1e-3, inch = 25.4e-3, megapascal = 1e6, ksi = 6894757.293168;

// READING ---------------------------------------------------------------------------------------

static const struct {
    double diameter, pitch; // mm
} coarse[] = {
    {1.6, 0.35}, {2, 0.4},  {2.5, 0.45}, {3, 0.5},  {3.5, 0.6}, {4, 0.7},  {5, 0.8},
    {6, 1},      {7, 1},    {8, 1.25},   {9, 1.25}, {10, 1.5},  {11, 1.5}, {12, 1.75},
    {14, 2},     {16, 2},   {18, 2.5},   {20, 2.5}, {22, 2.5},  {24, 3},   {27, 3},
    {30, 3.5},   {33, 3.5}, {36, 4},     {39, 4},
};

static const struct {
    const char *size;
    guint unc, unf; // threads per inch
} unified[] = {
    {"#4", 40, 48},  {"#5", 40, 44},   {"#6", 32, 40},  {"#8", 32, 36},
    {"#10", 24, 32}, {"#12", 24, 28},  {"1/4", 20, 28}, {"5/16", 18, 24},
    {"3/8", 16, 24}, {"7/16", 14, 20}, {"1/2", 13, 20}, {"9/16", 12, 18},
    {"5/8", 11, 18}, {"3/4", 10, 16},  {"7/8", 9, 14},  {"1", 8, 12},
};

// Digits with a point; what strtod would read beyond them (`0x10`, `1e3`) is no size.
static double plain(const char *text, const char **end)
{
    static const char figures[] = "0123456789";
    gsize length = strspn(text, figures);
    length += text[length] == '.' ? 1 + strspn(text + length + 1, figures) : 0;
    g_autofree char *digits = g_strndup(text, length);
    *end = text + length;
    return g_ascii_strtod(digits, NULL);
}

// A positive decimal or fraction that begins here, and where it ends; 0 if there is none.
static double amount(const char *text, const char **end)
{
    if (!g_ascii_isdigit(*text))
        return 0;
    double value = plain(text, end);
    if (**end == '/' && g_ascii_isdigit((*end)[1]))
        value /= plain(*end + 1, end);
    return isfinite(value) ? value : 0;
}

static const char *behind_blanks(const char *text)
{
    return text + strspn(text, " ");
}

// The word, if it stands here alone; behind it then, else NULL.
static const char *skip_word(const char *text, const char *word)
{
    gsize length = strlen(word);
    gboolean there = g_ascii_strncasecmp(text, word, length) == 0 && !g_ascii_isalnum(text[length]);
    return there ? behind_blanks(text + length) : NULL;
}

static const char *skip_times(const char *text)
{
    static const char *const signs[] = {"×", "x", "X", "*"};
    for (gsize i = 0; i < G_N_ELEMENTS(signs); i++)
        if (g_str_has_prefix(text, signs[i]))
            return behind_blanks(text + strlen(signs[i]));
    return NULL;
}

static double coarse_pitch(double diameter)
{
    for (gsize i = 0; i < G_N_ELEMENTS(coarse); i++)
        if (fabs(coarse[i].diameter - diameter) < 1e-6)
            return coarse[i].pitch;
    return 0;
}

// Behind the M: diameter and pitch in mm. Where the text goes on, or NULL.
static const char *read_metric(const char *text, Thread *thread)
{
    double diameter = amount(text, &text), pitch = coarse_pitch(diameter);
    const char *times = skip_times(behind_blanks(text));
    if (times)
        pitch = amount(times, &text);
    *thread = (Thread){.diameter = diameter * millimetre, .pitch = pitch * millimetre};
    return diameter > 0 ? text : NULL;
}

// The size as written (`3/8`, `#10`), with its threads per inch or the series that says them.
static const char *read_unified(const char *text, Thread *thread)
{
    gboolean numbered = *text == '#';
    const char *end = NULL;
    double size = amount(text + (numbered ? 1 : 0), &end);
    if (!(size > 0))
        return NULL;
    g_autofree char *name = g_strndup(text, (gsize)(end - text));
    end = behind_blanks(*end == '"' ? end + 1 : end);
    double per_inch = *end == '-' ? amount(behind_blanks(end + 1), &end) : 0;
    const char *unc = skip_word(behind_blanks(end), "UNC"),
               *unf = skip_word(behind_blanks(end), "UNF");
    for (gsize i = 0; !per_inch && (unc || unf) && i < G_N_ELEMENTS(unified); i++)
        if (strcmp(unified[i].size, name) == 0)
            per_inch = unc ? unified[i].unc : unified[i].unf;
    if (!(per_inch > 0))
        return NULL;
    // Numbered sizes: 0.060 in and 0.013 in more for each (ASME B1.1).
    double diameter = numbered ? 0.060 + 0.013 * size : size;
    *thread = (Thread){.diameter = diameter * inch, .pitch = inch / per_inch, .inch = TRUE};
    return unc ? unc : unf ? unf : end;
}

// Behind `left-hand` or what else is said for it; NULL if it does not stand here.
static const char *skip_left_hand(const char *text)
{
    static const char *const left[] = {"left-hand", "left hand", "LH"};
    const char *behind = NULL;
    for (gsize i = 0; i < G_N_ELEMENTS(left) && !behind; i++)
        behind = skip_word(text, left[i]);
    return behind;
}

gboolean thread_is_left_hand(const char *text)
{
    const char *word = text;
    while (word && !skip_left_hand(word)) {
        word = strchr(word, ' ');
        word = word ? behind_blanks(word) : NULL;
    }
    return word != NULL;
}

static gboolean ends_with_its_hand(const char *text, Thread *thread)
{
    text = behind_blanks(text);
    const char *behind = skip_left_hand(text);
    thread->left_hand = behind != NULL;
    return !*(behind ? behind : text);
}

gboolean thread_parse(const char *text, Thread *thread, GError **error)
{
    static const double most = 1; // m; no bolt is as thick
    const char *begin = behind_blanks(text);
    gboolean metric = *begin == 'M' || *begin == 'm';
    const char *behind =
        metric ? read_metric(behind_blanks(begin + 1), thread) : read_unified(begin, thread);
    if (behind && ends_with_its_hand(behind, thread) && thread->pitch > 0 &&
        thread->pitch < thread->diameter / 2 && thread->diameter < most)
        return TRUE;
    g_set_error(
        error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
        "`%s` is no thread that can be worked out; write M10, M10 × 1.25, 3/8-16 or 1/2 UNF", text);
    return FALSE;
}

// GEOMETRY --------------------------------------------------------------------------------------

// Height of the sharp triangle of a 60° profile, of which the basic sizes are eighths.
static double triangle(const Thread *thread)
{
    return sqrt(3) / 2 * thread->pitch;
}

double thread_pitch_diameter(const Thread *thread)
{
    return thread->diameter - 2 * 3.0 / 8 * triangle(thread);
}

double thread_minor_diameter(const Thread *thread)
{
    return thread->diameter - 2 * 5.0 / 8 * triangle(thread);
}

double thread_root_diameter(const Thread *thread)
{
    return thread_minor_diameter(thread) - triangle(thread) / 6;
}

double thread_stress_area(const Thread *thread)
{
    double metric = (thread_pitch_diameter(thread) + thread_root_diameter(thread)) / 2;
    double unified_diameter = thread->diameter - 9 * sqrt(3) / 16 * thread->pitch;
    double diameter = thread->inch ? unified_diameter : metric;
    return G_PI / 4 * diameter * diameter;
}

// STRENGTH --------------------------------------------------------------------------------------

// ISO 898-1:2013, table 3, MPa; from `over` mm on. Yield of the soft classes: the least lower yield
// or 0.2 % stress, of which proof is a share.
static const struct {
    const char *name;
    double over, proof, yield;
} classes[] = {
    {"4.6", 0, 225, 240},  {"4.8", 0, 310, 340},   {"5.6", 0, 280, 300}, {"5.8", 0, 380, 420},
    {"6.8", 0, 440, 480},  {"8.8", 16, 600, 660},  {"8.8", 0, 580, 640}, {"9.8", 0, 650, 720},
    {"10.9", 0, 830, 940}, {"12.9", 0, 970, 1100},
};

// SAE J429, ksi; from `over` in on, up to `most` in.
static const struct {
    const char *name;
    double over, most, proof, yield;
} grades[] = {
    {"1", 0, 1.5, 33, 36}, {"2", 0.75, 1.5, 33, 36}, {"2", 0, 0.75, 55, 57},
    {"5", 1, 1.5, 74, 81}, {"5", 0, 1, 85, 92},      {"8", 0, 1.5, 120, 130},
};

// `8` of `grade 8`, `Gr 8`, `SAE grade 8`; NULL if it is no grade.
static const char *grade_of(const char *strength)
{
    const char *text = behind_blanks(strength), *sae = skip_word(text, "SAE");
    text = sae ? sae : text;
    static const char *const words[] = {"grade", "gr.", "gr"};
    for (gsize i = 0; i < G_N_ELEMENTS(words); i++) {
        const char *behind = skip_word(text, words[i]);
        if (behind)
            return behind;
    }
    return NULL;
}

static gboolean strength_of_grade(const Thread *thread, const char *grade, Strength *found)
{
    double diameter = thread->diameter / inch;
    for (gsize i = 0; i < G_N_ELEMENTS(grades); i++) {
        if (strcmp(grades[i].name, grade) != 0 || diameter <= grades[i].over + 1e-9 ||
            diameter > grades[i].most + 1e-9)
            continue;
        *found = (Strength){grades[i].proof * ksi, grades[i].yield * ksi};
        return TRUE;
    }
    return FALSE;
}

gboolean thread_strength(const Thread *thread, const char *strength, Strength *found)
{
    const char *grade = grade_of(strength);
    if (grade)
        return strength_of_grade(thread, grade, found);
    for (gsize i = 0; i < G_N_ELEMENTS(classes); i++) {
        if (strcmp(classes[i].name, behind_blanks(strength)) != 0 ||
            thread->diameter / millimetre <= classes[i].over + 1e-9)
            continue;
        *found = (Strength){classes[i].proof * megapascal, classes[i].yield * megapascal};
        return TRUE;
    }
    return FALSE;
}

// ISO 4014 grade A dw least, and ISO 273 medium, mm. M14 and from M18 on from memory.
static const struct {
    double diameter, washer_face, hole;
} heads[] = {
    {5, 6.88, 5.5},    {6, 8.88, 6.6},    {8, 11.63, 9},     {10, 14.63, 11},
    {12, 16.63, 13.5}, {14, 19.64, 15.5}, {16, 22.49, 17.5}, {18, 25.34, 20},
    {20, 28.19, 22},   {22, 31.71, 24},   {24, 33.61, 26},
};

double thread_bearing_diameter(const Thread *thread)
{
    for (gsize i = 0; i < G_N_ELEMENTS(heads); i++)
        if (fabs(heads[i].diameter * millimetre - thread->diameter) < 1e-9)
            return (heads[i].washer_face + heads[i].hole) / 2 * millimetre;
    return 1.25 * thread->diameter;
}
