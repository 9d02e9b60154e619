import type { Source } from './sources.ts';

/** Sources of the control charts, their run lengths, the detection limit and the dilution series. `read` says how far each was read. */
export const controlSources: Readonly<Record<string, Source>> = {
  westgard1981: {
    cite: 'Westgard, Barry, Hunt, Groth 1981, a multi-rule Shewhart chart for quality control in clinical chemistry, Clin Chem 27:493-501',
    read: 'definitions of the rules read on a reprint page; flags reproduced by an independent program',
  },
  montgomery2013: {
    cite: 'Montgomery 2013, Introduction to statistical quality control, 7th edition, Wiley',
    read: 'from memory; limits and run lengths reproduced by independent programs',
  },
  page1954: {
    cite: 'Page 1954, continuous inspection schemes, Biometrika 41:100-115',
    read: 'from memory; run lengths reproduced to eleven digits by an independent program',
  },
  'lucas-crosier1982': {
    cite: 'Lucas, Crosier 1982, fast initial response for CUSUM quality-control schemes, Technometrics 24:199-205',
    read: 'from memory; its printed run lengths are reproduced',
  },
  'lucas-saccucci1990': {
    cite: 'Lucas, Saccucci 1990, exponentially weighted moving average control schemes: properties and enhancements, Technometrics 32:1-12',
    read: 'from memory; its printed run lengths are reproduced',
  },
  roberts1959: {
    cite: 'Roberts 1959, control chart tests based on geometric moving averages, Technometrics 1:239-250',
    read: 'from memory; averages and limits reproduced by an independent program',
  },
  crowder1987: {
    cite: 'Crowder 1987, a simple method for studying run-length distributions of exponentially weighted moving average charts, Technometrics 29:401-407',
    read: 'from memory; run lengths reproduced to eleven digits by an independent program',
  },
  'champ-woodall1987': {
    cite: 'Champ, Woodall 1987, exact results for Shewhart control charts with supplementary runs rules, Technometrics 29:393-399',
    read: 'from memory: the chart as a chain of states; results agree with simulation',
  },
  grassmann1985: {
    cite: 'Grassmann, Taksar, Heyman 1985, regenerative analysis and steady state distributions for Markov chains, Oper Res 33:1107-1116',
    read: 'from memory; checked on chains with a known answer',
  },
  'stroud-secrest1966': {
    cite: 'Stroud, Secrest 1966, Gaussian quadrature formulas, Prentice-Hall',
    read: 'from memory; every power up to twice the number of nodes is integrated exactly',
  },
  'montgomery-peck2012': {
    cite: 'Montgomery, Peck, Vining 2012, Introduction to linear regression analysis, 5th edition, Wiley',
    read: 'from memory; line, lack of fit and curvature reproduced by an independent program',
  },
  'clsi-ep17': {
    cite: 'CLSI EP17, evaluation of detection capability; Armbruster, Pry 2008, limit of blank, limit of detection and limit of quantitation, Clin Biochem Rev 29 suppl 1:S49-S52',
    read: 'from memory: the formulas, reproduced by an independent program',
  },
  'nist-strd': {
    cite: 'National Institute of Standards and Technology, Statistical Reference Datasets, itl.nist.gov/div898/strd',
    read: 'certified values read in the published files',
  },
  tobin1958: {
    cite: 'Tobin 1958, estimation of relationships for limited dependent variables, Econometrica 26:24-36',
    read: 'from memory; its example is reproduced to twelve digits outside this repository',
  },
};
