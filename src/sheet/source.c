#include <standbook/sheet/sheet.h>

SheetSource opened_source(const Opened *opened, const Assessment *assessment)
{
    return (SheetSource){
        .plan = opened_plan(opened),
        .entries = (const Entry *const *)opened->entries->pdata,
        .count = (gsize)assessment->upto,
        .assessment = assessment,
        .taken = opened->taken,
        .shop = opened->shop,
        .build = opened->number,
        .digest = opened->upto == opened->end ? opened->digest : NULL,
        .since_seal = opened->differs,
    };
}
