# What cannot be a torque, a bolt or a wrench is refused with the place and what to write instead;
# nothing is taken.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps[2] stage 1 0 with W1
? refused: column 25: what a bolt is pulled to is above 0; write what was shown, or nothing
tighten caps[2] stage 1 -40 with W1
? refused: column 25: what a bolt is pulled to is above 0
tighten caps[2] stage 2 0 with A1
? refused: column 25: what a bolt is pulled to is above 0
tighten caps[2] stage 1 40 mm with W1
? refused: `mm` is a length, but a torque is read here
tighten caps[2] stage 1 with W7
? refused: the shop has no tool `W7`
tighten caps[2, 2] stage 1
? refused: `2` is a second bolt
tighten caps[5] stage 1
? refused: `caps` has no place `5`
tighten caps stage 1 from 1 to 2
? refused: the run goes backwards; the order asked is 2-3-1-4
tighten caps[2] stage 3
? refused: `caps in Block` has no stage 3; its stages are 40 > +90°
? counts: open 24
