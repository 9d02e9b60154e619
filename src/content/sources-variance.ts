/** Sources of the statistics of swab studies and trends. `read` says how far each was read. */
export const varianceSources: Readonly<Record<string, { readonly cite: string; readonly read: string }>> = {
  'aiag-msa4': {
    cite: 'AIAG, Measurement Systems Analysis, 4th edition, 2010',
    read: 'not read; method from memory, its published example reproduced outside this repository',
  },
  burdick2005: {
    cite: 'Burdick, Borror, Montgomery 2005, Design and Analysis of Gauge R and R Studies, SIAM',
    read: 'not read; formulas from memory, coverage checked by simulation',
  },
  'graybill-wang1980': {
    cite: 'Graybill, Wang 1980, J Am Stat Assoc 75:869-873',
    read: 'not read; formula from memory, coverage checked by simulation',
  },
  ting1990: {
    cite: 'Ting, Burdick, Graybill, Jeyaratnam, Lu 1990, J Stat Comput Simul 35:135-143',
    read: 'not read; formula from memory, coverage checked by simulation',
  },
  'iso5725-2': {
    cite: 'ISO 5725-2:1994, accuracy of measurement methods and results, part 2',
    read: 'not read; method from memory, two published examples reproduced',
  },
  grubbs1969: {
    cite: 'Grubbs 1969, Technometrics 11:1-21',
    read: 'not read; formula from memory',
  },
  'patterson-thompson1971': {
    cite: 'Patterson, Thompson 1971, Biometrika 58:545-554 (restricted maximum likelihood)',
    read: 'not read; method from memory, reproduced against lme4',
  },
  henderson1975: {
    cite: 'Henderson 1975, Biometrics 31:423-447 (best linear unbiased prediction and its error)',
    read: 'not read; method from memory, reproduced against lme4',
  },
};
