// The page says what the program does: its lists of keys are the tables', its examples are read,
// its faults are those that are printed. After a change of the tables or of
// tests/plan/manual*.yaml, STANDBOOK_UPDATE=1 writes these parts of the page anew.
#include <check.h>
#include <standbook/plan/plan.h>
#include <standbook/plan/schema.h>
#include <standbook/value/trade.h>
#include <stdlib.h>
#include <string.h>

static const char page_name[] = "man/standbook-plan.5";

// What the page writes for characters of its own, in the order in which they are replaced.
static const char *const escapes[][2] = {
    {"\\", "\\e"},  {"-", "\\-"},   {"'", "\\(aq"}, {"°", "\\(de"}, {"·", "\\(pc"}, {"±", "\\(+-"},
    {"×", "\\(mu"}, {"≤", "\\(<="}, {"²", "\\(S2"}, {"³", "\\(S3"}, {"µ", "\\(mc"},
};

static char *troff(const char *text)
{
    GString *safe = g_string_new(text);
    for (gsize i = 0; i < G_N_ELEMENTS(escapes); i++)
        g_string_replace(safe, escapes[i][0], escapes[i][1], 0);
    return g_string_free(safe, FALSE);
}

static char *plain(const char *text)
{
    GString *safe = g_string_new(text);
    for (gsize i = G_N_ELEMENTS(escapes); i > 0; i--)
        g_string_replace(safe, escapes[i - 1][1], escapes[i - 1][0], 0);
    return g_string_free(safe, FALSE);
}

static char *contents(const char *name)
{
    char *text = NULL;
    ck_assert_msg(g_file_get_contents(name, &text, NULL, NULL), "%s cannot be read", name);
    return text;
}

// A whole file as it stands in the page.
static char *literal(const char *text)
{
    g_autofree char *safe = troff(text);
    return g_strconcat(".Bd -literal\n", safe, ".Ed\n", NULL);
}

static void add_key(GString *list, const SchemaKey *key)
{
    g_autofree char *help = troff(key->help);
    const char *type = key->choices ? key->choices : schema_type_words(key->type);
    g_autofree char *written = troff(type);
    g_auto(GStrv) choices = g_strsplit(written, "/", -1);
    g_autofree char *joined = key->choices ? g_strjoinv(", ", choices) : g_strdup(written);
    g_string_append_printf(list, ".It Ic %s%s\n%s\n.Pq %s\n", key->key, key->needed ? " *" : "",
                           help, joined);
}

static void add_mapping(GString *list, const char *title, const SchemaMapping *mapping)
{
    g_string_append_printf(list, ".Ss %s\n.Bl -tag -width \"consumables\"\n", title);
    for (gsize i = 0; i < mapping->count; i++)
        add_key(list, &mapping->keys[i]);
    g_string_append(list, ".El\n");
}

static char *all_keys(void)
{
    static const struct {
        const char *title;
        const SchemaMapping *mapping;
    } parts[] = {
        {"The plan", &schema_of_plan},
        {"A consumable, under consumables", &schema_of_consumable},
        {"A step, under steps", &schema_of_step},
        {"A part, under fit", &schema_of_part},
        {"A check, under checks", &schema_of_check},
        {"A setting, under set", &schema_of_set},
        {"A bolt set, under fasteners", &schema_of_group},
    };
    GString *list = g_string_new(NULL);
    for (gsize i = 0; i < G_N_ELEMENTS(parts); i++)
        add_mapping(list, parts[i].title, parts[i].mapping);
    return g_string_free(list, FALSE);
}

static Plan *read_plan(const char *text, Faults *faults)
{
    return plan_read(text, strlen(text), faults);
}

static char *printed_faults(void)
{
    g_autofree char *text = contents("tests/plan/manual-faults.yaml");
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(Plan) plan = read_plan(text, faults);
    ck_assert_ptr_null(plan);
    GString *all = g_string_new(NULL);
    for (guint i = 0; i < faults_count(faults); i++) {
        g_autofree char *line = fault_text(faults_at(faults, i), "twin.yaml");
        g_string_append_printf(all, "%s\n", line);
    }
    return g_string_free(all, FALSE);
}

// Puts the text between two marks of the page, whose first line ends the beginning mark.
static char *put_between(const char *page, const char *name, const char *text)
{
    g_autofree char *begin_mark =
        g_strdup_printf(".\\\" begin %s (tests/plan/test_manual.c)\n", name);
    g_autofree char *end_mark = g_strdup_printf(".\\\" end %s\n", name);
    const char *begin = strstr(page, begin_mark), *end = strstr(page, end_mark);
    ck_assert_msg(begin && end && begin < end, "%s has no marks for %s", page_name, name);
    begin += strlen(begin_mark);
    g_autofree char *head = g_strndup(page, (gsize)(begin - page));
    return g_strconcat(head, text, end, NULL);
}

// `swept volume(bore, stroke)`, what it works out and where that comes from.
static void add_function(GString *text, const TradeFunction *function)
{
    g_string_append_printf(text, "%s%s(", text->len ? "\n" : "", function->name);
    for (guint i = 0; i < trade_parameters(function); i++)
        g_string_append_printf(text, "%s%s", i ? ", " : "", function->parameters[i].name);
    g_string_append_printf(text, ")\n    = %s\n    ", function->formula);
    for (guint i = 0; i < trade_parameters(function); i++)
        g_string_append_printf(text, "%s%s", i ? ", " : "in ",
                               function->parameters[i].unit ? function->parameters[i].unit
                                                            : "a material");
    g_string_append_printf(text, "%s%s\n    %s\n", function->note ? "; " : "",
                           function->note ? function->note : "", function->source);
}

static char *all_functions(void)
{
    GString *text = g_string_new(NULL);
    for (gsize i = 0; trade_function(i); i++)
        add_function(text, trade_function(i));
    g_autofree char *plain = g_string_free(text, FALSE);
    return literal(plain);
}

static char *all_materials(void)
{
    g_autoptr(GString) text = g_string_new(NULL);
    for (gsize i = 0; trade_material(i); i++) {
        const TradeMaterial *material = trade_material(i);
        g_string_append_printf(text, "%-10s %-10s ± %-10s %s\n", material->name,
                               material->expansion, material->doubt, material->source);
    }
    return literal(text->str);
}

START_TEST(the_page_is_the_programs)
{
    g_autofree char *page = contents(page_name);
    g_autofree char *wanted = g_strdup(page);
    g_autofree char *faulty = contents("tests/plan/manual-faults.yaml");
    g_autofree char *example = contents("tests/plan/manual.yaml");
    g_autofree char *faults = printed_faults();
    struct {
        const char *name;
        char *text;
    } parts[] = {{"keys", all_keys()},           {"faulty", literal(faulty)},
                 {"faults", literal(faults)},    {"functions", all_functions()},
                 {"materials", all_materials()}, {"example", literal(example)}};
    for (gsize i = 0; i < G_N_ELEMENTS(parts); i++) {
        char *next = put_between(wanted, parts[i].name, parts[i].text);
        g_free(wanted);
        g_free(parts[i].text);
        wanted = next;
    }
    if (g_getenv("STANDBOOK_UPDATE"))
        ck_assert(g_file_set_contents(page_name, wanted, -1, NULL));
    else
        ck_assert_msg(strcmp(page, wanted) == 0,
                      "%s does not say what the program does; run with STANDBOOK_UPDATE=1",
                      page_name);
}
END_TEST

static void expect_no_fault(const char *text)
{
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(Plan) plan = read_plan(text, faults);
    if (plan)
        return;
    g_autofree char *first = fault_text(faults_at(faults, 0), page_name);
    ck_abort_msg("%s", first);
}

START_TEST(the_example_reads_without_a_fault)
{
    g_autofree char *text = contents("tests/plan/manual.yaml");
    expect_no_fault(text);
}
END_TEST

// The lines of a sample of the page, as a builder reads them. The caller frees.
static char *sample(const char *name)
{
    g_autofree char *page = contents(page_name);
    g_autofree char *mark = g_strdup_printf(".\\\" begin sample %s\n", name);
    char *begin = strstr(page, mark);
    ck_assert_msg(begin != NULL, "%s has no sample of %s", page_name, name);
    begin += strlen(mark);
    char *end = strstr(begin, ".\\\" end sample\n");
    ck_assert_ptr_nonnull(end);
    *end = '\0';
    return plain(begin);
}

// Each line (each word, where `between` is a space) of a sample is taken.
static void expect_taken(const char *name, const char *between,
                         gboolean (*take)(const char *text, GError **error))
{
    g_autofree char *text = sample(name);
    g_auto(GStrv) items = g_strsplit_set(text, between, -1);
    guint count = 0;
    for (gsize i = 0; items[i]; i++) {
        g_autoptr(GError) error = NULL;
        if (!*items[i])
            continue;
        count++;
        ck_assert_msg(take(items[i], &error), "%s: %s", items[i], error->message);
    }
    ck_assert_uint_gt(count, 3);
}

static gboolean take_formula(const char *text, GError **error)
{
    g_autoptr(Formula) formula = formula_parse(text, NULL, error);
    return formula != NULL;
}

static gboolean take_limits(const char *text, GError **error)
{
    g_autoptr(Limits) limits = limits_parse(text, NULL, NULL, error);
    return limits != NULL;
}

static gboolean take_unit(const char *text, GError **error)
{
    g_autoptr(Unit) unit = unit_parse(text, error);
    return unit && strcmp(unit_text(unit), text) == 0;
}

static gboolean take_labels(const char *text, GError **error)
{
    gsize offset;
    g_auto(GStrv) labels = labels_read(text, &offset, error);
    return labels != NULL;
}

START_TEST(the_samples_are_taken)
{
    g_autofree char *plan = sample("plan");
    expect_no_fault(plan);
    expect_taken("formulas", "\n", take_formula);
    expect_taken("limits", "\n", take_limits);
    expect_taken("labels", "\n", take_labels);
    expect_taken("units", " \n", take_unit);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("manual");
    TCase *tcase = tcase_create("manual");
    tcase_add_test(tcase, the_page_is_the_programs);
    tcase_add_test(tcase, the_example_reads_without_a_fault);
    tcase_add_test(tcase, the_samples_are_taken);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
