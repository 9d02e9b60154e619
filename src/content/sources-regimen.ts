import type { Source } from './sources.ts';

/** Sources of needs, agents, safety rules, fluoride limits, weights and recall. `read` says how far each was read. */
export const regimenSources: Readonly<Record<string, Source>> = {
  // Products, labels and guidance
  varnishMonographs: {
    cite: 'UK monograph of 5 % sodium fluoride dental suspension, and New Zealand medicine summary of the same.',
    read: 'doses, contraindications and the same-day rule',
  },
  colophonyNotes: {
    cite: 'Product information of colophony varnishes; American Academy of Pediatrics practice page on varnish; letter in Br Dent J 2018.',
    read: 'the lines on allergy',
  },
  highFluorideLabels: {
    cite: 'UK product summary of 5,000 ppm fluoride toothpaste (2015) and US prescription label of 1.1 % sodium fluoride gel.',
    read: 'ages and use',
  },
  smpcHighFluoride: {
    cite: 'UK product summaries of 2,800 and 5,000 ppm fluoride toothpaste, sections 4.1 to 4.6.',
    read: 'ages, total intake of fluoride, pregnancy, overdose',
  },
  aap2014: {
    cite: 'Clark MB, Slayton RL, American Academy of Pediatrics, clinical report on fluoride, 2014.',
    read: 'the lines on high-fluoride paste',
  },
  rinseLabels: { cite: 'US and UK labels of 0.05 % sodium fluoride mouth rinse.', read: 'ages, amount and waiting time' },
  preventionToolkit: {
    cite: 'Delivering better oral health, UK, 2021, chapters and study notes of its tables.',
    read: 'chapter on brushing; the tables only in study notes, edition not stated',
  },
  chaffee2015: { cite: 'Chaffee BW, Cheng J, Featherstone JDB. J Dent 2015;43(5):518-524.', read: 'abstract' },
  chaffee2016: {
    cite: 'Chaffee BW, Featherstone JDB, Gansky SA, Cheng J, Zhan L. JDR Clin Trans Res 2016;1(2):131-142.',
    read: 'abstract',
  },
  rinseNumbers: {
    cite: 'Cochrane summary page on fluoride mouth rinses, edition before 2016.',
    read: 'the numbers of children for one surface',
  },
  careTable2022: {
    cite: 'Table of care by caries risk (low, medium, high), 2022, in an open-access journal; authors and title not noted.',
    read: 'the table',
  },
  adaPaste: { cite: 'American Dental Association, topic page on toothpastes.', read: 'amounts by age' },
  lecompte1987: { cite: 'LeCompte EJ. J Dent Res 1987;66:1066-1071.', read: 'abstract' },
  ada2013: {
    cite: 'Weyant RJ et al. J Am Dent Assoc 2013;144(11):1279-1291, topical fluoride guideline.',
    read: 'abstract and chairside guide',
  },
  ada2011: { cite: 'Rethman MP et al. J Am Dent Assoc 2011;142(9):1065-1071, nonfluoride agents.', read: 'abstract and recommendations' },
  ada2010supplements: {
    cite: 'Rozier RG et al. J Am Dent Assoc 2010;141(12):1480-1489, Table 3; US label precautions.',
    read: 'the table',
  },
  fda2025supplements: {
    cite: 'Notices of 31 October 2025 of the US health department and its drug authority on swallowed fluoride for children.',
    read: 'reports of the notices by a dental academy and news pages',
  },
  fdaMonograph: {
    cite: 'US Code of Federal Regulations, title 21, part 355 (anticaries drug products).',
    read: 'sections 10, 20, 50 and 60 in part',
  },
  stannousLabel: { cite: 'US label of 0.454 % stannous fluoride toothpaste.', read: 'ages' },
  sdfGuideline: { cite: 'NHS Highland, guideline on silver diamine fluoride.', read: 'list of exclusions' },
  horst2016: { cite: 'Horst JA, Ellenikiotis H, Milgrom PL. J Calif Dent Assoc 2016;44(1):16-28.', read: 'amounts' },
  ignatiev2015: {
    cite: 'Ignatiev A, Previti A, Liffiton M, Marques-Silva J. CP 2015, LNCS 9255:173-182, smallest conflicts by implicit hitting sets.',
    read: 'nothing; the method is from memory',
  },
  slayton2018: {
    cite: 'Slayton RL et al. J Am Dent Assoc 2018;149(10):837-849, nonrestorative treatments.',
    read: 'recommendations, in part as reprinted',
  },
  povidoneIodineLabels: { cite: 'Irish and Swiss product summaries of povidone-iodine for the mouth.', read: 'contraindications' },
  chlorhexidineLabels: {
    cite: 'UK and US labels of chlorhexidine mouth rinse 0.2 and 0.12 %.',
    read: 'contraindications, ages, use; the UK age only in part',
  },
  hypochloriteNotes: {
    cite: 'Slots J, writings on dilute hypochlorite rinses, 2000 to 2015.',
    read: 'a trade column; the rest from memory',
  },
  hypochloriteTrials: {
    cite: 'Galvan M et al. J Periodontal Res 2014;49:696-702; De Nardo R et al. Int Dent J 2012;62:208-212; Mishra R et al. J Indian Soc Periodontol 2019;23:534.',
    read: 'abstracts',
  },
  caseinAllergy: { cite: 'Notes on casein products and milk allergy; exclusions of trials.', read: 'the lines on allergy' },
  salivaMedicineLabels: { cite: 'US label of pilocarpine tablets.', read: 'contraindications, as quoted' },
  excipientLabels: {
    cite: 'UK product summaries of oral care medicines, sections 4.3 and 4.4; US labels.',
    read: 'the lines on ingredients',
  },
  aspartameLabels: { cite: 'Reference page on phenylketonuria and aspartame; label law.', read: 'reference page; the law from memory' },
  sccs2023: { cite: 'Scientific Committee on Consumer Safety, SCCS/1648/22, hydroxyapatite (nano), March 2023.', read: 'conclusions' },
  sccs2025: {
    cite: 'Scientific Committee on Consumer Safety, hydroxyapatite (nano), submission IV, 26 June 2025.',
    read: 'record of the opinion',
  },
  radiotherapy2022: { cite: 'Br Dent J 2022, on mouth care around radiotherapy of head and neck, Table 1.', read: 'Table 1' },
  nciOral: { cite: 'National Cancer Institute, PDQ, oral complications of cancer therapies.', read: 'a copy of the page' },
  makinen2016: { cite: 'Mäkinen KK. Int J Dent 2016;2016:5967907.', read: 'abstract and the lines on tolerance' },
  polyolNotes: { cite: 'Sorbitol and maltitol in hereditary fructose intolerance.', read: 'from memory' },
  dogsXylitol: { cite: 'Compend Contin Educ Vet 2010;32(2):E1-E4, xylitol in dogs.', read: 'abstract' },
  handbook: { cite: 'General knowledge of the trade as handbooks give it; no page looked up.', read: 'from memory' },
  generalChemistry: {
    cite: 'General chemistry: hypochlorite with acid gives chlorine, with ammonia chloramine.',
    read: 'textbook knowledge',
  },
  kolahi2006: {
    cite: 'Kolahi J, Soolari A. Quintessence Int 2006;37:605-612; Barkvoll P et al. J Clin Periodontol 1989;16:593-595.',
    read: 'abstracts',
  },
  elkerbout2016: { cite: 'Elkerbout TA et al. Int J Dent Hyg 2016 (year as read), chlorhexidine and toothpaste.', read: 'abstract' },
  khatib2020: { cite: 'Khatib MS et al. 2020, systematic review of precipitates of hypochlorite with chlorhexidine.', read: 'abstract' },
  hong2020: { cite: 'Hong DW et al. 2020, delayed brushing after acid, meta-analysis; SBU report.', read: 'abstract' },
  bayless1985: {
    cite: 'Bayless JM, Tinanoff N. J Am Dent Assoc 1985;110:209-211.',
    read: 'abstract: at most 120 mg fluoride dispensed at one time',
  },

  // Limits, weights, arithmetic
  swallowedReview: {
    cite: 'Review of swallowed fluoride, open-access article PMC5651468, Table 3; authors not noted.',
    read: 'the table; its advice to empty the stomach is superseded',
  },
  whitford1987: { cite: 'Whitford GM. J Dent Res 1987;66:1056-1060; and 1990.', read: 'abstract: 5 mg/kg as the dose for emergency care' },
  iom1997: {
    cite: 'Institute of Medicine, Dietary reference intakes for calcium, phosphorus, magnesium, vitamin D and fluoride, 1997.',
    read: 'basis and most values; 2.2 mg in a secondary table',
  },
  efsa2025: { cite: 'European Food Safety Authority, updated risk assessment of fluoride, 2025.', read: 'summary and its tables' },
  atomicMasses: { cite: 'Standard atomic masses, IUPAC.', read: 'table' },
  cdc2000: { cite: 'Centers for Disease Control and Prevention, growth charts 2000, weight for age, LMS table.', read: 'the table' },
  who2006: { cite: 'World Health Organization, child growth standards 2006, weight for age, LMS.', read: 'a copy of the rows used' },
  cole1992: {
    cite: 'Cole TJ, Green PJ. Stat Med 1992;11:1305-1319, LMS method.',
    read: 'formula from memory, checked against the printed percentiles',
  },
  nice2004: {
    cite: 'National Institute for Health and Care Excellence, CG19, dental recall, 2004.',
    read: 'shortest and longest intervals',
  },
  eruptionChart: {
    cite: "A children's dental practice's chart of the eruption of milk teeth; order agrees with Lunt RC, Law DB 1974.",
    read: 'the chart',
  },
  bitewings2012: {
    cite: 'American Dental Association and Food and Drug Administration, radiographic examinations, 2012; replaced in 2026.',
    read: 'table of intervals, as reprinted; the edition of 2026 was not read',
  },

  // Evidence
  walsh2010: { cite: 'Walsh T et al. Cochrane Database Syst Rev 2010, CD007868.pub2.', read: 'abstract' },
  walsh2019: { cite: 'Walsh T et al. Cochrane Database Syst Rev 2019, CD007868.pub3.', read: 'results from memory' },
  marinho2003: { cite: 'Marinho VCC et al. Cochrane Database Syst Rev 2003, CD002278.', read: 'opening of the abstract, and a summary' },
  marinho2004a: { cite: 'Marinho VCC et al. Cochrane Database Syst Rev 2004, CD002780.', read: 'abstract' },
  marinho2004b: { cite: 'Marinho VCC et al. Cochrane Database Syst Rev 2004, CD002781.', read: 'from memory' },
  marinho2013: {
    cite: 'Marinho VCC et al. Cochrane Database Syst Rev 2013, CD002279.pub2.',
    read: 'estimates in a news summary; intervals from memory',
  },
  marinho2015: { cite: 'Marinho VCC et al. Cochrane Database Syst Rev 2015, CD002280.pub2.', read: 'estimate; intervals from memory' },
  marinho2016: {
    cite: 'Marinho VCC et al. Cochrane Database Syst Rev 2016, CD002284.pub2.',
    read: 'number of trials in a news summary; percentages from memory',
  },
  desousa2019: { cite: 'de Sousa FSO et al. Caries Res 2019;53:502-513.', read: 'abstract' },
  milsom2011: { cite: 'Milsom KM et al. J Dent Res 2011;90:1306-1311.', read: 'abstract' },
  ekstrand2016: { cite: 'Ekstrand KR. Caries Res 2016;50(Suppl 1):61-66.', read: 'abstract' },
  srinivasan2014: { cite: 'Srinivasan M et al. Community Dent Oral Epidemiol 2014;42:333-340.', read: 'abstract' },
  gao2016: { cite: 'Gao SS et al. JDR Clin Trans Res 2016;1:201-210.', read: 'from memory' },
  milgrom2006: { cite: 'Milgrom P et al. J Dent Res 2006;85:177-181.', read: 'abstract' },
  riley2015: { cite: 'Riley P et al. Cochrane Database Syst Rev 2015, CD010743.', read: 'abstract' },
  bader2013: { cite: 'Bader JD et al. J Am Dent Assoc 2013;144:21-30.', read: 'from memory' },
  witkowski2024: { cite: 'Witkowski M et al. Eur Heart J 2024.', read: 'from memory' },
  newton2020: { cite: 'Newton JT et al. JDR Clin Trans Res 2020;5:214-223.', read: 'abstract' },
  walsh2015: { cite: 'Walsh T et al. Cochrane Database Syst Rev 2015, CD008457.', read: 'number of trials; certainty from memory' },
  featherstone2012: { cite: 'Featherstone JDB et al. Caries Res 2012;46:118-129.', read: 'abstract' },
  milgrom2021: { cite: 'Milgrom P et al. JDR Clin Trans Res 2021;6:195-204.', read: 'abstract' },
  arginineTrials: {
    cite: 'Li X et al. J Clin Dent 2015;26:7-12; Kraivaphan P et al. Caries Res 2013; Yin W et al., trial of 2019 to 2022.',
    read: 'abstracts',
  },
  astvaldsdottir2016: { cite: 'Ástvaldsdóttir Á et al. Caries Res 2016;50:383-393.', read: 'abstract' },
  azarpazhooh2008: { cite: 'Azarpazhooh A, Limeback H. J Am Dent Assoc 2008;139:915-924.', read: 'abstract' },
  paszynska: {
    cite: 'Paszynska E et al. Sci Rep 2021; Front Public Health 2023.',
    read: 'abstracts; the strength of the control paste of 2021 from memory',
  },
  sealants2013: { cite: 'Evidence-Based Dentistry, summary of the Cochrane review of sealants, update of 2013.', read: 'summary' },
  ahovuo2017: { cite: 'Ahovuo-Saloranta A et al. Cochrane Database Syst Rev 2017, CD001830.pub5.', read: 'results from memory' },
  vogel2008: { cite: 'Vogel GL et al. 2006 and 2008, calcium before a fluoride rinse.', read: 'from memory' },
  marinho2002: { cite: 'Marinho VCC et al. Cochrane Database Syst Rev 2002, fluoride gels.', read: 'abstract' },
  leon2019: {
    cite: 'León S et al. J Dent 2019, 5,000 ppm paste in older people at home.',
    read: 'abstract; its figures contradict each other',
  },
  urquhart2019: { cite: 'Urquhart O et al. J Dent Res 2019;98:14-26.', read: 'abstract' },
  oliveira2018: { cite: 'Oliveira BH et al. Caries Res 2019;53:24-32 (2018 online).', read: 'full text' },
  sdcepSilver: {
    cite: 'Scottish Dental Clinical Effectiveness Programme, page on silver diamine fluoride in the care of children.',
    read: 'the page',
  },
  silverConsent: { cite: 'A consent page for silver diamine fluoride that cites Cleary J et al. 2022.', read: 'the lines on harm' },
  crystal2019: { cite: 'Crystal YO et al. 2019, contents and drop size of silver diamine fluoride.', read: 'drop size' },
  ly2006: { cite: 'Ly KA et al. BMC Oral Health 2006;6:6.', read: 'abstract' },
  milgrom2009: { cite: 'Milgrom P et al. Arch Pediatr Adolesc Med 2009;163:601-607.', read: 'from memory' },
  iodineSession: {
    cite: 'Single session of povidone-iodine in young children with severe decay, open-access article PMC2855972; authors not noted.',
    read: 'amount and age',
  },
  milgrom2011: { cite: 'Milgrom P et al. 2011, povidone-iodine before varnish, not randomised.', read: 'abstract' },
  oku2007: { cite: 'Oku T, Nakamura S. J Sci Food Agric 2007, largest amount of sugar alcohols without loose stools.', read: 'abstract' },
  schlagenhauf2019: { cite: 'Schlagenhauf U et al. J Investig Clin Dent 2019;10:e12399.', read: 'from memory' },
  wright2016: { cite: 'Wright JT et al. J Am Dent Assoc 2016;147:672-682.', read: 'from memory' },
  creeth2013: { cite: 'Creeth J et al. Int Dent J 2013, amount of paste that parents put on.', read: 'abstract' },
  zohoori2012: { cite: 'Zohoori FV et al. Eur J Oral Sci 2012, fluoride swallowed from paste at 4 to 6 years.', read: 'abstract' },
  cosmeticsLabel: { cite: 'Regulation (EC) 1223/2009 on cosmetic products, label of fluoride pastes.', read: 'the line on children' },
  chlorhexidineCaries: {
    cite: 'Jenson L et al. J Calif Dent Assoc 2007;35:714-723, and two clinic sheets with the same course of chlorhexidine.',
    read: 'the sheets; the tables of the paper from memory',
  },
};
