# A sealant that the plan names and nobody has laid is asked for at the first tick, once; one that
# the plan does not ask for there is said.
plan: unlaid
2001-09-10 08:00 MO tighten sump stage 1 from 3 to 3 with W4
? answered: #8: bolt sump in Sump[3], stage 1: pass
strike sump typo
tighten sump stage 1 all with W4
? answered: No paste is laid; write `lay paste on sump lot …`
strike sump "sealant forgotten"
lay paste lot P-1 on sump
tighten sump stage 1 all with W4
? bolt sump in Sump[*], stage 1: pass
lay paste on drain
? answered: The plan asks for no paste on `drain`; its clocks run all the same
