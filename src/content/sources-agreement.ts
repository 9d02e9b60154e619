/** Sources of the statistics of agreement and of cut-offs. */
export const agreementSources: Readonly<Record<string, { readonly cite: string; readonly read: string }>> = {
  blandAltman1986: {
    cite: 'Bland, Altman 1986, statistical methods for assessing agreement between two methods of clinical measurement, Lancet i:307-310',
    read: 'copy seen; formulas from memory, reproduced by an independent program',
  },
  blandAltman1999: {
    cite: 'Bland, Altman 1999, measuring agreement in method comparison studies, Stat Methods Med Res 8:135-160',
    read: 'not read; standard error of the limits from memory',
  },
  carkeet2015: {
    cite: 'Carkeet 2015, exact parametric confidence intervals for Bland-Altman limits of agreement, Optom Vis Sci 92:e71-e80',
    read: 'not read; derived from the noncentral t and checked by simulation',
  },
  lin1989: {
    cite: 'Lin 1989, a concordance correlation coefficient to evaluate reproducibility, Biometrics 45:255-268',
    read: 'not read; formula from memory, reproduced by an independent program',
  },
  lin2000: {
    cite: 'Lin 2000, a note on the concordance correlation coefficient, Biometrics 56:324-325',
    read: 'not read; the corrected standard error is reproduced by an independent program',
  },
  linnet1993: {
    cite: 'Linnet 1993, evaluation of regression procedures for methods comparison studies, Clin Chem 39:424-432',
    read: 'not read; formulas from memory, reproduced by an independent program',
  },
  passingBablok1983: {
    cite: 'Passing, Bablok 1983, a new biometrical procedure for testing the equality of measurements, J Clin Chem Clin Biochem 21:709-720',
    read: 'not read; procedure from memory, reproduced by an independent program',
  },
  delong1988: {
    cite: 'DeLong, DeLong, Clarke-Pearson 1988, comparing the areas under two or more correlated ROC curves, Biometrics 44:837-845',
    read: 'not read; results agree with an independent program',
  },
  sunXu2014: {
    cite: "Sun, Xu 2014, fast implementation of DeLong's algorithm, IEEE Signal Process Lett 21:1389-1393",
    read: 'not read; that mid-ranks give it in one sort is shown by the definition',
  },
  youden1950: { cite: 'Youden 1950, index for rating diagnostic tests, Cancer 3:32-35', read: 'not read; the index is its definition' },
  efronTibshirani1993: {
    cite: 'Efron, Tibshirani 1993, an introduction to the bootstrap',
    read: 'not read; percentile interval and optimism from memory',
  },
  blackmanVigna2021: {
    cite: 'Blackman, Vigna 2021, scrambled linear pseudorandom number generators, ACM Trans Math Softw 47:36',
    read: 'not read; steps of the generator from memory, its first number from a known state worked by hand',
  },
  wilson1927: { cite: 'Wilson 1927, J Am Stat Assoc 22:209-212', read: 'not read; formula from memory, reproduced' },
  newcombe1998: {
    cite: 'Newcombe 1998, two-sided confidence intervals for the single proportion, Stat Med 17:857-872',
    read: 'not read; four printed intervals from memory, reproduced',
  },
  clopperPearson1934: { cite: 'Clopper, Pearson 1934, Biometrika 26:404-413', read: 'not read; the definition, reproduced' },
  simel1991: {
    cite: 'Simel, Samsa, Matchar 1991, likelihood ratios with confidence, J Clin Epidemiol 44:763-770',
    read: 'not read; formula from memory, reproduced by an independent program',
  },
  cohen1960: { cite: 'Cohen 1960, Educ Psychol Meas 20:37-46', read: 'not read; formula from memory, reproduced' },
  cohen1968: { cite: 'Cohen 1968, weighted kappa, Psychol Bull 70:213-220', read: 'not read; formula from memory, reproduced' },
  fleissCohenEveritt1969: {
    cite: 'Fleiss, Cohen, Everitt 1969, large sample standard errors of kappa and weighted kappa, Psychol Bull 72:323-327',
    read: 'not read; results agree with an independent program',
  },
  fleiss1971: { cite: 'Fleiss 1971, Psychol Bull 76:378-382', read: 'not read; formula from memory, reproduced' },
  fleissNeeLandis1979: {
    cite: 'Fleiss, Nee, Landis 1979, large sample variance of kappa in the case of different sets of raters, Psychol Bull 86:974-977',
    read: 'not read; formula from memory, reproduced',
  },
  krippendorff2004: {
    cite: 'Krippendorff 2004, content analysis: an introduction to its methodology, 2nd edition, chapter 11',
    read: 'not read; results agree with an independent program',
  },
  shroutFleiss1979: {
    cite: 'Shrout, Fleiss 1979, intraclass correlations: uses in assessing rater reliability, Psychol Bull 86:420-428',
    read: 'not read; six forms from memory, reproduced by an independent program',
  },
  mcgrawWong1996: {
    cite: 'McGraw, Wong 1996, forming inferences about some intraclass correlation coefficients, Psychol Methods 1:30-46',
    read: 'not read; intervals agree with an independent program',
  },
};
