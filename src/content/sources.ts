/** One source: how it is cited, and how much of it was read. Areas of their own stand in `sources-<area>.ts`. */
export interface Source {
  readonly cite: string;
  readonly read: string;
}

/** Sources of the risk lists, the questions and the lists of medicines, allergies and conditions. */
export const sources: Readonly<Record<string, Source>> = {
  F2007: {
    cite: 'Featherstone JDB, Domejean-Orliaguet S, Jenson L, Wolff M, Young DA. J Calif Dent Assoc 2007;35(10):703-713, Table 1 (form, age 6 to adult).',
    read: 'poor scan: disease indicators and most risk factors readable, protective list not',
  },
  F2019form: {
    cite: 'Featherstone JDB, Alston P, Chaffee BW, Rechmann P. J Calif Dent Assoc 2019;47(1):25-34, form for age 6 to adult, January 2019.',
    read: 'first page complete, first lines of the second',
  },
  F2021guide: {
    cite: 'Featherstone JDB, Crystal YO, Alston P, Chaffee BW, Domejean S, Rechmann P, Zhan L, Ramos-Gomez F. Front Oral Health 2021;2:657518.',
    read: 'abstract',
  },
  UoP2019: {
    cite: 'University of the Pacific, student research day 2019, abstract 71: clinical report of a patient at extreme caries risk.',
    read: 'abstract',
  },
  RG2010: {
    cite: 'Ramos-Gomez F, Crystal YO, Ng MW, Crall JJ, Featherstone JDB. J Calif Dent Assoc 2010;38(10):746-761, Table 2 (form, age 0 to 5).',
    read: 'sections 1 and 2 complete, section 3 cut off',
  },
  C2016ada: {
    cite: 'American Dental Association, science news of 28 July 2016: item table of Chaffee BW, Featherstone JDB, Gansky SA, Cheng J, Zhan L. JDR Clin Trans Res 2016;1(2):131-142.',
    read: 'the whole table of 17 items',
  },
  ADA06: {
    cite: 'American Dental Association, caries risk assessment form, age 0 to 6, 2009 and 2011.',
    read: 'wording of the items complete; columns not recognisable',
  },
  ADA6p: {
    cite: 'American Dental Association, caries risk assessment form, age over 6, scored version.',
    read: 'wording of the items complete; columns not recognisable',
  },
  ADArule: {
    cite: 'American Dental Association, instructions of the scored caries risk assessment form, as reproduced.',
    read: 'the paragraph on scoring, complete',
  },
  ADAstud: {
    cite: "Students' article on which findings of the American Dental Association's form over 6 count as high.",
    read: 'secondary; an earlier edition with 24-month windows',
  },
  ADAcards: {
    cite: "Study notes of the American Dental Association's scored form over 6: lines of 1 and of 10 points, 24-month edition.",
    read: 'complete lists; secondary',
  },
  AAPD6_2019: {
    cite: 'American Academy of Pediatric Dentistry, caries-risk assessment form, age 6 and over, wording of the 2019 revision.',
    read: 'items and rule complete, in a filled-in copy; columns not recognisable',
  },
  AAPD05_2014: {
    cite: 'American Academy of Pediatric Dentistry, caries-risk assessment form, age 0 to 5, wording of 2014.',
    read: 'not read; from memory',
  },
  AAPD2022p268: {
    cite: 'American Academy of Pediatric Dentistry, Reference Manual 2022-23, p. 268.',
    read: 'limits of the risk factors; first lines of Table 2',
  },
  AAPD2022p270: {
    cite: 'American Academy of Pediatric Dentistry, Reference Manual 2022-23, p. 270, Table 4 (pathways, age 6 and over).',
    read: 'complete table',
  },
  AAPDcards: {
    cite: "Study notes of the American Academy of Pediatric Dentistry's recall and radiograph periods.",
    read: 'secondary',
  },
  CE595: { cite: 'Continuing-education handbook on dry mouth, chapter 595: testing salivary flow.', read: 'page' },
  CE96: { cite: 'Continuing-education handbook, chapter 96: salivary gland hypofunction.', read: 'page' },
  vL2019: { cite: 'van Loveren C. Caries Res 2019;53:168-175.', read: 'abstract' },
  dryingMedicines: {
    cite: 'Wolff A et al. World Workshop on Oral Medicine VI, 2017; Tan ECK et al. 2018; Boustani M et al. 2008 (anticholinergic scale).',
    read: 'from memory',
  },
  project: {
    cite: 'Ebbline: our own choice or reading, where a published source leaves the step open.',
    read: 'our own; not a published figure',
  },
};
