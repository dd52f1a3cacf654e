// Reads lines and answers each in a line, with 17 digits, for fits.py:
//   line|origin X Y X Y …     intercept and its sd, slope and its sd, residual sd
//   predict X0 X Y X Y …      value, half of the 95 % interval of a new one
//   quadratic X Y X Y …       B0 and its sd, B1, B2, residual sd: GSL's gsl_multifit alone
//   quantile FREEDOM CHANCE   of Student's t; freedom 0 for the normal
#include <gsl/gsl_multifit.h>
#include <math.h>
#include <standbook/rules/line.h>
#include <stdio.h>
#include <string.h>

typedef struct {
    GArray *x, *y;
} Points;

// The numbers of a line from `words` on, alternately.
static Points points_of(char **words)
{
    Points points = {g_array_new(FALSE, FALSE, sizeof(double)),
                     g_array_new(FALSE, FALSE, sizeof(double))};
    for (guint i = 0; words[i]; i++) {
        double number = g_ascii_strtod(words[i], NULL);
        g_array_append_val(i % 2 ? points.y : points.x, number);
    }
    return points;
}

static void points_free(Points points)
{
    g_array_unref(points.x);
    g_array_unref(points.y);
}

static void answer_line(char **words, gboolean through_origin)
{
    Points points = points_of(words);
    Line line;
    if (line_fit((double *)points.x->data, (double *)points.y->data, points.y->len, through_origin,
                 &line))
        printf("%.17g %.17g %.17g %.17g %.17g\n", line.intercept, line.intercept_sd, line.slope,
               line.slope_sd, line.residual_sd);
    else
        printf("none\n");
    points_free(points);
}

static void answer_prediction(char **words)
{
    Points points = points_of(words + 1);
    Line line;
    double half, at = g_ascii_strtod(words[0], NULL);
    line_fit((double *)points.x->data, (double *)points.y->data, points.y->len, FALSE, &line);
    double value = line_predict(&line, at, 0.95, &half);
    printf("%.17g %.17g\n", value, half);
    points_free(points);
}

static void answer_quadratic(char **words)
{
    Points points = points_of(words);
    gsize count = points.y->len;
    gsl_matrix *design = gsl_matrix_alloc(count, 3), *doubts = gsl_matrix_alloc(3, 3);
    gsl_vector *b = gsl_vector_alloc(3);
    for (gsize i = 0; i < count; i++)
        for (gsize power = 0; power < 3; power++)
            gsl_matrix_set(design, i, power,
                           pow(g_array_index(points.x, double, i), (double)power));
    gsl_vector_view y = gsl_vector_view_array((double *)points.y->data, count);
    gsl_multifit_linear_workspace *work = gsl_multifit_linear_alloc(count, 3);
    double squares;
    gsl_multifit_linear(design, &y.vector, b, doubts, &squares, work);
    for (gsize i = 0; i < 3; i++)
        printf("%.17g %.17g ", gsl_vector_get(b, i), sqrt(gsl_matrix_get(doubts, i, i)));
    printf("%.17g\n", sqrt(squares / (double)(count - 3)));
    gsl_multifit_linear_free(work);
    gsl_vector_free(b);
    gsl_matrix_free(doubts);
    gsl_matrix_free(design);
    points_free(points);
}

static void answer(char **words)
{
    if (strcmp(words[0], "quantile") == 0)
        printf("%.17g\n", line_quantile((guint)g_ascii_strtoull(words[1], NULL, 10),
                                        g_ascii_strtod(words[2], NULL)));
    else if (strcmp(words[0], "predict") == 0)
        answer_prediction(words + 1);
    else if (strcmp(words[0], "quadratic") == 0)
        answer_quadratic(words + 1);
    else
        answer_line(words + 1, strcmp(words[0], "origin") == 0);
}

int main(void)
{
    char *line = NULL;
    size_t room = 0;
    for (ssize_t length; (length = getline(&line, &room, stdin)) > 0;) {
        g_auto(GStrv) words = g_strsplit(g_strstrip(line), " ", -1);
        if (g_strv_length(words) > 2)
            answer(words);
    }
    free(line);
    return 0;
}
