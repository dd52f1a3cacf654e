// The tables of the plan file.
#include <standbook/plan/schema.h>

static const SchemaKey consumable_keys[] = {
    {"kind", SCHEMA_WORDS, FALSE, NULL, NULL, "what it is: silicone, anaerobic, thread lock"},
    {"fit within", SCHEMA_AMOUNT, FALSE, NULL, NULL,
     "time from laying it on to the last bolt of its first stage"},
    {"fluid after", SCHEMA_AMOUNT, FALSE, NULL, NULL, "time until fluid may be filled in"},
    {"run after", SCHEMA_AMOUNT, FALSE, NULL, NULL, "time until the engine may run"},
};
const SchemaMapping schema_of_consumable = {"a consumable", consumable_keys,
                                            G_N_ELEMENTS(consumable_keys)};

static const SchemaKey part_keys[] = {
    {"at", SCHEMA_PLACES, FALSE, NULL, NULL, "the places it is fitted at, one part each"},
    {"count", SCHEMA_COUNT, FALSE, NULL, NULL, "how many, where the place does not matter"},
    {"use", SCHEMA_CHOICE, FALSE, "new/may be reused", NULL, "whether a used one may be fitted"},
    {"track", SCHEMA_CHOICE, FALSE, "lot/serial", NULL, "asks for its lot or serial number"},
    {"formerly", SCHEMA_WORDS, FALSE, NULL, NULL, "its name in an earlier revision"},
    {"note", SCHEMA_TEXTS, FALSE, NULL, NULL, "anything else"},
};
const SchemaMapping schema_of_part = {"a part", part_keys, G_N_ELEMENTS(part_keys)};

static const SchemaKey set_keys[] = {
    {"move", SCHEMA_WORDS, TRUE, NULL, NULL, "what is moved: adjuster, shim, stop screw"},
    {"unit", SCHEMA_WORDS, FALSE, NULL, NULL, "the unit of a move: mm, turn, notch"},
    {"range", SCHEMA_WORDS, FALSE, NULL, NULL, "how far it moves: -3..3"},
    {"step", SCHEMA_AMOUNT, FALSE, NULL, NULL, "the smallest move"},
    {"stock", SCHEMA_LIST, FALSE, NULL, NULL,
     "the shims there are: [2.40, 2.45], or 2.40..2.80 in 0.05"},
    {"gives", SCHEMA_WORDS, FALSE, NULL, NULL,
     "the geometry: reading per unit moved, or more, or less"},
    {"zero", SCHEMA_WORDS, FALSE, NULL, NULL, "where moves are counted from"},
    {"loose", SCHEMA_YES, FALSE, NULL, NULL, "yes: it is also read loose"},
    {"each", SCHEMA_YES, FALSE, NULL, NULL, "yes: each place has an adjuster of its own"},
};
const SchemaMapping schema_of_set = {"a setting", set_keys, G_N_ELEMENTS(set_keys)};

static const SchemaKey check_keys[] = {
    {"at", SCHEMA_PLACES, FALSE, NULL, NULL,
     "the places: axes, a pair such as free/tight, or a group: one for each of its bolts"},
    {"unit", SCHEMA_WORDS, FALSE, NULL, NULL, "the unit of its readings"},
    {"decimals", SCHEMA_COUNT, FALSE, NULL, NULL, "the digits shown behind the point"},
    {"limits", SCHEMA_LIMITS, FALSE, NULL, NULL, "what it is judged against"},
    {"wear", SCHEMA_AMOUNT, FALSE, NULL, NULL, "the service limit, beyond the limits"},
    {"aim", SCHEMA_WORDS, FALSE, NULL, NULL,
     "the value to aim for: 0.10, smallest 0.10, low, high"},
    {"gauge", SCHEMA_WORDS, FALSE, NULL, NULL, "the kind of gauge"},
    {"doubt", SCHEMA_AMOUNT, FALSE, NULL, NULL, "the method's own uncertainty (U, k = 2)"},
    {"source", SCHEMA_WORDS, FALSE, NULL, NULL, "where the figures come from"},
    {"choose", SCHEMA_WORDS, FALSE, NULL, NULL, "the axis of which one label is chosen"},
    {"set", SCHEMA_MAPPING, FALSE, NULL, &schema_of_set, "it is set by adjusting and reading"},
    {"with", SCHEMA_LIST, FALSE, NULL, NULL, "the groups that are tight while it is read"},
    {"rests on", SCHEMA_LIST, FALSE, NULL, NULL, "what it falls with once that is disturbed"},
    {"settled by", SCHEMA_LIST, FALSE, NULL, NULL,
     "a finding: the checks that answer it, or decision"},
    {"feature", SCHEMA_WORDS, FALSE, NULL, NULL, "joins its history over builds"},
    {"optional", SCHEMA_YES, FALSE, NULL, NULL, "yes: may be left without a reason"},
    {"formerly", SCHEMA_WORDS, FALSE, NULL, NULL, "its name in an earlier revision"},
    {"note", SCHEMA_TEXTS, FALSE, NULL, NULL, "anything else"},
};
const SchemaMapping schema_of_check = {"a check", check_keys, G_N_ELEMENTS(check_keys)};

static const SchemaKey group_keys[] = {
    {"bolts", SCHEMA_PLACES, TRUE, NULL, NULL, "their positions: 1..10, L1..L3/R1..R3, or axes"},
    {"layout", SCHEMA_WORDS, FALSE, NULL, NULL, "how they lie: rows with / between, or circle"},
    {"thread", SCHEMA_WORDS, FALSE, NULL, NULL, "M10, M24 × 1.5, with left-hand where it is"},
    {"class", SCHEMA_WORDS, FALSE, NULL, NULL, "the property class: 10.9"},
    {"length", SCHEMA_AMOUNT, FALSE, NULL, NULL, "the length clamped"},
    {"clamps", SCHEMA_WORDS, FALSE, NULL, NULL,
     "what it clamps: steel, iron, alloy, with gasket where one lies between"},
    {"order", SCHEMA_WORDS, FALSE, NULL, NULL,
     "3-4-1-2, row, criss-cross or spiral; without it as numbered"},
    {"each", SCHEMA_WORDS, FALSE, NULL, NULL,
     "bolt, or an axis: takes one of it through all stages"},
    {"stages", SCHEMA_WORDS, TRUE, NULL, NULL, "the stages, with > between: 30 > +60°"},
    {"ceiling", SCHEMA_AMOUNT, FALSE, NULL, NULL, "the torque that `until` must not pass"},
    {"lubricant", SCHEMA_BY_LABEL, FALSE, NULL, NULL, "what is put on threads and seats"},
    {"adapter", SCHEMA_WORDS, FALSE, NULL, NULL,
     "the adapter on the wrench, its angle, its bolts: X1 at 90° on bolt 4"},
    {"use", SCHEMA_CHOICE, FALSE, "new/once/may be reused", NULL,
     "whether bolts may be used again"},
    {"track", SCHEMA_CHOICE, FALSE, "lot/serial", NULL, "asks for their lot or serial number"},
    {"with new", SCHEMA_LIST, FALSE, NULL, NULL, "what is fitted new each time: lock tab"},
    {"instead of", SCHEMA_AMOUNT, FALSE, NULL, NULL, "the torque that these stages stand for"},
    {"then off", SCHEMA_YES, FALSE, NULL, NULL, "yes: a mock-up that is taken down again"},
    {"log", SCHEMA_CHOICE, FALSE, "bolt/group", NULL, "tick each bolt, or the group as a whole"},
    {"mark", SCHEMA_YES, FALSE, NULL, NULL,
     "yes: asks for a witness mark, which a check may look at again"},
    {"formerly", SCHEMA_WORDS, FALSE, NULL, NULL, "its name in an earlier revision"},
    {"note", SCHEMA_TEXTS, FALSE, NULL, NULL, "anything else"},
    {"source", SCHEMA_WORDS, FALSE, NULL, NULL, "where the figures come from"},
};
const SchemaMapping schema_of_group = {"a group", group_keys, G_N_ELEMENTS(group_keys)};

static const SchemaKey step_keys[] = {
    {"gate", SCHEMA_WORDS, FALSE, NULL, NULL, "the gate it belongs to; holds until the next"},
    {"phase", SCHEMA_WORDS, FALSE, NULL, NULL, "a heading; holds until the next"},
    {"minutes", SCHEMA_COUNT, FALSE, NULL, NULL, "how long it usually takes"},
    {"unit", SCHEMA_WORDS, FALSE, NULL, NULL, "the unit of its checks"},
    {"gauge", SCHEMA_WORDS, FALSE, NULL, NULL, "the kind of gauge of its checks"},
    {"decimals", SCHEMA_COUNT, FALSE, NULL, NULL, "the digits of its checks behind the point"},
    {"doubt", SCHEMA_AMOUNT, FALSE, NULL, NULL, "the doubt of its checks"},
    {"source", SCHEMA_WORDS, FALSE, NULL, NULL, "where the figures come from"},
    {"do", SCHEMA_TEXTS, FALSE, NULL, NULL, "what is done"},
    {"caution", SCHEMA_TEXTS, FALSE, NULL, NULL, "shown when it starts, passed by a key"},
    {"after", SCHEMA_LIST, FALSE, NULL, NULL,
     "the steps before it, or nothing; without it the step above"},
    {"hides", SCHEMA_TEXTS, FALSE, NULL, NULL, "what cannot be seen afterwards"},
    {"closes", SCHEMA_LIST, FALSE, NULL, NULL, "checks and groups shown before going on"},
    {"hold", SCHEMA_BY_LABEL, FALSE, NULL, NULL,
     "what another person signs: words, or words: second person / two persons"},
    {"uses", SCHEMA_LIST, FALSE, NULL, NULL, "the consumables whose clocks start here"},
    {"begins", SCHEMA_CHOICE, FALSE, "fluid/run", NULL, "it fills fluid in, or runs the engine"},
    {"fit", SCHEMA_NAMES, FALSE, NULL, &schema_of_part, "the parts fitted"},
    {"checks", SCHEMA_NAMED, FALSE, NULL, &schema_of_check, "what is measured or looked at"},
    {"fasteners", SCHEMA_NAMED, FALSE, NULL, &schema_of_group, "the groups tightened"},
    {"retighten", SCHEMA_NAMED, FALSE, NULL, NULL, "groups of earlier steps: stages or as before"},
    {"read again", SCHEMA_LIST, FALSE, NULL, NULL, "earlier checks read once more"},
    {"formerly", SCHEMA_WORDS, FALSE, NULL, NULL, "its name in an earlier revision"},
    {"note", SCHEMA_TEXTS, FALSE, NULL, NULL, "anything else"},
};
const SchemaMapping schema_of_step = {"a step", step_keys, G_N_ELEMENTS(step_keys)};

static const SchemaKey plan_keys[] = {
    {"format", SCHEMA_COUNT, FALSE, NULL, NULL, "the format of the file: 1"},
    {"plan", SCHEMA_WORDS, TRUE, NULL, NULL, "the plan's name"},
    {"revision", SCHEMA_WORDS, FALSE, NULL, NULL, "its revision"},
    {"family", SCHEMA_WORDS, FALSE, NULL, NULL, "the engines it is for"},
    {"source", SCHEMA_WORDS, FALSE, NULL, NULL, "where its figures come from"},
    {"units", SCHEMA_LIST, FALSE, NULL, NULL, "one unit per kind; the first for bare numbers"},
    {"numbering", SCHEMA_TEXTS, FALSE, NULL, NULL, "which end is 1"},
    {"gauge", SCHEMA_WORDS, FALSE, NULL, NULL, "the kind of gauge of its checks"},
    {"decimals", SCHEMA_COUNT, FALSE, NULL, NULL, "the digits of its checks behind the point"},
    {"doubt", SCHEMA_AMOUNT, FALSE, NULL, NULL, "the doubt of its checks"},
    {"gates", SCHEMA_LIST, FALSE, NULL, NULL, "its gates in order"},
    {"axes", SCHEMA_NAMED, FALSE, NULL, NULL, "the axes of places: 1..4, top/mid/bottom"},
    {"given", SCHEMA_NAMED, FALSE, NULL, NULL, "constants: a formula, or one for each label"},
    {"consumables", SCHEMA_NAMED, FALSE, NULL, &schema_of_consumable, "sealants and the like"},
    {"steps", SCHEMA_NAMED, TRUE, NULL, &schema_of_step, "the work, in order"},
    {"note", SCHEMA_TEXTS, FALSE, NULL, NULL, "anything else"},
};
const SchemaMapping schema_of_plan = {"a plan", plan_keys, G_N_ELEMENTS(plan_keys)};
