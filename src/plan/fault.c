#include <standbook/plan/fault.h>

#include <standbook/base/text.h>

struct Faults {
    GPtrArray *list;
};

static void fault_free(gpointer data)
{
    Fault *fault = data;
    g_free(fault->message);
    g_free(fault);
}

Faults *faults_new(void)
{
    Faults *faults = g_new0(Faults, 1);
    faults->list = g_ptr_array_new_with_free_func(fault_free);
    return faults;
}

void faults_free(Faults *faults)
{
    if (!faults)
        return;
    g_ptr_array_unref(faults->list);
    g_free(faults);
}

void faults_add(Faults *faults, guint line, guint column, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    g_autofree char *message = g_strdup_vprintf(format, arguments);
    va_end(arguments);
    Fault *fault = g_new0(Fault, 1);
    fault->line = line;
    fault->column = column;
    fault->message = text_clean(message, -1);
    g_ptr_array_add(faults->list, fault);
}

guint faults_count(const Faults *faults)
{
    return faults->list->len;
}

const Fault *faults_at(const Faults *faults, guint index)
{
    return g_ptr_array_index(faults->list, index);
}

static int compare_places(gconstpointer a, gconstpointer b)
{
    const Fault *one = *(Fault *const *)a, *other = *(Fault *const *)b;
    if (one->line != other->line)
        return one->line < other->line ? -1 : 1;
    return (one->column > other->column) - (one->column < other->column);
}

// g_ptr_array_sort is stable.
void faults_sort(Faults *faults)
{
    g_ptr_array_sort(faults->list, compare_places);
}

char *fault_text(const Fault *fault, const char *file)
{
    g_autofree char *clean = text_clean(file, -1);
    return g_strdup_printf("%s:%u:%u: %s", clean, fault->line, fault->column, fault->message);
}
