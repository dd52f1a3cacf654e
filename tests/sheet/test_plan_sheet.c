#include <check.h>
#include <standbook/sheet/plan_sheet.h>
#include <stdlib.h>
#include <string.h>

static const char file[] =
    "plan: Twin\n"
    "revision: 2\n"
    "units: [mm, N·m]\n"
    "gates: [first start, hand over]\n"
    "axes: {rod: 1..2, grade: A/B}\n"
    "given: {wall: {A: 0, B: 0.013}}\n"
    "consumables: {sealant: {kind: silicone, fit within: 12 min}}\n"
    "steps:\n"
    "  Rods:\n"
    "    gate: first start\n"
    "    phase: Short block\n"
    "    minutes: 90\n"
    "    gauge: micrometer\n"
    "    do: Oil the shells.\n"
    "    caution: Fingers clear.\n"
    "    uses: sealant\n"
    "    hides: shells\n"
    "    fit: {shells: {at: rod, count: 2, use: new, track: lot}}\n"
    "    fasteners:\n"
    "      nuts: {bolts: L1..L2/R1..R2, stages: 30 > +60°, order: R2-L1-R1-L2, thread: M9,"
    " lubricant: sealant}\n"
    "    checks:\n"
    "      journal: {at: rod, decimals: 3}\n"
    "      gap = journal - 51 mm: {limits: 0.030..0.065, wear: 0.090}\n"
    "      lobe: {limits: {1: 1.0..2.0, 2: 2.0..3.0}, at: rod, set: {move: screw, unit: turn}}\n"
    "      clean: yes\n"
    "      taper: {at: 1..4, limits: max 0.05 mm}\n"
    "    hold: {seen by another: two persons}\n"
    "  Paint:\n"
    "    gate: hand over\n"
    "    after: nothing\n"
    "    checks: {dry: yes}\n"
    "  Run:\n"
    "    gate: hand over\n"
    "    after: Rods\n"
    "    begins: run\n"
    "    retighten: {nuts: 35}\n"
    "    read again: gap\n"
    "    checks: {no leaks: yes}\n";

static Plan *plan_of_file(void)
{
    g_autoptr(Faults) faults = faults_new();
    Plan *plan = plan_read(file, strlen(file), faults);
    for (guint i = 0; i < faults_count(faults); i++) {
        g_autofree char *fault = fault_text(faults_at(faults, i), "file");
        ck_abort_msg("%s", fault);
    }
    return plan;
}

static void expect_said(const char *text, const char *words)
{
    ck_assert_msg(strstr(text, words) != NULL, "not said: %s\n%.3000s", words, text);
}

START_TEST(a_plan_can_be_reviewed_without_its_file)
{
    g_autoptr(Plan) plan = plan_of_file();
    g_autoptr(Document) document = sheet_plan(plan);
    g_autofree char *text = document_text(document);
    static const char *const said[] = {
        "  Plan Twin\n",
        "  revision 2\n",
        "  gates: first start, hand over\n",
        "  wall  A: 0, B: 0.013\n",
        "  sealant  kind: silicone, fit within: 12 min\n",
        "\n  1  Rods\n",
        "  Short block, gate first start, 90 min\n",
        "  Oil the shells.\n",
        "  CAUTION: Fingers clear.\n",
        "  uses: sealant\n",
        "  hides: shells\n",
        "  HOLD: seen by another (two persons)\n",
        "  shells  2 at each rod 1..2  new  lot asked\n",
        "  nuts      L1/L2/R1/R2  30 > +60°  R2 L1 R1 L2\n      thread M9; lubricant sealant\n",
        "  journal  rod 1..2  in mm                           micrometer\n",
        "  gap      rod 1..2  0.030..0.065 mm\n      = journal - 51 mm; wear 0.090\n",
        "  lobe     rod 1..2  1: 1.0..2.0 mm; 2: 2.0..3.0 mm  micrometer\n"
        "      set (move: screw, unit: turn)\n",
        "  clean              yes\n",
        "  taper    1..4      max 0.05 mm                     micrometer\n",
        "\n  3  Run\n",
        "gate hand over; after nothing\n",
        "gate hand over; after Rods\n",
        "  begins: run\n",
        "  read again: gap\n",
        "  nuts, again  L1/L2/R1/R2  35      R2 L1 R1 L2\n",
    };
    for (gsize i = 0; i < G_N_ELEMENTS(said); i++)
        expect_said(text, said[i]);
}
END_TEST

START_TEST(json_has_the_same)
{
    g_autoptr(Plan) plan = plan_of_file();
    json_t *json = plan_json(plan);
    const char *first, *thread, *wear, *limits, *kind, *use;
    int persons, asked;
    ck_assert_int_eq(json_unpack(json,
                                 "{s:i,s:{s:{s:s}},s:[{s:[{s:i}],s:[{s:s}],s:[{s:[s],s:{s:s}}]}]}",
                                 "asked", &asked, "consumables", "sealant", "kind", &kind, "steps",
                                 "holds", "persons", &persons, "parts", "use", &use, "tightenings",
                                 "order", &first, "written", "thread", &thread),
                     0);
    json_t *checks = json_object_get(json_array_get(json_object_get(json, "steps"), 0), "checks");
    ck_assert_int_eq(json_unpack(json_array_get(checks, 1), "{s:{s:s},s:{s:s}}", "limits", "",
                                 &limits, "written", "wear", &wear),
                     0);
    ck_assert_str_eq(first, "R2");
    ck_assert_str_eq(thread, "M9");
    ck_assert_str_eq(wear, "0.090");
    ck_assert_str_eq(limits, "0.030..0.065");
    ck_assert_str_eq(kind, "silicone");
    ck_assert_str_eq(use, "new");
    ck_assert_int_eq(persons, 2);
    ck_assert_int_gt(asked, 20);
    json_decref(json);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("plan sheet");
    TCase *tcase = tcase_create("plan sheet");
    tcase_add_test(tcase, a_plan_can_be_reviewed_without_its_file);
    tcase_add_test(tcase, json_has_the_same);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
