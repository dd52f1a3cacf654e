// A story for the judge: a plan and entries of one build, each written as kind and body.
#pragma once
#include <check.h>
#include <standbook/judge/assess.h>
#include <stdio.h>
#include <string.h>

typedef struct {
    Plan *plan;
    GPtrArray *entries;
    guint minute;
} Story;

static inline void story_begin(Story *story, const char *plan)
{
    Faults *faults = faults_new();
    story->plan = plan_read(plan, strlen(plan), faults);
    for (guint i = 0; i < faults_count(faults); i++) {
        char *text = fault_text(faults_at(faults, i), "plan");
        fprintf(stderr, "%s\n", text);
        g_free(text);
    }
    faults_free(faults);
    ck_assert_ptr_nonnull(story->plan);
    story->entries = g_ptr_array_new_with_free_func((GDestroyNotify)entry_free);
    story->minute = 0;
}

static inline void story_end(Story *story)
{
    g_ptr_array_unref(story->entries);
    plan_free(story->plan);
}

// Adds an entry; single quotes in the body stand for double ones. Each is a minute later.
static inline Entry *story_enter(Story *story, const char *kind, const char *body)
{
    Entry *entry = entry_new(kind_newest(kind));
    char *json = g_strdelimit(g_strdup(body), "'", '"');
    json_decref(entry->body);
    entry->body = json_loads(json, 0, NULL);
    ck_assert_msg(entry->body != NULL, "%s", body);
    g_free(json);
    entry->ledger = g_strdup("6f1c2d30-0000-4000-8000-000000000001");
    entry->by = g_strdup("6f1c2d30-0000-4000-8000-0000000000aa");
    entry->at = moment_text(1000000000 + 60 * (Moment)story->minute++);
    entry->seq = story->entries->len + 1;
    GError *error = NULL;
    ck_assert_msg(entry_check(entry, &error), "%s: %s", body, error ? error->message : "");
    g_ptr_array_add(story->entries, entry);
    return entry;
}

// A tool of the shop with U in mm, taken into the build under an id ending in `digits`.
static inline void story_take_tool(Story *story, const char *digits, const char *sort,
                                   const char *uncertainty)
{
    char *tool = g_strdup_printf("{'what':'tool','format':1,'seq':1,'body':{'id':'6f1c2d30-0000-"
                                 "4000-8000-0000000000%s','label':'T%s','sort':'%s'}}",
                                 digits, digits, sort);
    story_enter(story, "take", tool);
    g_free(tool);
    char *calibration = g_strdup_printf(
        "{'what':'calibration','format':1,'seq':2,'body':{'id':'6f1c2d30-0000-4000-8000-0000000001%"
        "s"
        "','tool':'6f1c2d30-0000-4000-8000-0000000000%s','date':'2001-01-01','found':'good',"
        "'uncertainty':{'value':'%s','unit':'mm','typed':'u'}}}",
        digits, digits, uncertainty);
    story_enter(story, "take", calibration);
    g_free(calibration);
}

static inline Entry *story_read(Story *story, const char *check, const char *place,
                                const char *typed, const char *value, const char *digits)
{
    char *body =
        g_strdup_printf("{'check':'%s',%s'value':{'value':'%s','unit':'mm','typed':'%s'},'tool':"
                        "'6f1c2d30-0000-4000-8000-0000000000%s'}",
                        check, place, value, typed, digits);
    Entry *entry = story_enter(story, "read", body);
    g_free(body);
    return entry;
}

static inline void story_tick(Story *story, const char *body)
{
    story_enter(story, "tick", body);
}

// `verdict` or `verdict reason` of the requirement of that name.
static inline void story_expect(const Story *story, const char *name, const char *expected)
{
    Assessment *assessment = assess(story->plan, (const Entry *const *)story->entries->pdata,
                                    story->entries->len, 0, NULL);
    gboolean found = FALSE;
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        char *other = requirement_name(made);
        if (strcmp(other, name) == 0) {
            char *got =
                g_strdup_printf("%s %s", verdict_words(made->verdict), reason_words(made->reason));
            g_strchomp(got);
            ck_assert_msg(strcmp(got, expected) == 0, "%s: %s, not %s", name, got, expected);
            found = TRUE;
            g_free(got);
        }
        g_free(other);
    }
    ck_assert_msg(found, "no requirement %s", name);
    assessment_free(assessment);
}

// Ticks bolts (`1 2 L3`, in that order, one entry) of one stage with the tool ending in 09.
static inline void story_tighten(Story *story, const char *set, const char *step, guint stage,
                                 const char *bolts)
{
    char **all = g_strsplit(bolts, " ", -1);
    char *list = g_strjoinv("','", all);
    char *body = g_strdup_printf("{'tightening':'%s','step':'%s','stage':%u,'bolts':['%s'],"
                                 "'tool':'6f1c2d30-0000-4000-8000-000000000009'}",
                                 set, step, stage, list);
    story_tick(story, body);
    g_free(body);
    g_free(list);
    g_strfreev(all);
}

static inline void story_slacken(Story *story, const char *set, const char *step, const char *bolts)
{
    char **all = g_strsplit(bolts, " ", -1);
    char *list = g_strjoinv("','", all);
    char *body = g_strdup_printf("{'tightening':'%s','step':'%s','bolts':['%s']}", set, step, list);
    story_enter(story, "slacken", body);
    g_free(body);
    g_free(list);
    g_strfreev(all);
}

// The whole assessment; the caller frees.
static inline Assessment *story_assess(const Story *story)
{
    return assess(story->plan, (const Entry *const *)story->entries->pdata, story->entries->len, 0,
                  NULL);
}

// The requirement of that name in an assessment.
static inline const Requirement *story_find(const Assessment *assessment, const char *name)
{
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        char *other = requirement_name(made);
        gboolean same = strcmp(other, name) == 0;
        g_free(other);
        if (same)
            return made;
    }
    ck_abort_msg("no requirement %s", name);
    return NULL;
}

// Its footnotes, with ` | ` between.
static inline void story_expect_notes(const Story *story, const char *name, const char *expected)
{
    Assessment *assessment = story_assess(story);
    const Requirement *made = story_find(assessment, name);
    GString *notes = g_string_new(NULL);
    for (guint i = 0; i < made->notes->len; i++)
        g_string_append_printf(notes, "%s%s", i ? " | " : "", (char *)made->notes->pdata[i]);
    ck_assert_str_eq(notes->str, expected);
    g_string_free(notes, TRUE);
    assessment_free(assessment);
}
