// What `standbook` alone does: the front end.
#include "store.h"
#include "subcommands.h"

#include <standbook/screen/screen.h>

static Moment wall_clock(gpointer user)
{
    (void)user;
    return moment_now();
}

static char *random_id(gpointer user)
{
    (void)user;
    return g_uuid_string_random();
}

int front_run(Common *common)
{
    GError *error = NULL;
    g_autofree char *store = store_path(common);
    const ScreenOptions options = {.store = store,
                                   .now = wall_clock,
                                   .new_id = random_id,
                                   .colours = g_getenv("STANDBOOK_COLOURS")};
    return screen_run(&options, &error) ? 0 : fail_with(error);
}
