import type { Source } from './sources.ts';

/** Sources of the chemistry of oral fluids, of what dissolves enamel, and of products. `read` says how far each was read. */
export const chemistrySources: Readonly<Record<string, Source>> = {
  // Method
  phreeqc3: {
    cite: 'Parkhurst DL, Appelo CAJ, PHREEQC version 3, U.S. Geological Survey; program 3.8.8-39-g8176af0c, built from source.',
    read: 'program run on 46 fluids outside this repository; its results are test/reference/chemistry',
  },
  davies1962: {
    cite: 'Davies CW, Ion association, Butterworths, 1962.',
    read: 'from memory; the same expression read in the source of PHREEQC',
  },
  phreeqcDat: {
    cite: 'phreeqc.dat, database that comes with PHREEQC 3.8.8, U.S. Geological Survey.',
    read: 'the file; values at 37 °C computed from it',
  },
  minteqV4: { cite: 'minteq.v4.dat, database that comes with PHREEQC 3.8.8.', read: 'the line of calcium acetate' },

  // Dissolved species
  bates1951: {
    cite: 'Bates RG. J Res Natl Bur Stand 1951;47:127-134, first dissociation of phosphoric acid.',
    read: 'expression from memory',
  },
  batesAcree1943: {
    cite: 'Bates RG, Acree SF. J Res Natl Bur Stand 1943;30:129-155, second dissociation of phosphoric acid.',
    read: 'expression from memory; 7.20 at 25 °C read in a table elsewhere',
  },
  bjerrumUnmack1929: {
    cite: 'Bjerrum N, Unmack A. Kgl Danske Videnskab Selskab Mat-fys Medd 1929;9(1), third dissociation of phosphoric acid.',
    read: 'value at 37 °C from memory; 12.325 at 25 °C read in a table elsewhere',
  },
  nimsSmith1936: { cite: 'Nims LF, Smith PK. J Biol Chem 1936;113:145-152, lactic acid.', read: 'expression from memory' },
  harnedEhlers1933: { cite: 'Harned HS, Ehlers RW. J Am Chem Soc 1933;55:652-656, acetic acid.', read: 'expression from memory' },
  gregory1970: {
    cite: 'Gregory TM, Moreno EC, Brown WE. J Res Natl Bur Stand 1970;74A:461-475, dicalcium phosphate dihydrate.',
    read: 'abstract with its expressions; lost minus signs restored, checked against the printed values',
  },
  plummerBusenberg1982: {
    cite: 'Plummer LN, Busenberg E. Geochim Cosmochim Acta 1982;46:1011-1040, calcium carbonates.',
    read: 'expressions as in phreeqc.dat; that of calcite and of the bicarbonate pair from memory',
  },
  martellSmith: { cite: 'Martell AE, Smith RM, Critical stability constants, Plenum, 1974 to 1989.', read: 'from memory' },

  // Solids
  mcdowell1977: {
    cite: 'McDowell H, Gregory TM, Brown WE. J Res Natl Bur Stand 1977;81A:273-281, hydroxyapatite.',
    read: 'abstract with the expression',
  },
  mccann1968: { cite: 'McCann HG. Arch Oral Biol 1968;13:987-1001, fluorapatite.', read: 'abstract with values at four temperatures' },
  shellis1993: {
    cite: 'Shellis RP, Wahab FK, Heywood BR. Caries Res 1993;27:365-372, hydroxyapatite ion activity product in equilibrium with enamel.',
    read: 'abstract: 1.7 (0.7) times 10^-58 at 37 °C',
  },
  pmc5445792: { cite: 'Article PMC5445792 of PubMed Central, Table 3, solubility of calcium phosphates at 37 °C.', read: 'Table 3' },
  morenoMargolis1988: {
    cite: 'Moreno EC, Margolis HC. J Dent Res 1988;67:1181-1189, composition of human plaque fluid; definition of the degree of saturation.',
    read: 'abstract with the mean composition',
  },

  // What saturation was found in the mouth
  dawes2003: { cite: 'Dawes C. J Can Dent Assoc 2003;69:722-724, what is the critical pH.', read: 'abstract' },
  criticalPhByHabit: {
    cite: 'A critical pH of 5.5 as it is commonly taught.',
    read: 'common practice; no source says that it holds for everybody',
  },
  larsen1975: {
    cite: 'Larsen MJ. Scand J Dent Res 1975;83:13-17, degrees of saturation in parotid saliva with hydroxyapatite and fluorapatite.',
    read: 'abstract; volume and pages from memory',
  },
  larsen1983: { cite: 'Larsen MJ, work of 1983 on the saturation of parotid saliva.', read: 'abstract with three pH values' },
  larsenPearce2003: {
    cite: 'Larsen MJ, Pearce EIF. Arch Oral Biol 2003;48:317-322, saturation of saliva with calcium salts.',
    read: 'abstract',
  },
  larsenNyvad1999: {
    cite: 'Larsen MJ, Nyvad B. Caries Res 1999;33:81-87, enamel erosion by soft drinks and orange juices.',
    read: 'a copy of the article',
  },
};
