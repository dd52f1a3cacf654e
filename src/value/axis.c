#include <standbook/value/axis.h>
#include <string.h>

struct Axis {
    char *name;
    char **labels;
    gsize size;
    gint references;
};

Axis *axis_new(const char *name, const char *const *labels)
{
    Axis *axis = g_new0(Axis, 1);
    axis->name = g_strdup(name);
    axis->labels = g_strdupv((char **)labels);
    axis->size = g_strv_length(axis->labels);
    axis->references = 1;
    return axis;
}

Axis *axis_copy(const Axis *axis)
{
    Axis *shared = (Axis *)axis; // only the count is written
    shared->references++;
    return shared;
}

void axis_free(Axis *axis)
{
    if (axis == NULL || --axis->references > 0) {
        return;
    }
    g_free(axis->name);
    g_strfreev(axis->labels);
    g_free(axis);
}

const char *axis_name(const Axis *axis)
{
    return axis->name;
}

gsize axis_size(const Axis *axis)
{
    return axis->size;
}

const char *axis_label(const Axis *axis, gsize index)
{
    g_return_val_if_fail(index < axis->size, NULL);
    return axis->labels[index];
}

gssize axis_find(const Axis *axis, const char *label)
{
    for (gsize i = 0; i < axis->size; i++) {
        if (strcmp(axis->labels[i], label) == 0) {
            return (gssize)i;
        }
    }
    return -1;
}
