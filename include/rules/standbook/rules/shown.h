// What a wrench or an angle gauge showed at a bolt, against what it was to show. Nothing here is
// floating point.
#pragma once
#include <standbook/value/number.h>

typedef enum {
    SHOWN_AS_ASKED,
    SHOWN_LOW, // too little
    SHOWN_HIGH,
} Shown;

// Off by more than a tenth of what is asked is another torque or angle than that; a tenth is none.
// Common practice, no published source. What lies within it is left to the tool: ISO 6789-1:2017
// allows a torque tool 4 or 6 % of what it is set to, so that a tenth is generous. One unit for
// both; where nothing above 0 is asked, all is as asked.
Shown shown_against(const Number *shown, const Number *asked);
