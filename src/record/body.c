#include "body.h"

#include <standbook/base/error.h>
#include <standbook/base/moment.h>
#include <standbook/base/text.h>
#include <string.h>

enum { VALUE_TEXT_MOST = 256, VALUE_KEYS = 3 };
static const char *const value_keys[VALUE_KEYS] = {"value", "unit", "typed"};

gboolean id_is_valid(const char *text)
{
    for (const char *c = text; *c; c++)
        if (g_ascii_isupper(*c))
            return FALSE;
    return g_uuid_string_is_valid(text);
}

static gboolean is_text(json_t *json)
{
    return json_is_string(json) && json_string_length(json) > 0;
}

static gboolean is_text_list(json_t *json)
{
    gsize i;
    json_t *item;
    json_array_foreach(json, i, item) if (!is_text(item)) return FALSE;
    return json_array_size(json) > 0;
}

static gboolean is_date(const char *text)
{
    Moment moment;
    g_autofree char *midnight = g_strconcat(text, "T00:00:00", NULL);
    return strlen(text) == 10 && moment_parse(midnight, &moment, NULL);
}

static gboolean is_digest(json_t *json)
{
    const char *text = json_string_value(json);
    return text && strlen(text) == 64 && strspn(text, "0123456789abcdef") == 64;
}

// Digits without a zero in front; moves behind them.
static gboolean skip_whole(const char **text)
{
    gsize digits = strspn(*text, "0123456789");
    gboolean plain = digits > 0 && (digits == 1 || **text != '0');
    *text += digits;
    return plain;
}

// An exact number as GMP prints it ("-17/32", "5"), behind `<` or `>` if it is only a bound.
static gboolean is_exact(const char *text)
{
    if (strlen(text) > VALUE_TEXT_MOST)
        return FALSE;
    if (*text == '<' || *text == '>')
        text++;
    gboolean negative = *text == '-';
    text += negative;
    if ((negative && *text == '0') || !skip_whole(&text))
        return FALSE;
    if (*text != '/')
        return *text == '\0';
    text++;
    gboolean above_one = *text != '0' && strcmp(text, "1") != 0;
    return above_one && skip_whole(&text) && *text == '\0';
}

static gboolean is_value(json_t *json)
{
    if (json_object_size(json) != VALUE_KEYS)
        return FALSE;
    for (gsize i = 0; i < VALUE_KEYS; i++)
        if (!json_is_string(json_object_get(json, value_keys[i])))
            return FALSE;
    return is_exact(json_string_value(json_object_get(json, "value"))) &&
           is_text(json_object_get(json, "typed"));
}

static gboolean is_whole(json_t *json, json_int_t least)
{
    // 2^53 - 1: readers in other languages hold whole numbers exactly up to here (RFC 8259, 6).
    return json_is_integer(json) && json_integer_value(json) >= least &&
           json_integer_value(json) <= G_GINT64_CONSTANT(9007199254740991);
}

static gboolean is_counts(json_t *json)
{
    gsize names = 0;
    for (const char *const *name = verdict_names(); *name; name++, names++)
        if (!is_whole(json_object_get(json, *name), 0))
            return FALSE;
    return json_object_size(json) == names;
}

static gboolean all_chosen(const Field *field, json_t *list)
{
    gsize i;
    json_t *item;
    json_array_foreach(list, i,
                       item) if (!field_has_choice(field, json_string_value(item))) return FALSE;
    return TRUE;
}

static gboolean field_fits(const Field *field, json_t *json)
{
    const char *text = json_string_value(json);
    switch (field->type) {
    case FIELD_TEXT:
        return is_text(json);
    case FIELD_VALUE:
        return is_value(json);
    case FIELD_PLACE:
    case FIELD_LIST:
        return is_text_list(json) && (!field->choices || all_chosen(field, json));
    case FIELD_SEQ:
    case FIELD_EARLIER:
        return is_whole(json, 1);
    case FIELD_COUNT:
        return is_whole(json, 0);
    case FIELD_CHOICE:
        return text && field_has_choice(field, text);
    case FIELD_ID:
        return text && id_is_valid(text);
    case FIELD_DIGEST:
        return is_digest(json);
    case FIELD_DATE:
        return text && is_date(text);
    case FIELD_COUNTS:
        return is_counts(json);
    case FIELD_BODY:
        return json_is_object(json);
    }
    return FALSE;
}

// The kind whose body stands inside a `take` or `news`.
static const EntryKind *inner_kind(json_t *body)
{
    const char *what = json_string_value(json_object_get(body, "what"));
    json_int_t format = json_integer_value(json_object_get(body, "format"));
    return what && format > 0 && format < G_MAXINT ? kind_find(what, (int)format) : NULL;
}

static gboolean refuse_field(const EntryKind *kind, const Field *field, GError **error)
{
    g_autofree char *choices = field->choices ? g_strdup_printf(": %s", field->choices) : NULL;
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                "ledger line: `%s` of `%s` must be %s%s", field->name, kind->name,
                field_type_words(field->type), choices ? choices : "");
    return FALSE;
}

static gboolean check_inner(const EntryKind *kind, json_t *body, json_t *inner, GError **error)
{
    const EntryKind *shop = inner_kind(body);
    if (shop && shop->ledgers == LEDGER_SHOP)
        return body_check(shop, inner, error);
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                "ledger line: `%s` must name a kind of the shop and one of its formats",
                kind->name);
    return FALSE;
}

static gboolean check_field(const EntryKind *kind, const Field *field, json_t *body, GError **error)
{
    json_t *json = json_object_get(body, field->name);
    if (!json && !field->needed)
        return TRUE;
    if (!json) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                    "ledger line: `%s` of `%s` is missing (%s)", field->name, kind->name,
                    field->help);
        return FALSE;
    }
    if (!field_fits(field, json))
        return refuse_field(kind, field, error);
    return field->type != FIELD_BODY || check_inner(kind, body, json, error);
}

static gboolean check_names(const EntryKind *kind, json_t *body, GError **error)
{
    const char *key;
    json_t *json;
    json_object_foreach(body, key, json)
    {
        if (kind_field(kind, key))
            continue;
        g_autofree char *clean = text_clean(key, -1);
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                    "ledger line: `%s` has no field `%s` in format %d", kind->name, clean,
                    kind->format);
        return FALSE;
    }
    return TRUE;
}

gboolean body_check(const EntryKind *kind, json_t *body, GError **error)
{
    if (!json_is_object(body)) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                    "ledger line: the body of `%s` must be an object", kind->name);
        return FALSE;
    }
    if (!check_names(kind, body, error))
        return FALSE;
    for (const Field *field = kind->fields; field->name; field++)
        if (!check_field(kind, field, body, error))
            return FALSE;
    return TRUE;
}

static json_t *with_keys(json_t *object, const char *const *keys, gsize count)
{
    json_t *ordered = json_object();
    for (gsize i = 0; i < count; i++)
        json_object_set(ordered, keys[i], json_object_get(object, keys[i]));
    return ordered;
}

json_t *body_ordered(const EntryKind *kind, json_t *body)
{
    json_t *ordered = json_object();
    for (const Field *field = kind->fields; field->name; field++) {
        json_t *json = json_object_get(body, field->name);
        if (!json)
            continue;
        if (field->type == FIELD_VALUE)
            json = with_keys(json, value_keys, VALUE_KEYS);
        else if (field->type == FIELD_COUNTS)
            json = with_keys(json, verdict_names(), g_strv_length((GStrv)verdict_names()));
        else if (field->type == FIELD_BODY)
            json = body_ordered(inner_kind(body), json);
        else
            json_incref(json);
        json_object_set_new(ordered, field->name, json);
    }
    return ordered;
}
