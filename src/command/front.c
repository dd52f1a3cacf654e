// What `standbook` alone does: the front end.
#include "store.h"
#include "subcommands.h"

#include <standbook/screen/screen.h>

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
