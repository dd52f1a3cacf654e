# Many bolts pulled once more: the answer tells them in runs, those of one entry together.
plan: many
2001-09-10 08:00 MO pick up Plate
tighten plate stage 1 all with W1
tighten plate stage 1 from 1 to 50 with W1
? answered: Done at this stage already: 1 to 50 (#9); what is entered now stands
tighten plate[4] stage 1 with W1
tighten plate[5] stage 1 with W1
tighten plate stage 1 all with W1
? answered: Done at this stage already: 1 to 3, 6 to 50 (#10), 4 (#11), 5 (#12), 51 to 100 (#9); what
tighten plate[2] stage 1 with W1
tighten plate[4] stage 1 with W1
tighten plate[6] stage 1 with W1
tighten plate[8] stage 1 with W1
tighten plate stage 1 from 1 to 10 with W1
? answered: Done at this stage already: 1, 3, 5, 7, 9, 10 (#13), 2 (#14) and 3 more; what
