// The setting of the worked example: a backlash of 0.08 to 0.18 mm, aim 0.10 at the tightest place,
// wear opens; 0.546 mm a turn, read to 0.01 mm at four places, moved in 1/48 turns.
#pragma once
#include <standbook/rules/setting.h>

static inline SettingModel backlash(void)
{
    SettingModel model;
    setting_model_init(&model);
    model.least = 0.08;
    model.most = 0.18;
    model.aim = 0.10;
    model.graduation = 0.01;
    model.places = 4;
    model.geometry = 0.546;
    model.direction = 1;
    model.step = 1.0 / 48;
    return model;
}

static inline void read_tight(SettingAdviser *adviser, const double *values)
{
    setting_tightened(adviser);
    for (guint place = 0; place < 4; place++)
        setting_read(adviser, place, values[place], TRUE);
}
