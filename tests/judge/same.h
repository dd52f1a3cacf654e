// Whether two assessments are the same in every field.
#pragma once
#include <check.h>
#include <standbook/judge/assess.h>
#include <string.h>

static inline gboolean same_number(const Number *one, const Number *other)
{
    return one && other ? number_equal(one, other) : one == other;
}

static inline gboolean same_notes(const GPtrArray *one, const GPtrArray *other)
{
    for (guint i = 0; i < one->len && i < other->len; i++)
        if (strcmp(one->pdata[i], other->pdata[i]) != 0)
            return FALSE;
    return one->len == other->len;
}

static inline gboolean same_asked(const Requirement *one, const Requirement *other)
{
    return one->asked == other->asked && strcmp(one->name, other->name) == 0 &&
           one->step == other->step && strcmp(one->place, other->place) == 0 &&
           g_strv_equal((const char *const *)one->labels, (const char *const *)other->labels) &&
           one->stage == other->stage && one->gate == other->gate && one->added == other->added &&
           one->optional == other->optional && one->finding == other->finding &&
           one->withdrawn == other->withdrawn && one->check == other->check;
}

static inline gboolean same_cause(const ToolCause *one, const ToolCause *other)
{
    return one->state == other->state && one->use == other->use && one->entry == other->entry;
}

static inline gboolean same_verdict(const Requirement *one, const Requirement *other)
{
    return one->verdict == other->verdict && one->reason == other->reason &&
           one->doubts == other->doubts && one->own_verdict == other->own_verdict &&
           one->own_reason == other->own_reason && one->value_verdict == other->value_verdict &&
           one->value_reason == other->value_reason;
}

static inline gboolean same_value(const Requirement *one, const Requirement *other)
{
    return same_number(one->value, other->value) && one->bound == other->bound &&
           same_number(one->variance, other->variance) && same_number(one->lower, other->lower) &&
           same_number(one->upper, other->upper) && same_number(one->wear, other->wear) &&
           same_number(one->plan_lower, other->plan_lower) &&
           same_number(one->plan_upper, other->plan_upper) &&
           same_number(one->plan_wear, other->plan_wear) &&
           g_strcmp0(one->answer, other->answer) == 0;
}

static inline gboolean same_beside(const GArray *one, const GArray *other)
{
    guint count = one ? one->len : 0;
    for (guint i = 0; other && i < count && i < other->len; i++) {
        const ReadingBeside *a = &g_array_index(one, ReadingBeside, i);
        const ReadingBeside *b = &g_array_index(other, ReadingBeside, i);
        if (a->entry != b->entry || a->why != b->why || a->gauge != b->gauge)
            return FALSE;
    }
    return count == (other ? other->len : 0);
}

static inline gboolean same_basis(const Requirement *one, const Requirement *other)
{
    return one->read == other->read && one->asked_for == other->asked_for &&
           one->entry == other->entry && one->conceded == other->conceded &&
           one->upheld == other->upheld && one->amended == other->amended &&
           one->decided == other->decided && same_cause(&one->tool, &other->tool) &&
           same_cause(&one->redone, &other->redone) && same_notes(one->notes, other->notes) &&
           same_beside(one->beside, other->beside);
}

static inline void expect_same_requirement(const Requirement *one, const Requirement *other,
                                           const char *where)
{
    char *name = requirement_name(one);
    ck_assert_msg(same_asked(one, other), "%s, %s: asked for otherwise", where, name);
    ck_assert_msg(same_verdict(one, other), "%s, %s: %s %s %x own %s %s / %s %s %x own %s %s",
                  where, name, verdict_words(one->verdict), reason_words(one->reason), one->doubts,
                  verdict_words(one->own_verdict), reason_words(one->own_reason),
                  verdict_words(other->verdict), reason_words(other->reason), other->doubts,
                  verdict_words(other->own_verdict), reason_words(other->own_reason));
    ck_assert_msg(same_value(one, other), "%s, %s: another value", where, name);
    ck_assert_msg(same_basis(one, other), "%s, %s: another basis", where, name);
    g_free(name);
}

static inline void expect_same_assessment(const Assessment *one, const Assessment *other,
                                          const char *where)
{
    ck_assert_uint_eq(one->requirements->len, other->requirements->len);
    for (guint i = 0; i < one->requirements->len; i++)
        expect_same_requirement(one->requirements->pdata[i], other->requirements->pdata[i], where);
    ck_assert_msg(memcmp(one->counts, other->counts, sizeof one->counts) == 0, "%s: counts", where);
    ck_assert_uint_eq(one->planned, other->planned);
    ck_assert_uint_eq(one->added, other->added);
    ck_assert_uint_eq(one->withdrawn, other->withdrawn);
    ck_assert_int_eq(one->upto, other->upto);
    for (guint i = 0; i < one->gates->len; i++) {
        const GateCount *gate = one->gates->pdata[i], *same = other->gates->pdata[i];
        ck_assert_str_eq(gate->name, same->name);
        ck_assert(memcmp(gate->counts, same->counts, sizeof gate->counts) == 0);
        ck_assert_uint_eq(gate->left, same->left);
        ck_assert_int_eq(gate->sealed, same->sealed);
        ck_assert_uint_eq(gate->since, same->since);
        ck_assert(memcmp(gate->turned, same->turned, sizeof gate->turned) == 0);
    }
}
