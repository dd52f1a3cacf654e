#include <standbook/record/entry.h>

#include <string.h>

const char *entry_text(const Entry *entry, const char *field)
{
    return json_string_value(json_object_get(entry->body, field));
}

gint64 entry_number(const Entry *entry, const char *field)
{
    return json_integer_value(json_object_get(entry->body, field));
}

gsize entry_list_length(const Entry *entry, const char *field)
{
    return json_array_size(json_object_get(entry->body, field));
}

const char *entry_list_item(const Entry *entry, const char *field, gsize index)
{
    return json_string_value(json_array_get(json_object_get(entry->body, field), index));
}

const char *entry_value(const Entry *entry, const char *field, const char *part)
{
    return json_string_value(json_object_get(json_object_get(entry->body, field), part));
}

Number *entry_amount(const Entry *entry, const char *field)
{
    const char *value = entry_value(entry, field, "value");
    const char *words = value ? entry_value(entry, field, "unit") : NULL;
    if (!value)
        return NULL;
    g_autoptr(Number) number = number_from_text(value + strspn(value, "<>"), NULL);
    g_autoptr(Unit) unit = words && *words ? unit_parse(words, NULL) : NULL;
    return number && unit ? unit_to_base(unit, number) : g_steal_pointer(&number);
}

Number *entry_width(const Entry *entry, const char *field)
{
    const char *text = entry_value(entry, field, "value");
    const char *words = entry_value(entry, field, "unit");
    g_autoptr(Number) number = text ? number_from_text(text, NULL) : NULL;
    g_autoptr(Unit) unit = words ? unit_parse(words, NULL) : NULL;
    return number ? unit_width_to_base(unit, number) : NULL;
}

const char *entry_tool(const Entry *entry)
{
    return kind_field(entry->kind, "tool") ? entry_text(entry, "tool") : NULL;
}

gboolean entry_list_has(const Entry *entry, const char *field, const char *item)
{
    for (gsize i = 0; i < entry_list_length(entry, field); i++)
        if (strcmp(entry_list_item(entry, field, i), item) == 0)
            return TRUE;
    return FALSE;
}

gboolean entry_same_place(const Entry *one, const Entry *other)
{
    gsize count = entry_list_length(one, "place");
    if (count != entry_list_length(other, "place"))
        return FALSE;
    for (gsize i = 0; i < count; i++)
        if (strcmp(entry_list_item(one, "place", i), entry_list_item(other, "place", i)) != 0)
            return FALSE;
    return TRUE;
}

gboolean entry_is_at(const Entry *entry, const char *const *labels)
{
    gsize count = entry_list_length(entry, "place");
    if (count != g_strv_length((char **)labels))
        return FALSE;
    for (gsize i = 0; i < count; i++)
        if (strcmp(entry_list_item(entry, "place", i), labels[i]) != 0)
            return FALSE;
    return TRUE;
}

gboolean entry_reaches(const Entry *entry, const char *const *labels)
{
    return entry_list_length(entry, "place") == 0 || entry_is_at(entry, labels);
}

const char **entry_labels(const Entry *entry, gsize axes)
{
    gsize count = entry_list_length(entry, "place");
    if (count == 0 || count != axes)
        return NULL;
    const char **labels = g_new0(const char *, count + 1);
    for (gsize i = 0; i < count; i++)
        labels[i] = entry_list_item(entry, "place", i);
    return labels;
}

const char *entry_done(const Entry *entry)
{
    return entry->done ? entry->done : entry->at;
}

Moment entry_moment(const Entry *entry)
{
    const char *text = entry_done(entry);
    Moment moment = 0;
    return text && moment_parse(text, &moment, NULL) ? moment : 0;
}

void entry_set_text(Entry *entry, const char *field, const char *text)
{
    if (text)
        json_object_set_new(entry->body, field, json_string(text));
}

void entry_set_number(Entry *entry, const char *field, gint64 number)
{
    json_object_set_new(entry->body, field, json_integer(number));
}

void entry_set_list(Entry *entry, const char *field, const char *const *items, gsize count)
{
    if (count == 0)
        return;
    json_t *list = json_array();
    for (gsize i = 0; i < count; i++)
        json_array_append_new(list, json_string(items[i]));
    json_object_set_new(entry->body, field, list);
}

void entry_set_value(Entry *entry, const char *field, const char *value, const char *unit,
                     const char *typed)
{
    json_t *object = json_object();
    json_object_set_new(object, "value", json_string(value));
    json_object_set_new(object, "unit", json_string(unit));
    json_object_set_new(object, "typed", json_string(typed));
    json_object_set_new(entry->body, field, object);
}
