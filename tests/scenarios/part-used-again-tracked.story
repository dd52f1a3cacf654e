# A lot is asked of what is new; where a part is used again its reason stands for that, but the
# serial that it bears is asked all the same.
plan: parts
2001-09-10 08:00 MO pick up Sizes
add part "rod shells" "as found" in Sizes: {at: 1..2, use: may be reused, track: lot}
add part "wrist pin" "as found" in Sizes: {use: may be reused, track: serial}
fit rod shells reused "even wear, no scoring"
? fit rod shells*: pass
fit rod shells[1] new
? answered: The plan asks for its lot
? fit rod shells[1]: open
fit wrist pin reused "round within 2 µm"
? answered: The plan asks for its serial
? fit wrist pin: open
fit wrist pin serial 17 reused "round within 2 µm"
? fit wrist pin: pass
