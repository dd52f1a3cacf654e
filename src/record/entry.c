#include <standbook/base/error.h>
#include <standbook/base/moment.h>
#include <standbook/base/text.h>
#include <standbook/record/entry.h>
#include <string.h>

#include "body.h"

static const char *const line_keys[] = {"ledger", "seq",  "kind",  "format", "by",
                                        "at",     "done", "after", "body"};

Entry *entry_new(const EntryKind *kind)
{
    Entry *entry = g_new0(Entry, 1);
    entry->kind = kind;
    entry->body = json_object();
    return entry;
}

void entry_free(Entry *entry)
{
    if (!entry)
        return;
    g_free(entry->ledger);
    g_free(entry->by);
    g_free(entry->at);
    g_free(entry->done);
    json_decref(entry->body);
    g_free(entry);
}

static gboolean refuse(GError **error, const char *why)
{
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO, "ledger line: %s", why);
    return FALSE;
}

// A moment in the one form that moment_text gives.
static gboolean is_moment(const char *text)
{
    Moment moment;
    if (!text || !moment_parse(text, &moment, NULL))
        return FALSE;
    g_autofree char *exact = moment_text(moment);
    return strcmp(text, exact) == 0;
}

static gboolean check_head(const Entry *entry, GError **error)
{
    if (!entry->ledger || !id_is_valid(entry->ledger))
        return refuse(error, "`ledger` must be a UUID in lower case");
    if (entry->seq < 1)
        return refuse(error, "`seq` must be a whole number from 1");
    if (!entry->by || !id_is_valid(entry->by))
        return refuse(error, "`by` must be the id of a person, a UUID in lower case");
    if (!is_moment(entry->at))
        return refuse(error, "`at` must be a time like 2025-03-13T11:36:00");
    if (entry->done && !is_moment(entry->done))
        return refuse(error, "`done` must be null or a time like 2025-03-13T11:36:00");
    if (entry->after < 0 || entry->after >= entry->seq)
        return refuse(error, "`after` must be null or the number of an earlier entry");
    return TRUE;
}

static gboolean check_earlier(const Entry *entry, GError **error)
{
    for (const Field *field = entry->kind->fields; field->name; field++) {
        if (field->type != FIELD_EARLIER || entry_number(entry, field->name) < entry->seq)
            continue;
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                    "ledger line: `%s` of `%s` must be %s", field->name, entry->kind->name,
                    field_type_words(field->type));
        return FALSE;
    }
    return TRUE;
}

gboolean entry_check(const Entry *entry, GError **error)
{
    return check_head(entry, error) && body_check(entry->kind, entry->body, error) &&
           check_earlier(entry, error);
}

static json_t *text_or_null(const char *text)
{
    return text ? json_string(text) : json_null();
}

char *entry_write(const Entry *entry, GError **error)
{
    if (!entry_check(entry, error))
        return NULL;
    json_auto_t *line = json_object();
    json_object_set_new(line, "ledger", json_string(entry->ledger));
    json_object_set_new(line, "seq", json_integer(entry->seq));
    json_object_set_new(line, "kind", json_string(entry->kind->name));
    json_object_set_new(line, "format", json_integer(entry->kind->format));
    json_object_set_new(line, "by", json_string(entry->by));
    json_object_set_new(line, "at", json_string(entry->at));
    json_object_set_new(line, "done", text_or_null(entry->done));
    json_object_set_new(line, "after", entry->after ? json_integer(entry->after) : json_null());
    json_object_set_new(line, "body", body_ordered(entry->kind, entry->body));
    char *dumped = json_dumps(line, JSON_COMPACT | JSON_PRESERVE_ORDER);
    char *text = g_strdup(dumped);
    free(dumped);
    if (text && strlen(text) <= LEDGER_LINE_MOST)
        return text;
    g_free(text);
    refuse(error, "longer than 4096 bytes; say it in fewer words, or in several notes");
    return NULL;
}

// The line as an object with exactly the nine keys.
static json_t *parse(const char *line, GError **error)
{
    json_error_t where;
    if (strlen(line) > LEDGER_LINE_MOST) {
        refuse(error, "longer than 4096 bytes");
        return NULL;
    }
    json_t *object = json_loads(line, JSON_REJECT_DUPLICATES, &where);
    if (!object) {
        g_autofree char *clean = text_clean(where.text, -1);
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                    "ledger line: not JSON at column %d: %s", where.column, clean);
        return NULL;
    }
    gboolean complete = json_object_size(object) == G_N_ELEMENTS(line_keys);
    for (gsize i = 0; complete && i < G_N_ELEMENTS(line_keys); i++)
        complete = json_object_get(object, line_keys[i]) != NULL;
    if (complete)
        return object;
    json_decref(object);
    refuse(error,
           "must be an object with exactly the keys ledger, seq, kind, format, by, at, done, "
           "after, body");
    return NULL;
}

static const EntryKind *read_kind(json_t *object, GError **error)
{
    const char *name = json_string_value(json_object_get(object, "kind"));
    json_int_t format = json_integer_value(json_object_get(object, "format"));
    if (!name || !kind_newest(name)) {
        g_autofree char *clean = text_clean(name ? name : "", -1);
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                    "ledger line: there is no kind `%s`; a newer standbook may have written it",
                    clean);
        return NULL;
    }
    const EntryKind *kind = format > 0 && format < G_MAXINT ? kind_find(name, (int)format) : NULL;
    if (!kind)
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                    "ledger line: there is no format %" JSON_INTEGER_FORMAT
                    " of `%s`; a newer standbook may have written it",
                    format, name);
    return kind;
}

static void fill(Entry *entry, json_t *object)
{
    entry->ledger = g_strdup(json_string_value(json_object_get(object, "ledger")));
    entry->seq = json_integer_value(json_object_get(object, "seq"));
    entry->by = g_strdup(json_string_value(json_object_get(object, "by")));
    entry->at = g_strdup(json_string_value(json_object_get(object, "at")));
    entry->done = g_strdup(json_string_value(json_object_get(object, "done")));
    entry->after = json_integer_value(json_object_get(object, "after"));
    json_decref(entry->body);
    entry->body = json_incref(json_object_get(object, "body"));
}

Entry *entry_read(const char *line, GError **error)
{
    json_auto_t *object = parse(line, error);
    const EntryKind *kind = object ? read_kind(object, error) : NULL;
    if (!kind)
        return NULL;
    g_autoptr(Entry) entry = entry_new(kind);
    fill(entry, object);
    g_autofree char *exact = entry_write(entry, error);
    if (!exact)
        return NULL;
    // What the getters above took for null (a number where a text belongs) shows here as well.
    if (strcmp(exact, line) != 0) {
        refuse(error, "not in the exact form: order of keys, spaces, escapes or types differ");
        return NULL;
    }
    return g_steal_pointer(&entry);
}
