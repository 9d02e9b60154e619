/** Sources of the swab reading: the conditions, the methods, and what noise to expect. `read` says how far each was read. */
export const readingSources: Readonly<Record<string, { readonly cite: string; readonly read: string }>> = {
  'common-practice': {
    cite: 'Common practice of the trade; no published source',
    read: 'no source: what practitioners take as given, shown as such',
  },
  whiteley2012: {
    cite: 'Whiteley, Derry, Glasbey 2012, comparative performance of three portable ATP meters, Healthcare Infection',
    read: 'abstract read; year from memory',
  },
  whiteley2015: {
    cite: 'Whiteley, Derry, Glasbey, Fahey 2015, Infect Control Hosp Epidemiol 36:658-663',
    read: 'abstract read: sd up to about 50 % of the mean',
  },
  vogel2014: {
    cite: 'Vogel, Tank, Goodyear 2014, Lett Appl Microbiol',
    read: 'abstract read: cv 12 to 19 % mid-range, about 60 % near the floor',
  },
  colquhoun1998: {
    cite: 'Colquhoun, Timms, Fricker 1998, J Food Prot 61:499',
    read: 'abstract read: cv of ATP doses and of food residue',
  },
  omidbakhsh2014: {
    cite: 'Omidbakhsh, Ahmadpour, Kenny 2014, PLoS ONE 9:e99951',
    read: 'read: most disinfectant chemistries change the reading, differently per meter',
  },
  ford1998: {
    cite: 'Ford, Leach 1998, bioluminescence methods and protocols, Methods Mol Biol 102, chapter 1',
    read: 'excerpt read: at much ATP the light comes as a flash and falls, so the time of the reading matters',
  },
  'clinExpDentRes-atp': {
    cite: 'Clin Exp Dent Res, PMC5839252: ATP of plaque and saliva against counts of mutans streptococci and lactobacilli, 38 adults',
    read: 'read: areas 0.774 and 0.823, against bacteria and not against decay; weak for one person, say its authors',
  },
  bentley1988: {
    cite: 'Bentley, Crawford, Broderius 1988, J Dent Res 67:1409-1413',
    read: 'abstract read: salivary counts higher on rising than after breakfast and brushing; day-to-day spread',
  },
  'fraser-harris1989': {
    cite: 'Fraser, Harris 1989, Crit Rev Clin Lab Sci 27:409',
    read: 'from memory; the formula is reproduced by reference values',
  },
  fokkema2006: {
    cite: 'Fokkema, Herrmann, Muskiet, Moecks 2006, Clin Chem 52:1602 (letter)',
    read: 'opening read; authors and formula from memory, formula reproduced by a published pair of limits',
  },
  jcgm106: {
    cite: 'JCGM 106:2012, evaluation of measurement data: measurement uncertainty in conformity assessment',
    read: 'from memory; two worked examples reproduced',
  },
  'gelman-bda3': {
    cite: 'Gelman, Carlin, Stern, Dunson, Vehtari, Rubin 2013, Bayesian data analysis, 3rd edition, normal model with unknown variance',
    read: 'from memory; the formula is checked against its own closed form and a simulation',
  },
  sidak1967: {
    cite: 'Sidak 1967, J Am Stat Assoc 62:626-633, rectangular confidence regions for the means of multivariate normal distributions',
    read: 'from memory; checked by simulation',
  },
  olsen1978: {
    cite: 'Olsen 1978, Econometrica 46:1211-1215, uniqueness of the maximum likelihood estimate of the tobit model',
    read: 'from memory; results agree with an independent program',
  },
};
