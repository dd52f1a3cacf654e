# Bolts done again are told by position, whatever the order in which they are tightened.
plan: head
2001-09-10 08:00 MO pick up Head
tighten head bolts stage 1 all with W1
tighten head bolts stage 1 all with W1
? answered: Done at this stage already: 1 to 10 (#9); what is entered now stands
tighten head bolts stage 1 from 7 to 9 with W1
? answered: Done at this stage already: 2, 7, 9 (#10); what is entered now stands
