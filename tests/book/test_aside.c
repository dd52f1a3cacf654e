#include "stand.h"

#include <standbook/book/aside.h>
#include <sys/wait.h>
#include <unistd.h>

static char *folder, *path;

static void begin(void)
{
    folder = folder_new();
    path = g_build_filename(folder, "stand.db", NULL);
}

static void end(void)
{
    g_free(path);
    folder_remove(folder);
}

// Runs as another program that keeps these texts one after the other and is killed.
static void leave(const char *const *texts)
{
    pid_t child = fork();
    if (child == 0) {
        GPtrArray *left = NULL;
        Aside *aside = aside_open(path, &left);
        for (; *texts; texts++)
            aside_keep(aside, *texts);
        _exit(0);
    }
    ck_assert_int_eq(waitpid(child, NULL, 0), child);
}

static guint files(void)
{
    guint count = 0;
    GDir *dir = g_dir_open(folder, 0, NULL);
    while (g_dir_read_name(dir))
        count++;
    g_dir_close(dir);
    return count;
}

START_TEST(what_a_killed_program_kept_is_found_once)
{
    const char *const texts[] = {"0.04", "0.041, a longer one", "0.042", NULL};
    GPtrArray *left = NULL, *none = NULL;
    leave(texts);
    Aside *aside = aside_open(path, &left), *other = aside_open(path, &none);
    ck_assert_uint_eq(left->len, 1);
    ck_assert_str_eq(left->pdata[0], "0.042");
    ck_assert_uint_eq(none->len, 0);
    aside_keep(aside, "0.042");
    aside_close(other);
    g_ptr_array_unref(none);
    other = aside_open(path, &none);
    ck_assert_uint_eq(none->len, 0); // it is another's, who is here
    aside_keep(aside, "");
    ck_assert_uint_eq(files(), 0);
    aside_close(aside);
    aside_close(other);
    g_ptr_array_unref(left);
    g_ptr_array_unref(none);
}
END_TEST

// Between taking over and keeping the program may end too.
START_TEST(it_stays_until_it_is_kept_by_another)
{
    const char *const texts[] = {"4711-0815", NULL};
    leave(texts);
    for (guint i = 0; i < 3; i++) {
        GPtrArray *left = NULL;
        Aside *aside = aside_open(path, &left);
        ck_assert_uint_eq(left->len, 1);
        ck_assert_str_eq(left->pdata[0], "4711-0815");
        if (i == 1)
            aside_keep(aside, left->pdata[0]);
        ck_assert_uint_eq(files(), 1);
        aside_close(aside);
        g_ptr_array_unref(left);
    }
}
END_TEST

START_TEST(what_two_left_comes_together)
{
    const char *const other[] = {"2", NULL}, *const none[] = {"3", "", NULL};
    GPtrArray *left = NULL;
    leave(none);
    ck_assert_uint_eq(files(), 0);
    pid_t child = fork(); // both at the same time, so that neither takes over the other's
    if (child == 0) {
        GPtrArray *mine = NULL;
        Aside *aside = aside_open(path, &mine);
        aside_keep(aside, "1");
        leave(other);
        _exit(0);
    }
    ck_assert_int_eq(waitpid(child, NULL, 0), child);
    Aside *aside = aside_open(path, &left);
    ck_assert_uint_eq(left->len, 2);
    aside_keep(aside, "1 and 2");
    ck_assert_uint_eq(files(), 1);
    aside_close(aside);
    g_ptr_array_unref(left);
}
END_TEST

// Before the first build there is no folder yet, nor one that it lies in.
START_TEST(the_folder_is_made_for_the_first_that_is_kept)
{
    g_autofree char *inner = g_build_filename(folder, "new", NULL);
    g_autofree char *store = g_build_filename(inner, "own", "stand.db", NULL);
    GPtrArray *left = NULL;
    Aside *aside = aside_open(store, &left);
    aside_keep(aside, "");
    ck_assert(!g_file_test(inner, G_FILE_TEST_EXISTS)); // for nothing none is made
    aside_keep(aside, "0.041");
    aside_close(aside);
    g_ptr_array_unref(left);
    aside = aside_open(store, &left);
    ck_assert_uint_eq(left->len, 1);
    ck_assert_str_eq(left->pdata[0], "0.041");
    aside_close(aside);
    g_ptr_array_unref(left);
    folder_remove(g_build_filename(inner, "own", NULL));
    g_rmdir(inner);
}
END_TEST

START_TEST(where_no_file_can_be_made_nothing_is_kept)
{
    GPtrArray *left = NULL;
    g_autofree char *file = g_build_filename(folder, "file", NULL);
    g_autofree char *nowhere = g_build_filename(file, "stand.db", NULL);
    ck_assert(g_file_set_contents(file, "", 0, NULL));
    Aside *aside = aside_open(nowhere, &left);
    aside_keep(aside, "0.041");
    aside_close(aside);
    ck_assert_uint_eq(left->len, 0);
    ck_assert_uint_eq(files(), 1);
    g_ptr_array_unref(left);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("aside");
    TCase *tcase = tcase_create("aside");
    tcase_add_checked_fixture(tcase, begin, end);
    tcase_add_test(tcase, what_a_killed_program_kept_is_found_once);
    tcase_add_test(tcase, it_stays_until_it_is_kept_by_another);
    tcase_add_test(tcase, what_two_left_comes_together);
    tcase_add_test(tcase, the_folder_is_made_for_the_first_that_is_kept);
    tcase_add_test(tcase, where_no_file_can_be_made_nothing_is_kept);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
